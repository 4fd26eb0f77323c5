// @ts-check
// What page and worker say to each other; types only, so no browser ever loads this file.

/**
 * @typedef {{type: "start", base: string, mode: "image" | "ordinary", keep: boolean}
 *   | {id: number, request: string}} ToWorker
 */
/**
 * @typedef {{type: "ready", mode: "image" | "ordinary", ms: number} | {type: "progress"}
 *   | {type: "failed", message: string} | {id: number, response: string} | {id: number, problem: string}} FromWorker
 */

export {};
