"""How sure: speeds, gains and choices over common draws."""

import json
from itertools import chain, combinations
from pathlib import Path

import numpy as np
import pytest

import windwall as ww
from published.chances import farthest
from windwall.report.wording.chance import of_hundred, of_ten
from windwall.results.drawn import Spread
from windwall.study import drawn_sets
from windwall.study.contenders import kept
from windwall.study.drawn_sets import DrawnSets
from windwall.study.draws import FOR_CHANCES, drawn_values
from windwall.study.prior import Prior
from windwall.study.set_shares import share_weights
from windwall.study.worlds import WorldSpeeds, world_speeds

CAR = "scenarios/airfield_cyclecar.json"
SOME = ["small_pulley", "fairing", "gearing", "diet", "hard_tyres", "shroud"]
SOME_IN_ORDER = ["small_pulley", "gearing", "fairing", "diet", "hard_tyres", "shroud"]


@pytest.fixture(scope="module")
def car():
    return ww.load(CAR)


@pytest.fixture(scope="module")
def ranking(car):
    return ww.rank(car, upgrades=SOME, progress=False)


@pytest.fixture(scope="module")
def few(car):
    return ww.rank(car, upgrades=["small_pulley", "fairing", "diet"], progress=False)


@pytest.fixture(scope="module")
def drawn(car, ranking):
    return car.drawn_ranking(ranking, 64, progress=False)


def test_a_speed_is_told_with_its_spread(car):
    found = car.drawn_speed(64)
    values = drawn_values(Prior(car), 64)
    speeds = world_speeds(car, values).speed[:, 0]
    assert found.spread == Spread.of(speeds)
    assert found.spread.low < found.middle < found.spread.high
    assert found.chance_of_goal == np.mean(speeds >= car.get("goal/speed"))
    assert found.ends == {"answered": 64}
    assert found.stated == pytest.approx(car.brief_top_speed().goal_speed, rel=1e-9)


def test_inputs_at_the_end_of_their_range_are_named(car):
    found = car.drawn_speed(2)
    names = [one.address for one in found.one_sided]
    assert "charge_path/blower/fill_loss" in names
    assert all(one.change < 0 for one in found.one_sided)
    moved = car.set({one.address: ww.si(one.middle) for one in found.one_sided})
    speed = moved.brief_top_speed().goal_speed
    assert speed - found.stated == pytest.approx(found.all_moved, rel=0.15)
    exact = car.set({"charge_path/blower/fill_loss": "0 %"})
    assert "charge_path/blower/fill_loss" not in [x.address for x in exact.drawn_speed(2).one_sided]


def test_nothing_uncertain_is_no_spread():
    same = Spread.of(np.full(8, 30.0))
    assert (same.sigma, same.low, same.high) == (0, 30, 30)
    assert Spread.of(np.array([1.0, np.nan, np.nan])) is None
    assert Spread.of(np.array([1.0, 3.0, np.nan])).worlds == 2


def test_the_same_worlds_for_every_set(car, ranking, drawn):
    values = drawn_values(Prior(car), 64)
    pair = world_speeds(car, values, [["fairing"], []]).speed
    assert drawn.gain("fairing").alone == Spread.of(pair[:, 0] - pair[:, 1])
    whole = drawn.set_of(("fairing",))
    assert whole is None or whole.speed == Spread.of(pair[:, 0])


def test_neither_threads_nor_halving_change_a_gain(car, ranking, drawn):
    one = car.drawn_ranking(ranking, 64, progress=False, threads=1)
    assert one == drawn


def test_what_is_told_is_counted_over_four_times_as_many_worlds(car, drawn):
    values = drawn_values(Prior(car), 256)
    assert (values[:64] == drawn_values(Prior(car), 64)).all()  # the same worlds and more of them
    first, second = drawn.by_gain.first, drawn.by_gain.second
    sets = [[], drawn.recommended, [first], [second], drawn.fastest]
    speed = world_speeds(car, values, sets).speed
    for one, reached in zip(sets, speed.T, strict=True):
        known = drawn.set_of(tuple(one))
        assert (known.counted, known.speed.worlds) == (256, 64)
        assert known.reaches_goal == np.mean(reached >= car.get("goal/speed"))
    assert drawn.by_gain == (first, second, np.mean(speed[:, 2] > speed[:, 3]), 256)
    assert drawn.by_speed.worlds == 256
    assert min(one.counted for one in drawn.sets) == 64  # those that no sentence tells


