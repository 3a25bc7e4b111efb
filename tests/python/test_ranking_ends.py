"""What a ranking says of the end of each pull, of a blocked jet, and of choices at each anchor."""

import copy
import json
from pathlib import Path

import pytest

import windwall as ww
from python.samples import DOCUMENT
from windwall.report.text.rank_upgrades import AT_REV_LIMIT
from windwall.report.wording.knock import MEASURED_WATER
from windwall.results.knock import KnockBand
from windwall.results.ranking import CHOSEN, Ranking

CYCLECAR = Path(__file__).parents[2] / "scenarios/airfield_cyclecar.json"
TEETH = "driveline/sprockets/teeth_rear"
JET = {
    "id": "jet",
    "kind": "evaporative_injection",
    "blend_by": "volume",
    "methanol": "20 %",
    "rated_flow": "100 cm3/min",
    "pump_pressure": "8 bar",
}


def flat(text):
    return " ".join(text.split())


@pytest.fixture(scope="module")
def sprayed():
    """A menu of which the fastest set lives on its spray, and whose sprocket is left to choose."""
    document = copy.deepcopy(DOCUMENT)
    document["goal"]["speed"] = "140 km/h"
    document["upgrades"] = [
        one for one in document["upgrades"] if one["id"] in ("small_pulley", "fairing")
    ]
    document["upgrades"] += [
        {"id": "spray", "cost": "190 EUR", "insert": [{"before": ["roots"], "part": JET}]},
        {"id": "gearing", "cost": "38 EUR", "choose": {TEETH: [38, 40, 42, 44, 46]}},
        {"id": "diet", "cost": "20 EUR", "add": {"body/mass": "-30 kg"}},
    ]
    return ww.loads(json.dumps(document))


@pytest.fixture(scope="module")
def found(sprayed):
    return ww.rank(sprayed, progress=False)


def test_every_set_that_is_named_says_what_it_has_where_its_pull_ends(sprayed, found):
    named = [found.base, found.target, found.fastest, *found.best_by_cost, *found.best_by_hours]
    for one in named:
        end, answer = found.end_of(one), sprayed.install(one).brief_top_speed()
        assert end.boost == pytest.approx(answer.point.manifold.boost, rel=1e-9)
        assert end.head_temperature == pytest.approx(answer.point.engine.head_temperature, rel=1e-9)
        outlet = answer.point["charge_path/roots/outlet/temperature"]
        assert end.blower_outlet_temperature == pytest.approx(outlet, rel=1e-9)
        assert (end.water_per_fuel is None) == ("spray" not in one.upgrades)


def test_a_set_is_printed_with_what_it_has_there(found):
    text = repr(found)
    assert all(len(line) <= 100 for line in text.splitlines())
    one, end = found.best_by_cost[-1], found.end_of(found.best_by_cost[-1])
    table = text[
        text.index("\nBest set for every budget") : text.index("\nBest set for every number")
    ]
    header = table.splitlines()[2].split()
    chosen, ends = ["late", "mix"], ["boost", "head", "outlet"]
    assert header == ["hours", "km/h", "margin", "dry", *chosen, *ends, "set"]
    row = next(
        line for line in table.splitlines() if line.startswith(f"{one.cost:.0f} EUR".rjust(9))
    )
    cells = row.split()[2 : 2 + 9]
    assert cells[3] == f"{end.margin_without_spray:+.1f}"
    hot = (end.head_temperature, end.blower_outlet_temperature)
    assert cells[6:] == [f"{end.boost / 1e3:.0f}", *(f"{T - 273.15:.0f}" for T in hot)]
    assert "Where its pull ends it has " in flat(text)


def test_a_document_has_the_same(found):
    made = json.loads(json.dumps(found.to_dict()))
    ends = {tuple(made["sets"][one["set"]]["upgrades"]): one for one in made["ends_of_pulls"]}
    assert ends[()]["boost"] == found.end_of(found.base).boost
    assert made["units"]["ends_of_pulls/blower_outlet_temperature"] == "K"


def test_a_blocked_jet_leaves_the_margin_of_a_dry_engine_at_that_spark(sprayed, found):
    one = found.best_by_cost[-1]
    assert "spray" in one.upgrades
    wet = sprayed.install(one)
    answer, end = wet.top_speed(), found.end_of(one)
    dry = wet.set(
        {
            "charge_path/jet/starts_at": "290 kPa gauge",
            "engine/spark/policy": "as_given",
            "engine/spark/retard": answer.knock.retard,
            "engine/lambda": answer.point.engine["lambda"],
        }
    )
    held = dry.operating_point(ww.si(answer.engine_speed), road_speed=ww.si(answer.speed))
    assert end.margin_without_spray == pytest.approx(held.point.knock.margin, abs=0.02)
    assert end.margin_without_spray == pytest.approx(answer.margin_without_spray, abs=1e-9)
    assert end.margin_without_spray < one.least_margin - 5
    chance = round(100 * KnockBand(end.margin_without_spray, wet.knock_sigma).chance)
    assert f"of 100 engines described like this about {min(chance, 99)} would knock" in flat(
        repr(answer)
    )
    assert answer.to_dict()["margin_without_spray"] == end.margin_without_spray


