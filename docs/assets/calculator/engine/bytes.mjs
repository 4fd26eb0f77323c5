// @ts-check
// Megabytes: handed on, hashed and let go so that the browser keeps no copy of them.

const PART_bytes = 1 << 20;

/**
 * Bytes handed on in parts of one length, each in the same small buffer: a buffer that the browser itself was given stays in
 * memory for half a minute, even one that is let go.
 */
export class Parts {
  #part = new Uint8Array(PART_bytes);
  #filled = 0;

  /** @param {(part: Uint8Array<ArrayBuffer>) => unknown} give copies the part before it returns */
  constructor(give) {
    this.give = give;
  }

  /** @param {Uint8Array} piece of any length */
  take(piece) {
    for (let from = 0; from < piece.length; ) {
      const some = piece.subarray(from, from + PART_bytes - this.#filled);
      this.#part.set(some, this.#filled);
      this.#filled += some.length;
      from += some.length;
      if (this.#filled === PART_bytes) this.end();
    }
  }

  end() {
    if (this.#filled > 0) this.give(this.#part.subarray(0, this.#filled));
    this.#filled = 0;
  }
}

/** The hash of the hashes of a file's parts: each is taken as soon as its part has come. */
export class PartsHash {
  /** @type {Promise<ArrayBuffer>[]} */ #hashes = [];
  #parts = new Parts((part) => this.#hashes.push(self.crypto.subtle.digest("SHA-256", part)));

  /** @param {Uint8Array} piece */
  take(piece) {
    this.#parts.take(piece);
  }

  async whole() {
    this.#parts.end();
    return sha256(await new Blob(await Promise.all(this.#hashes)).arrayBuffer());
  }
}

/**
 * Gives memory back at once, where the browser can and was not given this buffer itself: it looks for what is not used any
 * more only after tens of megabytes.
 * @param {Uint8Array<ArrayBuffer>} bytes used by nobody from now on
 */
export function letGo(bytes) {
  const buffer = /** @type {{transfer?: (bytes: number) => ArrayBuffer}} */ (/** @type {unknown} */ (bytes.buffer));
  buffer.transfer?.(0);
}

/** @param {BufferSource} bytes */
export async function sha256(bytes) {
  const hash = new Uint8Array(await self.crypto.subtle.digest("SHA-256", bytes));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
