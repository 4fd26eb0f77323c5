// @ts-check
// Says what of the site is on this device, and keeps the calculators there too where the reader asks for it.

/** @typedef {{engine: boolean, engineBytes: number, bytes: number}} Kept */

const place = document.querySelector("[data-keep-here]");
if (place && "serviceWorker" in navigator) void navigator.serviceWorker.ready.then((kept) => look(place, kept));

/** @param {Element} place @param {ServiceWorkerRegistration} kept */
async function look(place, kept) {
  const { engine, engineBytes, bytes } = /** @type {Kept} */ (await ask(kept, "what is kept"));
  if (engine) return show(place, "Pages and calculators are on this device.");
  const button = document.createElement("button");
  button.type = "button";
  button.className = "md-button";
  button.textContent = `Keep the calculators too, ${megabytes(engineBytes)}`;
  button.addEventListener("click", async () => {
    show(place, `Fetching ${megabytes(engineBytes)}. You can go on reading.`);
    if (await ask(kept, "keep the engine, asked for")) show(place, "Pages and calculators are on this device.");
    else show(place, "Not all of it came: no connection, or no room on this device.", button);
  });
  show(place, `The pages are on this device (${megabytes(bytes)}).`, button);
}

/** @param {Element} place @param {string} words @param {HTMLElement[]} more */
function show(place, words, ...more) {
  const line = place.querySelector("[role=status]") ?? place.appendChild(document.createElement("p"));
  line.setAttribute("role", "status");
  line.replaceChildren(words, ...more.flatMap((one) => [" ", one]));
}

/** @param {ServiceWorkerRegistration} kept @param {string} question @returns {Promise<unknown>} */
function ask(kept, question) {
  const { port1, port2 } = new MessageChannel();
  return new Promise((resolve) => {
    port1.onmessage = ({ data }) => resolve(data);
    kept.active?.postMessage(question, [port2]);
  });
}

/** @param {number} bytes */
const megabytes = (bytes) => `${Math.ceil(bytes / 1e6)} MB`;
