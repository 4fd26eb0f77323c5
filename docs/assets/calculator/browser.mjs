// @ts-check
// Whether this browser can run the engine at all: asked before megabytes are fetched for nothing.

// A whole module of one type, a function that takes a reference to something of JavaScript's: the newest thing that
// the interpreter's code does not compile without.
const TAKES_REFERENCE = [0, 97, 115, 109, 1, 0, 0, 0, 1, 5, 1, 96, 1, 111, 0];

/** README.md names the versions. */
export function runsWebAssembly() {
  return typeof WebAssembly === "object" && typeof BigInt64Array === "function" && WebAssembly.validate(Uint8Array.from(TAKES_REFERENCE));
}

/**
 * A worker made of a module, or nothing from a browser that has none: it starts the script as something else, and
 * never asks of which type it is.
 * @param {URL} script
 */
export function moduleWorker(script) {
  if (typeof Worker !== "function") return null;
  let asked = false;
  const options = {
    get type() {
      asked = true;
      return /** @type {"module"} */ ("module");
    },
  };
  const worker = new Worker(script, options);
  if (asked) return worker;
  worker.terminate();
  return null;
}
