// @ts-check
// <job-sheet>: one job through the shop, step by step; its answers, notes and ticks, on this device only.

import { saveAsFile } from "../calculator/copy.mjs";
import { engine } from "../calculator/engine.mjs";
import { jobText, localDay, LONGEST_NAME, newJob, readJob } from "./job-data.mjs";
import { entryCard } from "./entry-card.mjs";
import { fragmentOf, jobFrom } from "./job-link.mjs";
import { stale } from "./job-state.mjs";
import {
  allJobs, changeJob, currentJob, dropJob, dropUnread, isTaken, jobById, makeCurrent, onOtherTab, putJob,
} from "./job-store.mjs"; // prettier-ignore
import { ask, button, element } from "./page-parts.mjs";
import { drawCode } from "./paper-code.mjs";

/** @typedef {import("./job-data.mjs").Job} Job */
/** @typedef {import("./job-data.mjs").Entry} Entry */

const SEVERAL = "coating jobs";
const MOST_JOBS = 1_000;
const LARGEST_FILE_bytes = 20_000_000;

class JobSheet extends HTMLElement {
  /** @type {Map<string, {version: number, title: string, href: string, step: string}>} */ #known = new Map();
  /** @type {HTMLElement} */ #status = document.createElement("p");
  #busy = false;

