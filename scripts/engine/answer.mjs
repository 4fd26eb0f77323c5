// @ts-check
// node answer.mjs ENGINE_FOLDER image|ordinary: one request a line on standard input; prints each response as a line.

import { inputLines, start } from "./runtime.mjs";

const [folder, mode] = process.argv.slice(2);
const python = await start(folder, mode);
const { run_json: runJson } = python.pyimport("calculators.kit.browser");
for (const request of await inputLines()) {
  process.stdout.write(`${JSON.stringify(runJson(request))}\n`);
}
