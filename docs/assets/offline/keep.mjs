// @ts-check
// Keeps the site on the device after a first visit, and says when a newer one is ready. Nothing here delays a page.

import { savesData } from "../calculator/when.mjs";

const base = new URL("../../", import.meta.url).href;
const SCRIPT = `${base}service-worker.js`;

async function keep() {
  if (!("serviceWorker" in navigator)) return;
  try {
    const known = await navigator.serviceWorker.getRegistration(base);
    if (!known && savesData()) return;
    // asked of the network each time, or a device could keep an old list for a day
    const kept = await navigator.serviceWorker.register(SCRIPT, { scope: base, updateViaCache: "none" });
    watch(kept);
    if (!savesData()) keepEngineOnceUsed();
  } catch (reason) {
    // refused (private window, no https, damaged list): the site works from the network
    console.info("This device does not keep the site.", reason);
  }
}

/** The engine was fetched before the worker could see it: the worker takes its copies from the browser's own cache. */
function keepEngineOnceUsed() {
  const seen = new PerformanceObserver((list) => {
    if (list.getEntriesByName("calc:engine-ready").length === 0) return;
    seen.disconnect();
    void navigator.serviceWorker.ready.then((kept) => kept.active?.postMessage("keep the engine"));
  });
  seen.observe({ type: "mark", buffered: true });
}

/** @param {ServiceWorkerRegistration} kept */
function watch(kept) {
  const offer = () => {
    if (kept.waiting && navigator.serviceWorker.controller) say(kept.waiting);
  };
  offer();
  kept.addEventListener("updatefound", () => kept.installing?.addEventListener("statechange", offer));
  navigator.serviceWorker.addEventListener("message", ({ data }) => {
    if (data === "make way") document.dispatchEvent(new Event("calc-make-way"));
  });
  let had = navigator.serviceWorker.controller !== null;
  navigator.serviceWorker.addEventListener("controllerchange", () => {
    // this page's own first worker changes nothing for it; a later one does
    if (had) say(null);
    had = true;
  });
}

let reloading = false;
// The browser lets the newer version take over once the older one has nothing left to do.
const TAKE_OVER_PATIENCE_ms = 8000;
const MAKES_WAY_WITHIN_ms = 1000;

/**
 * The quiet line at the foot of the page.
 * @param {ServiceWorker | null} waiting null once another tab has made it take over
 * @param {string} [words]
 */
function say(waiting, words) {
  if (reloading) return;
  words ??= waiting ? "A newer version of this site is ready." : "This page is from an older version of the site.";
  const reload = () => {
    reloading = true;
    if (!waiting) return location.reload();
    line("Loading the newer version.");
    const waits = new AbortController();
    navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { signal: waits.signal });
    const { port1, port2 } = new MessageChannel();
    const takeOver = () => waiting.postMessage("take over");
    port1.onmessage = takeOver;
    navigator.serviceWorker.controller?.postMessage("make way", [port2]);
    // an older worker may not know of it
    setTimeout(takeOver, MAKES_WAY_WITHIN_ms);
    setTimeout(() => {
      // a page that is loaded anew minutes later would surprise whoever types there
      waits.abort();
      reloading = false;
      say(waiting, "The newer version could not take over yet: close the other pages of this site, then press Reload again.");
    }, TAKE_OVER_PATIENCE_ms);
  };
  line(`${words} What you typed stays.`, button("Reload", reload), button("Later", () => line("")));
}

/** @param {string} words none takes the line away @param {HTMLElement[]} buttons */
function line(words, ...buttons) {
  const old = document.querySelector(".new-version");
  if (words === "") return old?.remove();
  const place = old ?? document.body.appendChild(document.createElement("p"));
  place.className = "new-version md-typeset";
  place.setAttribute("role", "status");
  place.replaceChildren(words, ...buttons.flatMap((one) => [" ", one]));
}

/** @param {string} words @param {() => void} act */
function button(words, act) {
  const made = document.createElement("button");
  made.type = "button";
  made.className = "md-button";
  made.textContent = words;
  made.addEventListener("click", act);
  return made;
}

// Megabytes for later must not slow an answer that is on its way, nor those to somebody who is typing.
const QUIET_ms = 2000;
let notBefore_ms = 0;
const wait = () => (notBefore_ms = performance.now() + QUIET_ms);
document.addEventListener("calc-answer", wait);

function keepOnceQuiet() {
  if (document.documentElement.dataset.engine === "starting") wait();
  if (performance.now() < notBefore_ms) setTimeout(keepOnceQuiet, 250);
  else void keep();
}

const whenIdle = () => ("requestIdleCallback" in window ? requestIdleCallback(keepOnceQuiet, { timeout: 8000 }) : setTimeout(keepOnceQuiet, 3000));
if (document.readyState === "complete") whenIdle();
else addEventListener("load", whenIdle, { once: true });
