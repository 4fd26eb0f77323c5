// @ts-check
// A job in a link's fragment, which no host ever sees: what was entered, packed; answers are worked out again.

import { jobOf, LONGEST_JOB, newJob, TOO_LARGE, Unfit } from "./job-data.mjs";

/** @typedef {import("./job-data.mjs").Job} Job */

const NAME = "job=";
const FORMAT = 1;
const LONGEST = 200_000;
/** A sign is up to three bytes. */
const MOST_UNPACKED_bytes = 3 * LONGEST_JOB;
const TOO_LONG = `A link has at most ${LONGEST.toLocaleString("en-US")} characters, and this one has more`;

/** @param {Job} job @returns {Promise<string>} the fragment, without its sign; empty where the job is too long for a link */
export async function fragmentOf(job) {
  const entries = job.entries.map(({ name, slug, version, texts, same, take }) => {
    // what was taken is there twice, and a calculator knows its own example: both are left out
    const left = new Set([...same, ...Object.keys(take).flatMap((key) => [key, `${key}-unit`])]);
    const own = Object.entries(texts).filter(([key]) => !left.has(key));
    const took = Object.entries(take).map(([key, one]) => [key, one.from, one.meaning, one.text]);
    return [name, slug, version, Object.fromEntries(own), took];
  });
  const text = JSON.stringify([FORMAT, job.name, job.made, entries, job.notes, Object.keys(job.ticks)]);
  const packed = await through(new TextEncoder().encode(text), new CompressionStream("deflate-raw"));
  const fragment = NAME + base64url(packed);
  return fragment.length > LONGEST ? "" : fragment;
}

/**
 * The job that a fragment holds, with a new id and no answers yet.
 * @param {string} fragment with or without its sign
 * @returns {Promise<{job: Job | null, problem: string}>} neither where the fragment holds no job
 */
export async function jobFrom(fragment) {
  const text = fragment.replace(/^#/, "");
  if (!text.startsWith(NAME)) return { job: null, problem: "" };
  const damaged = { job: null, problem: "The link holds a job that cannot be read: part of it may be missing. Nothing was changed." };
  try {
    if (text.length > LONGEST) throw new Unfit(TOO_LONG);
    const packed = unbase64url(text.slice(NAME.length));
    const unpacked = new TextDecoder("utf-8", { fatal: true }).decode(await through(packed, new DecompressionStream("deflate-raw")));
    if (unpacked.length > LONGEST_JOB) throw new Unfit(TOO_LARGE);
    const read = JSON.parse(unpacked);
    if (!Array.isArray(read)) return damaged;
    const [format, name, made, entries, notes, ticks] = read;
    if (typeof format === "number" && format > FORMAT) {
      return { job: null, problem: "The link was made with a newer version of this site. Reload the page to get it. Nothing was changed." };
    }
    if (format !== FORMAT || !Array.isArray(entries) || !Array.isArray(ticks)) return damaged;
    const job = jobOf({
      ...newJob(""),
      name,
      made,
      notes,
      ticks: Object.fromEntries(ticks.map((step) => [String(step), true])),
      entries: entries.map((/** @type {any[]} */ [entryName, slug, version, texts, took]) => {
        const take = Object.fromEntries(took.map((/** @type {any[]} */ [key, from, meaning, text]) => [String(key), { from, meaning, text }]));
        const taken = Object.fromEntries(Object.entries(take).map(([key, one]) => [key, one.text]));
        return { name: entryName, slug, version, take, texts: { ...texts, ...taken } };
      }),
    });
    return { job, problem: "" };
  } catch (reason) {
    if (!(reason instanceof Unfit)) return damaged;
    return { job: null, problem: `The link holds a job that cannot be read. ${reason.message}. Nothing was changed.` };
  }
}

/**
 * @param {Uint8Array} bytes
 * @param {CompressionStream | DecompressionStream} stream
 */
async function through(bytes, stream) {
  const reader = new Blob([/** @type {BlobPart} */ (bytes)]).stream().pipeThrough(stream).getReader();
  /** @type {Uint8Array[]} */
  const parts = [];
  let size = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    size += value.length;
    // a few bytes can unpack to gigabytes
    if (size > MOST_UNPACKED_bytes) throw new Unfit(TOO_LARGE);
    parts.push(value);
  }
  const whole = new Uint8Array(size);
  let place = 0;
  for (const part of parts) {
    whole.set(part, place);
    place += part.length;
  }
  return whole;
}

/** @param {Uint8Array} bytes */
function base64url(bytes) {
  let text = "";
  for (let place = 0; place < bytes.length; place += 8192) text += String.fromCharCode(...bytes.subarray(place, place + 8192));
  return btoa(text).replace(/\+/g, "-").replace(/\//g, "_").replace(/=+$/, "");
}

/** @param {string} text */
function unbase64url(text) {
  const plain = atob(text.replace(/-/g, "+").replace(/_/g, "/"));
  return Uint8Array.from(plain, (sign) => sign.charCodeAt(0));
}

