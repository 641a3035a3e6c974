// What the list cost, where somebody writes it down. Sums are made in whole hundredths.

/** @param {string} text as typed or drawn @returns {number | null} hundredths; null = no price */
export const hundredths = (text) => (text.trim() === "" ? null : Math.round(Number(text.trim().replace(",", ".")) * 100));

/** @param {number | null} price hundredths */
const number = (price) => (price === null ? "" : (price / 100).toFixed(2));

/**
 * @param {Element} live
 * @param {(key: string) => number | null | undefined} typed a line's price that waits to be sent, null = taken off, undefined = none waits
 * @param {string} currency
 */
export function showCost(live, typed, currency) {
  let [spent, unpriced, priced] = [0, 0, false];
  for (const item of /** @type {NodeListOf<HTMLElement>} */ (live.querySelectorAll("li[data-key]"))) {
    const own = typed(String(item.dataset.key));
    const price = own === undefined ? hundredths(item.dataset.price ?? "") : own === null ? null : Math.round(own * 100);
    set(item.querySelector(".price"), number(price));
    if (price !== null) [spent, priced] = [spent + price, true];
    else if (item.dataset.shown === "bought") unpriced++;
  }
  live.querySelector(".spent")?.toggleAttribute("hidden", !priced);
  set(live.querySelector(".spent > b"), number(spent));
  live.querySelector(".unpriced")?.toggleAttribute("hidden", unpriced === 0);
  set(live.querySelector(".unpriced b"), String(unpriced));
  for (const one of document.querySelectorAll("span.currency")) set(one, currency && `\u00a0${currency}`);
}

/** @param {Element | null} place @param {string} text */
function set(place, text) {
  if (place && place.textContent !== text) place.textContent = text;
}

/**
 * The sheet on which a price is typed.
 * @param {(item: HTMLElement, price: number | null) => void} save
 */
export function costSheet(save) {
  const sheet = /** @type {HTMLDialogElement} */ (document.getElementById("cost"));
  const input = /** @type {HTMLInputElement} */ (document.getElementById("cost-price"));
  /** @type {HTMLElement | null} */
  let about = null;
  sheet.querySelector("[data-cancel]")?.addEventListener("click", () => sheet.close());
  sheet.querySelector("form")?.addEventListener("submit", () => {
    const price = hundredths(input.value);
    if (about) save(about, price === null ? null : price / 100);
  });
  return {
    /** @param {HTMLElement} item @param {string} title */
    open(item, title) {
      about = item;
      set(sheet.querySelector("h2"), title);
      input.value = item.querySelector(".price")?.textContent ?? "";
      sheet.showModal();
      input.select();
    },
    close: () => sheet.close(),
  };
}
