"""What is named for fitting, what each choice takes, and that a ranking's sets can be fitted."""

import json
from pathlib import Path

import pytest

import windwall as ww
from windwall.cli.main import main

CYCLECAR = Path(__file__).parents[2] / "scenarios" / "airfield_cyclecar.json"
TEETH = "driveline/final_chain/teeth_rear"
SOME = ["small_pulley", "gearing", "fairing", "spray"]


@pytest.fixture(scope="module")
def car():
    return ww.load(CYCLECAR)


@pytest.fixture(scope="module")
def ranking(car):
    return ww.rank(car, upgrades=SOME, progress=False)


def goal_speed(scenario):
    return scenario.brief_top_speed().goal_speed


def test_a_choice_that_nobody_makes_takes_the_fastest(car):
    speeds = {rear: goal_speed(car.set({TEETH: rear})) for rear in (26.0, 27.0, 28.0, 29.0, 31.0)}
    fastest = max(speeds, key=speeds.get)
    assert fastest != 26  # or the first would do
    assert car.install("gearing").get(TEETH) == fastest
    assert goal_speed(car.install("gearing")) == speeds[fastest]


def test_a_stated_value_is_taken(car):
    for stated in (28, 28.0, "28", {TEETH: 28}):
        assert car.install({"gearing": stated}).get(TEETH) == 28
    both = car.install("fairing", {"gearing": 28})
    assert both == car.install({"gearing": 28}, "fairing")
    assert "fairing" not in both.upgrades


@pytest.mark.parametrize(
    ("what", "words"),
    [
        ({"gearing": 30}, "offers 26, 27, 28, 29 and 31 for driveline/final_chain/teeth_rear"),
        ({"gearing": "30 mm"}, "offers 26, 27"),
        ({"fairing": 1}, '"fairing" leaves nothing to choose'),
        ({"gearing": {"body/mass": 1}}, 'to choose, not "body/mass"'),
        ({"sail": 1}, 'there is no upgrade "sail"'),
    ],
)
def test_what_cannot_be_chosen_is_refused_with_what_can(car, what, words):
    with pytest.raises(ww.ScenarioError, match="install") as refused:
        car.install(what)
    assert words in str(refused.value)


def test_what_is_no_name_is_refused(car):
    with pytest.raises(TypeError, match="id of an upgrade"):
        car.install(3)


def test_what_is_chosen_is_said(car):
    (one,) = car.chosen("fairing", "gearing")
    assert (one.upgrade, one.address, one.sentence) == ("gearing", TEETH, "31 teeth")
    assert car.chosen({"gearing": 27})[0].number == 27
    assert car.chosen("fairing") == ()


def test_every_set_of_a_ranking_can_be_installed(car, ranking):
    """By itself, by its ids and the values it names, and by its ids alone."""
    assert len(ranking.sets) == 16
    for one in ranking.sets:
        for what in ([one], [*one.upgrades, one.choices], one.upgrades):
            assert goal_speed(car.install(*what)) == pytest.approx(one.speed[1], rel=1e-9)


def test_what_won_is_said_wherever_a_set_is_printed(ranking):
    with_gearing = [one for one in ranking.sets if "gearing" in one.upgrades]
    assert len({one.choices["gearing"][TEETH] for one in with_gearing}) > 1
    for one in with_gearing:
        (won,) = one.chosen
        assert f"gearing: {won.number:.0f} teeth" in one.name
    text = ranking.summary()
    for line in text[text.index("Best set") : text.index("How sure")].splitlines():
        assert ("gearing" in line) == ("gearing: " in line and "teeth" in line)


def test_a_document_says_what_to_install(car, ranking):
    made = json.loads(json.dumps(ranking.to_dict()))
    for one in (made["target"], *made["best_by_cost"], *made["best_by_hours"]):
        fitted = car.install(*one["upgrades"], one["choices"])
        assert goal_speed(fitted) == pytest.approx(one["speed"][1], rel=1e-9)
    assert all(len(one["chosen"]) == ("gearing" in one["upgrades"]) for one in made["sets"])


def test_an_anchor_that_an_upgrade_sets_is_known_as_well_as_it_says(document):
    """The margin that is kept follows from it, in a ranking as in what is installed."""
    anchor = "engine/knock_anchor/octane_number"
    document["upgrades"] = [{"id": "listened", "cost": "9 EUR", "set": {anchor: "90 ± 2"}}]
    car = ww.loads(json.dumps(document))
    listened = ww.rank(car, progress=False).sets[1]
    assert goal_speed(car.install(listened)) == pytest.approx(listened.speed[1], rel=1e-9)
    assert goal_speed(car.set({anchor: "90 ± 8"})) != pytest.approx(listened.speed[1], rel=1e-4)


def test_a_unit_stands_behind_a_value_that_has_one(document):
    document["upgrades"] = [
        {"id": "plate", "choose": {"charge_path/butterfly/bore": ["36 mm", "40 mm"]}},
        {"id": "axle", "choose": {"charge_path/roots/drive_ratio": [1.35, 1.4]}},
        {"id": "name", "choose": {"tyres/size": ["155/80 R13 79T", "145/80 R13 75T"]}},
    ]
    car = ww.loads(json.dumps(document))
    stated = {"plate": "40 mm", "axle": 1.4, "name": "145/80 R13 75T"}
    said = [one.sentence for one in car.chosen(stated)]
    assert said == ["40 mm", "drive ratio 1.4", "145/80 R13 75T"]


def test_the_command_fits_first(car, capsys):
    assert main(["speed", str(CYCLECAR), "--install", "fairing", "--install", "gearing=28"]) == 0
    text = capsys.readouterr().out
    assert text.startswith("Fitted first: fairing, gearing: 28 teeth.\n")
    assert main(["speed", str(CYCLECAR), "--install", f"gearing/{TEETH}=28", "--json"]) == 0
    made = json.loads(capsys.readouterr().out)
    assert made["installed"]["upgrades"] == ["gearing"]
    assert made["installed"]["chosen"][0]["number"] == 28
    assert made["run_up"]["speed"] == goal_speed(car.install({"gearing": 28}))
    assert main(["speed", str(CYCLECAR), "--install", "gearing=30"]) == 2
