// @ts-check
// node held-texts.mjs ENGINE_FOLDER: prints those lines of standard input that occur in the memory image.

import { Buffer } from "node:buffer";
import { inputLines, restore } from "./runtime.mjs";

const { image } = await restore(process.argv[2]);
const bytes = Buffer.from(image.buffer, image.byteOffset, image.byteLength);
for (const text of await inputLines()) {
  if (bytes.includes(text, 0, "utf8")) process.stdout.write(`${text}\n`);
}
