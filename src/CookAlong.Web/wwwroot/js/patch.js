// Fetches the page's part again and morphs it in. A button never moves under a finger: while one is down the new part
// waits, and after a part that moved things no touch counts for a moment.

import { Idiomorph } from "../lib/idiomorph/idiomorph.esm.js";
import { sample } from "./clock.js";

const SETTLES_IN = 400;

/** Whoever waits longer for a board shows an old one. */
const ANSWERS_WITHIN = 4_000;

/** @typedef {"same" | "new" | "out" | "away"} Outcome */

/**
 * @param {HTMLElement} live
 * @param {() => void} patched told after a new part is shown
 * @param {(html: string) => void} keep gets every part that came
 */
export function patcher(live, patched, keep) {
  let tag = "";
  let fingers = 0;
  /** @type {string | null} */
  let waiting = null;
  /** @type {Promise<Outcome> | null} */
  let fetching = null;
  let again = false;

  live.addEventListener("pointerdown", () => fingers++);
  for (const end of ["pointerup", "pointercancel"]) {
    addEventListener(end, () => {
      fingers = 0;
      // After the click that this touch becomes.
      setTimeout(() => waiting !== null && fingers === 0 && apply(waiting), 0);
    });
  }

  /** @returns {Promise<Outcome>} */
  async function ask() {
    const sent = Date.now();
    const response = await fetch(/** @type {string} */ (live.dataset.part), {
      headers: tag ? { "If-None-Match": tag } : {},
      cache: "no-store",
      redirect: "manual",
      signal: AbortSignal.timeout(ANSWERS_WITHIN),
    });
    if (response.status === 304) return "same";
    // A redirect leads to the door: this screen's session has ended.
    if (response.type === "opaqueredirect" || [401, 403, 404].includes(response.status)) return "out";
    if (!response.ok) return "away";
    const html = await response.text();
    const time = /data-now="(\d+)"/.exec(html);
    if (time) sample(sent, Number(time[1]), Date.now());
    tag = response.headers.get("ETag") ?? "";
    if (fingers > 0) waiting = html;
    else apply(html);
    keep(html);
    return "new";
  }

  /** @param {string} html */
  function apply(html) {
    waiting = null;
    const before = places();
    const fresh = new DOMParser().parseFromString(html, "text/html").getElementById("part");
    Idiomorph.morph(/** @type {Element} */ (live.querySelector("#part")), /** @type {Element} */ (fresh), {
      morphStyle: "outerHTML",
      callbacks: {
        // The arm strip is the script's own, and what somebody is typing is theirs.
        beforeNodeMorphed: (/** @type {Node} */ old) =>
          !(old instanceof Element && old.hasAttribute("data-keep")) && !(old instanceof HTMLInputElement && old === document.activeElement),
        // What somebody has opened stays open.
        beforeAttributeUpdated: (/** @type {string} */ name, /** @type {Element} */ node) => !(name === "open" && node.tagName === "DETAILS"),
      },
    });
    patched();
    settle(before);
  }

  /** Where each thing that can be touched lies, and what it does: the second half of a double tap must not do the next thing. */
  function places() {
    return new Map([...live.querySelectorAll("button, summary, a")].map((one) => {
      const { x, y } = one.getBoundingClientRect();
      return [one, `${Math.round(x / 8)} ${Math.round(y / 8)} ${one.getAttribute("data-tap")}`];
    }));
  }

  /** @param {Map<Element, string>} before */
  function settle(before) {
    const after = places();
    if ([...after].every(([one, place]) => before.get(one) === place)) return;
    live.setAttribute("data-settling", "");
    setTimeout(() => live.removeAttribute("data-settling"), SETTLES_IN);
  }

  return {
    /** A part that was kept on this device, unless a newer one has come. */
    show: (/** @type {string} */ html) => tag === "" && apply(html),

    /** @returns {Promise<Outcome>} */
    async refresh() {
      if (fetching) {
        // News that came while one was on its way may not be in it.
        again = true;
        return fetching;
      }
      fetching = ask().catch(() => /** @type {Outcome} */ ("away"));
      const outcome = await fetching;
      fetching = null;
      if (again && outcome !== "away" && outcome !== "out") {
        again = false;
        return this.refresh();
      }
      again = false;
      return outcome;
    },
  };
}
