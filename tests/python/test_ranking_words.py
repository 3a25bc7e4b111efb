"""What a ranking calls first, capped, chosen and worth its price."""

import copy
import json
from math import pi

import pytest

import windwall as ww
from python.samples import DOCUMENT, LATE, top
from windwall.report.text.rank_doubts import verdict_lines
from windwall.report.text.rank_sets import best_table
from windwall.report.text_layout import as_text
from windwall.report.wording.ranking import first_place, meant
from windwall.report.wording.sets import changes, cost, passed_over
from windwall.report.wording.top_speed import ends_at_rev_limit
from windwall.results.ranking import Ranking
from windwall.scenario.inputs import moved

SHORT = {"driveline/sprockets/teeth_rear": 62}  # so that the rev limit ends every pull


def flat(text):
    return " ".join(text.split())


def said_in(blocks):
    return flat(as_text(blocks))


def restated(ranking, change):
    """The ranking with its numbers changed."""
    numbers = copy.deepcopy(ranking.numbers)
    change(numbers)
    terms = {"currency": ranking.currency, "budget": ranking.budget}
    return Ranking(numbers, ranking.scenario_info, ranking.menu, terms)


@pytest.fixture(scope="module")
def short(car):
    return car.set(SHORT)


@pytest.fixture(scope="module")
def at_the_limit(short):
    return ww.rank(short.set({"goal/run_up": "9 km"}), progress=False)


def test_only_a_set_that_reaches_the_rev_limit_is_marked(short, at_the_limit):
    before_it = ww.rank(short.set({"goal/run_up": "300 m"}), progress=False)
    for ranking, reached in ((at_the_limit, True), (before_it, False)):
        assert ranking.base.limited_by == "rev_limit"
        answer = short.set({"goal/run_up": None}).top_speed()
        assert ranking.base.balance_speed == pytest.approx(answer.speed, rel=1e-9)
        assert ends_at_rev_limit(ranking.base) is reached
        table = said_in(best_table("Best", ranking.best_by_cost, ranking))
        assert ("r: ends at the rev limit" in table) is reached


def test_a_rev_limit_near_the_goal_is_told_with_what_the_tyres_are_known_to(short, at_the_limit):
    cap = at_the_limit.base.balance_speed
    near = short.set({"goal/run_up": "9 km", "goal/speed": ww.si(cap / 1.006)})

    def said(car):
        return said_in(verdict_lines(ww.rank(car, upgrades=[], progress=False), None))

    told = said(near)
    assert "capped at the rev limit" in told
    assert "0.60 % above the goal" in told
    assert "known to 1.5 % only" in told
    assert "capped" not in said(near.set({"tyres/rolling_factor": "0.969 ± 0.002"}))


def with_gains(**alone):
    def change(numbers):
        for one in numbers["upgrades"]:
            one["alone"] = [gain / 3.6 for gain in alone[one["id"]]]

    return change


def test_a_first_place_that_cannot_be_told_is_not_said_to_change(ranking):
    close = {"fairing": (6.2, 6.0, 5.8), "small_pulley": (6.5, 5.4, 4.7)}
    near = restated(ranking, with_gains(intercooler=(0, 0, 0), **close))
    said = first_place(near)
    assert "by less than can be told" in said
    assert "small_pulley and fairing" in said
    assert "Measure where this engine knocks" not in said
    close["small_pulley"] = (12.5, 5.4, 4.7)
    apart = restated(ranking, with_gains(intercooler=(0, 0, 0), **close))
    assert "Measure where this engine knocks" in first_place(apart)


def test_a_set_is_printed_with_the_spark_and_the_mixture_that_were_chosen_for_it():
    ranking = ww.rank(ww.loads(json.dumps(LATE)), upgrades=["small_pulley"], progress=False)
    lines = as_text(best_table("Best", ranking.best_by_cost, ranking)).splitlines()
    header, *rows = [line.split() for line in lines[2:]]
    price = len(cost(ranking.base, ranking).split())
    late, mix = (price + header.index(name) for name in ("late", "mix"))
    for one, row in zip(ranking.best_by_cost, rows, strict=False):
        held = "t" if one.opening < 1 else ""
        assert row[late] == f"{one.retard * 180 / pi:.0f}{held}"
        assert row[mix] == f"{one['lambda']:.2f}"
    assert rows[0][late] != "0"
    assert any(one.opening < 1 for one in ranking.best_by_cost)
    note = flat("\n".join(lines))
    assert "Late and mix: spark and lambda there, as the model chose them" in note
    assert "t: with the throttle held back too" in note


