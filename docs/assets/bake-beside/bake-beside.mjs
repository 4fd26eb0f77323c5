// @ts-check
// <bake-beside>: a clock and readings beside an oven. It knows no formula: the page's form answers, and this shows it.

import { saveAsFile } from "../calculator/copy.mjs";
import { note } from "../calculator/notes.mjs";
import { ask } from "../job/page-parts.mjs";
import { Alarm } from "./alarm.mjs";
import { Awake } from "./awake.mjs";
import { lastReading, latest, newBake } from "./bake.mjs";
import { BakeForm } from "./bake-form.mjs";
import { about, behind, clockTime, dayOf, DeviceClock, spanWords, zoneMoved } from "./device-clock.mjs";
import { figuresOf, pullAt } from "./glance.mjs";
import { Hand } from "./hand.mjs";
import { dropUnread, keep, keepSeen, onOtherTab, recall, unreadBakes } from "./keeping.mjs";
import { fileName, fileText } from "./log-file.mjs";
import { Panel, readingsOf, troubleOf } from "./panel.mjs";
import { PullWatch } from "./pull-watch.mjs";

/** @typedef {import("./bake.mjs").Bake} Bake */
/** @typedef {import("../calculator/asking.mjs").Response} Response */

const MINUTE_ms = 60_000;
/** Left alone for so long, nobody may still stand beside it. */
const LEFT_ms = 120 * MINUTE_ms;
const SEEN_EVERY_ms = 10_000;
/** A phone that was locked in the middle of an answer has lost it. */
const RETRY_ms = 15_000;
const LONGEST_RETRY_ms = 5 * MINUTE_ms;

const UNKEPT =
  "This browser keeps nothing for this site: if the page is closed or reloaded, the readings are gone. Write them down as well.";
const ZONE = "This device is in another time zone than when the bake began. Minutes hold; clock times are shown in the new zone.";
const UNREAD = "A bake that this device keeps cannot be read any more. It is kept as it is until you delete it.";
const AGAIN = "Compare with another clock, and correct what is wrong.";
/** A shorter nap is no reason to look at another clock. */
const AHEAD_ms = 2 * MINUTE_ms;
/** What is said of the device's clock. */
const OF_CLOCK = ["clock", "clock-right", "clock-ahead"];

class BakeBeside extends HTMLElement {
  /** @type {Bake | null} */ #bake = null;
  #left = false;
  /** @type {Response | null | undefined} */ #answer;
  /** The last answer's figures: they stand until the next answer. @type {import("./glance.mjs").Figures | null} */ #figures = null;
  /** When to try again after the calculator failed, and how long to wait after that. */ #again = { at: 0, wait_ms: RETRY_ms };
  /** What to read out once the answer is there. */ #told = "";
  #seen = 0;
  #clock = new DeviceClock();
  #alarm = new Alarm();
  #watch = new PullWatch(this.#alarm, (words) => this.#panel?.say(words));
  #awake = new Awake(() => this.#show());
  /** @type {BakeForm | undefined} */ #form;
  /** @type {Panel | undefined} */ #panel;

  connectedCallback() {
    const calculator = document.querySelector('calc-form[slug="bake-log"]');
    const form = calculator?.querySelector("form");
    if (this.#form || !(calculator instanceof HTMLElement) || !form) return;
    this.#form = new BakeForm(calculator, form, (response) => this.#take(response));
    this.#panel = new Panel(this, this.#form, {
      drop: (reading) => this.#hand((hand) => hand.drop(reading)),
      correct: (reading, text, at) => this.#hand((hand) => hand.correct(reading, text, at)),
      rejoin: () => this.#push("This bake is back in the form.", true),
    });
    this.#listen(this.#panel);
    void customElements.whenDefined("calc-form").then(() => this.#begin());
  }

