// @ts-check
// The two ways to start: from the memory image, and by importing everything.

import { letGo } from "./bytes.mjs";
import { bodyOf, checkHash, NotLoaded, notMade, readBytes } from "./files.mjs";
import { Fit } from "./fit.mjs";
import { fill, layOver, readImage } from "./image.mjs";
import { cacheName, checkSum, keptAddress, readPieces, SUM } from "./kept.mjs";
import { timed } from "./steps.mjs";

/** @typedef {import("./files.mjs").Manifest} Manifest */
/** @typedef {import("./runtime.mjs").Runtime} Runtime */
/** @typedef {import("pyodide").PyodideInterface} Python */

/**
 * @param {string} base @param {Runtime} runtime
 * @returns {Promise<{python: Python, fresh: Uint8Array<ArrayBuffer> | null}>} fresh: an image that the device has not kept
 */
export async function startFromImage(base, runtime) {
  const [{ manifest, encoding }, kept] = await Promise.all([runtime.manifest, runtime.kept]);
  if (kept) {
    try {
      const { python, image } = await restore(runtime, manifest, async (image) => {
        const pieces = await timed("image", readPieces(bodyOf(kept), image));
        if (checkSum(pieces) !== kept.headers.get(SUM)) throw new Error("It is not as it was put there.");
        return () => {};
      });
      letGo(image);
      return { python, fresh: null };
    } catch (reason) {
      console.warn("The kept image cannot be used, so it is fetched again.", reason);
      await (await caches.open(cacheName(base))).delete(keptAddress(base));
    }
  }
  if (!manifest.image) throw new Error("This build of the site has none.");
  const { python, image } = await restore(runtime, manifest, async (image) => {
    const hash = await timed("image", fill(image, await readImage(base, manifest, encoding)));
    // nothing runs in a memory that is not the one that was made
    if (hash !== null && hash !== manifest.files["image.bin"]?.parts_sha256) throw new NotLoaded(notMade("The memory image"));
    return (before) => layOver(image, before);
  });
  return { python, fresh: image };
}

/**
 * The interpreter starts while its image is still on the way: at first it asks only how long that is.
 * @param {Runtime} runtime @param {Manifest} manifest
 * @param {(image: Uint8Array<ArrayBuffer>) => Promise<(before: Uint8Array) => unknown>} read fills and checks the image; what it
 *   gives is called with the memory's first part, as it was before anything ran there
 */
async function restore(runtime, manifest, read) {
  const image = new Uint8Array(manifest.image_bytes);
  const filled = read(image);
  filled.catch(() => {}); // awaited later, perhaps after it has failed
  const fit = new Fit(runtime.functions, manifest, image, filled);
  const options = { _loadSnapshot: image, lockFileContents: { info: manifest.runtime, packages: {} } };
  // everything is imported already
  const python = await runtime.boot(options, Promise.resolve(new ArrayBuffer(0)), fit);
  fit.release();
  delete (/** @type {any} */ (python)._api?.config?._loadSnapshot);
  python.pyimport("random").seed(); // the image holds the generator's state: without this every visitor draws alike
  return { python, image };
}

/** @param {string} base @param {Runtime} runtime */
export async function startOrdinarily(base, runtime) {
  const lockFile = runtime.read("pyodide-lock.json");
  const archiveFile = readBytes(`${base}calculators.zip`);
  const standardLibrary = runtime.read("python_stdlib.zip");
  for (const early of [lockFile, archiveFile, standardLibrary]) early.catch(() => {});
  const [lockBytes, archive] = await Promise.all([lockFile, archiveFile, standardLibrary]);
  const lock = JSON.parse(new TextDecoder().decode(lockBytes));
  // once more, as the list of hashes may be missing
  await checkHash(archive, lock.packages.calculators.sha256, "calculators.zip");
  const booted = await runtime.boot({ lockFileContents: lock }, standardLibrary);
  booted.unpackArchive(new Uint8Array(archive), "zip");
  return booted;
}
