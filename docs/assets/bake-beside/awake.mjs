// @ts-check
// Keeps the screen on while a bake runs, where the browser lets a page do that.

/** @typedef {"held" | "refused" | "unknown" | "off"} State */

export class Awake {
  /** @type {WakeLockSentinel | null} */ #lock = null;
  #wanted = false;
  /** @type {State} */ state = "off";

  /** @param {() => void} changed */
  constructor(changed) {
    this.changed = changed;
    // the lock is lost whenever the page is hidden
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "visible" && this.#wanted) void this.hold();
    });
  }

  async hold() {
    this.#wanted = true;
    if (!("wakeLock" in navigator)) return this.#say("unknown");
    if (this.#lock && !this.#lock.released) return;
    try {
      const lock = await navigator.wakeLock.request("screen");
      if (!this.#wanted) return void lock.release();
      this.#lock = lock;
      lock.addEventListener("release", () => this.#say(this.#wanted ? "refused" : "off"));
      this.#say("held");
    } catch {
      // a low battery is reason enough for some devices
      this.#say("refused");
    }
  }

  release() {
    this.#wanted = false;
    void this.#lock?.release();
    this.#lock = null;
    this.#say("off");
  }

  /** @param {State} state */
  #say(state) {
    this.state = state;
    this.changed();
  }
}
