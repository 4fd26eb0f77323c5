// @ts-check
// node hostile_jobs.mjs ASSETS SEED COUNT: reads jobs that nobody wrote in good faith, from files and from links.
// Each must come back as a whole job or as a sentence, soon, and leave nothing behind. Prints what was wrong, and counts.

import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { deflateRawSync } from "node:zlib";

const [assets, seed, count] = process.argv.slice(2);
const load = (/** @type {string} */ name) => import(pathToFileURL(join(assets, "job", name)).href);
const { jobText, readJob, newJob } = await load("job-data.mjs");
const { fragmentOf, jobFrom } = await load("job-link.mjs");

let state = Number(seed);
/** @param {number} below */
function draw(below) {
  state = (state + 0x6d2b79f5) | 0;
  let mixed = Math.imul(state ^ (state >>> 15), state | 1);
  mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
  return ((mixed ^ (mixed >>> 14)) >>> 0) % below;
}
/** @template T @param {T[]} list */
const one = (list) => list[draw(list.length)];

const KEYS = ["__proto__", "constructor", "prototype", "toString", "hasOwnProperty", "length", "then", "toJSON", "", "0", "film", "a\ud800"];
/** @param {number} depth @returns {unknown} */
function hostile(depth = 0) {
  const kinds = depth > 3 ? 9 : 13;
  switch (draw(kinds)) {
    case 0: return null;
    case 1: return one([0, -1, 1.5, 1e308, -0, 2 ** 53, true, false]);
    case 2: return "x".repeat(one([0, 1, 80, 81, 5_000]));
    case 3: return one(["<img src=x onerror=alert(1)>", "\u0000", "\ud83d", "javascript:alert(1)", "__proto__", "2026-99-99", "00000000deadbeef"]);
    case 4: return one(["part-size", "cure-plan", "../../etc", "a".repeat(61)]);
    case 5: return [];
    case 6: return JSON.parse("{}");
    case 7: return JSON.parse('{"__proto__": {"polluted": true}}');
    case 8: return JSON.parse('{"constructor": {"prototype": {"polluted": true}}}');
    case 9: return Array.from({ length: draw(5) }, () => hostile(depth + 1));
    case 10: return Array.from({ length: one([99, 100, 101, 300]) }, () => one(["x", 1, null]));
    default: {
      /** @type {[string, unknown][]} */
      const pairs = Array.from({ length: draw(4) }, () => [one(KEYS), hostile(depth + 1)]);
      return Object.fromEntries(pairs);
    }
  }
}

const GIFT = { meaning: "film", words: "film", text: "3 mil", shown: "3 mil", origin: "answer", with: ["powder"] };
const whole = () => ({
  ...newJob("Four benches"),
  entries: [1, 2, 3].map((place) => ({
    name: `entry-${place}`, slug: "powder-needed", version: 1, texts: { film: "3", "film-unit": "mil" }, same: ["film-unit"],
    take: { area: { from: "entry-1", meaning: "coated-area", text: "4 ft2", shown: "4 ft2" } }, headline: "1.8 lb", text: "Powder: 1.8 lb",
    stop: false, stops: [], problems: [], query: "film=3&v=1", gifts: [GIFT],
  })),
  notes: { spray: "two coats" },
  ticks: { spray: true },
});

/** One place of a value, however deep, becomes something else. @param {any} value */
function spoil(value) {
  const places = Object.keys(value);
  if (places.length === 0) return;
  const place = one(places);
  const inner = value[place];
  if (typeof inner === "object" && inner !== null && draw(4) > 0) spoil(inner);
  else if (draw(6) === 0) delete value[place];
  else Object.defineProperty(value, draw(5) === 0 && !Array.isArray(value) ? one(KEYS) : place, { value: hostile(), enumerable: true, configurable: true, writable: true });
}

/** @param {string} text */
function torn(text) {
  const signs = [...text];
  for (let times = 1 + draw(4); times > 0; times -= 1) {
    const place = draw(signs.length);
    if (draw(3) === 0) signs.splice(place, 1 + draw(30));
    else if (draw(2) === 0) signs[place] = one(["{", "}", '"', ",", "\\", "\u0000", "9", "[", "]", "\u2028"]);
    else signs.splice(place, 0, ...signs.slice(place, place + draw(40)));
  }
  return signs.join("");
}

/** @type {string[]} */
const faults = [];
/** @param {unknown} is @param {string} what @param {string} source */
function must(is, what, source) {
  if (!is) faults.push(`${what}: ${source.slice(0, 300)}`);
}

const isLine = (/** @type {unknown} */ value, longest = Infinity) => typeof value === "string" && value.length <= longest;
/** @param {any} value @param {(one: any) => boolean} holds */
const eachOf = (value, holds) => Object.getPrototypeOf(value) === Object.prototype && Object.keys(value).length <= 100 && Object.values(value).every(holds);

