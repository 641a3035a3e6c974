// What only the browser can tell: whether it takes the page for secure, and whether a socket opens.

import { root } from "./root.js";

const show = (/** @type {string} */ what) => document.querySelector(`[data-when=${what}]`)?.removeAttribute("hidden");

show(isSecureContext ? "secure" : "plain");

const socket = new WebSocket(`${location.protocol === "https:" ? "wss" : "ws"}://${location.host}${root}hubs/live`);
socket.addEventListener("open", () => {
  show("open");
  socket.close();
});
socket.addEventListener("error", () => show("shut"));
