// What the script shows outside the board: that nobody answers, what rings, what waits to be sent, what was refused.

import { root } from "./root.js";
import * as words from "./words.js";

/** @typedef {import("./calls.js").Ringing} Ringing */
/** @typedef {import("./outbox.js").Tap} Tap */

const SAID_FOR = 8_000;

/** @param {string | null} since hh:mm:ss @param {(since: string) => string} sentence */
export function showCutOff(since, sentence = words.cutOff) {
  const strip = /** @type {HTMLElement} */ (document.getElementById("cut-off"));
  if (strip.hidden !== (since === null)) strip.hidden = since === null;
  const text = since === null ? "" : sentence(since);
  if (strip.textContent !== text) strip.textContent = text;
}

/** @param {string} sentence @param {boolean} stays until somebody touches it: who tapped may not be looking any more */
export function say(sentence, stays = false) {
  const said = document.getElementById("said");
  // Who taps once more is told once more, and not twice: a pile of one sentence covers the board.
  for (const before of said?.querySelectorAll("p") ?? []) if (before.firstChild?.textContent === sentence) before.remove();
  const line = document.createElement("p");
  line.textContent = sentence;
  said?.append(line);
  if (!stays) {
    setTimeout(() => line.remove(), SAID_FOR);
    return;
  }
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = words.understood;
  line.className = "stays";
  line.append(" ", button);
  line.addEventListener("click", () => line.remove());
}

/**
 * A strip for each call that rings and that the board below does not show yet, and the way to make this screen quiet.
 * @param {Ringing[]} ringing @param {Element} live @param {boolean} isArmed a device that makes no sound need not be made quiet
 */
export function showRinging(ringing, live, isArmed) {
  const strip = /** @type {HTMLElement} */ (document.getElementById("ringing"));
  const loud = ringing.filter((call) => !call.quiet);
  strip.replaceChildren(...ringing.filter((call) => !isOnBoard(call, live)).map(row), ...(isArmed && loud.length > 0 ? [quietButton(loud.length)] : []));
}

/** @param {Ringing} call */
function row(call) {
  const row = document.createElement("div");
  row.className = call.priority;
  const text = document.createElement("p");
  const word = document.createElement("span");
  word.className = "word";
  word.textContent = call.unanswered ? `${words.priority[call.priority]}. ${words.nobodyHasIt}` : words.priority[call.priority];
  text.append(word, " ", call.text);
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = words.haveIt;
  button.setAttribute("data-tap", JSON.stringify({ kind: "acknowledge", call: call.callId }));
  row.append(text, button);
  return row;
}

/** @param {number} calls */
function quietButton(calls) {
  const button = document.createElement("button");
  button.type = "button";
  button.className = "quiet";
  button.textContent = words.quiet(calls);
  button.setAttribute("data-quiet", "");
  return button;
}

/** @param {Ringing} call @param {Element} live */
const isOnBoard = (call, live) => [...live.querySelectorAll("[data-about]")].some((one) => one.getAttribute("data-about") === call.callId);

/** @param {Element} live @param {Tap[]} waiting */
export function showWaiting(live, waiting) {
  const commands = new Set(waiting.map((tap) => JSON.stringify(tap.command)));
  for (const button of live.querySelectorAll("[data-tap]")) button.toggleAttribute("data-waiting", commands.has(JSON.stringify(JSON.parse(/** @type {string} */ (button.getAttribute("data-tap"))))));
  const outbox = /** @type {HTMLElement} */ (document.getElementById("outbox"));
  if (outbox.hidden && waiting.length === 0) return;
  outbox.hidden = waiting.length === 0;
  outbox.querySelector("ul")?.replaceChildren(...waiting.map((tap) => {
    const line = document.createElement("li");
    line.textContent = words.waiting(tap.label);
    return line;
  }));
}

/** In place of the board, once this screen has left the kitchen. @param {string} why */
export function farewell(why) {
  const page = document.createElement("main");
  page.className = "moment";
  const heading = document.createElement("h1");
  heading.textContent = words.outside;
  const text = document.createElement("p");
  text.textContent = why;
  const back = document.createElement("p");
  const link = document.createElement("a");
  link.href = `${root}join`;
  link.textContent = words.joinAgain;
  back.append(link);
  page.append(heading, text, back);
  return page;
}
