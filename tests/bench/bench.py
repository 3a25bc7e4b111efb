"""`make bench`: the counts and times of the core, and beside them those of a plain-Python twin.

A twin is a package `tests/twin` with a function `top_speed(path)` that solves a scenario file and
returns an object with the number of its residual `evaluations`. Without one that is said.
"""

import importlib
import re
import subprocess
import sys
import time
from pathlib import Path

ROOT = Path(__file__).parents[2]


def main(binary: str, scenarios: list[str]) -> None:
    core = subprocess.run([binary, *scenarios], check=True, capture_output=True, text=True).stdout
    print(core, end="")
    sys.path.insert(0, str(ROOT))
    try:
        twin = importlib.import_module("tests.twin")
    except ModuleNotFoundError:
        print("plain-Python twin: absent, nothing to compare with")
        return
    for scenario in scenarios:
        beside_twin(twin, scenario, core)


def beside_twin(twin, scenario: str, core: str) -> None:
    """The twin's own time and evaluations, and how many times faster the core is."""
    start = time.perf_counter()
    answer = twin.top_speed(scenario)
    spent = time.perf_counter() - start
    (microseconds,) = re.findall(rf"^{re.escape(scenario)}: .* ([\d.]+) us a top", core, re.M)
    print(
        f"{scenario}: the twin takes {1e3 * spent:.1f} ms and {answer.evaluations} evaluations, "
        f"{1e6 * spent / float(microseconds):.0f} times the core's time"
    )


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2:])
