// @ts-check
// What can wait until nobody has asked for a while.

// a person who asks meanwhile waits for what is being done, so that must not be long
const BETWEEN_ms = 10;
// whoever asks twice within this time is typing, and will ask again
const TYPING_ms = 2000;
let lastAsked_ms = -TYPING_ms;

/** @type {Set<(typing: boolean) => void>} */
const putOff = new Set();

/** Somebody asked, so what waits for quiet waits anew. */
export function asked() {
  const typing = performance.now() - lastAsked_ms < TYPING_ms;
  lastAsked_ms = performance.now();
  for (const again of putOff) again(typing);
}

/**
 * @param {number} quiet_ms for how long nobody must have asked
 * @param {() => unknown} work a little of it at a time; gives true, or a promise of it, as long as there is more
 * @param {number} [soon_ms] for how long where nobody is typing
 */
export function onceQuiet(quiet_ms, work, soon_ms = quiet_ms) {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let next;
  const wait = (/** @type {boolean} */ typing) => {
    clearTimeout(next);
    next = setTimeout(doSome, typing ? quiet_ms : soon_ms);
  };
  const doSome = async () => {
    const mine = next;
    // what goes wrong here goes wrong again for whoever asks for it, and is told then
    const more = await Promise.resolve().then(work).catch(() => false);
    if (more !== true) {
      clearTimeout(next);
      putOff.delete(wait);
    } else if (next === mine) {
      // else somebody asked meanwhile, and it waits already
      next = setTimeout(doSome, BETWEEN_ms);
    }
  };
  putOff.add(wait);
  wait(false);
}
