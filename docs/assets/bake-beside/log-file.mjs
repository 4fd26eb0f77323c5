// @ts-check
// A bake as a CSV file, and back: the log's own lines, and above them what else its answer stands on.

import { logText, minuteOf, minuteText, unitOf } from "./bake.mjs";

/** @typedef {import("./bake.mjs").Bake} Bake */

const FIRST = "Bake log";
const PULLED = "Pulled at minute";
const FIELDS = "Fields";

/** @param {Bake} bake @param {number} moment */
function dateText(bake, moment) {
  const day = new Date(moment - bake.shift);
  const two = (/** @type {number} */ part) => String(part).padStart(2, "0");
  return (
    `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}` +
    ` ${two(day.getHours())}:${two(day.getMinutes())}:${two(day.getSeconds())}`
  );
}

/** @param {Bake} bake */
export const fileName = (bake) => `bake-${dateText(bake, bake.started).slice(0, 16).replace(" ", "-").replace(":", "")}.csv`;

/**
 * @param {Bake} bake
 * @param {Record<string, string>} fields the rest of the form, by name
 */
export function fileText(bake, fields) {
  const log = logText(bake);
  const separator = log.includes(";") ? ";" : ",";
  const lines = [
    [FIRST, dateText(bake, bake.started)],
    [PULLED, bake.pulled === null ? "not pulled" : minuteText(minuteOf(bake, bake.pulled))],
    // packed as a link packs it, so that no comma in it parts a column
    [FIELDS, new URLSearchParams(fields).toString()],
    ["Time (min)", `Metal temperature (${unitOf(bake)})`],
  ];
  return `${lines.map((cells) => cells.join(separator)).join("\n")}\n${log.replaceAll(`${separator} `, separator)}\n`;
}

/**
 * What a file of this kind says above its readings.
 * @param {string} text
 * @returns {{pulled: string, fields: Record<string, string>} | null} null when it is another kind of text
 */
export function readAbove(text) {
  const lines = text.replace(/^\ufeff/, "").split("\n", 4).map((line) => line.trim());
  const cell = (/** @type {string} */ name) => {
    const line = lines.find((one) => one.startsWith(`${name},`) || one.startsWith(`${name};`));
    return line?.slice(name.length + 1).replace(/[,;]+$/, "");
  };
  const pulled = cell(PULLED);
  const fields = cell(FIELDS);
  if (!lines[0]?.startsWith(FIRST) || pulled === undefined || fields === undefined) return null;
  return { pulled: /^\d/.test(pulled) ? pulled : "", fields: Object.fromEntries(new URLSearchParams(fields)) };
}
