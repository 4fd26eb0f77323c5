// @ts-check
// Sound and vibration. A browser lets a page sound only after a tap, and only while the page runs.

const BEEP_s = 0.35;
const PAUSE_s = 0.25;

export class Alarm {
  /** @type {AudioContext | null} */ #context = null;

  get on() {
    return this.#context !== null;
  }

  /** In answer to a tap. @returns {boolean} false when this browser has no sound to give */
  turnOn() {
    try {
      this.#context ??= new AudioContext();
    } catch {
      return false;
    }
    void this.#context.resume();
    this.ring(1);
    return true;
  }

  turnOff() {
    void this.#context?.close();
    this.#context = null;
  }

  /** @param {number} times */
  ring(times) {
    // refused without a tap on the page since it was opened; nothing is lost then
    navigator.vibrate?.(Array.from({ length: 2 * times - 1 }, (_, place) => 1000 * (place % 2 ? PAUSE_s : BEEP_s)));
    const context = this.#context;
    if (!context) return;
    void context.resume();
    for (let beep = 0; beep < times; beep += 1) {
      const start = context.currentTime + beep * (BEEP_s + PAUSE_s);
      const tone = context.createOscillator();
      const loudness = context.createGain();
      // high enough for a loud shop and a small speaker, without the click of a hard edge
      tone.frequency.value = 1800;
      loudness.gain.setValueAtTime(0, start);
      loudness.gain.linearRampToValueAtTime(0.8, start + 0.02);
      loudness.gain.setValueAtTime(0.8, start + BEEP_s - 0.02);
      loudness.gain.linearRampToValueAtTime(0, start + BEEP_s);
      tone.connect(loudness).connect(context.destination);
      tone.start(start);
      tone.stop(start + BEEP_s);
    }
  }
}
