"""What would explain a contradiction, and what that makes of a ranking."""

import copy
import json
from math import pi

import pytest

import windwall as ww
from python.samples import DOCUMENT, top
from windwall.scenario.inputs import BELT_SLIP, SLIPS, moved, uncertain_inputs
from windwall.study.diagnosis import Moved, without_menu


@pytest.fixture(scope="module")
def contradicted():
    """Boost was seen a good deal lower than the model has it; the menu leaves a choice."""
    document = copy.deepcopy(DOCUMENT)
    document["upgrades"].append(
        {"id": "gearing", "choose": {"driveline/sprockets/teeth_rear": [40, 45]}}
    )
    document["upgrades"].append({"id": "tail", "requires": ["fairing"],
                                 "scale": {"body/drag_area": 0.9}})  # fmt: skip
    car = ww.loads(json.dumps(document))
    boost = car.top_speed().point.manifold.boost / 1e3
    document["observed"] = [{"what": "top speed", "boost": f"{boost - 4:.3f} ± 2 kPa"}]
    return ww.loads(json.dumps(document))


@pytest.fixture(scope="module")
def challenged(contradicted):
    ranking = ww.rank(contradicted, progress=False)
    return ranking, contradicted.diagnose(ranking)


def test_a_contradiction_comes_before_any_recommendation(challenged):
    ranking, found = challenged
    text = ranking.summary(found)
    assert text.index("CHALLENGED: in boost") < text.index("Every upgrade")
    assert text.index("CHALLENGED: in boost") < text.index("The recommended set")
    said = " ".join(text[: text.index("as it is")].split())
    for one in found.explained[0].inputs:
        assert f"{one.input.address}: " in said
        assert f"{one.deviations:+.1f} of its standard deviations" in said
    assert said.count("; then nothing here changes") == 1
    assert said.count("; then ") == len(found.explained[0].inputs)
    assert all(len(line) <= 100 for line in text.splitlines())


def test_the_first_gains_are_those_of_the_ranking(challenged):
    ranking, found = challenged
    alone = {one.label: one.alone[1] for one in ranking.upgrades.values()}
    first = sorted(alone, key=alone.get, reverse=True)[:3]
    assert [one.label for one in found.first] == first
    assert [one.gain for one in found.first] == pytest.approx([alone[one] for one in first])


def test_each_explanation_is_followed_into_the_first_gains(contradicted, challenged):
    """By setting the input to the value it is said to need, and ranking again."""
    ranking, found = challenged
    (explained,) = found.explained
    assert explained.inputs
    names = [one.id for one in ranking.upgrades.values() if one.label in dict(found.first)]
    for one in explained.inputs:
        if one.is_misread:
            assert one.gains == pytest.approx([first.gain for first in found.first])
            continue
        if one.input.sentence == SLIPS:
            continue  # it slips on other pulleys, too: see below
        there = moved(contradicted, one.input, one.deviations)
        assert there.get(one.input.address) == pytest.approx(one.value)
        again = ww.rank(there, upgrades=[*names, "fairing"], progress=False)
        gains = {worth.label: worth.alone[1] for worth in again.upgrades.values()}
        for first, gain in zip(found.first, one.gains, strict=True):
            assert gain == pytest.approx(gains[first.label], abs=1e-6)
    followed = [gain for one in explained.inputs for gain in one.gains]
    stated = [first.gain for first in found.first] * len(explained.inputs)
    assert followed != pytest.approx(stated, abs=1e-3)


def test_a_challenge_is_in_the_document(challenged):
    ranking, found = challenged
    (made,) = ranking.to_dict(found)["observed"]
    labels = [one.label for one in found.first]
    assert list(made["first_gains"]) == labels
    assert made["explained_by"]
    for one, explanation in zip(made["explained_by"], found.explained[0].inputs, strict=True):
        assert one["address"] == explanation.input.address
        assert one["gains"] == dict(zip(labels, explanation.gains, strict=True))
    json.dumps(made, allow_nan=False)


def test_what_breaks_a_fact_that_agrees_explains_nothing(seen):
    """The drag area would explain the speed, but not with the engine speed that was seen."""
    anchor = {"engine/knock_anchor/octane_number": "92 ± 0.01"}
    best = seen().set(anchor).top_speed()
    speed = f"{3.6 * best.goal_speed * 0.98:.2f} ± 1 km/h"
    (far,) = seen(top(speed=speed)).set(anchor).diagnose().explained
    assert "body/drag_area" in {one.input.address for one in far.inputs}
    turns = f"{best.engine_speed * 30 / pi:.0f} ± 5 rpm"
    (far,) = seen(top(speed=speed, engine_speed=turns)).set(anchor).diagnose().explained
    assert "body/drag_area" not in {one.input.address for one in far.inputs}


