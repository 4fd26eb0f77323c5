// @ts-check
// One row of a table as a card of controls. It shows the cells that its choices call for, and a drawing of one.

import { Cell } from "./row-cell.mjs";
import { joinCells } from "./row-text.mjs";

let made = 0;

export class RowCard {
  #line = "";
  #touched = false;
  /** The reader changed what decides which cells are asked: those that are not are left out of the text. */ #decided = false;

  /**
   * @param {HTMLTemplateElement} template
   * @param {string[]} separators
   */
  constructor(template, separators) {
    this.separators = separators;
    const copy = /** @type {DocumentFragment} */ (template.content.cloneNode(true));
    this.element = /** @type {HTMLElement} */ (copy.firstElementChild);
    this.cells = [...this.element.querySelectorAll("[data-column]")].map((box) => new Cell(/** @type {HTMLElement} */ (box)));
    this.remove = /** @type {HTMLButtonElement} */ (this.element.querySelector("[data-remove]"));
    this.heading = /** @type {HTMLElement} */ (this.element.querySelector("[data-row-name]"));
    this.error = /** @type {HTMLElement} */ (this.element.querySelector("[data-row-error]"));
    this.#name(`calc-row-${(made += 1)}`);
  }

  /** Ids, so that labels, hints and the error belong to their controls. @param {string} id */
  #name(id) {
    this.heading.id = `${id}-name`;
    this.error.id = `${id}-error`;
    this.element.setAttribute("aria-labelledby", this.heading.id);
    for (const { box, key, control } of this.cells) {
      control.id = `${id}-${key}`;
      box.querySelector("label")?.setAttribute("for", control.id);
      const hint = box.querySelector(".calc-hint");
      if (hint) hint.id = `${id}-${key}-hint`;
    }
    this.complain("");
  }

  /** @param {import("./row-text.mjs").Line | null} line null for a new row */
  fill(line) {
    if (line && line.line === this.#line && !this.#touched) return;
    this.#line = line?.line ?? "";
    this.#touched = this.#decided = false;
    for (const [place, cell] of this.cells.entries()) {
      if (line) cell.fill(line.cells[place] ?? "");
      else cell.clear();
    }
    this.complain("");
    this.showWhatApplies();
  }

  /** Empty for a row that says nothing: it has no line. */
  get text() {
    if (!this.#touched) return this.#line;
    const cells = this.cells.map((cell) => (this.#decided && cell.box.hidden ? "" : cell.text));
    return joinCells(cells, this.separators);
  }

  /** @param {EventTarget | null} target the control that was changed by hand */
  changed(target) {
    this.#touched = true;
    const by = this.cells.find((cell) => cell.control === target);
    // while typing, not on leaving: the keyboard must not be sent to what has gone
    by?.showUnit();
    if (by && this.cells.some((cell) => cell.askedBy === by.key)) this.#decided = true;
    this.showWhatApplies();
  }

  /** @param {EventTarget | null} target the control that the reader is done with, for now */
  settle(target) {
    this.cells.find((cell) => cell.control === target)?.takeUnit();
  }

  showWhatApplies() {
    const open = this.cells.findIndex((cell) => cell.isOpen);
    for (const [place, cell] of this.cells.entries()) {
      const kept = !this.#decided && cell.holds;
      cell.box.hidden = (open >= 0 && place > open) || !(this.#isAsked(cell) || kept);
      this.#draw(cell);
    }
  }

  /** @param {Cell} cell @returns {boolean} */
  #isAsked(cell) {
    if (cell.askedBy === undefined) return true;
    const by = this.cells.find((one) => one.key === cell.askedBy);
    return by !== undefined && this.#isAsked(by) && cell.askedFor.includes(by.control.value);
  }

  /** The drawing of what is chosen, where the page has one. @param {Cell} cell */
  #draw(cell) {
    if (!(cell.control instanceof HTMLSelectElement)) return;
    const name = cell.control.selectedOptions[0]?.dataset.shows ?? "";
    const old = cell.box.querySelector(".calc-row-drawing");
    if (old instanceof SVGElement && old.dataset.of === name) return;
    old?.remove();
    const found = name === "" ? null : document.querySelector(`svg[data-drawings] [data-drawing="${CSS.escape(name)}"]`);
    if (!found) return;
    const drawing = document.createElementNS("http://www.w3.org/2000/svg", "svg");
    drawing.setAttribute("class", "calc-row-drawing");
    drawing.setAttribute("viewBox", `0 0 ${found.closest("svg")?.dataset.drawings}`);
    drawing.setAttribute("aria-hidden", "true");
    drawing.dataset.of = name;
    const copy = /** @type {Element} */ (found.cloneNode(true));
    copy.removeAttribute("transform");
    copy.removeAttribute("data-drawing");
    drawing.append(copy);
    cell.box.append(drawing);
  }

  /** @param {string} words */
  call(words) {
    this.heading.textContent = words;
    this.remove.setAttribute("aria-label", `Remove ${words.slice(0, 1).toLowerCase()}${words.slice(1)}`);
  }

  /**
   * Shows what is wrong with this row, and marks the cells that it is about.
   * @param {string} sentence empty for nothing
   */
  complain(sentence) {
    this.error.textContent = sentence;
    this.error.hidden = sentence === "";
    const about = sentence === "" ? [] : this.#about(sentence);
    for (const cell of this.cells) {
      const hint = cell.box.querySelector(".calc-hint")?.id ?? "";
      const wrong = about.includes(cell);
      const described = `${hint} ${wrong ? this.error.id : ""}`.trim();
      if (wrong) cell.control.setAttribute("aria-invalid", "true");
      else cell.control.removeAttribute("aria-invalid");
      if (described) cell.control.setAttribute("aria-describedby", described);
      else cell.control.removeAttribute("aria-describedby");
    }
  }

  /** @param {string} sentence */
  #about(sentence) {
    const shown = this.cells.filter((cell) => !cell.box.hidden);
    const named = shown.filter((cell) => (cell.box.dataset.begins ?? "").split("|").some((words) => words && sentence.startsWith(words)));
    if (named.length > 0) return named;
    // a sentence about the whole row: what its choice calls for and is not there, else where it begins
    const empty = shown.filter((cell) => cell.askedBy !== undefined && cell.control.value.trim() === "");
    return empty.length > 0 ? empty : shown.slice(0, 1);
  }
}
