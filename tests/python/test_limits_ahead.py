"""What a vehicle would pass by going faster, how far beyond its plate it is asked, how late and how
hot it burns, and what a pressure ratio at a shut throttle loads.
"""

from pathlib import Path

import numpy as np
import pytest

import windwall as ww

SCENARIOS = Path(__file__).parents[2] / "scenarios"
KELVIN = 273.15


@pytest.fixture(scope="module")
def cyclecar():
    return ww.load(SCENARIOS / "airfield_cyclecar.json")


@pytest.fixture(scope="module")
def one_gear(cyclecar):
    """The same with its highest gear alone: in lower ones the engine turns faster on the way."""
    document = cyclecar.document()
    for part in document["driveline"]:
        if part["id"] == "gearbox":
            part["ratios"] = part["ratios"][-1:]
    return cyclecar.restated(document | {"observed": [], "upgrades": [], "outings": []})


def limited(car, **limits):
    """The vehicle with stated limits alone, by addresses with `__` for `/`."""
    made = {
        address.replace("__", "/"): {"max": most, "why": "so"} for address, most in limits.items()
    }
    return car.restated(car.document() | {"limits": made})


def ahead(car):
    return {one.address: one for one in car.top_speed().ahead}


def test_the_tyres_are_as_far_ahead_as_their_speed_is(cyclecar):
    """What goes by the road is the speed itself."""
    car = cyclecar.set({"tyres/speed_limit": "130 km/h"})
    answer = car.top_speed()
    (tyres,) = (one for one in answer.ahead if one.address == "road/speed")
    assert tyres.speed == pytest.approx(130 / 3.6 - answer.speed, rel=1e-6)
    assert tyres.share == pytest.approx(tyres.speed / answer.speed, rel=1e-9)
    assert tyres.value == pytest.approx(answer.speed, rel=1e-6)


def test_what_goes_with_the_engine_is_ahead_in_proportion(one_gear):
    """Piston and rotor speed go with the engine, and in one gear the road, but for slip."""
    car = limited(one_gear, engine__piston_speed="11 m/s")
    point = car.top_speed().point
    found = ahead(car)["engine/piston_speed"]
    assert point.engine.piston_speed < 11
    assert found.share == pytest.approx(11 / point.engine.piston_speed - 1, rel=0.05)


def test_what_bends_is_met_on_the_way_that_is_solved(one_gear):
    """Against a vehicle of less drag, which goes faster: so much warmer it is there."""

    def outlet(answer):
        return answer.point.charge_path["blower"].outlet.temperature

    now = one_gear.top_speed()
    hot = f"{outlet(now) + 5 - KELVIN} degC"
    one = ahead(limited(one_gear, charge_path__blower__outlet__temperature=hot))
    faster = one_gear.set({"body/drag_area": "0.68 m2"}).top_speed()
    rise = (outlet(faster) - outlet(now)) / (faster.speed - now.speed)
    told = 5 / one["charge_path/blower/outlet/temperature"].speed
    assert told == pytest.approx(rise, rel=0.1)  # two chords of a bent line


def test_what_was_passed_in_a_lower_gear_is_not_ahead(cyclecar):
    """The engine turns faster before each shift than at the end."""
    now = cyclecar.top_speed().point.engine.piston_speed
    car = limited(cyclecar, engine__piston_speed=f"{now + 0.1} m/s")
    assert "engine/piston_speed" in {one.address for one in car.top_speed().passed}
    assert "engine/piston_speed" not in ahead(car)


def test_the_nearest_is_named_first_and_all_of_them(one_gear):
    car = limited(one_gear, engine__piston_speed="11 m/s", road__speed="126 km/h")
    answer = car.top_speed()
    shares = [one.share for one in answer.ahead]
    assert shares == sorted(shares)
    text = " ".join(repr(answer).split())
    said = text[text.index("Going faster it would pass these limits") :]
    assert said.index("road/speed max 126 km/h (so)") < said.index("engine/piston_speed max 11 m/s")