def test_without_a_jet_nothing_is_said_of_one(sprayed, found):
    assert sprayed.top_speed()["margin_without_spray"] is None
    assert "blocked" not in repr(sprayed.top_speed())
    assert found.end_of(found.base).margin_without_spray is None


def test_more_water_than_was_measured_is_warned_of(sprayed, found):
    def warned(flow):
        car = sprayed.install("spray").set({"charge_path/jet/rated_flow": flow})
        answer = car.top_speed()
        said = [one for one in answer.cautions if one.about == "much_water"]
        return answer.knock.water_per_fuel, said

    little, none = warned("40 cm3/min")
    assert little < MEASURED_WATER
    assert none == []
    much, (said,) = warned("150 cm3/min")
    assert much > MEASURED_WATER
    assert said.found == much
    end = found.end_of(found.target)
    if end.water_per_fuel and end.water_per_fuel > MEASURED_WATER:
        assert f"Its water is {end.water_per_fuel:.2f} of the fuel" in flat(repr(found))


def test_water_is_counted_over_all_fuel(sprayed):
    answer = sprayed.install("spray").brief_top_speed()
    jet = answer.point["charge_path/jet"]
    methanol = 0.2 * 791.0  # kg/m3, a fifth by volume
    share = 1 - methanol / (methanol + 0.8 * 998.0)
    assert answer.knock.water_per_fuel == pytest.approx(
        share * jet.liquid_flow / answer.point.engine.fuel_flow, rel=2e-3
    )


def test_a_choice_is_made_at_each_anchor(sprayed, found):
    seen = set()
    for one in found.sets:
        if one.upgrades not in {("gearing",), ("spray", "gearing"), ("small_pulley", "gearing")}:
            continue
        for anchor, octane in enumerate(found.knock_anchors):
            car = sprayed.at_knock_anchor(octane)
            fitted = car.install(*one.upgrades, one.choices_at(anchor))
            assert fitted.brief_top_speed().goal_speed == pytest.approx(one.speed[anchor], rel=1e-9)
            for teeth in (38, 40, 42, 44, 46):
                other = car.install(*one.upgrades, {"gearing": teeth}).brief_top_speed()
                assert other.goal_speed <= one.speed[anchor] * (1 + 1e-9)
            seen.add(one.choices_at(anchor)["gearing"][TEETH])
    assert len(seen) > 1
    assert set(CHOSEN) <= set(found.sets[0])


def test_another_choice_at_another_anchor_is_said(found):
    best = found.target
    changed = [one.sentence for one in best.chosen_upper if one not in best.chosen]
    assert changed
    assert f"(with {changed[0]} at {found.knock_anchors[2]:.4g})" in flat(repr(found))
    assert found.base.chosen_upper == ()


def test_a_lighter_car_at_the_rev_limit_is_explained(found):
    """The example with 29 teeth: less weight, more slip, and nothing that the engine could add."""
    car = ww.load(CYCLECAR)
    heavy = ("small_pulley", "fairing", "hard_tyres", "spray", {"gearing": 29})
    ends = [car.install(*heavy, *more).brief_top_speed() for more in ((), ("diet",))]
    assert [one.limited_by for one in ends] == ["rev_limit"] * 2
    lost = ends[0].goal_speed - ends[1].goal_speed
    slips = [one.point.tyres.slip for one in ends]
    assert 0.05 / 3.6 < lost < 0.2 / 3.6
    assert lost == pytest.approx(ends[0].goal_speed * (slips[1] - slips[0]), rel=0.05)
    assert AT_REV_LIMIT not in flat(repr(found))
    numbers = copy.deepcopy(found.numbers)
    best = numbers["sets"][numbers["target"]]
    best |= {"limited_by": "rev_limit", "balance_speed": best["speed"][1]}
    numbers["upgrades"][-1]["last"][1] = -lost
    terms = {"currency": "EUR", "budget": None}
    limited = Ranking(numbers, found.scenario_info, found.menu, terms)
    assert AT_REV_LIMIT in flat(repr(limited))


def test_mass_never_costs_speed_where_drag_ends_the_pull(found):
    sets = {frozenset(one.upgrades): one for one in found.sets}
    for members, light in sets.items():
        if "diet" not in members:
            continue
        heavy = sets[members - {"diet"}]
        by_drag = light.limited_by == heavy.limited_by == "drag"
        for anchor in range(3):
            lost = heavy.speed[anchor] - light.speed[anchor]
            assert lost <= (1e-6 if by_drag and anchor == 1 else 0.3 / 3.6)
