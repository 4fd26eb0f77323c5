// @ts-check
// The page's side of the engine: starts its worker once, and turns each request into a promise of the answer.

import { moduleWorker, runsWebAssembly } from "./browser.mjs";
import { savesData } from "./when.mjs";

/** @typedef {import("./engine-messages.mjs").ToWorker} ToWorker */
/** @typedef {import("./engine-messages.mjs").FromWorker} FromWorker */
/** @typedef {import("./engine-messages.mjs").Why} Why */
/** @typedef {{resolve: (answer: object) => void, reject: (reason: Error) => void}} Asked */

// Without a sign of life for this long, a start counts as failed. The image on its way, which is most of what comes, is one.
const START_PATIENCE_s = 90;
// An answer takes milliseconds: after this long, something runs in circles.
const ANSWER_PATIENCE_s = 30;
// A failed start is not tried again at every key press.
export const REST_AFTER_FAILURE_ms = 10_000;

/** @type {Map<string, Engine>} */
const engines = new Map();

/** The page's one engine. @param {string} base address of the folder with the engine's files */
export function engine(base) {
  const address = new URL(base, document.baseURI).href;
  const found = engines.get(address) ?? new Engine(address);
  engines.set(address, found);
  return found;
}

/** Why there is no live answer. */
export class EngineFailure extends Error {
  /** @param {string} message @param {Why} why @param {boolean} started whether it had been running */
  constructor(message, why, started) {
    super(message);
    this.why = why;
    this.started = started;
  }
}

class Engine {
  /** @type {Worker | null} */ #worker = null;
  /** @type {Promise<void> | null} */ #started = null;
  /** @type {{resolve: () => void, reject: (reason: Error) => void} | null} */ #starting = null;
  /** @type {Map<number, Asked>} */ #asked = new Map();
  #lastId = 0;
  /** @type {number | null} */ #failedAt = null;
  #mayTryAgain = true;
  /** @type {ReturnType<typeof setInterval> | undefined} */ #patience;

  /** @param {string} base */
  constructor(base) {
    this.base = base;
    // a newer version of the site cannot take over while the start has requests open
    document.addEventListener("calc-make-way", () => {
      if (document.documentElement.dataset.engine === "starting") this.#fail("A newer version of the site takes over.", "files");
    });
    // what failed for want of a network need not rest
    addEventListener("online", () => {
      if (this.#failedAt !== null) this.#failedAt = -REST_AFTER_FAILURE_ms;
    });
  }

  /** Starts the worker unless that has been done; resolves when it can answer. @returns {Promise<void>} */
  start() {
    const rested = this.#failedAt !== null && performance.now() - this.#failedAt > REST_AFTER_FAILURE_ms;
    if (this.#started && !rested) return this.#started;
    this.#failedAt = null;
    this.#started = new Promise((resolve, reject) => {
      this.#starting = { resolve, reject };
    });
    // Whoever asks hears of a failure; a start that nobody waits for must not be reported as unhandled.
    this.#started.catch(() => {});
    performance.mark("calc:engine-start");
    say("starting");
    if (runsWebAssembly()) this.#launch();
    else this.#fail("This browser is too old for the calculator.", "old");
    return this.#started;
  }

