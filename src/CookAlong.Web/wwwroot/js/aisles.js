// The order of the aisles on the page: it changes at once, also while the server is away.

/**
 * The order with this button's aisle a place further.
 * @param {Element} button @param {number} by -1 = up
 */
export function moved(button, by) {
  const item = /** @type {HTMLElement} */ (button.closest("[data-aisle]"));
  const order = [.../** @type {HTMLCollectionOf<HTMLElement>} */ (/** @type {Element} */ (item.parentElement).children)].map((one) => String(one.dataset.aisle));
  const from = order.indexOf(String(item.dataset.aisle));
  order.splice(from + by, 0, ...order.splice(from, 1));
  return order;
}

/** Puts the aisles, and what is to be bought from them, into this order. @param {Element} live @param {string[]} order */
export function showOrder(live, order) {
  for (const place of live.querySelectorAll("ol.aisles, main")) {
    const items = /** @type {HTMLElement[]} */ ([...place.children].filter((one) => one.hasAttribute("data-aisle")));
    const sorted = items.toSorted((one, other) => order.indexOf(String(one.dataset.aisle)) - order.indexOf(String(other.dataset.aisle)));
    if (sorted.every((one, at) => one === items[at])) continue;
    const focused = /** @type {HTMLElement | null} */ (document.activeElement);
    place.prepend(...sorted);
    focused?.focus();
  }
  const arranged = live.querySelectorAll("ol.aisles > li");
  arranged.forEach((item, at) => {
    for (const [by, end] of [["-1", 0], ["1", arranged.length - 1]]) /** @type {HTMLButtonElement} */ (item.querySelector(`[data-move="${by}"]`)).disabled = at === end;
  });
}
