"""How fast, why no faster, and nothing that flows on by accident."""

import json
import math
import pickle
from math import hypot

import pytest

import windwall as ww


def test_speeds_and_gears(best):
    assert best.answered
    assert best.status in {"solved", "knock_limited"}
    assert best.goal_speed == best.run_up_speed < best.speed
    assert best.gear in {1, 2, 3, 4}
    assert 0 < best.opening <= 1
    assert best.run_up_time > 0
    assert best.point.road.speed == pytest.approx(best.speed, rel=1e-6)
    assert best.point.road.gear == best.gear
    assert best.run_up.start_gear == 1
    assert "gear to start in" in repr(best)


def test_both_accounts_add_up(best):
    for account in (best.shaft, best.heat):
        assert account.iloc[0] == pytest.approx(account.iloc[1:].sum(), rel=1e-9)
        assert account.attrs["units"] == "W"
    assert best.shaft.index[0] == "indicated"
    assert best.heat.index[0] == "fuel"


def test_drag_in_the_account_is_half_rho_cda_v_cubed(car, best):
    """Against the formula, with the density of humid air by CIPM-like ideal mixing."""
    v, area = best.speed, car.get("body/drag_area")
    temperature, pressure = car.get("day/temperature"), car.get("day/pressure")
    saturation = 611.2 * math.exp(17.62 * (temperature - 273.15) / (temperature - 30.03))
    vapour = car.get("day/relative_humidity") * saturation  # Magnus form of WMO-No. 8
    density = (pressure - vapour) / (287.05 * temperature) + vapour / (461.5 * temperature)
    assert best.shaft["air"] == pytest.approx(0.5 * density * area * v**3, rel=1e-3)


def test_stations_are_a_frame_in_si(best):
    stations = best.stations
    assert list(stations.columns) == ["pressure", "temperature", "flow", "liquid"]
    assert list(stations.index)[:2] == ["before airbox", "behind airbox"]
    assert stations.attrs["units"] == {
        "pressure": "Pa",
        "temperature": "K",
        "flow": "kg/s",
        "liquid": "kg/s",
    }
    assert stations.loc["behind roots", "pressure"] > stations.loc["behind butterfly", "pressure"]


def test_everything_that_goes_in_leaves_by_the_exhaust(document):
    document["charge_path"][2:2] = [
        {
            "id": "mist",
            "kind": "evaporative_injection",
            "blend_by": "mass",
            "methanol": "0 %",
            "rated_flow": "100 cm3/min",
            "pump_pressure": "7 bar",
        }
    ]
    answer = ww.loads(json.dumps(document)).top_speed()
    last = answer.point.charge_path.log.outlet
    assert last.liquid > 0
    flow = last.flow + last.liquid + answer.point.engine.fuel_flow

    def enthalpy(T):  # as docs/physics/heat.md states it
        return 1013 * T + 0.2755 / 2 * T**2

    above = enthalpy(answer.exhaust_temperature) - enthalpy(28 + 273.15)
    assert answer.heat["exhaust"] == pytest.approx(flow * above, rel=1e-9)


def test_small_changes_have_the_right_sign(best):
    gains = {one.change: one.speed for one in best.sensitivities}
    assert gains["power_up"] > 0
    assert gains["drag_area_down"] > 0


def test_margins_leave_no_knock_margin_when_used_up(car, best):
    left = best.margins
    assert left.blower == "roots"
    assert left.boost > 0
    assert left.charge_temperature > 0
    assert left.spark > 0
    # The same vehicle driven so fast, with its spark held: nothing is left.
    table = {"columns": {"engine_speed": "rpm", "retard": "deg"}}
    degrees = math.degrees(best.knock.retard)
    table["rows"] = [[0, degrees], [9000, degrees]]
    text = json.loads(car.text())
    text["engine"].setdefault("spark", {}).update(policy="as_given", table=table)
    text["engine"]["lambda"] = best.point.engine["lambda"]  # held with the spark
    for part in text["charge_path"]:
        if part["id"] == "roots":
            part["drive_ratio"] = left.drive_ratio
    point = ww.loads(json.dumps(text)).operating_point(
        engine_speed=ww.si(best.engine_speed), road_speed=ww.si(best.speed)
    )
    assert point.knock.margin == pytest.approx(0, abs=1e-3)


