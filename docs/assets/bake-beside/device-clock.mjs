// @ts-check
// The device's clock, watched. Set back, it would make a bake shorter than it was; put right after it was ahead, it makes the
// minutes right again. Minutes go on by the bake's own clock.

/** @typedef {import("./bake.mjs").Bake} Bake */
/** @typedef {{ms: number, from: number}} Jump from: no moment on the bake's clock before it was told by the clock set forward */
/**
 * @typedef {object} Look what the device's clock did since the last look, in ms; 0 for nothing
 * @property {number} lost how far it was set back, beyond what it had been ahead
 * @property {number} right how far it was set back of what it had been ahead
 * @property {number} rest of what it had been ahead and was not set back
 * @property {number} ahead how far it went forward, or the device slept, while the page was in front
 */

// A clock that is corrected by the network moves by less.
const SLACK_ms = 2_000;

export class DeviceClock {
  #wall = Date.now();
  #steady = performance.now();
  /** In front ever since the last look. */ #watched = false;
  /** A clock set forward cannot be told from a device that slept, until it is set back. @type {Jump[]} */ #jumps = [];

  constructor() {
    const away = () => void (this.#watched = false);
    for (const name of ["visibilitychange", "freeze"]) document.addEventListener(name, away);
    addEventListener("pagehide", away);
  }

  /** The moment on the bake's clock. @param {Bake} bake */
  now(bake) {
    return Date.now() + bake.shift;
  }

  /** @param {Bake} bake @returns {Look} */
  look(bake) {
    const wall = Date.now();
    const steady = performance.now();
    const moved = wall - this.#wall - (steady - this.#steady);
    const from = this.#wall + moved + bake.shift;
    const watched = this.#watched;
    this.#wall = wall;
    this.#steady = steady;
    this.#watched = document.visibilityState === "visible";
    if (moved < -SLACK_ms) return this.#setBack(bake, -moved);
    // a bake that was started on the clock set forward goes by it
    const jumped = moved > SLACK_ms && from > bake.started;
    if (jumped) this.#jumps.push({ ms: moved, from });
    return { lost: 0, right: 0, rest: 0, ahead: jumped && watched && this.#watched ? moved : 0 };
  }

  /** When the bake began was told by the clock as it is now. */
  forget() {
    this.#wall = Date.now();
    this.#steady = performance.now();
    this.#jumps = [];
  }

  /** The newest jump is the likeliest to be what was put right. @param {Bake} bake @param {number} back @returns {Look} */
  #setBack(bake, back) {
    this.#jumps = this.#jumps.filter((jump) => jump.from > bake.started);
    let lost = back;
    let rest = 0;
    for (let jump = this.#jumps.at(-1); jump && lost > SLACK_ms; jump = this.#jumps.at(-1)) {
      const part = Math.min(lost, jump.ms);
      lost -= part;
      jump.ms -= part;
      rest = jump.ms > SLACK_ms ? jump.ms : 0;
      if (rest === 0) this.#jumps.pop();
    }
    if (lost <= SLACK_ms) lost = 0;
    return { lost, right: lost < back ? back - lost : 0, rest, ahead: 0 };
  }
}

/**
 * How far the device's clock reads before a moment at which it is known to have been later, in ms; 0 for not at all.
 * @param {Bake} bake
 * @param {number} seen
 */
export function behind(bake, seen) {
  const lost = seen - (Date.now() + bake.shift);
  return lost > SLACK_ms ? lost : 0;
}

/** Whether clock times are shown in another time zone than the one the bake began in. @param {Bake} bake */
export function zoneMoved(bake) {
  return new Date(bake.started).getTimezoneOffset() !== bake.offset_min;
}

/** A moment as the device's clock shows it. @param {Bake} bake @param {number} moment */
export function clockTime(bake, moment) {
  return new Date(moment - bake.shift).toLocaleTimeString(undefined, { hour: "numeric", minute: "2-digit" });
}

/** @param {Bake} bake @param {number} moment */
export function dayOf(bake, moment) {
  return new Date(moment - bake.shift).toLocaleDateString(undefined, { weekday: "long", month: "long", day: "numeric" });
}

/** To the nearest minute. @param {number} ms */
export const about = (ms) => spanWords(Math.round(ms / 60_000) * 60_000);

/** @param {number} ms */
export function spanWords(ms) {
  const minutes = Math.floor(ms / 60_000);
  if (minutes < 1) return "less than 1 min";
  return minutes < 100 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
}

/** @param {number} ms */
export function stopwatch(ms) {
  const seconds = Math.max(0, Math.floor(ms / 1000));
  const two = (/** @type {number} */ part) => String(part).padStart(2, "0");
  const hours = Math.floor(seconds / 3600);
  return `${hours > 0 ? `${hours}:` : ""}${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
}