def test_last_is_taken_off_the_target(car, ranking, drawn):
    target = ranking.target.upgrades
    values = drawn_values(Prior(car), 64)
    left = [one for one in target if one != "fairing"]
    pair = world_speeds(car, values, [target, left]).speed
    assert drawn.gain("fairing").last == Spread.of(pair[:, 0] - pair[:, 1])


def test_fair_shares_add_up_in_every_world(ranking, drawn):
    target = frozenset(ranking.target.upgrades)
    shares = sum(drawn.gain(one).share.mean for one in target)
    base, best = drawn.set_of(()), drawn.set_of(tuple(target))
    assert shares == pytest.approx(best.speed.mean - base.speed.mean, rel=1e-9)


def subsets(of):
    return chain.from_iterable(combinations(of, n) for n in range(len(of) + 1))


def test_share_weights_are_shapleys_where_all_is_allowed():
    # By L. S. Shapley's formula: the share of i is the mean over all orders, here written out.
    value = {frozenset(s): float(len(s)) ** 2 + 3 * ("a" in s) for s in subsets("abc")}
    weights = share_weights(frozenset("abc"), lambda _: True)
    share = {one: sum(w * value[s] for s, w in weights[one].items()) for one in "abc"}
    assert share == pytest.approx({"a": 6.0, "b": 3.0, "c": 3.0})


def test_share_weights_keep_to_what_is_allowed():
    allowed = lambda s: "b" not in s or "a" in s  # noqa: E731
    weights = share_weights(frozenset("ab"), allowed)
    assert weights["b"] == {frozenset("ab"): 1.0, frozenset("a"): -1.0}
    assert share_weights(frozenset("ab"), lambda s: len(s) != 1) is None


def test_halving_costs_less_than_can_be_seen(car, ranking, drawn):
    """Against drawing every set of this menu in every world."""
    sets = DrawnSets(car, drawn_values(Prior(car), 64))
    everything = [frozenset(one.upgrades) for one in ranking.sets if one.recommended]
    sets.solve(everything, 64)
    table = sets.table(everything, 64)
    means = table.mean(axis=0)
    fastest = everything[int(means.argmax())]
    assert frozenset(drawn.fastest) == fastest
    costs = {frozenset(one.upgrades): one.cost for one in ranking.sets}
    alike = [one for one, mean in zip(everything, means, strict=True)
             if means.max() - mean <= ranking.smallest_lead]  # fmt: skip
    assert costs[frozenset(drawn.recommended)] == min(costs[one] for one in alike)
    regret = (table.max(axis=1) - sets.speed(frozenset(drawn.recommended), 64)).mean()
    assert drawn.regret == pytest.approx(regret, abs=0.02)  # m/s, what halving lost


def test_a_set_that_may_be_cheapest_is_kept():
    names = [frozenset(x) for x in ("abc", "ab", "a", "b")]
    costs = dict(zip(names, (500.0, 300.0, 40.0, 90.0), strict=True))
    speeds = np.array([[40.0, 39.9, 39.6, 30.0]] * 8)
    left = kept(names, speeds, costs, 0.5)
    assert left == [names[0], names[2], names[1]]


def test_no_row_exceeds_a_budget(car):
    within = ww.rank(car, "100 EUR", upgrades=SOME, progress=False)
    found = car.drawn_ranking(within, 16, progress=False)
    assert found.recommended
    assert found.fastest
    assert max(one.cost for one in found.sets) <= 100
    assert [one.id for one in found.gains] == [one for one in SOME_IN_ORDER if one != "fairing"]
    assert "fairing" not in found.summary()  # at 130 EUR


