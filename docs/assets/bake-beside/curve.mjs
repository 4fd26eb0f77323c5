// @ts-check
// The form's picture of the metal, once more beside the clock: a copy, so that nobody scrolls for it with gloves on.

/**
 * @param {HTMLElement} place
 * @param {HTMLElement | null} calculator null takes the picture away
 */
export function copyCurve(place, calculator) {
  const figure = calculator?.querySelector("[data-outcome] .calc-chart");
  place.hidden = !figure;
  if (!figure) return place.replaceChildren();
  const copy = /** @type {HTMLElement} */ (figure.cloneNode(true));
  copy.querySelector("details")?.remove();
  const picture = copy.querySelector("svg.calc-svg");
  // the first of its kind keeps the ids
  picture?.setAttribute("aria-label", picture.querySelector("title")?.textContent ?? "");
  picture?.removeAttribute("aria-labelledby");
  for (const one of copy.querySelectorAll("[id]")) one.removeAttribute("id");
  place.replaceChildren(copy);
}
