// The live kitchen in the browser: what only a browser can do, and nothing else. The server draws every board.

import { armable, isArmed, isAwake, sound } from "./arm.js";
import { schedule } from "./calls.js";
import { here, now, rehearse, there, wallClock } from "./clock.js";
import { tick } from "./countdown.js";
import { find, finds } from "./find.js";
import { forgetKept, keepCalls, keepPage, keepPart, keptCalls, keptPart } from "./keep.js";
import { line } from "./line.js";
import { outbox, post, tap as tapped } from "./outbox.js";
import { beat, firstReading } from "./page.js";
import { patcher } from "./patch.js";
import { root } from "./root.js";
import { farewell, say, showCutOff, showRinging, showWaiting } from "./signs.js";
import * as words from "./words.js";

const live = /** @type {HTMLElement} */ (document.getElementById("live"));
const run = /** @type {string} */ (live.dataset.run);
if (live.dataset.rate) rehearse(run, Number(live.dataset.rate));
const clock = wallClock(/** @type {string} */ (live.dataset.zone));

/** Boards change with time alone, so a new one is asked for now and then. */
const BEATS_WITH_SOCKET = 4;

/** A board that is behind what was told is asked for again, and after a while said to be old. */
const BEHIND = { asksAgainAfter: 1_000, isSaidAfter: 5_000 };

/** Whoever tapped so long ago may not look here any more when the answer comes. */
const WAITED = 10_000;

const sequence = () => Number(live.querySelector("#part")?.getAttribute("data-sequence") ?? 0);

/** The server is away, and this page is the copy that was kept of it (kitchen-worker.js). */
const isKept = live.hasAttribute("data-kept");
const part = /** @type {string} */ (live.dataset.part);

const drawn = firstReading(live, isKept);

/** What this screen tells the others of itself. */
const state = () => ({ isBoard: document.documentElement.classList.contains("board"), isArmed: isArmed(), isAwake: isAwake() });
const arm = armable(live, () => hub.say(state()));
const draw = () => {
  tick(live, clock);
  showWaiting(live, taps.waiting());
};
const patched = () => {
  arm.show();
  find(live);
  draw();
  showRinging(calls.ringing(), live, isArmed());
};
finds(live);
const patch = patcher(live, patched, (html) => keepPart(part, html));
let left = false;

/** The newest change that was told of. */
let told = 0;
/** Since when the board shown is older (this device's ms). @type {number | null} */
let behindSince = null;
let lookedAt = 0;
/** Since when no board comes though the line is open, as when the server has lost its database (this device's ms). @type {number | null} */
let unreadSince = null;

function catchUp() {
  const at = Date.now();
  if (left || sequence() >= told) behindSince = null;
  else behindSince ??= at;
  if ((behindSince ?? unreadSince) !== null && hub.isOpen() && at - lookedAt >= BEHIND.asksAgainAfter) look();
}

function oldSince() {
  const since = behindSince ?? unreadSince;
  return since !== null && Date.now() - since > BEHIND.isSaidAfter ? since : null;
}

async function look() {
  if (left) return;
  lookedAt = Date.now();
  const outcome = await patch.refresh();
  unreadSince = outcome === "away" ? unreadSince ?? Date.now() : null;
  if (outcome === "out") leave(words.refusedByDoor);
  else if (outcome !== "away") hub.heard();
}

const isChild = () => document.documentElement.classList.contains("child");

/** The dining room is not called. */
const isAtTable = document.documentElement.classList.contains("watch");

/** On a phone other people's jobs ring only when they are urgent. @param {import("./calls.js").Call} call */
const concerns = (call) =>
  !isAtTable && (call.priority === "high" && !isChild()
  || !(live.querySelector("#part")?.getAttribute("data-others") ?? "").split(" ").includes(call.step ?? "-"));

const calls = schedule({ concerns, joinsIn: () => !isChild() && !isAtTable, sound, show: (ringing) => showRinging(ringing, live, isArmed()), came: () => setTimeout(look, 300) });

/** @param {import("./calls.js").Call[]} all */
function setCalls(all) {
  keepCalls(run, all);
  calls.set(all);
}

/** @param {import("./outbox.js").Tap} tap */
const requestOf = (tap) => ({ runId: run, commandId: tap.commandId, saw: tap.saw, command: tap.command });

/** The way round when there is no socket. @param {import("./outbox.js").Tap} tap */
const byHttp = (tap) => post(`${root}cook/${run}/taps`, requestOf(tap), words.refusedByDoor);

/** @param {import("./outbox.js").Tap} tap @param {import("./outbox.js").Answer} answer */
function answered(tap, answer) {
  if (!answer.accepted) {
    say(`${tap.label}: ${answer.reason}`, Date.now() - tap.at > WAITED);
    if (tap.command.kind === "acknowledge") calls.speakAgain(String(tap.command.call));
  }
  look();
}

