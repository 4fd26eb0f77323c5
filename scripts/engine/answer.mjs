// @ts-check
// node answer.mjs ENGINE_FOLDER image|ordinary: one request a line on standard input; prints each response as a line.

import { readFileSync } from "node:fs";
import { start } from "./runtime.mjs";

const [folder, mode] = process.argv.slice(2);
const python = await start(folder, mode);
const { run_json: runJson } = python.pyimport("calculators.kit.browser");
for (const request of readFileSync(0, "utf8").split("\n").filter(Boolean)) {
  process.stdout.write(`${JSON.stringify(runJson(request))}\n`);
}
