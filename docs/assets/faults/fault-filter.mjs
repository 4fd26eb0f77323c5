// @ts-check
// The fault finder's filter: three native lists narrow the page down. Nothing is asked of the host and nothing is kept.

const form = /** @type {HTMLFormElement | null} */ (document.querySelector("[data-fault-filter]"));
const faults = /** @type {HTMLElement[]} */ ([...document.querySelectorAll("[data-fault]")]);
const count = form?.querySelector("[data-fault-count]");

/** @param {HTMLElement} fault */
function fits(fault) {
  return [...new FormData(/** @type {HTMLFormElement} */ (form))].every(
    ([name, value]) => value === "" || (fault.dataset[name] ?? "").split(" ").includes(String(value)),
  );
}

/**
 * Hides what holds nothing that is shown.
 * @param {string} holder
 * @param {string} item
 */
function tidy(holder, item) {
  for (const one of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll(holder))) {
    one.hidden = [...one.querySelectorAll(item)].every((each) => /** @type {HTMLElement} */ (each).hidden);
  }
}

function narrow() {
  for (const fault of faults) {
    fault.hidden = !fits(fault);
    const link = /** @type {HTMLElement | null} */ (document.querySelector(`[data-fault-link="${fault.dataset.fault}"]`));
    if (link) link.hidden = fault.hidden;
  }
  tidy("[data-fault-group]", "[data-fault]");
  tidy("[data-fault-list]", "[data-fault-link]");
  tell();
}

function tell() {
  const shown = faults.filter((fault) => !fault.hidden).length;
  const words =
    shown === 0
      ? "No fault fits all three. Set one of them back to Anything."
      : `${shown} of ${faults.length} faults shown.`;
  if (count && count.textContent !== words) count.textContent = words;
}

/** A link to a fault must reach it, whatever the filter says. */
function reach() {
  const target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
  const hiddenIn = target?.closest("[data-fault][hidden], [data-fault-group][hidden]");
  if (!target || !hiddenIn) return;
  form?.reset();
  narrow();
  target.scrollIntoView();
}

if (form) {
  form.hidden = false;
  form.addEventListener("change", narrow);
  form.addEventListener("submit", (event) => event.preventDefault());
  // the fields hold their first values only after the event
  form.addEventListener("reset", () => setTimeout(narrow));
  addEventListener("hashchange", reach);
  // a second press on the same link changes no address
  document.addEventListener("click", (event) => {
    if (event.target instanceof Element && event.target.closest('a[href*="#"]')) setTimeout(reach);
  });
  // a browser that comes back to the page may put old choices into the lists
  addEventListener("pageshow", narrow);
}
