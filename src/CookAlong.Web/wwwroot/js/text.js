// The list as text, to be sent or pasted anywhere: what this page shows, with what waits to be sent.

/** @param {Element | null} place */
const words = (place) => place?.textContent?.replace(/\s+/g, " ").trim() ?? "";

/** @param {Element} live @param {string[]} added lines that no list from the server has yet */
export function asText(live, added) {
  const lines = [words(live.querySelector("h1"))];
  for (const aisle of live.querySelectorAll("main section:not([data-at-home])")) {
    const open = [...aisle.querySelectorAll("[data-shown=open]")].map((item) => [".what", ".much"].map((one) => words(item.querySelector(one))).filter((one) => one).join(", "));
    if (open.length > 0) lines.push("", words(aisle.querySelector("h2")), ...open.map((one) => `- ${one}`));
  }
  if (added.length > 0) lines.push("", ...added.map((one) => `- ${one}`));
  const spent = live.querySelector(".spent:not([hidden])");
  if (spent) lines.push("", [...spent.childNodes].filter((one) => !(one instanceof Element && one.hasAttribute("hidden"))).map((one) => one.textContent).join("").replace(/\s+/g, " ").trim());
  return lines.join("\n");
}
