// @ts-check
// What can wait until nobody has asked for a while.

// a person who asks meanwhile waits for what is being done, so that must not be long
const BETWEEN_ms = 10;

/** @type {Set<() => void>} */
const putOff = new Set();

/** Somebody asks, so what waits for quiet waits anew. */
export function asked() {
  for (const again of putOff) again();
}

/**
 * @param {number} quiet_ms for how long nobody must have asked
 * @param {() => unknown} work a little of it at a time; gives true, or a promise of it, as long as there is more
 * @returns {() => void} lets it be
 */
export function onceQuiet(quiet_ms, work) {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let next;
  const wait = () => {
    clearTimeout(next);
    next = setTimeout(doSome, quiet_ms);
  };
  const end = () => {
    clearTimeout(next);
    putOff.delete(wait);
  };
  const doSome = async () => {
    const mine = next;
    // what goes wrong here goes wrong again for whoever asks for it, and is told then
    const more = await Promise.resolve().then(work).catch(() => false);
    if (more !== true) end();
    // else somebody asked meanwhile, and it waits already
    else if (next === mine && putOff.has(wait)) next = setTimeout(doSome, BETWEEN_ms);
  };
  putOff.add(wait);
  wait();
  return end;
}
