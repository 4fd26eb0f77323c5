// Keeps the site on the device: every page, style, script and drawing of one build, all of it or nothing.
// The build puts its own lists in place of the names below; their hash is the version.
// @ts-check

/** Hash of the list. */ const VERSION = "%VERSION%";
/** Address from the site's root -> hash of the file. @type {Record<string, string>} */
const FILES = "%FILES%";
/** Folder of this build's engine, from the site's root. */ const ENGINE = "%ENGINE%";

const worker = /** @type {any} */ (self);
// Another copy of the site may lie in another folder of the same host, and has caches of its own.
const FOLDER = new URL(worker.registration.scope).pathname;
const PAGES = `pages-${VERSION} ${FOLDER}`;
const KEPT = `engine-${ENGINE.split("/").at(-1)} ${FOLDER}`;
/** What a start from the memory image asks for, with hashes; the slower way to start is for the network only. @type {Record<string, string>} */
const ENGINE_FILES = "%ENGINE_FILES%";
/** How many bytes FILES are. */ const BYTES = Number("%BYTES%");
/** How many bytes come for ENGINE_FILES, as gzip. */ const ENGINE_BYTES = Number("%ENGINE_BYTES%");
const LIST = "__list__";

/** @param {string} path */
const address = (path) => new URL(path, worker.registration.scope).href;

worker.addEventListener("install", (/** @type {any} */ event) => event.waitUntil(fill()));

/** All files, those that an older version has in the same form copied from it. Whatever is not as built refuses the whole. */
async function fill() {
  const cache = await caches.open(PAGES);
  // a version that comes back while it is still in use is there already
  if (await cache.match(address(LIST))) return;
  const older = await olderCopies();
  const wanted = Object.entries(FILES);
  const next = async () => {
    for (let one = wanted.pop(); one; one = wanted.pop()) {
      const [path, hash] = one;
      const copy = older.get(path)?.hash === hash ? await older.get(path)?.cache.match(address(path)) : undefined;
      // the browser checks the bytes against the hash, so a proxy, a torn download or a deploy halfway is refused
      const response = copy ?? (await fetch(address(path), { integrity: `sha256-${hash}`, cache: "no-cache" }));
      if (!response.ok) throw new Error(`${path} did not load (${response.status}).`);
      await cache.put(address(path), response);
    }
  };
  try {
    await expectRoom();
    await Promise.all([next(), next(), next(), next()]);
    await cache.put(address(LIST), new Response(JSON.stringify(FILES)));
  } catch (reason) {
    await caches.delete(PAGES);
    throw reason;
  }
}

/** Where there is no room, each visit would fetch everything in vain. */
async function expectRoom() {
  const { quota = Infinity, usage = 0 } = (await /** @type {any} */ (navigator).storage?.estimate?.().catch(() => {})) ?? {};
  if (quota - usage < BYTES) throw new Error("This device has no room left for the site.");
}

/** @returns {Promise<Map<string, {hash: string, cache: Cache}>>} */
async function olderCopies() {
  const found = new Map();
  for (const name of await caches.keys()) {
    if (!isOurs(name) || !name.startsWith("pages-") || name === PAGES) continue;
    const cache = await caches.open(name);
    const list = await cache.match(address(LIST));
    if (list) for (const [path, hash] of Object.entries(await list.json())) found.set(path, { hash, cache });
  }
  return found;
}

/** @param {string} name of a cache */
const isOurs = (name) => /^(pages|engine)-/.test(name) && name.endsWith(` ${FOLDER}`);

worker.addEventListener("activate", (/** @type {any} */ event) =>
  event.waitUntil(
    caches
      .keys()
      .then((names) =>
        Promise.all(names.filter((name) => isOurs(name) && name !== PAGES && name !== KEPT).map((name) => caches.delete(name))),
      ),
  ),
);

