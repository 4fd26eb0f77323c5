// @ts-check
// A table's text as rows of controls. The text stays the field: the rows write into it, and follow it when it changes.

import { fieldBox } from "./fields.mjs";
import { RowCard } from "./row-card.mjs";
import { optionFor } from "./row-cell.mjs";
import { splitRows } from "./row-text.mjs";

/** @typedef {import("./error-summary.mjs").FieldError} FieldError */

/** More are easier to read and to paste as text. */
const MOST_AT_FIRST = 12;
const OWN_COLUMNS = "Shown as text: this table has columns of its own.";

/** @type {WeakMap<HTMLFormElement, RowEditor[]>} */
const editors = new WeakMap();

/** @param {HTMLFormElement} form @param {string} slug */
export function addRowEditors(form, slug) {
  const made = [];
  for (const template of form.querySelectorAll("template[data-row]")) {
    const area = template.parentElement?.querySelector("textarea");
    if (template instanceof HTMLTemplateElement && area) made.push(new RowEditor(form, area, template, slug));
  }
  editors.set(form, made);
}

/** Lets the rows follow what was written into the text by a link, a reset, a job or a script. @param {HTMLFormElement} form */
export function followTexts(form) {
  for (const editor of editors.get(form) ?? []) editor.follow();
}

/** @param {HTMLFormElement} form @param {FieldError[]} errors those shown now */
export function showRowErrors(form, errors) {
  for (const editor of editors.get(form) ?? []) editor.showError(errors.find(({ key }) => key === editor.key)?.message ?? "");
}

/** @param {string} words @param {() => void} act */
function button(words, act) {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = words;
  made.addEventListener("click", act);
  return made;
}

class RowEditor {
  /** @type {RowCard[]} */ #rows = [];
  /** @type {string | null} the text that the rows stand for */ #text = null;
  #splits = false;
  #gaps = false;
  #inRows = false;
  /** Written since the reader last left a row. */ #unsaid = false;
  #message = "";
  #list = document.createElement("div");
  #removed = document.createElement("p");
  #said = document.createElement("span");
  #toggle = button("As rows", () => this.#switch());
  #add = button("Add a row", () => this.#addRow());

  /**
   * @param {HTMLFormElement} form
   * @param {HTMLTextAreaElement} area
   * @param {HTMLTemplateElement} template
   * @param {string} slug
   */
  constructor(form, area, template, slug) {
    this.area = area;
    this.key = area.name;
    this.template = template;
    this.box = fieldBox(form, this.key);
    this.memory = `calc-rows:${slug}:${this.key}`;
    this.line = template.dataset.line ?? "";
    this.most = Number(template.dataset.atMost);
    this.separators = [...(template.dataset.separators ?? "")];
    this.columns = new RowCard(template, this.separators).cells.map(({ key, label, control }) => ({
      key,
      label,
      find: control instanceof HTMLSelectElement ? (/** @type {string} */ text) => optionFor(control, text)?.value ?? null : null,
    }));
    this.unit = /** @type {HTMLSelectElement | null} */ (form.querySelector(`select[name="${CSS.escape(this.key)}-unit"]`));
    this.#place();
    this.#listen();
    this.follow();
  }

