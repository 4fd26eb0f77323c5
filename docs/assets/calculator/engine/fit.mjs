// @ts-check
// What makes a memory image fit browsers other than the one that it was made for.

import { letGo } from "./bytes.mjs";

/** @typedef {import("./files.mjs").Manifest} Manifest */

/**
 * The image holds places in the interpreter's table of functions, and was made where that table came out in one way.
 * Here two things are put right that come out otherwise in other browsers:
 * - Some give a function another identity in the table than among the exports, so that it would get a second place and
 *   all places after it would shift. Put there once more by hand, it is the same.
 * - One function, which counts another's arguments, some do not have: then the image must not say where it stands.
 */
export class Fit {
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
export function knowsItsFunctions() {
  const { exports } = new WebAssembly.Instance(new WebAssembly.Module(Uint8Array.from(ONE_FUNCTION)));
  return exports.a === /** @type {WebAssembly.Table} */ (exports.t).get(0);
}
