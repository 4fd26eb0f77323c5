// @ts-check
// node replay.mjs ENGINE_FOLDER CODEC < CALLS: makes recorded calls in the restored memory image and prints each result
// as a line of JSON. CODEC is the Python file that reads and writes arguments and results.

import { readFileSync } from "node:fs";
import { inputLines, startFromImage } from "./runtime.mjs";

const CHUNK = 100;

const [folder, codec] = process.argv.slice(2);
const python = await startFromImage(folder);
const names = python.toPy({ __name__: "call_codec" });
python.runPython(readFileSync(codec, "utf8"), { globals: names });
python.runPython(
  `
import json
from calculators.kit.browser import run_json

def replay(lines):
    results = []
    for line in lines.splitlines():
        recorded = json.loads(line)
        if "slug" in recorded:
            results.append({"response": run_json(line)})
        else:
            results.append(call(recorded["module"], recorded["function"], recorded["args"], recorded["kwargs"]))
    return "\\n".join(json.dumps(result) for result in results)
`,
  { globals: names },
);
const replay = names.get("replay");
const calls = await inputLines();
for (let at = 0; at < calls.length; at += CHUNK) {
  process.stdout.write(`${replay(calls.slice(at, at + CHUNK).join("\n"))}\n`);
}
