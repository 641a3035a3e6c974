// What this device can do, found out by asking it.

import { canSpeak, sound, speaks, speak, unlock } from "./arm.js";

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
