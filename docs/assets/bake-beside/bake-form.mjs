// @ts-check
// The page's form as the bake sees it: it is written to as by hand, and its answers are listened to. All sums are there.

import { engine } from "../calculator/engine.mjs";
import { defaultTexts, readTexts, writeText } from "../calculator/fields.mjs";
import { note } from "../calculator/notes.mjs";
import { logText, minuteOf, minuteText, unitOf } from "./bake.mjs";
import { readAbove } from "./log-file.mjs";

/** @typedef {import("./bake.mjs").Bake} Bake */
/** @typedef {import("../calculator/asking.mjs").Response} Response */
/** @typedef {import("../calculator/fields.mjs").Texts} Texts */

/** What a bake brings into the form. */
const OWN = ["log", "log-unit", "pulled-at", "pulled-at-unit"];

export class BakeForm {
  /** Whether a bake has been put into the form since the page was opened. */ #wrote = false;

  /**
   * @param {HTMLElement} calculator
   * @param {HTMLFormElement} form
   * @param {(response: Response | null) => void} told of every answer; null when there can be none
   */
  constructor(calculator, form, told) {
    this.calculator = calculator;
    this.form = form;
    calculator.addEventListener("calc-answer", (event) => {
      told(/** @type {CustomEvent<{response: Response | null}>} */ (event).detail.response);
    });
    form.addEventListener("change", (event) => {
      if (event.target instanceof HTMLTextAreaElement && event.target.name === "log") this.#offerAbove(event.target.value);
    });
  }

  get texts() {
    return readTexts(this.form);
  }

  /** What the bake's own fields hold. @returns {Texts} */
  own() {
    const texts = this.texts;
    return Object.fromEntries(OWN.map((name) => [name, texts[name] ?? ""]));
  }

  /** Everything else that an answer stands on. @returns {Texts} */
  rest() {
    return Object.fromEntries(Object.entries(this.texts).filter(([name]) => !OWN.includes(name)));
  }

  /** Powder, oven and part are still those of the example. */
  get restIsExample() {
    const start = defaultTexts(this.form);
    return Object.entries(this.rest()).every(([name, text]) => text === start[name] || name === "instrument");
  }

  /**
   * Whether the form holds something that this bake did not put there: a log from a link, or one changed by hand. Before
   * its first reading a bake has put nothing there.
   * @param {Bake} bake
   */
  isApart(bake) {
    const { log = "" } = this.texts;
    if (bake.readings.length === 0 && bake.wrote === "") return false;
    const known = [bake.wrote, logText(bake)];
    if (bake.wrote === "") known.push(bake.before.log ?? "");
    // the example of a page newly opened is nobody's; put back later, it was put back by hand
    if (!this.#wrote) known.push(defaultTexts(this.form).log ?? "");
    return !known.includes(log);
  }

  /** @param {Bake} bake */
  write(bake) {
    this.#wrote = true;
    bake.wrote = logText(bake);
    this.put({
      log: bake.wrote,
      "log-unit": unitOf(bake),
      "pulled-at": bake.pulled === null ? "" : minuteText(minuteOf(bake, bake.pulled)),
      "pulled-at-unit": "min",
    });
  }

  /** Writes as a hand would. @param {Texts} texts */
  put(texts) {
    for (const [name, text] of Object.entries(texts)) writeText(this.form, name, text);
    const log = this.form.querySelector('[name="log"]');
    for (const kind of ["input", "change"]) log?.dispatchEvent(new Event(kind, { bubbles: true }));
  }

  /** A bake whose last reading was deleted leaves the form as it found it. @param {Bake} bake */
  takeOut(bake) {
    if (bake.wrote !== "" && this.own().log === bake.wrote) this.put(bake.before);
    bake.wrote = "";
  }

  /** The sums are wanted soon: they need the engine, and later there may be no network. */
  warm() {
    void engine(new URL(this.calculator.dataset.engine ?? "", document.baseURI).href).start();
  }

  goToRest() {
    const field = this.form.querySelector('[name="schedule-temperature"]');
    if (!(field instanceof HTMLElement)) return;
    field.scrollIntoView({ block: "center" });
    field.focus({ preventScroll: true });
  }

  /** A file that this page saved knows more than its readings. @param {string} text */
  #offerAbove(text) {
    note(this.form, "bake-file", "");
    const above = readAbove(text);
    const start = defaultTexts(this.form);
    const fits = (/** @type {string} */ name) => name in start && !OWN.includes(name);
    const wanted = above
      ? { ...Object.fromEntries(Object.entries(above.fields).filter(([name]) => fits(name))), "pulled-at": above.pulled }
      : {};
    const now = this.texts;
    const differs = Object.entries(wanted).some(([name, value]) => now[name] !== value);
    const words = differs ? "This file also holds the bake's pull, powder, oven and part." : "";
    const act = () => {
      note(this.form, "bake-file", "");
      this.put({ ...wanted, "pulled-at-unit": "min" });
    };
    note(this.form, "bake-file", words, [{ words: "Put them into the fields", act }]);
  }
}
