"""What a ranking says of how its answers end, and of what they hang on."""

import copy
import json
import math

import pytest

import windwall as ww
from python.samples import CURVE, DOCUMENT, LATE
from windwall.report.text.rank_doubts import hangs_on_the_rule, verdict_lines
from windwall.report.text_layout import as_text
from windwall.report.wording.ranking import first, late_gains
from windwall.results.diagnosis import Compared, Diagnosis, Explained, Explanation, Fact
from windwall.results.knock import OTHER_BAND
from windwall.results.ranking import Ranking
from windwall.scenario.data import KNOCK_ANCHOR
from windwall.scenario.inputs import moved, uncertain_inputs


def flat(text):
    return " ".join(text.split())


@pytest.fixture(scope="module")
def cyclecar():
    """Its bypass lets so little through that behind it a lifted pedal holds off no knock."""
    document = copy.deepcopy(LATE)
    bypass = next(one for one in document["upgrades"] if one["id"] == "bypass")
    bypass["insert"][0]["part"]["area"] = "5 mm2"
    return ww.loads(json.dumps(document))


@pytest.fixture(scope="module")
def throttled(cyclecar):
    """A throttle behind a fast blower: nothing holds the knock margin in the middle of a gear."""
    names = ["small_pulley", "bypass", "rear_throttle"]
    return ww.rank(cyclecar, upgrades=names, progress=False)


def test_a_pull_that_ends_without_an_answer_says_so(cyclecar, throttled):
    ended = {one.upgrades: one.refused_for == "ends_without_answer" for one in throttled.sets}
    for upgrades, without in ended.items():
        answer = cyclecar.install(*upgrades).top_speed()
        assert (answer.limited_by == "no_answer") == without
    assert sum(ended.values()) == throttled.number_cut_short == 1
    (one,) = throttled.smallest_cut_short
    assert one.upgrades == ("small_pulley", "bypass", "rear_throttle")
    assert one.reason in flat(repr(throttled))
    assert "with thrust to spare. Nothing holds the knock margin" in one.reason


def test_nothing_is_made_of_such_a_set(throttled):
    (one,) = throttled.smallest_cut_short
    assert not one.recommended
    named = [throttled.target, throttled.fastest]
    assert one not in [*named, *throttled.best_by_cost, *throttled.best_by_hours]
    for worth in throttled.upgrades.values():
        for pair in (worth.best_pair, worth.most_helped, worth.most_hindered):
            assert pair is None or throttled.sets[pair.pair] != one
        if worth.beside_target is not None and throttled.sets[worth.beside_target] == one:
            assert worth.outside == "ends_without_answer"


def test_a_gain_to_where_answers_end_is_marked_and_never_first(cyclecar):
    """With the fast blower in already, the throttle behind it ends the answers at once."""
    fast = cyclecar.install("small_pulley")
    ranking = ww.rank(fast, upgrades=["bypass", "rear_throttle"], progress=False)
    assert ranking.cut_short_alone("rear_throttle")[1]
    assert "rear_throttle" not in [one.id for one in ranking.leaders]
    line = next(one for one in repr(ranking).splitlines() if one.startswith("  rear_throttle"))
    assert "!" in line
    assert "!: to where answers end" in flat(repr(ranking))
    numbers = copy.deepcopy(ranking.numbers)
    next(one for one in numbers["upgrades"] if one["id"] == "rear_throttle")["alone"] = [9.0] * 3
    gaining = Ranking(
        numbers, ranking.scenario_info, ranking.menu, {"currency": "", "budget": None}
    )
    assert getattr(first(gaining, 1), "id", "") != "rear_throttle"


def test_anchors_are_one_standard_deviation_apart(car, cyclecar, throttled):
    assert throttled.knock_anchors == (91, 96, 101)
    assert cyclecar.knock_sigma == 5
    assert "at knock anchors of 91, 96, 101 (as stated -/+ one standard deviation)" in repr(
        throttled
    )
    for anchor, octane in enumerate(throttled.knock_anchors):
        answer = cyclecar.at_knock_anchor(octane).brief_top_speed()
        assert throttled.base.speed[anchor] == pytest.approx(answer.goal_speed, rel=1e-9)
        late = cyclecar.at_knock_anchor(octane).install("small_pulley", "bypass", "rear_throttle")
        ends = late.top_speed().limited_by == "no_answer"
        assert throttled.smallest_cut_short[0].ends_early(anchor) == ends


def test_an_engine_without_an_anchor_has_one_gain():
    ranking = ww.rank(ww.loads(json.dumps(CURVE)), progress=False)
    assert "\nEvery upgrade\n" in repr(ranking)
    assert ranking.base.retard is None
    assert ranking.second_opinions == ()


def test_every_set_says_how_it_ends_and_how_late_its_spark_is(cyclecar, throttled):
    for one in throttled.sets:
        answer = cyclecar.install(one).top_speed()
        assert one.limited_by == answer.limited_by
        assert one.retard == pytest.approx(answer.knock.retard, rel=1e-6)
        assert one.opening == pytest.approx(answer.opening, rel=1e-6)