  /** The form is filled by now: a bake may be put into it. */
  #begin() {
    const { bake, seen } = recall();
    this.#showUnread();
    if (bake) this.#find(bake, seen);
    this.hidden = false;
    this.#show();
    setInterval(() => this.#tick(), 1000);
    onOtherTab(() => this.#follow());
  }

  /** @param {Panel} panel */
  #listen(panel) {
    this.addEventListener("click", (event) => {
      const button = event.target instanceof Element ? event.target.closest("[data-act]") : null;
      if (button instanceof HTMLElement) void this.#act(button.dataset.act ?? "");
    });
    /** @type {[string, () => void][]} */
    const entries = [
      ["[data-entry]", () => this.#hand((hand) => hand.add())],
      ["[data-went-in]", () => this.#setStart()],
    ];
    for (const [selector, act] of entries) {
      panel.at(selector).addEventListener("submit", (event) => {
        event.preventDefault();
        act();
      });
    }
    document.addEventListener("visibilitychange", () => this.#tick(true));
    for (const name of ["pagehide", "pageshow"]) addEventListener(name, () => this.#tick(true));
  }

  /** A bake from before this page was opened. @param {Bake} bake @param {number} seen */
  #find(bake, seen) {
    this.#bake = bake;
    // a reading may lie ahead: logged while the device's clock was, or its minute typed so
    const ahead = seen >= bake.started && latest(bake) - seen > SEEN_EVERY_ms;
    const known = ahead ? seen : Math.max(seen, latest(bake));
    const lost = behind(bake, known);
    if (lost > 0) {
      bake.shift += lost;
      this.#sayBack(`at least ${spanWords(lost)} while this page was closed. Minutes since then may be too few`);
    }
    const now = this.#clock.now(bake);
    const alone = now - known;
    this.#left = !bake.ended && (alone > LEFT_ms || (alone > LEFT_ms / 4 && dayOf(bake, known) !== dayOf(bake, now)));
    if (!this.#left) this.#go("");
  }

  /** What cannot be read can still be taken away by hand. */
  #showUnread() {
    for (const unread of unreadBakes()) {
      const drop = async () => {
        if (!(await ask(this, "Delete what could not be read? It cannot be brought back.", "Delete it"))) return;
        dropUnread(unread);
        note(this, unread.key, "");
      };
      note(this, unread.key, UNREAD, [
        { words: "Save it as a file", act: () => saveAsFile("unread-bake.json", unread.text, "application/json") },
        { words: "Delete it", act: () => void drop() },
      ]);
    }
  }

  /** @param {string} words */
  #sayBack(words) {
    note(this, "clock", "");
    note(this, "clock", `This device's clock was set back by ${words}. ${AGAIN}`);
    this.#keep();
  }

  /** @param {import("./device-clock.mjs").Look} look */
  #sayRight({ right, rest }) {
    const more = rest > 0 ? `, unless the clock is still ahead by about ${about(rest)}` : "";
    for (const one of ["clock-right", "clock-ahead"]) note(this, one, "");
    note(
      this,
      "clock-right",
      `This device's clock had been ahead by about ${about(right)} and was put right: the minutes of this bake are right ` +
        `again${more}. Readings logged meanwhile, and a pull marked meanwhile, have minutes that are too late by as much: ` +
        `correct or delete those readings, and take the pull back. ${AGAIN}`,
    );
    this.#panel?.say("This device's clock was put right: check the readings.");
  }

  /** The bake runs, or its log is shown. @param {string} told */
  #go(told) {
    this.#left = false;
    if (this.#bake && !this.#bake.ended) {
      this.#form?.warm();
      void this.#awake.hold();
    }
    this.#push(told);
  }

