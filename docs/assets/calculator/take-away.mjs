// @ts-check
// The buttons that carry a calculation off the page: its link, and its answer as text.

import { copyText } from "./copy.mjs";

/** @typedef {import("./asking.mjs").Asking} Asking */
/** @typedef {import("./saying.mjs").Saying} Saying */

const NOTHING = "Nothing copied: the answer shown is not for what the fields hold.";

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
  const text = asking.response?.ok ? await asking.text().catch(() => "") : "";
  saying.line(text === "" ? NOTHING : await copyText(form, text, button, "Answer copied."));
}
