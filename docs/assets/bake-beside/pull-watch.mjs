// @ts-check
// Says when the pull is near and when it is due, once each; while it is due, once a minute until somebody acts.

/** @typedef {import("./alarm.mjs").Alarm} Alarm */

const MINUTE_ms = 60_000;
const NEAR_ms = 2 * MINUTE_ms;

export class PullWatch {
  /** 0, then 1 near the pull, 2 at it. */ #stage = 0;
  #rung = 0;

  /** @param {Alarm} alarm @param {(words: string) => void} say */
  constructor(alarm, say) {
    this.alarm = alarm;
    this.say = say;
  }

  /**
   * @param {number | null} pull when to pull; null where that is not known, or done
   * @param {number} now
   */
  look(pull, now) {
    const stage = pull === null ? 0 : pull <= now ? 2 : pull - now <= NEAR_ms ? 1 : 0;
    const again = stage === 2 && now - this.#rung >= MINUTE_ms;
    if (stage > this.#stage || again) {
      this.#rung = now;
      this.alarm.ring(stage === 2 ? 5 : 2);
    }
    if (stage > this.#stage) this.say(stage === 2 ? "Pull now, by the last reading." : "Pull in 2 minutes or less.");
    this.#stage = stage;
  }
}
