// The shopping list in the browser. The server draws the list; here a tap is shown at once, kept and sent.

import { moved, showOrder } from "./aisles.js";
import { costSheet, showCost } from "./cost.js";
import { here, there, wallClock } from "./clock.js";
import { forgetKept, keepPage, keepPart, keptPart } from "./keep.js";
import { line } from "./line.js";
import { newId, outbox, post } from "./outbox.js";
import { beat, firstReading } from "./page.js";
import { patcher } from "./patch.js";
import { root } from "./root.js";
import { farewell, say, showCutOff, showWaiting } from "./signs.js";
import { asText } from "./text.js";
import * as words from "./words.js";

/** @typedef {"open" | "bought" | "cupboard"} Mark */
/** @typedef {import("./outbox.js").Command} Command */

const live = /** @type {HTMLElement} */ (document.getElementById("live"));
const meal = /** @type {string} */ (live.dataset.meal);
const part = /** @type {string} */ (live.dataset.part);
const clock = wallClock(/** @type {string} */ (live.dataset.zone));
const notLetIn = /** @type {string} */ (live.dataset.notLetIn);
const isKept = live.hasAttribute("data-kept");

/** Others' taps are news; what else changes a list, its meal and the household's settings, may take half a minute. */
const BEATS_WITH_SOCKET = 8;

const drawn = firstReading(live, isKept);
let left = false;

/**
 * The last tap made here about each thing, shown until a list knows of it: one that was asked for before the tap may come after its answer.
 * @type {Map<string, { command: Command, sequence: number }>} the list's sequence that has it; none while it waits
 */
const mine = new Map();

/** @param {Command} command */
const about = ({ kind, line = "" }) => `${kind} ${line}`;

const taps = outbox({
  run: `shopping.${meal}`,
  store: localStorage,
  send: (tap) => post(`${root}meals/${meal}/shopping/taps`, { commandId: tap.commandId, command: tap.command }, notLetIn),
  answered(tap, answer) {
    const last = mine.get(about(tap.command));
    if (!answer.accepted) {
      if (last?.command === tap.command) mine.delete(about(tap.command));
      say(`${tap.label}: ${answer.reason}`);
      show();
    } else if (last?.command === tap.command) {
      last.sequence = /** @type {number} */ (answer.sequence);
    }
    look();
  },
  changed: show,
});
remember();

function remember() {
  for (const { command } of taps.waiting()) mine.set(about(command), { command, sequence: Infinity });
}

const sequence = () => Number(live.querySelector("#part")?.getAttribute("data-sequence") ?? 0);

const patch = patcher(live, patched, (html) => keepPart(part, html));

function patched() {
  for (const [key, own] of mine) if (own.sequence <= sequence()) mine.delete(key);
  show();
}

function show() {
  const waiting = taps.waiting();
  const keys = new Set(waiting.filter((tap) => tap.command.kind === "mark" || tap.command.kind === "price").map((tap) => tap.command.line));
  for (const item of /** @type {NodeListOf<HTMLElement>} */ (live.querySelectorAll("li[data-key]"))) {
    const key = /** @type {string} */ (item.dataset.key);
    const mark = String(mine.get(`mark ${key}`)?.command.as ?? item.dataset.state);
    item.dataset.shown = mark;
    item.toggleAttribute("data-waiting", keys.has(key));
    for (const button of item.querySelectorAll("[data-mark]")) button.setAttribute("aria-pressed", String(button.getAttribute("data-mark") === mark));
  }
  const open = live.querySelector(".left b");
  if (open) open.textContent = String(live.querySelectorAll("section:not([data-at-home]) [data-shown=open]").length);
  const currency = mine.get("currency ")?.command.code ?? live.querySelector("#part")?.getAttribute("data-currency");
  showCost(live, (key) => /** @type {number | null | undefined} */ (mine.get(`price ${key}`)?.command.price), String(currency ?? ""));
  for (const button of live.querySelectorAll("[data-share]")) button.toggleAttribute("hidden", !("share" in navigator));
  const order = /** @type {string[] | undefined} */ (mine.get("aisles ")?.command.order) ?? live.querySelector(".aisles")?.getAttribute("data-order")?.split(" ");
  if (order) showOrder(live, order);
  showWaiting(live, waiting);
}

