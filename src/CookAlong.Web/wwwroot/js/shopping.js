// The shopping list in the browser. The server draws the list; here a tap is shown at once, kept and sent.

import { here, sample, there, wallClock } from "./clock.js";
import { keepPage, keepPart, keptPart } from "./keep.js";
import { line } from "./line.js";
import { newId, outbox } from "./outbox.js";
import { patcher } from "./patch.js";
import { farewell, say, showCutOff, showWaiting } from "./signs.js";
import * as words from "./words.js";

/** @typedef {"open" | "bought" | "cupboard"} Mark */

const live = /** @type {HTMLElement} */ (document.getElementById("live"));
const meal = /** @type {string} */ (live.dataset.meal);
const part = /** @type {string} */ (live.dataset.part);
const clock = wallClock(/** @type {string} */ (live.dataset.zone));
const isKept = live.hasAttribute("data-kept");

/** Without a socket the list is asked for now and then, which also says that the server is there. */
const BEAT = 4_000;
const BEATS_WITH_SOCKET = 8;

const drawn = Number(live.querySelector("#part")?.getAttribute("data-now"));
const [page] = /** @type {PerformanceNavigationTiming[]} */ (performance.getEntriesByType("navigation"));
if (page && drawn && !isKept) sample(performance.timeOrigin + page.requestStart, drawn, performance.timeOrigin + page.responseEnd);

let left = false;

/** What was tapped here and is on no list from the server yet. @type {Map<string, Mark>} */
const mine = new Map();

const taps = outbox({
  run: `shopping.${meal}`,
  store: localStorage,
  send: (tap) => post({ commandId: tap.commandId, command: tap.command }),
  answered(tap, answer) {
    if (!answer.accepted) {
      mine.delete(String(tap.command.line));
      say(`${tap.label}: ${answer.reason}`);
    }
    look();
  },
  changed: show,
});
for (const { command } of taps.waiting()) if (command.kind === "mark") mine.set(String(command.line), /** @type {Mark} */ (command.as));

/** @param {object} request */
async function post(request) {
  const response = await fetch(`/meals/${meal}/shopping/taps`, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(request),
    redirect: "manual",
  });
  if (response.ok) return response.json();
  if (response.type === "opaqueredirect" || [401, 403, 404].includes(response.status)) return { accepted: false, reason: words.notOnThisList };
  if (response.status >= 400 && response.status < 500 && response.status !== 408 && response.status !== 429) return { accepted: false, reason: words.notUnderstood };
  throw new Error(`The server answered ${response.status}.`);
}

const patch = patcher(live, patched, (html) => keepPart(part, html));

/** A list from the server knows of everything that it has answered. */
function patched() {
  const waiting = new Set(taps.waiting().map((tap) => tap.command.line));
  for (const key of [...mine.keys()]) if (!waiting.has(key)) mine.delete(key);
  show();
}

function show() {
  const waiting = taps.waiting();
  const keys = new Set(waiting.filter((tap) => tap.command.kind === "mark").map((tap) => String(tap.command.line)));
  for (const item of /** @type {NodeListOf<HTMLElement>} */ (live.querySelectorAll("li[data-key]"))) {
    const key = /** @type {string} */ (item.dataset.key);
    const mark = mine.get(key) ?? item.dataset.state;
    item.dataset.shown = mark;
    item.toggleAttribute("data-waiting", keys.has(key));
    for (const button of item.querySelectorAll("[data-mark]")) button.setAttribute("aria-pressed", String(button.getAttribute("data-mark") === mark));
  }
  const open = live.querySelector(".left b");
  if (open) open.textContent = String(live.querySelectorAll("section:not([data-at-home]) [data-shown=open]").length);
  for (const button of live.querySelectorAll("[data-share]")) button.toggleAttribute("hidden", !("share" in navigator));
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
  live.replaceChildren(farewell(words.notOnThisList));
  document.getElementById("add")?.remove();
}

/** @param {import("./outbox.js").Command} command @param {string} label */
function tap(command, label) {
  taps.add(command, Number(live.querySelector("#part")?.getAttribute("data-sequence") ?? 0), label);
  show();
  taps.flush();
}

/** @param {Element} button */
const labelOf = (button) => /** @type {string} */ (button.textContent).replace(/\s+/g, " ").trim();

document.addEventListener("click", (event) => {
  const button = event.target instanceof Element ? event.target.closest("button") : null;
  const item = /** @type {HTMLElement | null | undefined} */ (button?.closest("li[data-key]"));
  if (!button) return;
  if (button.dataset.mark && item) {
    const key = /** @type {string} */ (item.dataset.key);
    const mark = /** @type {Mark} */ (item.dataset.shown === button.dataset.mark ? "open" : button.dataset.mark);
    mine.set(key, mark);
    tap({ kind: "mark", line: key, as: mark, amount: item.dataset.amount ?? "" }, `${words.marked[mark]}: ${item.querySelector(".what")?.textContent}`);
  } else if (button.dataset.tap) {
    tap(JSON.parse(button.dataset.tap), labelOf(button));
  } else if ("print" in button.dataset) {
    print();
  } else if ("copy" in button.dataset) {
    copy(button.dataset.text ?? "");
  } else if ("share" in button.dataset) {
    navigator.share({ text: /** @type {HTMLElement | null} */ (live.querySelector("[data-copy]"))?.dataset.text }).catch(() => {});
  }
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
  showCutOff(since === null ? null : clock.seconds(there(since)), words.shopAlone);
}, 250);
let beat = 0;
setInterval(() => {
  if (!hub.isOpen() || ++beat % BEATS_WITH_SOCKET === 0) look();
  taps.flush();
}, BEAT);
show();
if (isKept) keptPart(part).then((html) => html && patch.show(html));
else keepPage(meal, "/meals/", `/meals/${meal}/shopping`);
