// @ts-check
// <calc-form>: a form and an answer that Python made, kept in step by asking the engine at every change.

import { Asking } from "./asking.mjs";
import { saveAsFile } from "./copy.mjs";
import { addFileChoosers } from "./drop-file.mjs";
import { engine, REST_AFTER_FAILURE_ms } from "./engine.mjs";
import { focusSummary, showErrors } from "./error-summary.mjs";
import { defaultTexts, keyOf, labelOf, readTexts, sameTexts, showWhatApplies, writeText } from "./fields.mjs";
import { addNotes, note } from "./notes.mjs";
import { mendLinks, putFigures, replaceOutcome, unfoldForPrint } from "./outcome.mjs";
import { addRowEditors, followTexts, showRowErrors } from "./row-editor.mjs";
import { FOR_EXAMPLE, HOLD_ms, Saying } from "./saying.mjs";
import { copyAnswer, copyLink } from "./take-away.mjs";
import { isReturnTo, keepCopy, pageSlug, readLink, recallCopy, writeAddress, writeCopy } from "./url-state.mjs";
import { onApproach, onIdle, whenReleased } from "./when.mjs";

/** @typedef {import("./fields.mjs").Texts} Texts */
/** @typedef {import("./asking.mjs").Response} Response */
/** @typedef {import("./error-summary.mjs").FieldError} FieldError */

class CalculatorForm extends HTMLElement {
  /** @type {HTMLFormElement} */ #form = document.createElement("form");
  /** @type {Asking | undefined} */ #asking;
  /** @type {Saying | undefined} */ #saying;
  #own = false;
  #copyName = "";
  /** Whether something was typed here, so that the tab's copy is worth keeping. */ #touched = false;
  /** @type {number | null} when the newest event that asked took place */ #since = null;
  /** Errors may be shown: a change, leaving a field or Calculate came since the last answer. */ #reveal = false;
  #calculate = false;
  #rested = 0;
  /** @type {Response | null} the answer shown */ #onPage = null;
  /** @type {string | null} the field being typed in, which nobody complains about yet */ #typing = null;
  /** @type {FieldError[]} */ #shown = [];

