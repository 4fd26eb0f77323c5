// @ts-check
// The image as this device keeps it: unpacked and laid over, because so it starts soonest, and without its empty pages.

import { letGo, Parts } from "./bytes.mjs";

/** The service worker's name for it: the engine's, and the folder of this copy of the site. @param {string} base */
export function cacheName(base) {
  const folders = new URL(base).pathname.split("/");
  return `engine-${folders.at(-2)} ${folders.slice(0, -4).join("/")}/`;
}

/** @param {string} base */
export const keptAddress = (base) => `${base}image.laid`;
export const SUM = "Check-Sum";

/** @param {string} base @param {Uint8Array<ArrayBuffer>} image checked, and as the interpreter takes it */
export async function keepImage(base, image) {
  try {
    const pieces = piecesOf(image);
    const headers = { [SUM]: checkSum(pieces) };
    const blob = blobOf(pieces); // which is no longer in this page's memory
    letGo(image);
    await (await caches.open(cacheName(base))).put(keptAddress(base), new Response(blob, { headers }));
  } catch (reason) {
    console.info("This device does not keep the calculators.", reason);
  }
}

/** @param {string} base @returns {Promise<Response | undefined>} */
export async function findKept(base) {
  if (!("caches" in self)) return undefined; // not a secure page
  try {
    return await caches.match(keptAddress(base), { cacheName: cacheName(base) });
  } catch {
    return undefined; // storage is refused
  }
}

/** Whether the service worker holds each of these, which it held against their hashes. @param {string} base @param {string[]} names */
export async function areKept(base, names) {
  try {
    const requests = await (await caches.open(cacheName(base))).keys();
    const held = new Set(requests.map(({ url }) => url));
    return names.every((name) => held.has(base + name));
  } catch {
    return false; // storage is refused
  }
}

/** @param {string} base */
const practisedAddress = (base) => `${base}practised`;

/** Whether this version of the browser has run enough of the engine to keep its compiled code. @param {string} base @param {string} version */
export async function isPractised(base, version) {
  const mark = await caches.match(practisedAddress(base), { cacheName: cacheName(base) });
  return (await mark?.text()) === version;
}

/** @param {string} base @param {string} version */
export async function keepPractised(base, version) {
  await (await caches.open(cacheName(base))).put(practisedAddress(base), new Response(version));
}

// Nearly half of the image is empty, and reading it back takes as long as it is long.
const PAGE_bytes = 4096;

/** @param {Uint8Array<ArrayBuffer>} image @returns {Uint8Array<ArrayBuffer>[]} marks and pages, as they are kept */
function piecesOf(image) {
  const words = new Uint32Array(image.buffer, 0, image.length >> 2);
  const perPage = PAGE_bytes >> 2;
  const marks = noMarks(image);
  for (let page = 0; page * perPage < words.length; page += 1) {
    const end = Math.min((page + 1) * perPage, words.length);
    let word = page * perPage;
    while (word < end && words[word] === 0) word += 1;
    if (word < end) marks[page] = 1;
  }
  marks[Math.ceil(image.length / PAGE_bytes) - 1] = 1; // the last may end in part of a word
  return [marks, ...markedPages(image, marks)];
}

/** A place for a mark for each page, to the end of a word. @param {Uint8Array} image */
const noMarks = (image) => new Uint8Array(4 * Math.ceil(image.length / PAGE_bytes / 4));

/** The pages that hold anything, those in a row as one. @param {Uint8Array<ArrayBuffer>} image @param {Uint8Array} marks */
function* markedPages(image, marks) {
  for (let page = marks.indexOf(1), next = 0; page >= 0; page = marks.indexOf(1, next)) {
    const end = marks.indexOf(0, page);
    next = end < 0 ? marks.length : end;
    yield image.subarray(page * PAGE_bytes, next * PAGE_bytes);
  }
}

/**
 * Puts kept pieces where they were in an image, and gives them.
 * @param {ReadableStream<Uint8Array<ArrayBuffer>>} body @param {Uint8Array<ArrayBuffer>} image empty
 */
export async function readPieces(body, image) {
  const reader = body.getReader();
  let arrived = new Uint8Array();
  const fillFrom = async (/** @type {Uint8Array} */ piece) => {
    for (let filled = 0; filled < piece.length; ) {
      if (arrived.length === 0) {
        const { done, value } = await reader.read();
        if (done) throw new Error("It is shorter than it was put there.");
        arrived = value;
      }
      const some = arrived.subarray(0, piece.length - filled);
      piece.set(some, filled);
      filled += some.length;
      arrived = arrived.subarray(some.length);
    }
  };
  const marks = noMarks(image);
  await fillFrom(marks);
  const pieces = [marks, ...markedPages(image, marks)];
  for (const piece of pieces.slice(1)) await fillFrom(piece);
  if (arrived.length > 0 || !(await reader.read()).done) throw new Error("It is longer than it was put there.");
  return pieces;
}

/** @param {Uint8Array<ArrayBuffer>[]} pieces */
function blobOf(pieces) {
  /** @type {Blob[]} */
  const blobs = [];
  const parts = new Parts((part) => blobs.push(new Blob([part])));
  for (const piece of pieces) parts.take(piece);
  parts.end();
  return new Blob(blobs);
}

/**
 * A sum over all the bytes, against damage on the device: a fifth of what a hash costs, at each repeat visit. One word
 * changed always shows, as each step can be undone.
 * @param {Uint8Array<ArrayBuffer>[]} pieces each but the last of whole words
 */
export function checkSum(pieces) {
  let sum = 0x811c9dc5;
  for (const { buffer, byteOffset, length } of pieces) {
    const words = new Uint32Array(buffer, byteOffset, length >> 2);
    for (let i = 0; i < words.length; i += 1) sum = Math.imul(sum ^ words[i], 0x01000193);
    const rest = new Uint8Array(buffer, byteOffset + words.length * 4, length % 4);
    for (let i = 0; i < rest.length; i += 1) sum = Math.imul(sum ^ rest[i], 0x01000193);
  }
  return (sum >>> 0).toString(16);
}
