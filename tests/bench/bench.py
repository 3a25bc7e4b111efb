"""`make bench`: the counts and times of the core, and beside them those of a plain-Python twin.

The twin is the package `tests/twin`; of a scenario with parts that it does not have, that is said.
"""

import importlib
import re
import subprocess
import sys
import time
from pathlib import Path

import windwall

ROOT = Path(__file__).parents[2]


def main(binary: str, scenarios: list[str]) -> None:
    core = subprocess.run([binary, *scenarios], check=True, capture_output=True, text=True).stdout
    print(core, end="")
    sys.path.insert(0, str(ROOT / "tests"))
    twin = importlib.import_module("twin.twin")
    for scenario in scenarios:
        beside_twin(twin, scenario, core)


def beside_twin(twin, scenario: str, core: str) -> None:
    """The twin's own time and evaluations, and how many times faster the core is."""
    document = windwall.load(scenario).document()
    start = time.perf_counter()
    try:
        answer = twin.top_speed(document)
    except (KeyError, ValueError, TypeError, NotImplementedError) as missing:
        print(f"{scenario}: the twin does not have all of its parts ({missing!r})")
        return
    spent = time.perf_counter() - start
    (microseconds,) = re.findall(rf"^{re.escape(scenario)}: .* ([\d.]+) us a top", core, re.M)
    print(
        f"{scenario}: the twin takes {1e3 * spent:.1f} ms and {answer['residuals']} evaluations, "
        f"{1e6 * spent / float(microseconds):.0f} times the core's time"
    )


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2:])
