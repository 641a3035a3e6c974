// Taps wait here until the server has answered them, across reloads and power cuts of this device.
// A command's id makes a repeated sending harmless, so whatever is in doubt is simply sent again, in order.

import * as words from "./words.js";

/** @typedef {{ kind: string } & Record<string, unknown>} Command */
/** @typedef {{ commandId: string, saw: number, command: Command, label: string, at: number }} Tap at is when it was tapped, this device's ms */
/** @typedef {{ accepted: boolean, sequence?: number, reason?: string }} Answer */

/** A tap that hangs on its way holds up all that wait behind it; it is sent again under the same id. */
const ANSWERS_WITHIN = 4_000;

/** A random UUID; crypto.randomUUID is missing on pages without HTTPS. */
export function newId() {
  if (typeof crypto.randomUUID === "function") return crypto.randomUUID();
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}

/** @param {Command} command @param {number} saw @param {string} label @returns {Tap} */
export const tap = (command, saw, label) => ({ commandId: newId(), saw, command, label, at: Date.now() });

/** What a tap is about. @param {Command} command */
const thing = (command) => command.step ?? command.call ?? command.line ?? command.dish ?? "the kitchen";

/**
 * Sends a tap by HTTP. Rejects when the server could not be reached.
 * @param {string} address @param {object} request @param {string} refused what to say to somebody who is not let in
 * @returns {Promise<Answer>}
 */
export async function post(address, request, refused) {
  const response = await fetch(address, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(request),
    redirect: "manual",
    signal: AbortSignal.timeout(ANSWERS_WITHIN),
  });
  if (response.ok) return response.json();
  if (response.type === "opaqueredirect" || [401, 403, 404].includes(response.status)) return { accepted: false, reason: refused };
  if (response.status >= 400 && response.status < 500 && response.status !== 408 && response.status !== 429) return { accepted: false, reason: words.notUnderstood };
  throw new Error(`The server answered ${response.status}.`);
}

/**
 * @param {{
 *   run: string,
 *   store: Pick<Storage, "getItem" | "setItem">,
 *   send(tap: Tap): Promise<Answer>,
 *   answered(tap: Tap, answer: Answer): void,
 *   changed(waiting: Tap[]): void,
 * }} kitchen send rejects when the server could not be reached
 */
export function outbox({ run, store, send, answered, changed }) {
  const key = `cookalong.outbox.${run}`;
  /** @type {Tap[]} */
  let waiting = JSON.parse(store.getItem(key) ?? "[]");
  let sending = false;

  /** @param {Tap[]} taps */
  const keep = (taps) => {
    waiting = taps;
    store.setItem(key, JSON.stringify(taps));
    changed(taps);
  };

  return {
    waiting: () => waiting,

    /** Puts a tap in; a second tap on the same thing while the first waits is the same tap, unless another about it came between. */
    add(/** @type {Command} */ command, /** @type {number} */ saw, /** @type {string} */ label) {
      const last = waiting.filter((one) => thing(one.command) === thing(command)).at(-1);
      if (last && JSON.stringify(last.command) === JSON.stringify(command)) return;
      keep([...waiting, tap(command, saw, label)]);
    },

    /** Sends what waits, one after the other, and stops at the first that the server does not answer. */
    async flush() {
      if (sending) return;
      sending = true;
      try {
        while (waiting.length > 0) {
          const first = waiting[0];
          const answer = await send(first);
          keep(waiting.filter((one) => one.commandId !== first.commandId));
          answered(first, answer);
        }
      } catch {
        // The server is away: the tap stays where it is, and whoever brings the server back calls again.
      } finally {
        sending = false;
      }
    },
  };
}
