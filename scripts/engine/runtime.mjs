// @ts-check
// Starts the engine's Python in Node from a built engine folder, in the two ways the browser does. The worker in
// docs/assets/calculator/engine/ does the same with fetch, and lays the image over only once all else is ready.

import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { gunzipSync } from "node:zlib";

// By itself Node would quote the failing line, and the interpreter's JavaScript is one line of a megabyte.
process.on("uncaughtException", (error) => {
  console.error(String(error?.message ?? error).slice(-4000));
  process.exitCode = 1;
});

/** The environment Python sees. It is frozen into the image, so nothing of the building machine may be in it. */
export const ENVIRONMENT = { HOME: "/home/pyodide", PYTHONHASHSEED: "0", LANG: "en_US.UTF-8" };

/** @param {string} folder @param {object} options @returns {Promise<any>} */
async function load(folder, options) {
  const { loadPyodide } = await import(pathToFileURL(join(folder, "pyodide.mjs")).href);
  return loadPyodide({ indexURL: folder, env: { ...ENVIRONMENT }, ...options });
}

/**
 * The ordinary start: interpreter, standard library, then the one zip named by the bundle's lock.
 * @param {string} folder @param {object} [options]
 */
export async function startOrdinarily(folder, options = {}) {
  const lock = JSON.parse(await readFile(join(folder, "pyodide-lock.json"), "utf8"));
  const python = await load(folder, options);
  await installCalculators(python, lock, await readFile(join(folder, lock.packages.calculators.file_name)));
  return python;
}

/**
 * Unpacks calculators.zip where its lock entry says; the check against the entry's hash is the caller's.
 * @param {any} python @param {any} lock @param {Uint8Array} archive
 */
async function installCalculators(python, lock, archive) {
  const { sha256, install_dir: where } = lock.packages.calculators;
  const { createHash } = await import("node:crypto");
  if (createHash("sha256").update(archive).digest("hex") !== sha256) {
    throw new Error("calculators.zip is not the file that pyodide-lock.json names.");
  }
  if (where !== "site") throw new Error(`The lock asks for an install folder that is not known here: ${where}`);
  // A plain Uint8Array: the runtime takes Node's Buffer for something else.
  python.unpackArchive(new Uint8Array(archive), "zip");
}

/** The start from the memory image, reading the very files that the browser is served. @param {string} folder */
export async function startFromImage(folder) {
  return (await restore(folder)).python;
}

/**
 * Starts from the image, and gives beside the interpreter the image as it was before it was made smaller.
 * @param {string} folder
 */
export async function restore(folder) {
  const image = new Uint8Array(gunzipSync(await readFile(join(folder, "image.bin.gz"))));
  const manifest = JSON.parse(await readFile(join(folder, "manifest.json"), "utf8"));
  const notToBeRead = join(folder, "manifest.json"); // all is imported already, but the runtime insists on some file
  const python = await withFirstMemory(
    (memory) => layOver(image, memory, manifest.image_static_bytes),
    () =>
      load(folder, {
        _loadSnapshot: image,
        stdLibURL: notToBeRead,
        lockFileContents: { info: manifest.runtime, packages: {} },
      }),
  );
  python.pyimport("random").seed(); // the image froze the generator's state: without this every visitor draws alike
  return { python, image };
}

/**
 * What the interpreter's WebAssembly puts into memory by itself is not sent a second time: over that part the image
 * holds only what differs (exclusive or, so that the same step takes it away and puts it back).
 * @param {Uint8Array} image @param {Uint8Array} memory as it is right after instantiation @param {number} length
 */
export function layOver(image, memory, length) {
  const start = new Uint32Array(image.buffer, image.byteOffset, 2)[1]; // the image's own header says where memory starts
  for (let i = 0; i < length; i += 1) image[start + i] ^= memory[i];
}

/**
 * Runs `start`, and hands on the memory as the WebAssembly left it before anything ran, its functions, and its table of them.
 * @template T
 * @param {(memory: Uint8Array, exports: WebAssembly.Exports, table: WebAssembly.Table) => void} look @param {() => Promise<T>} start
 */
export async function withFirstMemory(look, start) {
  const instantiate = WebAssembly.instantiate;
  WebAssembly.instantiate = /** @type {any} */ (
    async (/** @type {any} */ binary, /** @type {any} */ imports) => {
      const made = /** @type {any} */ (await instantiate(binary, imports));
      const memory = imports?.env?.memory;
      if (memory) look(new Uint8Array(memory.buffer), made.instance.exports, imports.env.__indirect_function_table);
      return made;
    }
  );
  try {
    return await start();
  } finally {
    WebAssembly.instantiate = instantiate;
  }
}

/** @param {string} folder @param {string} mode "image" or "ordinary" */
export async function start(folder, mode) {
  return mode === "image" ? startFromImage(folder) : startOrdinarily(folder);
}

/** The lines of standard input. Read as a stream: a pipe may have nothing to give yet. */
export async function inputLines() {
  process.stdin.setEncoding("utf8");
  let text = "";
  for await (const part of process.stdin) text += part;
  return text.split("\n").filter(Boolean);
}
