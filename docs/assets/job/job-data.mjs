// @ts-check
// What a job is, and how one is read back from a file, a link or this device. Whatever comes in is taken as hostile.

/** @typedef {{meaning: string, words: string, text: string, shown: string, origin: string, with: string[]}} Gift */
/** @typedef {{from: string, meaning: string, text: string, shown: string}} Take shown: the text as a reader sees it */
/**
 * @typedef {object} Entry one calculation of the job
 * @property {string} name unique in the job
 * @property {string} slug
 * @property {number} version of the calculator that answered
 * @property {Record<string, string>} texts the fields, as typed
 * @property {string[]} same names of the fields that hold the calculator's example, which a link leaves out
 * @property {Record<string, Take>} take fields filled by another entry, with what it gave
 * @property {string} headline empty where there is no answer yet
 * @property {string} text the answer as plain text
 * @property {boolean} stop
 * @property {string[]} stops the stop cautions
 * @property {string[]} problems why it has no answer
 * @property {string} query
 * @property {Gift[]} gifts
 */
/**
 * @typedef {object} Job
 * @property {string} id
 * @property {string} name
 * @property {string} made ISO day
 * @property {string} changed ISO time
 * @property {Entry[]} entries
 * @property {Record<string, string>} notes by step
 * @property {Record<string, boolean>} ticks by step
 */

export const FORMAT = 1;
const KIND = "coating job";
const LONGEST_FILE = 4_000_000;
const MOST_ENTRIES = 100;
const MOST_FIELDS = 100;

/** @param {string} name @returns {Job} */
export function newJob(name) {
  const now = new Date();
  const id = [...crypto.getRandomValues(new Uint8Array(8))].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  return { id, name, made: localDay(now), changed: now.toISOString(), entries: [], notes: {}, ticks: {} };
}

/** @param {Date} date */
export function localDay(date) {
  const two = (/** @type {number} */ n) => String(n).padStart(2, "0");
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** @param {Job} job */
export function jobText(job) {
  return JSON.stringify({ kind: KIND, format: FORMAT, job }, null, 1);
}

/**
 * A job from its text.
 * @param {string} text
 * @returns {{job: Job, problem: ""} | {job: null, problem: string}}
 */
export function readJob(text) {
  if (text.length > LONGEST_FILE) return refused("This is larger than any job: it was left as it is.");
  let read;
  try {
    read = JSON.parse(text);
  } catch {
    return refused("This is not a job, or it is damaged: it was left as it is.");
  }
  if (!isRecord(read) || read.kind !== KIND || typeof read.format !== "number") {
    return refused("This is not a job of this site: it was left as it is.");
  }
  if (read.format > FORMAT) {
    return refused("This job was made with a newer version of this site. Reload the page to get it; the job was left as it is.");
  }
  const job = jobOf(read.job);
  return job ? { job, problem: "" } : refused("This job is damaged: it was left as it is.");
}

/** @param {string} problem @returns {{job: null, problem: string}} */
function refused(problem) {
  return { job: null, problem };
}

/** @param {unknown} value @returns {value is Record<string, unknown>} */
function isRecord(value) {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** @param {unknown} value @param {number} longest */
const line = (value, longest = 400) => (typeof value === "string" ? value.slice(0, longest) : "");

/** @param {unknown} value @param {number} longest @returns {Record<string, string>} */
function lines(value, longest) {
  if (!isRecord(value)) return {};
  const pairs = Object.entries(value).slice(0, MOST_FIELDS);
  return Object.fromEntries(pairs.filter((pair) => typeof pair[1] === "string").map(([key, text]) => [line(key, 60), line(text, longest)]));
}

/** @param {unknown} value @returns {Job | null} */
export function jobOf(value) {
  if (!isRecord(value) || !Array.isArray(value.entries)) return null;
  const id = /^[0-9a-f]{16}$/.test(line(value.id)) ? line(value.id) : newJob("").id;
  const entries = value.entries.slice(0, MOST_ENTRIES).map(entryOf);
  const whole = /** @type {Entry[]} */ (entries.filter(Boolean));
  if (whole.length !== entries.length || new Set(whole.map((one) => one.name)).size !== whole.length) return null;
  const ticks = isRecord(value.ticks) ? Object.entries(value.ticks).slice(0, MOST_FIELDS) : [];
  return {
    id,
    name: line(value.name, 80) || "Job",
    made: /^\d{4}-\d\d-\d\d$/.test(line(value.made)) ? line(value.made) : localDay(new Date()),
    changed: line(value.changed, 40),
    entries: whole,
    notes: lines(value.notes, 5_000),
    ticks: Object.fromEntries(ticks.filter((pair) => pair[1] === true).map(([key]) => [line(key, 60), true])),
  };
}

/** @param {unknown} value @returns {Entry | null} */
function entryOf(value) {
  if (!isRecord(value)) return null;
  const slug = line(value.slug, 60);
  const name = line(value.name, 80);
  if (!/^[a-z][a-z0-9-]*$/.test(slug) || name === "") return null;
  const gifts = Array.isArray(value.gifts) ? value.gifts.slice(0, MOST_FIELDS).filter(isRecord) : [];
  const take = isRecord(value.take) ? Object.entries(value.take).slice(0, MOST_FIELDS) : [];
  const texts = (/** @type {unknown} */ list) =>
    Array.isArray(list) ? list.slice(0, MOST_FIELDS).filter((one) => typeof one === "string").map((one) => line(one, 1_000)) : [];
  return {
    name,
    slug,
    version: Number.isInteger(value.version) ? Number(value.version) : 0,
    texts: lines(value.texts, 300_000),
    same: texts(value.same),
    take: Object.fromEntries(
      take
        .filter((pair) => isRecord(pair[1]))
        .map(([key, one]) => {
          const { from, meaning, text, shown } = /** @type {Record<string, unknown>} */ (one);
          const take = { from: line(from, 80), meaning: line(meaning, 60), text: line(text), shown: line(shown) || line(text) };
          return [line(key, 60), take];
        }),
    ),
    headline: line(value.headline, 1_000),
    text: line(value.text, 20_000),
    stop: value.stop === true,
    stops: texts(value.stops),
    problems: texts(value.problems),
    query: line(value.query, 4_000),
    gifts: gifts.map((one) => ({
      meaning: line(one.meaning, 60),
      words: line(one.words, 100),
      text: line(one.text),
      shown: line(one.shown),
      origin: one.origin === "answer" ? "answer" : "input",
      with: texts(one.with),
    })),
  };
}

/** @param {string} name @param {Entry[]} entries a name that none of them has */
export function freeName(name, entries) {
  const used = new Set(entries.map((one) => one.name));
  let number = 2;
  if (!used.has(name)) return name;
  while (used.has(`${name}-${number}`)) number += 1;
  return `${name}-${number}`;
}
