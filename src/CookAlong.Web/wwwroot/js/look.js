// How this screen looks, as somebody has set it on its device page. Not a module: it runs before anything is drawn.

(() => {
  const root = document.documentElement;
  const look = localStorage.getItem("cookalong.look");
  const night = document.querySelector("link[data-night]");
  if (night && (look === "night" || look === "bright")) {
    night.media = look === "night" ? "all" : "not all";
    root.style.colorScheme = look === "night" ? "dark" : "light";
  }

  // Pixels of this screen that make one millimetre, as measured with a card (device.js).
  const millimetre = Number(localStorage.getItem("cookalong.millimetre"));
  if (millimetre > 0) root.style.setProperty("--mm", `${millimetre}px`);
})();
