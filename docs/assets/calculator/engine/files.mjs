// @ts-check
// The engine's files as they come from the site, and the list of what they must be.

import { sha256 } from "./bytes.mjs";

/**
 * @typedef {object} Manifest
 * @property {boolean} image
 * @property {number} image_bytes
 * @property {number} image_static_bytes over how many bytes the image holds only differences
 * @property {boolean} brotli whether the files lie there in brotli too, for servers that use such copies
 * @property {number} image_count_args where in memory it holds the place of a function that not every browser has
 * @property {object} runtime the platform that the lock of packages is for
 * @property {Record<string, {sha256: string, parts_sha256?: string}>} files
 */

export const fetchFromSite = self.fetch.bind(self);

export class NotLoaded extends Error {}

/** @param {string} address */
export async function readFile(address) {
  const response = await fetchFromSite(address);
  if (!response.ok || !response.body) throw new NotLoaded(`${address} did not load (${response.status}).`);
  return response;
}

/** @param {string} address */
export async function readBytes(address) {
  return (await readFile(address)).arrayBuffer();
}

/** @param {string} address */
export async function readJson(address) {
  return (await readFile(address)).json();
}

/** The manifest, and how the server compressed it. @param {string} base */
export async function readManifest(base) {
  const response = await readFile(`${base}manifest.json`);
  const manifest = /** @type {Manifest} */ (await response.json());
  // the folder's name is made from the list of hashes, and the page names the folder
  const hashes = Object.entries(manifest.files).map(([name, file]) => `"${name}": "${file.parts_sha256 ?? file.sha256}"`);
  if (self.crypto.subtle) {
    const made = await sha256(new TextEncoder().encode(`{${hashes.join(", ")}}`));
    if (!base.endsWith(`/${made.slice(0, 12)}/`)) throw new Error("The list of the engine's files is not this engine's.");
  }
  return { manifest, encoding: response.headers.get("Content-Encoding") ?? "" };
}

/** @param {Response} response */
export async function compile(response) {
  // Streaming keeps the browser's cache of compiled code working, but it needs the right content type.
  if (response.headers.get("Content-Type")?.startsWith("application/wasm")) {
    return WebAssembly.compileStreaming(response);
  }
  return WebAssembly.compile(await response.arrayBuffer());
}

/** @param {Response} response that has one */
export const bodyOf = (response) => /** @type {ReadableStream<Uint8Array<ArrayBuffer>>} */ (response.body);

/**
 * Browsers offer the hash on secure pages only; elsewhere length and gzip's own check sum have to do.
 * @param {BufferSource} bytes @param {string} expected @param {string} what
 */
export async function checkHash(bytes, expected, what) {
  if (!self.crypto.subtle) return;
  if ((await sha256(bytes)) !== expected) throw new NotLoaded(notMade(what));
}

export const notMade = (/** @type {string} */ what) => `${what} is not the file that was made with this build.`;
