// @ts-check
// What the answer on the page is for, said three ways: a state for style, a word on the plate, a line to be read out.

import { EngineFailure } from "./engine.mjs";
import { sayState } from "./outcome.mjs";

/** @typedef {"example" | "starting" | "live" | "stale" | "errors" | "unavailable"} State */

export const FOR_EXAMPLE = "The answer shown is for the example values.";
/** What a reader can do about it. @type {Record<import("./engine-messages.mjs").Why, string>} */
const REMEDY = {
  "": "Reload the page, or use the table below.",
  files:
    "A part of it did not come: the connection may be down, or the site has been renewed. Reload the page, by the line at its " +
    "foot where there is one, or use the table below.",
  memory: "This device has no memory free for it. Close other tabs, then reload the page; or use the table below.",
  old: "This browser is too old for it: it needs Chrome or Edge 112, Firefox 114, Safari 16.4 or newer. The table below serves without it.",
};
const FOR_BEFORE = "The answer shown is for the values before your last change.";

/** A screen reader is told only of what has stood this long. */
export const HOLD_ms = 500;
/** Most answers come sooner than this, and a word that flickers helps nobody. */
const WORKING_ms = 150;

export class Saying {
  #statusTimer = 0;
  /** Why there is no live answer, in a word or two for the plate, which is seen where the line is not. */
  #trouble = "";
  #wordTimer = 0;
  /** Whether the outcome is an answer of the engine and no longer the one the page was made with. */
  answered = false;

  /**
   * @param {HTMLElement} outcome
   * @param {Element | null} status
   * @param {() => boolean} holdsExample whether the fields hold the example's values
   */
  constructor(outcome, status, holdsExample) {
    this.outcome = outcome;
    this.status = status;
    this.holdsExample = holdsExample;
  }

  /**
   * @param {State} state
   * @param {boolean} [busy] a request is under way
   */
  show(state, busy = false) {
    this.outcome.dataset.state = state;
    clearTimeout(this.#wordTimer);
    const words = this.#words(state, busy);
    const write = () => sayState(this.outcome, state, words);
    if (state === "stale" && busy) this.#wordTimer = setTimeout(write, WORKING_ms);
    else write();
  }

  /**
   * @param {boolean} works the engine runs, and failed at these values only
   * @param {unknown} reason
   */
  unavailable(works, reason) {
    const failure = reason instanceof EngineFailure ? reason : null;
    const shown = this.answered ? FOR_BEFORE : FOR_EXAMPLE;
    if (works) {
      this.#trouble = "Not worked out";
      this.line(`The calculator could not work these values out. ${shown} Change a field, or reload the page.`);
    } else if (this.answered || failure?.started) {
      this.#trouble = "Stopped";
      this.line(`The live calculator stopped. ${shown} Reload the page: what you typed is kept.`);
    } else {
      this.#trouble = "Did not start";
      this.line(`The live calculator did not start. ${shown} ${REMEDY[failure?.why ?? ""]}`);
    }
    this.show("unavailable");
  }

  /** Brings the line before whoever asked for an answer. */
  lead() {
    if (!(this.status instanceof HTMLElement)) return;
    this.status.tabIndex = -1;
    this.status.focus({ preventScroll: true });
    this.status.scrollIntoView({ block: "center" });
  }

  /**
   * @param {string} words
   * @param {number} [wait]
   * @param {boolean} [repeats] what the plate shows already, so that only a screen reader needs it
   */
  line(words, wait = 0, repeats = false) {
    clearTimeout(this.#statusTimer);
    const write = () => {
      this.status?.classList.toggle("calc-unseen", repeats);
      if (this.status && this.status.textContent !== words) this.status.textContent = words;
    };
    if (wait === 0) write();
    else this.#statusTimer = setTimeout(write, wait);
  }

  /**
   * @param {State} state
   * @param {boolean} busy
   */
  #words(state, busy) {
    const example = this.holdsExample();
    if (state === "live") return example ? "Example values" : "Your values";
    if (busy) return "Working…";
    const shown = this.answered ? "Before your last change" : example ? "Example values" : "Example values, not yours";
    return state === "unavailable" ? `${this.#trouble}: ${shown[0].toLowerCase()}${shown.slice(1)}` : shown;
  }
}
