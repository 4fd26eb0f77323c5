// @ts-check
// A square code for a phone's camera, as long as it is coarse enough to be read from paper.

// 117 modules: printed 55 mm wide each is nearly half a millimetre, which a phone reads from an arm's length
const FINEST = 25;
const QUIET = 4;
const SVG = "http://www.w3.org/2000/svg";

/**
 * @param {string} text
 * @returns {Promise<SVGElement | null>} null where the text is too long for it
 */
export async function drawCode(text) {
  let made;
  try {
    const { encode } = await import(new URL("../vendor/uqr.mjs", import.meta.url).href);
    made = encode(text, { ecc: "L", boostEcc: true, border: 0, maxVersion: FINEST });
  } catch {
    return null;
  }
  const size = made.size + 2 * QUIET;
  const picture = document.createElementNS(SVG, "svg");
  picture.setAttribute("viewBox", `0 0 ${size} ${size}`);
  picture.setAttribute("role", "img");
  picture.setAttribute("aria-label", "The link to this sheet, as a square code for a phone's camera");
  picture.setAttribute("class", "job-code");
  picture.setAttribute("shape-rendering", "crispEdges");
  const paper = document.createElementNS(SVG, "path");
  paper.setAttribute("fill", "#fff");
  paper.setAttribute("d", `M0 0H${size}V${size}H0Z`);
  const ink = document.createElementNS(SVG, "path");
  ink.setAttribute("fill", "#000");
  /** @type {string[]} */
  const parts = [];
  for (const [y, row] of made.data.entries()) {
    for (const [x, dark] of row.entries()) if (dark) parts.push(`M${x + QUIET} ${y + QUIET}h1v1h-1z`);
  }
  ink.setAttribute("d", parts.join(""));
  picture.append(paper, ink);
  return picture;
}
