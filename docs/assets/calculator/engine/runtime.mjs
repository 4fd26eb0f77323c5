// @ts-check
// The interpreter: its files, and how it is made ready.

import { checkHash, compile, readBytes, readFile, readJson, readManifest } from "./files.mjs";
import { knowsItsFunctions } from "./fit.mjs";
import { areKept, findKept } from "./kept.mjs";
import { reached, timed } from "./steps.mjs";

/** @typedef {import("./files.mjs").Manifest} Manifest */
/** @typedef {import("./fit.mjs").Fit} Fit */
/** @typedef {import("./fit.mjs").Imports} Imports */
/** @typedef {import("pyodide").PyodideInterface} Python */

// One environment for both starts; the image was made with it.
const ENVIRONMENT = { HOME: "/home/pyodide", PYTHONHASHSEED: "0", LANG: "en_US.UTF-8" };

const SCRIPTS = ["pyodide.mjs", "pyodide.asm.js"];
const MODULE = "pyodide.asm.wasm";

/** The interpreter's own files, asked for at once and used by either start. */
export class Runtime {
  /** @param {string} base */
  constructor(base) {
    this.base = base;
    this.manifest = /** @type {Promise<{manifest: Manifest, encoding: string}>} */ (timed("manifest", readManifest(base)));
    this.kept = findKept(base);
    /** Whether the interpreter's files come from the service worker, which held them against their hashes when it took them. */
    this.checked = this.kept.then((image) => image !== undefined && areKept(base, [...SCRIPTS, MODULE]));
    this.loader = timed("scripts", this.#scripts()).then(([loader]) => loader.loadPyodide);
    this.module = timed("compiled", this.#compile());
    /** @type {Promise<Record<string, number>>} */
    this.functions = knowsItsFunctions() ? Promise.resolve({}) : readJson(`${base}functions.json`);
    // Each is awaited later; a failure before then must not be reported as unhandled.
    for (const early of [this.manifest, this.loader, this.module, this.functions]) early.catch(() => {});
  }

  /** The second of these, loaded early, sets the function that the first would fetch it for, which saves a round trip. */
  async #scripts() {
    if (!(await this.checked)) await Promise.all(SCRIPTS.map((name) => this.read(name)));
    return Promise.all(SCRIPTS.map((name) => import(`${this.base}${name}`)));
  }

  async #compile() {
    const [response, checked] = await Promise.all([readFile(`${this.base}${MODULE}`), this.checked]);
    const copy = checked ? null : response.clone();
    const [module] = await Promise.all([compile(response), copy && this.#check(MODULE, copy.arrayBuffer())]);
    return module;
  }

  /** A file of the engine, held against its hash. @param {string} name */
  read(name) {
    return this.#check(name, readBytes(`${this.base}${name}`));
  }

  /**
   * Nothing of the interpreter runs that is not as it was built. Where the list of hashes itself is missing or damaged there
   * is nothing to hold a file against; then the start is the slower one, whose own list names the calculators' hash.
   * @param {string} name @param {Promise<ArrayBuffer>} file
   */
  async #check(name, file) {
    const [list, bytes] = await Promise.all([this.manifest.catch(() => null), file]);
    if (list) await checkHash(bytes, list.manifest.files[name]?.sha256 ?? "", name);
    return bytes;
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
