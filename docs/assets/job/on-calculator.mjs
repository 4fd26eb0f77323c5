// @ts-check
// A calculator's page beside a job: puts the answer into the job, and offers the job's numbers to the fields.

import { defaultTexts, fieldBox, labelOf, readTexts, writeMeasure, writeText } from "../calculator/fields.mjs";
import { note } from "../calculator/notes.mjs";
import { freeName, newJob } from "./job-data.mjs";
import { offers } from "./job-state.mjs";
import { changeJob, currentJob, keepVisit, makeCurrent, onOtherTab, storeJob, visitOf } from "./job-store.mjs";

/** @typedef {import("../calculator/asking.mjs").Asking} Asking */
/** @typedef {import("./job-data.mjs").Entry} Entry */
/** @typedef {import("./job-data.mjs").Job} Job */
/** @typedef {import("./job-data.mjs").Take} Take */
/**
 * @typedef {object} Beside what the job must know of the form
 * @property {string} slug
 * @property {string} title
 * @property {string} base from this page to the site's root
 * @property {HTMLFormElement} form
 * @property {Asking} asking
 * @property {(words: string) => void} say
 * @property {() => void} changed fields were filled: ask again
 */

/**
 * @param {Beside} beside
 * @param {boolean} [another] as a further entry, where the job has one of this calculator
 */
export async function addToJob(beside, another = false) {
  const { slug, form, asking, say } = beside;
  await asking.settle();
  const response = asking.response;
  if (!response?.ok) return say("Not added: the answer shown is not for what the fields hold.");
  const rest = await response.rest?.catch(() => null);
  if (!rest) return say("Not added: a part of the answer did not come. Reload the page: what you typed is kept.");
  const old = currentJob();
  const job = old ?? newJob("My job");
  const visit = visitOf(slug);
  let name = "";
  const take = stillTaken(visit.take, response.query, form);
  const add = (/** @type {Job} */ now) => {
    const same = now.entries.find((one) => one.name === visit.name && one.slug === slug) ?? now.entries.find((one) => one.slug === slug);
    name = same && !another ? same.name : freeName(slug, now.entries);
    const entry = entryOf(name, slug, form, response, rest.text, take);
    const place = now.entries.findIndex((one) => one.name === name);
    if (place < 0) now.entries.push(entry);
    else now.entries[place] = entry;
  };
  if (!old) add(job);
  const problem = old ? changeJob(job.id, add, storeJob) : storeJob(job);
  if (problem !== "") return say(`Not added. ${problem}`);
  if (!old) makeCurrent(job.id);
  keepVisit(slug, { name, take });
  say(`In the job sheet of ${job.name}: ${response.headline}.`);
  const go = { words: "Open the job sheet", act: () => location.assign(`${beside.base}job/job-sheet/`) };
  const more = { words: "Add it as one more", act: () => void addToJob(beside, true) };
  note(form, "job", `This answer is in the job “${job.name}” as ${name}.`, [go, more]);
  offerAll(beside);
}

/**
 * @param {string} name
 * @param {string} slug
 * @param {HTMLFormElement} form
 * @param {import("../calculator/asking.mjs").Response} response
 * @param {string} text
 * @param {Record<string, Take>} take
 * @returns {Entry}
 */
function entryOf(name, slug, form, response, text, take) {
  const { version, headline, stop, query, gifts } = response;
  const stops = response.cautions.filter((one) => one.level === "stop").map((one) => one.text);
  const texts = readTexts(form);
  const start = defaultTexts(form);
  const same = Object.keys(texts).filter((key) => texts[key] === start[key]);
  return { name, slug, version, texts, same, take, headline, text, stop, stops, problems: [], query, gifts };
}

/**
 * What was taken and has not been typed over since.
 * @param {Record<string, Take>} take
 * @param {string} query
 * @param {HTMLFormElement} form
 */
function stillTaken(take, query, form) {
  const asked = new URLSearchParams(query);
  const texts = readTexts(form);
  const holds = (/** @type {string} */ key, /** @type {Take} */ one) =>
    (asked.get(key) ?? texts[key] ?? "") === one.text && !fieldBox(form, key)?.hidden;
  return Object.fromEntries(Object.entries(take).filter(([key, one]) => holds(key, one)));
}

