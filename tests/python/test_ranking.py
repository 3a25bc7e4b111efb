"""The menu, ranked."""

import json
import pickle
import re
from pathlib import Path

import pytest

import windwall as ww

ROOT = Path(__file__).parents[2]


def test_the_base_is_the_vehicle_as_it_is(car, ranking):
    assert ranking.answered
    assert ranking.complete
    assert ranking.base.upgrades == ()
    assert ranking.base.speed[1] == pytest.approx(car.top_speed().goal_speed, rel=1e-9)


def test_every_set_is_what_installing_it_gives(car, ranking):
    by_name = {one.upgrades: one for one in ranking.sets}
    assert len(by_name) == 8
    for upgrades in (("fairing",), ("intercooler", "small_pulley", "fairing")):
        speed = car.install(*upgrades).top_speed().goal_speed
        assert by_name[upgrades].speed[1] == pytest.approx(speed, rel=1e-9)


def test_shares_sum_to_the_gain_of_the_set(ranking):
    target, worth = ranking.target, ranking.upgrades
    for anchor in range(3):
        shares = sum(worth[key].share[anchor] for key in target.upgrades)
        gain = target.speed[anchor] - ranking.base.speed[anchor]
        assert shares == pytest.approx(gain, abs=1e-9)


def test_a_budget_bounds_the_set(car, ranking):
    poor = ww.rank(car, budget="100 EUR", progress=False)
    assert poor.budget == 100
    assert poor.target.cost <= 100 < ranking.fastest.cost
    assert ww.rank(car, budget=100, progress=False) == poor


@pytest.mark.parametrize(
    "budget, words",
    [("500", "500 what"), ("500 USD", "costs of this file are in EUR"), ("-5 EUR", "not negative"),
     (-5, "sum of money"), ("5 kg", "sum of money")],
)  # fmt: skip
def test_a_budget_is_a_sum_in_the_currency_of_the_file(car, budget, words):
    with pytest.raises(ValueError, match=words):
        ww.rank(car, budget=budget, progress=False)


def test_only_some_upgrades(car):
    some = ww.rank(car, upgrades=["fairing"], progress=False)
    assert list(some.upgrades) == ["fairing"]
    with pytest.raises(ww.ScenarioError, match="no upgrade is called 'fairin'"):
        ww.rank(car, upgrades=["fairin"])


def test_best_sets_grow_dearer_and_faster(ranking):
    for sets, price in ((ranking.best_by_cost, "cost"), (ranking.best_by_hours, "hours")):
        prices = [getattr(one, price) for one in sets]
        speeds = [one.speed[1] for one in sets]
        assert prices == sorted(set(prices))
        assert speeds == sorted(set(speeds))
        assert all(one.recommended for one in sets)


def test_threads_do_not_change_an_answer(car, ranking):
    assert ww.rank(car, progress=False, threads=1) == ranking


def test_a_ranking_without_a_base_says_why(stuck):
    nothing = ww.rank(stuck, progress=False)
    assert not nothing.answered
    with pytest.raises(ww.NoAnswer):
        _ = nothing.base
    assert "No answer" in repr(nothing)


def test_a_ranking_pickles(ranking):
    again = pickle.loads(pickle.dumps(ranking))
    assert again == ranking
    assert repr(again) == repr(ranking)


def test_what_is_printed(ranking):
    text = repr(ranking)
    headings = ["Every upgrade", "Limits that an upgrade passes", "Best set for every budget",
                "Best set for every number of hours", "The goal", "How sure", "Care"]  # fmt: skip
    places = [text.index(f"\n{heading}") for heading in headings]
    assert places == sorted(places)
    assert text.isascii()
    assert all(len(line) <= 100 for line in text.splitlines())


def test_a_baseline_beyond_a_limit_is_said_first(car):
    fast = car.set({"charge_path/roots/rated_speed": "5000 rpm"})
    text = repr(ww.rank(fast, progress=False))
    assert text.index("Limits passed on the way") < text.index("Every upgrade")
    assert "every allowed set passes a limit" in text


def test_a_file_without_costs_has_no_currency_to_be_named(document):
    del document["upgrades"]
    said = ww.rank(ww.loads(json.dumps(document)), budget=900, progress=False).summary()
    assert "level road; budget 900." in " ".join(said.split())


def test_who_asks_an_answer_for_a_plot_is_told_what_draws_it(car, ranking):
    for answer, names in ((car.top_speed(), ("accounts", "stations")),
                          (ranking, ("gains",))):  # fmt: skip
        with pytest.raises(AttributeError) as caught:
            answer.plot()
        for name in names:
            assert f"ww.plot.{name}(answer)" in str(caught.value)
            assert getattr(ww.plot, name)(answer) is not None
    with pytest.raises(AttributeError, match="no 'speeed' here; there are"):
        car.top_speed().speeed  # noqa: B018


def test_what_nobody_compared_yet_says_how(car, ranking):
    for answer, how in ((car.top_speed(), "car.diagnose()"), (ranking, "car.diagnose(answer)")):
        said = " ".join(answer.summary().split())
        assert f"print(answer.summary({how})) does." in said
        assert "print(" not in answer.summary(eval(how))


