// The server's time on a device whose own clock may be minutes wrong: the offset of the quickest of the last round trips.

const KEPT = 8;

/** @type {{ roundTrip: number, offset: number }[]} */
let samples = [];
let key = "cookalong.offset";
let offset = Number(localStorage.getItem(key) ?? 0);

/** Seconds of the run in one of this device's; more than 1 in a rehearsal only. */
let rate = 1;

/** A rehearsal's clock is its own. @param {string} run @param {number} times how fast it runs */
export function rehearse(run, times) {
  rate = times;
  key = `cookalong.offset.${run}`;
  offset = Number(localStorage.getItem(key) ?? 0);
}

/**
 * @param {number} sent this device's ms when the question left
 * @param {number} server the server's ms when it answered
 * @param {number} received this device's ms when the answer came
 */
export function sample(sent, server, received) {
  samples = [...samples, { roundTrip: received - sent, offset: server - (rate * (sent + received)) / 2 }].slice(-KEPT);
  offset = samples.reduce((best, one) => (one.roundTrip < best.roundTrip ? one : best)).offset;
  // A page that is loaded anew while the server is away has nobody to ask.
  localStorage.setItem(key, String(Math.round(offset)));
}

/** Forgets what it knew, because the device slept or its clock was set. */
export function forget() {
  samples = [];
}

/** This device's ms at that moment of the server's. @param {number} server */
export const here = (server) => (server - offset) / rate;

/** The server's ms, as well as this device knows. */
export const now = () => there(Date.now());

/** The server's ms at that moment of this device's. @param {number} local */
export const there = (local) => rate * local + offset;

/** How long that many ms of this device are on the run's clock. @param {number} ms */
export const stretched = (ms) => rate * ms;

/** @param {string} zone IANA name of the kitchen's time zone */
export function wallClock(zone) {
  const short = new Intl.DateTimeFormat("en-GB", { timeZone: zone, hour: "2-digit", minute: "2-digit", hourCycle: "h23" });
  const long = new Intl.DateTimeFormat("en-GB", { timeZone: zone, hour: "2-digit", minute: "2-digit", second: "2-digit", hourCycle: "h23" });
  return {
    minutes: (/** @type {number} */ at) => short.format(at),
    seconds: (/** @type {number} */ at) => long.format(at),
  };
}
