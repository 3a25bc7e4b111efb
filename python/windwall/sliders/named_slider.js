// A slider of the browser's own: it takes all its keys, and says its name and its value aloud, too.
function render({ model, el }) {
  const made = (kind, inside) => inside.appendChild(document.createElement(kind));
  const label = made("label", el);
  made("span", label).textContent = model.get("label");
  const range = made("input", label), said = made("output", el);
  el.classList.add("windwall-slider");
  const [low, texts] = [model.get("low"), model.get("texts")];
  Object.assign(range, { type: "range", min: low, max: low + texts.length - 1, step: 1 });
  range.title = model.get("hint");
  range.dataset.lmSuppressShortcuts = "true"; // else a notebook takes the arrow keys for its cells
  const show = () => {
    range.value = model.get("value");
    said.textContent = texts[model.get("value") - low];
    range.setAttribute("aria-valuetext", said.textContent);
  };
  range.addEventListener("input", () => {
    model.set("value", Number(range.value));
    model.save_changes();
  });
  model.on("change:value", show);
  show();
  return () => model.off("change:value", show);
}

export default { render };
