"""`make bench`: the counts and times of the core, beside them those of a twin and of a peer.

The twin is the package `tests/twin`, in plain Python; the peer is `peer.c`, compiled as the core
is. Of a scenario with parts that they do not have, that is said. Times are of the processor.
"""

import json
import re
import subprocess
import sys
import tempfile
import time
from math import pi
from pathlib import Path
from statistics import median

import numpy as np

import windwall
from bench import peer_check
from twin import drive, twin
from twin.reading import told
from windwall import _core

MISSING = (KeyError, ValueError, TypeError, NotImplementedError)
KILOMETRE = {
    "id": "kilometre",
    "starts": "soaked",
    "launch_gear": 1,
    "legs": [{"kind": "full_throttle", "for_distance": "1000 m"}],
}
ROUNDS = 7  # a machine that others use is not as fast from one second to the next


def main(binary: str, scenarios: list[str]) -> None:
    core = subprocess.run([binary, *scenarios], check=True, capture_output=True, text=True).stdout
    print(core, end="")
    for scenario in scenarios:
        beside_peer(binary, scenario)
        beside_twin(scenario, core)
        beside_driven_twin(scenario, core)


def beside_twin(scenario: str, core: str) -> None:
    """The twin's own time and evaluations, and how many times faster the core is."""
    document = told(windwall.load(scenario))
    start = time.process_time()
    try:
        answer = twin.top_speed(document)
    except MISSING as missing:
        print(f"{scenario}: the twin does not have all of its parts: {missing}")
        return
    spent = time.process_time() - start
    (microseconds,) = re.findall(rf"^{re.escape(scenario)}: .* ([\d.]+) us a top", core, re.M)
    print(
        f"{scenario}: the twin takes {1e3 * spent:.1f} ms and {answer['residuals']} evaluations, "
        f"{1e6 * spent / float(microseconds):.0f} times the core's time"
    )


def beside_driven_twin(scenario: str, core: str) -> None:
    """The same standing kilometre, driven by the twin from the temperatures of the core's start."""
    found = re.findall(rf"^{re.escape(scenario)}: ([\d.]+) ms a standing", core, re.M)
    if not found:
        return
    car = windwall.load(scenario)
    document = car.document() | {"outings": [KILOMETRE]}
    try:
        vehicle = twin.understood(told(car))
        shift = 0.92 * vehicle["engine"]["rev_limit"]
        clutch = clutch_of(vehicle)
        document["outings"][0]["shift_speed"] = f"{shift * 30 / pi!r} rpm"
        begun = _core.drive(windwall.loads(json.dumps(document)).core, KILOMETRE["id"])
        outing = {"launch_speed": clutch["launch_speed"], "shift_speed": shift}
        outing |= {"launch_gear": 1, "shift_time": shift_time(vehicle), "for_distance": 1000.0}
        start = time.process_time()
        driven = drive.Drive(vehicle, drive.nodes_of(begun), outing).go()
        spent = time.process_time() - start
    except MISSING as missing:
        print(f"{scenario}: the twin cannot drive it: {missing}")
        return
    lasts = begun["columns"][0][-1]
    print(
        f"{scenario}: the twin takes {spent:.1f} s and {driven.evaluations} right-hand sides for "
        f"its kilometre of {driven.time:.3f} s (core {lasts:.3f} s), "
        f"{1e3 * spent / float(found[0]):.0f} times the core's time"
    )


def clutch_of(vehicle: dict) -> dict:
    for part in vehicle["driveline"]:
        if part["kind"] == "clutch":
            return part
    raise NotImplementedError("a train without a clutch that a driver lets in")


def shift_time(vehicle: dict) -> float:
    return max(part["shift_time"] for part in vehicle["driveline"] if "shift_time" in part)


def beside_peer(binary: str, scenario: str) -> None:
    """That the peer answers as the core does, then what a point costs both, timed in turn."""
    car = peer_check.on_petrol(windwall.load(scenario))
    try:
        apart = peer_check.differences(car)
    except MISSING as missing:
        print(f"{scenario}: the peer does not have all of its parts: {missing}")
        return
    assert len(apart) >= 20, f"{scenario}: {len(apart)} points to compare"
    assert max(apart) <= peer_check.CLOSE, f"{scenario}: core and peer differ by {max(apart):.1e}"
    print(
        f"{scenario}: on petrol the peer agrees with the core at {len(apart)} points "
        f"to {max(apart):.0e}"
    )
    vehicle = twin.understood(told(car))
    rounds = [
        (cost_of_core(binary, car), peer_check.cost_of_points(vehicle)) for _ in range(ROUNDS)
    ]
    for k, of in enumerate(("a cold point", "a point")):
        core, peer = (np.median([costs[side][k] for costs in rounds], axis=0) for side in (0, 1))
        ratio = median(theirs[k][0] / ours[k][0] for ours, theirs in rounds)
        print(
            f"{scenario}: the peer takes {peer[0]:.2f} us {of} of {peer[1]:.1f} evaluations, "
            f"{ratio:.2f} times the core's time ({core[0]:.2f} us, {core[1]:.1f} evaluations)"
        )


def cost_of_core(binary: str, car: windwall.Scenario) -> list[tuple[float, float]]:
    """Microseconds and evaluations of a cold point and of one from its neighbour."""
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "car.json"
        file.write_text(json.dumps(car.document()), "utf-8")
        command = [binary, "points", file]
        ran = subprocess.run(command, check=True, capture_output=True, text=True)
    return [tuple(map(float, line.split()[::2])) for line in ran.stdout.splitlines()]


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2:])