async function look() {
  if (left) return;
  const outcome = await patch.refresh();
  if (outcome === "out") leave();
  else if (outcome !== "away") hub.heard();
}

const hub = line({
  run: meal,
  enter: "EnterShopping",
  heardAt: isKept ? here(drawn) : Date.now(),
  entered() {
    taps.flush();
    look();
  },
  refused: () => look(),
  handlers: { Shopping: () => look() },
});

function leave() {
  left = true;
  hub.close();
  forgetKept();
  sheet.close();
  live.replaceChildren(farewell(notLetIn));
  document.getElementById("add")?.remove();
}

/** @param {Command} command @param {string} label */
function tap(command, label) {
  taps.add(command, sequence(), label);
  remember();
  show();
  taps.flush();
}

/** @param {Element} item */
const nameOf = (item) => item.querySelector(".what")?.textContent ?? "";

/** Typed in here, and on no list from the server yet. */
const added = () => [...mine.values()].map(({ command }) => command).filter(({ kind }) => kind === "add").map(({ text }) => String(text));

const sheet = costSheet((item, price) => tap({ kind: "price", line: item.dataset.key, price }, words.cost(nameOf(item), price)));

/** @param {Element} button */
const labelOf = (button) => /** @type {string} */ (button.textContent).replace(/\s+/g, " ").trim();

document.addEventListener("click", (event) => {
  const button = event.target instanceof Element ? event.target.closest("button") : null;
  const item = /** @type {HTMLElement | null | undefined} */ (button?.closest("li[data-key]"));
  if (!button) return;
  if (button.dataset.mark && item) {
    const key = /** @type {string} */ (item.dataset.key);
    const mark = /** @type {Mark} */ (item.dataset.shown === button.dataset.mark ? "open" : button.dataset.mark);
    tap({ kind: "mark", line: key, as: mark, amount: item.dataset.amount ?? "" }, `${words.marked[mark]}: ${nameOf(item)}`);
  } else if ("cost" in button.dataset && item) {
    sheet.open(item, words.whatItCost(nameOf(item)));
  } else if (button.dataset.move) {
    tap({ kind: "aisles", order: moved(button, Number(button.dataset.move)) }, labelOf(button));
  } else if (button.dataset.tap) {
    tap(JSON.parse(button.dataset.tap), labelOf(button));
  } else if ("print" in button.dataset) {
    print();
  } else if ("copy" in button.dataset) {
    copy(asText(live, added()));
  } else if ("share" in button.dataset) {
    const text = asText(live, added());
    // Whoever closes the sheet meant to; where the device refuses, the text is still to be had.
    navigator.share({ text }).catch((/** @type {Error} */ refused) => refused.name === "AbortError" || copy(text));
  }
});

live.addEventListener("submit", (event) => {
  event.preventDefault();
  const code = /** @type {HTMLInputElement} */ (document.getElementById("currency-code")).value.toUpperCase();
  tap({ kind: "currency", code }, words.currency(code));
});

document.getElementById("add")?.addEventListener("submit", (event) => {
  event.preventDefault();
  const input = /** @type {HTMLInputElement} */ (document.getElementById("add-text"));
  const text = input.value.trim();
  if (text) tap({ kind: "add", line: newId(), text }, words.added(text));
  input.value = "";
});

/** The clipboard belongs to secure pages; elsewhere an old way still works. @param {string} text */
async function copy(text) {
  try {
    await navigator.clipboard.writeText(text);
    say(words.copied);
  } catch {
    const area = document.createElement("textarea");
    area.value = text;
    document.body.append(area);
    area.select();
    say(document.execCommand("copy") ? words.copied : words.notCopied);
    area.remove();
  }
}

setInterval(() => {
  const since = left ? null : hub.silentSince();
  showCutOff(since === null ? null : clock.seconds(there(since)), hub.isRestarting() ? words.restarting : words.shopAlone);
}, 250);
beat(hub, BEATS_WITH_SOCKET, look, taps.flush);
show();
if (isKept) keptPart(part).then((html) => html && patch.show(html));
else keepPage(meal, `${root}meals/`);