def test_the_model_is_held_against_what_was_seen(car, best):
    compared = {one.key: one for one in car.against_observed()}
    assert set(compared) == {"speed", "gear", "boost"}
    speed = compared["speed"]
    spread = hypot(2 / 3.6, speed.model_sigma)
    assert speed.off == pytest.approx((best.goal_speed - 122 / 3.6) / spread)
    assert compared["gear"].off is None
    assert "CAUTION" in best.summary(car.diagnose())
    assert "CAUTION" not in repr(best)
    assert "diagnose()" in repr(best)


def test_limits_passed_name_where_first(car):
    answer = car.set({"charge_path/roots/rated_speed": "5000 rpm"}).top_speed()
    (passed,) = answer.passed
    assert passed.address == "charge_path/roots/rotor_speed"
    assert passed.first == pytest.approx(passed.max, rel=1e-12)
    assert passed.worst > passed.max
    assert passed.road_speed <= answer.speed * (1 + 1e-9)
    assert "max 5000 rpm" in repr(answer)


def test_what_nobody_rated_is_not_called_within_limits(best):
    assert "charge_path/roots/rotor_speed" in best.unrated
    assert "nothing is said about them" in " ".join(repr(best).split())


NUMBERS = [
    "speed", "run_up_speed", "goal_speed", "run_up", "gear", "engine_speed", "opening", "shaft",
    "heat", "exhaust_temperature", "point", "stations", "knock", "knock_band", "sensitivities",
    "passed",
]  # fmt: skip


@pytest.mark.parametrize("number", NUMBERS)
def test_a_number_off_an_unanswered_outcome_raises_its_sentence(stuck, number):
    answer = stuck.top_speed()
    with pytest.raises(ww.NoAnswer) as caught:
        getattr(answer, number)
    assert str(caught.value) == answer.sentence
    assert caught.value.status == answer.status


def test_words_are_there_without_an_answer(stuck):
    answer = stuck.top_speed()
    assert not answer.answered
    assert answer.limited_by == "standstill"
    for said in (repr(answer), repr(ww.rank(stuck, progress=False))):
        assert "\nNo answer\n" in said
        assert answer.status not in said  # a word of the program, for programs
    assert answer.cautions == ()
    assert isinstance(answer.unrated, tuple)


def test_outcomes_pickle_as_numbers(best, stuck):
    again = pickle.loads(pickle.dumps(best))
    assert again == best
    assert repr(again) == repr(best)
    assert again.shaft.equals(best.shaft)
    nothing = pickle.loads(pickle.dumps(stuck.top_speed()))
    assert nothing.status == stuck.top_speed().status


def test_printing_is_plain_and_ends_in_care(best):
    text = repr(best)
    assert text.isascii()
    assert " safe" not in text
    assert "\x1b" not in text
    care = text[text.index("\nCare\n") :]
    for words in ("part throttle first", "plugs read", "one change at a", "closed course"):
        assert words in care
    assert all(len(line) <= 100 for line in text.splitlines())


def test_us_units_are_shown_where_asked_for(document):
    import json

    document["units"] = "us"
    text = repr(ww.loads(json.dumps(document)).top_speed())
    for unit in ("mph", "degF", "psig", "lb/min", "hp"):
        assert unit in text


def test_threads_give_what_one_gives(car):
    """Solving lets other threads run, and nothing is shared between two of them."""
    from concurrent.futures import ThreadPoolExecutor

    with ThreadPoolExecutor(2) as pool:
        both = list(pool.map(lambda _: car.top_speed(), range(2)))
    assert both[0] == both[1] == car.top_speed()
