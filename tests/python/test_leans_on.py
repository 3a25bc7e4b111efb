"""What an answer leans on: who is looked at, what is shown, and how it is stopped."""

import json
from itertools import pairwise

import numpy as np
import pytest

import windwall as ww
from python.samples import CURVE
from windwall.cli.command import run_command
from windwall.scenario.titles import titles
from windwall.study import leans_on as study
from windwall.study.prior import Prior

MENU = [
    {"id": "nose", "title": "A long nose", "scale": {"body/drag_area": "0.8 ± 0.1"}},
    {"id": "diet", "title": "Seats left at home", "add": {"body/mass": "-60 kg"}},
]
PAIR = (["nose"], ["diet"])


@pytest.fixture(scope="module")
def car():
    document = json.loads(json.dumps(CURVE))
    document["body"] |= {"drag_area": "0.7 ± 0.05 m2", "mass": "400 ± 20 kg"}
    document["driveline"][0]["ratios"] = [9.0, 3.8]  # the air holds it, not the rev limit
    priced = [{"cost": "50 EUR"} | one for one in MENU]
    return ww.loads(json.dumps(document | {"upgrades": priced}))


@pytest.fixture(scope="module")
def found(car):
    return car.leans_on(PAIR, rows=128, most=4)


def lean(leaning, title):
    return next(one for one in leaning.leans if one.title == title)


def test_the_drag_area_decides(found):
    assert found.speed.leans[0].title == "body: drag area"
    assert lean(found.speed, "body: drag area").total > 0.3
    assert found.difference.leans[0].title == "nose: drag area"


def test_what_is_an_upgrades_own_moves_no_stock_speed(found):
    nose = lean(found.speed, "nose: drag area")
    assert (nose.step, nose.first, nose.total) == (0, 0, 0)


def test_the_difference_is_the_first_less_the_second(car, found):
    """15 %: the middles of one-sided numbers are not what is stated."""
    nose, diet = (car.install(*one).brief_top_speed().goal_speed for one in PAIR)
    assert nose - diet > 0.5
    assert found.difference.mean == pytest.approx(nose - diet, rel=0.15)
    turned = car.leans_on(PAIR[::-1], rows=128, most=4).difference
    assert turned.mean == pytest.approx(-found.difference.mean, rel=1e-12)
    assert [one.total for one in turned.leans] == [one.total for one in found.difference.leans]


def test_the_step_is_that_of_one_standard_deviation(car, found):
    """2 %: the others stand at their medians there, which is off what is stated where a number is
    cut at it.
    """
    prior = Prior(car)
    at = prior.addresses.index("body/drag_area")
    z = np.zeros((2, len(prior)))
    z[:, at] = 1, -1
    base = car.brief_top_speed().goal_speed
    moves = [
        car.set({"body/drag_area": ww.si(value)}).brief_top_speed().goal_speed - base
        for value in prior.to_values(z)[:, at]
    ]
    expected = np.sqrt(np.mean(np.square(moves)))
    assert lean(found.speed, "body: drag area").step == pytest.approx(expected, rel=0.02)


def test_everything_else_is_one_group_last(car, found):
    *own, rest = found.speed.leans
    assert rest.title == ""
    numbers = [address for one in found.speed.leans for address in one.addresses]
    assert sorted(numbers) == sorted(Prior(car).addresses)
    assert len(own) <= 4
    assert all(one.total >= then.total for one, then in pairwise(own))


def test_the_shares_of_a_variance_make_one(found):
    """Of a speed that is nearly a sum; within three standard errors."""
    total = sum(one.first for one in found.speed.leans)
    error = np.sqrt(sum(one.first_error**2 for one in found.speed.leans))
    assert total == pytest.approx(1, abs=max(3 * error, 0.02))
    assert error < 0.3


def test_correlated_numbers_count_as_one(car):
    plain = Prior(car)
    correlation = np.eye(len(plain))
    pair = [plain.addresses.index(one) for one in ("body/drag_area", "body/rolling_resistance")]
    correlation[pair[0], pair[1]] = correlation[pair[1], pair[0]] = -0.6
    screened = study.screen(car, Prior(car, correlation), ((),), 4)
    assert sorted(pair) in [sorted(one) for one in screened.groups]
    assert not any(len(one) > 1 for one in study.screen(car, plain, ((),), 4).groups[:-1])


def test_a_group_is_called_by_what_matters_most(car):
    stated = {"between": ["body/mass", "body/drag_area"], "correlation": 0.5}
    together = ww.loads(json.dumps(car.document() | {"correlations": [stated]}))
    first = together.leans_on(rows=32, most=3).speed.leans[0]
    assert first.title == "body: drag area, with 1 more that err with it"
    assert first.addresses == ("body/drag_area", "body/mass")


def test_one_thread_says_the_same_as_two(car, found):
    again = car.leans_on(PAIR, rows=128, most=4, threads=1)
    assert again.leanings == found.leanings


def test_another_seed_is_another_estimate(car, found):
    again = car.leans_on(PAIR, rows=128, most=4, seed=3)
    assert again.speed.leans[0].total != found.speed.leans[0].total


