"""Printing shows what was found. It finds nothing itself."""

import pickle

import pytest

import windwall as ww
from windwall import _core

SOLVERS = {
    "drive", "fit_flyweights", "full_throttle_curve", "hold_speed", "hold_speed_curve", "idle",
    "idle_curve", "operating_point", "rank", "solve_groups", "sweep", "top_speed",
    "world_answers", "world_speeds",
}  # fmt: skip
# Rows, units and what a file says: quick, whatever the vehicle is like.
LOOK_UPS = {
    "accelerated_masses",
    "answer_rows", "axis", "build_info", "class_priors", "class_units", "class_values",
    "correlations", "rank_groups",
    "drive_limits", "drive_rows", "flyweights_question_rows", "fuel_density", "gears", "given",
    "heading", "in_unit", "limits", "uncertain",
    "loads", "measure", "menu", "numbers", "observed", "observed_rows", "question_rows",
    "rated_fit", "read_quantity", "readable", "readable_number", "result_row", "rolling_free",
    "scenario_rows", "schema_text", "si_unit", "sigma", "unit_shown", "unrated", "world",
}  # fmt: skip


def functions():
    found = {name: getattr(_core, name) for name in dir(_core) if not name.startswith("_")}
    return {name: one for name, one in found.items() if callable(one) and type(one) is not type}


@pytest.fixture
def called(monkeypatch):
    """The names of the core's functions, as they are called."""
    names = []

    def heard(name, function):
        def call(*arguments, **options):
            names.append(name)
            return function(*arguments, **options)

        return call

    for name, function in functions().items():
        monkeypatch.setattr(_core, name, heard(name, function))
    return names


def test_every_function_of_the_core_is_a_solver_or_a_look_up():
    named = {name for name, one in functions().items() if not isinstance(one, type)}
    assert named >= SOLVERS
    assert named - SOLVERS - LOOK_UPS == set()


@pytest.mark.parametrize("shown", ["car", "best", "ranking", "point"])
def test_printing_solves_nothing(shown, car, best, ranking, called):
    point = car.operating_point("4000 rpm")
    things = {"car": car, "best": best, "ranking": ranking, "point": point}
    called.clear()
    assert len(repr(things[shown])) > 200
    assert things[shown]._repr_html_().startswith('<div class="windwall">')
    if shown != "car":
        things[shown].to_dict()
    assert SOLVERS.isdisjoint(called)


def test_calls_are_heard(car, called):
    car.brief_top_speed()
    assert "top_speed" in called


def test_asking_for_a_diagnosis_solves(document, called):
    import json

    ww.loads(json.dumps(document | {"title": "seen for the first time"})).diagnose()
    assert called.count("top_speed") > 5


def test_a_diagnosis_is_printed_where_it_is_handed_over(car, best, ranking):
    found = car.diagnose()
    for answer in (best, ranking):
        assert "standard deviations off" in answer.summary(found)
        assert "standard deviations off" not in answer.summary()


def test_a_result_out_of_a_pickle_prints_in_a_fresh_interpreter(best, tmp_path):
    import subprocess
    import sys

    path = tmp_path / "best.pickle"
    path.write_bytes(pickle.dumps(best))
    code = f"import pickle; print(pickle.load(open({str(path)!r}, 'rb')))"
    said = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, timeout=60
    )
    assert said.stdout.strip() == repr(best).strip()
