// The schedule of calls, held by every device: it rings at its time whether or not the server is there to say so.

import { now, stretched } from "./clock.js";

/** @typedef {{ callId: string, dueUtc: number, kind: string, priority: "high" | "medium" | "low", text: string, step: string | null, everybodyUtc: number | null, acknowledged: boolean }} Call */

/** @typedef {Call & { unanswered: boolean, quiet: boolean }} Ringing */

const MERGED_WITHIN = 5_000;

/** What was due longer ago when a page was opened is shown on its board and startles nobody, unless it is urgent. */
const RINGS_FOR = 10 * 60_000;

/** How long after it has come to everybody a call nobody has answered goes beyond the kitchen; the server does that. */
const BEYOND_AFTER = 60_000;

/** How long until an unanswered call sounds again; low ones sound once. */
const AGAIN = { high: 10_000, medium: 30_000, low: Infinity };

const RANK = { high: 2, medium: 1, low: 0 };

/**
 * Calls due within five seconds of the first are one ringing, with the voice of the most urgent.
 * @param {Call[]} due
 * @returns {{ priority: Call["priority"], calls: Call[] }[]}
 */
export function merge(due) {
  /** @type {{ from: number, priority: Call["priority"], calls: Call[] }[]} */
  const groups = [];
  for (const call of [...due].sort((a, b) => a.dueUtc - b.dueUtc)) {
    const last = groups.at(-1);
    if (last && call.dueUtc - last.from <= MERGED_WITHIN) {
      last.calls.push(call);
      if (RANK[call.priority] > RANK[last.priority]) last.priority = call.priority;
    } else {
      groups.push({ from: call.dueUtc, priority: call.priority, calls: [call] });
    }
  }
  return groups;
}

/**
 * Whom a call has reached by now: 0 those it concerns, 1 every screen, 2 what is beyond the page.
 * @param {Call} call @param {number} at
 */
const reach = (call, at) =>
  call.everybodyUtc === null || at < call.everybodyUtc ? 0 : at < call.everybodyUtc + BEYOND_AFTER ? 1 : 2;

/**
 * @param {{
 *   concerns(call: Call): boolean,
 *   joinsIn(call: Call): boolean,
 *   sound(priority: Call["priority"], texts: string[]): void,
 *   show(calls: Ringing[]): void,
 *   came(): void,
 * }} device
 *   concerns says whether a call rings on this device from its time on, joinsIn whether it does once nobody has answered;
 *   show gets what rings now; came is told once when a call's time has come
 */
export function schedule({ concerns, joinsIn, sound, show, came }) {
  /** @type {Call[]} */
  let calls = [];
  /** @type {Map<string, number>} call to the due time for which somebody has it; moved to another time it may ring again */
  const silenced = new Map();
  /** @type {Map<string, number>} call to when it sounded last */
  const sounded = new Map();
  /** @type {Map<string, string>} call to its due time and reach when somebody wanted quiet here; it sounds again when it reaches further */
  const quieted = new Map();
  let shown = "";
  /** @type {number | null} when the first schedule came, the server's ms */
  let opened = null;

  const isOld = (/** @type {Call} */ call) => call.priority !== "high" && opened !== null && opened - call.dueUtc >= RINGS_FOR;

  const due = (/** @type {number} */ at) =>
    calls.filter((call) => call.dueUtc <= at && !isOld(call) && !call.acknowledged && silenced.get(call.callId) !== call.dueUtc
      && (concerns(call) || (reach(call, at) > 0 && joinsIn(call))));

  const isQuiet = (/** @type {Call} */ call, /** @type {number} */ at) => quieted.get(call.callId) === `${call.dueUtc} ${reach(call, at)}`;

  const told = (/** @type {Call} */ call, /** @type {number} */ at) => ({ ...call, unanswered: reach(call, at) > 0, quiet: isQuiet(call, at) });

  return {
    /** The whole schedule, as the server has it. */
    set(/** @type {Call[]} */ all) {
      opened ??= now();
      calls = all;
      // What the server no longer waits for is answered there; should it come back, that answer was taken back and it rings anew.
      for (const id of new Set([...silenced.keys(), ...sounded.keys()])) {
        if (!all.some((call) => call.callId === id && !call.acknowledged)) for (const known of [silenced, sounded, quieted]) known.delete(id);
      }
      this.tick();
    },

    /** Acknowledged, here or anywhere. */
    silence(/** @type {string} */ callId) {
      const call = calls.find((one) => one.callId === callId);
      if (call) silenced.set(callId, call.dueUtc);
      this.tick();
    },

    /** Somebody has begun it, which answers the call to. */
    begun(/** @type {string} */ step) {
      for (const call of calls) if (call.step === step && call.kind === "begin") silenced.set(call.callId, call.dueUtc);
      this.tick();
    },

    /** The acknowledgement was refused: it is not answered after all. */
    speakAgain(/** @type {string} */ callId) {
      silenced.delete(callId);
      this.tick();
    },

    /** This device says no more of what rings now. That answers nobody's call: it goes on to others, and comes back when it does. */
    quiet() {
      const at = now();
      for (const call of due(at)) quieted.set(call.callId, `${call.dueUtc} ${reach(call, at)}`);
      shown = "";
      this.tick();
    },

    ringing: () => due(now()).map((call) => told(call, now())),

    tick() {
      const at = now();
      const ringing = due(at);
      for (const group of merge(ringing.filter((call) => !isQuiet(call, at)))) {
        const last = Math.max(...group.calls.map((call) => sounded.get(call.callId) ?? -Infinity));
        if (last === -Infinity) came();
        // A call that joins a ringing one is part of that ringing and starts no second one.
        if (at - last >= stretched(AGAIN[group.priority])) {
          sound(group.priority, group.calls.map((call) => call.text));
          for (const call of group.calls) sounded.set(call.callId, at);
        }
      }
      const key = ringing.map((call) => `${call.callId} ${reach(call, at)} ${isQuiet(call, at)}`).join();
      if (key !== shown) {
        shown = key;
        show(ringing.map((call) => told(call, at)));
      }
    },
  };
}
