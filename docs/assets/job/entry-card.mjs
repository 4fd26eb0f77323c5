// @ts-check
// One calculation on the job sheet: its answer, what it went on with, and why it may no longer hold.

import { keepCopy } from "../calculator/url-state.mjs";
import { keepVisit } from "./job-store.mjs";
import { button, element } from "./page-parts.mjs";

/** @typedef {import("./job-data.mjs").Job} Job */
/** @typedef {import("./job-data.mjs").Entry} Entry */

/**
 * @param {Job} job
 * @param {Entry} entry
 * @param {string[]} out why it is out of date
 * @param {{title: (slug: string) => string, href: string, drop: (name: string) => void}} beside href of the calculator's page,
 *   empty where this site has none
 */
export function entryCard(job, entry, out, beside) {
  const box = element("div", { class: out.length > 0 ? "job-entry job-stale" : "job-entry", "data-entry": entry.name });
  const name = entry.name === entry.slug ? beside.title(entry.slug) : `${beside.title(entry.slug)} (${entry.name})`;
  box.append(element("h3", {}, name));
  if (entry.headline) box.append(element("p", { class: "job-headline" }, entry.headline));
  else box.append(element("p", { class: "job-headline" }, "Not worked out yet."));
  for (const words of entry.stops) box.append(element("p", { class: "calc-caution calc-caution-stop" }, element("strong", {}, "Stop. "), words));
  for (const words of entry.problems) box.append(element("p", { class: "job-out" }, words));
  for (const words of out) box.append(element("p", { class: "job-out" }, element("strong", {}, "Out of date. "), words));
  for (const words of taken(job, entry, beside.title)) box.append(element("p", { class: "job-taken" }, words));
  const lines = entry.text.split("\n").slice(2).filter((line) => line.trim() !== "");
  if (lines.length > 0) {
    box.append(element("details", { class: "job-all" }, element("summary", {}, "All its answers"), element("pre", { tabindex: "0" }, lines.join("\n"))));
  }
  const acts = element("p", { class: "job-entry-acts" });
  if (beside.href !== "") {
    const link = element("a", { href: `${beside.href}?${entry.query}`, class: "md-button" }, "Open it");
    link.addEventListener("click", () => {
      keepVisit(entry.slug, { name: entry.name, take: entry.take });
      // a link leaves out what is too long for it: the tab's own copy has every field
      keepCopy(`calc:${entry.slug}`, entry.texts);
    });
    acts.append(link);
  }
  acts.append(button("Take it out", `drop-${entry.name}`, () => beside.drop(name)));
  box.append(acts);
  return box;
}

/**
 * A line for each calculation that this one goes on with.
 * @param {Job} job
 * @param {Entry} entry
 * @param {(slug: string) => string} title
 */
function taken(job, entry, title) {
  /** @type {Map<string, string[]>} */
  const bySource = new Map();
  for (const take of Object.values(entry.take)) {
    const source = job.entries.find((one) => one.name === take.from);
    const gift = source?.gifts.find((one) => one.meaning === take.meaning);
    const words = `${gift?.words ?? take.meaning} ${take.shown}`;
    bySource.set(take.from, [...(bySource.get(take.from) ?? []), words]);
  }
  const named = (/** @type {string} */ name) => title(job.entries.find((one) => one.name === name)?.slug ?? name);
  return [...bySource].map(([from, words]) => `From ${named(from)}: ${words.join("; ")}.`);
}
