// What this device can do, found out by asking it.

import { offerLooks } from "./looks.js";
import { offerPush } from "./push.js";
import * as words from "./words.js";
import { canSpeak, sound, speaks, speak, unlock } from "./arm.js";

const run = /** @type {string} */ (document.querySelector("main")?.getAttribute("data-run"));

/** @type {Record<string, boolean>} */
const can = {
  sound: typeof AudioContext !== "undefined",
  vibrate: "vibrate" in navigator,
  speak: canSpeak,
  awake: "wakeLock" in navigator,
  secure: globalThis.isSecureContext,
  copy: "serviceWorker" in navigator,
  notify: "Notification" in globalThis && "serviceWorker" in navigator,
};

for (const row of document.querySelectorAll("[data-can]")) {
  const answer = can[/** @type {string} */ (row.getAttribute("data-can"))] ? "yes" : "no";
  row.setAttribute("data-state", answer);
  const state = row.querySelector(".state");
  if (state) state.textContent = answer;
  row.querySelector(`[data-when=${answer}]`)?.removeAttribute("hidden");
}

const choice = document.querySelector("[data-speaks]");
const box = choice?.querySelector("input");
if (box && canSpeak) {
  choice?.removeAttribute("hidden");
  box.checked = speaks();
  box.addEventListener("change", () => speak(box.checked));
}

for (const button of document.querySelectorAll("[data-hear]")) {
  button.toggleAttribute("hidden", !can.sound);
  button.addEventListener("click", async () => {
    await unlock();
    sound(/** @type {"high" | "medium" | "low"} */ (button.getAttribute("data-hear")), [button.closest("div")?.querySelector("h3")?.textContent?.trim() ?? ""]);
  });
}

const beyond = document.querySelector(".beyond");
if (beyond instanceof HTMLElement) offerPush(run, beyond);
for (const button of document.querySelectorAll("[data-test]")) {
  button.addEventListener("click", async () => {
    const said = beyond?.querySelector(button.hasAttribute("data-push") ? "[data-push-words]" : "[data-test-words]");
    const answer = await fetch(/** @type {string} */ (button.getAttribute("data-test")), { method: "POST" }).catch(() => null);
    if (said) said.textContent = answer?.ok ? await answer.text() : words.testFailed;
  });
}
offerLooks();
