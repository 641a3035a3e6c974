// Takes the secret out of the address's fragment into the form, and out of the address and the history with it.
const field = /** @type {HTMLInputElement | null} */ (document.querySelector("[data-from-fragment]"));

function take() {
  const secret = decodeURIComponent(location.hash.slice(1));
  if (!field || !secret) return;
  field.value = secret;
  history.replaceState(null, "", location.pathname + location.search);
  document.documentElement.dataset.secret = "known";
  const next = [...document.querySelectorAll("form input")].find((one) => one instanceof HTMLInputElement && one.type !== "hidden" && one.value === "");
  if (next instanceof HTMLInputElement) next.focus();
}

take();
// Pasted where the page stands open without it, an address with the secret loads nothing anew.
addEventListener("hashchange", take);
