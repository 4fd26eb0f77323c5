// @ts-check
// The form as texts by name. Nothing here knows a unit, a number or a calculator: that is Python's.

/** @typedef {HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement} Control */
/** @typedef {Record<string, string>} Texts */

const UNIT = "-unit";

/**
 * @param {HTMLFormElement} form
 * @returns {Control[]}
 */
export function controls(form) {
  return /** @type {Control[]} */ (
    [...form.elements].filter(
      (one) =>
        (one instanceof HTMLInputElement || one instanceof HTMLSelectElement || one instanceof HTMLTextAreaElement) &&
        one.name !== "",
    )
  );
}

/** @param {Control} control */
const isRadio = (control) => control instanceof HTMLInputElement && control.type === "radio";

/** @param {string} text */
const oneNewline = (text) => text.replace(/\r\n?/g, "\n");

/**
 * Every named field, the hidden ones too. A set of radios with none chosen counts as empty text,
 * because a name that is left out would be answered with its example.
 * @param {HTMLFormElement} form
 * @returns {Texts}
 */
export function readTexts(form) {
  /** @type {Texts} */
  const texts = {};
  for (const control of controls(form)) {
    if (!isRadio(control)) texts[control.name] = control.value;
    else if (/** @type {HTMLInputElement} */ (control).checked) texts[control.name] = control.value;
    else texts[control.name] ??= "";
  }
  return texts;
}

/**
 * What each field held when the page was made.
 * @param {HTMLFormElement} form
 * @returns {Texts}
 */
export function defaultTexts(form) {
  /** @type {Texts} */
  const texts = {};
  for (const control of controls(form)) {
    if (isRadio(control)) {
      const radio = /** @type {HTMLInputElement} */ (control);
      if (radio.defaultChecked) texts[radio.name] = radio.value;
      else texts[radio.name] ??= "";
    } else if (control.dataset.default !== undefined) {
      texts[control.name] = oneNewline(control.dataset.default);
    } else if (control instanceof HTMLSelectElement) {
      const chosen = [...control.options].find((option) => option.defaultSelected) ?? control.options[0];
      texts[control.name] = chosen?.value ?? "";
    } else {
      texts[control.name] = oneNewline(control.defaultValue);
    }
  }
  return texts;
}

/**
 * Puts a text into a field. False when it is a choice that has no such option: then nothing is chosen.
 * @param {HTMLFormElement} form
 * @param {string} name
 * @param {string} text
 * @returns {boolean}
 */
export function writeText(form, name, text) {
  const named = controls(form).filter((control) => control.name === name);
  const first = named[0];
  if (first === undefined) return false;
  if (isRadio(first)) {
    let found = false;
    for (const radio of /** @type {HTMLInputElement[]} */ (named)) {
      radio.checked = radio.value === text;
      found ||= radio.checked;
    }
    return found || text === "";
  }
  if (first instanceof HTMLSelectElement) {
    const wanted = text.trim().toLowerCase();
    const options = [...first.options];
    const option =
      options.find((one) => one.value === text) ??
      options.find((one) => one.value.toLowerCase() === wanted || one.text.trim().toLowerCase() === wanted);
    first.selectedIndex = option ? option.index : -1;
    return option !== undefined;
  }
  first.value = text;
  return true;
}

/**
 * Names of the fields themselves, without the units beside them.
 * @param {HTMLFormElement} form
 * @returns {string[]}
 */
export function keys(form) {
  const names = new Set(controls(form).map((control) => control.name));
  return [...names].filter((name) => !(name.endsWith(UNIT) && names.has(name.slice(0, -UNIT.length))));
}

/**
 * The field that a control belongs to: `thickness` for `thickness-unit`.
 * @param {HTMLFormElement} form
 * @param {string} name
 */
export function keyOf(form, name) {
  return name.endsWith(UNIT) && keys(form).includes(name.slice(0, -UNIT.length)) ? name.slice(0, -UNIT.length) : name;
}

/**
 * @param {HTMLFormElement} form
 * @param {string} key
 * @returns {HTMLElement | null}
 */
export function fieldBox(form, key) {
  return form.querySelector(`[data-field="${CSS.escape(key)}"]`);
}

/**
 * The words in front of a field.
 * @param {HTMLFormElement} form
 * @param {string} key
 */
export function labelOf(form, key) {
  const box = fieldBox(form, key);
  const named = box?.getAttribute("aria-labelledby");
  const words = (named ? document.getElementById(named) : box?.querySelector("legend, label"))?.textContent;
  return words?.replace(/\s+/g, " ").trim() || key;
}

/**
 * The units that may stand after a field's text: those to choose from, or the one that is printed beside it.
 * @param {HTMLFormElement} form
 * @param {string} key
 * @returns {{spelling: string, value: string | null}[]} value is null when there is nothing to choose
 */
export function unitsOf(form, key) {
  const select = controls(form).find((control) => control.name === key + UNIT);
  if (select instanceof HTMLSelectElement) {
    return [...select.options]
      .flatMap((option) => [
        { spelling: option.value, value: option.value },
        { spelling: option.text.trim(), value: option.value },
      ])
      .sort((a, b) => b.spelling.length - a.spelling.length);
  }
  const printed = fieldBox(form, key)?.querySelector(".calc-unit")?.textContent?.trim();
  return printed ? [{ spelling: printed, value: null }] : [];
}

/**
 * Puts a text with its unit into a field and the choice of units beside it.
 * @param {HTMLFormElement} form
 * @param {string} key
 * @param {string} text
 * @returns {boolean} false when a choice has no such option
 */
export function writeMeasure(form, key, text) {
  for (const { spelling, value } of unitsOf(form, key)) {
    if (spelling !== "" && text.endsWith(` ${spelling}`)) {
      if (value !== null) writeText(form, `${key}-unit`, value);
      return writeText(form, key, text.slice(0, -spelling.length).trimEnd());
    }
  }
  return writeText(form, key, text);
}

/**
 * Shows the fields that the others call for. Hidden ones keep their text.
 * @param {HTMLFormElement} form
 */
export function showWhatApplies(form) {
  const texts = readTexts(form);
  for (const box of /** @type {NodeListOf<HTMLElement>} */ (form.querySelectorAll("[data-when-key]"))) {
    const value = texts[box.dataset.whenKey ?? ""] ?? "";
    box.hidden = !(box.dataset.whenValues ?? "").split(/\s+/).includes(value);
  }
}

/**
 * @param {Texts} a
 * @param {Texts} b
 */
export function sameTexts(a, b) {
  return Object.keys({ ...a, ...b }).every((name) => (a[name] ?? "") === (b[name] ?? ""));
}
