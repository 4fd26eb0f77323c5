// @ts-check
// Answers for nobody. The browser makes code fast once it has run for a while, and an image starts with code that has not.

import { isPractised, keepPractised } from "./kept.mjs";
import { onceQuiet } from "./quiet.mjs";

/** @typedef {(request: string) => void} Run */
/** @typedef {{getHighEntropyValues: (names: string[]) => Promise<{fullVersionList?: {brand: string, version: string}[]}>}} UserAgentData */

// The first answers took three times as long as the later ones. All calculators run the same code, and most are answered
// sooner than the one that is open: whoever asks meanwhile waits less.
const FIRST_ROUNDS = 3;
// Chromium keeps compiled code for later visits once a million bytes of it are fast: so many rounds bring that about, with
// a tenth to spare.
const MORE_ROUNDS = 5;
const AT_ONCE_ms = 10;
const QUIET_ms = 500;
const SOON_ms = 60;
const TOO_LONG_ms = 400;

/**
 * Gets quick, and has the compiled code kept, once for each version of the browser.
 * @param {Run} run @param {() => {toJs: () => string[]}} slugsOf the calculators'
 * @param {string | null} kept the engine's base, where its code comes from what this device keeps: of code that came over
 *   the network the browser makes no use again
 */
export function practise(run, slugsOf, kept) {
  rounds(FIRST_ROUNDS, run, slugsOf, async () => {
    const version = kept && (await chromiumVersion());
    if (!kept || !version || (await isPractised(kept, version))) return;
    rounds(MORE_ROUNDS, run, slugsOf, () => keepPractised(kept, version));
  });
}

/**
 * Each calculator answers its example so many times, for nobody.
 * @param {number} count @param {Run} run @param {() => {toJs: () => string[]}} slugsOf
 * @param {() => unknown} then
 */
function rounds(count, run, slugsOf, then) {
  /** @type {string[]} */
  let slugs = [];
  let done = 0;
  const some = async () => {
    const began = performance.now();
    if (done === 0) slugs = slugsOf().toJs();
    do {
      run(JSON.stringify({ slug: slugs[done % slugs.length], texts: {} }));
      done += 1;
    } while (done < count * slugs.length && performance.now() - began < AT_ONCE_ms);
    if (done < count * slugs.length) return performance.now() - began < TOO_LONG_ms;
    await then();
    return false;
  };
  onceQuiet(QUIET_ms, some, SOON_ms);
}

/** All four numbers of it; empty in a browser of another kind. */
async function chromiumVersion() {
  const { userAgentData } = /** @type {{userAgentData?: UserAgentData}} */ (/** @type {unknown} */ (navigator));
  const { fullVersionList } = (await userAgentData?.getHighEntropyValues(["fullVersionList"])) ?? {};
  return fullVersionList?.find(({ brand }) => brand === "Chromium")?.version ?? "";
}
