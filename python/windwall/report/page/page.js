"use strict";
document.getElementById("save").addEventListener("click", event => {
  const text = document.getElementById("windwall-scenario").textContent.trim() + "\n";
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  link.download = event.target.dataset.name;
  link.click();
  URL.revokeObjectURL(link.href);
});
