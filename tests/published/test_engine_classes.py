"""Classes of engines against what is printed of whole classes.

Sources: course ME 433, Internal Combustion Engines (slides "Understanding mean effective pressure",
read): unblown spark-ignition engines peak at 850 to 1200 kPa. Energy shares of FEV at full load as
printed at x-engineer.org (read): 29 % at the crank, 3 % rubbing, 1 % gas exchange. JSME
mechanical-engineering dictionary, section 11, entry 1002813 (read): filling falls quickly beyond a
Mach index of 0.5, and valves are sized so that the highest speed stays below it. Horsepower of
small engines counted from manuals (forum thread, second-hand): 40 cm3 for one with side valves, 32
with overhead valves, at 3600 rpm. The priors were judged with these figures at hand: agreement
shows that class and model fit, not that another engine would be predicted.
"""

import json

import numpy as np
import pytest

import windwall as ww

pytestmark = pytest.mark.published

ENGINE = {
    "format": "windwall-scenario/2",
    "day": {"temperature": "25 degC", "pressure": "99 kPa", "relative_humidity": "0 %"},
    "body": {"mass": "600 kg", "drag_area": "0.7 m2"},
    "charge_path": [
        {"id": "airbox", "kind": "filter", "drop": "1 kPa", "at_flow": "60 g/s"},
        {"id": "plate", "kind": "throttle", "bore": "60 mm"},
    ],
    "driveline": [{"id": "box", "kind": "gearbox", "ratios": [9.0, 5.0]}],
    "tyres": {"size": "145/80 R13"},
}

BEST_TORQUE = {
    "columns": {"engine_speed": "rpm", "retard": "deg"},
    "rows": [[1000, 0], [9000, 0]],
}


def engine(chamber, duty, ratio, **more):
    """An engine of one class, four cylinders of 80 by 80 mm unless said otherwise."""
    design = {"chamber": chamber, "duty": duty, "mixture": "carburettor", "exhaust": "muffled"}
    design |= {"cooling": "liquid"} | more.pop("design", {})
    sizes = {"cylinders": 4, "bore": "80 mm", "stroke": "80 mm", "rev_limit": "6000 rpm"} | more
    made = {"kind": "cylinder", "compression_ratio": ratio, "design": design, **sizes}
    made["spark"] = {"policy": "as_given", "table": BEST_TORQUE}
    return ww.loads(json.dumps({**ENGINE, "engine": made}))


def mean_pressure(car, engine_speed):
    """kPa at the crank."""
    point = car.operating_point(engine_speed=f"{engine_speed} rpm")
    swept = np.pi / 4 * car.get("engine/bore") ** 2 * car.get("engine/stroke")
    swept *= car.get("engine/cylinders")
    return 4 * np.pi * point.engine.torque / swept / 1e3


def curve(car, speeds):
    return np.array([mean_pressure(car, speed) for speed in speeds])


ROAD = [
    ("two_valve_wedge", 8.5, {}),
    ("two_valve_hemispherical", 9.0, {}),
    ("four_valve_pent_roof", 10.0, {"design": {"mixture": "ported_injection"}}),
]


@pytest.mark.parametrize(("chamber", "ratio", "more"), ROAD)
def test_road_engines_peak_in_the_range_of_their_kind(chamber, ratio, more):
    peak = curve(engine(chamber, "road", ratio, **more), range(1500, 5500, 500)).max()
    print(f"{chamber}: {peak:.0f} kPa")
    assert 850 <= peak <= 1200


def test_side_valves_give_about_four_fifths_of_overhead_valves():
    small = {"cylinders": 1, "bore": "80 mm", "stroke": "60 mm", "rev_limit": "3800 rpm"}
    small["design"] = {"cooling": "air"}
    side = mean_pressure(engine("side_valve", "work", 6.5, **small), 3600)
    overhead = mean_pressure(engine("two_valve_wedge", "work", 8.2, **small), 3600)
    print(f"{side:.0f} and {overhead:.0f} kPa, counted 621 and 777")
    assert side / overhead == pytest.approx(32 / 40, abs=0.08)
    assert side == pytest.approx(621, rel=0.12)
    assert overhead == pytest.approx(777, rel=0.12)


def test_rubbing_share_of_the_fuel():
    """3 of 29: the band is that of one diagram for all engines."""
    car = engine("two_valve_wedge", "road", 9.0)
    shares = []
    for speed in (2000, 3000, 4000):
        piston_speed = 2 * car.get("engine/stroke") * speed / 60
        rubbing = car.get("engine/friction/base")
        rubbing += car.get("engine/friction/per_piston_speed") * piston_speed
        rubbing *= car.get("engine/friction/scale")
        shares.append(rubbing / 1e3 / mean_pressure(car, speed))
    print("rubbing over brake", np.round(shares, 3))
    assert min(shares) <= 3 / 29 <= max(shares)


@pytest.mark.parametrize("chamber", ["two_valve_wedge", "four_valve_pent_roof"])
def test_full_power_lies_about_the_mach_index_that_valves_are_sized_by(chamber):
    car = engine(chamber, "road", 9.0)
    speeds = np.arange(3000, 6001, 250)
    power = curve(car, speeds) * speeds
    at = speeds[np.argmax(power)]
    piston_speed = 2 * car.get("engine/stroke") * at / 60
    area = car.get("engine/valves/per_side") * car.get("engine/valves/intake_ratio") ** 2
    index = piston_speed / (car.get("engine/valves/flow_coefficient") * area * 346)
    print(f"{chamber}: full power at {at} rpm, Z {index:.2f}")
    assert 0.4 <= index <= 0.75


@pytest.mark.memory
@pytest.mark.parametrize("chamber", ["two_valve_wedge", "four_valve_pent_roof"])
def test_the_peak_of_torque_lies_at_the_gas_speed_that_was_found_best(chamber):
    """140 ft/s in the intake valve: Ricardo, as a page tells it. Within a fifth: rated figures put
    the level of a road engine's filling higher up, and four valves then have their peak at 36.
    """
    car = engine(chamber, "road", 9.0)
    speeds = np.arange(2000, 5001, 125)
    at = speeds[np.argmax(curve(car, speeds))]
    area = car.get("engine/valves/per_side") * car.get("engine/valves/intake_ratio") ** 2
    gas = 2 * car.get("engine/stroke") * at / 60 / area
    print(f"{chamber}: peak of torque at {at} rpm, gas at {gas:.0f} m/s")
    assert gas == pytest.approx(42.7, rel=0.2)
