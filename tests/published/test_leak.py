"""What a hole in the charge path lets out and in, against isentropic flow (NACA Report 1135)."""

import json
from math import sqrt

import pytest

import windwall as ww
from published.test_exhaust_heat import bench
from windwall import si

pytestmark = pytest.mark.published

AREA, JET = 40e-6, 0.6  # m2, and the share of it that the jet fills
GAS = 287.05  # J/(kg K)
HOLE = {"id": "hole", "kind": "leak", "area": "40 mm2", "discharge_coefficient": JET}
BLOWER = {
    "id": "roots",
    "kind": "positive_blower",
    "displacement": "400 cm3",
    "drive_ratio": 1.2,
    "leak_area": "6 mm2",
}


def held(*parts, opening=1.0):
    document = bench().document()
    document["charge_path"] += parts
    return ww.loads(json.dumps(document)).operating_point(si(400.0), opening=opening)


def isentropic(pressure, temperature, behind):
    """M from r = (1 + 0.2 M²)^-3.5; the flow is p A M sqrt(1.4/(R T)) (1 + 0.2 M²)^-3."""
    mach = min(1.0, sqrt(5 * ((pressure / behind) ** (1 / 3.5) - 1)))
    speed = mach * sqrt(1.4 / (GAS * temperature)) * (1 + 0.2 * mach**2) ** -3
    return pressure * JET * AREA * speed


def test_a_hole_under_boost_loses_what_isentropic_flow_says():
    """Hot moist gas departs from 1.4 and from dry air's constant by less than a hundredth."""
    hole = held(BLOWER, HOLE).charge_path.hole
    weather = held().charge_path.plate.inlet.pressure
    assert hole.inlet.pressure > 1.1 * weather
    flow = isentropic(hole.inlet.pressure, hole.inlet.temperature, weather)
    assert hole.lost == pytest.approx(flow, rel=0.01)


def test_a_hole_under_vacuum_lets_in_what_isentropic_flow_says():
    """Past a shut plate it is choked: 0.0404 p A/sqrt(T) in SI (Balmer, example 16.12).

    The air under the bodywork is 20 K warmer than the day where nothing moves.
    """
    point = held(HOLE, opening=0.0)
    hole, weather = point.charge_path.hole, point.charge_path.plate.inlet
    assert hole.inlet.pressure < 0.5 * weather.pressure
    choked = 0.0404 * JET * AREA * weather.pressure / sqrt(weather.temperature + 20)
    assert -hole.lost == pytest.approx(choked, rel=0.02)
