// Answers between positions that were worked out beforehand; as `baked.py` has it.
function along(at, values, k) {
  const i = at.findIndex((x, n) => n + 1 < at.length && k >= x && k <= at[n + 1]);
  if (i < 0 || values[i] === null || values[i + 1] === null) return null;
  return values[i] + (values[i + 1] - values[i]) * (k - at[i]) / (at[i + 1] - at[i]);
}

function estimate(baked, column, moved) {
  const of = baked.columns[column], terms = [of.file];
  moved.forEach((k, i) => k && terms.push(along(baked.alone_at[i], of.alone[i], k)));
  let pair = 0;
  for (let i = 0; i < moved.length; i++) {
    for (let j = i + 1; j < moved.length; j++, pair++) {
      if (!moved[i] || !moved[j]) continue;
      const rows = of.together[pair].map(row => along(baked.together_at[j], row, moved[j]));
      terms.push(along(baked.together_at[i], rows, moved[i]));
    }
  }
  return terms.includes(null) ? null : terms.reduce((sum, one) => sum + one, 0);
}

class Baked {
  constructor(baked) { this.baked = baked; }

  ask(moved) {
    const of = column => estimate(this.baked, column, moved);
    const count = moved.filter(k => k).length;
    return {
      baked: true,
      speed: of("balance_speed"),
      engine_speed: of("engine/speed"),
      run_up: { speed: of("speed") },
      error: count ? this.baked.errors[count - 1] : 0,
      tried: this.baked.tried,
    };
  }
}
