// @ts-check
// What a hand does to the readings of a bake: adds one, takes one out, puts one right, sets the clock back to the door.

import { note } from "../calculator/notes.mjs";
import { addReading, dropReading, minuteOf, minuteText } from "./bake.mjs";
import { clockTime } from "./device-clock.mjs";
import { typedMinutes } from "./readings-list.mjs";

/** @typedef {import("./bake.mjs").Bake} Bake */
/** @typedef {import("./bake.mjs").Reading} Reading */
/** @typedef {import("./panel.mjs").Panel} Panel */

const MINUTE_ms = 60_000;

export class Hand {
  /**
   * @param {Bake} bake
   * @param {Panel} panel
   * @param {number} now on the bake's clock
   * @param {(told: string) => void} push hands the readings on, with what to read out
   */
  constructor(bake, panel, now, push) {
    this.bake = bake;
    this.panel = panel;
    this.now = now;
    this.push = push;
  }

  add() {
    const field = this.panel.field("#beside-reading");
    const text = field.value.trim();
    const wrong = /\d/.test(text) ? "" : "Enter the metal temperature, like 345";
    this.panel.at("[data-wrong]").textContent = wrong;
    field.setAttribute("aria-invalid", String(wrong !== ""));
    field.focus();
    if (wrong !== "") return;
    const reading = { at: this.now, text, unit: this.panel.field(".beside-entry select").value };
    addReading(this.bake, reading);
    field.value = "";
    const minute = minuteText(minuteOf(this.bake, reading.at));
    this.push(`Reading ${this.bake.readings.length}: ${text} ${reading.unit} at ${minute} min.`);
  }

  /** @param {Reading} reading */
  drop(reading) {
    if (!dropReading(this.bake, reading)) return;
    const putBack = () => {
      addReading(this.bake, reading);
      note(this.panel.root, "deleted", "");
      this.push("The reading is back.");
    };
    note(this.panel.root, "deleted", "");
    const words = `${reading.text} ${reading.unit} was deleted.`;
    note(this.panel.root, "deleted", words, [{ words: "Put it back", act: putBack }]);
    this.push("The reading is deleted.");
  }

  /** @param {Reading} reading @param {string} text @param {number} at */
  correct(reading, text, at) {
    if (!dropReading(this.bake, reading)) return;
    addReading(this.bake, { ...reading, text, at });
    this.push("The reading is corrected.");
  }

  setStart() {
    const field = this.panel.field("#beside-went-in");
    const minutes = typedMinutes(field.value);
    const started = this.now - (minutes ?? 0) * MINUTE_ms;
    const late = started > (this.bake.readings[0]?.at ?? Infinity);
    let wrong = minutes === null ? "Minutes must be a number of 0 or more, like 4" : "";
    if (late) wrong ||= "It must have gone in before the first reading: correct or delete that one first";
    this.panel.at("[data-went-in-wrong]").textContent = wrong;
    if (wrong !== "") return;
    field.value = "";
    this.bake.started = started;
    this.bake.saved = false;
    this.bake.offset_min = new Date(started).getTimezoneOffset();
    this.push(`The clock is set: it went in at ${clockTime(this.bake, started)}.`);
  }
}
