// What every live page does alike, whatever it shows.

import { sample } from "./clock.js";

/** Without a socket a page is asked for now and then, which also says that the server is there. */
const BEAT = 4_000;

/**
 * The page itself is the first reading of the server's clock.
 * @param {HTMLElement} live @param {boolean} isKept a copy is no reading
 * @returns {number} when the page was drawn, by the server's clock
 */
export function firstReading(live, isKept) {
  const drawn = Number(live.querySelector("#part")?.getAttribute("data-now"));
  const [page] = /** @type {PerformanceNavigationTiming[]} */ (performance.getEntriesByType("navigation"));
  if (page && drawn && !isKept) sample(performance.timeOrigin + page.requestStart, drawn, performance.timeOrigin + page.responseEnd);
  return drawn;
}

/**
 * Looks and sends again, for ever.
 * @param {{ isOpen(): boolean }} hub @param {number} beatsWithSocket a socket brings news by itself, so a look is due only after so many beats
 * @param {() => void} look @param {() => void} flush
 */
export function beat(hub, beatsWithSocket, look, flush) {
  let beats = 0;
  setInterval(() => {
    if (!hub.isOpen() || ++beats % beatsWithSocket === 0) look();
    flush();
  }, BEAT);
}
