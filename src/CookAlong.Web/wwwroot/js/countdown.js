// Writes the digits and the running bars. The server has sent when things end, never ticks.

import { now } from "./clock.js";
import { roughly } from "./words.js";

/**
 * The same shapes as WallClock.Left on the server: "2:40", from 100 minutes on "1 h 45", past the end "+0:30".
 * @param {number} left ms
 */
export function digits(left) {
  const seconds = Math.ceil(Math.abs(left) / 1000);
  const two = (/** @type {number} */ n) => String(n).padStart(2, "0");
  const text = seconds >= 6000
    ? `${Math.floor(seconds / 3600)} h ${two(Math.floor(seconds / 60) % 60)}`
    : `${Math.floor(seconds / 60)}:${two(seconds % 60)}`;
  return left < 0 ? `+${text}` : text;
}

/**
 * @param {Element} root
 * @param {{ minutes(at: number): string }} clock
 */
export function tick(root, clock) {
  const at = now();
  for (const one of root.querySelectorAll("[data-due]")) {
    const left = Number(one.getAttribute("data-due")) - at;
    write(one, digits(one.hasAttribute("data-stops") ? Math.max(0, left) : left));
  }
  for (const one of root.querySelectorAll("[data-roughly]")) write(one, roughly(Number(one.getAttribute("data-roughly")) - at));
  for (const one of root.querySelectorAll("[data-clock]")) write(one, clock.minutes(at));
  for (const one of root.querySelectorAll("[data-grow]")) grow(one, at);
}

/** @param {Element} element @param {string} text */
function write(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

/** @param {Element} element @param {string} name @param {string} value */
function set(element, name, value) {
  if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}

/** @param {Element} element @param {number} at */
function grow(element, at) {
  const from = Number(element.getAttribute("data-from"));
  const to = Number(element.getAttribute("data-to"));
  const percent = to <= from ? 100 : Math.min(100, Math.max(0, (100 * (at - from)) / (to - from))).toFixed(1);
  if (element.getAttribute("data-grow") === "width") set(element, "width", String(percent));
  else set(element, "stroke-dasharray", `${percent} 100`);
}
