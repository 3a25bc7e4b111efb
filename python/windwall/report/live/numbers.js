// Numbers as windwall prints them: so many digits, halves to the even one.
function halves(written, exact, cut) {
  // A tie is one half and nothing after it; JavaScript rounds it up, C to the even digit.
  const end = exact.slice(cut);
  const digits = end.replace(/e.*/, "").replace(".", "");
  if (!/^50*$/.test(digits)) return written;
  const lower = exact.slice(0, cut).replace(/\.$/, "");
  return "02468".includes(lower[lower.length - 1]) ? lower + end.replace(/^[^e]*/, "") : written;
}

function fixed(number, decimals) {
  const exact = number.toFixed(Math.min(100, decimals + 40));
  return halves(number.toFixed(decimals), exact, exact.indexOf(".") + 1 + decimals);
}

function scientific(number, decimals) {
  const exact = number.toExponential(Math.min(100, decimals + 40));
  const made = halves(number.toExponential(decimals), exact, exact.indexOf(".") + 1 + decimals);
  return made.replace(/e([+-])(\d)$/, "e$10$2");
}

function readable(number, digits) {
  if (number === null || !Number.isFinite(number)) return "unknown";
  if (number === 0) return "0";
  const power = scientific(number, digits - 1);
  const exponent = Number(power.slice(power.indexOf("e") + 1));
  if (exponent < -4 || exponent > 12) return power;
  return fixed(number, Math.max(0, digits - 1 - exponent));
}

const NOTHING = 1e-12;
const shown = ([scale, zero], si) => si * scale + zero;

// With its unit: `34.2 km/h`.
function text(unit, si, digits = 3) {
  if (si === null || !Number.isFinite(si)) return "unknown";
  const number = shown(unit, si);
  const said = Math.abs(number) < NOTHING * Math.abs(si) ? "0" : readable(number, digits);
  return `${said} ${unit[2]}`.trim();
}

// Without zeros that say nothing: `33 degC`.
function short(unit, si, digits = 4) {
  const [number, ...rest] = text(unit, si, digits).split(" ");
  const plain = number.includes(".") && !number.includes("e");
  return [plain ? number.replace(/\.?0+$/, "") : number, ...rest].join(" ");
}
