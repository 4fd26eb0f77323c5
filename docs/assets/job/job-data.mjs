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
// Far more than any job needs: a log of as many lines as a calculator reads fits. They keep out what was not written as a job.
export const LONGEST_JOB = 4_000_000;
const LONGEST_FIELD = 1_000_000;
const LONGEST_NOTE = 5_000;
export const LONGEST_NAME = 80;
const LONGEST_ANSWER = 200_000;
const MOST_ENTRIES = 100;
const MOST_PARTS = 100;

/** Why something is not taken as a job: a sentence for the reader, without its full stop. Nothing is ever cut to fit. */
export class Unfit extends Error {}

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
  if (text.length > LONGEST_JOB) return refused(`${TOO_LARGE}. It was left as it is.`);
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
  try {
    return { job: jobOf(read.job), problem: "" };
  } catch (reason) {
    if (!(reason instanceof Unfit)) throw reason;
    return refused(`${reason.message}. It was left as it is.`);
  }
}

/**
 * Why this job could not be read back once it is stored; empty where it can be.
 * @param {Job} job
 * @param {string} text of this job
 */
export function unfit(job, text) {
  if (text.length > LONGEST_JOB) return `${TOO_LARGE}.`;
  try {
    jobOf(job);
    return "";
  } catch (reason) {
    if (!(reason instanceof Unfit)) throw reason;
    return `${reason.message}.`;
  }
}

/** @param {string} problem @returns {{job: null, problem: string}} */
function refused(problem) {
  return { job: null, problem };
}

/** @param {unknown} value @returns {value is Record<string, unknown>} */
export function isRecord(value) {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** @param {number} number */
const figure = (number) => number.toLocaleString("en-US");

const DAMAGED = "This job is damaged";
export const TOO_LARGE = `A job has at most ${figure(LONGEST_JOB)} characters, and this one has more`;

/**
 * Text as it is; anything else is none.
 * @param {unknown} value
 * @param {number} longest
 * @param {string} what it is, to begin a sentence with
 */
function line(value, longest, what) {
  if (typeof value !== "string") return "";
  if (value.length > longest) throw new Unfit(`${what} has at most ${figure(longest)} characters, and this one has ${figure(value.length)}`);
  return value;
}

/** @template T @param {T[]} list @param {string} what @param {string} parts @param {number} most @returns {T[]} */
function atMost(list, what, parts, most = MOST_PARTS) {
  if (list.length > most) throw new Unfit(`${what} has at most ${most} ${parts}, and this one has ${figure(list.length)}`);
  return list;
}

/**
 * Texts by name. One that is no text would be answered with the example's, so it is refused.
 * @param {unknown} value
 * @param {number} longest
 * @param {(key: string) => string} what
 * @returns {Record<string, string>}
 */
function lines(value, longest, what) {
  if (!isRecord(value)) return {};
  const pairs = atMost(Object.entries(value), "A part of a job", "fields or notes");
  if (pairs.some((pair) => typeof pair[1] !== "string")) throw new Unfit(DAMAGED);
  return Object.fromEntries(pairs.map(([key, text]) => [line(key, 60, "The name of a field or step"), line(text, longest, what(key))]));
}

/**
 * A job from what may be one.
 * @param {unknown} value
 * @returns {Job}
 * @throws {Unfit}
 */
export function jobOf(value) {
  if (!isRecord(value) || !Array.isArray(value.entries)) throw new Unfit(DAMAGED);
  const entries = atMost(value.entries, "A job", "calculations", MOST_ENTRIES).map(entryOf);
  if (new Set(entries.map((one) => one.name)).size !== entries.length) throw new Unfit(DAMAGED);
  const ticks = isRecord(value.ticks) ? atMost(Object.entries(value.ticks), "A job", "ticks") : [];
  const date = (/** @type {unknown} */ text) => line(text, 40, "The date of a job");
  return {
    id: typeof value.id === "string" && /^[0-9a-f]{16}$/.test(value.id) ? value.id : newJob("").id,
    name: line(value.name, LONGEST_NAME, "The name of a job") || "Job",
    made: /^\d{4}-\d\d-\d\d$/.test(date(value.made)) ? date(value.made) : localDay(new Date()),
    changed: date(value.changed),
    entries,
    notes: lines(value.notes, LONGEST_NOTE, () => "A note"),
    ticks: Object.fromEntries(ticks.filter((pair) => pair[1] === true).map(([key]) => [line(key, 60, "The name of a step"), true])),
  };
}

/** @param {unknown} value @returns {Entry} */
function entryOf(value) {
  if (!isRecord(value)) throw new Unfit(DAMAGED);
  const slug = line(value.slug, 60, "The name of a calculator");
  const name = line(value.name, 80, "The name of a calculation");
  if (!/^[a-z][a-z0-9-]*$/.test(slug) || name === "") throw new Unfit(DAMAGED);
  const answer = (/** @type {unknown} */ text, longest = 1_000) => line(text, longest, `A part of an answer of ${slug}`);
  const list = (/** @type {unknown} */ part) => (Array.isArray(part) ? atMost(part, `An answer of ${slug}`, "parts of a kind") : []);
  const texts = (/** @type {unknown} */ part) => list(part).filter((one) => typeof one === "string").map((one) => answer(one));
  return {
    name,
    slug,
    version: Number.isInteger(value.version) ? Number(value.version) : 0,
    texts: lines(value.texts, LONGEST_FIELD, (key) => `The field ${key} of ${slug}`),
    same: texts(value.same),
    take: Object.fromEntries(
      list(isRecord(value.take) ? Object.entries(value.take) : [])
        .filter((pair) => isRecord(pair[1]))
        .map(([key, one]) => [line(key, 60, "The name of a field"), takeOf(one)]),
    ),
    headline: answer(value.headline),
    text: answer(value.text, LONGEST_ANSWER),
    stop: value.stop === true,
    stops: texts(value.stops),
    problems: texts(value.problems),
    query: answer(value.query, 4_000),
    gifts: list(value.gifts)
      .filter(isRecord)
      .map((one) => ({
        meaning: answer(one.meaning, 60),
        words: answer(one.words, 100),
        text: answer(one.text, 400),
        shown: answer(one.shown, 400),
        origin: one.origin === "answer" ? "answer" : "input",
        with: texts(one.with),
      })),
  };
}

/** @param {Record<string, unknown>} value @returns {Take} */
function takeOf(value) {
  const part = (/** @type {unknown} */ text, longest = 400) => line(text, longest, "A number taken from another calculation");
  const { from, meaning, text, shown } = value;
  return { from: part(from, 80), meaning: part(meaning, 60), text: part(text), shown: part(shown) || part(text) };
}

/** @param {string} name @param {Entry[]} entries a name that none of them has */
export function freeName(name, entries) {
  const used = new Set(entries.map((one) => one.name));
  let number = 2;
  if (!used.has(name)) return name;
  while (used.has(`${name}-${number}`)) number += 1;
  return `${name}-${number}`;
}