  connectedCallback() {
    if (this.#known.size > 0) return;
    for (const item of /** @type {NodeListOf<HTMLElement>} */ (this.querySelectorAll("li[data-slug]"))) {
      const { slug = "", version, title = slug } = item.dataset;
      const step = /** @type {HTMLElement} */ (item.closest("[data-step]")).dataset.step ?? "";
      const href = item.querySelector("a")?.getAttribute("href") ?? "";
      this.#known.set(slug, { version: Number(version), title, href, step });
    }
    this.#status = /** @type {HTMLElement} */ (this.querySelector("[data-status]"));
    this.classList.add("job-live");
    onOtherTab(() => this.#show());
    addEventListener("pageshow", (event) => event.persisted && this.#show());
    addEventListener("hashchange", () => void this.#takeLink());
    this.#show();
    void this.#takeLink();
  }

  /** @param {string} words */
  #say(words) {
    this.#status.textContent = words;
  }

  async #takeLink() {
    const link = location.hash;
    const { job, problem } = await jobFrom(link);
    if (problem !== "") return this.#say(problem);
    if (!job) return;
    if (!(await ask(this, `This link holds the job “${job.name}”. Open it beside the jobs that are here?`, "Open it"))) return;
    const trouble = this.#adopt(job);
    if (trouble !== "" && !jobById(job.id)) return;
    // the address keeps a job that no storage keeps
    if (trouble === "" && location.hash === link) history.replaceState(history.state, "", location.pathname + location.search);
    await this.#workOut();
  }

  /** @param {Job} job @returns {string} what went wrong, which is said as well */
  #adopt(job) {
    if (isTaken(job.id)) job.id = newJob("").id;
    const problem = putJob(job);
    if (problem === "" || jobById(job.id)) makeCurrent(job.id);
    this.#show();
    this.#say(problem || `“${job.name}” is open.`);
    return problem;
  }

  #show() {
    const job = currentJob();
    this.#showTop(job);
    const out = job ? stale(job, new Map([...this.#known].map(([slug, one]) => [slug, one.version])), (slug) => this.#title(slug)) : new Map();
    for (const step of /** @type {NodeListOf<HTMLElement>} */ (this.querySelectorAll("[data-step]"))) this.#showStep(step, job, out);
    if (job) void this.#showPaper(job);
    else this.querySelector("[data-paper]")?.remove();
  }

  /** @param {string} slug */
  #title(slug) {
    return this.#known.get(slug)?.title ?? slug;
  }

  /** @param {Job | null} job */
  #showTop(job) {
    const top = /** @type {HTMLElement} */ (this.querySelector("[data-top]"));
    const focused = document.activeElement instanceof HTMLElement ? document.activeElement.dataset.act : undefined;
    const moreOpen = top.querySelector("details")?.open ?? false;
    top.replaceChildren();
    const { jobs, unread } = allJobs();
    if (jobs.length > 0) {
      const choice = element("select", { id: "job-choice", "data-act": "choose" });
      if (!job) choice.append(element("option", { value: "" }, "Choose a job"));
      for (const one of jobs) {
        const option = /** @type {HTMLOptionElement} */ (element("option", { value: one.id }, `${one.name}, ${one.made}`));
        option.selected = one.id === job?.id;
        choice.append(option);
      }
      choice.addEventListener("change", () => {
        makeCurrent(/** @type {HTMLSelectElement} */ (choice).value);
        this.#show();
      });
      top.append(element("p", { class: "job-choice" }, element("label", { for: "job-choice" }, "Job"), " ", choice));
    }
    const acts = element("p", { class: "job-acts" });
    const more = element("p", { class: "job-acts" });
    acts.append(button("New job", "new", () => void this.#start()));
    if (job) {
      acts.append(
        button("Work all out again", "again", () => void this.#workOut()),
        button("Print", "print", () => print()),
      );
      more.append(
        button("Name it", "name", () => void this.#rename(job)),
        button("Save as a file", "save", () => saveAsFile(`${fileName(job.name)}.job.json`, jobText(now(job)), "application/json")),
        button("Copy link", "link", () => void this.#copyLink(job)),
        button("Delete", "delete", () => void this.#delete(job)),
      );
    }
    more.append(this.#opener());
    if (jobs.length > 0) more.append(button("Save every job", "export", () => this.#saveAll()));
    const fold = /** @type {HTMLDetailsElement} */ (element("details", { class: "job-more" }, element("summary", {}, "Name, save, open, share, delete"), more));
    fold.open = moreOpen;
    top.append(acts, fold);
    // on paper the name stands where the buttons were
    if (job) top.append(element("p", { class: "job-title" }, `${job.name}, started ${job.made}`));
    if (!job && jobs.length === 0) {
      top.append(element("p", {}, "No job yet. Start one here, or press “Add to job sheet” under the answer of any calculator."));
    }
    for (const one of unread) {
      const save = button("Save it as a file", `unread-save-${one.key}`, () => saveAsFile("unread.job.json", one.text, "application/json"));
      const drop = button("Delete it", `unread-drop-${one.key}`, async () => {
        if (!(await ask(this, "Delete what could not be read? It cannot be brought back.", "Delete it"))) return;
        dropUnread(one.key);
        this.#show();
      });
      top.append(element("p", { class: "job-unread" }, `A job on this device was not opened. ${one.problem} `, save, " ", drop));
    }
    if (focused) /** @type {HTMLElement | null} */ (top.querySelector(`[data-act="${CSS.escape(focused)}"]`))?.focus();
  }

  #opener() {
    const file = /** @type {HTMLInputElement} */ (element("input", { type: "file", accept: ".json,application/json", id: "job-file", class: "job-file" }));
    file.addEventListener("change", async () => {
      const chosen = file.files?.[0];
      file.value = "";
      if (chosen) await this.#openFile(chosen);
    });
    return element("label", { class: "md-button job-open", for: "job-file" }, "Open a file", file);
  }

  /** @param {File} file */
  async #openFile(file) {
    if (file.size > LARGEST_FILE_bytes) return this.#say(`${file.name} is larger than 20 MB, the most that is read: it was left as it is.`);
    let text = "";
    try {
      text = await file.text();
    } catch {
      return this.#say(`${file.name} could not be read.`);
    }
    const parts = jobsIn(text);
    if (parts.length > MOST_JOBS) {
      return this.#say(`${file.name} holds ${parts.length} jobs, and at most ${MOST_JOBS} are read at a time: it was left as it is.`);
    }
    /** @type {string[]} */
    const problems = [];
    for (const part of parts) {
      const read = readJob(part);
      const problem = read.job ? this.#adopt(read.job) : read.problem;
      if (problem !== "") problems.push(problem);
    }
    if (parts.length === 1) return problems[0] && this.#say(`${file.name}: ${problems[0]}`);
    const well = `${file.name}: ${parts.length - problems.length} of ${parts.length} jobs opened.`;
    this.#say(problems[0] ? `${well} The first of the others: ${problems[0]}` : well);
  }

  #saveAll() {
    const { jobs, unread } = allJobs();
    const whole = { kind: SEVERAL, format: 1, jobs: jobs.map((job) => JSON.parse(jobText(job))), unread: unread.map((one) => one.text) };
    saveAsFile(`jobs-${localDay(new Date())}.json`, JSON.stringify(whole, null, 1), "application/json");
    const count = (/** @type {number} */ number) => (number === 1 ? "1 job" : `${number} jobs`);
    const more = unread.length > 0 ? `, and ${count(unread.length)} that could not be opened, as stored` : "";
    this.#say(`Saved as one file: ${count(jobs.length)}${more}.`);
  }

  async #start() {
    const name = await ask(this, "What is the job called?", "Start it", "Park benches", LONGEST_NAME);
    if (typeof name !== "string") return;
    this.#adopt(newJob(name.trim() || "Job"));
  }

  /** @param {Job} job */
  async #rename(job) {
    const name = await ask(this, "What is the job called?", "Name it", job.name, LONGEST_NAME);
    if (typeof name !== "string" || name.trim() === "") return;
    this.#change(job.id, (now) => void (now.name = name.trim()));
  }

  /** @param {Job} job */
  async #delete(job) {
    if (!(await ask(this, `Delete the job “${job.name}” from this device? It cannot be brought back.`, "Delete it"))) return;
    dropJob(job.id);
    const next = allJobs().jobs[0];
    if (next) makeCurrent(next.id);
    this.#show();
    this.#say(`“${job.name}” was deleted.`);
  }

  /** @param {Job} job */
  async #copyLink(job) {
    const fragment = await fragmentOf(now(job));
    if (fragment === "") return this.#say("This job is too long for a link. Save it as a file to hand it on.");
    const address = `${location.origin}${location.pathname}#${fragment}`;
    try {
      await navigator.clipboard.writeText(address);
      this.#say("Link copied. What is behind its # sign never leaves the devices it is opened on.");
    } catch {
      await ask(this, "The browser did not allow copying. Copy the link from here:", "Done", address);
    }
  }

  /**
   * @param {string} id
   * @param {(job: Job) => void} change
   * @returns {string} what went wrong, which is said as well
   */
  #change(id, change) {
    const problem = changeJob(id, change);
    this.#show();
    if (problem) this.#say(problem);
    return problem;
  }

  /**
   * @param {HTMLElement} step
   * @param {Job | null} job
   * @param {Map<string, string[]>} out
   */
  #showStep(step, job, out) {
    const key = step.dataset.step ?? "";
    const entries = job?.entries.filter((entry) => (this.#known.get(entry.slug)?.step ?? "take-in") === key) ?? [];
    const results = /** @type {HTMLElement} */ (step.querySelector("[data-results]"));
    const card = (/** @type {Entry} */ entry) =>
      entryCard(/** @type {Job} */ (job), entry, out.get(entry.name) ?? [], {
        title: (slug) => this.#title(slug),
        href: this.#known.get(entry.slug)?.href ?? "",
        drop: (name) => void this.#takeOut(/** @type {Job} */ (job), entry, name),
      });
    results.replaceChildren(...entries.map(card));
    const had = new Set(job?.entries.map((entry) => entry.slug));
    let open = 0;
    for (const item of /** @type {NodeListOf<HTMLElement>} */ (step.querySelectorAll("li[data-slug]"))) {
      item.hidden = had.has(item.dataset.slug ?? "");
      item.classList.toggle("job-core", "core" in item.dataset);
      if (!item.hidden) open += 1;
    }
    /** @type {HTMLElement} */ (step.querySelector(".job-asks-title")).hidden = open === 0;
    step.classList.toggle("job-ticked", job?.ticks[key] === true);
    this.#showOwn(step, key, job);
  }

  /**
   * Tick and notes. A note that is being typed is left alone.
   * @param {HTMLElement} step
   * @param {string} key
   * @param {Job | null} job
   */
  #showOwn(step, key, job) {
    const own = /** @type {HTMLElement} */ (step.querySelector("[data-own]"));
    if (!job) return own.replaceChildren();
    let tick = /** @type {HTMLInputElement | null} */ (own.querySelector("input"));
    let notes = /** @type {HTMLTextAreaElement | null} */ (own.querySelector("textarea"));
    if (!tick || !notes) {
      tick = /** @type {HTMLInputElement} */ (element("input", { type: "checkbox", id: `job-tick-${key}` }));
      notes = /** @type {HTMLTextAreaElement} */ (element("textarea", { id: `job-note-${key}`, rows: "2", maxlength: "5000" }));
      const name = step.querySelector("h2")?.textContent ?? key;
      own.replaceChildren(
        element("p", { class: "job-tick" }, tick, element("label", { for: tick.id }, " Done")),
        element("p", { class: "job-note" }, element("label", { for: notes.id }, `Notes on ${name.replace(/^\d+\. /, "").toLowerCase()}`), notes),
      );
      const { checkbox, text } = { checkbox: tick, text: notes };
      checkbox.addEventListener("change", () => {
        const id = own.dataset.job ?? "";
        this.#change(id, (now) => void (checkbox.checked ? (now.ticks[key] = true) : delete now.ticks[key]));
      });
      text.addEventListener("input", () => {
        const problem = changeJob(own.dataset.job ?? "", (now) => void (now.notes[key] = text.value));
        this.#say(problem);
      });
      text.addEventListener("change", () => {
        const job = currentJob();
        if (job) void this.#showPaper(job);
      });
    }
    const other = own.dataset.job !== job.id;
    own.dataset.job = job.id;
    tick.checked = job.ticks[key] === true;
    if (other || document.activeElement !== notes) notes.value = job.notes[key] ?? "";
  }

  /**
   * @param {Job} job
   * @param {Entry} entry
   * @param {string} name as the reader knows it
   */
  async #takeOut(job, entry, name) {
    if (!(await ask(this, `Take “${name}” out of this job?`, "Take it out"))) return;
    this.#change(job.id, (now) => void (now.entries = now.entries.filter((one) => one.name !== entry.name)));
  }

  async #workOut() {
    const job = currentJob();
    if (!job || this.#busy) return;
    if (job.entries.length === 0) return this.#say("There is nothing to work out yet: add an answer from a calculator.");
    this.#busy = true;
    this.#say("Working it out…");
    const request = job.entries
      .filter((entry) => this.#known.has(entry.slug))
      .map(({ name, slug, texts, take }) => ({
        name, slug, texts, take: Object.fromEntries(Object.entries(take).map(([key, one]) => [key, one.from])),
      })); // prettier-ignore
    try {
      const live = engine(new URL(this.dataset.engine ?? "", document.baseURI).href);
      const answer = /** @type {any} */ (await live.ask({ job: request }));
      if (!answer.ok) this.#say(answer.message);
      else this.#take(job.id, answer.job);
    } catch (reason) {
      console.warn(reason);
      this.#say("The live calculator did not start. Nothing was changed. Reload the page and try again.");
    }
    this.#busy = false;
  }

  /**
   * @param {string} id
   * @param {any[]} answers
   */
  #take(id, answers) {
    let refused = 0;
    let problems = 0;
    const problem = this.#change(id, (now) => {
      for (const { name, texts, taken, problems: missing, response } of answers) {
        const entry = now.entries.find((one) => one.name === name);
        if (!entry) continue;
        const errors = response.errors.map((/** @type {{message: string}} */ one) => one.message);
        if (errors.length > 0) refused += 1;
        if (missing.length > 0) problems += 1;
        entry.same = entry.same.filter((key) => texts[key] === entry.texts[key]);
        entry.texts = { ...entry.texts, ...texts };
        for (const key of Object.keys(taken)) {
          delete entry.texts[`${key}-unit`];
          const take = entry.take[key];
          if (take) Object.assign(take, taken[key]);
        }
        entry.version = response.version;
        entry.headline = response.headline;
        entry.text = response.ok ? response.text : "";
        entry.stop = response.stop;
        entry.stops = response.cautions.filter((/** @type {any} */ one) => one.level === "stop").map((/** @type {any} */ one) => one.text);
        entry.problems = [...errors, ...missing];
        entry.query = response.query;
        entry.gifts = response.gifts;
      }
    });
    if (problem !== "") return;
    const good = answers.length - refused;
    this.#say(
      refused + problems === 0
        ? `All ${answers.length} worked out again.`
        : `${good} of ${answers.length} worked out again. The others say what they need.`,
    );
  }

  /**
   * The foot of the printed sheet: the link, and a code for a phone while it is small enough to be read from paper.
   * @param {Job} job
   */
  async #showPaper(job) {
    const fragment = await fragmentOf(job);
    if (currentJob()?.id !== job.id) return;
    let paper = this.querySelector("[data-paper]");
    if (!paper) {
      paper = element("div", { class: "job-paper", "data-paper": "" });
      this.append(paper);
    }
    const code = fragment === "" ? null : await drawCode(`${location.origin}${location.pathname}#${fragment}`);
    const words = code
      ? "This sheet as a link: point a phone's camera at the square. The job is in the link and on no server."
      : "This job is too long for a square that a phone reads from paper. Save it as a file to hand it on.";
    paper.replaceChildren(...(code ? [code] : []), element("p", {}, `${job.name}, started ${job.made}. ${words}`));
  }
}

/** The job as it stands now: another tab, or a note just typed, may have changed it. @param {Job} job */
function now(job) {
  return jobById(job.id) ?? job;
}

/**
 * The texts of the jobs in a file: of one, or of several with those that this site could not read when it saved them.
 * @param {string} text
 * @returns {string[]}
 */
function jobsIn(text) {
  try {
    const read = JSON.parse(text);
    if (read?.kind === SEVERAL && Array.isArray(read.jobs)) {
      const unread = Array.isArray(read.unread) ? read.unread : [];
      return [...read.jobs.map((/** @type {unknown} */ one) => JSON.stringify(one)), ...unread.map(String)];
    }
  } catch {
    // readJob says what is wrong with it
  }
  return [text];
}

/** @param {string} name */
function fileName(name) {
  return name.trim().toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "") || "job";
}

customElements.define("job-sheet", JobSheet);
