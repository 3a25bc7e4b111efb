"""Sliders are moved as a hand would, without a browser: what they show is what is solved anew."""

import json
import time
from html import unescape

import pytest

import windwall as ww
from python.samples import CURVE
from windwall.sliders.twin import Places

MASS, RATIO = "body/mass", "charge_path/roots/drive_ratio"
pytest.importorskip("anywidget")


@pytest.fixture
def sliders(car):
    return ww.explore(car, {MASS: ("300 kg", "400 kg"), RATIO: (1.2, 1.6)}, show=["manifold/boost"])


def place(slider, text):
    """The position of a slider that a file would state so."""
    return dict(slider.options)[text]


def page(sliders):
    return unescape(sliders._shown.value)


def test_they_begin_at_the_file(sliders, car):
    assert sliders.scenario == car
    assert [one.value for one in sliders.sliders.values()] == [0, 0]
    assert sliders.answer.sentence in page(sliders)


def test_a_move_is_solved(sliders, car):
    slider = sliders.sliders[MASS]
    slider.value = place(slider, "370 kg")
    moved = car.set({MASS: "370 kg"})
    assert sliders.scenario == moved
    assert sliders.answer.goal_speed == moved.top_speed().goal_speed
    assert sliders.answer.sentence in page(sliders)
    assert "370 kg" in page(sliders)


def test_both_ends_are_those_asked_for_in_units_of_the_scenario(sliders, car):
    texts = [text for text, _ in sliders.sliders[MASS].options]
    assert (texts[0], texts[-1]) == ("300 kg", "400 kg")
    inch = ww.explore(car.shown_in("us"), {MASS: ("700 lb", "800 lb")})
    assert all(text.endswith(" lb") for text, _ in inch.sliders[MASS].options)
    assert "mph" in page(inch)


def test_moves_back_to_the_file_are_solved_once(sliders, car, monkeypatch):
    from windwall.sliders import explorer

    for one in sliders.sliders.values():
        one.value = 3
    asked = []
    real = explorer.top_speed
    monkeypatch.setattr(explorer, "top_speed", lambda one: asked.append(one) or real(one))
    sliders.reset()
    assert len(asked) == 1
    assert sliders.scenario == car
    sliders.sliders[MASS].value = 5
    sliders.reset(MASS)
    assert len(asked) == 2  # and the way back was known
    assert sliders.scenario == car


def test_limits_and_cautions_are_in_sight_while_moving(document):
    document["limits"] = {"road/speed": {"max": "125 km/h", "why": "the <b>wheels</b> shake"}}
    sliders = ww.explore(ww.loads(json.dumps(document)), {RATIO: (1.2, 2.2)})
    there = "the <b>wheels</b> shake"
    slider = sliders.sliders[RATIO]
    slider.value = slider.options[0][1]
    slow = sliders.answer
    assert (there in page(sliders)) == any(one.address == "road/speed" for one in slow.passed)
    slider.value = slider.options[-1][1]
    assert sliders.answer.passed
    assert there in page(sliders)
    assert "<b>" not in sliders._shown.value
    for caution in sliders.answer.cautions:
        assert caution.sentence in page(sliders)


def test_a_vehicle_without_an_answer_says_why(stuck):
    sliders = ww.explore(stuck, [MASS])
    assert sliders.answer.sentence in page(sliders)
    assert "no answer" in page(sliders)


def test_what_the_file_refuses_is_told_and_nothing_changes(sliders, car, monkeypatch):
    from windwall.errors import Problem, ScenarioError

    def refused(_at):
        raise ScenarioError([Problem(MASS, 0, 0, "too <much>")])

    monkeypatch.setattr(sliders, "_solved", refused)
    sliders.sliders[MASS].value = 2
    assert "too <much>" in page(sliders)
    assert "<much>" not in sliders._shown.value
    assert sliders.scenario == car


