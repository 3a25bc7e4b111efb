"""Where nothing can be drawn, the picture is one sentence that says why, and no traceback."""

import json

import pytest

import windwall as ww
from python.drawn_pictures import cut, drawn_texts, overlapping
from python.samples import CURVE, DOCUMENT

plt = pytest.importorskip("matplotlib.pyplot")


@pytest.fixture(autouse=True)
def nothing_stays_open():
    yield
    plt.close("all")


def vehicle(**changes):
    return ww.loads(json.dumps(DOCUMENT | changes))


def said(axes):
    """The title and the sentence, on as many lines as they take."""
    texts = drawn_texts(axes.figure)
    assert cut(texts, axes.figure.bbox) == []
    assert overlapping(texts) == []
    assert not axes.axison
    assert len(texts) == 2
    return " ".join(" ".join(one.words.split()) for one in texts)


def test_a_vehicle_that_does_not_move(stuck):
    best, ranking = stuck.top_speed(), ww.rank(stuck, progress=False)
    for axes in (
        ww.plot.accounts(best),
        ww.plot.stations(best),
        ww.plot.gains(ranking),
        ww.plot.best_by_cost(ranking),
    ):
        assert best.sentence in said(axes)
    assert ww.plot.force_against_speed(stuck).axison  # the forces show why
    assert ww.plot.knock_over_engine_speed(stuck).axison


def test_no_upgrades():
    ranking = ww.rank(vehicle(upgrades=[]), progress=False)
    for plot in (ww.plot.gains, ww.plot.best_by_cost):
        assert "names no upgrades" in said(plot(ranking))


def test_no_goal_and_no_blower():
    parts = [DOCUMENT["charge_path"][1]]
    car = vehicle(goal={}, charge_path=parts, upgrades=DOCUMENT["upgrades"][2:])
    ranking = ww.rank(car, progress=False)
    assert "goal" not in ww.plot.best_by_cost(ranking).get_legend_handles_labels()[1]
    for axes in (
        ww.plot.force_against_speed(car),
        ww.plot.accounts(car.top_speed()),
        ww.plot.stations(car.top_speed()),
        ww.plot.gains(ranking),
    ):
        texts = drawn_texts(axes.figure)
        assert axes.axison
        assert cut(texts, axes.figure.bbox) == overlapping(texts) == []


def test_a_torque_curve_says_nothing_of_knock():
    car = ww.loads(json.dumps(CURVE))
    assert "says nothing of knock" in said(ww.plot.knock_over_engine_speed(car))
    ranking = ww.rank(car, progress=False)
    for axes in (
        ww.plot.accounts(car.top_speed()),
        ww.plot.gains(ranking),
        ww.plot.best_by_cost(ranking),
    ):
        assert axes.axison
        axes.figure.canvas.draw()


def test_a_sweep_without_answers_and_one_that_is_no_curve(car, stuck):
    steep = ww.sweep(stuck, {"body/mass": ["2000 kg", "2100 kg"]}, progress=False)
    assert "has an answer" in said(ww.plot.sweep_curve(steep))
    assert "varies one" in said(ww.plot.sweep_map(steep))
    many = [f"{mass} kg" for mass in range(300, 390, 10)]
    shares = [f"{share} %" for share in range(9)]
    wide = ww.sweep(car, {"body/mass": many, "goal/grade": shares}, progress=False)
    assert "this sweep has 9 by 9" in said(ww.plot.sweep_curve(wide))
    assert ww.plot.sweep_map(wide).axison


def test_one_variant_alone(car):
    one = ww.sweep(car, {"body/mass": ["300 kg"]}, progress=False)
    axes = ww.plot.sweep_curve(one)
    low, high = axes.get_xlim()
    assert low < 300 < high