def test_a_late_spark_is_printed_where_a_gain_hangs_on_it(throttled):
    text = repr(throttled)
    late, pulley = (math.degrees(one.retard) for one in throttled.sets[:2])
    assert throttled.sets[1].upgrades == ("small_pulley",)
    line = next(one for one in text.splitlines() if "as it is  " in one)
    assert f"spark {late:.0f} deg late" in line
    table = text[text.index("\nEvery upgrade") :]
    line = next(one for one in table.splitlines() if one.startswith("  small_pulley "))
    assert f"{pulley:.0f} at {100 * throttled.sets[1].opening:.0f} %" in line
    assert pulley > 20
    said = f"The gain of small_pulley is had with the spark {pulley:.0f} deg or more late"
    assert (said in flat(text)) == (throttled.upgrades["small_pulley"].alone[1] > 0)
    numbers = copy.deepcopy(throttled.numbers)
    numbers["upgrades"][0]["alone"] = [1.0] * 3
    terms = {"currency": "EUR", "budget": None}
    gaining = Ranking(numbers, throttled.scenario_info, throttled.menu, terms)
    assert said in flat(late_gains(gaining))


@pytest.fixture(scope="module")
def heard(cyclecar):
    """Known so well where it knocks, and with so hot a head, of which the delay makes little, that
    the two models contradict each other.
    """
    return cyclecar.set({KNOCK_ANCHOR: "84 ± 1", "engine/head_temperature": "240 degC"})


@pytest.fixture(scope="module")
def opinions(heard):
    return ww.rank(heard, upgrades=["spray", "race_fuel", "fairing"], progress=False)


def test_both_models_of_knock_are_followed_into_the_first_gains(heard, opinions):
    """By halving: where the rule has as much to spare as the delay has at the stated anchor."""
    stated = heard.get(KNOCK_ANCHOR)

    def too_high(octane, fitted):
        knock = heard.at_knock_anchor(octane).install(fitted).brief_top_speed().knock
        return knock.integral_margin + (octane - stated) > knock.margin

    for said in opinions.second_opinions:
        fitted = opinions.set_at(said["set"])
        knock = heard.install(fitted).brief_top_speed().knock
        assert said.above_the_rule == pytest.approx(knock.integral_margin - knock.margin, abs=1e-6)
        low, high = stated - 30, stated + 30
        while high - low > 0.01:
            middle = (low + high) / 2
            low, high = (low, middle) if too_high(middle, fitted) else (middle, high)
        speed = heard.at_knock_anchor(low).install(fitted).brief_top_speed().goal_speed
        assert said.speed == pytest.approx(speed, abs=0.02 / 3.6)


def test_models_of_knock_that_are_apart_are_told_with_numbers(heard, opinions):
    said = opinions.opinion(opinions.base).above_the_rule
    assert abs(said) > heard.knock_sigma + OTHER_BAND
    text = flat(repr(opinions))
    assert f"leaves {abs(said):.1f} octane numbers more" in text
    assert "further apart than the bands of both, 1.0 and 5.0" in text
    assert text.count("hangs on the rule") == 2  # spray and race fuel, and not the fairing
    table = repr(opinions).split("Two opinions")[1]
    line = next(one for one in table.splitlines() if one.startswith("  fairing"))
    assert "hangs" not in line


@pytest.mark.parametrize(
    ("rule", "delay", "hangs"),
    [(1.2, 0.1, True), (1.2, 0.9, False), (1.2, -0.5, True), (1.2, 2.5, True), (0.05, 0, False)],
)
def test_what_hangs_on_the_rule(rule, delay, hangs):
    assert bool(hangs_on_the_rule(rule, delay, "metric")) == hangs


def test_what_adds_less_than_is_shown_adds_nothing(ranking):
    """The gearing ends both: a fairing beside the pulley adds the eleventh digit."""
    worth = ranking.upgrades["fairing"]
    more = ranking.set_at(worth.beside_target).speed[1] - ranking.target.speed[1]
    assert 0 <= more < 0.05 / 3.6
    assert worth.outside == "adds_nothing"
    assert ranking.fastest.cost == min(
        one.cost for one in ranking.sets if one.speed[1] > ranking.fastest.speed[1] - 0.05 / 3.6
    )


def test_of_equal_gains_the_cheapest_comes_first():
    document = copy.deepcopy(DOCUMENT)
    document["upgrades"] = [
        {"id": "dear", "cost": "400 EUR", "set": {"body/mass": "319.9 kg"}},
        {"id": "cheap", "cost": "4 EUR", "excludes": ["dear"], "set": {"body/mass": "320 kg"}},
    ]
    ranking = ww.rank(ww.loads(json.dumps(document)), progress=False)
    cheap, dear = (ranking.upgrades[key].alone[1] for key in ("cheap", "dear"))
    assert dear - 0.05 / 3.6 < cheap < dear
    assert [one.id for one in ranking.leaders] == ["cheap", "dear"]
    assert first(ranking, 1).id == "cheap"


