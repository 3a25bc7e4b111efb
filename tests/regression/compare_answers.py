"""Numbers of the scenarios as they were kept, held against the ones of today.

Our own numbers: a guard for changes that are meant to change none, no proof of anything.

    python tests/regression/compare_answers.py            what differs by more than 1e-9
    python tests/regression/compare_answers.py --keep     keeps today's, to accept a change
"""

import argparse
import json
import math
import sys
from functools import cached_property
from pathlib import Path

import windwall as ww

sys.path.insert(0, str(Path(__file__).parents[1]))
from regression.stored import keep, keep_budget

ROOT = Path(__file__).parents[2]
KEPT = Path(__file__).parent / "answers"
SCENARIOS = ("airfield_cyclecar", "village_microcar", "lakebed_streamliner")
LARGEST_KEPT_SET = 2
TOLERANCE = 1e-9  # of the number, or of one where it is smaller
# How a solver gets there is its own business, and what is zero but for rounding tells nothing.
NO_ANSWER = {"evaluations", "worst_residual"}


def numbers(value, address=""):
    """Every number of an answer by its address."""
    if isinstance(value, dict):
        pairs = [(key, below) for key, below in value.items() if key not in NO_ANSWER]
    elif isinstance(value, list):
        pairs = enumerate(value)
    else:
        kept = isinstance(value, (int, float)) and not isinstance(value, bool)
        return {address: value} if kept and math.isfinite(value) else {}
    found = {}
    for key, below in pairs:
        found |= numbers(below, f"{address}/{key}".lstrip("/"))
    return found


def speed_numbers(answer, diagnosis):
    return numbers(answer.to_dict(diagnosis))


def rank_numbers(ranking):
    """What sets and upgrades are worth at the three knock anchors.

    Of the sets the small ones and the best; fair shares hold all of them.
    """
    found = {}
    small = [one for one in ranking.sets if len(one.upgrades) <= LARGEST_KEPT_SET]
    for one in (*small, *ranking.best_by_cost, *ranking.best_by_hours):
        name = " + ".join(one.upgrades) or one.name
        found |= numbers(list(one.speed), name)
        found |= numbers({"least_margin": one.least_margin, "cost": one.cost}, name)
    for name, worth in ranking.upgrades.items():
        found |= numbers(
            {key: list(getattr(worth, key)) for key in ("alone", "last", "share")}, name
        )
    return found


class Today:
    """The answers of a scenario, each solved once."""

    def __init__(self, name):
        self.name = name
        file = f"scenarios/{name}.json"
        self.scenario = ww.loads((ROOT / file).read_bytes(), file)

    @cached_property
    def diagnosis(self):
        return self.scenario.diagnose()

    @cached_property
    def speed(self):
        return self.scenario.top_speed()

    @cached_property
    def ranking(self):
        return ww.rank(self.scenario, progress=False)

    def numbers(self):
        return {
            "speed": speed_numbers(self.speed, self.diagnosis),
            "rank": rank_numbers(self.ranking),
        }

    def keep(self):
        """Today's numbers, and the answers that the texts are made from."""
        text = json.dumps(self.numbers(), indent=0, ensure_ascii=False)
        (KEPT / f"{self.name}.json").write_text(text + "\n", encoding="utf-8")
        keep(f"speed_{self.name}", self.speed, self.diagnosis)
        keep(f"rank_{self.name}", self.ranking, self.scenario.diagnose(self.ranking))
        if self.name == "airfield_cyclecar":
            keep_budget(self.scenario)


def differences(kept, now, tolerance=TOLERANCE):
    """One line for each number that is gone, new or another."""
    lines = [f"{address}: gone, was {kept[address]!r}" for address in kept if address not in now]
    lines += [f"{address}: new, {now[address]!r}" for address in now if address not in kept]
    for address in kept.keys() & now.keys():
        was, value = kept[address], now[address]
        if abs(value - was) > tolerance * max(1.0, abs(was)):
            lines.append(f"{address}: {was!r} -> {value!r}")
    return sorted(lines)


def kept_answers(name):
    return json.loads((KEPT / f"{name}.json").read_text(encoding="utf-8"))


def main(arguments=None):
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("scenarios", nargs="*", default=SCENARIOS)
    parser.add_argument("--keep", action="store_true", help="keep today's numbers")
    options = parser.parse_args(arguments)
    changed = 0
    for name in options.scenarios:
        answers = Today(name)
        if options.keep:
            answers.keep()
            continue
        now = answers.numbers()
        kept = kept_answers(name)
        lines = [
            f"{question}/{line}"
            for question in kept
            for line in differences(kept[question], now[question])
        ]
        print(
            f"{name}: {sum(map(len, kept.values()))} numbers, {len(lines)} differ",
            *lines,
            sep="\n  ",
        )
        changed += len(lines)
    return 1 if changed else 0


if __name__ == "__main__":
    sys.exit(main())
