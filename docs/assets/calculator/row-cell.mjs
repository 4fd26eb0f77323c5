// @ts-check
// One cell of a row: a native control that Python made, and the text that it stands for.

/** A text that ends in a number has no unit of its own. */
const ENDS_IN_NUMBER = /\p{N}[.,]?$/u;

/** @param {string} text */
const plain = (text) => text.trim().replace(/\s+/g, " ").toLowerCase();

/**
 * The option that a text means, by its value, its words or other words for it.
 * @param {HTMLSelectElement} select
 * @param {string} text
 */
export function optionFor(select, text) {
  const wanted = plain(text);
  return [...select.options].find(
    (option) =>
      option.value !== "" &&
      [option.value, option.text, ...(option.dataset.also ?? "").split("|")].some((words) => plain(words) === wanted),
  );
}

export class Cell {
  /** As the line had it. */ #raw = "";
  /** What the control said when it was filled: as long as it says so, the text stays as it was. */ #shown = "";

  /** @param {HTMLElement} box */
  constructor(box) {
    this.box = box;
    this.key = box.dataset.column ?? "";
    this.control = /** @type {HTMLInputElement | HTMLSelectElement} */ (box.querySelector("[data-cell]"));
    this.unit = /** @type {HTMLSelectElement | null} */ (box.querySelector("[data-unit]"));
    this.askedBy = box.dataset.askedBy;
    this.askedFor = (box.dataset.askedFor ?? "").split(" ");
  }

  get label() {
    return this.box.querySelector("label")?.textContent ?? "";
  }

  /** Whether the reader has to choose before the rest of a new row makes sense. */
  get isOpen() {
    return this.control instanceof HTMLSelectElement && this.control.value === "";
  }

  /** Whether it says something that an empty cell would not. */
  get holds() {
    return this.#says() !== (this.control.dataset.default ?? "");
  }

  get text() {
    const says = this.#says();
    return says === this.#shown ? this.#raw : says;
  }

  /** @param {string} text as it stands in a line */
  fill(text) {
    this.#raw = text;
    if (this.control instanceof HTMLSelectElement) {
      this.control.value = (text === "" ? undefined : optionFor(this.control, text)?.value) ?? this.control.dataset.default ?? "";
    } else {
      this.control.value = text === "" ? (this.control.dataset.default ?? "") : text;
      if (this.unit) this.unit.selectedIndex = 0;
      this.takeUnit();
    }
    this.#shown = this.#says();
  }

  /** As in a new row: a choice that must be made is not made yet. */
  clear() {
    this.fill("");
    const open = this.control instanceof HTMLSelectElement && this.control.querySelector('option[value=""]');
    if (open) this.control.value = this.#shown = "";
  }

  /** The choice beside a number says nothing where the text has a unit of its own. It keeps its place. */
  showUnit() {
    const text = this.control.value.trim();
    this.unit?.classList.toggle("calc-unit-own", text !== "" && !ENDS_IN_NUMBER.test(text));
  }

  /** Moves a unit typed after the number into the choice beside it. */
  takeUnit() {
    if (!this.unit || !(this.control instanceof HTMLInputElement)) return;
    const text = this.control.value.trim();
    const names = [...this.unit.options].map((option) => option.value).sort((a, b) => b.length - a.length);
    for (const name of names) {
      const number = text.slice(0, -name.length).trimEnd();
      if (text.endsWith(name) && ENDS_IN_NUMBER.test(number)) {
        this.control.value = number;
        this.unit.value = name;
        break;
      }
    }
    this.showUnit();
  }

  #says() {
    const text = this.control.value.trim();
    const bare = !this.unit || this.unit.selectedIndex <= 0 || !ENDS_IN_NUMBER.test(text);
    return bare ? text : `${text} ${this.unit?.value}`;
  }
}
