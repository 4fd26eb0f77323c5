// @ts-check
// node make-image.mjs ENGINE_FOLDER OUTPUT FUNCTIONS: writes the memory image of an interpreter that has every calculator
// imported and run once, and what a browser must know to fit it (see docs/assets/calculator/engine/fit.mjs): FUNCTIONS, and
// as printed JSON over how many bytes the image holds only differences (see layOver in runtime.mjs).
// The same input gives the same bytes in any folder: clocks and chance stand still meanwhile.

import nodeCrypto from "node:crypto";
import { writeFileSync } from "node:fs";
import { syncBuiltinESMExports } from "node:module";
import { resolve } from "node:path";

const [folder, output, functions] = process.argv.slice(2).map((path) => resolve(path));

// The runtime copies these into its memory: the program's name would be a path of this machine.
process.argv[1] = "/engine";
process.env.TZ = "UTC";
stopClocksAndChance();

const { layOver, startOrdinarily, withFirstMemory } = await import("./runtime.mjs");
let firstMemory = new Uint8Array(0);
const python = await withFirstMemory(
  (memory, exports, table) => {
    writeFileSync(functions, JSON.stringify(placesOf(exports, table)));
    firstMemory = memory.slice(0, memory.findLastIndex((byte) => byte !== 0) + 1);
  },
  () => startOrdinarily(folder, { _makeSnapshot: true }),
);
python.runPython(`
import gc, importlib, linecache, pkgutil, random, traceback
import calculators
from calculators.kit import browser, find

# A module that is not in the image cannot be imported after it, not even by the rarest path through a calculator.
for home in ("physics", "kit"):
    for found in pkgutil.iter_modules([f"{path}/{home}" for path in calculators.__path__]):
        if not found.name.startswith("cli"):
            importlib.import_module(f"calculators.{home}.{found.name}")
find.warm()
try:
    raise RuntimeError("reported once, so that what a report of a defect imports is in the image too")
except RuntimeError as error:
    traceback.extract_tb(error.__traceback__)
    traceback.format_exception(error)
linecache.clearcache()
importlib.invalidate_caches()
gc.collect()
gc.freeze()  # thousands of objects that never die: later collections need not look at them
`);
zeroFreeMemory(python._module);
const image = python.makeMemorySnapshot();
layOver(image, firstMemory, firstMemory.length);
writeFileSync(output, image);
const { HEAP32, __PyRuntime: state, __PyEM_EMSCRIPTEN_COUNT_ARGS_OFFSET: offset } = python._module;
process.stdout.write(`${JSON.stringify({ static_bytes: firstMemory.length, count_args: state + HEAP32[offset / 4] })}\n`);

/**
 * Where in the table each exported function stands that stands there.
 * @param {WebAssembly.Exports} exports @param {WebAssembly.Table} table
 */
function placesOf(exports, table) {
  const places = new Map(Array.from({ length: table.length }, (_, place) => [table.get(place), place]));
  return Object.fromEntries(Object.entries(exports).flatMap(([name, one]) => (places.has(one) ? [[name, places.get(one)]] : [])));
}

function stopClocksAndChance() {
  const noon = Date.UTC(2020, 0, 1, 12);
  Date.now = () => noon;
  performance.now = () => 1000;
  let state = 1;
  /** @param {any} view */
  const fill = (view) => {
    const bytes = new Uint8Array(view.buffer, view.byteOffset, view.byteLength);
    for (let i = 0; i < bytes.length; i += 1) {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      bytes[i] = state >>> 24;
    }
    return view;
  };
  globalThis.crypto.getRandomValues = fill;
  nodeCrypto.randomFillSync = fill;
  Math.random = () => 0.5;
  syncBuiltinESMExports();
}

/**
 * Free blocks hold what was last in them, and zeros compress to nothing: takes every free block of the heap, largest
 * first, fills it with zeros and gives all back. The heap may not grow meanwhile, or this would never end.
 * @param {any} module
 */
function zeroFreeMemory(module) {
  const grow = WebAssembly.Memory.prototype.grow;
  WebAssembly.Memory.prototype.grow = () => {
    throw new RangeError("The heap stays as it is while its free memory is zeroed.");
  };
  /** @type {{address: number, release: (address: number) => void}[]} */
  const taken = [];
  /** @param {number} size @param {(size: number) => number} allocate @param {(address: number) => void} release */
  const takeAll = (size, allocate, release) => {
    for (let address = allocate(size); address !== 0; address = allocate(size)) {
      module.HEAPU8.fill(0, address, address + size);
      taken.push({ address, release });
    }
  };
  // Above 512 bytes Python asks the C heap; up to there it has pools of its own, one size every 16 bytes.
  for (let size = 1 << 22; size > 512; size >>= 1) takeAll(size, module._PyMem_RawMalloc, module._PyMem_RawFree);
  for (let size = 512; size >= 16; size -= 16) takeAll(size, module._PyMem_Malloc, module._PyMem_Free);
  for (const { address, release } of taken) release(address);
  WebAssembly.Memory.prototype.grow = grow;
}
