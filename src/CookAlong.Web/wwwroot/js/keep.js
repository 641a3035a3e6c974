// A copy of the kitchen on this device, for a reload while the server is away. Browsers allow it on secure pages only;
// elsewhere the page does as much as long as it stays open.

import { root } from "./root.js";

const KEPT = "cookalong-kept";
const MADE_OF = /^((css|js|lib|fonts)\/|icon\.svg$)/;

const canKeep = "serviceWorker" in navigator && "caches" in globalThis;

/**
 * Keeps this page and what it is made of, and lets go of pages of other runs.
 * @param {string} run @param {string} from where its pages lie @param {string} scope which pages the copy may stand in for
 */
export async function keepPage(run, from = `${root}cook/`, scope = from) {
  if (!canKeep) return;
  try {
    await navigator.serviceWorker.register(`${root}kitchen-worker.js`, { scope });
    const cache = await caches.open(KEPT);
    for (const { url } of await cache.keys()) {
      const { pathname } = new URL(url);
      if (pathname.startsWith(from) && !pathname.includes(run)) await cache.delete(url);
    }
    const loaded = performance.getEntriesByType("resource").map((one) => new URL(one.name)).filter((one) => one.origin === location.origin && one.pathname.startsWith(root) && MADE_OF.test(one.pathname.slice(root.length)));
    await cache.addAll([location.href, ...new Set(loaded.map((one) => one.href))].map((url) => url.split("#")[0]));
  } catch (refused) {
    // A certificate the browser does not trust, no room on the disk: the page works, but not across a reload.
    console.info("No copy is kept:", refused);
  }
}

/** @param {string} part the part's address @param {string} html */
export async function keepPart(part, html) {
  if (!canKeep) return;
  const cache = await caches.open(KEPT);
  await cache.put(part, new Response(html, { headers: { "Content-Type": "text/html; charset=utf-8" } }));
}

/** The last part that was kept, or null. @param {string} part */
export async function keptPart(part) {
  if (!canKeep) return null;
  const copy = await (await caches.open(KEPT)).match(part);
  return copy ? copy.text() : null;
}

/** For a screen that has left the kitchen. */
export async function forgetKept() {
  if (canKeep) await caches.delete(KEPT);
}

/** The schedule of calls: what rings without the server must outlive the page. @param {string} run @param {unknown[]} calls */
export const keepCalls = (run, calls) => localStorage.setItem(`cookalong.calls.${run}`, JSON.stringify(calls));

/** @param {string} run */
export const keptCalls = (run) => JSON.parse(localStorage.getItem(`cookalong.calls.${run}`) ?? "[]");
