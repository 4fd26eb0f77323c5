// @ts-check
// What follows from the entries of a job: what one can offer another, and which answers have gone stale.

/** @typedef {import("./job-data.mjs").Job} Job */
/** @typedef {import("./job-data.mjs").Entry} Entry */
/** @typedef {import("./job-data.mjs").Gift} Gift */

/**
 * What the job can fill in, by meaning. An answer outranks what was only entered, a later entry an earlier one; what says
 * nothing alone is offered only from an entry that has the rest of it.
 * @param {Job} job
 * @param {string} except name of the entry that asks
 * @returns {Map<string, {from: Entry, gift: Gift}>}
 */
export function offers(job, except) {
  /** @type {Map<string, {from: Entry, gift: Gift}>} */
  const found = new Map();
  for (const from of job.entries) {
    if (from.name === except || dependsOn(job, from.name, except)) continue;
    const have = new Set(from.gifts.map((gift) => gift.meaning));
    for (const gift of from.gifts) {
      if (!gift.with.every((other) => have.has(other))) continue;
      const rival = found.get(gift.meaning);
      if (rival?.gift.origin === "answer" && gift.origin !== "answer") continue;
      found.set(gift.meaning, { from, gift });
    }
  }
  return found;
}

/**
 * Whether one entry leans on another, through however many between.
 * @param {Job} job
 * @param {string} name
 * @param {string} other
 * @returns {boolean}
 */
function dependsOn(job, name, other, seen = new Set()) {
  if (other === "" || seen.has(name)) return false;
  seen.add(name);
  const entry = job.entries.find((one) => one.name === name);
  const sources = Object.values(entry?.take ?? {}).map((take) => take.from);
  return sources.some((source) => source === other || dependsOn(job, source, other, seen));
}

/**
 * Why each entry's answer no longer holds; nothing for one that does.
 * @param {Job} job
 * @param {Map<string, number>} versions of the calculators on this site, by slug
 * @param {(slug: string) => string} title
 * @returns {Map<string, string[]>}
 */
export function stale(job, versions, title) {
  /** @type {Map<string, string[]>} */
  const found = new Map();
  const byName = new Map(job.entries.map((entry) => [entry.name, entry]));
  const say = (/** @type {string} */ name, /** @type {string} */ words) => {
    const list = found.get(name) ?? [];
    if (!list.includes(words)) found.set(name, [...list, words]);
  };
  for (const entry of job.entries) {
    const version = versions.get(entry.slug);
    if (version === undefined) say(entry.name, "This site no longer has this calculator.");
    else if (entry.headline !== "" && version !== entry.version) say(entry.name, "The calculator has changed since.");
    for (const take of Object.values(entry.take)) {
      const source = byName.get(take.from);
      const gift = source?.gifts.find((one) => one.meaning === take.meaning);
      if (!source) say(entry.name, `It took a number from ${take.from}, which is no longer in this job.`);
      else if (!gift) say(entry.name, `${title(source.slug)} no longer gives what this took from it.`);
      else if (gift.text !== take.text) {
        say(entry.name, `${upper(gift.words)} is now ${gift.shown}; this was worked out with ${take.shown}.`);
      }
    }
  }
  // whatever leans on a stale answer is stale too
  for (let changed = true; changed; ) {
    changed = false;
    for (const entry of job.entries) {
      for (const take of Object.values(entry.take)) {
        const source = byName.get(take.from);
        if (source && found.has(source.name) && !found.has(entry.name)) {
          say(entry.name, `${title(source.slug)}, from which it took a number, is out of date.`);
          changed = true;
        }
      }
    }
  }
  return found;
}

/** @param {string} words */
const upper = (words) => words.charAt(0).toUpperCase() + words.slice(1);