def test_the_vehicle_as_it_is_has_a_spark_that_was_not_driven(document):
    document["engine"]["knock_anchor"] = {"octane_number": "96 ± 5"}
    document["observed"] = [top(speed="122 ± 2 km/h", retard="30 ± 2 deg")]
    car = ww.loads(json.dumps(document))
    ranking = ww.rank(car, upgrades=["fairing"], progress=False)
    own = f"{ranking.base.retard * 180 / pi:.2g}"
    assert f"{own} deg late as it is, and not the 30 deg late that was driven" in meant(ranking)
    given = car.set({"engine/spark/policy": "as_given", "engine/spark/retard": "30 deg"})
    assert "driven" not in meant(ww.rank(given, upgrades=["fairing"], progress=False))


def test_the_anchor_is_explained_before_it_is_used(ranking):
    text, (lower, stated, upper) = flat(repr(ranking)), ranking.knock_anchors
    said = text.index(f"is known to begin to knock: {stated:.4g}, known to {upper - stated:.2g}")
    assert said < text.index("Every upgrade, at knock anchors")
    assert f"At the lower one, {lower:.4g}, it knocks later" in text


def with_a_cheaper_row(ranking, *speeds):
    """The ranking with the fastest row for less money than the recommended set at these speeds,
    km/h behind the fastest set at each anchor.
    """
    fastest = ranking.numbers["sets"][ranking.numbers["fastest"]]["speed"]
    cheaper = [
        at
        for at in ranking.numbers["best_by_cost"]
        if ranking.set_at(at).cost < ranking.target.cost
    ]

    def slow(numbers):
        behind = (speed / 3.6 for speed in speeds)
        numbers["sets"][cheaper[-1]]["speed"] = [
            speed - less for speed, less in zip(fastest, behind, strict=True)
        ]

    return restated(ranking, slow)


def test_a_cheaper_row_is_told_to_be_passed_over_for_another_anchor(ranking):
    """With what decides, the anchor and by how much it is slower there."""
    made = with_a_cheaper_row(ranking, 0.5, 0.6, 3.21)
    cheaper = next(one for one in made.best_by_cost[::-1] if one.cost < made.target.cost)
    said = passed_over(made, made.best_by_cost)
    assert f"is cheaper, {cost(cheaper, made)}, reaches " in said
    assert f"knock anchor of {made.knock_anchors[2]:.4g}: there it is 3.2 km/h slower" in said
    assert "more than the 2 km/h that can be told" in said
    assert changes(made.target, cheaper) in said
    assert said in flat(repr(made))
    assert flat(repr(made)).index(said) < flat(repr(made)).index("Every upgrade")
    lost = with_a_cheaper_row(ranking, 0.5, 0.6, float("nan"))
    assert "there it has no answer" in passed_over(lost, lost.best_by_cost)


def test_a_row_that_is_slower_as_stated_needs_no_such_word(ranking):
    for behind in ((0.5, 2.6, 3.2), (0.5, 1.0, 1.0)):
        made = with_a_cheaper_row(ranking, *behind)
        assert passed_over(made, made.best_by_cost) == ""


def test_a_price_is_as_doubtful_as_its_gain(ranking):
    text = flat(repr(ranking))
    assert "Nobody can tell a gain of less than 2 km/h on the road, and the price" in text
    assert "a share behind it" not in text
    assert "how far it may be opened" not in text


def test_an_explanation_says_which_other_fact_it_spoils(seen):
    anchor = {"engine/knock_anchor/octane_number": "92 ± 0.01"}
    best = seen().set(anchor).top_speed()
    boost, speed = best.point.manifold.boost / 1e3, 3.6 * best.goal_speed
    facts = top(speed=f"{speed:.2f} ± 1.5 km/h", boost=f"{boost - 4:.3f} ± 2 kPa")
    car = seen(facts).set(anchor)
    (far,) = car.diagnose().explained
    spoiling = [one for one in far.inputs if one.spoils]
    assert spoiling
    for one in spoiling:
        (spoiled,) = one.spoils
        there = moved(car, one.input, one.deviations)
        then = next(fact for fact in there.against_observed() if fact.key == "speed")
        assert spoiled.off == pytest.approx(then.off, abs=0.02)
        assert 1 < abs(spoiled.off) <= 2
    text = flat(car.top_speed().summary(car.diagnose()))
    assert (
        f"it spoils, by so many standard deviations: speed, {spoiling[0].spoils[0].off:+.1f}"
        in text
    )
    assert text.count("it spoils") == len(spoiling)


def test_the_spread_of_the_model_says_what_it_counts(document):
    document["observed"] = DOCUMENT["observed"]
    car = ww.loads(json.dumps(document))
    said = "The model's +/- counts where the engine knocks, and no other input"
    assert said in flat(car.top_speed().summary(car.diagnose()))
    document["observed"] = [top(speed="122 ± 2 km/h", retard="9 ± 2 deg")]
    car = ww.loads(json.dumps(document))
    said = "counts where the engine knocks and the spark that was driven, and no other input"
    assert said in flat(car.top_speed().summary(car.diagnose()))
