// Counts down to the next reading and says so in the title, for a tab that lies behind. Without it the page shows the minutes it was sent with.
import { digits } from "./countdown.js";

const next = document.querySelector("[data-next]");
if (next) {
  const due = Date.now() + Number(next.getAttribute("data-next"));
  const title = document.title;
  const show = () => {
    const left = due - Date.now();
    next.textContent = left <= 0 ? "now" : `in ${digits(left)}`;
    document.title = left <= 0 ? `Read now · ${title}` : `${digits(left)} · ${title}`;
  };
  show();
  setInterval(show, 1000);
}
document.querySelector('[name="celsius"]')?.focus();
