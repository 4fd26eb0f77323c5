// @ts-check
// The bake on this device: written at every change, read back after a reload. Storage that refuses is said, not fatal.

/** @typedef {import("./bake.mjs").Bake} Bake */

const KEY = "bake-beside";
/** When the page last ran, apart from the bake, so that a tab that only looks on cannot write an old bake back. */
const SEEN = "bake-beside-seen";
/** What could not be read is set aside under this name and a number, so that nothing is lost by going on. */
const UNREAD = "bake-beside-unread";
/** The longest that a date can be from 1970. */
const LAST_ms = 8.64e15;

/** @typedef {{key: string, text: string}} Unread a kept bake that cannot be read, as it is */

/** There was no room to set a bake aside: it stays where it is, and nothing is written over it. */
let stuck = false;

/** @returns {{bake: Bake | null, seen: number}} */
export function recall() {
  const none = { bake: null, seen: 0 };
  try {
    const text = localStorage.getItem(KEY);
    if (text === null) return none;
    const bake = readBake(text);
    const seen = Number(localStorage.getItem(SEEN));
    if (bake) return { bake, seen: isMoment(seen) ? seen : 0 };
    setAside(text);
  } catch {
    // storage is refused
  }
  return none;
}

/** @param {string} text */
function setAside(text) {
  let name = UNREAD;
  for (let number = 2; localStorage.getItem(name) !== null; number += 1) name = `${UNREAD}-${number}`;
  try {
    localStorage.setItem(name, text);
    localStorage.removeItem(KEY);
  } catch {
    stuck = true;
  }
}

/** @returns {Unread[]} */
export function unreadBakes() {
  try {
    return Object.keys(localStorage)
      .filter((key) => key.startsWith(UNREAD) || (stuck && key === KEY))
      .sort()
      .map((key) => ({ key, text: localStorage.getItem(key) ?? "" }));
  } catch {
    return [];
  }
}

/** @param {Unread} unread */
export function dropUnread({ key }) {
  localStorage.removeItem(key);
  if (key === KEY) stuck = false;
}

/** @param {Bake | null} bake null forgets it @returns {boolean} false when the device does not keep it */
export function keep(bake) {
  if (stuck) return false;
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

/** @param {unknown} value */
const isMoment = (value) => typeof value === "number" && Math.abs(value) <= LAST_ms;

/** @param {unknown} value */
const isText = (value) => typeof value === "string";

/** @param {unknown} value */
const areTexts = (value) => typeof value === "object" && value !== null && !Array.isArray(value) && Object.values(value).every(isText);

/** @param {string} text @returns {Bake | null} */
function readBake(text) {
  try {
    const kept = JSON.parse(text);
    const before = kept.before ?? {};
    const whole =
      isMoment(kept.started) &&
      isMoment(kept.shift) &&
      isMoment(kept.offset_min) &&
      (kept.pulled === null || isMoment(kept.pulled)) &&
      isText(kept.wrote) &&
      areTexts(before) &&
      Array.isArray(kept.readings) &&
      kept.readings.every(
        (/** @type {Record<string, unknown>} */ one) => isMoment(one.at) && isText(one.text) && isText(one.unit),
      );
    return whole ? { ...kept, before, ended: kept.ended === true, saved: kept.saved === true } : null;
  } catch {
    return null;
  }
}
