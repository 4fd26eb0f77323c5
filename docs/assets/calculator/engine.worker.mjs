// @ts-check
// The engine's worker: Python by way of WebAssembly, started from a memory image made when the site was built, or by
// importing everything where the image will not do. Then one question at a time: a JSON text in, a JSON text out.

import { runsWebAssembly } from "./browser.mjs";

/** @typedef {import("./engine-messages.mjs").ToWorker} ToWorker */
/** @typedef {import("./engine-messages.mjs").FromWorker} FromWorker */
/** @typedef {import("./engine-messages.mjs").Why} Why */
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
/** @typedef {import("pyodide").PyodideInterface} Python */

const fetchFromSite = self.fetch.bind(self);
// One environment for both starts; the image was made with it.
const ENVIRONMENT = { HOME: "/home/pyodide", PYTHONHASHSEED: "0", LANG: "en_US.UTF-8" };

/** @type {Python | null} */
let python = null;
/** @type {((request: string) => string) | null} */
let runJson = null;
/** When each part of the start was done, in ms since this worker began. @type {Record<string, number>} */
const steps = {};
/** @param {string} step */
const reached = (step) => void (steps[step] = Math.round(performance.now()));
/** @template T @param {string} step @param {Promise<T>} work */
const timed = (step, work) => work.then((done) => (reached(step), done));

self.onmessage = (/** @type {MessageEvent<ToWorker>} */ { data }) => {
  if ("id" in data) answer(data.id, data.request);
  else if (data.type === "warm up") warmUp(data.request);
  else void begin(data.base, data.mode, data.keep);
};

/** @param {FromWorker} message */
function post(message) {
  self.postMessage(message);
}

/** @param {number} id @param {string} request */
function answer(id, request) {
  try {
    if (!runJson) throw new Error("The calculator has not started.");
    post({ id, response: runJson(request) });
    warmUp(request);
  } catch (reason) {
    console.error(reason);
    // An exception inside Python leaves the interpreter sound; anything else may not.
    if (python && reason instanceof python.ffi.PythonError) {
      post({ id, problem: "The calculator has a defect and could not answer this." });
    } else {
      post({ type: "failed", message: "The calculator's interpreter stopped.", why: whyOf(reason), again: false });
    }
  }
}

// The browser makes code fast once it has run for a while, and an image starts with code that has not: the first answers
// took three times as long as the later ones. So while nobody asks, a question is answered again for nobody.
const WARM_RUNS = 15;
const PAUSE_ms = 250;
const SLOW_ms = 400;
let warmRuns = 0;
/** @type {ReturnType<typeof setTimeout> | undefined} */
let nextWarmRun;

/** @param {string} request */
function warmUp(request) {
  clearTimeout(nextWarmRun);
  const run = () => {
    const began = performance.now();
    warmRuns += 1;
    try {
      runJson?.(request);
    } catch {
      return; // whoever asks this hears of it
    }
    // a person who asks meanwhile waits for one of these, so they must not be long
    if (warmRuns < WARM_RUNS && performance.now() - began < SLOW_ms) nextWarmRun = setTimeout(run, 10);
  };
  if (warmRuns < WARM_RUNS) nextWarmRun = setTimeout(run, PAUSE_ms);
}

/** @param {string} base @param {"image" | "ordinary"} mode @param {boolean} keep whether this device may keep the image */
async function begin(base, mode, keep) {
  try {
    const { runtime, restored } = early?.base === base && mode === "image" ? early : start(base, mode);
    let started = mode;
    if (restored) {
      try {
        const made = await restored;
        const { fresh } = made;
        python = made.python;
        made.fresh = null; // megabytes that the promise would hold for good
        if (keep && fresh) setTimeout(() => keepImage(base, fresh), KEEP_AFTER_MS);
        else if (fresh) letGo(fresh);
      } catch (reason) {
        console.warn("The memory image cannot be used, so the calculator starts the slower way.", reason);
        started = "ordinary";
      }
    }
    python ??= await startOrdinarily(base, runtime);
    runJson = python.pyimport("calculators.kit.browser").run_json;
    // All that is needed is here. Whatever runs from now on has no way out.
    self.fetch = () => Promise.reject(new TypeError("The calculator makes no requests."));
    reached("ready");
    post({ type: "ready", mode: started, origin: performance.timeOrigin, steps });
  } catch (reason) {
    console.error(reason);
    const message = `The calculator did not start: ${/** @type {Error} */ (reason)?.message ?? reason}`;
    const why = whyOf(reason);
    post({ type: "failed", message, why, again: why !== "memory" && (await mend(base)) });
  }
}

