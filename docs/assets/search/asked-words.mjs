// @ts-check
// What a reader asks, in words that the search can use. The theme matches every word as the start of longer ones, so
// that "do" finds dose and door: small words are left out, and the trade's other spellings are put as this site spells them.

const SMALL = new Set(
  (
    "a about after again all also am an and any are as at be because been before being both but by came can could did do does doing " +
    "down each else enough even ever few for from further get gets getting give go goes going good got had has have having he her here hers " +
    "him his how i if in inside into is it its just keep know like made make makes many may me might mine more most much must my need needs no nor " +
    "not now of off offered often old on once one only onto or other our ours out over own please put really same say says see set shall she should so some " +
    "soon still such take takes tell than thank that the their them then there these they thing things this those though three through to " +
    "today together too try two under until up upon us use using very was way we well went were what when where whether which while who " +
    "whom whose why will with without won't would yesterday yet you your"
  ).split(" "),
);

/** As this site spells it, or what it calls it. @type {[RegExp, string][]} */
const OTHER_WORDS = [
  [/\bpowder[ -]?coat(s|ed|ing|er)?\b/g, "powder coat"],
  [/\baluminum\b/g, "aluminium"],
  [/\bgalvaniz/g, "galvanis"],
  [/\bgrit[ -]?blast|\bshot[ -]?blast|\bsand[ -]?blast|\bmedia[ -]?blast/g, "blast"],
  [/\borange skin\b/g, "orange peel"],
  [/\bfish ?eyes?\b/g, "fish eyes"],
  [/\bpin ?holes?\b/g, "pinholes"],
  [/\bout ?gass?(ing|ed|es)?\b/g, "gas"],
  [/\bd\.?f\.?t\b/g, "film"],
  [/\bmils\b/g, "mil"],
  [/\bmicrons?\b/g, "um"],
  [/\bmek\b/g, "rub"],
  [/\bthermo ?couples?\b/g, "probe"],
  [/\bir gun\b|\binfra ?red\b/g, "infrared"],
  [/\bcolor(s|ed)?\b/g, "colour$1"],
  [/\bgray\b/g, "grey"],
  [/\bmold\b/g, "mould"],
  [/\bvapor/g, "vapour"],
  [/\bquotes?\b|\bquoting\b/g, "price"],
  [/\bn ?95\b/g, "respirator"],
  [/\bfaraday\b/g, "corners"],
  [/\bflash rust(ing|s)?\b/g, "rust haze"],
];

/** Without its ending, so that each form of a word finds the others. @param {string} word */
function beginning(word) {
  const short = word.length > 6 ? word.replace(/(ing|ed)s?$/, "") : word;
  return short.length > 4 ? short.replace(/([^s])s$/, "$1") : short;
}

/**
 * @param {string} asked
 * @returns {string}
 */
export function wordsToFind(asked) {
  let text = asked.toLowerCase().replace(/[’']s\b/g, "").replace(/["“”?!.,;()]+(?=\s|$)/g, " ");
  for (const [other, ours] of OTHER_WORDS) text = text.replace(other, ours);
  const words = text.split(/\s+/).filter(Boolean);
  // someone who is still typing has not finished the last word
  const kept = words.filter((word) => !SMALL.has(word) && word.length > 1);
  return (kept.length > 0 ? kept : words).map(beginning).join(" ");
}

// The theme hands each query to its worker as a message of this kind.
const QUERY = 2;
const post = Worker.prototype.postMessage;
Worker.prototype.postMessage = function (/** @type {any} */ message, /** @type {any[]} */ ...more) {
  const isQuery = message?.type === QUERY && typeof message.data === "string";
  return Reflect.apply(post, this, [isQuery ? { ...message, data: wordsToFind(message.data) } : message, ...more]);
};