/** What the pages count on, written down a second time. @param {any} job @param {string} source */
function isWhole(job, source) {
  must(/^[0-9a-f]{16}$/.test(job.id) && isLine(job.name, 80) && job.name !== "", "its name", source);
  must(/^\d{4}-\d\d-\d\d$/.test(job.made) && isLine(job.changed, 40), "its dates", source);
  must(eachOf(job.notes, (note) => isLine(note, 5_000)) && eachOf(job.ticks, (tick) => tick === true), "notes and ticks", source);
  must(Array.isArray(job.entries) && job.entries.length <= 100, "its entries", source);
  must(new Set(job.entries.map((/** @type {any} */ entry) => entry.name)).size === job.entries.length, "two of a name", source);
  for (const entry of job.entries) {
    must(isLine(entry.name, 80) && entry.name !== "" && /^[a-z][a-z0-9-]{0,59}$/.test(entry.slug), "name and calculator", source);
    must(Number.isInteger(entry.version) && typeof entry.stop === "boolean", "version and stop", source);
    must(eachOf(entry.texts, (text) => isLine(text, 1_000_000)), "texts", source);
    must(eachOf(entry.take, (take) => ["from", "meaning", "text", "shown"].every((part) => isLine(take[part], 400))), "take", source);
    for (const list of [entry.same, entry.stops, entry.problems]) {
      must(Array.isArray(list) && list.length <= 100 && list.every((text) => isLine(text, 1_000)), "lists", source);
    }
    must(isLine(entry.headline, 1_000) && isLine(entry.text, 200_000) && isLine(entry.query, 4_000), "answer", source);
    must(
      Array.isArray(entry.gifts) && entry.gifts.length <= 100 &&
        entry.gifts.every((/** @type {any} */ gift) =>
          ["meaning", "words", "text", "shown"].every((part) => isLine(gift[part], 400)) &&
          ["answer", "input"].includes(gift.origin) && gift.with.every((/** @type {any} */ word) => isLine(word))),
      "gifts", source,
    );
  }
}

const untouched = JSON.stringify(Object.getOwnPropertyNames(Object.prototype));
let taken = 0;
let refused = 0;
/** @param {string} source @param {() => any} read */
async function held(source, read) {
  const began = performance.now();
  try {
    const { job, problem } = await read();
    if (job) {
      taken += 1;
      must(problem === "", "a job and a problem", source);
      isWhole(job, source);
      const again = readJob(jobText(job));
      must(JSON.stringify(again.job) === JSON.stringify(job), "read back otherwise", source);
      const linked = await jobFrom(await fragmentOf(job));
      // what is too long for a link is said when the link is opened
      must(linked.job !== null || linked.problem !== "", "its link", source);
    } else {
      refused += 1;
      must(typeof problem === "string", "no sentence", source);
    }
  } catch (reason) {
    must(false, `threw ${reason}`, source);
  }
  must(performance.now() - began < 120_000, `took ${Math.round(performance.now() - began)} ms`, source);
  must(/** @type {any} */ ({}).polluted === undefined && JSON.stringify(Object.getOwnPropertyNames(Object.prototype)) === untouched, "polluted", source);
}

/** @param {string | Buffer} text */
const linkOf = (text) => `#job=${deflateRawSync(text).toString("base64url")}`;

for (let turn = 0; turn < Number(count); turn += 1) {
  const job = whole();
  for (let times = draw(4); times > 0; times -= 1) spoil(job);
  let text = JSON.stringify({ kind: "coating job", format: one([1, 1, 1, 1, 0, 2, "1", null]), job }, null, one([0, 1]));
  if (draw(3) === 0) text = torn(text);
  await held(text, () => readJob(text));
  await held(JSON.stringify(hostile()), () => readJob(JSON.stringify(hostile()) ?? ""));

  const parts = [1, "Four benches", "2026-11-25", [["entry-1", "powder-needed", 1, { film: "3" }, [["area", "entry-0", "coated-area", "4 ft2"]]]], { spray: "x" }, ["spray"]];
  for (let times = draw(4); times > 0; times -= 1) spoil(parts);
  let packed = linkOf(draw(4) === 0 ? torn(JSON.stringify(parts)) : JSON.stringify(parts));
  if (draw(4) === 0) packed = torn(packed);
  await held(packed, () => jobFrom(packed));
}

// what would fill the memory, or take minutes
const bombs = [
  linkOf(Buffer.alloc(100_000_000)),
  linkOf(Buffer.from(`[${"[".repeat(2_000_000)}`)),
  linkOf(Buffer.from(JSON.stringify([1, "x", "", [["a", "part-size", 1, "y".repeat(3_000_000), []]], {}, []]))),
  linkOf(Buffer.from(JSON.stringify([1, "x", "", [["a", "part-size", 1, {}, "z".repeat(3_000_000)]], {}, []]))),
  linkOf(Buffer.from(JSON.stringify([1, "x", "", Array.from({ length: 300_000 }, (_, place) => [`e${place}`, "a", 1, {}, []]), {}, []]))),
  linkOf(Buffer.from(JSON.stringify([1, "x", "", [], {}, Array.from({ length: 900_000 }, () => "t")]))),
  linkOf(Buffer.from([0xff, 0xfe, 0xfd])),
  `#job=${"A".repeat(50_000_000)}`,
  "#job=", "#job=%%%%", "#job=\ud800", "job=", "#", "",
];
for (const bomb of bombs) await held(bomb, () => jobFrom(bomb));
const files = [
  `{"kind": "coating job", "format": 1, "job": ${"[".repeat(3_000_000)}`,
  `{"kind": "coating job", "format": 1, "job": {"entries": ${"[[".repeat(1_000_000)}}}`,
  JSON.stringify({ kind: "coating job", format: 1, job: { entries: Array.from({ length: 100_000 }, () => ({})) } }),
  "x".repeat(5_000_000),
];
for (const file of files) await held(file, () => readJob(file));

console.log(JSON.stringify({ faults: faults.slice(0, 12), count: faults.length, taken, refused }));
