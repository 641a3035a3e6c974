// The one thing on this page that needs a script: a button that prints it.
const button = document.querySelector(".print");
button.hidden = false;
button.addEventListener("click", () => window.print());
