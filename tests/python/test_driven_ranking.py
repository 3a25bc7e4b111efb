"""Sets of upgrades by a run that is driven: what is driven, what is passed over, what is wanted."""

import itertools
import json

import pytest

import windwall as ww
from python.samples import CURVE
from windwall.study.pruning import Line, front, spread_over

MENU = [
    {"id": "diet", "cost": "40 EUR", "add": {"body/mass": "-60 kg"}},
    {"id": "nose", "cost": "30 EUR", "scale": {"body/drag_area": 0.8}},
    {"id": "tail", "cost": "90 EUR", "requires": ["nose"], "scale": {"body/drag_area": 0.9}},
    {"id": "sail", "cost": "10 EUR", "set": {"body/drag_area": "4 m2"}},
    {"id": "rubber", "cost": "20 EUR", "scale": {"body/rolling_resistance": 0.7}},
    {"id": "ballast", "cost": "5 EUR", "add": {"body/mass": "60 kg"}},
]


def vehicle(**goal):
    menu = [{"title": one["id"]} | one for one in MENU]
    return ww.loads(json.dumps(CURVE | {"upgrades": menu, "goal": goal}))


@pytest.fixture(scope="module")
def car():
    return vehicle()


@pytest.fixture(scope="module")
def everything(car):
    """Every allowed set, driven one by one without any ranking."""
    return {members: car.install(*members).time_to("80 km/h") for members in allowed()}


def allowed():
    ids = [one["id"] for one in MENU if one["id"] != "sail"]
    for size in range(len(ids) + 1):
        for members in itertools.combinations(ids, size):
            if "tail" not in members or "nose" in members:
                yield members


def test_the_best_is_the_best_of_all_that_could_be_driven(car, everything):
    ranking = ww.rank(car, by="time to 80 km/h")
    best = min(everything, key=everything.get)
    assert set(ranking.best.fitted.upgrades) == set(best)
    assert ranking.best.merit == pytest.approx(everything[best], rel=1e-9)
    assert ranking.stock.merit == everything[()]
    assert ranking.gain(ranking.best) == pytest.approx(everything[()] - everything[best])
    assert ranking.pruning.driven < ranking.pruning.candidates
    assert (ranking.pruning.missed, ranking.complete) == (0, True)


def test_best_for_every_price_is_that_of_driving_everything(car, everything):
    """But for sets that could not be told apart on a clock."""
    ranking = ww.rank(car, by="time to 80 km/h")
    cost = {one["id"]: float(one["cost"].split()[0]) for one in MENU}
    for price in (30, 40, 60, 90, 190):
        ours = [one.merit for one in ranking.best_for_price if one.fitted.cost <= price]
        theirs = [
            time for members, time in everything.items() if sum(map(cost.get, members)) <= price
        ]
        assert min(ours) == pytest.approx(min(theirs), abs=0.01)


def test_by_the_speed_of_a_driven_run(car):
    ranking = ww.rank(car, by="driven_speed")
    best = car.install(ranking.best.fitted)
    assert ranking.best.merit == best.shortfall().driven
    assert ranking.stock.merit == car.shortfall().driven
    merits = [one.merit for one in ranking.runs]
    assert merits == sorted(merits, reverse=True)


def test_a_goal_that_is_a_time():
    car = vehicle(time="11 s", to_speed="80 km/h")
    ranking = ww.rank(car, by="goal")
    assert (ranking.goal, ranking.mark.speed) == (11, pytest.approx(80 / 3.6))
    one = ranking.cheapest_for_goal
    if one is not None:
        assert one.merit <= 11
    slower = ranking.stock.merit + 1
    easy = ww.rank(vehicle(time=f"{slower} s", to_speed="80 km/h"), by="goal")
    assert easy.cheapest_for_goal.fitted.upgrades == ()
    hard = ww.rank(vehicle(time="1 s", to_speed="80 km/h"), by="goal")
    assert hard.cheapest_for_goal is None
    assert "Nothing that was driven reaches the goal of 1 s" in hard.summary().replace(
        "\n    ", " "
    )


def test_a_budget_holds(car):
    ranking = ww.rank(car, budget="50 EUR", by="time over 400 m")
    assert max(one.fitted.cost for one in ranking.runs) <= 50


@pytest.mark.parametrize("by", ["time", "time over 100 km/h", "time to 400 m", "speed", "", "goal"])
def test_what_is_nothing_to_rank_by(car, by):
    with pytest.raises(ww.ScenarioError, match="by"):
        ww.rank(car, by=by)


@pytest.mark.parametrize(
    ("goal", "key", "said"),
    [
        ({"time": "9 s"}, "goal/time", "over or to_speed"),
        ({"over": "400 m"}, "goal/over", "state time"),
        ({"to_speed": "80 km/h"}, "goal/to_speed", "state time"),
        ({"time": "9 s", "over": "400 m", "to_speed": "80 km/h"}, "goal/to_speed", "not both"),
    ],
)
def test_half_a_goal_is_refused(goal, key, said):
    with pytest.raises(ww.ScenarioError) as refused:
        vehicle(**goal)
    (problem,) = refused.value.problems
    assert problem.address == key
    assert said in problem.message


def test_stopping_keeps_what_was_driven(car):
    seen = []

    def enough(done, total):
        seen.append(total)
        return not (len(seen) > 3 and done >= 3)

    ranking = ww.rank(car, by="time to 80 km/h", progress=lambda done, total: enough(done, total))
    assert ranking.interrupted
    assert not ranking.complete
    assert "stopped" in ranking.summary()


def test_the_command(windwall, tmp_path, car):
    path = tmp_path / "car.json"
    car.save(path)
    said = windwall("rank", path, "--by", "time over 400 m")
    assert (said.returncode, said.stderr) == (0, "")
    assert "time from standstill over 400 m" in said.stdout
    found = json.loads(windwall("rank", path, "--by", "driven_speed", "--json").stdout)
    assert found["answered"]
    assert found["best"]["merit"] == max(one["merit"] for one in found["runs"])
    assert found["pruning"]["candidates"] >= found["pruning"]["driven"]
    assert windwall("rank", path, "--by", "beauty").returncode == 2


def test_a_table_of_what_was_driven(car):
    table = ww.rank(car, by="time over 400 m").frame
    assert table.attrs["units"]["time"] == "s"
    assert table["time"].is_monotonic_increasing


def test_a_front_is_better_for_more():
    found = front([(3, 1.0), (1, 5.0), (2, 6.0), (2, 4.0)], lambda at: at[0], lambda at: at[1])
    assert found == [(1, 5.0), (2, 4.0), (3, 1.0)]


def test_some_of_many_are_spread_evenly():
    assert spread_over(range(5), 9) == [0, 1, 2, 3, 4]
    assert spread_over(range(101), 5) == [0, 25, 50, 75, 100]


def test_a_line_rules_out_no_more_than_its_points_allow():
    line = Line()
    for x in range(4):
        assert line.best_at(1.5) == -float("inf")
        line.note(float(x), 2.0 * x + (0.5 if x % 2 else -0.5))
    assert line.best_at(1.5) == pytest.approx(2 * 1.5 - 0.6)  # 0.6 the most below
    assert line.spread > 0.4
