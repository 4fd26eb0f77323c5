// @ts-check
// The engine's worker: Python by way of WebAssembly, started from a memory image made when the site was built, or by
// importing everything where the image will not do. Then one question at a time: a JSON text in, a JSON text out.

import { runsWebAssembly } from "./browser.mjs";
import { letGo } from "./engine/bytes.mjs";
import { fetchFromSite, NotLoaded } from "./engine/files.mjs";
import { cacheName, keepImage } from "./engine/kept.mjs";
import { practise } from "./engine/practice.mjs";
import { asked, onceQuiet } from "./engine/quiet.mjs";
import { Runtime } from "./engine/runtime.mjs";
import { startFromImage, startOrdinarily } from "./engine/start.mjs";
import { reached, steps } from "./engine/steps.mjs";

/** @typedef {import("./engine-messages.mjs").ToWorker} ToWorker */
/** @typedef {import("./engine-messages.mjs").FromWorker} FromWorker */
/** @typedef {import("./engine-messages.mjs").Why} Why */
/** @typedef {import("pyodide").PyodideInterface} Python */
/** @typedef {Iterable<string> & {destroy: () => void}} Parts */
/** @typedef {{run_json: (request: string) => string, parts_json: (request: string) => Parts}} Door Python's own names */

/** @type {Python | null} */
let python = null;
/** @type {Door | null} */
let door = null;

self.onmessage = (/** @type {MessageEvent<ToWorker>} */ { data }) => {
  if ("id" in data) answer(data.id, data.request, data.inParts);
  else void begin(data.base, data.mode, data.keep);
};

/** @param {FromWorker} message */
function post(message) {
  self.postMessage(message);
}

/** @param {number} id @param {string} request @param {boolean} inParts */
function answer(id, request, inParts) {
  try {
    if (!door) throw new Error("The calculator has not started.");
    const hear = (/** @type {string} */ response) => post({ id, response });
    if (inParts) eachPart(door, request, hear);
    else hear(door.run_json(request));
    asked();
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

/** @param {Door} door @param {string} request @param {(response: string) => void} hear */
function eachPart(door, request, hear) {
  const parts = door.parts_json(request);
  for (const part of parts) hear(part);
  parts.destroy();
}

// Keeping the image takes as long as some answers.
const QUIET_ms = 3000;

/** @param {string} base @param {"image" | "ordinary"} mode @param {boolean} keep whether this device may keep the image */
async function begin(base, mode, keep) {
  try {
    const { runtime, restored } = early?.base === base && mode === "image" ? early : start(base, mode);
    let started = mode;
    let isKept = false;
    if (restored) {
      try {
        const made = await restored;
        const { fresh } = made;
        python = made.python;
        made.fresh = null; // megabytes that the promise would hold for good
        if (keep && fresh) onceQuiet(QUIET_ms, () => keepImage(base, fresh));
        else if (fresh) letGo(fresh);
        isKept = !fresh;
      } catch (reason) {
        console.warn("The memory image cannot be used, so the calculator starts the slower way.", reason);
        started = "ordinary";
      }
    }
    python ??= await startOrdinarily(base, runtime);
    const { run_json, parts_json } = /** @type {Door} */ (python.pyimport("calculators.kit.browser"));
    const opened = (door = { run_json, parts_json });
    // All that is needed is here. Whatever runs from now on has no way out.
    self.fetch = () => Promise.reject(new TypeError("The calculator makes no requests."));
    reached("ready");
    post({ type: "ready", mode: started, origin: performance.timeOrigin, steps });
    const slugs = () => /** @type {Python} */ (python).pyimport("calculators").slugs();
    practise((request) => eachPart(opened, request, () => {}), slugs, isKept ? base : null);
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
  // what a host gives in place of a file is no script and no WebAssembly
  const kinds = [TypeError, SyntaxError, WebAssembly.CompileError, NotLoaded];
  return kinds.some((kind) => reason instanceof kind) ? "files" : "";
}

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

// The page may want a start before its own modules are there: then it gives this worker the engine's address as its name.
// A browser that cannot run it fetches nothing in vain: one without modules in workers does not come as far as this.
const early = self.name && runsWebAssembly() ? start(self.name, "image") : null;