def test_prices_hold_what_is_required():
    document = copy.deepcopy(DOCUMENT)
    document["upgrades"].append(
        {"id": "tail", "cost": "30 EUR", "requires": ["fairing"], "scale": {"body/drag_area": 0.95}}
    )
    ranking = ww.rank(ww.loads(json.dumps(document)), progress=False)
    table = repr(ranking).split("\nEvery upgrade")[1]
    line = next(one for one in table.splitlines() if one.startswith("  tail "))
    both = ranking.alone_with("tail")
    assert both.upgrades == ("fairing", "tail")
    gain = 3.6 * (both.speed[1] - ranking.base.speed[1])
    assert line.split()[-4:] == ["150", "EUR", f"{150 / gain:.0f}", "EUR"]
    assert "Cost: with what it requires" in flat(repr(ranking))


def test_the_members_of_the_recommended_set_are_listed(ranking):
    text = repr(ranking)
    start = text.index("\nThe recommended set\n")
    listed = text[start : text.index("km/h", start)].splitlines()[2:]
    names = [line.split("  ")[1] for line in listed if line.startswith("  ")]
    best = ranking.target
    wanted = [best.label(key) for key in best.upgrades]
    assert names[: len(wanted)] == wanted
    assert all(ranking.menu[key].title in text[start:] for key in best.upgrades)


def test_a_retard_that_was_driven_has_a_row(cyclecar):
    (row,) = (one for one in cyclecar.against_observed() if one.key == "retard")
    held = cyclecar.operating_point(ww.si(row.engine_speed), road_speed="122 km/h")
    assert row.model == pytest.approx(held.point.knock.retard, rel=1e-6)
    assert row.off is None
    assert not row.challenged
    text = cyclecar.top_speed().summary(cyclecar.diagnose())
    line = next(one for one in text.splitlines() if one.startswith("  retard"))
    assert line.split()[1:5] == ["13", "deg", "2.0", f"{math.degrees(row.model):.0f}"]


def judged(car, ranking, *speeds):
    """A diagnosis in which boost contradicts the model, explained in as many ways."""
    inputs = uncertain_inputs(car)
    fact = Fact({"what": "top speed"}, "boost", 29e3, 4e3)
    made = [
        Explanation(one, 1.0, (), dict.fromkeys(ranking.judged, speed))
        for one, speed in zip(inputs, speeds, strict=False)
    ]
    return Diagnosis((), (Explained(Compared(fact, 36e3, 1e3), made),), ())


def test_the_goal_is_judged_again_under_every_explanation(cyclecar):
    car = cyclecar.set({"goal/speed": "127.5 km/h"})
    ranking = ww.rank(car, upgrades=["fairing", "hard_tyres"], progress=False)
    found = car.diagnose(ranking)
    explanations = [
        one for explained in found.explained for one in explained.inputs if not one.is_misread
    ]
    assert explanations
    for one in explanations:
        there = moved(car, one.input, one.deviations)
        for name, fitted in ranking.judged.items():
            speed = there.install(fitted).brief_top_speed().goal_speed
            assert one.speeds[name] == pytest.approx(speed, rel=1e-6)
    text = ranking.summary(found).split("\nThe goal\n")[1]
    for one in explanations:
        value = one.input.measure.short(one.value, "metric", 3)
        name = f"  {one.input.address} of {value} "
        line = next(x for x in text.splitlines() if x.startswith(name))
        assert ("met" in line.split()) == (one.speeds["target"] * 3.6 >= 127.5)


def test_the_headline_says_what_the_goal_hangs_on(cyclecar):
    car = cyclecar.set({"goal/speed": "125 km/h", KNOCK_ANCHOR: "88 ± 0.01"})
    ranking = ww.rank(car, upgrades=["fairing"], progress=False)
    assert ranking.target.speed[1] > 125 / 3.6
    names = [one.address for one in uncertain_inputs(car)[:2]]
    agreed = flat(as_text(verdict_lines(ranking, judged(car, ranking, 36.0, 37.0))))
    assert "meets the goal" in agreed
    assert "only if" not in agreed
    doubted = flat(as_text(verdict_lines(ranking, judged(car, ranking, 36.0, 33.0))))
    assert f"only if none of these holds: {names[1]} of " in doubted
    assert names[0] not in doubted
    far = ww.rank(car.set({"goal/speed": "150 km/h"}), upgrades=["fairing"], progress=False)
    hoped = flat(as_text(verdict_lines(far, judged(car, far, 36.0, 42.0))))
    assert "misses the goal" in hoped
    assert f"would meet it only with {names[1]} of " in hoped
    text = far.summary(judged(car, far, 36.0, 42.0))
    assert text.index("would meet it only") < text.index("\nThe recommended set\n")