/** Shows beside each field what the job can fill in. @param {Beside} beside */
export function offerAll(beside) {
  const { form, slug } = beside;
  for (const old of form.querySelectorAll(".calc-offer")) old.remove();
  const job = currentJob();
  if (!job) return;
  const visit = visitOf(slug);
  const found = offers(job, visit.name || slug);
  const boxes = /** @type {HTMLElement[]} */ ([...form.querySelectorAll("[data-meaning]")]);
  const fillable = boxes.filter((box) => found.has(box.dataset.meaning ?? "") && hasChoice(form, box, found));
  for (const box of fillable) {
    const { from, gift } = /** @type {{from: Entry, gift: import("./job-data.mjs").Gift}} */ (found.get(box.dataset.meaning ?? ""));
    const line = document.createElement("span");
    line.className = "calc-offer";
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = `Use ${gift.shown}`;
    button.setAttribute("aria-label", `Use ${gift.shown} for ${labelOf(form, box.dataset.field ?? "")}`);
    const where = gift.origin === "answer" ? "answer" : "entry";
    line.append(button, ` ${gift.words}, ${where} of ${from.name} in “${job.name}”`);
    button.addEventListener("click", () => fill(beside, box, found));
    box.append(line);
  }
  if (fillable.length < 2) return;
  const all = () => {
    for (const box of fillable) put(beside, box, found);
    beside.changed();
    beside.say(`${fillable.length} fields filled from the job. Check each one.`);
  };
  note(form, "offers", `The job “${job.name}” can fill ${fillable.length} fields here.`, [{ words: "Fill them all", act: all }]);
}

/**
 * @param {HTMLFormElement} form
 * @param {HTMLElement} box
 * @param {ReturnType<typeof offers>} found
 */
function hasChoice(form, box, found) {
  const key = box.dataset.field ?? "";
  const text = found.get(box.dataset.meaning ?? "")?.gift.text ?? "";
  const options = [...form.elements].filter((one) => /** @type {HTMLInputElement} */ (one).name === key);
  const first = options[0];
  if (first instanceof HTMLSelectElement) return [...first.options].some((option) => option.value === text);
  if (first instanceof HTMLInputElement && first.type === "radio") {
    return options.some((option) => /** @type {HTMLInputElement} */ (option).value === text);
  }
  return true;
}

/**
 * @param {Beside} beside
 * @param {HTMLElement} box
 * @param {ReturnType<typeof offers>} found
 */
function fill(beside, box, found) {
  put(beside, box, found);
  // what says nothing alone comes along: a thickness with how it is heated
  for (const other of found.get(box.dataset.meaning ?? "")?.gift.with ?? []) {
    const other_ = beside.form.querySelector(`[data-meaning="${CSS.escape(other)}"]`);
    if (other_ instanceof HTMLElement && found.has(other)) put(beside, other_, found);
  }
  beside.changed();
}

/**
 * @param {Beside} beside
 * @param {HTMLElement} box
 * @param {ReturnType<typeof offers>} found
 */
function put({ form, slug }, box, found) {
  const offered = found.get(box.dataset.meaning ?? "");
  if (!offered) return;
  const key = box.dataset.field ?? "";
  writeMeasure(form, key, offered.gift.text);
  open(form, box);
  const visit = visitOf(slug);
  const take = { from: offered.from.name, meaning: offered.gift.meaning, text: offered.gift.text, shown: offered.gift.shown };
  keepVisit(slug, { ...visit, take: { ...visit.take, [key]: take } });
}

/** Sets what a field hangs on, so that it is asked. @param {HTMLFormElement} form @param {HTMLElement} box */
function open(form, box) {
  const key = box.dataset.whenKey;
  if (!key) return;
  const values = (box.dataset.whenValues ?? "").split(/\s+/);
  if (!values.includes(readTexts(form)[key] ?? "")) writeText(form, key, values[0] ?? "");
  const parent = fieldBox(form, key);
  if (parent) open(form, parent);
}

/** @param {Beside} beside */
export function watchJob(beside) {
  offerAll(beside);
  onOtherTab(() => offerAll(beside));
}
