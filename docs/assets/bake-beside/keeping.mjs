// @ts-check
// The bake on this device: written at every change, read back after a reload. Storage that refuses is said, not fatal.

/** @typedef {import("./bake.mjs").Bake} Bake */

const KEY = "bake-beside";
/** When the page last ran, apart from the bake, so that a tab that only looks on cannot write an old bake back. */
const SEEN = "bake-beside-seen";
/** What could not be read is put here, so that nothing is lost by going on. */
const UNREAD = "bake-beside-unread";

/** @returns {{bake: Bake | null, seen: number, unread: boolean}} */
export function recall() {
  const none = { bake: null, seen: 0, unread: false };
  try {
    const text = localStorage.getItem(KEY);
    if (text === null) return none;
    const bake = readBake(text);
    if (bake) return { bake, seen: Number(localStorage.getItem(SEEN)) || 0, unread: false };
    localStorage.setItem(UNREAD, text);
    localStorage.removeItem(KEY);
    return { ...none, unread: true };
  } catch {
    return none;
  }
}

/** @param {Bake | null} bake null forgets it @returns {boolean} false when the device does not keep it */
export function keep(bake) {
  try {
    if (bake === null) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, JSON.stringify(bake));
    return true;
  } catch {
    return false;
  }
}

/** @param {number} moment on the bake's clock */
export function keepSeen(moment) {
  try {
    localStorage.setItem(SEEN, String(moment));
  } catch {
    // said when the bake itself could not be kept
  }
}

/** @param {() => void} told when another tab changed the bake */
export function onOtherTab(told) {
  addEventListener("storage", (event) => {
    if (event.key === KEY || event.key === null) told();
  });
}

/** @param {string} text @returns {Bake | null} */
function readBake(text) {
  try {
    const kept = JSON.parse(text);
    const isMoment = (/** @type {unknown} */ value) => typeof value === "number" && Number.isFinite(value);
    const isText = (/** @type {unknown} */ value) => typeof value === "string";
    const whole =
      isMoment(kept.started) &&
      isMoment(kept.shift) &&
      isMoment(kept.offset_min) &&
      (kept.pulled === null || isMoment(kept.pulled)) &&
      isText(kept.wrote) &&
      typeof kept.before === "object" &&
      Array.isArray(kept.readings) &&
      kept.readings.every(
        (/** @type {Record<string, unknown>} */ one) => isMoment(one.at) && isText(one.text) && isText(one.unit),
      );
    return whole ? { ...kept, before: kept.before ?? {}, ended: kept.ended === true, saved: kept.saved === true } : null;
  } catch {
    return null;
  }
}
