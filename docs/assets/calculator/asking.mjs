// @ts-check
// One request in flight and the newest waiting: no delay is added, and no answer is older than it must be.

import { sameTexts } from "./fields.mjs";

/** @typedef {import("./fields.mjs").Texts} Texts */
/** @typedef {import("./error-summary.mjs").FieldError} FieldError */
/**
 * @typedef {object} Response
 * @property {boolean} ok
 * @property {string} headline
 * @property {string} html
 * @property {boolean} stop
 * @property {FieldError[]} errors
 * @property {string} query
 * @property {string[]} long keys of the fields that the query left out
 * @property {Promise<{figures: string[], text: string}>} [rest] the charts' HTML, in the order of their places in html, and
 *   the answer as text; not where the values were refused
 * @property {Record<string, Answer>} answers by key; none where the values were refused
 * @property {number} version
 * @property {{level: string, text: string}[]} cautions
 * @property {import("../job/job-data.mjs").Gift[]} gifts
 */
/** @typedef {{value: number | string | string[] | null, low: number | null, high: number | null, unit: string, text: string}} Answer */
/**
 * @typedef {object} Engine
 * @property {() => Promise<unknown>} start
 * @property {(request: object, inParts?: boolean) => Promise<object>} ask
 */

export class Asking {
  /** @type {Texts | null} asked of the engine and not answered */ #asked = null;
  #waiting = false;
  /** @type {{texts: Texts, response: Response} | null} */ #last = null;
  /** @type {(() => void)[]} */ #settled = [];

  /**
   * @param {object} parts
   * @param {string} parts.slug
   * @param {Engine} parts.engine
   * @param {() => Texts} parts.read what the fields hold now
   * @param {() => boolean} parts.works whether the engine has started and has not failed
   * @param {() => void} parts.onWork
   * @param {(response: Response, isNew: boolean) => void} parts.onAnswer
   * @param {(reason: unknown) => void} parts.onFailure
   */
  constructor(parts) {
    this.parts = parts;
  }

  get busy() {
    return this.#asked !== null;
  }

  /** The answer to what the fields held when it was asked. */
  get response() {
    return this.#last?.response;
  }

  /** What has been asked or answered last. */
  get texts() {
    return this.#asked ?? this.#last?.texts;
  }

  /** Asks about what the fields hold now. @param {boolean} [again] even if that has been answered */
  ask(again = false) {
    const texts = this.parts.read();
    if (this.#asked !== null) {
      this.#waiting = !sameTexts(texts, this.#asked);
      this.parts.onWork();
    } else if (!again && this.#last && sameTexts(texts, this.#last.texts)) {
      this.#answer(this.#last.texts, this.#last.response);
    } else {
      void this.#send();
    }
  }

  /** Waits for the answer to what the fields hold now. */
  async settle() {
    if (this.#asked === null && this.#last && sameTexts(this.parts.read(), this.#last.texts)) return;
    const settled = new Promise((done) => this.#settled.push(() => done(null)));
    this.ask();
    await settled;
  }

  async #send() {
    this.#waiting = false;
    this.#asked = this.parts.read();
    this.parts.onWork();
    try {
      await this.parts.engine.start();
      // starting takes seconds: ask about what the fields hold by now
      const texts = this.parts.read();
      this.#asked = texts;
      this.#waiting = false;
      const response = /** @type {Response} */ (await this.parts.engine.ask({ slug: this.parts.slug, texts }, true));
      this.#asked = null;
      if (this.#waiting || !sameTexts(texts, this.parts.read())) void this.#send();
      else this.#answer(texts, response);
    } catch (reason) {
      console.warn(reason);
      this.#asked = null;
      // an engine that failed would refuse the newer texts too, and each refusal would ask again
      if (this.#waiting && this.parts.works()) return void this.#send();
      this.parts.onFailure(reason);
      this.#settle();
    }
  }

  /**
   * @param {Texts} texts
   * @param {Response} response
   */
  #answer(texts, response) {
    const isNew = this.#last?.response !== response;
    this.#last = { texts, response };
    this.parts.onAnswer(response, isNew);
    this.#settle();
  }

  #settle() {
    for (const settled of this.#settled.splice(0)) settled();
  }
}