  #launch() {
    try {
      this.#worker = takeEarly(this.base) ?? moduleWorker(new URL("./engine.worker.mjs", import.meta.url));
    } catch (reason) {
      return this.#fail(`This browser does not start the calculator's worker: ${reason}`);
    }
    if (!this.#worker) return this.#fail("This browser is too old for the calculator.", "old");
    this.#worker.onmessage = (event) => this.#hear(event.data);
    this.#worker.onerror = (event) => {
      event.preventDefault();
      // without a message it is the script that did not come
      this.#fail(`The calculator's worker stopped: ${event.message || "its script did not load"}.`, event.message ? "" : "files");
    };
    this.#worker.onmessageerror = () => this.#fail("An answer of the calculator's worker could not be read.");
    this.#wait(START_PATIENCE_s, "The calculator did not start in time.", "files");
    this.#post({ type: "start", base: this.base, mode: wantedMode(), keep: !savesData() });
  }

  /**
   * Starts if need be, and asks.
   * @param {object} request
   * @param {boolean} [inParts] what comes later of the answer is a promise in it, called rest
   * @returns {Promise<object>}
   */
  async ask(request, inParts = false) {
    await this.start();
    return new Promise((resolve, reject) => {
      this.#lastId += 1;
      this.#asked.set(this.#lastId, { resolve, reject });
      this.#wait(ANSWER_PATIENCE_s, "The calculator did not answer in time.");
      this.#post({ id: this.#lastId, request: JSON.stringify(request), inParts });
    });
  }

  /** @param {FromWorker} message */
  #hear(message) {
    if ("id" in message) {
      // An answer that nobody waits for any more is dropped.
      const asked = this.#asked.get(message.id);
      this.#asked.delete(message.id);
      if ("problem" in message) asked?.reject(new Error(message.problem));
      else asked?.resolve(this.#withRest(message.id, JSON.parse(message.response)));
      if (this.#asked.size === 0) clearInterval(this.#patience);
    } else if (message.type === "ready") {
      clearInterval(this.#patience);
      // by the page's clock, so that the benchmark can say where the time went
      const since = Math.round(message.origin - performance.timeOrigin);
      const steps = Object.fromEntries(Object.entries(message.steps).map(([step, ms]) => [step, since + ms]));
      performance.mark("calc:engine-ready", { detail: { mode: message.mode, steps } });
      say("ready");
      this.#starting?.resolve();
    } else if (message.type === "progress") {
      this.#wait(START_PATIENCE_s, "The calculator did not start in time.", "files");
    } else if (message.again && this.#mayTryAgain) {
      // once: what fails with every file sound will fail again
      this.#mayTryAgain = false;
      this.#worker?.terminate();
      this.#launch();
    } else {
      this.#fail(message.message, message.why);
    }
  }

  /** @param {number} id @param {{later?: boolean, rest?: Promise<object>}} response */
  #withRest(id, response) {
    if (response.later) {
      response.rest = new Promise((resolve, reject) => this.#asked.set(id, { resolve, reject }));
      response.rest.catch(() => {}); // an answer that nobody shows any more
    }
    return response;
  }

  /** @param {ToWorker} message */
  #post(message) {
    this.#worker?.postMessage(message);
  }

  /**
   * Counts seconds in which the page was awake: a lid that was closed for an hour is no failure.
   * @param {number} left @param {string} sentence what to say if nothing is heard for so many @param {Why} [why]
   */
  #wait(left, sentence, why) {
    clearInterval(this.#patience);
    this.#patience = setInterval(() => {
      left -= 1;
      if (left <= 0) this.#fail(sentence, why);
    }, 1000);
  }

  /** @param {string} sentence @param {Why} [why] */
  #fail(sentence, why = "") {
    clearInterval(this.#patience);
    this.#worker?.terminate();
    this.#worker = null;
    this.#failedAt = performance.now();
    const started = document.documentElement.dataset.engine === "ready";
    say("failed");
    const reason = new EngineFailure(sentence, why, started);
    this.#starting?.reject(reason);
    // Once it had started, that promise is kept: what it says now must be the failure.
    this.#started = Promise.reject(reason);
    this.#started.catch(() => {});
    for (const { reject } of this.#asked.values()) reject(reason);
    this.#asked.clear();
  }
}

/**
 * The worker that the page itself started, where a link brought values. It waits for the message that starts it.
 * @param {string} base @returns {Worker | null}
 */
function takeEarly(base) {
  const early = /** @type {{earlyEngine?: {base: string, worker: Worker} | null}} */ (/** @type {unknown} */ (window));
  const worker = early.earlyEngine?.base === base ? early.earlyEngine.worker : null;
  early.earlyEngine = null;
  return worker;
}

/** @param {"starting" | "ready" | "failed"} state */
function say(state) {
  document.documentElement.dataset.engine = state;
}

/** The memory image, unless a test asks for the ordinary start. @returns {"image" | "ordinary"} */
function wantedMode() {
  try {
    return localStorage.getItem("calc-engine") === "ordinary" ? "ordinary" : "image";
  } catch {
    return "image"; // storage is blocked
  }
}