def test_an_empty_menu_shows_an_upgrade_that_can_be_pasted(document):
    document.pop("upgrades")
    said = ww.rank(ww.loads(json.dumps(document)), progress=False).summary()
    shown = re.search(r'"upgrades": (\[.*?\}\])', said, re.DOTALL)[1]
    fed = ww.loads(json.dumps(document | {"upgrades": json.loads(shown)}))
    assert ww.rank(fed, progress=False).upgrades["fairing"].alone[1] > 0
    assert 'docs/scenario_files.md, "Upgrades"' in " ".join(said.split())
    assert "\n## Upgrades\n" in (ROOT / "docs/scenario_files.md").read_text("utf-8")


def test_an_empty_menu_is_no_failure(document):
    del document["upgrades"]
    nothing = ww.rank(ww.loads(json.dumps(document)), progress=False)
    assert nothing.answered
    assert "lists no upgrades" in repr(nothing)


def test_steps_too_small_to_tell_apart_are_left_out(ranking):
    from windwall.report.text.rank_sets import worth_printing
    from windwall.results.ranking import UpgradeSet

    def at(speed):
        return UpgradeSet(ranking.base.to_dict() | {"speed": [speed] * 3}, ranking.scenario_info)

    sets = [at(30.0), at(30.05), at(30.3), at(30.31)]
    kept = worth_printing(sets, "metric")
    assert [one.speed[1] for one in kept] == [30.0, 30.3, 30.31]
    assert worth_printing([], "metric") == []


def rows_of_tables(text):
    """The lines that begin with a sum, and the names that begin a line of the tables."""
    import re

    sums = [float(one) for one in re.findall(r"^ +(\d+) EUR ", text, re.MULTILINE)]
    names = re.findall(r"^  ([a-z]\w*)(?::[^+\n]*)? +[+-]\d", text, re.MULTILINE)
    return sums, names


def test_no_row_exceeds_a_budget(car):
    everything = ww.rank(car, progress=False)
    assert max(rows_of_tables(repr(everything))[0]) > 100
    poor = ww.rank(car, budget="100 EUR", progress=False)
    text = repr(poor)
    sums, names = rows_of_tables(text)
    assert sums
    assert max(sums) <= 100
    assert set(names) == {"small_pulley"}
    assert "Beyond the budget, with what they require: intercooler, fairing." in text
    named = [*poor.best_by_cost, *poor.best_by_hours, poor.target, poor.fastest]
    for worth in poor.upgrades.values():
        pairs = (worth.best_pair, worth.most_helped, worth.most_hindered)
        named += [poor.sets[pair.pair] for pair in pairs if pair]
    assert all(one.cost <= 100 for one in named)


def test_the_set_is_the_cheapest_that_cannot_be_told_from_the_fastest(car, ranking):
    """The car's speed was read to 2 km/h."""
    assert ranking.smallest_lead == pytest.approx(2 / 3.6)

    def lead(one, way):
        return ranking.fastest.speed[way] - one.speed[way]

    def alike(one):
        return all(lead(one, way) <= ranking.smallest_lead for way in range(3))

    allowed = [one for one in ranking.sets if one.recommended]
    cheapest = min((one for one in allowed if alike(one)), key=lambda one: one.cost)
    assert ranking.target == cheapest
    most = max(one.speed[1] for one in allowed)
    as_fast = [one for one in allowed if one.speed[1] >= most - 0.05 / 3.6]
    assert ranking.fastest == min(as_fast, key=lambda one: one.cost)
    assert ranking.lead == pytest.approx([lead(cheapest, way) for way in range(3)], abs=1e-9)


def test_without_a_reading_half_a_kilometre_an_hour_can_be_told(document):
    import json

    del document["observed"]
    ranking = ww.rank(ww.loads(json.dumps(document)), progress=False)
    assert ranking.smallest_lead == pytest.approx(0.5 / 3.6)


def test_partners_are_what_the_sets_say(ranking):
    """By brute force: no upgrade of this menu needs or excludes another."""
    speed = {frozenset(one.upgrades): one.speed for one in ranking.sets}
    base = speed[frozenset()]
    for name, worth in ranking.upgrades.items():
        others = set(ranking.upgrades) - {name}
        together = {other: speed[frozenset({name, other})][1] - base[1] for other in others}
        beside = {
            other: speed[frozenset({name, other})][1] - speed[frozenset({other})][1]
            for other in others
        }
        extra = {other: gain - worth.alone[1] for other, gain in beside.items()}
        assert worth.best_pair.id == max(together, key=together.get)
        assert worth.best_pair.together[1] == pytest.approx(max(together.values()), abs=1e-9)
        most, least = max(extra, key=extra.get), min(extra, key=extra.get)
        assert (worth.most_helped and worth.most_helped.id) == (most if extra[most] > 0 else None)
        assert (worth.most_hindered and worth.most_hindered.id) == (
            least if extra[least] < 0 else None
        )
        if worth.most_helped:
            assert worth.most_helped.beside[1] == pytest.approx(beside[most], abs=1e-9)
            assert worth.most_helped.interaction[1] == pytest.approx(extra[most], abs=1e-9)
        assert set(ranking.sets[worth.best_pair.pair].upgrades) == {name, worth.best_pair.id}
    assert "Every upgrade with a partner" in repr(ranking)