  #place() {
    const label = this.box?.querySelector("label");
    this.#list.className = "calc-rows";
    this.#list.dataset.rows = this.key;
    this.#list.setAttribute("role", "group");
    if (label) {
      label.id ||= `${this.area.id}-label`;
      this.#list.setAttribute("aria-labelledby", label.id);
      label.addEventListener("click", (event) => {
        if (!this.#inRows) return;
        event.preventDefault();
        this.focus();
      });
    }
    this.#removed.className = "calc-note";
    this.#removed.setAttribute("role", "status");
    this.#said.className = "calc-hint";
    const bar = document.createElement("div");
    bar.className = "calc-rows-bar";
    bar.append(this.#add, this.#toggle, this.#said);
    const entry = this.area.closest(".calc-entry");
    if (this.unit) {
      const words = document.createElement("span");
      words.className = "calc-rows-unit";
      words.setAttribute("aria-hidden", "true");
      words.textContent = this.unit.getAttribute("aria-label");
      this.unit.before(words);
    }
    entry?.after(this.#list, this.#removed, bar);
  }

  #listen() {
    this.#list.addEventListener("input", (event) => this.#edited(event.target));
    this.#list.addEventListener("change", (event) => {
      const row = this.#rowOf(event.target);
      row?.settle(event.target);
      this.#edited(event.target);
      // not every browser puts the cursor in a list that is chosen from
      if (event.target instanceof HTMLSelectElement && event.target !== document.activeElement) this.#say();
    });
    // A row is finished when it is left: half of it is no reason to complain.
    this.#list.addEventListener("focusout", (event) => {
      const row = this.#rowOf(event.target);
      if (row?.element.contains(/** @type {Node | null} */ (event.relatedTarget))) event.stopPropagation();
      else this.#say();
    });
    this.#list.addEventListener("click", (event) => {
      const row = this.#rowOf(event.target);
      if (row && event.target instanceof Element && event.target.closest("[data-remove]")) this.#remove(row);
    });
  }

  /** Brings the reader to what is wrong, else to the first cell. */
  focus() {
    const wrong = this.#list.querySelector('[aria-invalid="true"]');
    const target = wrong ?? this.#rows[0]?.cells[0]?.control ?? this.#add;
    if (target instanceof HTMLElement) target.focus();
  }

  follow() {
    this.#showUnit();
    if (this.area.value === this.#text) return;
    const hadRows = this.#text !== null;
    this.#text = this.area.value;
    const split = splitRows(this.#text, this.separators, this.columns);
    this.#splits = split !== null;
    this.#gaps = split?.gaps ?? false;
    const lines = split?.lines ?? [];
    while (this.#rows.length > lines.length) this.#rows.pop()?.element.remove();
    // whoever types in the text keeps it under the cursor
    const typed = hadRows && !this.#inRows && document.activeElement === this.area;
    this.#removed.replaceChildren();
    if (this.#splits && !typed && this.#wantsRows(lines.length)) this.#showRows(lines);
    else this.#showText();
  }

  /** @param {number} count */
  #wantsRows(count) {
    let chosen = null;
    try {
      chosen = sessionStorage.getItem(this.memory);
    } catch {
      // storage may be refused
    }
    return chosen === null ? count <= MOST_AT_FIRST : chosen === "rows";
  }

  #switch() {
    const rows = !this.#inRows;
    try {
      sessionStorage.setItem(this.memory, rows ? "rows" : "text");
    } catch {
      // it is chosen again on the next page
    }
    this.#removed.replaceChildren();
    if (rows) this.#showRows(splitRows(this.area.value, this.separators, this.columns)?.lines ?? []);
    else this.#showText();
  }

  /** @param {import("./row-text.mjs").Line[]} lines */
  #showRows(lines) {
    for (const [place, line] of lines.entries()) {
      const row = this.#rows[place] ?? this.#newRow(place);
      row.fill(line);
    }
    this.#view(true);
    this.#number();
    this.showError(this.#message);
  }

  #showText() {
    for (const row of this.#rows.splice(0)) row.element.remove();
    this.#view(false);
  }

  /** @param {boolean} rows */
  #view(rows) {
    this.#inRows = rows;
    this.#list.hidden = this.#add.hidden = !rows;
    this.#toggle.hidden = !this.#splits;
    this.#toggle.textContent = rows ? "As text" : "As rows";
    this.#said.textContent = this.#splits ? "" : OWN_COLUMNS;
    this.box?.toggleAttribute("data-in-rows", rows);
    this.area.tabIndex = rows ? -1 : 0;
    if (rows) this.area.setAttribute("aria-hidden", "true");
    else this.area.removeAttribute("aria-hidden");
  }

  /** The unit chosen beside the table, repeated in each row. */
  #showUnit() {
    const words = this.unit?.selectedOptions[0]?.text ?? "";
    for (const place of this.#list.querySelectorAll("[data-unit-beside]")) place.textContent = words;
  }

  /** @param {number} place */
  #newRow(place) {
    const row = new RowCard(this.template, this.separators);
    const before = this.#rows[place]?.element ?? null;
    this.#rows.splice(place, 0, row);
    this.#list.insertBefore(row.element, before);
    this.#showUnit();
    return row;
  }

  #addRow() {
    const last = this.#rows.at(-1);
    const row = last && last.text === "" ? last : this.#newRow(this.#rows.length);
    if (row !== last) row.fill(null);
    this.#number();
    row.cells[0]?.control.focus();
  }

  /** @param {RowCard} row */
  #remove(row) {
    const place = this.#rows.indexOf(row);
    const name = row.heading.textContent ?? "";
    const { text } = row;
    this.#rows.splice(place, 1);
    row.element.remove();
    this.#write();
    this.#say();
    const next = this.#rows[place] ?? this.#rows[place - 1];
    (next?.remove ?? this.#add).focus();
    this.#removed.replaceChildren();
    if (text === "") return;
    const back = button("Put it back", () => {
      const line = splitRows(text, this.separators, this.columns)?.lines[0];
      const put = this.#newRow(Math.min(place, this.#rows.length));
      put.fill(line ?? null);
      this.#write();
      this.#say();
      this.#removed.replaceChildren();
      put.cells[0]?.control.focus();
    });
    this.#removed.append(`${name} was removed. `, back);
  }

  /** @param {EventTarget | null} target */
  #edited(target) {
    const row = this.#rowOf(target);
    if (!row) return;
    row.changed(target);
    this.#write();
  }

  #write() {
    const text = this.#rows.map((row) => row.text).filter((line) => line !== "").join("\n");
    this.#number();
    if (text === this.area.value) return;
    this.area.value = this.#text = text;
    this.#gaps = false;
    this.#unsaid = true;
    this.area.dispatchEvent(new Event("input", { bubbles: true }));
  }

  #say() {
    if (!this.#unsaid) return;
    this.#unsaid = false;
    this.area.dispatchEvent(new Event("change", { bubbles: true }));
  }

  /** Numbers the rows as the sentences about the text do: an empty one has no line. */
  #number() {
    let count = 0;
    for (const row of this.#rows) {
      const empty = row.text === "";
      if (!empty) count += 1;
      const last = row === this.#rows.at(-1);
      row.call(!empty ? `${this.line} ${count}` : last ? `${this.line} ${count + 1}` : "Empty row, left out");
    }
    this.#add.disabled = count >= this.most;
  }

  /** @param {string} message about the whole field; it names a line */
  showError(message) {
    this.#message = message;
    const start = `${this.line} `;
    const number = message.startsWith(start) && !this.#gaps ? Number.parseInt(message.slice(start.length), 10) : 0;
    const sentence = message.slice(message.indexOf(":") + 1).trim();
    const full = this.#rows.filter((row) => row.text !== "");
    for (const row of this.#rows) row.complain(row === full[number - 1] ? sentence : "");
  }

  /** @param {EventTarget | null} target */
  #rowOf(target) {
    return this.#rows.find(({ element }) => target instanceof Node && element.contains(target));
  }
}
