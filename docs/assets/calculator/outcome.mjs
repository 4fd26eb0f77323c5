// @ts-check
// The answer region: new HTML put in with the least disturbance, so that open details, focus, a selection and
// scrolled tables stay as they are; and the word that says what the answer is for.

/** Attributes that the reader sets, not Python. */
const READERS = new Set(["open"]);

/**
 * @param {Element} old
 * @param {Element} fresh
 */
function matchAttributes(old, fresh) {
  for (const { name } of [...old.attributes]) {
    if (!fresh.hasAttribute(name) && !READERS.has(name)) old.removeAttribute(name);
  }
  for (const { name, value } of fresh.attributes) {
    if (old.getAttribute(name) !== value && !(READERS.has(name) && old.localName === "details")) {
      old.setAttribute(name, value);
    }
  }
}

/** @param {Element} element */
const isToCome = (element) => element.getAttribute("aria-busy") === "true";

/** @param {Node} node */
const idOf = (node) => (node instanceof Element ? node.id : "");

/**
 * @param {ChildNode} old
 * @param {ChildNode} fresh of the same name
 */
function match(old, fresh) {
  if (old instanceof Element && fresh instanceof Element) {
    matchAttributes(old, fresh);
    // of a chart still to come only the place is there, and until then the one before stands in it
    if (!isToCome(fresh)) matchChildren(old, fresh);
  } else {
    old.nodeValue = fresh.nodeValue;
  }
}

/**
 * @param {Element} old
 * @param {Element | DocumentFragment} fresh
 */
function matchChildren(old, fresh) {
  /** @type {ChildNode | null} */
  let here = old.firstChild;
  for (const wanted of [...fresh.childNodes]) {
    const id = idOf(wanted);
    if (id !== "" && here !== null && idOf(here) !== id) {
      // what stands between here and the same element further on has gone
      let found = /** @type {ChildNode | null} */ (here);
      while (found !== null && idOf(found) !== id) found = found.nextSibling;
      while (found !== null && here !== null && here !== found) {
        const gone = here;
        here = here.nextSibling;
        gone.remove();
      }
    }
    if (here !== null && here.nodeName === wanted.nodeName && idOf(here) === id) {
      if (!here.isEqualNode(wanted)) match(here, wanted); // most of an answer stays as it was
      here = here.nextSibling;
    } else {
      old.insertBefore(wanted, here);
    }
  }
  while (here !== null) {
    const gone = here;
    here = here.nextSibling;
    gone.remove();
  }
}

/**
 * @param {HTMLElement} outcome
 * @param {string} html made by Python
 * @param {string} base from this page to the site's root
 */
export function replaceOutcome(outcome, html, base) {
  const template = document.createElement("template");
  template.innerHTML = html;
  mendLinks(template.content, base);
  keepingFocus(outcome, () => matchChildren(outcome, template.content));
}

/**
 * The charts that an answer left places for.
 * @param {HTMLElement} outcome
 * @param {string[] | null} figures made by Python; null where they are not going to come
 */
export function putFigures(outcome, figures) {
  const template = document.createElement("template");
  template.innerHTML = figures?.join("") ?? "";
  const places = [...outcome.querySelectorAll("figure")].filter(isToCome);
  const fresh = [...template.content.children];
  keepingFocus(outcome, () => {
    places.forEach((place, index) => {
      const figure = fresh[index];
      if (figure) return match(place, figure);
      place.textContent = "This chart did not come. Reload the page: what you typed is kept.";
      place.removeAttribute("aria-busy"); // a screen reader passes over what is busy
    });
  });
}

/**
 * @param {HTMLElement} outcome
 * @param {() => void} change
 */
function keepingFocus(outcome, change) {
  const focused = document.activeElement;
  change();
  if (focused instanceof HTMLElement && focused !== document.activeElement && outcome.contains(focused)) {
    focused.focus({ preventScroll: true });
  }
}

/**
 * Python writes `~/` for the site's root, because it does not know which page it is on.
 * @param {ParentNode} within
 * @param {string} base
 */
export function mendLinks(within, base) {
  for (const link of within.querySelectorAll('a[href^="~/"]')) {
    link.setAttribute("href", base + (link.getAttribute("href") ?? "").slice(2));
  }
}

/**
 * @param {HTMLElement} outcome
 * @param {string} state
 * @param {string} words
 */
export function sayState(outcome, state, words) {
  const place = outcome.querySelector(".calc-state");
  if (!(place instanceof HTMLElement)) return;
  place.dataset.said = state;
  if (place.textContent !== words) place.textContent = words;
}

/** Paper cannot be clicked: everything that folds is opened for it, and closed again afterwards. */
export function unfoldForPrint() {
  /** @type {HTMLDetailsElement[]} */
  let opened = [];
  addEventListener("beforeprint", () => {
    opened = [...document.querySelectorAll("details")].filter((details) => !details.open);
    for (const details of opened) details.open = true;
  });
  addEventListener("afterprint", () => {
    for (const details of opened) details.open = false;
    opened = [];
  });
}
