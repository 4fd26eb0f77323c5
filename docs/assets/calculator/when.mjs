// @ts-check
// When to do a thing: the engine is megabytes, so it starts when a form is approached or when the browser has
// nothing else to do; and the page holds still while a button is pressed.

/**
 * @param {HTMLElement} element
 * @param {() => void} act
 */
export function onApproach(element, act) {
  // a finger that scrolls past is no approach where each byte counts
  for (const sign of savesData() ? ["focusin"] : ["focusin", "pointerenter", "touchstart"]) {
    element.addEventListener(sign, act, { once: true, passive: true });
  }
}

/** The reader has asked for fewer bytes: `connection` is not in every browser, nor in the type library. */
export function savesData() {
  const connection = /** @type {{connection?: {saveData?: boolean}}} */ (/** @type {unknown} */ (navigator)).connection;
  return connection?.saveData === true || matchMedia("(prefers-reduced-data: reduce)").matches;
}

/** @param {() => void} act */
export function onIdle(act) {
  if (savesData()) return;
  const whenIdle = () => {
    if ("requestIdleCallback" in window) requestIdleCallback(() => act(), { timeout: 4000 });
    else setTimeout(act, 1500);
  };
  if (document.readyState === "complete") whenIdle();
  else addEventListener("load", whenIdle, { once: true });
}

let pressed = false;
addEventListener("pointerdown", () => (pressed = true), { capture: true, passive: true });
for (const end of ["pointerup", "pointercancel"]) {
  // the click follows the release: let it come first
  addEventListener(end, () => setTimeout(() => (pressed = false), 50), { capture: true, passive: true });
}

/**
 * Does it now, or once no finger or mouse button is down.
 * @param {() => void} act
 * @param {boolean} waits whether it should wait at all
 */
export function whenReleased(act, waits) {
  if (!waits || !pressed) return act();
  const again = () => (pressed ? setTimeout(again, 30) : act());
  setTimeout(again, 30);
}
