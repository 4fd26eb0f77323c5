// @ts-check
// A link or this tab's own copy, back into the fields; and the address kept in step with them.

import { defaultTexts, keys, labelOf, readTexts, writeMeasure, writeText, controls } from "./fields.mjs";

/** @typedef {import("./fields.mjs").Texts} Texts */

/** Names that a link may hold and no field has: the version, and two that the site's search adds. */
const RESERVED = new Set(["v", "q", "h"]);

/**
 * The slug of the page: the last part of its address that names something.
 * @param {string} pathname
 */
export function pageSlug(pathname) {
  return pathname.replace(/index\.html$/, "").replace(/\.html$/, "").split("/").filter(Boolean).at(-1) ?? "";
}

/**
 * Puts a link's values into the fields, save those that hold something typed already.
 * @param {HTMLFormElement} form
 * @param {string} search
 * @param {number} version of the calculator on this page
 * @returns {{used: string[], notes: string[]}} the fields that the link spoke for, and what to tell the reader
 */
export function readLink(form, search, version) {
  const query = new URLSearchParams(search);
  const names = new Set(controls(form).map((control) => control.name));
  const fields = keys(form);
  const typed = typedNames(form);
  /** @type {string[]} */
  const used = [];
  /** @type {string[]} */
  const notes = [];
  const unknown = [...new Set(query.keys())].filter((name) => !names.has(name) && !RESERVED.has(name));
  for (const name of new Set(query.keys())) {
    if (!names.has(name)) continue;
    used.push(name);
    if (typed.has(name)) continue;
    const isKey = fields.includes(name);
    const text = query.getAll(name).join("\n");
    const found = isKey ? writeMeasure(form, name, text) : writeText(form, name, text);
    if (!found) notes.push(`The link held “${short(text)}” for ${labelOf(form, name)}, which is not one of its choices.`);
  }
  if (unknown.length > 0) {
    const some = unknown.slice(0, 3).map((name) => `“${short(name)}”`).join(", ");
    const more = unknown.length > 3 ? ` and ${unknown.length - 3} more` : "";
    notes.push(`The link also held ${some}${more}, which this calculator does not have. It was left out.`);
  }
  const made = Number(query.get("v"));
  if (used.length > 0 && Number.isInteger(made) && made > 0 && made !== version) {
    notes.push(
      made < version
        ? "This calculator has changed since the link was made. The fields are as the link had them; check them, " +
            "and expect another answer than before."
        : "The link was made with a newer calculator than this page holds. Reload the page to get the newer one.",
    );
  }
  return { used, notes };
}

/**
 * @param {HTMLFormElement} form
 * @returns {Set<string>}
 */
export function typedNames(form) {
  const now = readTexts(form);
  const start = defaultTexts(form);
  return new Set(Object.keys(now).filter((name) => now[name] !== start[name]));
}

/** @param {string} text */
function short(text) {
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}

/**
 * Keeps the address in step. Some browsers refuse when it changes too often: the next answer writes it again.
 * @param {string} query
 */
export function writeAddress(query) {
  try {
    history.replaceState(history.state, "", `${location.pathname}?${query}${location.hash}`);
  } catch {
    // nothing is lost: the tab's own copy has every field
  }
}

/**
 * Writes what the fields hold to this tab's own copy.
 * @param {string} name
 * @param {Texts | null} texts null forgets the copy
 */
export function keepCopy(name, texts) {
  try {
    if (texts === null) sessionStorage.removeItem(name);
    else sessionStorage.setItem(name, JSON.stringify({ texts, search: location.search }));
  } catch {
    // storage may be refused or full; the page works without it
  }
}

/**
 * @param {string} name
 * @returns {{texts: Texts, search: string} | null}
 */
export function recallCopy(name) {
  try {
    const copy = JSON.parse(sessionStorage.getItem(name) ?? "null");
    return copy?.texts && typeof copy.texts === "object" ? copy : null;
  } catch {
    return null;
  }
}

/**
 * Whether this is the very page the copy was typed on, come back to: then the copy is newer than its address,
 * which follows only what could be read.
 * @param {{search: string}} copy
 */
export function isReturnTo(copy) {
  const entry = /** @type {PerformanceNavigationTiming | undefined} */ (performance.getEntriesByType("navigation")[0]);
  return (entry?.type === "reload" || entry?.type === "back_forward") && copy.search === location.search;
}

/**
 * Puts the copy's texts into the fields, save the names given and those that hold something typed already.
 * @param {HTMLFormElement} form
 * @param {Texts} texts
 * @param {string[]} except
 */
export function writeCopy(form, texts, except) {
  const typed = typedNames(form);
  const start = defaultTexts(form);
  for (const [name, text] of Object.entries(texts)) {
    if (except.includes(name) || except.includes(name.replace(/-unit$/, "")) || typed.has(name)) continue;
    if (!(name in start) || typeof text !== "string") continue;
    if (!writeText(form, name, text)) writeText(form, name, start[name] ?? "");
  }
}
