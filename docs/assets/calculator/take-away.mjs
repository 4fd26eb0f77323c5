// @ts-check
// The buttons that carry a calculation off the page: its link, and its answer as text.

import { copyText } from "./copy.mjs";

/** @typedef {import("./asking.mjs").Asking} Asking */
/** @typedef {import("./saying.mjs").Saying} Saying */

const NOTHING = "Nothing copied: the answer shown is not for what the fields hold.";
const NOT_WHOLE = "Nothing copied: a part of the answer did not come. Reload the page: what you typed is kept.";

/**
 * @param {HTMLFormElement} form
 * @param {Asking} asking
 * @param {Saying} saying
 * @param {string} page address of the calculator's own page, without a query
 * @param {HTMLElement} button
 */
export async function copyLink(form, asking, saying, page, button) {
  await asking.settle();
  const query = asking.response?.query ?? "";
  if (query === "" && !saying.holdsExample()) return saying.line("Nothing copied: the live calculator did not start.");
  const address = new URL(page, location.href);
  address.search = query;
  address.hash = "";
  saying.line(await copyText(form, address.href, button, "Link copied."));
}

/**
 * @param {HTMLFormElement} form
 * @param {Asking} asking
 * @param {Saying} saying
 * @param {HTMLElement} button
 */
export async function copyAnswer(form, asking, saying, button) {
  await asking.settle();
  const { response } = asking;
  if (!response?.ok) return saying.line(NOTHING);
  // it has come already, mostly: some browsers copy only at the very moment of the click
  const rest = await response.rest?.catch(() => null);
  saying.line(rest ? await copyText(form, rest.text, button, "Answer copied.") : NOT_WHOLE);
}
