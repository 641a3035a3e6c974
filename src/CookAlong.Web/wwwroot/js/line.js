// The line to the server: one socket, opened anew for ever. A phone that wakes does not trust the socket it slept with:
// it opens a new one beside it.

import "../lib/signalr/signalr.min.js";
import { forget, sample } from "./clock.js";
import { root } from "./root.js";

const { HubConnectionBuilder, HttpTransportType, LogLevel } = /** @type {any} */ (globalThis).signalR;

const BEAT = 2_000;
const SILENT_AFTER = 5_000;

/** A network may swallow an opening socket without a word. */
const OPENS_WITHIN = 5_000;

/** @param {Promise<void>} opening */
const inTime = (opening) => Promise.race([opening, new Promise((_, reject) => setTimeout(() => reject(new Error("The socket did not open in time.")), OPENS_WITHIN))]);

const AGAIN_AFTER = [250, 500, 1_000, 2_000];

/**
 * @param {{ run: string, enter?: string, handlers: Record<string, (news: any) => void>, entered(where: any): void, refused(reason: string): void, heardAt?: number }} kitchen
 *   enter is the hub's way in, which run is given to;
 *   heardAt is when the server was last heard (this device's ms), if not just now
 */
export function line({ run, enter = "Enter", handlers, entered, refused, heardAt = Date.now() }) {
  /** @type {any} */
  let current = null;
  let attempt = 0;
  let opening = 0;
  let closed = false;
  let lastWord = heardAt;
  /** Since when the server says that it goes down to come back (this device's ms). @type {number | null} */
  let restarting = null;

  function build() {
    const connection = new HubConnectionBuilder()
      .withUrl(`${root}hubs/live`, { transport: HttpTransportType.WebSockets, skipNegotiation: true })
      .configureLogging(LogLevel.None)
      .build();
    connection.serverTimeoutInMilliseconds = SILENT_AFTER;
    connection.keepAliveIntervalInMilliseconds = BEAT;
    for (const [name, handle] of Object.entries(handlers)) {
      connection.on(name, (/** @type {any} */ news) => {
        lastWord = Date.now();
        handle(news);
      });
    }
    connection.on("Restarting", () => (restarting ??= Date.now()));
    connection.onclose(() => {
      if (connection === current) {
        current = null;
        later();
      }
    });
    return connection;
  }

  function later() {
    if (closed) return;
    setTimeout(() => !current && open(), AGAIN_AFTER[Math.min(attempt++, AGAIN_AFTER.length - 1)]);
  }

  async function open() {
    if (closed) return;
    const mine = ++opening;
    const connection = build();
    try {
      await inTime(connection.start());
      const sent = Date.now();
      const where = await connection.invoke(enter, run);
      if (mine !== opening || closed) {
        await connection.stop();
        return;
      }
      const old = current;
      current = connection;
      restarting = null;
      attempt = 0;
      lastWord = Date.now();
      sample(sent, where.serverNow, lastWord);
      old?.stop();
      entered(where);
      for (let i = 0; i < 7; i++) await ask();
    } catch (failure) {
      if (mine !== opening) return;
      // The hub answers a stranger with words; anything else means that nobody is there.
      if (String(failure).includes("HubException")) refused(String(failure));
      // One that never opened never ends its stopping either.
      if (connection !== current) connection.stop().catch(() => {});
      if (!current) later();
    }
  }

  /** One more reading of the server's clock, which is also how it is known to be there. */
  async function ask() {
    const connection = current;
    if (!connection) return;
    try {
      const sent = Date.now();
      const server = await connection.invoke("Clock");
      lastWord = Date.now();
      sample(sent, server, lastWord);
    } catch {
      // The socket is going down; onclose says so and opens the next.
    }
  }

  const wake = () => {
    if (document.visibilityState === "visible") {
      attempt = 0;
      forget();
      open();
    }
  };
  document.addEventListener("visibilitychange", wake);
  addEventListener("online", wake);
  addEventListener("pageshow", (event) => event.persisted && wake());
  setInterval(ask, BEAT);
  open();

  return {
    /** Since when nothing was heard (this device's ms), or null while the server is there. */
    silentSince: () => restarting ?? (Date.now() - lastWord > SILENT_AFTER ? lastWord : null),

    isRestarting: () => restarting !== null,

    isOpen: () => current !== null,

    /** Anything that shows that the server is there. */
    heard: () => (lastWord = Date.now()),

    /** @param {object} tap */
    send: (tap) => (current ? current.invoke("Send", tap) : Promise.reject(new Error("no line"))),

    /** What this screen is, told at once and not kept: whoever opens a line says it again. @param {object} state */
    say: (state) => current?.send("Say", state).catch(() => {}),

    close() {
      closed = true;
      current?.stop();
    },
  };
}
