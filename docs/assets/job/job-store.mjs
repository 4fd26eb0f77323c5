// @ts-check
// Jobs on this device: one item of local storage a job, so that two tabs never write over each other's.

import { isRecord, jobText, readJob, unfit } from "./job-data.mjs";

/** @typedef {import("./job-data.mjs").Job} Job */
/** @typedef {{key: string, text: string, problem: string}} Unread a stored job that cannot be read, kept as it is */

const PREFIX = "job:";
const CURRENT = "job-current";
const REFUSED = "This browser keeps nothing for this site";
const FULL = "This device has no room left for the job";

/** Jobs that could not be stored, for as long as the page is open. @type {Map<string, Job>} */
const unstored = new Map();
let currentUnstored = "";

/** @returns {Storage | null} */
function storage() {
  try {
    return localStorage;
  } catch {
    return null;
  }
}

/** @returns {{jobs: Job[], unread: Unread[]}} newest first */
export function allJobs() {
  const kept = storage();
  /** @type {Map<string, Job>} */
  const jobs = new Map();
  /** @type {Unread[]} */
  const unread = [];
  for (let place = 0; kept && place < kept.length; place += 1) {
    const key = kept.key(place) ?? "";
    if (!key.startsWith(PREFIX)) continue;
    const text = kept.getItem(key) ?? "";
    const { job, problem } = readJob(text);
    if (job) jobs.set(key.slice(PREFIX.length), { ...job, id: key.slice(PREFIX.length) });
    else unread.push({ key, text, problem });
  }
  for (const [id, job] of unstored) jobs.set(id, job);
  return { jobs: [...jobs.values()].sort((a, b) => b.changed.localeCompare(a.changed)), unread };
}

/**
 * @param {string} id
 * @returns {{job: Job, problem: ""} | {job: null, problem: string}} the problem is said to the reader
 */
function stored(id) {
  const held = unstored.get(id);
  if (held) return { job: held, problem: "" };
  const text = storage()?.getItem(PREFIX + id) ?? null;
  if (text === null) return { job: null, problem: "This job was deleted in another tab." };
  const read = readJob(text);
  return read.job ? { job: { ...read.job, id }, problem: "" } : read;
}

/** @param {string} id @returns {Job | null} */
export function jobById(id) {
  return stored(id).job;
}

/** Whether something is kept under this id, readable or not. @param {string} id */
export function isTaken(id) {
  return unstored.has(id) || (storage()?.getItem(PREFIX + id) ?? null) !== null;
}

/** @returns {Job | null} */
export function currentJob() {
  const id = currentUnstored || storage()?.getItem(CURRENT) || "";
  return id === "" ? null : jobById(id);
}

/** @param {string} id */
export function makeCurrent(id) {
  currentUnstored = id;
  try {
    storage()?.setItem(CURRENT, id);
    if (storage()) currentUnstored = "";
  } catch {
    // the page goes on with its own
  }
}

/**
 * Change a job: read as it stands now, in whichever tab it was changed last, and written back at once.
 * @param {string} id
 * @param {(job: Job) => void} change
 * @param {(job: Job) => string} [put]
 * @returns {string} what went wrong, for the reader
 */
export function changeJob(id, change, put = putJob) {
  const { job, problem } = stored(id);
  if (!job) return problem;
  // what does not fit must leave a job that only this page holds as it was
  const changed = structuredClone(job);
  change(changed);
  return put(changed);
}

/** Store a job, or hold it for as long as the page is open. @param {Job} job @returns {string} what went wrong, for the reader */
export function putJob(job) {
  const { problem, fits } = store(job);
  if (problem === "") unstored.delete(job.id);
  if (problem === "" || !fits) return problem;
  unstored.set(job.id, job);
  return `${problem}: save it as a file before you leave the page${problem === FULL ? ", or delete old jobs" : ""}.`;
}

/** Store a job, or leave all as it was: for a page that will be left. @param {Job} job @returns {string} what went wrong, for the reader */
export function storeJob(job) {
  const { problem, fits } = store(job);
  if (problem === "") unstored.delete(job.id);
  if (problem === "" || !fits) return problem;
  return problem === FULL ? `${problem}: save old jobs as files and delete them.` : `${problem}.`;
}

/** @param {Job} job @returns {{problem: string, fits: boolean}} fits: it is no larger than a job may be */
function store(job) {
  job.changed = new Date().toISOString();
  const text = jobText(job);
  const problem = unfit(job, text);
  if (problem !== "") return { problem, fits: false };
  const kept = storage();
  try {
    if (!kept) throw new Error("refused");
    kept.setItem(PREFIX + job.id, text);
    return { problem: "", fits: true };
  } catch (reason) {
    const full = kept && reason instanceof DOMException && reason.name === "QuotaExceededError";
    return { problem: full ? FULL : REFUSED, fits: true };
  }
}

/** @param {string} id */
export function dropJob(id) {
  unstored.delete(id);
  storage()?.removeItem(PREFIX + id);
  if (storage()?.getItem(CURRENT) === id) storage()?.removeItem(CURRENT);
  if (currentUnstored === id) currentUnstored = "";
}

/** @param {string} key of a stored job that cannot be read */
export function dropUnread(key) {
  if (key.startsWith(PREFIX)) storage()?.removeItem(key);
}

/** @param {() => void} told when another tab changed a job */
export function onOtherTab(told) {
  addEventListener("storage", (event) => {
    if (event.key === null || event.key.startsWith(PREFIX) || event.key === CURRENT) told();
  });
}

// What a calculator's page must know of where it was opened from lasts as long as its tab.

/** @typedef {import("./job-data.mjs").Take} Take */
/** @typedef {{name: string, take: Record<string, Take>}} Visit which entry the page's form stands for */

/** @param {string} slug @returns {Visit} */
export function visitOf(slug) {
  try {
    const kept = JSON.parse(sessionStorage.getItem(`job-visit:${slug}`) ?? "null");
    if (isRecord(kept) && typeof kept.name === "string" && isRecord(kept.take) && Object.values(kept.take).every(isTake)) {
      return /** @type {Visit} */ (kept);
    }
  } catch {
    // refused or damaged: the form stands for nothing yet
  }
  return { name: "", take: {} };
}

/** @param {unknown} value @returns {value is Take} */
function isTake(value) {
  return isRecord(value) && ["from", "meaning", "text", "shown"].every((part) => typeof value[part] === "string");
}

/** @param {string} slug @param {Visit} visit */
export function keepVisit(slug, visit) {
  try {
    sessionStorage.setItem(`job-visit:${slug}`, JSON.stringify(visit));
  } catch {
    // it is added as a new one then
  }
}
