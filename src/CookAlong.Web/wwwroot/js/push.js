// Asks the browser to be called while this page is closed (Web Push), and tells the server where.

import { root } from "./root.js";
import * as words from "./words.js";

/** @param {string} run @param {HTMLElement} section */
export async function offerPush(run, section) {
  const said = /** @type {HTMLElement} */ (section.querySelector("[data-push-words]"));
  const button = (/** @type {string} */ what) => /** @type {HTMLButtonElement} */ (section.querySelector(`[data-push=${what}]`));
  if (!("serviceWorker" in navigator) || !("PushManager" in globalThis)) return;

  const worker = await navigator.serviceWorker.register(`${root}kitchen-worker.js`, { scope: `${root}cook/` });
  const show = (/** @type {PushSubscription | null} */ subscription) => {
    button("on").hidden = subscription !== null;
    button("off").hidden = button("test").hidden = subscription === null;
    said.textContent = Notification.permission === "denied" ? words.pushDenied : subscription ? words.pushOn : words.pushOff;
  };
  show(await worker.pushManager.getSubscription());

  button("on").addEventListener("click", async () => {
    if ((await Notification.requestPermission()) !== "granted") return show(null);
    try {
      const key = await (await fetch(`${root}cook/${run}/push-key`)).text();
      const subscription = await worker.pushManager.subscribe({ userVisibleOnly: true, applicationServerKey: key });
      const answer = await post(`${root}cook/${run}/push`, subscription);
      if (answer.ok) return show(subscription);
      await subscription.unsubscribe();
      said.textContent = await answer.text();
    } catch (refused) {
      // The browser's maker could not be reached, or wants none of it; its own words say which.
      said.textContent = words.pushRefused(String(refused));
    }
  });

  button("off").addEventListener("click", async () => {
    const subscription = await worker.pushManager.getSubscription();
    if (subscription) {
      await post(`${root}cook/${run}/push/off`, subscription);
      await subscription.unsubscribe();
    }
    show(null);
  });
}

/** @param {string} address @param {PushSubscription} subscription */
function post(address, subscription) {
  const { endpoint, keys } = subscription.toJSON();
  return fetch(address, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify({ endpoint, p256dh: keys?.p256dh, auth: keys?.auth }),
  });
}
