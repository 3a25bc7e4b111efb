"""Where throttles and bypasses stand around a blower, against values computed once by a separate
script from the same equations: gas of constant heat capacity (gamma 1.4, cp 1004.675 J/kg K), an
engine of 450 cm3 at 5000 rpm that takes 0.85 of what fills it at the manifold, a blower of 220 cm3
turning 1.3 times as fast, a leak of 8 mm2, 170 W of friction of which half heats the charge, no
cooler, 25 degC and 100 kPa. The plates are openings of a fixed area, found for the stated flow."""

import json
import math

import pytest
from scipy.optimize import brentq

import windwall as ww

pytestmark = pytest.mark.worked

FRICTION = 0.25 * 5000 * 1.3 * math.pi / 30  # W
# What a gas whose heat capacity rises with temperature does otherwise than one of a constant one.
CLOSE = 0.02


def plate(name, area):
    return {
        "id": name,
        "kind": "throttle",
        "bore": "60 mm",
        "leak_area": f"{area} mm2",
        # Whatever the pedal does, this plate stays shut and leaves its leak.
        "linkage": {
            "columns": {"pedal_travel": "%", "plate_travel": "%"},
            "rows": [[0, 0], [100, 0]],
        },
    }


def bypass(area):
    return {
        "id": "bypass",
        "kind": "bypass",
        "area": f"{area} mm2",
        "opened_by": "hand",
        "hand_opening": "100 %",
    }


def blower(built_in_ratio):
    return {
        "id": "blower",
        "kind": "positive_blower",
        "displacement": "220 cm3",
        "drive_ratio": 1.3,
        "built_in_ratio": built_in_ratio,
        "leak_area": "8 mm2",
        "friction_torque": "0.25 N m",
        "friction_torque_per_speed": "0 N m",
        "friction_to_charge": 0.5,
        "fill_loss": "0 %",
        "belt_efficiency": 1,
    } | ADIABATIC


ADIABATIC = {"case_conductance": "0 W/K"}


def scenario(front=None, rear=None, area=None, built_in_ratio=1.0):
    path = [plate("front", front)] if front else []
    path += [blower(built_in_ratio)]
    path += [bypass(area)] if area else []
    path += [plate("rear", rear)] if rear else []
    document = {
        "format": "windwall-scenario/2",
        "title": "Test engine",
        "day": {"temperature": "25 degC", "pressure": "100 kPa", "relative_humidity": "0 %"},
        "body": {"mass": "300 kg", "drag_area": "0.5 m2"},
        "charge_path": path,
        "engine": {
            "kind": "cylinder",
            "cylinders": 1,
            "bore": "80 mm",
            "stroke": f"{450e3 / (math.pi * 40**2):.9f} mm",
            "compression_ratio": 8,
            "rev_limit": "6000 rpm",
            "breathing": {"stated_efficiency": 0.85},
            "knock_anchor": {"octane_number": 40},
        },
        "fuel": {},
        "driveline": [{"id": "gearbox", "kind": "gearbox", "ratios": [4]}],
        "tyres": {"rolling_radius": "280 mm"},
    }
    return ww.loads(json.dumps(document))


def held(**layout):
    return scenario(**layout).operating_point("5000 rpm")


def at_flow(plate_name, grams, **layout):
    """The layout with that plate's area found for a flow of the engine in g/s."""

    def excess(area):
        return held(**layout, **{plate_name: area}).manifold.air_flow * 1e3 - grams

    return held(**layout, **{plate_name: brentq(excess, 3, 50, xtol=1e-9)})


def check(point, p1, p2, inlet, outlet, indicated, returned):
    blower = point.charge_path["blower"]
    assert blower.inlet.pressure / 1e3 == pytest.approx(p1, rel=CLOSE)
    assert blower.outlet.pressure / 1e3 == pytest.approx(p2, rel=CLOSE)
    assert blower.inlet.temperature - 273.15 == pytest.approx(inlet, rel=CLOSE, abs=0.5)
    assert blower.outlet.temperature - 273.15 == pytest.approx(outlet, rel=CLOSE, abs=0.5)
    # Where the valve leaves almost no pressure the printed watts have one digit.
    assert blower.shaft_power - FRICTION == pytest.approx(indicated, rel=CLOSE, abs=0.8)
    if returned:
        recirculated = point.charge_path["bypass"].returned * 1e3
        assert recirculated == pytest.approx(returned, rel=CLOSE, abs=0.06)


