// @ts-check
// The answers at the top of the page follow those of the forms below them: the same words, and the same state.

/**
 * @param {HTMLElement} link
 * @param {Element} outcome
 */
function copy(link, outcome) {
  const words = outcome.querySelector(".calc-main strong")?.textContent ?? "";
  const place = link.querySelector("strong");
  if (place && words !== "" && place.textContent !== words) place.textContent = words;
  link.dataset.state = outcome.getAttribute("data-state") ?? "example";
}

for (const link of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-main-of]"))) {
  const outcome = document.querySelector(`calc-form[slug="${CSS.escape(link.dataset.mainOf ?? "")}"] [data-outcome]`);
  if (!outcome) continue;
  const follow = () => copy(link, outcome);
  new MutationObserver(follow).observe(outcome, {
    attributes: true,
    attributeFilter: ["data-state"],
    characterData: true,
    childList: true,
    subtree: true,
  });
  follow();
}
