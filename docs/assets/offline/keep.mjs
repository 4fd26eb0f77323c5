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
  let had = navigator.serviceWorker.controller !== null;
  navigator.serviceWorker.addEventListener("controllerchange", () => {
    // this page's own first worker changes nothing for it; a later one does
    if (had) say(null);
    had = true;
  });
}

let reloading = false;

/**
 * The quiet line at the foot of the page.
 * @param {ServiceWorker | null} waiting null once another tab has made it take over
 */
function say(waiting) {
  if (reloading) return;
  let line = document.querySelector(".new-version");
  if (!line) {
    line = document.createElement("p");
    line.className = "new-version";
    line.setAttribute("role", "status");
    document.body.append(line);
  }
  const button = document.createElement("button");
  button.type = "button";
  button.className = "md-button";
  button.textContent = "Reload";
  button.addEventListener("click", () => {
    reloading = true;
    if (!waiting) return location.reload();
    navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
    waiting.postMessage("take over");
  });
  const close = document.createElement("button");
  close.type = "button";
  close.className = "md-button";
  close.textContent = "Later";
  close.addEventListener("click", () => line?.remove());
  const words = waiting ? "A newer version of this site is ready. " : "This page is from an older version of the site. ";
  line.replaceChildren(`${words}What you typed stays. `, button, " ", close);
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
