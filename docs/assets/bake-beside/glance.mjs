// @ts-check
// The four figures that are read from across the shop, and the line that says what to set an alarm for.

import { lastReading, minuteOf } from "./bake.mjs";
import { clockTime, spanWords, stopwatch } from "./device-clock.mjs";

/** @typedef {import("./bake.mjs").Bake} Bake */
/** @typedef {import("../calculator/asking.mjs").Answer} Answer */

const MINUTE_ms = 60_000;

/**
 * When to pull, as moments on the bake's clock. slow: null where the slow end of the doubt never gets there.
 * @typedef {{fast: number, best: number, slow: number | null} | null} Due
 */

/**
 * What an answer of the form says of a bake.
 * @typedef {{due: Due, pullWords: string, share: Answer | undefined, safe: Answer | undefined}} Figures
 */

/** @param {Bake} bake @param {Record<string, Answer>} answers @returns {Figures} */
export function figuresOf(bake, answers) {
  const pull = answers["pull-in"];
  return { due: dueOf(bake, pull), pullWords: pull?.text ?? "", share: answers.share, safe: answers["safe-equivalent"] };
}

/** The wait is counted from the last reading. @param {Bake} bake @param {Answer | undefined} answer @returns {Due} */
function dueOf(bake, answer) {
  const reading = lastReading(bake);
  if (!reading || !answer || typeof answer.value !== "number") return null;
  const moment = (/** @type {number} */ minutes) => reading.at + minutes * MINUTE_ms;
  // where no range is given the schedule is made already, or its slow end is not in sight
  const none = answer.low === null && answer.high === null;
  return {
    fast: moment(answer.low ?? answer.value),
    best: moment(answer.value),
    slow: answer.high === null ? (none ? moment(answer.value) : null) : moment(answer.high),
  };
}

/** Nobody is told to pull by anything but the slow end, unless that never comes. @param {Due} due */
export const pullAt = (due) => (due === null ? null : (due.slow ?? due.best));

/** A clock shows whole minutes: the alarm must not come early. @param {number} moment */
const wholeMinute = (moment) => Math.ceil(moment / MINUTE_ms) * MINUTE_ms;

export class Glance {
  /** @param {HTMLElement} box */
  constructor(box) {
    this.box = box;
  }

  /**
   * @param {Bake} bake
   * @param {number} now
   * @param {Figures | null} figures
   * @param {string} trouble why there are none
   */
  show(bake, now, figures, trouble) {
    const until = bake.pulled ?? now;
    this.#cell("elapsed", stopwatch(until - bake.started), `since ${clockTime(bake, bake.started)}`);
    const reading = lastReading(bake);
    if (reading) {
      const minute = Math.floor(minuteOf(bake, reading.at));
      this.#cell("last", `${reading.text} ${reading.unit}`, `at ${minute} min, ${spanWords(now - reading.at)} ago`);
    } else this.#cell("last", "none", "read the metal when it goes in, then every 3 min");
    if (typeof figures?.share?.value === "number") {
      this.#cell("cure", `${Math.floor(figures.share.value)} %`, `${figures.safe?.text ?? ""} made by the last reading`);
    } else this.#cell("cure", "none", trouble || "no reading yet");
    this.#cell("pull", ...this.#pull(bake, now, figures, trouble));
    this.#write(this.box.querySelector("[data-alarm]"), this.#alarm(bake, now, figures?.due ?? null));
  }

  /**
   * @param {Bake} bake
   * @param {number} now
   * @param {Figures | null} figures
   * @param {string} trouble
   * @returns {[string, string]}
   */
  #pull(bake, now, figures, trouble) {
    if (bake.pulled !== null) return ["pulled", `at ${clockTime(bake, bake.pulled)}`];
    const due = figures?.due ?? null;
    const at = pullAt(due);
    if (due === null || at === null) return ["none yet", figures?.pullWords || trouble || "take the first reading"];
    if (at <= now) return ["now", "by the last reading. Read the metal once more, then pull"];
    const minutes = (/** @type {number} */ moment) => Math.max(0, (moment - now) / MINUTE_ms);
    const range =
      due.slow === null
        ? `from ${Math.floor(minutes(due.fast))} min to never: the oven may be too cool`
        : `${Math.floor(minutes(due.fast))} to ${Math.ceil(minutes(due.slow))} min, best guess ${Math.ceil(minutes(due.best))}`;
    return [`${Math.ceil(minutes(at))} min`, range];
  }

  /** @param {Bake} bake @param {number} now @param {Due} due */
  #alarm(bake, now, due) {
    const at = pullAt(due);
    if (bake.pulled !== null) return "";
    if (at === null) return "A locked phone cannot be woken by this page. Once it can say when, set the phone's own alarm.";
    const when = at <= now ? "" : ` Set your phone's alarm for ${clockTime(bake, wholeMinute(at))}.`;
    return `A locked phone cannot be woken by this page.${when}`;
  }

  /** @param {string} key @param {string} big @param {string} small */
  #cell(key, big, small) {
    const cell = this.box.querySelector(`[data-cell="${key}"]`);
    this.#write(cell?.querySelector("[data-big]"), big);
    this.#write(cell?.querySelector("[data-small]"), small);
  }

  /** @param {Element | null | undefined} place @param {string} words */
  #write(place, words) {
    if (place && place.textContent !== words) place.textContent = words;
  }
}
