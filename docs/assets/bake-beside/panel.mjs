// @ts-check
// What is seen of a bake: which part is shown, its figures, its readings, and what the reader should know of them.

import { note } from "../calculator/notes.mjs";
import { lastReading, minuteOf, minuteText } from "./bake.mjs";
import { copyCurve } from "./curve.mjs";
import { clockTime, dayOf } from "./device-clock.mjs";
import { Glance } from "./glance.mjs";
import { ReadingsList } from "./readings-list.mjs";

/** @typedef {import("./bake.mjs").Bake} Bake */
/** @typedef {import("./bake.mjs").Reading} Reading */
/** @typedef {import("./bake-form.mjs").BakeForm} BakeForm */
/** @typedef {import("../calculator/asking.mjs").Response} Response */

/**
 * @typedef {object} Seen
 * @property {Bake | null} bake
 * @property {boolean} left a bake from before, and nobody has said yet what to do with it
 * @property {Response | null | undefined} answer of the form for this bake; null for none, undefined while it is worked out
 * @property {import("./glance.mjs").Figures | null} figures
 * @property {number} now on the bake's clock
 * @property {boolean} sound
 * @property {import("./awake.mjs").State} screen
 */

const EXAMPLE = "The form still holds the example's powder, oven and part. The answers are for those until you put in yours.";
const APART = "The log in the form is not this bake's, so there are no figures for it.";
/** @type {Record<import("./awake.mjs").State, string>} */
const SCREEN = {
  held: "The screen stays on while this page is in front.",
  refused: "The screen may go dark: the device did not let the page keep it on.",
  unknown: "The screen may go dark: this browser cannot keep it on. A longer screen time-out in the device's settings helps.",
  off: "",
};

/** Why there are no figures. @param {Response | null | undefined} answer */
export function troubleOf(answer) {
  if (answer === null) return "No figures now: the calculator is not running, and the readings are kept";
  return answer === undefined || answer.ok ? "" : (answer.errors[0]?.message ?? "");
}

/** @param {Bake} bake */
export function readingsOf(bake) {
  return bake.readings.length === 1 ? "1 reading" : `${bake.readings.length} readings`;
}

export class Panel {
  /**
   * @param {HTMLElement} root
   * @param {BakeForm} form
   * @param {{drop: (reading: Reading) => void, correct: (reading: Reading, text: string, at: number) => void, rejoin: () => void}} acts
   */
  constructor(root, form, acts) {
    this.root = root;
    this.form = form;
    this.acts = acts;
    this.glance = new Glance(this.at('[data-part="running"]'));
    this.list = new ReadingsList(this.at("[data-readings]"), acts.drop, acts.correct);
  }

  /** @param {string} selector @returns {HTMLElement} */
  at(selector) {
    return /** @type {HTMLElement} */ (this.root.querySelector(selector));
  }

  /** @param {string} selector @returns {HTMLInputElement} */
  field(selector) {
    return /** @type {HTMLInputElement} */ (this.root.querySelector(selector));
  }

  /** Read out, and seen as what happened last. @param {string} words */
  say(words) {
    this.at("[data-said]").textContent = words;
  }

  /** The title of what is shown now, for the eye and for a screen reader. */
  goToTitle() {
    const title = [...this.root.querySelectorAll(".beside-title")].find((one) => one.checkVisibility());
    if (!(title instanceof HTMLElement)) return;
    this.root.scrollIntoView({ block: "start" });
    title.focus({ preventScroll: true });
  }

  /** @param {Seen} seen */
  show(seen) {
    const { bake, left } = seen;
    const running = bake !== null && !left && !bake.ended;
    const shown = { idle: bake === null, left, running, kept: bake !== null && !left };
    for (const [name, is] of Object.entries(shown)) this.at(`[data-part="${name}"]`).hidden = !is;
    for (const one of this.root.querySelectorAll("[data-running-only]")) one.toggleAttribute("hidden", !running);
    for (const one of this.root.querySelectorAll("[data-ended-only]")) one.toggleAttribute("hidden", running);
    if (bake !== null && left) {
      const since = `${dayOf(bake, bake.started)}, ${clockTime(bake, bake.started)}`;
      this.at("[data-left]").textContent = `It went in on ${since}, and has ${readingsOf(bake)}. It was not ended.`;
    }
    const current = bake !== null && !left;
    copyCurve(this.at("[data-curve]"), current && seen.answer?.ok && bake.readings.length > 1 ? this.form.calculator : null);
    if (!current) return;
    this.#notes(bake, running);
    this.list.show(bake);
    this.#facts(bake, seen.answer);
    if (running) this.#running(bake, seen);
  }

  /** What changes with every second. @param {Bake} bake @param {Seen} seen */
  tick(bake, seen) {
    const why = this.form.isApart(bake) ? APART : seen.answer === undefined ? "working it out" : troubleOf(seen.answer);
    this.glance.show(bake, seen.now, seen.figures, bake.readings.length > 0 ? why : "");
  }

  /** @param {Bake} bake @param {boolean} running */
  #notes(bake, running) {
    const rejoin = [{ words: "Put this bake into the form", act: this.acts.rejoin }];
    note(this.root, "apart", this.form.isApart(bake) ? APART : "", rejoin);
    const go = [{ words: "Go to the fields", act: () => this.form.goToRest() }];
    note(this.root, "example", running && this.form.restIsExample ? EXAMPLE : "", go);
  }

  /** @param {Bake} bake @param {Seen} seen */
  #running(bake, seen) {
    this.at('[data-act="pulled"]').textContent = bake.pulled === null ? "Pulled now" : "Not pulled after all";
    this.at('[data-act="sound"]').textContent = `Sound: ${seen.sound ? "on" : "off"}`;
    this.at("[data-screen]").textContent = SCREEN[seen.screen];
    const texts = this.form.texts;
    const said = (/** @type {string} */ name) => {
      const text = texts[name] ?? "";
      return text.trim() === "" ? "not known" : `${text} ${texts[`${name}-unit`] ?? ""}`.trim();
    };
    this.at("[data-stands]").textContent =
      `From the form below: sheet ${said("schedule-temperature")} for ${said("schedule-time")}, oven ${said("oven")}, ` +
      `section ${said("thickness")}.`;
    this.tick(bake, seen);
  }

  /** @param {Bake} bake @param {Response | null | undefined} answer */
  #facts(bake, answer) {
    const verdict = answer?.ok ? `${answer.headline}.` : troubleOf(answer);
    this.at("[data-verdict]").textContent = bake.ended ? verdict : "";
    this.at("[data-kept-title]").textContent = bake.ended ? "This bake's log" : "Readings of this bake";
    const pulled =
      bake.pulled === null
        ? "not marked as pulled"
        : `pulled at ${clockTime(bake, bake.pulled)} (${minuteText(minuteOf(bake, bake.pulled))} min)`;
    this.at("[data-facts]").textContent =
      `In at ${clockTime(bake, bake.started)} on ${dayOf(bake, bake.started)}, ${pulled}.` +
      (lastReading(bake) ? "" : " No readings yet.");
  }
}
