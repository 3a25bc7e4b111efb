// Sliders on one side, the answer on the other.
const section = document.currentScript.closest("section");
const find = name => [...section.querySelectorAll(name)];
const data = JSON.parse(section.querySelector('script[type="application/json"]').textContent);
const words = new Words(data);
const ranges = find('input[type="range"]');
const [headline, list] = [section.querySelector(".headline"), section.querySelector("dl")];

const [resets, reset_all] = [find(".reset"), section.querySelector(".reset-all")];

const steps = () => ranges.map(one => Number(one.value));

// As it is shown after so many steps: `354 kg`.
function position(slider, k) {
  const number = (slider.base + k * slider.step) / 10 ** slider.decimals;
  return `${fixed(number, slider.decimals)} ${slider.unit}`.trim();
}

// What a file would state after so many steps: texts with units, numbers where there is no unit.
function stated(slider, k) {
  const said = position(slider, k);
  return slider.unit ? said : Number(said);
}

// By address, only what is moved.
const changes = () => Object.fromEntries(steps().flatMap((k, i) =>
  k ? [[data.sliders[i].address, stated(data.sliders[i], k)]] : []));

// The file with what is moved: parts by their id, entries of a list by their number from 1.
function moved_file() {
  const file = JSON.parse(data.scenario);
  for (const [address, value] of Object.entries(changes())) {
    const keys = address.split("/"), last = keys.pop();
    const inside = keys.reduce((at, key) =>
      Array.isArray(at) ? at.find(part => part.id === key) : at[key] ??= {}, file);
    inside[Array.isArray(inside) ? Number(last) - 1 : last] = value;
  }
  return JSON.stringify(file, null, 2) + "\n";
}

// What is refused is called as its slider is.
function label_of(address) {
  const slider = data.sliders.find(one => one.address === address);
  return slider ? slider.label : plain_name(address);
}

function rows_for(answer) {
  if (answer.problems)
    return answer.problems.map(one =>
      ["refused", `${label_of(one.address)}: ${one.message}`, one.address]);
  const rows = rows_of(words, answer);
  if (answer.baked && answer.error) {
    const [scale, , unit] = data.units.speed;
    const error = fixed(Math.ceil(answer.error * scale * 10) / 10, 1);
    rows.push(["by interpolation", `± ${error} ${unit}, the largest error that was found at `
      + `${answer.tried} positions with as many sliders moved`]);
  }
  return rows;
}

function headline_of(answer, file) {
  if (answer.problems || !answered(answer)) return "No answer here.";
  const speed = goal_speed(answer), more = answered(file) ? speed - goal_speed(file) : 0;
  const change = fixed(more * data.units.speed[0], 1);
  const against = Number(change) === 0 ? "as in the file"
    : `${more > 0 ? "+" : ""}${change} ${data.units.speed[2]} against the file`;
  return `${words.speed(speed)}, ${against}`;
}

function show(answer, file) {
  headline.textContent = headline_of(answer, file);
  list.replaceChildren(...rows_for(answer).flatMap(([name, said, address]) => [
    Object.assign(document.createElement("dt"), { textContent: name }),
    Object.assign(document.createElement("dd"), { textContent: said, title: address ?? "" })]));
}

function label(i) {
  const k = Number(ranges[i].value), slider = data.sliders[i];
  const said = k ? String(position(slider, k)) : slider.stated;
  ranges[i].setAttribute("aria-valuetext", said);
  ranges[i].closest(".slider").querySelector("output").textContent = said;
  resets[i].hidden = k === 0;  // a way back is shown only where something was moved
  reset_all.hidden = resets.every(one => one.hidden);
}

function save() {
  const words = data.title.toLowerCase().replace(/[^a-z0-9]+/g, "_").replace(/^_|_$/g, "");
  const name = `${words || "scenario"}.json`;
  const url = URL.createObjectURL(new Blob([moved_file()], { type: "application/json" }));
  Object.assign(document.createElement("a"), { href: url, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(url), 1000);
}

async function begin() {
  const core = data.core && await answering(data.core, data.scenario);
  const baked = data.baked && new Baked(data.baked);
  const ask = async () => core ? core(JSON.stringify(changes())) : baked.ask(steps());
  const file = await ask();
  let asked = 0, busy = false;
  // One question at a time; what is moved meanwhile is asked once the answer is there.
  const follow = async () => {
    asked += 1;
    if (busy) return;
    busy = true;
    for (let seen = 0; seen !== asked;) {
      seen = asked;
      show(await ask(), file);
    }
    busy = false;
  };
  ranges.forEach((one, i) => one.addEventListener("input", () => { label(i); follow(); }));
  // The button goes away under the hand that pressed it, so the slider is where one is next.
  const reset = i => { ranges[i].value = 0; label(i); ranges[i].focus(); follow(); };
  resets.forEach((one, i) => one.addEventListener("click", () => reset(i)));
  reset_all.addEventListener("click", () => steps().forEach((_, i, all) => reset(all.length - 1 - i)));
  section.querySelector(".save").addEventListener("click", save);
  section.windwall = { data, words, ask, changes, moved_file, rows_for, headline_of, file };
  show(file, file);
}

begin().catch(error => { headline.textContent = `The sliders do not work here: ${error.message}`; });