def test_a_cost_has_its_doubt(car):
    document = car.document()
    for one in document["upgrades"]:
        one["cost"] = {"small_pulley": "45 ± 4 EUR", "fairing": "130 ± 3 EUR"}.get(
            one["id"], one["cost"]
        )
    pair = ww.loads(json.dumps(document))
    assert pair.upgrades["fairing"].cost_sigma == 3
    assert car.upgrades["gearing"].cost_sigma is None
    ranking = ww.rank(pair, "180 EUR", ["small_pulley", "fairing"], progress=False)
    drawn = pair.drawn_ranking(ranking, 8, progress=False)
    both = drawn.set_of(("small_pulley", "fairing"))
    assert (both.cost, both.cost_sigma) == (175, 5)
    # One standard deviation to spare; the table of the normal distribution has 0.8413 for it.
    assert both.within_budget == pytest.approx(0.8413, abs=5e-5)
    assert drawn.set_of(()).within_budget == 1
    assert "175 +/- 5 EUR" in drawn.summary()
    assert "costs more than the budget in 2 of 10 worlds" in " ".join(drawn.summary().split())


def test_a_stop_keeps_whole_worlds(car, ranking):
    heard = []

    def stop(done, total):
        heard.append((done, total))
        return len(heard) < 4

    found = car.drawn_ranking(ranking, 256, progress=stop)
    assert found.interrupted
    assert 0 < found.worlds < 256
    assert "STOPPED EARLY" in found.summary()


# The first call is of the sets that are named; those from the second on sort out the others.
@pytest.mark.parametrize(("call", "worlds"), [(1, 0), (2, 16), (3, 16), (5, 64), (9, 192)])
def test_ctrl_c_ends_it_whenever_it_comes(car, few, monkeypatch, call, worlds):
    calls = []

    def speeds(scenario, values, sets, progress, threads, means):
        calls.append(len(sets))
        if len(calls) == call:
            raise KeyboardInterrupt
        shape = (len(values), len(sets))
        speed = np.arange(30.0, 30.0 + len(sets)) + np.zeros(shape)
        return WorldSpeeds(speed, np.full(shape, "answered", object))

    monkeypatch.setattr(drawn_sets, "world_speeds", speeds)
    found = car.drawn_ranking(few, 256, progress=False)
    assert len(calls) == call  # nothing is begun afterwards
    assert (found.worlds, found.interrupted) == (worlds, True)
    assert "STOPPED EARLY" in found.summary()
    assert (found.recommended is None) == (call < 3)


def test_the_command_says_how_sure(windwall, tmp_path):
    said = windwall("rank", CAR, "--draws", "16", "--budget", "60 EUR", "--json")
    made = json.loads(said.stdout)["drawn"]
    assert made["worlds"] == 16
    menu = ww.load(CAR).upgrades
    assert made["gains"]
    assert max(menu[one["id"]].cost for one in made["gains"]) <= 60
    assert windwall("rank", CAR, "--draws", "100").returncode == 2
    text = windwall("speed", CAR).stdout
    assert "in 9 of 10 vehicles described like this" in text
    assert ww.load(CAR).observed
    assert "once it is learned (`windwall learn`)" in " ".join(text.split())


@pytest.mark.parametrize(
    ("chance", "said"),
    [
        (0, "none of 256"),
        (1, "all of 256"),
        (0.3, "3 of 10"),
        (0.02, "2 of 100"),
        (0.999, "99 of 100"),
        (1 / 256, "1 of 100"),
    ],
)
def test_chances_are_counted(chance, said):
    assert of_ten(chance, 256) == said


def test_a_chance_says_how_well_it_is_known():
    # sqrt(0.3 0.7/256) is 2.9 %, a quarter of the worlds doubles it.
    assert of_hundred(0.3, 256) == "30 +/- 3 of 100"
    assert of_hundred(0.3, 64) == "30 +/- 6 of 100"
    assert of_hundred(0.5, 1 << 16) == "50 +/- 1 of 100"
    assert of_hundred(0.02, 256) == "2 of 100"
    assert of_hundred(1, 256) == "all of 256"


@pytest.mark.slow
@pytest.mark.timeout(600)
@pytest.mark.parametrize(("draws", "within"), [(256, 0.06), (FOR_CHANCES, 0.015), (4096, 0.015)])
def test_chances_of_a_blown_car_agree_with_independent_draws(draws, within):
    """As tests/published/test_chances.py does for a vehicle that is quicker to solve."""
    sets = ((), ("fairing", "small_pulley", "gearing", "diet"))
    assert farthest(Path(CAR).read_text(encoding="utf-8"), sets, draws) <= within
