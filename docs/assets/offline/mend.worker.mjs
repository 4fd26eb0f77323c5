// @ts-check
// Looks at the engine's files after a start that failed, and fetches again what this device holds a damaged copy of:
// under an address that never changes, such a copy would be used for a year.

const FILES = ["pyodide.mjs", "pyodide.asm.js", "pyodide.asm.wasm", "pyodide-lock.json", "python_stdlib.zip", "calculators.zip"];

/**
 * Whether every file is sound now, so that another start is worth trying.
 * @param {string} base address of the engine's folder
 * @param {string} cacheName where the service worker keeps its copies
 * @param {typeof fetch} get
 */
export async function mendFiles(base, cacheName, get) {
  if (!self.crypto.subtle) return false;
  const { files } = await (await get(`${base}manifest.json`, { cache: "reload" })).json();
  for (const name of FILES) {
    const address = base + name;
    const integrity = `sha256-${base64(files[name].sha256)}`;
    if (await arrives(name, get(address, { integrity }))) continue;
    await (await caches.open(cacheName)).delete(address);
    if (!(await arrives(name, get(address, { integrity, cache: "reload" })))) return false;
  }
  return true;
}

/**
 * Whether all of a file comes, and is the right one. A script whose type is another the browser does not run.
 * @param {string} name @param {Promise<Response>} response
 */
async function arrives(name, response) {
  try {
    const { ok, body, headers } = await response;
    await body?.pipeTo(new WritableStream());
    return ok && (!/\.m?js$/.test(name) || /javascript/.test(headers.get("Content-Type") ?? ""));
  } catch {
    return false;
  }
}

/** @param {string} hex */
function base64(hex) {
  return btoa(String.fromCharCode(...(hex.match(/../g) ?? []).map((byte) => parseInt(byte, 16))));
}
