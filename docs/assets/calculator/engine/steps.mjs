// @ts-check
// When each part of the engine's start was done, for whoever measures it.

/** In ms since this worker began. @type {Record<string, number>} */
export const steps = {};
/** @param {string} step */
export const reached = (step) => void (steps[step] = Math.round(performance.now()));
/** @template T @param {string} step @param {Promise<T>} work */
export const timed = (step, work) => work.then((done) => (reached(step), done));
