// Lets somebody set how this screen looks: its light, and how large a millimetre is on it. look.js puts it to use.

import * as words from "./words.js";

/** Width of a bank or identity card, in mm: ID-1 of ISO/IEC 7810. */
const CARD = 85.6;

export function offerLooks() {
  const looks = document.querySelector("[data-looks]");
  const set = localStorage.getItem("cookalong.look") ?? "device";
  for (const choice of looks?.querySelectorAll("input") ?? []) {
    choice.checked = choice.value === set;
    choice.addEventListener("change", () => {
      localStorage.setItem("cookalong.look", choice.value);
      location.reload();
    });
  }

  const measure = document.querySelector("[data-measure]");
  const slider = measure?.querySelector("input");
  const ruler = /** @type {HTMLElement | null | undefined} */ (measure?.querySelector(".ruler"));
  const said = measure?.querySelector("[data-measure-words]");
  if (!looks || !measure || !slider || !ruler || !said) return;
  looks.removeAttribute("hidden");
  measure.removeAttribute("hidden");
  slider.value = String(Number(localStorage.getItem("cookalong.millimetre") ?? 3.78) * CARD);
  const draw = () => (ruler.style.width = `${slider.value}px`);
  slider.addEventListener("input", draw);
  draw();
  measure.querySelector("[data-measured]")?.addEventListener("click", () => {
    localStorage.setItem("cookalong.millimetre", String(Number(slider.value) / CARD));
    said.textContent = words.measured;
  });
}
