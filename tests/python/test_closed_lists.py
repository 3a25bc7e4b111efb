"""Each word an answer may use for how it ended, what binds and what it warns of: a scenario that
brings it about. The lists are the core's own, so a word that nothing produces fails here.
"""

import copy
import json
from pathlib import Path

import pytest

import windwall as ww
from python.samples import CURVE, DOCUMENT
from windwall import _core
from windwall.results.answer import answer_rows


def words_of(rows):
    """The words that may stand under each key that has a closed list."""
    found = {}
    for key, row in rows.items():
        found |= {key: row["words"]} if "words" in row else {}
        found |= words_of(row.get("rows", {}))
    return found


WORDS = words_of({key: {"rows": answer_rows(key)} for key in _core.answer_rows()})
CYCLECAR = Path(__file__).parents[2] / "scenarios" / "airfield_cyclecar.json"
SHEAVES = {"centre_distance": "270 mm", "belt_length": "962 mm"}
HALF_SHUT = {"engine_speed": "5000 rpm", "opening": "8 %"}


def merged(into, changes):
    made = dict(into)
    for key, value in changes.items():
        both = isinstance(value, dict) and isinstance(made.get(key), dict)
        made[key] = merged(made[key], value) if both else value
    return made


def part(id, **changes):
    return next(one for one in DOCUMENT["charge_path"] if one["id"] == id) | changes


def path(blower, *behind, before=()):
    return [part("airbox"), part("butterfly"), *before, blower, *behind, part("log")]


def vehicle(charge_path=None, **changes):
    made = merged(copy.deepcopy(DOCUMENT), changes)
    made["upgrades"], made["observed"] = [], []
    if charge_path:
        made["charge_path"] = charge_path
    return ww.loads(json.dumps(made))


def spark(retard):
    rows = {
        "columns": {"engine_speed": "rpm", "retard": "deg"},
        "rows": [[0, retard], [6000, retard]],
    }
    return {"policy": "as_given", "table": rows}


def roots(**changes):
    return part("roots", **changes)


def wheel(**changes):
    impeller = {"drive_ratio": 9, "impeller_diameter": "60 mm"}
    return {"id": "wheel", "kind": "mapped_compressor"} | impeller | changes


def jet(**changes):
    usual = {"blend_by": "volume", "methanol": "50 %", "rated_flow": "200 cm3/min"}
    return (
        {"id": "jet", "kind": "evaporative_injection", "pump_pressure": "7 bar"} | usual | changes
    )


COLD_CORE = {
    "id": "core",
    "kind": "charge_cooler",
    "conductance": "900 W/K",
    "at_charge_flow": "40 g/s",
    "at_cooling_flow": "2000 g/s",
    "face_area": "2000 cm2",
}
MUGGY = {"relative_humidity": "100 %", "temperature": "30 degC"}

RELIEF = {"id": "relief", "kind": "bypass", "area": "200 mm2"}
HOLE = {"id": "hole", "kind": "leak", "area": "30 mm2"}