const taps = outbox({
  run,
  store: localStorage,
  send: (tap) => hub.send(requestOf(tap)).catch(() => byHttp(tap)).catch((failure) => {
    // Is it the whole server? If so, the screen says so.
    look();
    throw failure;
  }),
  answered,
  changed: (waiting) => showWaiting(live, waiting),
});

const hub = line({
  run,
  heardAt: isKept ? here(drawn) : Date.now(),
  entered(where) {
    hub.say(state());
    told = where.sequence;
    setCalls(where.calls);
    taps.flush();
    look();
  },
  refused: () => look(),
  handlers: {
    Changed(news) {
      told = Math.max(told, news.sequence);
      setCalls(news.calls);
      look();
    },
    Ring: () => calls.tick(),
    Silence: (news) => calls.silence(news.callId),
    PutOut: () => leave(words.putOut),
  },
});

/** Shows why this screen shows no board any more, and the way back. @param {string} why */
function leave(why) {
  left = true;
  hub.close();
  forgetKept();
  live.replaceChildren(farewell(why));
  setCalls([]);
}

/** What was tapped and what about, for when it has to be said later. @param {Element} button */
function labelOf(button) {
  const label = /** @type {string} */ (button.textContent).trim();
  const card = button.closest(".dock") ? live.querySelector(".job") : button.closest("article");
  const headline = card?.querySelector("h2, h3")?.textContent;
  return headline ? `${label}: ${headline}` : label;
}

/** What edits the plan is not kept for later: by then the kitchen is another. */
const OF_PLAN = new Set([
  "acceptPlan", "takeBackPlan", "setPlanRule", "helperLeaves", "helperStays", "addDish", "dropDish", "bringBackDish",
  "moveTable", "takeBackTable", "ovenStillHeats", "ovenOnTime", "putOut", "endRun",
]);

/** Once, now or not at all. @param {import("./outbox.js").Tap} tap */
async function sendNow(tap) {
  const answer = await byHttp(tap).catch(() => null);
  if (answer) answered(tap, answer);
  else say(words.planNeedsServer(tap.label), true);
}

/** Commands that somebody types the half of. */
const TYPED = new Set(["readCore", "readOven", "vouchFor", "coverRest"]);

/**
 * A command that says what somebody typed beside its button, and when: it may be sent much later.
 * @param {Element} button @param {Record<string, unknown>} command
 * @returns {boolean} false when there is nothing to say yet
 */
function fillIn(button, command) {
  const form = button.closest("[data-typed]");
  const input = /** @type {HTMLInputElement | null | undefined} */ (form?.querySelector("input"));
  if (!form || !input || !TYPED.has(String(command.kind))) return true;
  const typed = input.type === "number" ? input.valueAsNumber : input.value.trim();
  if (typed === "" || Number.isNaN(typed) || !input.reportValidity()) {
    input.focus();
    return false;
  }
  const unit = form.querySelector("select");
  command[unit ? unit.value : /** @type {string} */ (form.getAttribute("data-typed"))] = typed;
  command.at = Math.round(now());
  input.value = "";
  return true;
}

document.addEventListener("click", (event) => {
  if (event.target instanceof Element && event.target.closest("[data-quiet]")) calls.quiet();
  const button = event.target instanceof Element ? event.target.closest("[data-tap]") : null;
  if (!button) return;
  const command = JSON.parse(/** @type {string} */ (button.getAttribute("data-tap")));
  if (!fillIn(button, command)) return;
  if (command.kind === "acknowledge") calls.silence(command.call);
  if (command.kind === "startStep") calls.begun(command.step);
  if (OF_PLAN.has(command.kind) && (!hub.isOpen() || hub.silentSince() !== null)) {
    sendNow(tapped(command, sequence(), labelOf(button)));
    return;
  }
  taps.add(command, sequence(), labelOf(button));
  // What a reading comes to is looked at where it was typed.
  if (!button.closest(".core")) button.closest("details.more")?.removeAttribute("open");
  taps.flush();
});

let lookedFor = "";
setInterval(() => {
  draw();
  calls.tick();
  const next = live.querySelector("#part")?.getAttribute("data-next");
  if (next && next !== lookedFor && Number(next) <= now()) {
    lookedFor = next;
    look();
  }
  catchUp();
  const since = left ? null : hub.silentSince() ?? oldSince();
  showCutOff(since === null ? null : clock.seconds(there(since)), hub.isRestarting() ? words.restarting : isAtTable ? words.cutOffAtTable : words.cutOff);
}, 250);
beat(hub, BEATS_WITH_SOCKET, look, taps.flush);
draw();
if (isKept) {
  calls.set(keptCalls(run));
  keptPart(part).then((html) => html && patch.show(html));
} else {
  keepPage(run);
}
