"""The menu, ranked."""

import pickle

import pytest

import windwall as ww


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
    poor = ww.rank(car, budget="130 EUR", progress=False)
    assert poor.budget == 130
    assert poor.target.cost <= 130 < ranking.target.cost
    assert ww.rank(car, budget=130, progress=False) == poor


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
    assert "every allowed one passes a limit" in text


def test_an_empty_menu_is_no_failure(document):
    import json

    del document["upgrades"]
    nothing = ww.rank(ww.loads(json.dumps(document)), progress=False)
    assert nothing.answered
    assert "lists no upgrades" in repr(nothing)


def test_steps_too_small_to_tell_apart_are_left_out(ranking):
    from windwall.report.text.rank import worth_printing
    from windwall.results.ranking import UpgradeSet

    def at(speed):
        return UpgradeSet(ranking.base.to_dict() | {"speed": [speed] * 3}, ranking.scenario_info)

    sets = [at(30.0), at(30.05), at(30.3), at(30.31)]
    kept = worth_printing(sets, "metric")
    assert [one.speed[1] for one in kept] == [30.0, 30.3, 30.31]
    assert worth_printing([], "metric") == []
