// @ts-check
// Small parts of a page made by hand: elements, buttons, and a question that waits for its answer.

/**
 * @param {string} tag
 * @param {Record<string, string>} attributes
 * @param {...(Node | string)} inside
 * @returns {HTMLElement}
 */
export function element(tag, attributes, ...inside) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  made.append(...inside);
  return made;
}

/**
 * @param {string} words
 * @param {string} act names it for focus and tests
 * @param {() => void} done
 */
export function button(words, act, done) {
  const made = element("button", { type: "button", class: "md-button", "data-act": act }, words);
  made.addEventListener("click", done);
  return made;
}

/**
 * A question in a dialog of the page's own.
 * @param {HTMLElement} within
 * @param {string} words
 * @param {string} yes
 * @param {string} [text] a line to fill in, with this in it
 * @param {number} [longest] more cannot be typed there
 * @returns {Promise<string | boolean>} the line, or true; false when it was closed
 */
export function ask(within, words, yes, text, longest = 100_000) {
  const dialog = /** @type {HTMLDialogElement} */ (element("dialog", { class: "job-dialog", "aria-label": words }));
  const form = element("form", { method: "dialog" }, element("p", {}, words));
  const field = /** @type {HTMLInputElement} */ (element("input", { type: "text", "aria-label": words, maxlength: String(longest) }));
  if (text !== undefined) {
    field.value = text;
    form.append(element("p", {}, field));
  }
  const agree = element("button", { class: "md-button md-button--primary", value: "yes" }, yes);
  const leave = element("button", { class: "md-button", value: "" }, "Leave it");
  form.append(element("p", { class: "job-acts" }, agree, leave));
  dialog.append(form);
  within.append(dialog);
  dialog.showModal();
  // Enter must not delete by itself
  if (text === undefined) leave.focus();
  else field.select();
  return new Promise((resolve) => {
    dialog.addEventListener("close", () => {
      dialog.remove();
      if (dialog.returnValue !== "yes") resolve(false);
      else resolve(text === undefined ? true : field.value);
    });
  });
}
