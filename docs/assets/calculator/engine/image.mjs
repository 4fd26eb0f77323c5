// @ts-check
// The memory image as it comes over the network, and into the interpreter's memory.

import { PartsHash } from "./bytes.mjs";
import { bodyOf, fetchFromSite, readFile } from "./files.mjs";

/** @typedef {import("./files.mjs").Manifest} Manifest */

/**
 * The memory image as it arrives. Brotli makes it a third smaller than gzip, where the server has that copy and gives
 * it; else the copy in gzip, which any server can give, is unpacked here.
 * @param {string} base @param {Manifest} manifest @param {string} encoding
 * @returns {Promise<ReadableStream<Uint8Array<ArrayBuffer>>>}
 */
export async function readImage(base, manifest, encoding) {
  if (manifest.brotli && encoding === "br") {
    const leaving = new AbortController();
    const response = await fetchFromSite(`${base}image.bin`, { signal: leaving.signal });
    if (response.ok && response.body && response.headers.get("Content-Encoding") === "br") return response.body;
    leaving.abort();
  }
  if (typeof DecompressionStream !== "function") throw new Error("This browser cannot unpack it."); // before it is fetched
  return bodyOf(await readFile(`${base}image.bin.gz`));
}

/**
 * Reads a stream to its end, through gzip if it is gzip: some servers unpack a .gz file on the way. A damaged one
 * throws, as the format ends in a check sum; so does one of another length. Gives the hash of its parts, where there is one.
 * @param {Uint8Array<ArrayBuffer>} bytes to be filled to the end
 * @param {ReadableStream<Uint8Array<ArrayBuffer>>} body
 */
export async function fill(bytes, body) {
  const reader = body.getReader();
  let next = reader.read();
  const { value: first } = await next;
  let heard = performance.now();
  /** @type {ReadableStream<Uint8Array<ArrayBuffer>>} */
  const arriving = new ReadableStream({
    async pull(controller) {
      const { done, value } = await next;
      if (done) return controller.close();
      controller.enqueue(value);
      next = reader.read();
      if (performance.now() - heard > 1000) {
        heard = performance.now();
        self.postMessage({ type: "progress" });
      }
    },
  });
  const isGzip = first?.[0] === 0x1f && first[1] === 0x8b;
  const unpacked = (isGzip ? arriving.pipeThrough(new DecompressionStream("gzip")) : arriving).getReader();
  const parts = self.crypto.subtle ? new PartsHash() : null;
  let filled = 0;
  for (let part = await unpacked.read(); !part.done; part = await unpacked.read()) {
    if (filled + part.value.length > bytes.length) throw new Error("The memory image is longer than it was made.");
    bytes.set(part.value, filled);
    filled += part.value.length;
    parts?.take(part.value);
  }
  if (filled !== bytes.length) throw new Error("The memory image is shorter than it was made.");
  return parts ? parts.whole() : null;
}

/**
 * What the interpreter's WebAssembly puts into memory by itself is not sent a second time: over that part the image
 * holds only what differs from it (exclusive or).
 * @param {Uint8Array<ArrayBuffer>} image
 * @param {Uint8Array} before that part of the memory as it is right after instantiation
 */
export function layOver(image, before) {
  const start = new Uint32Array(image.buffer, 0, 2)[1]; // the image's own header says where memory starts
  for (let i = 0; i < before.length; i += 1) image[start + i] ^= before[i];
}
