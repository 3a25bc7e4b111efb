"""A spray that takes far more of the fuel than is usual, and what smaller jets make of it."""

import json
from pathlib import Path

import pytest

import windwall as ww
from windwall.results.smaller_jet import SmallerJet, Tried

SCENARIOS = Path(__file__).parents[2] / "scenarios"
FLOW = "charge_path/spray/rated_flow"


@pytest.fixture(scope="module")
def sprayed():
    """One jet that its vehicle needs less of, by the model."""
    return ww.load(SCENARIOS / "airfield_cyclecar.json").install("spray")


@pytest.fixture(scope="module")
def jet(sprayed):
    (one,) = sprayed.smaller_jets()
    return one


def test_every_jet_is_solved_in_its_place(sprayed, jet):
    for one in (jet.fitted, *jet.tried):
        answer = sprayed.set({FLOW: f"{one.share * 100} cm3/min"}).brief_top_speed()
        assert one.speed == pytest.approx(answer.goal_speed, rel=1e-9)
        assert one.retard == pytest.approx(answer.point.knock.retard, abs=1e-9)
        assert one.margin == pytest.approx(answer.point.knock.margin, rel=1e-9)


def test_much_is_what_is_sprayed_over_what_is_burnt(sprayed, jet):
    point = sprayed.top_speed().point
    share = point.charge_path["spray"].liquid_flow / point.engine.fuel_flow
    assert share > 0.25
    assert jet.of_fuel == pytest.approx(share)
    assert f"sprays {100 * share:.0f} % of the fuel by mass" in jet.sentence


def test_the_usual_share_is_told_of_nobody(sprayed):
    assert sprayed.set({FLOW: "20 cm3/min"}).smaller_jets() == ()
    assert ww.load(SCENARIOS / "airfield_cyclecar.json").smaller_jets() == ()


def test_the_fastest_smaller_jet_is_named_with_its_spark(jet):
    assert jet.best.speed == max(one.speed for one in jet.tried)
    assert jet.best.speed > jet.fitted.speed
    assert f"{100 * jet.best.share:.0f} cm3/min: {3.6 * jet.best.speed:.1f} km/h" in jet.sentence
    assert f"{jet.best.margin:+.1f} octane numbers to spare" in jet.sentence


def test_where_the_spray_is_needed_no_smaller_jet_is_named():
    blown = ww.load(SCENARIOS / "airfield_cyclecar.json").install("small_pulley", "spray")
    (one,) = blown.smaller_jets()
    assert max(each.speed for each in one.tried) < one.fitted.speed
    assert one.best is None
    assert "is no faster than" in one.sentence


def test_a_gain_that_is_not_shown_is_none():
    fitted = Tried(1.0, 1e-6, 30.0, 0.0, 3.0)
    tried = fitted._replace(share=0.5, speed=30.02)
    assert SmallerJet("spray", "metric", 0.5, fitted, (tried,)).best is None
    tried = tried._replace(speed=30.03)
    assert SmallerJet("spray", "metric", 0.5, fitted, (tried,)).best is tried
    assert SmallerJet("spray", "metric", 0.5, fitted, ()).best is None
    assert "no faster" not in SmallerJet("spray", "metric", 0.5, fitted, ()).sentence


def test_a_spark_that_stays_is_called_the_same():
    fitted = Tried(1.0, 1e-6, 30.0, 0.1, 3.0)
    same = fitted._replace(share=0.5, speed=31.0)
    assert "with the same spark and +3.0" in SmallerJet("s", "metric", 1, fitted, (same,)).sentence
    later = same._replace(retard=0.2)
    assert "deg late instead of" in SmallerJet("s", "metric", 1, fitted, (later,)).sentence
    mute = same._replace(retard=None, margin=None)
    assert "nothing known of its knock" in SmallerJet("s", "metric", 1, fitted, (mute,)).sentence


def test_the_command_says_the_same(windwall, jet):
    how = ("speed", SCENARIOS / "airfield_cyclecar.json", "--install", "spray")
    assert jet.sentence in " ".join(windwall(*how).stdout.split())
    found = json.loads(windwall(*how, "--json").stdout)["sprays"]
    assert found[0]["tried"][0]["speed"] == jet.tried[0].speed
    assert found[0]["sentence"] == jet.sentence
