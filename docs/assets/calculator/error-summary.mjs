// @ts-check
// Each error twice in the same words: in the list above the form, and beside its field.

import { controls, fieldBox, labelOf } from "./fields.mjs";

/** @typedef {{key: string, message: string}} FieldError */

/**
 * Brings a field into view with its label, and puts the cursor in it.
 * @param {HTMLFormElement} form
 * @param {string} key
 */
function goTo(form, key) {
  const named = controls(form).filter((control) => control.name === key);
  const control =
    named.find((one) => one instanceof HTMLInputElement && one.type === "radio" && one.checked) ?? named[0];
  if (!control) return;
  // the label would stay above the edge of the screen if the browser brought only the control into view
  const box = fieldBox(form, key) ?? control;
  // a table that is shown as rows is mended in its rows
  const row = box.querySelector('[data-rows] [aria-invalid="true"]') ?? box.querySelector("[data-rows] :is(input, select)");
  const place = control.hasAttribute("aria-hidden") && row instanceof HTMLElement ? row : control;
  (place === control ? box : place).scrollIntoView({ block: "center" });
  place.focus({ preventScroll: true });
}

/**
 * @param {HTMLFormElement} form
 * @param {FieldError[]} errors those to show now; none clears them all
 */
export function showErrors(form, errors) {
  const messages = new Map(errors.map((error) => [error.key, error.message]));
  for (const place of /** @type {NodeListOf<HTMLElement>} */ (form.querySelectorAll("[data-error]"))) {
    const message = messages.get(place.dataset.error ?? "") ?? "";
    if (place.textContent !== message) place.textContent = message;
    place.hidden = message === "";
  }
  for (const control of controls(form)) {
    if (messages.has(control.name)) control.setAttribute("aria-invalid", "true");
    else control.removeAttribute("aria-invalid");
  }
  const summary = form.querySelector("[data-summary]");
  if (!(summary instanceof HTMLElement)) return;
  summary.hidden = errors.length === 0;
  summary.replaceChildren();
  if (errors.length === 0) return;

  const title = document.createElement("p");
  title.className = "calc-summary-title";
  title.textContent = errors.length === 1 ? "One entry needs a change" : `${errors.length} entries need a change`;
  const list = document.createElement("ul");
  for (const { key, message } of errors) {
    const item = list.appendChild(document.createElement("li"));
    const control = controls(form).find((one) => one.name === key);
    if (!control) {
      item.textContent = message;
      continue;
    }
    const link = item.appendChild(document.createElement("a"));
    link.href = `#${control.id}`;
    link.textContent = message;
    if (fieldBox(form, key)?.hidden) item.append(` (${labelOf(form, key)} is not shown now.)`);
    link.addEventListener("click", (event) => {
      // the address holds the fields, so a jump must not write a fragment into it
      event.preventDefault();
      goTo(form, key);
    });
  }
  summary.append(title, list);
}

/** @param {HTMLFormElement} form */
export function focusSummary(form) {
  const summary = form.querySelector("[data-summary]");
  if (summary instanceof HTMLElement && !summary.hidden) summary.focus();
}