def test_what_is_passed_already_is_not_ahead(cyclecar):
    car = limited(cyclecar, engine__piston_speed="9 m/s")
    assert "engine/piston_speed" not in ahead(car)
    assert "engine/piston_speed" in {one.address for one in car.top_speed().passed}


def test_at_the_rev_limit_only_what_goes_by_the_road_is_ahead(cyclecar):
    """A longer gearing alone goes faster there, and the engine turns no faster in it."""
    short = {"driveline/final_chain/teeth_rear": 45, "tyres/speed_limit": "150 km/h"}
    car = limited(cyclecar.set(short), engine__piston_speed="12 m/s")
    assert car.top_speed().limited_by == "rev_limit"
    assert [one.address for one in car.top_speed().ahead] == ["road/speed"]


def test_beyond_the_rev_limit_of_its_gear_only_the_road_is_told(one_gear):
    """What a longer gearing would meet is the tyres, and no engine speed that there never is."""
    far = limited(one_gear.set({"tyres/speed_limit": "290 km/h"}), engine__piston_speed="12 m/s")
    assert list(ahead(far)) == ["road/speed"]


def test_an_answer_far_beyond_the_plate_says_so(cyclecar):
    answer = cyclecar.top_speed()
    beyond = 100 * (answer.engine_speed * 30 / np.pi / 3600 - 1)  # the plate: 3600 rpm
    assert beyond > 10
    text = " ".join(repr(answer).split())
    assert f"{beyond:.0f} % beyond 3600 rpm, the highest that a rated figure is stated" in text
    assert "and on what was observed, and on no plate" in text
    within = ww.load(SCENARIOS / "lakebed_streamliner.json").top_speed()
    assert "a rated figure is stated at" not in " ".join(repr(within).split())


def late_heat(answer):
    return [one for one in answer.cautions if one.about == "late_heat"]


def test_a_hot_port_with_a_late_spark_is_warned_of(cyclecar):
    """Both have to be: 900 degC, and 12 degrees behind the spark of best torque."""
    late = cyclecar.install("small_pulley").top_speed()
    point = late.point
    assert point.knock.retard > np.radians(12)
    assert point.engine.exhaust_gas_temperature > 900 + KELVIN
    (found,) = late_heat(late)
    assert found.found == point.engine.exhaust_gas_temperature
    assert found.high == pytest.approx(900 + KELVIN)
    assert "common practice" in found.sentence
    early = cyclecar.top_speed()
    assert early.point.knock.retard < np.radians(12)
    assert early.point.engine.exhaust_gas_temperature > 900 + KELVIN
    assert late_heat(early) == []


def test_a_rating_of_the_exhaust_stands_before_common_practice(cyclecar):
    rated = limited(cyclecar.install("small_pulley"), engine__exhaust_gas_temperature="1000 degC")
    assert late_heat(rated.top_speed()) == []


def test_the_ratio_that_loads_is_of_the_difference_of_pressures(cyclecar):
    blower = cyclecar.top_speed().point.charge_path["blower"]
    ambient = cyclecar.get("day/pressure")
    difference = blower.outlet.pressure - blower.inlet.pressure
    assert blower.load_ratio == pytest.approx(1 + difference / ambient, rel=1e-12)


def test_thin_gas_at_a_shut_throttle_passes_no_rated_pressure_ratio():
    """On the overrun the streamliner's blower has 2.4 to 1 between pressures of a few kPa."""
    car = ww.load(SCENARIOS / "lakebed_streamliner.json")
    drive = car.drive("record", progress=False)
    ratio, load = (drive[f"charge_path/blower/{key}_ratio"] for key in ("pressure", "load"))
    rated = car.get("charge_path/blower/rated_pressure_ratio")
    assert np.nanmax(ratio) > rated > np.nanmax(load)
    assert not any("_ratio" in one.address for one in drive.passed)
    lower = car.set({"charge_path/blower/rated_pressure_ratio": 1.4}).drive("record")
    (passed,) = (one for one in lower.passed if one.address.endswith("load_ratio"))
    assert passed.worst == pytest.approx(np.nanmax(load), rel=1e-6)
