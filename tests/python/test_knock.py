"""Detonation is a probability with its band, and never ruled out."""

import json

import pytest

import windwall as ww
from windwall.results.knock import KnockBand, held_late


@pytest.mark.parametrize(
    "margin, word",
    [(-3, "likely"), (0, "likely"), (2, "marginal"), (5, "unlikely"), (50, "unlikely")],
)
def test_three_words_and_no_other(margin, word):
    band = KnockBand(margin, 5)
    assert band.word == word
    assert f"detonation {word}" in band.sentence


def test_the_chance_is_that_of_a_normal_margin(oracle):
    norm = oracle("scipy.stats").norm
    for margin in (-8.0, 0.0, 2.0, 11.0):
        assert KnockBand(margin, 5).chance == pytest.approx(norm.cdf(0, margin, 5), rel=1e-12)


def test_it_is_never_none_and_never_certain():
    assert "about 1 would knock" in KnockBand(200, 5).sentence
    assert "about 99 would knock" in KnockBand(-200, 5).sentence


def test_an_upgrade_may_know_the_anchor_better(document, oracle):
    anchor = "engine/knock_anchor/octane_number"
    document["engine"]["knock_anchor"] = {"octane_number": "90 ± 5"}
    document["upgrades"] = [{"id": "listened", "cost": "5 EUR", "set": {anchor: "90 ± 2"}}]
    car = ww.loads(json.dumps(document))
    for scenario, spread in ((car, 5), (car.install("listened"), 2)):
        knock = scenario.top_speed().knock
        expected = oracle("scipy.stats").norm.cdf(0, knock.margin, spread)
        assert knock.probability == pytest.approx(expected, rel=1e-9)


def test_a_throttle_that_holds_off_knock_is_told_first():
    car = ww.load("scenarios/airfield_cyclecar.json")
    held = car.set({"charge_path/blower/drive_ratio": 2.2, "engine/compression_ratio": "9.5"})
    best = held.top_speed()
    assert best.limited_by == "knock"
    lift = f"Flat out it would knock; lift to {100 * best.opening:.0f} %: "
    assert best.sentence.startswith(lift)
    lines = [line.strip() for line in best.summary().splitlines()]
    told = next(at for at, line in enumerate(lines) if line.startswith("throttle  "))
    assert told < next(at for at, line in enumerate(lines) if line.startswith("balance speed"))
    assert f"{100 * best.opening:.0f} % of its travel" in lines[told]
    text = " ".join(lines)
    assert f"Limited by: knock. {lift}" in text
    assert "Flat out" not in car.top_speed().sentence


def test_what_is_below_the_last_digit_is_0_without_a_minus():
    from windwall.quantities.measures import SPEED
    from windwall.report.wording.knock import blocked, octane

    told = [KnockBand(-0.04, 5).sentence, blocked(-0.04, 5, "a jet"), octane(-0.04)]
    assert all("+0.0" in one and "-0.0" not in one for one in told)
    assert SPEED.change(-0.001, "metric") == "+0.0"
    assert octane(-0.06) == "-0.1"


def test_no_number_that_is_printed_with_its_sign_can_be_minus_0():
    import re
    from pathlib import Path

    signed = re.compile(r":\+[.{]")  # without the z that drops the sign of a 0
    files = [
        *Path("python/windwall/report").rglob("*.py"),
        *Path("python/windwall/quantities").rglob("*.py"),
    ]
    assert files
    assert {path.name for path in files if signed.search(path.read_text("utf-8"))} == set()


@pytest.mark.parametrize(("late", "told"), [(5e-13, False), (0.0017, False), (0.0018, True)])
def test_a_spark_that_is_late_by_less_than_a_tenth_of_a_degree_holds_nothing_back(car, late, told):
    point = car.operating_point("4200 rpm")
    numbers = json.loads(json.dumps(point.numbers))
    numbers["point"]["knock"] |= {"retard": late, "enrichment": 0.0}
    numbers["ending"]["status"] = "solved"
    said = " ".join(type(point)(numbers, point.scenario_info).summary().split())
    assert ("late to hold the knock margin" in said) == told
    assert ("the spark is held" in said) == told
    assert ("0.10 deg late" in said) == told
    assert "e-" not in said.partition("Knock and spark")[2].partition("Charge,")[0]
    assert held_late(late) == (late if told else 0.0)
