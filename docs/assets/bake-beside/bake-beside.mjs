// @ts-check
// <bake-beside>: a clock and readings beside an oven. It knows no formula: the page's form answers, and this shows it.

import { saveAsFile } from "../calculator/copy.mjs";
import { note } from "../calculator/notes.mjs";
import { ask } from "../job/page-parts.mjs";
import { Alarm } from "./alarm.mjs";
import { Awake } from "./awake.mjs";
import { addReading, dropReading, latest, minuteOf, minuteText, newBake } from "./bake.mjs";
import { BakeForm } from "./bake-form.mjs";
import { behind, clockTime, dayOf, DeviceClock, spanWords, zoneMoved } from "./device-clock.mjs";
import { dueOf, pullAt } from "./glance.mjs";
import { keep, keepSeen, onOtherTab, recall } from "./keeping.mjs";
import { fileName, fileText } from "./log-file.mjs";
import { Panel, readingsOf, troubleOf } from "./panel.mjs";
import { PullWatch } from "./pull-watch.mjs";
import { typedMinutes } from "./readings-list.mjs";

/** @typedef {import("./bake.mjs").Bake} Bake */
/** @typedef {import("./bake.mjs").Reading} Reading */
/** @typedef {import("../calculator/asking.mjs").Response} Response */

const MINUTE_ms = 60_000;
/** Left alone for so long, nobody may still stand beside it. */
const LEFT_ms = 120 * MINUTE_ms;
const SEEN_EVERY_ms = 10_000;

const UNKEPT =
  "This browser keeps nothing for this site: if the page is closed or reloaded, the readings are gone. Write them down as well.";
const ZONE = "This device is in another time zone than when the bake began. Minutes hold; clock times are shown in the new zone.";
const UNREAD = "A bake was kept here that cannot be read any more. It is left where it was, and a new one can be started.";

class BakeBeside extends HTMLElement {
  /** @type {Bake | null} */ #bake = null;
  #left = false;
  /** @type {Response | null | undefined} */ #answer;
  /** What to read out once the answer is there. */ #told = "";
  #seen = 0;
  #clock = new DeviceClock();
  #alarm = new Alarm();
  #watch = new PullWatch(this.#alarm, (words) => this.#panel?.say(words));
  #awake = new Awake(() => this.#show());
  /** @type {BakeForm | undefined} */ #form;
  /** @type {Panel | undefined} */ #panel;

  connectedCallback() {
    const calculator = document.querySelector('calc-form[slug="bake-log"]');
    const form = calculator?.querySelector("form");
    if (this.#form || !(calculator instanceof HTMLElement) || !form) return;
    this.#form = new BakeForm(calculator, form, (response) => this.#take(response));
    this.#panel = new Panel(this, this.#form, {
      drop: (reading) => this.#drop(reading),
      correct: (reading, text, at) => this.#correct(reading, text, at),
      rejoin: () => this.#push("This bake is back in the form.", true),
    });
    this.#listen(this.#panel);
    void customElements.whenDefined("calc-form").then(() => this.#begin());
  }

