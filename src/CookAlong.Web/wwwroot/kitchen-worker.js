// Shows the last copy of a live page when it is loaded anew and the server does not answer. Never while it does: a board
// must not be old. A classic script at the root, because a worker reaches only what lies below it.

const KEPT = "cookalong-kept";
/** Where this server's addresses begin: the worker lies there. */
const ROOT = new URL("./", self.location.href).pathname;
const ANSWERS_WITHIN = 6_000;

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== "GET" || origin !== self.location.origin || !pathname.startsWith(ROOT)) return;
  const path = pathname.slice(ROOT.length);
  if (request.mode === "navigate" && /^(cook\/[0-9a-f-]{36}(\/(me|wall))?|meals\/[0-9a-f-]{36}\/shopping)$/.test(path)) event.respondWith(serverOr(request, asKept));
  else if (/^((css|js|lib|fonts)\/|icon\.svg$)/.test(path)) event.respondWith(serverOr(request, (copy) => copy));
});

/** @param {Request} request @param {(copy: Response) => Response | Promise<Response>} show what becomes of the copy */
async function serverOr(request, show) {
  const cache = await caches.open(KEPT);
  try {
    const response = await fetch(request, { signal: AbortSignal.timeout(ANSWERS_WITHIN) });
    if (response.status >= 500) throw new Error(`The server answered ${response.status}.`);
    if (response.ok && !response.redirected) await cache.put(request.url, response.clone());
    return response;
  } catch (away) {
    const copy = await cache.match(request.url, { ignoreVary: true });
    if (!copy) throw away;
    return show(copy);
  }
}

/** The page's script must know that what it sees is no news. @param {Response} copy */
async function asKept(copy) {
  const page = (await copy.text()).replace('<div id="live"', '<div id="live" data-kept');
  return new Response(page, { headers: copy.headers });
}

// A call while no page of the kitchen is open. Browsers want every one of them shown.
self.addEventListener("push", (event) => {
  const { title, run, call } = event.data.json();
  event.waitUntil(self.registration.showNotification(title, { tag: call ?? "test", renotify: true, requireInteraction: true, icon: `${ROOT}icon.svg`, data: { run } }));
});

self.addEventListener("notificationclick", (event) => {
  event.notification.close();
  const path = `${ROOT}cook/${event.notification.data.run}`;
  event.waitUntil((async () => {
    const pages = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
    const open = pages.find((page) => new URL(page.url).pathname.startsWith(path));
    return open ? open.focus() : self.clients.openWindow(`${path}/me`);
  })());
});