def test_an_answer_follows_within_a_twentieth_of_a_second(car):
    sliders = ww.explore(car)
    slider = sliders.sliders[MASS]
    taken = []
    for k in range(1, 21):
        began = time.process_time()
        slider.value = k
        taken.append(time.process_time() - began)
    assert sorted(taken)[len(taken) // 2] < 0.05


def test_the_moved_scenario_is_saved_and_nothing_is_written_over(sliders, tmp_path):
    slider = sliders.sliders[MASS]
    slider.value = place(slider, "333 kg")
    path = tmp_path / "moved.json"
    sliders.save(path)
    assert ww.load(path) == sliders.scenario
    with pytest.raises(FileExistsError):
        sliders.save(path)


def test_the_button_saves_and_says_so(sliders, tmp_path):
    sliders._path.value = str(tmp_path / "<i>.json")
    sliders._save()
    assert ww.load(tmp_path / "<i>.json") == sliders.scenario
    assert "written to" in sliders._said.value
    assert "<i>" not in sliders._said.value
    sliders._save()
    assert "there already" in sliders._said.value


def test_a_notebook_keeps_a_table_beside_the_sliders(sliders):
    bundle = sliders._repr_mimebundle_()
    assert "application/vnd.jupyter.widget-view+json" in bundle
    assert "<table" in bundle["text/html"]
    assert "run the cell again" in bundle["text/html"]
    assert sliders.answer.sentence.split()[0] in bundle["text/plain"]


def test_every_slider_has_a_name_and_begins_where_the_file_is(sliders):
    mass, ratio = sliders.sliders[MASS], sliders.sliders[RATIO]
    assert mass.label == "Mass ready to run"
    assert mass.hint == "file 340 kg ± 5 kg"
    assert ratio.label not in ("", mass.label)
    assert place(mass, "340 kg") == place(ratio, "1.350") == 0


def test_there_is_no_place_beyond_the_ends(sliders, car):
    from traitlets import TraitError

    mass = sliders.sliders[MASS]
    for beyond in (mass.options[0][1] - 1, mass.options[-1][1] + 1):
        with pytest.raises(TraitError, match=f"no place {beyond}; from {mass.low} to"):
            mass.value = beyond
    assert sliders.scenario == car


@pytest.mark.parametrize(
    "inputs, show, said",
    [
        (["body/mas"], None, 'did you mean "body/mass"'),
        ("body/mass", None, "a list of addresses"),
        (["manifold/boost"], None, "is a result, not an input"),
        ([MASS, "engine/spark/policy"], None, "only a number"),
        ({MASS: ("3 m", "4 kg")}, None, "m is the unit of a length"),
        ({MASS: (1, 2, 3)}, None, "a range is two values"),
        ({MASS: ("300 kg", "300 kg")}, None, "moved nowhere"),
        ({MASS: (300, "9 t")}, None, "body/mass"),
        ([MASS], ["manifold/bost"], 'did you mean "manifold/boost"'),
        ([MASS], "manifold/boost", "a list of result addresses"),
        ([MASS], [3], "a list of result addresses"),
        ([3], None, "a list of addresses"),
    ],
)
def test_what_is_wrong_is_taught(car, inputs, show, said):
    with pytest.raises(ww.ScenarioError) as caught:
        ww.explore(car, inputs, show)
    assert said in str(caught.value)


def test_everything_that_is_wrong_is_told_at_once(car):
    with pytest.raises(ww.ScenarioError) as caught:
        ww.explore(car, {"body/mas": None, MASS: ("3 m", "4 kg")})
    assert [one.address for one in caught.value.problems] == ["body/mas", MASS]


@pytest.fixture
def places(car, monkeypatch):
    monkeypatch.setitem(__import__("sys").modules, "anywidget", None)
    return ww.explore(car, {MASS: ("300 kg", "400 kg")}, show=["manifold/boost"])


def test_without_widgets_a_table_says_how_to_get_them(places, car):
    assert isinstance(places, Places)
    text = " ".join(repr(places).split())
    assert "pip install 'windwall[sliders]'" in text
    assert "pip install" in unescape(places._repr_html_())
    speed = car.set({MASS: "400 kg"}).top_speed().goal_speed * 3.6
    assert f"400 kg {speed:.1f}" in text
    assert places.scenario == car


def test_a_torque_curve_has_sliders_too():
    sliders = ww.explore(ww.loads(json.dumps(CURVE)))
    assert "knock/margin" not in sliders._show
    assert sliders.answer.sentence in page(sliders)
