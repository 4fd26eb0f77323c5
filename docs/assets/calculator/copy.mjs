// @ts-check
// Out of the page by hand: onto the clipboard or into a file. Nothing is sent anywhere.

/**
 * @param {HTMLFormElement} form
 * @param {string} text
 * @param {HTMLElement} near the button that was pressed
 * @param {string} done what to say when it worked
 * @returns {Promise<string>} what to say
 */
export async function copyText(form, text, near, done) {
  form.querySelector("[data-by-hand]")?.remove();
  try {
    await navigator.clipboard.writeText(text);
    return done;
  } catch {
    // refused, or a page without https: the text is laid out, selected, for the reader to copy
    const place = document.createElement("textarea");
    place.className = "calc-by-hand";
    place.dataset.byHand = "";
    place.readOnly = true;
    place.rows = text.includes("\n") ? 6 : 2;
    place.value = text;
    place.setAttribute("aria-label", "Text to copy");
    (near.closest(".calc-actions") ?? near).after(place);
    place.focus();
    place.select();
    return "The browser did not allow copying. The text is selected: copy it from the box.";
  }
}

/**
 * @param {string} name
 * @param {string} text
 * @param {string} [type]
 */
export function saveAsFile(name, text, type = "text/csv") {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // the browser reads it after the click returns
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