def test_a_front_throttle_without_bypass():
    check(at_flow("front", 6), 24.6, 40.6, 25, 102.5, 382, 0)


@pytest.mark.parametrize(
    ("area", "built_in_ratio", "values"),
    [
        (100, 1.0, (33.1, 34.2, 30.9, 43.4, 26, 2.8)),
        (300, 1.0, (33.7, 33.8, 30.0, 39.7, 3, 3.1)),
        (300, 1.3, (34.3, 34.5, 32.3, 45.8, 40, 3.2)),
    ],
)
def test_b_front_throttle_with_bypass(area, built_in_ratio, values):
    check(at_flow("front", 6, area=area, built_in_ratio=built_in_ratio), *values)


def test_c_rear_throttle_without_bypass_has_no_survivable_state():
    point = held(rear=13)
    assert point.status == "no_survivable_state"
    assert "blower" in point.sentence
    assert "bypass" in point.sentence


@pytest.mark.parametrize(
    ("area", "values"),
    [
        (100, (100, 114.3, 76.7, 95.7, 341, 16.4)),
        (300, (100, 102.0, 41.9, 47.1, 48, 19.8)),
        (600, (100, 100.5, 37.5, 41.2, 12, 20.5)),
    ],
)
def test_d_rear_throttle_with_bypass(area, values):
    check(at_flow("rear", 6, area=area), *values)


def test_e_two_throttles_without_bypass():
    point = held(front=40, rear=40)
    assert point.manifold.air_flow * 1e3 == pytest.approx(9.4, rel=CLOSE)
    check(point, 46.4, 140.3, 25, 272, 2239, 0)


def test_f_two_throttles_with_bypass():
    point = held(front=40, rear=40, area=300)
    assert point.manifold.air_flow * 1e3 == pytest.approx(7.5, rel=CLOSE)
    check(point, 81.1, 82.3, 34.8, 40.1, 29, 14.0)


LAYOUTS = [
    {"front": 30},
    {"front": 30, "area": 100},
    {"front": 20, "area": 300, "built_in_ratio": 1.3},
    {"rear": 25, "area": 100},
    {"rear": 15, "area": 600},
    {"front": 40, "rear": 40, "area": 300},
]


@pytest.mark.parametrize("layout", LAYOUTS)
def test_mass_closes_from_the_station_table_alone(layout):
    """To 1e-9: what enters the blower is what the path brings and what the bypass returns."""
    point = held(**layout)
    blower = point.charge_path["blower"]
    returned = point.charge_path["bypass"].returned if "area" in layout else 0
    net = point.manifold.air_flow
    assert blower.inlet.flow - returned == pytest.approx(net, rel=1e-9)
    filled = 0.85 * point.manifold.pressure / (287.048 * point.manifold.temperature)
    drawn = filled * 450e-6 * 5000 / 120
    # The gas constant of the stated composition of air has six digits here.
    assert net == pytest.approx(drawn, rel=2e-6)


@pytest.mark.parametrize("layout", LAYOUTS)
def test_energy_closes_whatever_goes_round(layout):
    """h(T2) - h(Ta) = P / m of the net flow, to 1e-6, with the gas of an independent table."""
    cantera = pytest.importorskip("cantera")
    point = held(**layout)
    blower = point.charge_path["blower"]
    air = cantera.Solution("air.yaml")
    air.TPX = 298.15, 1e5, "N2:0.78084,O2:0.20946,AR:0.00934"
    before = air.enthalpy_mass
    air.TP = blower.outlet.temperature, 1e5
    into = blower.shaft_power - FRICTION / 2
    # The share of carbon dioxide, 0.04 %, is not in that table's air, nor the same polynomials.
    assert air.enthalpy_mass - before == pytest.approx(into / point.manifold.air_flow, rel=2e-3)


@pytest.mark.parametrize("layout", LAYOUTS)
def test_the_rise_over_the_weather_is_the_power_over_the_net_flow(layout):
    point = held(**layout)
    blower = point.charge_path["blower"]
    into = blower.shaft_power - FRICTION / 2
    enthalpy = ww.physics.gas_enthalpy
    rise = enthalpy("dry_air", blower.outlet.temperature) - enthalpy("dry_air", 298.15)
    assert rise == pytest.approx(into / point.manifold.air_flow, rel=1e-6)
