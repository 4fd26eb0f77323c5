// @ts-check
// What page and worker say to each other; types only, so no browser ever loads this file.

/**
 * @typedef {{type: "start", base: string, mode: "image" | "ordinary", keep: boolean} | {id: number, request: string, inParts: boolean}} ToWorker
 */
/**
 * @typedef {{type: "ready", mode: "image" | "ordinary", origin: number, steps: Record<string, number>} | {type: "progress"}
 *   | {type: "failed", message: string, why: Why, again: boolean} | {id: number, response: string} | {id: number, problem: string}} FromWorker
 */
/** @typedef {"" | "old" | "files" | "memory"} Why why it failed, as far as a reader can do something about it */

export {};