  /** The form is filled by now: a bake may be put into it. */
  #begin() {
    const { bake, seen, unread } = recall();
    note(this, "unread", unread ? UNREAD : "");
    if (bake) this.#find(bake, seen);
    this.hidden = false;
    this.#show();
    setInterval(() => this.#tick(), 1000);
    onOtherTab(() => this.#follow());
  }

  /** @param {Panel} panel */
  #listen(panel) {
    this.addEventListener("click", (event) => {
      const button = event.target instanceof Element ? event.target.closest("[data-act]") : null;
      if (button instanceof HTMLElement) void this.#act(button.dataset.act ?? "");
    });
    /** @type {[string, () => void][]} */
    const entries = [
      ["[data-entry]", () => this.#add(panel)],
      ["[data-went-in]", () => this.#setStart(panel)],
    ];
    for (const [selector, act] of entries) {
      panel.at(selector).addEventListener("submit", (event) => {
        event.preventDefault();
        act();
      });
    }
    document.addEventListener("visibilitychange", () => this.#tick(true));
    for (const name of ["pagehide", "pageshow"]) addEventListener(name, () => this.#tick(true));
  }

  /** A bake from before this page was opened. @param {Bake} bake @param {number} seen */
  #find(bake, seen) {
    this.#bake = bake;
    const known = Math.max(seen, latest(bake));
    const lost = behind(bake, known);
    if (lost > 0) {
      bake.shift += lost;
      this.#setBack(`at least ${spanWords(lost)} while this page was closed. Minutes since then may be too few`);
    }
    const now = this.#clock.now(bake);
    const alone = now - known;
    this.#left = !bake.ended && (alone > LEFT_ms || (alone > LEFT_ms / 4 && dayOf(bake, known) !== dayOf(bake, now)));
    if (!this.#left) this.#go("");
  }

  /** @param {string} words */
  #setBack(words) {
    note(this, "clock", "");
    note(this, "clock", `This device's clock was set back by ${words}. Compare with another clock, and correct what is wrong.`);
    this.#keep();
  }

  /** The bake runs, or its log is shown. @param {string} told */
  #go(told) {
    this.#left = false;
    if (this.#bake && !this.#bake.ended) {
      this.#form?.warm();
      void this.#awake.hold();
    }
    this.#push(told);
  }

  #start() {
    this.#bake = newBake(Date.now(), this.#form?.own() ?? {});
    for (const about of ["clock", "zone", "deleted"]) note(this, about, "");
    this.#go("The clock runs. Add the metal's temperature now.");
    this.#panel?.goToTitle();
  }

  /** @param {string} act */
  async #act(act) {
    const bake = this.#bake;
    if (act === "start") return this.#start();
    if (!bake) return;
    if (act === "sound") return this.#sound();
    if (act === "pulled") return this.#pulled(bake);
    if (act === "save") return this.#save(bake);
    if (act === "print") return print();
    if (act === "go-on" || act === "end") {
      bake.ended = act === "end";
      if (bake.ended) this.#awake.release();
      this.#go(bake.ended ? "The bake has ended. Its log is below." : "The bake goes on.");
      return this.#panel?.goToTitle();
    }
    const lost = act === "throw-away" || (!bake.saved && bake.readings.length > 0);
    const question =
      act === "new" ? `Start anew? ${readingsOf(bake)} of this bake are not saved as a file, and are gone then.` :
      `Throw away this bake and its ${readingsOf(bake)}? They are gone then.`;
    if (lost && !(await ask(this, question, act === "new" ? "Start anew" : "Throw it away"))) return;
    this.#forget(act === "throw-away");
    this.#panel?.at('[data-act="start"]').focus();
  }

  #sound() {
    if (this.#alarm.on) this.#alarm.turnOff();
    else if (!this.#alarm.turnOn()) this.#panel?.say("This browser gives a page no sound.");
    this.#show();
  }

  /** @param {Bake} bake */
  #pulled(bake) {
    bake.pulled = bake.pulled === null ? this.#clock.now(bake) : null;
    bake.saved = false;
    this.#push(bake.pulled === null ? "The pull is taken back." : `Pulled at ${clockTime(bake, bake.pulled)}.`);
  }

  /** @param {Bake} bake */
  #save(bake) {
    saveAsFile(fileName(bake), fileText(bake, this.#form?.rest() ?? {}));
    bake.saved = true;
    this.#keep();
    this.#panel?.say("The log is saved as a file.");
  }

  /** @param {boolean} restore what the form held before */
  #forget(restore) {
    const bake = this.#bake;
    this.#bake = null;
    this.#left = false;
    this.#answer = undefined;
    this.#awake.release();
    keep(null);
    for (const about of ["clock", "zone", "apart", "example", "deleted", "unkept"]) note(this, about, "");
    if (restore && bake && bake.wrote !== "" && this.#form?.own().log === bake.wrote) this.#form.put(bake.before);
    this.#panel?.say("");
    this.#show();
  }

  /** @param {Panel} panel */
  #add(panel) {
    const bake = this.#bake;
    const field = panel.field("#beside-reading");
    const text = field.value.trim();
    const wrong = /\d/.test(text) ? "" : "Enter the metal temperature, like 345";
    panel.at("[data-wrong]").textContent = wrong;
    field.setAttribute("aria-invalid", String(wrong !== ""));
    field.focus();
    if (!bake || wrong !== "") return;
    const reading = { at: this.#clock.now(bake), text, unit: panel.field(".beside-entry select").value };
    addReading(bake, reading);
    field.value = "";
    const minute = minuteText(minuteOf(bake, reading.at));
    this.#push(`Reading ${bake.readings.length}: ${text} ${reading.unit} at ${minute} min.`);
  }

  /** @param {Reading} reading */
  #drop(reading) {
    const bake = this.#bake;
    if (!bake || !dropReading(bake, reading)) return;
    const putBack = () => {
      addReading(bake, reading);
      note(this, "deleted", "");
      this.#push("The reading is back.");
    };
    note(this, "deleted", "");
    note(this, "deleted", `${reading.text} ${reading.unit} was deleted.`, [{ words: "Put it back", act: putBack }]);
    this.#push("The reading is deleted.");
  }