worker.addEventListener("message", (/** @type {any} */ event) => {
  const tell = (/** @type {Promise<unknown>} */ told) => event.waitUntil(told.then((answer) => event.ports[0].postMessage(answer)));
  if (event.data === "take over") worker.skipWaiting();
  if (event.data === "make way") tell(makeWay());
  if (event.data === "keep the engine") event.waitUntil(keepEngine(false).catch(() => {}));
  if (event.data === "keep the engine, asked for") tell(keepEngine(true).then(isEngineKept, () => false));
  if (event.data === "what is kept") tell(isEngineKept().then((engine) => ({ engine, engineBytes: ENGINE_BYTES, bytes: BYTES })));
});

// A newer worker cannot take over while this one has a request open, and megabytes on a slow line are open for minutes.
let leaving = new AbortController();
/** In which pages stop a start of the engine that is under way: one that is only cut off asks again at once. */
const STOP_ms = 300;

async function makeWay() {
  for (const page of await worker.clients.matchAll({ type: "window" })) page.postMessage("make way");
  await new Promise((resolve) => setTimeout(resolve, STOP_ms));
  leaving.abort();
  leaving = new AbortController();
}

/** @param {boolean} isAsked the reader wants all of it, whatever it costs; else only what was fetched already */
async function keepEngine(isAsked) {
  if (!isAsked && /** @type {any} */ (navigator).connection?.saveData === true) return;
  const cache = await caches.open(KEPT);
  for (const [name, hash] of Object.entries(ENGINE_FILES)) {
    const url = address(`${ENGINE}/${name}`);
    if ((await cache.match(url)) || (name === IMAGE && (await cache.match(address(`${ENGINE}/${LAID}`))))) continue;
    // Most often it comes from the browser's own cache. The image in gzip comes from nowhere else: where the host gave it
    // in brotli it would be megabytes twice, and the engine keeps it unpacked by itself.
    const held = /** @type {RequestInit} */ (name === IMAGE && !isAsked ? { cache: "only-if-cached", mode: "same-origin" } : {});
    const response = await fetch(url, { integrity: `sha256-${hash}`, signal: leaving.signal, ...held }).catch(() => null);
    if (response?.ok) await cache.put(url, response);
  }
}

const IMAGE = "image.bin.gz";
/** The image as the engine itself keeps it (kept.mjs). */ const LAID = "image.laid";

async function isEngineKept() {
  const cache = await caches.open(KEPT);
  const kept = new Set((await cache.keys()).map(({ url }) => url.split("/").at(-1)));
  return Object.keys(ENGINE_FILES).every((name) => kept.has(name) || (name === IMAGE && kept.has(LAID)));
}

worker.addEventListener("fetch", (/** @type {any} */ event) => {
  const { request } = event;
  if (request.method !== "GET" || !request.url.startsWith(worker.registration.scope)) return;
  const path = request.url.slice(worker.registration.scope.length).replace(/[?#].*$/, "").replace(/(^|\/)index\.html$/, "$1");
  if (path.startsWith(`${ENGINE}/`)) event.respondWith(fromEngine(path, request));
  else if (isKept(path)) event.respondWith(fromPages(path, request));
  else if (request.mode === "navigate") event.respondWith(elsewhere(path, request));
});

/** @param {string} path */
const isKept = (path) => Object.hasOwn(FILES, path);

/**
 * @param {string} path
 * @param {Request} request
 */
async function fromPages(path, request) {
  const kept = await (await caches.open(PAGES)).match(address(path));
  // the device may have thrown it away: then as if nothing had been kept
  return kept ?? fetch(request);
}

/**
 * A page that this build does not have: perhaps the next one does.
 * @param {string} path
 * @param {Request} request
 */
async function elsewhere(path, request) {
  if (isKept(`${path}/`)) return Response.redirect(address(`${path}/`) + new URL(request.url).search, 302);
  try {
    return await fetch(request);
  } catch (reason) {
    const page = await (await caches.open(PAGES)).match(address("404.html"));
    if (!page) throw reason;
    return new Response(page.body, { status: 404, headers: { "Content-Type": "text/html; charset=utf-8" } });
  }
}

/**
 * The engine's files are named by their content, so a kept one never ages.
 * @param {string} path
 * @param {Request} request
 */
async function fromEngine(path, request) {
  const kept = await (await caches.open(KEPT)).match(address(path));
  return kept ?? fetch(request, { signal: leaving.signal });
}
