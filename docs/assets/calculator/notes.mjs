// @ts-check
// Remarks that stay beside the form until they no longer hold: about a link, a reset, a text too long to link.

/** @param {HTMLFormElement} form */
export function addNotes(form) {
  const place = document.createElement("div");
  place.className = "calc-notes";
  place.dataset.notes = "";
  const status = form.querySelector("[data-status]");
  if (status) status.after(place);
  else form.append(place);
}

/**
 * @param {ParentNode} form
 * @param {string} about one note for each
 * @param {string} words none takes the note away
 * @param {{words: string, act: () => void}[]} [actions]
 */
export function note(form, about, words, actions = []) {
  const place = form.querySelector("[data-notes]");
  const old = place?.querySelector(`[data-about="${about}"]`);
  if (!place || words === "") return old?.remove();
  if (old && old.firstChild?.textContent === words) return;
  const box = document.createElement("p");
  box.className = "calc-note";
  box.dataset.about = about;
  box.append(words);
  for (const action of actions) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = action.words;
    button.addEventListener("click", action.act);
    box.append(" ", button);
  }
  if (old) old.replaceWith(box);
  else place.append(box);
}