  #start() {
    this.#bake = newBake(Date.now(), this.#form?.own() ?? {});
    for (const one of [...OF_CLOCK, "zone", "deleted"]) note(this, one, "");
    this.#go("The clock runs. Add the metal's temperature now.");
    this.#panel?.goToTitle();
  }

  /** @param {string} act */
  async #act(act) {
    const bake = this.#bake;
    if (act === "start") return this.#start();
    if (!bake) return;
    if (act === "sound") return this.#sound();
    if (act === "pulled") return this.#pulled(bake);
    if (act === "save") return this.#save(bake);
    if (act === "print") return print();
    if (act === "go-on" || act === "end") {
      bake.ended = act === "end";
      if (bake.ended) this.#awake.release();
      this.#go(bake.ended ? "The bake has ended. Its log is below." : "The bake goes on.");
      return this.#panel?.goToTitle();
    }
    const lost = act === "throw-away" || (!bake.saved && bake.readings.length > 0);
    const [question, yes] =
      act === "new"
        ? [`Start anew? ${readingsOf(bake)} of this bake are not saved as a file, and are gone then.`, "Start anew"]
        : [`Throw away this bake and its ${readingsOf(bake)}? They are gone then.`, "Throw it away"];
    if (lost && !(await ask(this, question, yes))) return;
    this.#forget(act === "throw-away");
    this.#panel?.at('[data-act="start"]').focus();
  }

  /** @param {(hand: Hand) => void} does */
  #hand(does) {
    if (this.#bake && this.#panel) does(new Hand(this.#bake, this.#panel, this.#clock.now(this.#bake), (told) => this.#push(told)));
  }

  #setStart() {
    const started = this.#bake?.started;
    this.#hand((hand) => hand.setStart());
    if (this.#bake?.started !== started) this.#clock.forget();
  }

  #sound() {
    if (this.#alarm.on) this.#alarm.turnOff();
    else if (!this.#alarm.turnOn()) this.#panel?.say("This browser gives a page no sound.");
    this.#show();
  }

  /** @param {Bake} bake */
  #pulled(bake) {
    // a temperature that was typed and not added is the one at the pull
    if (bake.pulled === null && this.#panel?.field("#beside-reading").value.trim()) this.#hand((hand) => hand.add());
    bake.pulled = bake.pulled === null ? this.#clock.now(bake) : null;
    bake.saved = false;
    const late = bake.pulled !== null && bake.pulled - (lastReading(bake)?.at ?? bake.started) > MINUTE_ms;
    const more = late ? " Nothing since the last reading is counted: read the metal now, if you can." : "";
    this.#push(bake.pulled === null ? "The pull is taken back." : `Pulled at ${clockTime(bake, bake.pulled)}.${more}`);
  }

  /** @param {Bake} bake */
  #save(bake) {
    saveAsFile(fileName(bake), fileText(bake, this.#form?.rest() ?? {}));
    bake.saved = true;
    this.#keep();
    this.#panel?.say("The log is saved as a file.");
  }

  /** @param {boolean} restore what the form held before */
  #forget(restore) {
    const bake = this.#bake;
    this.#bake = null;
    this.#left = false;
    this.#answer = undefined;
    this.#figures = null;
    this.#awake.release();
    keep(null);
    for (const one of [...OF_CLOCK, "zone", "apart", "example", "deleted", "unkept"]) note(this, one, "");
    if (restore && bake && bake.wrote !== "" && this.#form?.own().log === bake.wrote) this.#form.put(bake.before);
    this.#panel?.say("");
    this.#show();
  }

  /**
   * Gives the form this bake's readings.
   * @param {string} told what to read out, with the answer if there will be one
   * @param {boolean} [over] also where the form holds another log
   */
  #push(told, over = false) {
    const bake = this.#bake;
    const form = this.#form;
    if (!bake || !form) return;
    const apart = !over && form.isApart(bake);
    const asks = !apart && bake.readings.length > 0;
    this.#told = asks ? told : "";
    this.#answer = undefined;
    if (!asks) this.#figures = null;
    if (!asks && told !== "") this.#panel?.say(told);
    if (asks) form.write(bake);
    else if (!apart) form.takeOut(bake);
    this.#keep();
    this.#show();
  }

  /** @param {Response | null} response */
  #take(response) {
    const bake = this.#bake;
    if (!bake || this.#left || !this.#form) return;
    if (bake.readings.length > 0 && this.#form.own().log === bake.wrote) {
      this.#answer = response;
      this.#figures = response?.ok ? figuresOf(bake, response.answers) : null;
      if (response) this.#again = { at: 0, wait_ms: RETRY_ms };
      else this.#again = { at: performance.now() + this.#again.wait_ms, wait_ms: Math.min(2 * this.#again.wait_ms, LONGEST_RETRY_ms) };
      if (this.#told !== "") this.#panel?.say(`${this.#told} ${troubleOf(response) || response?.headline}.`);
      this.#told = "";
    } else if (this.#form.isApart(bake)) {
      this.#answer = undefined;
      this.#figures = null;
    }
    this.#show();
    this.#tick();
  }

  #keep() {
    note(this, "unkept", keep(this.#bake) ? "" : UNKEPT);
  }

  /** Another tab has changed the bake. */
  #follow() {
    const { bake } = recall();
    this.#showUnread();
    if (!bake) return this.#forget(false);
    const same = JSON.stringify(bake) === JSON.stringify(this.#bake);
    this.#bake = bake;
    this.#left = false;
    if (bake.ended) this.#awake.release();
    note(this, "deleted", "");
    if (!same) this.#push("");
  }

  /** @param {boolean} [always] */
  #tick(always = false) {
    const bake = this.#bake;
    if (!bake || this.#left) return;
    const look = this.#clock.look(bake);
    if (look.lost > 0) {
      bake.shift += look.lost;
      this.#sayBack(`${spanWords(look.lost)}. The minutes of this bake go on as before`);
    }
    if (look.right > 0) this.#sayRight(look);
    if (look.ahead > AHEAD_ms && !bake.ended) {
      note(this, "clock-ahead", `This device's clock went ahead by ${about(look.ahead)}, or the device slept. Compare with another clock.`);
      this.#panel?.say("This device's clock may be ahead: compare it with another.");
    }
    const seen = this.#look();
    if (always || look.lost + look.right > 0 || Math.abs(seen.now - this.#seen) >= SEEN_EVERY_ms) {
      this.#seen = seen.now;
      keepSeen(seen.now);
      note(this, "zone", zoneMoved(bake) ? ZONE : "");
    }
    if (bake.ended) return;
    this.#panel?.tick(bake, seen);
    this.#watch.look(bake.pulled === null ? pullAt(this.#figures?.due ?? null) : null, seen.now);
    if (this.#answer === null && performance.now() >= this.#again.at) this.#push("");
  }

  #look() {
    const bake = this.#bake;
    const now = bake ? this.#clock.now(bake) : 0;
    const { on: sound } = this.#alarm;
    return { bake, left: this.#left, answer: this.#answer, figures: this.#figures, now, sound, screen: this.#awake.state };
  }

  #show() {
    this.#panel?.show(this.#look());
  }
}

customElements.define("bake-beside", BakeBeside);