  /** @param {Reading} reading @param {string} text @param {number} at */
  #correct(reading, text, at) {
    const bake = this.#bake;
    if (!bake || !dropReading(bake, reading)) return;
    addReading(bake, { ...reading, text, at });
    this.#push("The reading is corrected.");
  }

  /** @param {Panel} panel */
  #setStart(panel) {
    const bake = this.#bake;
    const field = panel.field("#beside-went-in");
    const minutes = typedMinutes(field.value);
    if (!bake) return;
    const started = this.#clock.now(bake) - (minutes ?? 0) * MINUTE_ms;
    const late = started > (bake.readings[0]?.at ?? Infinity);
    const wrong =
      minutes === null
        ? "Minutes must be a number of 0 or more, like 4"
        : late ? "It must have gone in before the first reading: correct or delete that one first" : "";
    panel.at("[data-went-in-wrong]").textContent = wrong;
    if (wrong !== "") return;
    field.value = "";
    bake.started = started;
    bake.offset_min = new Date(started).getTimezoneOffset();
    this.#push(`The clock is set: it went in at ${clockTime(bake, started)}.`);
  }

  /**
   * Gives the form this bake's readings.
   * @param {string} told what to read out, with the answer if there will be one
   * @param {boolean} [over] also where the form holds another log
   */
  #push(told, over = false) {
    const bake = this.#bake;
    const form = this.#form;
    if (!bake || !form) return;
    const apart = !over && form.isApart(bake);
    const asks = !apart && bake.readings.length > 0;
    this.#told = asks ? told : "";
    this.#answer = undefined;
    if (!asks && told !== "") this.#panel?.say(told);
    if (asks) form.write(bake);
    else if (!apart) form.takeOut(bake);
    this.#keep();
    this.#show();
  }

  /** @param {Response | null} response */
  #take(response) {
    const bake = this.#bake;
    if (!bake || this.#left || !this.#form) return;
    if (bake.readings.length > 0 && this.#form.own().log === bake.wrote) {
      this.#answer = response;
      if (this.#told !== "") this.#panel?.say(`${this.#told} ${troubleOf(response) || response?.headline}.`);
      this.#told = "";
    }
    this.#show();
    this.#tick();
  }

  #keep() {
    note(this, "unkept", keep(this.#bake) ? "" : UNKEPT);
  }

  /** Another tab has changed the bake. */
  #follow() {
    const { bake } = recall();
    if (!bake) return this.#forget(false);
    const same = JSON.stringify(bake) === JSON.stringify(this.#bake);
    this.#bake = bake;
    this.#left = false;
    if (bake.ended) this.#awake.release();
    if (!same) this.#push("");
  }

  /** @param {boolean} [always] */
  #tick(always = false) {
    const bake = this.#bake;
    if (!bake || this.#left) return;
    const lost = this.#clock.setBack();
    if (lost > 0) {
      bake.shift += lost;
      this.#setBack(`${spanWords(lost)}. The minutes of this bake go on as before`);
    }
    const seen = this.#look();
    if (always || Math.abs(seen.now - this.#seen) >= SEEN_EVERY_ms) {
      this.#seen = seen.now;
      keepSeen(seen.now);
      note(this, "zone", zoneMoved(bake) ? ZONE : "");
    }
    if (bake.ended) return;
    this.#panel?.tick(bake, seen);
    this.#watch.look(bake.pulled === null ? pullAt(dueOf(bake, this.#answer?.answers["pull-in"])) : null, seen.now);
  }

  #look() {
    const bake = this.#bake;
    const now = bake ? this.#clock.now(bake) : 0;
    return { bake, left: this.#left, answer: this.#answer, now, sound: this.#alarm.on, screen: this.#awake.state };
  }

  #show() {
    this.#panel?.show(this.#look());
  }
}

customElements.define("bake-beside", BakeBeside);
