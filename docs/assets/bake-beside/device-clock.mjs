// @ts-check
// The device's clock, watched: set back, it would make a bake shorter than it was. Minutes go on by the bake's own clock.

/** @typedef {import("./bake.mjs").Bake} Bake */

// A clock that is corrected by the network moves by less.
const SLACK_ms = 2_000;

export class DeviceClock {
  #wall = Date.now();
  #steady = performance.now();

  /** The moment on the bake's clock. @param {Bake} bake */
  now(bake) {
    return Date.now() + bake.shift;
  }

  /**
   * How far the device's clock was set back since the last look, in ms; 0 for not at all. A clock set forward cannot be
   * told from a device that slept.
   */
  setBack() {
    const wall = Date.now();
    const steady = performance.now();
    const lost = steady - this.#steady - (wall - this.#wall);
    this.#wall = wall;
    this.#steady = steady;
    return lost > SLACK_ms ? lost : 0;
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
