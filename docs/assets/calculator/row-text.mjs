// @ts-check
// A table's text as lines of cells, and a line's cells as text again. Which signs part cells is for Python to say.

/**
 * @typedef {object} Column what must be known of a column to tell its cells from something else
 * @property {string} key
 * @property {string} label
 * @property {((text: string) => string | null) | null} find the option that a text means; null for what is no choice
 */
/** @typedef {{line: string, cells: string[]}} Line */

/** Signs that some readers take for the end of a line and a field does not show as one. */
const OTHER_LINE_ENDS = /[\v\f\u001c-\u001e\u0085\u2028\u2029]/;

/**
 * @param {string} text
 * @param {string[]} separators the strongest first: a line that holds one is not split by those after it
 * @param {Column[]} columns
 * @returns {{lines: Line[], gaps: boolean} | null} null where the text is not plain rows of these columns
 */
export function splitRows(text, separators, columns) {
  if (OTHER_LINE_ENDS.test(text) || text.includes("\ufeff")) return null;
  const all = text.split(/\r\n?|\n/);
  const full = all.filter((line) => !isBlank(line, separators));
  const lines = full.map((line) => ({ line, cells: cellsOf(line, separators, columns.length) }));
  if (lines[0] && isHeading(lines[0].cells, columns)) return null;
  if (!lines.every(({ cells }) => fits(cells, columns))) return null;
  return { lines, gaps: full.some((line, place) => line !== all[place]) };
}

/**
 * One line's text. A trailing separator keeps a lone cell from being read as several.
 * @param {string[]} cells
 * @param {string[]} separators
 */
export function joinCells(cells, separators) {
  const used = [...cells];
  while (used.length > 2 && used.at(-1) === "") used.pop();
  if (used.every((cell) => cell === "")) return "";
  // a sign inside a cell must not part it: only a stronger one leaves it whole
  const held = separators.findIndex((sign) => used.some((cell) => cell.includes(sign)));
  const sign = separators[held < 0 ? separators.length - 1 : Math.max(held - 1, 0)] ?? "";
  return used.join(sign.trim() === "" ? sign : `${sign} `).replace(/ +$/, "");
}

/**
 * @param {string} line
 * @param {string[]} separators
 */
function isBlank(line, separators) {
  return [...line].every((sign) => sign.trim() === "" || separators.includes(sign));
}

/**
 * @param {string} line
 * @param {string[]} separators
 * @param {number} count
 */
function cellsOf(line, separators, count) {
  const sign = separators.find((one) => line.includes(one)) ?? separators.at(-1) ?? "";
  const cells = line.split(sign).map((cell) => cell.trim());
  while (cells.length > count && cells.at(-1) === "") cells.pop();
  return cells;
}

/**
 * @param {string[]} cells
 * @param {Column[]} columns
 */
function isHeading(cells, columns) {
  const names = columns.flatMap(({ key, label }) => [key, label.toLowerCase()]);
  return cells.every((cell) => names.includes(cell.toLowerCase()));
}

/**
 * @param {string[]} cells
 * @param {Column[]} columns
 */
function fits(cells, columns) {
  if (cells.length > columns.length) return false;
  // quotes around a cell are a spreadsheet's; one after a number is an inch
  if (cells.some((cell) => cell.startsWith('"') || cell.split('"').length > 2)) return false;
  const first = columns[0]?.find;
  // a line without separators may stand for several cells
  if (cells.length === 1 && !first && (cells[0] ?? "").split(/\s+/).length >= columns.length && columns.length > 1) {
    return false;
  }
  return columns.every(({ find }, place) => !find || !cells[place] || find(cells[place] ?? "") !== null);
}
