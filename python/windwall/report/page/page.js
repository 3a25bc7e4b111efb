"use strict";
// What is wider than the page is reached by the keyboard too.
const reach = () => {
  for (const one of document.querySelectorAll(".wide")) {
    if (one.scrollWidth > one.clientWidth) one.tabIndex = 0;
    else one.removeAttribute("tabindex");
  }
};
reach();
addEventListener("resize", reach);
document.addEventListener("toggle", reach, true);
document.getElementById("save").addEventListener("click", event => {
  const text = document.getElementById("windwall-scenario").textContent.trim() + "\n";
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  link.download = event.target.dataset.name;
  link.click();
  URL.revokeObjectURL(link.href);
});