def test_a_belt_that_slips_and_a_wrong_reading_are_among_the_explanations(contradicted):
    (found,) = contradicted.diagnose().explained
    (belt,) = (one for one in found.inputs if one.input.sentence == SLIPS)
    assert belt.input.address == "charge_path/roots/drive_ratio"
    assert belt.input.sigma == BELT_SLIP * 1.35
    slow = contradicted.set({belt.input.address: belt.value})
    assert slow.against_observed()[0].off == pytest.approx(0, abs=0.1)
    slip = f"by a belt that slips {100 * (1 - belt.value / 1.35):.1f} %"
    assert slip in " ".join(contradicted.top_speed().summary(contradicted.diagnose()).split())
    (read,) = (one for one in found.inputs if one.is_misread)
    assert read.input.address == "observed/1/boost"
    assert read.value == pytest.approx(found.compared.model)
    assert read.deviations == pytest.approx(2, abs=1e-3)


def test_a_belt_never_runs_ahead(seen, best):
    boost = best.point.manifold.boost / 1e3
    (found,) = seen(top(boost=f"{boost + 4:.3f} ± 2 kPa")).diagnose().explained
    assert SLIPS not in [one.input.sentence for one in found.inputs]


@pytest.fixture(scope="module")
def rated():
    """A stock engine known by its plate, with less boost than the model has it."""
    document = copy.deepcopy(DOCUMENT)
    document["engine"] |= {
        "design": {"chamber": "two_valve_wedge", "cooling": "air", "duty": "work"},
        "rated": {"torque": "47 N m", "torque_speed": "2500 rpm", "power": "15.5 kW",
                  "power_speed": "3600 rpm", "compression_ratio": 8.0},
    }  # fmt: skip
    document["engine"]["knock_anchor"] = {"octane_number": "60 ± 1"}
    car = ww.loads(json.dumps(document))
    boost = car.top_speed().point.manifold.boost / 1e3
    document["observed"] = [top(boost=f"{boost - 4:.3f} ± 2 kPa")]
    return ww.loads(json.dumps(document))


def test_no_explanation_contradicts_the_plate(rated):
    (found,) = rated.diagnose().explained
    own = [one for one in found.inputs if one.input.address.startswith("engine/")]
    assert own
    for one in own:
        there = moved(rated, one.input, one.deviations)
        assert there.get(one.input.address) == pytest.approx(one.value)
        figures = there.rated_fit["figures"]
        assert not any(each["unreconciled"] for each in figures)
        assert [each.met for each in one.rated] == [each["met"] for each in figures]
    text = " ".join(rated.top_speed().summary(rated.diagnose()).split())
    assert text.count("the plate, 47 N m and 15.5 kW, is then met with") == len(own)


def test_what_the_plate_settled_is_settled_again_beside_a_change(rated):
    """As reading a file does that states the same value."""
    (one,) = (each for each in uncertain_inputs(rated)
              if each.address == "engine/breathing/peak_efficiency")  # fmt: skip
    there = moved(rated, one, 1.0)
    document = rated.document()
    document["engine"]["breathing"] = {"peak_efficiency": one.value + one.sigma}
    stated = ww.loads(json.dumps(document))
    for address in ("engine/combustion/real_cycle_factor", "engine/friction/scale"):
        assert there.get(address) == pytest.approx(stated.get(address), rel=1e-9)
        assert there.get(address) != pytest.approx(rated.get(address), rel=1e-3)


def test_a_plate_that_is_missed_by_more_than_it_is_known_to_refuses_an_explanation(rated):
    answers = Moved(without_menu(rated))
    (one,) = (each for each in uncertain_inputs(rated)
              if each.address == "engine/breathing/peak_efficiency")  # fmt: skip
    assert not answers.breaks_rated(one, 0.5)
    assert answers.breaks_rated(one, 6.0)


def test_a_challenge_takes_few_solves(contradicted, monkeypatch):
    from windwall.study import compare, diagnosis

    asked = []
    ask = compare.ask
    monkeypatch.setattr(diagnosis, "ask", lambda *one: asked.append(one) or ask(*one))
    diagnosis.diagnose.__wrapped__(contradicted)
    assert 0 < len(asked) < 200


def test_a_belt_that_slips_slips_on_another_pulley_too():
    car = ww.load("scenarios/airfield_cyclecar.json")
    ranking = ww.rank(car, upgrades=["small_pulley", "fairing"], progress=False)
    found = car.diagnose(ranking)
    (slip,) = (
        one for told in found.explained for one in told.inputs if one.input.sentence == SLIPS
    )
    share = slip.value / slip.input.value
    assert 0.9 < share < 1
    address = slip.input.address
    as_it_is = car.set({address: ww.si(1.35 * share)}).brief_top_speed().goal_speed
    on_it = car.set({address: ww.si(1.6 * share)}).brief_top_speed().goal_speed
    gains = dict(zip((one.label for one in found.first), slip.gains, strict=True))
    assert gains["small_pulley"] == pytest.approx(on_it - as_it_is, abs=1e-6)