# Asked at the top speed, or at the point that stands beside the vehicle.
CAUTIONED = {
    "compression_ratio": lambda: (vehicle(engine={"compression_ratio": 13}),),
    "mixture": lambda: (vehicle(engine={"lambda": 0.7}),),
    "inlet_mach_index": lambda: (
        vehicle(
            engine={"rev_limit": "9000 rpm", "valves": {"intake_ratio": 0.22}, "spark": spark(0)}
        ),
        {"engine_speed": "8500 rpm"},
    ),
    "exhaust_over_intake": lambda: (vehicle(), HALF_SHUT),
    "late_spark": lambda: (vehicle(engine={"spark": spark(35)}),),
    "late_heat": lambda: (vehicle(engine={"spark": spark(20)}),),
    "knock_pressure": lambda: (vehicle(path(roots(drive_ratio=2.6)), engine={"spark": spark(0)}),),
    "much_water": lambda: (vehicle(path(roots(), jet(rated_flow="120 cm3/min", methanol="0 %"))),),
    "wet_plug": lambda: (
        vehicle(path(roots(), jet(methanol="0 %"))),
        {"engine_speed": "3000 rpm"},
    ),
    "measured_speed": lambda: (ww.loads(json.dumps(CURVE)), {"engine_speed": "1500 rpm"}),
    "overspeed": lambda: (vehicle(), {"engine_speed": "6600 rpm"}),
    "torque_curve": lambda: (ww.loads(json.dumps(CURVE)),),
    "detonation": lambda: (vehicle(engine={"compression_ratio": 11, "spark": spark(0)}),),
    "hot_head": lambda: (vehicle(engine={"head_temperature": "240 degC"}),),
    "hot_oil": lambda: (vehicle(engine={"oil": {"temperature": "130 degC"}}),),
    "exhaust_heat": lambda: (vehicle(engine={"walls": {"share": "60 %", "port_keeps": 0.3}}),),
    "inlet_depression": lambda: (vehicle(), HALF_SHUT),
    "hot_charge": lambda: (vehicle(path(roots(drive_ratio=3.3)), engine={"spark": spark(0)}),),
    "thermal_runaway": lambda: (
        vehicle(path(roots(drive_ratio=2.5, leak_area="60 mm2")), engine={"spark": spark(0)}),
        {"engine_speed": "900 rpm"},
    ),
    "surge": lambda: (vehicle(path(wheel(flow_coefficient=0.3))), {"engine_speed": "2500 rpm"}),
    "choke": lambda: (vehicle(path(wheel(drive_ratio=20, impeller_diameter="30 mm"))),),
    "condensation": lambda: (
        vehicle(path(roots(drive_ratio=2), COLD_CORE), day=MUGGY, engine={"spark": spark(10)}),
    ),
    "coarse_spray": lambda: (vehicle(path(roots(), jet(pump_pressure="2 bar"))),),
    "slip": lambda: (
        vehicle(
            driveline=[
                {"id": "plate", "kind": "clutch", "capacity": "45 N m"},
                *DOCUMENT["driveline"],
            ]
        ),
    ),
    "short_travel": lambda: (vehicle(driveline=belt_drive(sheaves={**SHEAVES, "travel": "8 mm"})),),
    "early_grip": lambda: (vehicle(driveline=belt_drive(engagement_speed="700 rpm")),),
    "unshifted": lambda: (vehicle(driveline=belt_drive(shift_end_speed="6500 rpm")),),
    "idle_pump": lambda: (vehicle(path(roots(), before=[jet(starts_at="200 kPa gauge")])),),
    "untriggered_pump": lambda: (
        vehicle(path(roots(), before=[jet(trigger={"engine_speed_above": "15000 rpm"})])),
    ),
    "uneven_spray": lambda: (
        vehicle(path(roots(), jet(rated_flow="60 cm3/min", duty="50 %", valve_period="500 ms"))),
        {"engine_speed": "4000 rpm"},
    ),
    "throttled_spray": lambda: (
        vehicle(
            path(roots(), before=[jet(rated_flow="60 cm3/min", starts_at="25 kPa gauge")]),
            engine={"knock_anchor": {"octane_number": 96}, "spark": {"most_retard": "2 deg"}},
        ),
    ),
    # At the launch; faster it burns again.
    "drowned": lambda: (
        vehicle(path(roots(), before=[jet(rated_flow="125 cm3/min", methanol="0 %")])),
    ),
    "leak": lambda: (vehicle(path(roots(), HOLE)),),
    "false_air": lambda: (vehicle(path(roots(), before=[HOLE])),),
    "two_balances": lambda: (
        vehicle([part("airbox"), roots(), RELIEF, part("log"), part("butterfly", bore="30 mm")]),
        {"engine_speed": "1500 rpm", "opening": "12 %"},
    ),
    # Where the pump stands still: in the pull it runs.
    "siphoning": lambda: (
        vehicle(path(roots(), before=[jet(check_valve=False, starts_at="10 kPa")])),
        {"engine_speed": "4500 rpm"},
    ),
}


def belt_drive(**stated):
    belt = {
        "id": "belt",
        "kind": "belt_cvt",
        "low_ratio": 2.7,
        "high_ratio": 0.8,
        "shift_speed": "4200 rpm",
        "rated_torque": "80 N m",
    }
    return [belt | stated, {"id": "axle", "kind": "final_drive", "ratio": 5}]


def ask(scenario, point=None):
    return scenario.operating_point(**point) if point else scenario.top_speed()


def warned_of(asked):
    answer = ask(*asked)
    assert answer.answered, answer.sentence
    return {caution.about for caution in answer.cautions}


@pytest.mark.parametrize("word", WORDS["about"])
def test_a_scenario_is_cautioned(word):
    assert word in warned_of(CAUTIONED[word]())


