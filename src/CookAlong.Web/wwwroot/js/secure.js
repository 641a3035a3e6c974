// Asks the server over HTTPS: a browser that gets an answer trusts its certificate.

const check = /** @type {HTMLElement} */ (document.querySelector("[data-secure]"));

/** @param {"asking" | "yes" | "no"} answer */
function show(answer) {
  for (const one of check.querySelectorAll("[data-when]")) one.toggleAttribute("hidden", one.getAttribute("data-when") !== answer);
}

async function ask() {
  show("asking");
  try {
    const answer = await fetch(`${check.dataset.secure}/secure/trusted`, { cache: "no-store" });
    show(answer.ok ? "yes" : "no");
  } catch {
    // A certificate that is not trusted looks like a server that is not there: browsers tell pages no more.
    show("no");
  }
}

check.querySelector("[data-ask]")?.addEventListener("click", ask);
ask();
