// @ts-check
// The readings one by one, each to be corrected or deleted, and brought back.

import { element } from "../job/page-parts.mjs";
import { minuteOf, minuteText, momentOf } from "./bake.mjs";
import { clockTime } from "./device-clock.mjs";

/** @typedef {import("./bake.mjs").Bake} Bake */
/** @typedef {import("./bake.mjs").Reading} Reading */

/**
 * A number of minutes as typed; null when it is none.
 * @param {string} text
 */
export function typedMinutes(text) {
  const number = Number(text.trim().replace(",", "."));
  return text.trim() !== "" && Number.isFinite(number) && number >= 0 ? number : null;
}

export class ReadingsList {
  /** @type {Reading | null} being corrected */ #open = null;
  #shown = "";

  /**
   * @param {HTMLElement} list
   * @param {(reading: Reading) => void} drop
   * @param {(reading: Reading, text: string, at: number) => void} correct
   */
  constructor(list, drop, correct) {
    this.list = list;
    this.drop = drop;
    this.correct = correct;
  }

  /** @param {Bake} bake */
  show(bake) {
    const shown = JSON.stringify([bake.readings, bake.started, bake.shift, this.#open]);
    if (shown === this.#shown) return;
    this.#shown = shown;
    this.list.replaceChildren(
      ...bake.readings.map((reading) => (reading === this.#open ? this.#form(bake, reading) : this.#line(bake, reading))),
    );
  }

  /** @param {Bake} bake @param {Reading} reading */
  #line(bake, reading) {
    const words = `${reading.text} ${reading.unit} at ${minuteText(minuteOf(bake, reading.at))} min`;
    const act = (/** @type {string} */ name, /** @type {() => void} */ done) => {
      const made = element("button", { type: "button", class: "md-button", "aria-label": `${name} ${words}` }, name);
      made.addEventListener("click", done);
      return made;
    };
    const correct = act("Correct", () => {
      this.#open = reading;
      this.show(bake);
      this.list.querySelector("input")?.select();
    });
    const time = element("span", { class: "beside-clock" }, ` (${clockTime(bake, reading.at)})`);
    return element("li", {}, element("span", {}, words, time), correct, act("Delete", () => this.drop(reading)));
  }

  /** @param {Bake} bake @param {Reading} reading */
  #form(bake, reading) {
    const field = (/** @type {string} */ label, /** @type {string} */ value) =>
      /** @type {HTMLInputElement} */ (
        element("input", { type: "text", inputmode: "decimal", size: "5", "aria-label": label, value })
      );
    const metal = field(`Metal temperature, ${reading.unit}`, reading.text);
    const minute = field("Minute", minuteText(minuteOf(bake, reading.at)));
    const wrong = element("span", { class: "beside-wrong", role: "alert" });
    const cancel = element("button", { type: "button", class: "md-button" }, "Leave it");
    const save = element("button", { type: "submit", class: "md-button md-button--primary" }, "Save");
    const row = element("form", { class: "beside-row", novalidate: "" });
    row.append(metal, ` ${reading.unit} at `, minute, " min ", save, cancel, wrong);
    const close = () => {
      this.#open = null;
      this.show(bake);
      this.list.querySelector("button")?.focus();
    };
    cancel.addEventListener("click", close);
    row.addEventListener("submit", (event) => {
      event.preventDefault();
      const at = typedMinutes(minute.value);
      if (metal.value.trim() === "") wrong.textContent = "Enter the metal temperature, or delete the reading";
      else if (at === null) wrong.textContent = "Minute must be a number of 0 or more, like 12.5";
      else {
        this.#open = null;
        this.correct(reading, metal.value.trim(), momentOf(bake, at));
        this.list.querySelector("button")?.focus();
      }
    });
    return element("li", {}, row);
  }
}
