// A box that leaves of a long list what has the words typed into it. Without this script the whole list stands there.

/** What was typed stays while new boards come. @param {Element} live */
export function find(live) {
  const box = /** @type {HTMLInputElement | null} */ (live.querySelector("[data-find]"));
  if (!box) return;
  const words = box.value.trim().toLowerCase().split(/\s+/);
  let found = 0;
  for (const one of /** @type {NodeListOf<HTMLElement>} */ (live.querySelectorAll(String(box.dataset.find)))) {
    const text = String(one.textContent).toLowerCase();
    one.hidden = !words.every((word) => text.includes(word));
    found += one.hidden ? 0 : 1;
    const folded = one.closest("details");
    if (words[0] && !one.hidden && folded) folded.open = true;
  }
  const none = live.querySelector("[data-found-none]");
  none?.toggleAttribute("hidden", found > 0);
}

/** @param {Element} live */
export function finds(live) {
  live.addEventListener("input", (event) => {
    if (event.target instanceof Element && event.target.hasAttribute("data-find")) find(live);
  });
}