/** @param {string} base @param {"image" | "ordinary"} mode */
function start(base, mode) {
  reached("begun");
  const runtime = new Runtime(base);
  const restored = mode === "image" ? startFromImage(base, runtime) : null;
  restored?.catch(() => {}); // reported once the page has asked for the start
  return { base, runtime, restored };
}

/** @param {unknown} reason @returns {Why} */
function whyOf(reason) {
  if (reason instanceof RangeError || /memory/i.test(String(reason))) return "memory";
  return reason instanceof TypeError || reason instanceof NotLoaded ? "files" : "";
}

class NotLoaded extends Error {}

/** Whether another start may work, now that damaged copies were fetched again. @param {string} base */
async function mend(base) {
  try {
    const { mendFiles } = await import("../offline/mend.worker.mjs");
    return await mendFiles(base, cacheName(base), fetchFromSite);
  } catch (reason) {
    console.warn("The engine's files could not be looked at.", reason);
    return false;
  }
}

/** The interpreter's own files, asked for at once and used by either start. */
class Runtime {
  /** @param {string} base */
  constructor(base) {
    this.base = base;
    this.manifest = /** @type {Promise<{manifest: Manifest, encoding: string}>} */ (timed("manifest", readManifest(base)));
    /** What the service worker keeps was held against its hashes when it was put there, and the image is put there after it. */
    this.kept = findKept(base);
    this.loader = timed("scripts", this.#scripts()).then(([loader]) => loader.loadPyodide);
    this.module = timed("compiled", this.#compile());
    /** @type {Promise<Record<string, number>>} */
    this.functions = knowsItsFunctions() ? Promise.resolve({}) : readJson(`${base}functions.json`);
    // Each is awaited later; a failure before then must not be reported as unhandled.
    for (const early of [this.manifest, this.loader, this.module, this.functions]) early.catch(() => {});
  }

  /** The second of these, loaded early, sets the function that the first would fetch it for, which saves a round trip. */
  async #scripts() {
    const names = ["pyodide.mjs", "pyodide.asm.js"];
    if (!(await this.kept)) await Promise.all(names.map((name) => this.#check(name, readBytes(`${this.base}${name}`))));
    return Promise.all(names.map((name) => import(`${this.base}${name}`)));
  }

  async #compile() {
    const name = "pyodide.asm.wasm";
    const [response, kept] = await Promise.all([readFile(`${this.base}${name}`), this.kept]);
    const copy = kept ? null : response.clone();
    const [module] = await Promise.all([compile(response), copy && this.#check(name, copy.arrayBuffer())]);
    return module;
  }

  /**
   * Nothing of the interpreter runs that is not as it was built. Where the list of hashes itself is missing or damaged there
   * is nothing to hold a file against; then the start is the slower one, whose own list names the calculators' hash.
   * @param {string} name @param {Promise<ArrayBuffer>} file
   */
  async #check(name, file) {
    const [list, bytes] = await Promise.all([this.manifest.catch(() => null), file]);
    if (list) await checkHash(bytes, list.manifest.files[name]?.sha256 ?? "", name);
    letGo(new Uint8Array(bytes));
  }

  /**
   * Boots an interpreter. The runtime would fetch and compile its WebAssembly only once the image has arrived, and
   * waits for ever where compiling fails; so it gets the module compiled meanwhile, and a failure ends the wait.
   * @param {object} options @param {Promise<ArrayBuffer>} standardLibrary
   * @param {Fit} [fit] of the image to this browser
   * @returns {Promise<Python>}
   */
  async boot(options, standardLibrary, fit) {
    const [loadPyodide, module] = await Promise.all([this.loader, this.module]);
    const { Module } = WebAssembly;
    WebAssembly.Module = compilesOnce(Module);
    const runtime = /** @type {{_createPyodideModule: (settings: object) => Promise<object>}} */ (/** @type {unknown} */ (self));
    const make = runtime._createPyodideModule;
    if (fit) {
      // The image is needed only now: while it was on its way, the interpreter has made itself ready.
      runtime._createPyodideModule = async (settings) => {
        const made = await make(settings);
        reached("made");
        await fit.finish();
        reached("laid");
        return made;
      };
    }
    const failed = new Promise((_, reject) => {
      // some of its failures the runtime reports to nobody, and waits for ever
      self.onunhandledrejection = (event) => reject(event.reason);
      WebAssembly.instantiateStreaming = async (_response, imports) => {
        try {
          const instance = await WebAssembly.instantiate(module, fit ? fit.imports(/** @type {Imports} */ (imports)) : imports);
          reached("instance");
          await fit?.prepare(instance.exports);
          return { module, instance };
        } catch (reason) {
          reject(reason);
          throw reason;
        }
      };
    });
    self.fetch = async (wanted) => {
      const name = String(wanted).split("/").at(-1);
      if (name === "python_stdlib.zip") return new Response(await standardLibrary);
      return new Response(); // the module above stands for it
    };
    const loaded = loadPyodide({ indexURL: this.base, packageBaseUrl: this.base, env: { ...ENVIRONMENT }, ...options });
    const booted = /** @type {Promise<Python>} */ (Promise.race([loaded, failed]));
    return booted.finally(() => {
      WebAssembly.Module = Module;
      runtime._createPyodideModule = make;
    });
  }
}

/**
 * While it starts, the interpreter makes a module of some fifty bytes for each of hundreds of functions of JavaScript's;
 * those whose functions take and give the same kinds of values are the same modules.
 * @param {typeof WebAssembly.Module} Module
 */
function compilesOnce(Module) {
  /** @type {Map<string, WebAssembly.Module>} */
  const made = new Map();
  return new Proxy(Module, {
    construct(target, [bytes]) {
      const key = bytes instanceof Uint8Array && bytes.length < 200 ? bytes.join() : "";
      const module = made.get(key) ?? new target(bytes);
      if (key) made.set(key, module);
      return module;
    },
  });
}

/**
 * The image holds places in the interpreter's table of functions, and was made where that table came out in one way.
 * Here two things are put right that come out otherwise in other browsers:
 * - Some give a function another identity in the table than among the exports, so that it would get a second place and
 *   all places after it would shift. Put there once more by hand, it is the same.
 * - One function, which counts another's arguments, some do not have: then the image must not say where it stands.
 */
class Fit {
  /** @type {WebAssembly.Memory | undefined} */ #memory;
  /** @type {WebAssembly.Table | undefined} */ #table;
  /** The memory's first part as WebAssembly makes it. @type {Uint8Array<ArrayBuffer>} */ #before = new Uint8Array();
  /** Where this browser has the function that counts. @type {number | null} */ #place = null;
  #laid = false;

  /**
   * @param {Promise<Record<string, number>>} functions places in the table, by name
   * @param {Manifest} manifest
   * @param {Uint8Array<ArrayBuffer>} image
   * @param {Promise<(before: Uint8Array) => unknown>} filled once the image is there; makes it such as the interpreter takes it
   */
  constructor(functions, manifest, image, filled) {
    this.functions = functions;
    this.manifest = manifest;
    this.image = image;
    this.filled = filled;
  }

  /** @param {Imports} imports @returns {Imports} */
  imports(imports) {
    const { env } = imports;
    this.#memory = env.memory;
    this.#table = env.__indirect_function_table;
    const whereItIs = env._PyEM_InitTrampoline_js;
    const andInTheImage = () => {
      whereItIs();
      this.#place = new DataView(env.memory.buffer).getInt32(this.manifest.image_count_args, true);
      if (this.#laid) this.#copyPlace();
    };
    return { ...imports, env: { ...env, _PyEM_InitTrampoline_js: andInTheImage } };
  }

  /** Before anything has run. @param {WebAssembly.Exports} exports */
  async prepare(exports) {
    for (const [name, place] of Object.entries(await this.functions)) this.#table?.set(place, exports[name]);
    const memory = /** @type {WebAssembly.Memory} */ (this.#memory).buffer;
    this.#before = new Uint8Array(memory.slice(0, this.manifest.image_static_bytes));
  }

  /** Before the image is put in place. */
  async finish() {
    (await this.filled)(this.#before);
    this.#laid = true;
    if (this.#place !== null) this.#copyPlace();
  }

  /** The image is in the interpreter's memory. */
  release() {
    letGo(this.#before);
    this.image = this.#before = new Uint8Array();
  }

  #copyPlace() {
    const start = new Uint32Array(this.image.buffer, 0, 2)[1];
    new DataView(this.image.buffer).setInt32(start + this.manifest.image_count_args, /** @type {number} */ (this.#place), true);
  }
}

/** @typedef {WebAssembly.Imports & {env: {memory: WebAssembly.Memory, __indirect_function_table: WebAssembly.Table, _PyEM_InitTrampoline_js: () => void}}} Imports */

// A module of one function that is exported and stands in an exported table.
const ONE_FUNCTION = [
  0, 97, 115, 109, 1, 0, 0, 0, 1, 5, 1, 96, 0, 1, 127, 3, 2, 1, 0, 4, 4, 1, 112, 0, 2, 7, 9, 2, 1, 97, 0, 0, 1, 116, 1, 0, 9, 7, 1, 0, 65,
  0, 11, 1, 0, 10, 6, 1, 4, 0, 65, 7, 11,
];

/** Whether a function is the same in the table and among the exports, as it should be. */
function knowsItsFunctions() {
  const { exports } = new WebAssembly.Instance(new WebAssembly.Module(Uint8Array.from(ONE_FUNCTION)));
  return exports.a === /** @type {WebAssembly.Table} */ (exports.t).get(0);
}

/**
 * @param {string} base @param {Runtime} runtime
 * @returns {Promise<{python: Python, fresh: Uint8Array<ArrayBuffer> | null}>} fresh: an image that the device has not kept
 */
async function startFromImage(base, runtime) {
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

// Unpacked and laid over, the image starts soonest; writing it takes a while, so the first answers go first.
const KEEP_AFTER_MS = 3000;
/** @param {string} base */
const cacheName = (base) => `engine-${base.split("/").at(-2)}`;
/** @param {string} base */
const keptAddress = (base) => `${base}image.laid`;
const SUM = "Check-Sum";

/** @param {string} base @param {Uint8Array<ArrayBuffer>} image checked, and as the interpreter takes it */
async function keepImage(base, image) {
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
async function findKept(base) {
  if (!("caches" in self)) return undefined; // not a secure page
  try {
    return await caches.match(keptAddress(base), { cacheName: cacheName(base) });
  } catch {
    return undefined; // storage is refused
  }
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
async function readPieces(body, image) {
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
function checkSum(pieces) {
  let sum = 0x811c9dc5;
  for (const { buffer, byteOffset, length } of pieces) {
    const words = new Uint32Array(buffer, byteOffset, length >> 2);
    for (let i = 0; i < words.length; i += 1) sum = Math.imul(sum ^ words[i], 0x01000193);
    const rest = new Uint8Array(buffer, byteOffset + words.length * 4, length % 4);
    for (let i = 0; i < rest.length; i += 1) sum = Math.imul(sum ^ rest[i], 0x01000193);
  }
  return (sum >>> 0).toString(16);
}

/**
 * What the interpreter's WebAssembly puts into memory by itself is not sent a second time: over that part the image
 * holds only what differs from it (exclusive or).
 * @param {Uint8Array<ArrayBuffer>} image
 * @param {Uint8Array} before that part of the memory as it is right after instantiation
 */
function layOver(image, before) {
  const start = new Uint32Array(image.buffer, 0, 2)[1]; // the image's own header says where memory starts
  for (let i = 0; i < before.length; i += 1) image[start + i] ^= before[i];
}

/** @param {string} base @param {Runtime} runtime */
async function startOrdinarily(base, runtime) {
  const lockFile = readJson(`${base}pyodide-lock.json`);
  const archiveFile = readBytes(`${base}calculators.zip`);
  const standardLibrary = readBytes(`${base}python_stdlib.zip`);
  for (const early of [lockFile, archiveFile, standardLibrary]) early.catch(() => {});
  const [lock, archive] = await Promise.all([lockFile, archiveFile, standardLibrary]);
  await checkHash(archive, lock.packages.calculators.sha256, "calculators.zip");
  const booted = await runtime.boot({ lockFileContents: lock }, standardLibrary);
  booted.unpackArchive(new Uint8Array(archive), "zip");
  return booted;
}

/** @param {string} address */
async function readFile(address) {
  const response = await fetchFromSite(address);
  if (!response.ok || !response.body) throw new NotLoaded(`${address} did not load (${response.status}).`);
  return response;
}

/** @param {string} address */
async function readBytes(address) {
  return (await readFile(address)).arrayBuffer();
}

/** @param {string} address */
async function readJson(address) {
  return (await readFile(address)).json();
}

/** The manifest, and how the server compressed it. @param {string} base */
async function readManifest(base) {
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
async function compile(response) {
  // Streaming keeps the browser's cache of compiled code working, but it needs the right content type.
  if (response.headers.get("Content-Type")?.startsWith("application/wasm")) {
    return WebAssembly.compileStreaming(response);
  }
  return WebAssembly.compile(await response.arrayBuffer());
}

/**
 * The memory image as it arrives. Brotli makes it a third smaller than gzip, where the server has that copy and gives
 * it; else the copy in gzip, which any server can give, is unpacked here.
 * @param {string} base @param {Manifest} manifest @param {string} encoding
 * @returns {Promise<ReadableStream<Uint8Array<ArrayBuffer>>>}
 */
async function readImage(base, manifest, encoding) {
  if (manifest.brotli && encoding === "br") {
    const leaving = new AbortController();
    const response = await fetchFromSite(`${base}image.bin`, { signal: leaving.signal });
    if (response.ok && response.body && response.headers.get("Content-Encoding") === "br") return response.body;
    leaving.abort();
  }
  return bodyOf(await readFile(`${base}image.bin.gz`));
}

/** @param {Response} response that has one */
const bodyOf = (response) => /** @type {ReadableStream<Uint8Array<ArrayBuffer>>} */ (response.body);

/**
 * Reads a stream to its end, through gzip if it is gzip: some servers unpack a .gz file on the way. A damaged one
 * throws, as the format ends in a check sum; so does one of another length. Gives the hash of its parts, where there is one.
 * @param {Uint8Array<ArrayBuffer>} bytes to be filled to the end
 * @param {ReadableStream<Uint8Array<ArrayBuffer>>} body
 */
async function fill(bytes, body) {
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
        post({ type: "progress" });
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

const PART_bytes = 1 << 20;

/**
 * Bytes handed on in parts of one length, each in the same small buffer: a buffer that the browser itself was given stays in
 * memory for half a minute, even one that is let go.
 */
class Parts {
  #part = new Uint8Array(PART_bytes);
  #filled = 0;

  /** @param {(part: Uint8Array<ArrayBuffer>) => unknown} give copies the part before it returns */
  constructor(give) {
    this.give = give;
  }

  /** @param {Uint8Array} piece of any length */
  take(piece) {
    for (let from = 0; from < piece.length; ) {
      const some = piece.subarray(from, from + PART_bytes - this.#filled);
      this.#part.set(some, this.#filled);
      this.#filled += some.length;
      from += some.length;
      if (this.#filled === PART_bytes) this.end();
    }
  }

  end() {
    if (this.#filled > 0) this.give(this.#part.subarray(0, this.#filled));
    this.#filled = 0;
  }
}

/** The hash of the hashes of a file's parts: each is taken as soon as its part has come. */
class PartsHash {
  /** @type {Promise<ArrayBuffer>[]} */ #hashes = [];
  #parts = new Parts((part) => this.#hashes.push(self.crypto.subtle.digest("SHA-256", part)));

  /** @param {Uint8Array} piece */
  take(piece) {
    this.#parts.take(piece);
  }

  async whole() {
    this.#parts.end();
    return sha256(await new Blob(await Promise.all(this.#hashes)).arrayBuffer());
  }
}

/**
 * Gives memory back at once, where the browser can and was not given this buffer itself: it looks for what is not used any
 * more only after tens of megabytes.
 * @param {Uint8Array<ArrayBuffer>} bytes used by nobody from now on
 */
function letGo(bytes) {
  const buffer = /** @type {{transfer?: (bytes: number) => ArrayBuffer}} */ (/** @type {unknown} */ (bytes.buffer));
  buffer.transfer?.(0);
}

/**
 * Browsers offer the hash on secure pages only; elsewhere length and gzip's own check sum have to do.
 * @param {BufferSource} bytes @param {string} expected @param {string} what
 */
async function checkHash(bytes, expected, what) {
  if (!self.crypto.subtle) return;
  if ((await sha256(bytes)) !== expected) throw new NotLoaded(notMade(what));
}

const notMade = (/** @type {string} */ what) => `${what} is not the file that was made with this build.`;

/** @param {BufferSource} bytes */
async function sha256(bytes) {
  const hash = new Uint8Array(await self.crypto.subtle.digest("SHA-256", bytes));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

// The page may want a start before its own modules are there: then it gives this worker the engine's address as its name.
// A browser that cannot run it fetches nothing in vain: one without modules in workers does not come as far as this.
const early = self.name && runsWebAssembly() ? start(self.name, "image") : null;
