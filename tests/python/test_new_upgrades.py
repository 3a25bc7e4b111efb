"""What could be bought, asked for by `windwall new`: by a word and a cost, or in own words."""

import json

import pytest

import windwall as ww
from python.new_answers import ANSWERS
from windwall.cli.new import accept
from windwall.cli.new_questions import QUESTIONS, document
from windwall.errors import ScenarioError

BY_NAME = {question.name: question for question in QUESTIONS}
READY = "sprockets 60 EUR, pulley 45 EUR, cool 260 ± 30 EUR, fairing 130 EUR"
OWN = "Steel seat left at home, 20 EUR, mass - 12 kg"


def values(**changes):
    meant = {}
    for question in QUESTIONS:
        meant |= accept(question, (ANSWERS | changes).get(question.name, ""), meant)
    return meant


def menu(**changes):
    return {one["id"]: one for one in document(values(**changes))["upgrades"]}


def refused(name, text, **changes):
    with pytest.raises(ScenarioError) as caught:
        values(**changes, **{name: text})
    return str(caught.value)


def test_what_is_ready_fits_the_vehicle_that_was_described():
    made = menu(upgrades=READY)
    assert list(made) == ["sprockets", "pulley", "cooler", "fairing"]
    assert made["cooler"]["cost"] == "260 ± 30 EUR"
    (teeth,) = made["sprockets"]["choose"].values()
    assert list(made["sprockets"]["choose"]) == ["driveline/final_drive/teeth_rear"]
    assert min(teeth) < 30 < max(teeth)
    assert 30 not in teeth
    assert made["pulley"]["choose"] == {"charge_path/blower/drive_ratio": [1.22, 1.49, 1.62]}
    assert "guess" in made["cooler"]["title"]
    assert "guess" in made["fairing"]["title"]


def test_a_final_drive_and_a_primary_drive_are_geared_anew_too():
    ratios = menu(upgrades="sprockets 60 EUR", final_drive="4.1")["sprockets"]["choose"]
    assert list(ratios) == ["driveline/final_drive/ratio"]
    chosen = menu(upgrades="sprockets 60 EUR", final_drive="")["sprockets"]["choose"]
    assert list(chosen) == ["driveline/primary/teeth_rear"]


def test_one_of_ones_own_changes_what_it_says():
    made = menu(
        upgrade=OWN,
        upgrade_2="Mass, 0 EUR, drag_area x 0.92, throttle=38 mm, "
        "engine/exhaust/back_pressure = 6 ± 2 kPa",
    )
    assert made["steel_seat_left_at_home"] == {
        "id": "steel_seat_left_at_home",
        "title": "Steel seat left at home",
        "cost": "20 EUR",
        "add": {"body/mass": "-12 kg"},
    }
    assert made["own_mass"]["scale"] == {"body/drag_area": 0.92}  # `mass` is a key of a file
    assert made["own_mass"]["set"] == {
        "charge_path/throttle/bore": "38 mm",
        "engine/exhaust/back_pressure": "6 ± 2 kPa",
    }


REFUSED = [
    ("upgrades", "sprokets 60 EUR", "none of these upgrades: sprockets, pulley"),
    ("upgrades", "sprockets", "the cost of the sprockets is missing"),
    ("upgrades", "p 45 EUR, hat 2 EUR", '"hat" is none'),
    ("upgrade", "Seat", "its cost is missing"),
    ("upgrade", "Seat, 20 EUR", "what it changes is missing"),
    ("upgrade", "Seat, 20 EUR, lighter", '"lighter" is no change'),
    ("upgrade", "Seat, 20 EUR, mass - 12", 'write for example "-12 kg"'),
]


@pytest.mark.parametrize(("name", "text", "said"), REFUSED)
def test_what_is_not_understood_is_said(name, text, said):
    assert said in refused(name, text)


def test_what_has_no_place_is_said():
    no_blower = {"blower": "", "blower_ratio": ""}
    for name in ("pulley", "cooler"):
        assert "no blower was answered" in refused("upgrades", f"{name} 45 EUR", **no_blower)
    direct = {"primary": "", "final_drive": "", "gears": "3.2 2.0 1.4 1"}
    assert "no sprockets to change" in refused("upgrades", "sprockets 60 EUR", **direct)
    twice = refused("upgrade", "Fairing, 2 EUR, mass - 2 kg", upgrades="fairing 60 EUR")
    assert 'there is an upgrade "fairing" already' in twice
    assert "one currency" in refused("upgrade", "Seat, 2 GBP, mass - 2 kg", upgrades="f 60 EUR")


def test_the_menu_can_be_ranked():
    car = ww.loads(json.dumps(document(values(upgrades=READY, upgrade=OWN))))
    ranking = ww.rank(car, progress=False)
    assert set(ranking.upgrades) == {
        "sprockets", "pulley", "cooler", "fairing", "steel_seat_left_at_home",
    }  # fmt: skip
    assert ranking.answered
    assert any(one.alone[1] > 0 for one in ranking.upgrades.values())


@pytest.mark.parametrize("answers", [{"upgrades": READY}, {"upgrade": OWN}])
def test_where_there_is_a_menu_a_budget_is_asked_for(answers):
    budget = next(one for one in QUESTIONS if one.name == "budget")
    assert budget.follows(answers)
    assert not budget.follows({"goal_speed": "140 km/h"})
    made = document(values(**answers, budget="400 EUR"))
    assert made["goal"]["budget"] == "400 EUR"
    assert ww.loads(json.dumps(made)).get("goal/budget") == 400.0
    assert "one currency" in refused("budget", "400 USD", **answers)