def test_the_usual_vehicle_is_cautioned_of_nothing():
    # So that none of the above is said of everything.
    assert warned_of((vehicle(),)) == set()


def menu(length):
    made = copy.deepcopy(DOCUMENT)
    made["upgrades"] = [
        {"id": f"lighter_{i}", "add": {"body/mass": f"-{i + 1} kg"}} for i in range(length)
    ]
    return ww.loads(json.dumps(made))


def lost():
    """A compressor deep in surge between two all but shut throttles has no steady flow to find."""
    relief = {"id": "relief", "kind": "bypass", "area": "197 mm2", "opened_by": "pedal"}
    rear = {"id": "rear", "kind": "throttle", "bore": "30 mm"}
    mist = jet(methanol="0 %", rated_flow="49 cm3/min", pump_pressure="7.6 bar")
    large = wheel(drive_ratio=12.1, impeller_diameter="70 mm")
    return vehicle([part("airbox"), part("butterfly", bore="34 mm"), mist, large, relief, rear])


def broken():
    """Only a fault of the core ends so. That it does is tried in C++, what is said of it here."""
    point = ask(vehicle(), {"engine_speed": "3000 rpm"})
    ending = {"status": "broken_off", "answered": False, "part": ""}
    numbers = point.numbers | {"ending": point.numbers["ending"] | ending, "point": None}
    return type(point)(numbers, point.scenario_info)


ENDED = {
    "solved": lambda: ask(vehicle()),
    "no_balance": lambda: ask(vehicle(goal={"grade": "20 %"}, body={"mass": "2000 kg"})),
    "no_survivable_state": lambda: ask(
        vehicle([part("airbox"), roots(), part("butterfly")]),
        {"engine_speed": "5000 rpm", "opening": "1 %"},
    ),
    "knock_limited": lambda: ask(vehicle(engine={"compression_ratio": 15})),
    "out_of_range": lambda: ww.rank(menu(17), progress=False),
    "not_converged": lambda: ask(lost(), {"engine_speed": "4244 rpm", "opening": "2.08 %"}),
    "broken_off": broken,
    "cancelled": lambda: ww.rank(menu(12), progress=lambda done, total: False, threads=1),
}


def cut_off():
    """An engine measured up to where its ignition cuts the sparks, over the turn of a hand."""
    measured = {
        "columns": {"engine_speed": "rpm", "torque": "N m"},
        "rows": [[2000, 50], [3000, 50], [3000.00001, 2], [5500, 2]],
    }
    curve = copy.deepcopy(CURVE)
    return ww.loads(json.dumps(merged(curve, {"engine": {"table": measured}})))


def out_of_means():
    """Its knock margin is held by late spark, until no throttle anybody would drive with does."""
    tall = {"driveline/final_chain/teeth_rear": 27, "engine/spark/most_retard": "28 deg"}
    parts = ("large_blower", "fairing", "diet", "exhaust", "hard_tyres", "shroud", "bypass")
    car = ww.load(CYCLECAR).install(*parts, "rear_throttle").set(tall)
    return car.set({"engine/knock_anchor/octane_number": 110, "charge_path/bypass/area": "5 mm2"})


BOUND = {
    "drag": lambda: vehicle(engine={"rev_limit": "9000 rpm"}, body={"drag_area": "1.4 m2"}),
    "rev_limit": lambda: vehicle(engine={"rev_limit": "3500 rpm"}),
    "grip": lambda: vehicle(tyres={"grip": 0.1}),
    "knock": lambda: vehicle(engine={"compression_ratio": 15}),
    "torque_step": cut_off,
    "no_answer": out_of_means,
    "standstill": lambda: vehicle(goal={"grade": "20 %"}, body={"mass": "2000 kg"}),
}


def test_a_rated_compressor_is_watched_like_a_blower():
    rated = vehicle(path(wheel(rated_speed="30000 rpm")))
    (passed,) = rated.top_speed().passed
    assert passed.address == "charge_path/wheel/rotor_speed"
    assert "charge_path/wheel/rotor_speed" in vehicle(path(wheel())).unrated


@pytest.mark.parametrize("word", WORDS["status"])
def test_a_question_ends(word):
    answer = ENDED[word]()
    assert answer.status == word
    assert answer.sentence


@pytest.mark.parametrize("word", WORDS["limited_by"])
def test_a_vehicle_is_bound(word):
    assert BOUND[word]().top_speed().limited_by == word
