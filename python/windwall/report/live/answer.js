// An answer in rows of [name, text], worded as windwall words it; a third entry is the address of
// what a row is about, which its text calls by its name.

// What people call what stands at an address, as `plain_name` of the package has it.
const plain_name = address =>
  address.replace(/^(charge_path|driveline)\//, "").replace(/[/_]/g, " ");

function fill(template, values) {
  return template.replace(/\{(\w+)\}/g, (_, key) => values[key] ?? "");
}

// Of texts by key, the one for vehicles with several gears where there is such a one.
function of_gears(texts, key, gears) {
  return texts[gears > 1 && `${key} of gears` in texts ? `${key} of gears` : key];
}

class Words {
  constructor(data) {
    Object.assign(this, data.words);
    this.units = data.units;
    this.gears = data.gears;
    this.goal = data.goal;
    this.limited = data.limited;
  }

  say(measure, si, digits) { return text(this.units[measure], si, digits); }

  // Speeds to one decimal, so that they can be compared.
  speed(si) {
    const number = fixed(shown(this.units.speed, si), 1);
    return `${number} ${this.units.speed[2]}`;
  }

  in_gear(gear) { return this.gears > 1 && gear ? ` in gear ${gear}` : ""; }

  gearing(answer) {
    const belt = answer.belt;
    if (!belt) return this.in_gear(answer.gear);
    const between = fill(this.belt.between, { ratio: readable(belt.ratio, 3) });
    const where = belt.highest ? this.belt.highest : belt.lowest ? this.belt.lowest : between;
    return this.in_gear(answer.gear) + where;
  }

  unanswered_at(tried) {
    const { status, part, evaluations } = tried.ending;
    const key = [`${status} ${part}`, status, "other"].find(one => one in this.unanswered);
    return fill(this.unanswered[key], {
      speed: this.say("engine_speed", tried.engine_speed, 4),
      opening: this.say("share", tried.opening, 2),
      reference: this.reference,
      part,
      furthest: part ? fill(this.furthest, { part }) : "",
      evaluations: String(evaluations),
    });
  }

  // What holds knock off where only the throttle does, which goes ahead of all.
  lift(answer) {
    if (answer.ending.status !== "knock_limited") return "";
    return fill(this.by_throttle, { opening: this.say("share", answer.opening, 2) });
  }

  held(answer) {
    const retard = answer.point.knock ? answer.point.knock.retard : 0;
    if (this.lift(answer)) return "";
    return retard > 0 ? fill(this.by_spark, { retard: this.say("angle", retard, 2) }) : "";
  }

  // Where the climb ends and why.
  why(answer) {
    if (!answer.ending.answered) {
      const drowned = answer.cautions.filter(one => one.about === "drowned");
      return [answer.unanswered ? this.unanswered_at(answer.unanswered) : this.standstill,
        ...drowned.map(one => this.warning(one))].join(" ");
    }
    const road = answer.point.road, total = road.air + road.rolling + road.grade;
    const binds = answer.limited_by === "knock" ? "drag" : answer.limited_by;
    const ends = fill(of_gears(this.ends, binds, this.gears), {
      speed: this.say("speed", answer.speed, 4),
      gearing: this.gearing(answer),
      engine_speed: this.say("engine_speed", answer.engine_speed, 4),
      air: this.say("share", road.air / total, 2),
      rolling: this.say("share", road.rolling / total, 2),
      slope: road.grade ? fill(this.slope, { share: this.say("share", road.grade / total, 2) }) : "",
      power: this.say("power", road.thrust * road.speed),
      excess: this.say("force", answer.surplus),
      thrust: this.say("force", road.thrust),
      beyond: answer.unanswered ? this.unanswered_at(answer.unanswered) : "",
      knock: this.held(answer),
    });
    return `${this.lift(answer)} ${ends}`.trimStart();
  }

  next_to_bind(answer) {
    const found = answer.next;
    if (!found) return "";
    return fill(of_gears(this.next, found.binding, this.gears), {
      share: this.say("share", found.share, 2),
      speed: found.speed === null ? "" : this.say("speed", found.speed, 4),
    });
  }

  warning(one) {
    const values = {};
    if (one.engine_speed !== null) values.engine_speed = this.say("engine_speed", one.engine_speed, 3);
    if (one.about in this.found) {
      const [unit, digits] = this.found[one.about];
      for (const key of ["found", "low", "high"])
        values[key] = one[key] === null ? "" : text(unit, one[key], digits);
    }
    return fill(this.warnings[one.about], values);
  }

  passed(one) {
    const unit = this.limited[one.address];
    const below = one.max === null || (one.min !== null && one.worst < one.min);
    const bound = `${below ? "min" : "max"} ${short(unit, below ? one.min : one.max)}`;
    return `${plain_name(one.address)}: ${bound}, at worst ${text(unit, one.worst)}: ${one.why}`;
  }

  // What the speed of goals is, the balance speed, and what is missing.
  speeds(answer) {
    const rows = [], run = answer.run_up, speed = goal_speed(answer);
    if (!answer.baked && this.lift(answer)) {
      const share = this.say("share", answer.opening, 2);
      rows.push(["throttle", `${share} of its travel; flat out it would knock`]);
    }
    if (run && this.road && run.time !== undefined) {
      const shifts = this.gears > 1 ? " with no time lost in shifts" : "";
      const time = this.say("time", run.time);
      rows.push([`after ${this.road} from rest`,
        `${this.speed(run.speed)}${this.in_gear(run.gear)}, in ${time}${shifts}`]);
      if (this.gears > 1) rows.push(["gear to start in", String(run.start_gear)]);
    } else if (run && this.road) {
      rows.push([`after ${this.road} from rest`, this.speed(run.speed)]);
    }
    const where = this.say("engine_speed", answer.engine_speed, 4);
    rows.push(["balance speed", `${this.speed(answer.speed)}${this.gearing(answer)} at ${where}`]);
    if (this.goal !== null) {
      const short_by = this.goal - speed;
      const missing = short_by > 0 ? `${this.speed(short_by)} short` : "reached";
      rows.push(["goal", `${this.speed(this.goal)}: ${missing}`]);
    }
    return rows;
  }
}

// The speed that goals go by: at the end of the road where one is named.
const goal_speed = answer => answer.run_up ? answer.run_up.speed : answer.speed;
const answered = answer => answer.baked ? goal_speed(answer) !== null && answer.speed !== null
  && answer.engine_speed !== null : answer.ending.answered;

function rows_of(words, answer) {
  if (!answered(answer))
    return [["no answer", answer.baked ? "None was found near these positions." : words.why(answer)]];
  const rows = words.speeds(answer);
  if (answer.baked) return rows;
  rows.push(["limited by", answer.limited_by.replaceAll("_", " ")], ["why", words.why(answer)]);
  const next = words.next_to_bind(answer);
  if (next) rows.push(["next", next]);
  answer.passed.forEach(one => rows.push(["limit passed", words.passed(one), one.address]));
  answer.cautions.forEach(one => rows.push(
    ["caution", `${plain_name(one.address)}: ${words.warning(one)}`, one.address]));
  return rows;
}
