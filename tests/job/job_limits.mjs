// @ts-check
// node job_limits.mjs ASSETS: a job at each limit and one beyond it, through file, link and storage. Prints what came of it.

import { join } from "node:path";
import { pathToFileURL } from "node:url";

const [assets] = process.argv.slice(2);
/** @type {Map<string, string>} */
const items = new Map();
const storage = {
  get length() { return items.size; },
  key: (/** @type {number} */ place) => [...items.keys()][place] ?? null,
  getItem: (/** @type {string} */ key) => items.get(key) ?? null,
  setItem: (/** @type {string} */ key, /** @type {string} */ text) => void items.set(key, String(text)),
  removeItem: (/** @type {string} */ key) => void items.delete(key),
};
Object.assign(globalThis, { localStorage: storage, sessionStorage: storage });

const load = (/** @type {string} */ name) => import(pathToFileURL(join(assets, "job", name)).href);
const { jobText, readJob, newJob } = await load("job-data.mjs");
const { fragmentOf, jobFrom } = await load("job-link.mjs");
const { changeJob, putJob, visitOf } = await load("job-store.mjs");

/** @param {number} place @param {string} log */
const entry = (place, log) => ({
  name: `entry-${place}`, slug: "bake-log", version: 1, texts: { log }, same: [], take: {}, headline: "", text: "", stop: false,
  stops: [], problems: [], query: "", gifts: [],
});
/** @param {any[]} entries */
const jobWith = (entries) => ({ ...newJob("Gate"), entries });
const entries = (/** @type {number} */ count) => Array.from({ length: count }, (_, place) => entry(place, "0, 70"));
const noise = (/** @type {number} */ length) => {
  let state = 1;
  return Array.from({ length }, () => String.fromCharCode(33 + ((state = (state * 48271) % 2147483647) % 90))).join("");
};

/** @type {Record<string, () => any>} */
const jobs = {
  "a log of 20,000 lines": () => jobWith([entry(0, "1000.25, 398.75\n".repeat(20_000))]),
  "100 calculations": () => jobWith(entries(100)),
  "101 calculations": () => jobWith(entries(101)),
  "a field too long": () => jobWith([entry(0, "x".repeat(1_000_001))]),
  "a note too long": () => ({ ...jobWith([]), notes: { bake: "x".repeat(5_001) } }),
  "a name too long": () => ({ ...jobWith([]), name: "x".repeat(81) }),
  "too many notes": () => ({ ...jobWith([]), notes: Object.fromEntries(Array.from({ length: 101 }, (_, place) => [`s${place}`, "x"])) }),
  "too large in all": () => jobWith([0, 1, 2, 3, 4].map((place) => entry(place, "x".repeat(900_000)))),
  "a field that is no text": () => jobWith([{ ...entry(0, ""), texts: { log: 7 } }]),
};

/** @type {Record<string, any>} */
const found = {};
for (const [name, make] of Object.entries(jobs)) {
  const job = make();
  const read = readJob(jobText(job));
  const linked = await jobFrom(await fragmentOf(job));
  items.clear();
  const put = putJob(make());
  // what is there already must stay as it is
  const there = newJob("There");
  putJob(there);
  const before = items.get(`job:${there.id}`);
  const change = changeJob(there.id, (/** @type {any} */ now) => void Object.assign(now, { ...make(), id: there.id }));
  const same = items.get(`job:${there.id}`) === before;
  // what another hand put there must not be written over either
  items.set("job:00000000deadbeef", jobText({ ...job, id: "00000000deadbeef" }));
  const text = items.get("job:00000000deadbeef");
  const on = changeJob("00000000deadbeef", (/** @type {any} */ now) => void (now.ticks.bake = true));
  found[name] = {
    file: read.problem,
    whole: read.job ? JSON.stringify(read.job) === JSON.stringify(job) : null,
    link: linked.job ? JSON.stringify(linked.job.entries.map((/** @type {any} */ one) => one.texts)) === JSON.stringify(job.entries.map((/** @type {any} */ one) => one.texts)) : linked.problem,
    put, change, unchanged: change === "" ? null : same,
    on, left: on === "" ? null : items.get("job:00000000deadbeef") === text,
  };
}

const noisy = jobWith([entry(0, noise(400_000))]);
found["no link"] = await fragmentOf(noisy);
found["a long link"] = (await jobFrom(`#job=${"A".repeat(200_000)}`)).problem;

items.clear();
items.set("job:0000000000000001", "{");
items.set("job:0000000000000002", "x".repeat(4_000_001));
found.deleted = changeJob("0000000000000000", () => {});
found.unreadable = changeJob("0000000000000001", () => {});
found.large = changeJob("0000000000000002", () => {});

const take = { from: "part-size", meaning: "coated-area", text: "4 ft2", shown: "4 ft2" };
found.visits = [
  { name: "a", take: { area: take } }, { name: "a", take: null }, { name: "a", take: [] }, { name: "a", take: { area: null } },
  { name: "a", take: { area: "4 ft2" } }, { name: "a", take: { area: { ...take, text: 4 } } }, { name: 1, take: {} }, null, [], 7, "x",
].map((visit) => {
  items.set("job-visit:powder-needed", JSON.stringify(visit));
  return visitOf("powder-needed").name;
}); // prettier-ignore

console.log(JSON.stringify(found));
