// @ts-check
// One bake as it is kept: when it went in, its readings, when it was pulled. Times are moments, never counters.

/** @typedef {{at: number, text: string, unit: string}} Reading at: a moment in ms; text: as it was typed */
/**
 * @typedef {object} Bake
 * @property {number} started moment in ms, on the bake's own clock
 * @property {number} shift what to add to the device's clock to get the bake's, in ms; 0 unless the device's was set back
 * @property {number} offset_min the device's time zone when it started
 * @property {Reading[]} readings in order of time
 * @property {number | null} pulled moment of the pull
 * @property {boolean} ended
 * @property {boolean} saved as a file, and not changed since
 * @property {string} wrote the log that was last put into the form
 * @property {Record<string, string>} before what the form held when the bake began
 */

const MINUTE_ms = 60_000;

/**
 * @param {number} now
 * @param {Record<string, string>} before
 * @returns {Bake}
 */
export function newBake(now, before) {
  const offset_min = new Date(now).getTimezoneOffset();
  return { started: now, shift: 0, offset_min, readings: [], pulled: null, ended: false, saved: false, wrote: "", before };
}

/** Minutes since it went in. @param {Bake} bake @param {number} moment */
export const minuteOf = (bake, moment) => (moment - bake.started) / MINUTE_ms;

/** @param {Bake} bake @param {number} minute */
export const momentOf = (bake, minute) => bake.started + minute * MINUTE_ms;

/** As a log has it: hundredths are finer than a hand. @param {number} minute */
export const minuteText = (minute) => String(Math.round(minute * 100) / 100);

/** The first reading's unit is the bake's. @param {Bake} bake */
export const unitOf = (bake) => bake.readings[0]?.unit ?? "";

/** @param {Bake} bake */
export const lastReading = (bake) => bake.readings.at(-1);

/** @param {Bake} bake @param {Reading} reading */
export function addReading(bake, reading) {
  bake.readings.push(reading);
  bake.readings.sort((a, b) => a.at - b.at);
  bake.saved = false;
}

/** @param {Bake} bake @param {Reading} reading @returns {Reading | undefined} what was taken out */
export function dropReading(bake, reading) {
  const place = bake.readings.indexOf(reading);
  bake.saved = false;
  return place < 0 ? undefined : bake.readings.splice(place, 1)[0];
}

/** The latest moment that this bake knows of. @param {Bake} bake */
export const latest = (bake) => Math.max(bake.started, lastReading(bake)?.at ?? 0, bake.pulled ?? 0);

/** The rows of a log: minute and temperature, a unit only where it is not the bake's. @param {Bake} bake */
export function logText(bake) {
  // a decimal comma needs another separator beside it
  const separator = bake.readings.some(({ text }) => text.includes(",")) ? "; " : ", ";
  return bake.readings
    .map(({ at, text, unit }) => {
      const typed = unit === unitOf(bake) ? text : `${text} ${unit}`;
      return `${minuteText(minuteOf(bake, at))}${separator}${typed}`;
    })
    .join("\n");
}