  connectedCallback() {
    const form = this.querySelector("form");
    const outcome = this.querySelector("[data-outcome]");
    if (this.#asking || !form || !(outcome instanceof HTMLElement)) return;
    this.#form = form;
    const root = document.documentElement;
    root.dataset.engine ??= "off";
    const live = engine(new URL(this.dataset.engine ?? "", document.baseURI).href);
    const works = () => root.dataset.engine === "ready";
    const saying = new Saying(outcome, this.querySelector("[data-status]"), () => this.#holdsExample());
    const asking = new Asking({
      slug: this.slug,
      engine: live,
      read: () => readTexts(form),
      works,
      onWork: () => {
        const starting = !works();
        saying.show(starting ? "starting" : "stale", true);
        if (starting && !saying.answered) saying.line(`Starting the calculator. ${FOR_EXAMPLE}`, HOLD_ms);
      },
      onAnswer: (response, isNew) => whenReleased(() => this.#take(response, isNew), this.#mayMoveThings(response)),
      onFailure: (reason) => {
        saying.unavailable(works(), reason);
        if (this.#calculate) saying.lead();
        this.#calculate = false;
        this.#tell(null);
      },
    });
    this.#saying = saying;
    this.#asking = asking;

    const alike = [...document.querySelectorAll(`calc-form[slug="${CSS.escape(this.slug)}"]`)];
    const place = alike.indexOf(this);
    this.#own = place === 0 && this.slug === pageSlug(location.pathname);
    this.#copyName = `calc:${this.slug}${place > 0 ? `:${place}` : ""}`;
    addNotes(form);
    addFileChoosers(form);
    addRowEditors(form, this.slug);
    mendLinks(this, this.#base);
    this.#fill();
    this.#follow();
    this.#listen(form);
    if (hasJob()) import("../job/on-calculator.mjs").then(({ watchJob }) => watchJob(this.#besideJob()), console.warn);

    if (!this.#holdsExample()) {
      this.#reveal = true;
      asking.ask();
      return;
    }
    saying.line(FOR_EXAMPLE);
    const warm = () => {
      if (root.dataset.engine !== "off") return;
      live.start().catch((reason) => !asking.busy && saying.unavailable(false, reason));
    };
    onApproach(this, warm);
    if (this.#own) onIdle(warm);
  }

  get slug() {
    return this.getAttribute("slug") ?? "";
  }

  get #base() {
    return this.dataset.base ?? "";
  }

  /** Address of the calculator's own page, as far as this page knows it. */
  get #page() {
    if (this.#own) return location.pathname;
    return (this.dataset.address ?? "").replace(/^~\//, this.#base);
  }

  #holdsExample() {
    return sameTexts(readTexts(this.#form), defaultTexts(this.#form));
  }

  #fill() {
    const copy = recallCopy(this.#copyName);
    /** @type {string[]} */
    let linked = [];
    if (this.#own && location.search !== "" && !(copy && isReturnTo(copy))) {
      const { used, notes } = readLink(this.#form, location.search, Number(this.dataset.version));
      linked = used;
      note(this.#form, "link", notes.join(" "));
    }
    if (!copy) return;
    this.#touched = true;
    writeCopy(this.#form, copy.texts, linked);
  }

  /** What depends on the fields' texts follows them. */
  #follow() {
    showWhatApplies(this.#form);
    followTexts(this.#form);
  }

  /** @param {HTMLFormElement} form */
  #listen(form) {
    form.addEventListener("input", (event) => this.#changed(event, false));
    form.addEventListener("change", (event) => this.#changed(event, true));
    form.addEventListener("focusout", () => {
      this.#typing = null;
      const refused = this.#asking?.response?.errors.length ?? 0;
      if (refused > this.#shown.length) this.#askAndReveal();
    });
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.#since = event.timeStamp;
      this.#calculate = true;
      this.#askAndReveal(true);
    });
    for (const button of /** @type {NodeListOf<HTMLButtonElement>} */ (form.querySelectorAll("[data-act]"))) {
      button.addEventListener("click", (event) => this.#act(button, event));
      // on another page a link needs the address of the calculator's own
      if (button.dataset.act === "copy-link" && this.#page === "") button.hidden = true;
    }
    addEventListener("online", () => {
      if (this.#saying?.outcome.dataset.state === "unavailable") this.#askAndReveal();
    });
    // Coming back to a kept page, or a browser that puts typed text back late, must not leave fields and answer apart.
    addEventListener("pageshow", () => {
      this.#follow();
      if (!sameTexts(readTexts(form), this.#asking?.texts ?? defaultTexts(form))) this.#askAndReveal();
    });
  }

  /**
   * @param {HTMLButtonElement} button
   * @param {Event} event
   */
  #act(button, event) {
    if (!this.#asking || !this.#saying) return;
    if (button.dataset.act === "reset") this.#reset(event.timeStamp);
    if (button.dataset.act === "copy-link") void copyLink(this.#form, this.#asking, this.#saying, this.#page, button);
    if (button.dataset.act === "copy-answer") void copyAnswer(this.#form, this.#asking, this.#saying, button);
    if (button.dataset.act === "add-to-job") {
      import("../job/on-calculator.mjs").then(
        ({ addToJob }) => addToJob(this.#besideJob()),
        () => this.#saying?.line("Not added: a part of the job sheet did not come. Check the connection, then reload the page."),
      );
    }
  }

  /** What is typed while a failed engine rests is not left without an answer. */
  #askOnceRested() {
    clearTimeout(this.#rested);
    this.#rested = setTimeout(() => {
      if (document.documentElement.dataset.engine === "failed") this.#asking?.ask();
    }, REST_AFTER_FAILURE_ms);
  }

  #besideJob() {
    const say = (/** @type {string} */ words) => this.#saying?.line(words);
    const changed = () => {
      this.#touched = true;
      this.#follow();
      keepCopy(this.#copyName, readTexts(this.#form));
      this.#askAndReveal();
    };
    const asking = /** @type {Asking} */ (this.#asking);
    const title = this.#form.getAttribute("aria-label") ?? this.slug;
    return { slug: this.slug, title, base: this.#base, form: this.#form, asking, say, changed };
  }

  /**
   * @param {Event} event
   * @param {boolean} finished with the field, for now
   */
  #changed(event, finished) {
    const name = event.target instanceof Element ? (event.target.getAttribute("name") ?? "") : "";
    if (name === "") return;
    this.#typing = finished ? null : keyOf(this.#form, name);
    this.#reveal ||= finished;
    this.#touched = true;
    this.#since = event.timeStamp;
    this.#follow();
    keepCopy(this.#copyName, readTexts(this.#form));
    if (document.documentElement.dataset.engine === "failed") this.#askOnceRested();
    this.#asking?.ask();
  }

  #askAndReveal(again = false) {
    this.#typing = null;
    this.#reveal = true;
    this.#asking?.ask(again);
  }

  /**
   * An error that appears while the mouse is down would push the button from under it, and the click would be lost.
   * @param {Response} response
   */
  #mayMoveThings(response) {
    return !response.ok && this.#reveal && !this.#calculate;
  }

  /**
   * @param {Response} response
   * @param {boolean} isNew
   */
  #take(response, isNew) {
    const saying = /** @type {Saying} */ (this.#saying);
    if (this.#asking?.busy || this.#asking?.response !== response) return;
    this.#shown = response.errors.filter(
      ({ key }) => this.#shown.some((shown) => shown.key === key) || (this.#reveal && key !== this.#typing),
    );
    showErrors(this.#form, this.#shown);
    showRowErrors(this.#form, this.#shown);
    if (response.ok) {
      if (isNew) this.#put(response);
      saying.answered = true;
      saying.show("live");
      saying.line(response.stop ? `${response.headline}. Stop: read the warning.` : response.headline, HOLD_ms, true);
    } else {
      saying.show(this.#shown.length > 0 ? "errors" : "stale");
      saying.line(this.#shown.map((error) => error.message).join(". "), HOLD_ms, true);
    }
    this.#keep(response);
    if (this.#calculate) focusSummary(this.#form);
    this.#reveal = this.#calculate = false;
    this.#since = null;
    this.#tell(response);
  }

  /** For whatever else on the page follows this form. @param {Response | null} response null when there can be none */
  #tell(response) {
    this.dispatchEvent(new CustomEvent("calc-answer", { bubbles: true, detail: { texts: readTexts(this.#form), response } }));
  }

  /** @param {Response} response */
  #put(response) {
    const detail = { slug: this.slug };
    const { outcome } = /** @type {Saying} */ (this.#saying);
    replaceOutcome(outcome, response.html, this.#base);
    performance.mark("calc:answer", { detail });
    this.#onPage = response;
    const put = (/** @type {string[] | null} */ figures) => this.#onPage === response && putFigures(outcome, figures);
    response.rest?.then(({ figures }) => put(figures), () => put(null));
    if (this.#since === null) return;
    performance.measure("calc:answer-time", { start: this.#since, end: performance.now(), detail });
  }

  /** @param {Response} response */
  #keep(response) {
    if (this.#own) writeAddress(response.query);
    if (this.#touched) keepCopy(this.#copyName, readTexts(this.#form));
    const labels = response.long.map((key) => labelOf(this.#form, key));
    const words = `A link is too short to hold ${labels.join(", ")}, so it holds only the other fields. Keep a file of it instead.`;
    const actions = response.long.map((key) => ({
      words: `Save ${labelOf(this.#form, key)} as a file`,
      act: () => saveAsFile(`${this.slug}-${key}.csv`, readTexts(this.#form)[key] ?? ""),
    }));
    note(this.#form, "long", labels.length > 0 ? words : "", actions);
  }

  /** @param {number} timeStamp */
  #reset(timeStamp) {
    const before = readTexts(this.#form);
    const start = defaultTexts(this.#form);
    this.#since = timeStamp;
    this.#write(start);
    this.#touched = false;
    keepCopy(this.#copyName, null);
    note(this.#form, "link", "");
    if (sameTexts(before, start)) return;
    const putBack = () => {
      note(this.#form, "reset", "");
      this.#touched = true;
      this.#write(before);
      keepCopy(this.#copyName, before);
    };
    const words = "Your own values are kept until you leave this page.";
    note(this.#form, "reset", words, [{ words: "Put mine back", act: putBack }]);
  }

  /** @param {Texts} texts */
  #write(texts) {
    for (const [name, text] of Object.entries(texts)) writeText(this.#form, name, text);
    this.#follow();
    this.#askAndReveal();
  }
}

/** Whether a job is open on this device: its code is fetched only then, or when it is asked for. */
function hasJob() {
  try {
    return localStorage.getItem("job-current") !== null;
  } catch {
    return false;
  }
}

unfoldForPrint();
customElements.define("calc-form", CalculatorForm);