def test_what_it_costs_is_said_before(car):
    plans = []

    def told(plan):
        plans.append(plan)
        raise InterruptedError

    with pytest.raises(InterruptedError):
        car.leans_on(PAIR, rows=64, most=4, planned=told)
    (plan,) = plans
    assert plan.speeds == 64 * (4 + 1 + 2) * 3
    assert str(plan.speeds) in plan.sentence
    assert plan.seconds > 0


def test_a_stop_keeps_what_is_done(car, found):
    heard = []

    def stop(done, total):
        heard.append((done, total))
        return done < total / 2

    half = car.leans_on(PAIR, rows=128, most=4, progress=stop)
    assert half.interrupted
    assert half.rows == half.speed.worlds == 64
    assert heard[-1] == (64 * 7, 128 * 7)
    assert half.speed.leans[0].title == "body: drag area"
    assert "Stopped after 64 of 128 rows" in half.summary()
    assert not found.interrupted


def test_ctrl_c_keeps_what_is_done(car, monkeypatch):
    speeds, calls = study.world_speeds, []

    def interrupted(*arguments, **further):
        calls.append(1)
        if len(calls) == 4:  # the screening and two blocks are done
            raise KeyboardInterrupt
        return speeds(*arguments, **further)

    monkeypatch.setattr(study, "world_speeds", interrupted)
    stopped = car.leans_on(rows=128, most=4)
    assert stopped.rows == 2 * study.BLOCK
    assert stopped.answered


def test_worlds_without_an_answer_are_counted(car, monkeypatch):
    read = study._read

    def holed(speed):
        made = read(speed)
        if len(made) < 16 * 7 + 1:
            made[3] = np.nan
        return made

    monkeypatch.setattr(study, "_read", holed)
    found = car.leans_on(rows=64, most=4)
    assert (found.speed.worlds, found.speed.unanswered) == (60, 4)
    assert "4 of 64 rows" in found.summary()


def test_a_ranking_names_its_two_best(car):
    ranking = ww.rank(car)
    first, second = study.two_best(ranking)
    assert first == ranking.target != second
    assert {first.upgrades, second.upgrades} <= {one.upgrades for one in ranking.sets}
    found = car.leans_on(ranking, rows=32, most=2)
    assert found.pair == (first.upgrades, second.upgrades)


def test_titles_say_where_and_what():
    found = titles(
        [
            "body/drag_area",
            "engine/friction/scale",
            "driveline/primary/efficiency",
            "upgrades/cooler/insert/1/part/drop",
            "upgrades/cooler/scale/body/drag_area",
            "upgrades/cooler/scale/frame/drag_area",
        ]
    )
    assert list(found.values())[:4] == [
        "body: drag area",
        "friction: scale",
        "primary: efficiency",
        "cooler: drop",
    ]
    assert len(set(found.values())) == 6


def test_as_text_document_and_table(found):
    text = found.summary()
    assert "The difference of nose and diet" in text
    assert "others together" in text
    made = json.loads(json.dumps(found.to_dict()))
    assert made["pair"] == [["nose"], ["diet"]]
    assert made["leanings"][0]["leans"][0]["addresses"] == ["body/drag_area"]
    assert set(found.table["of"]) == {"speed", "difference"}


def test_as_a_plot(found):
    matplotlib = pytest.importorskip("matplotlib")
    matplotlib.use("Agg")
    ax = ww.plot.leans_on(found)
    alone, others = ax.containers[0], ax.containers[-1]
    names = [one.get_text() for one in ax.get_yticklabels()]
    assert names[0] == "body: drag area"
    assert names[-1].endswith("others together")
    assert not any("/" in one for one in names)
    assert ax.get_xlabel() == "Share of the variance, %"
    hatches = {bar.get_hatch() for group in ax.containers for bar in getattr(group, "patches", [])}
    assert hatches == {None, "///"}  # told apart without colour
    assert alone is not others
    with pytest.raises(ValueError, match="nothing was asked"):
        ww.plot.leans_on(found, "colour")


def test_the_command(car, tmp_path, capsys):
    path = tmp_path / "car.json"
    car.save(path)
    asked = ["leans", str(path), "--between", "nose", "-", "--rows", "32", "--json"]
    assert run_command(asked) == 0
    said = capsys.readouterr()
    made = json.loads(said.out)
    assert made["pair"] == [["nose"], []]
    assert "top speeds" in said.err
    assert run_command(["leans", str(path), "--alone", "--rows", "32", "--install", "diet"]) == 0
    assert "Fitted first: diet" in capsys.readouterr().out
    assert run_command(["leans", str(path), "--rows", "16", "--json"]) == 0
    assert len(json.loads(capsys.readouterr().out)["pair"]) == 2  # of the ranking


@pytest.mark.parametrize(
    "wrong, says",
    [(["--rows", "100"], "no power of two"), (["--between", "noose", "-"], "no upgrade")],
)
def test_wrong_words_are_told(car, tmp_path, capsys, wrong, says):
    path = tmp_path / "car.json"
    car.save(path)
    assert run_command(["leans", str(path), *wrong]) == 2
    assert says in capsys.readouterr().err
