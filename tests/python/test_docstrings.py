"""What the package offers explains itself, with examples that run as they stand; completion offers
that and nothing else.
"""

import doctest
import inspect
from pathlib import Path

import pytest

import windwall as ww
from windwall.study.long_questions import LongQuestions

ROOT = Path(__file__).parents[2]
OPTIONS = doctest.ELLIPSIS | doctest.IGNORE_EXCEPTION_DETAIL | doctest.NORMALIZE_WHITESPACE
PUBLIC = {name: getattr(ww, name) for name in ww.__all__}
FUNCTIONS = [name for name, one in PUBLIC.items() if callable(one) and not inspect.isclass(one)]
CORE = {"build_info"}  # of the core, which has no examples


# Asked of a scenario, and of those the ones whose examples take seconds.
QUESTIONS = [
    name
    for asked in (ww.Scenario, LongQuestions)
    for name, one in vars(asked).items()
    if inspect.isfunction(one) and not name.startswith("_")
]
SECONDS = {
    f"Scenario.{name}" for name in ("calibrate", "diagnose", "learned", "leans_on", "report")
}


def examples(name, thing):
    return doctest.DocTestFinder(recurse=False).find(thing, name)


@pytest.fixture
def known(monkeypatch):
    """As the docstring of a scenario has it."""
    monkeypatch.chdir(ROOT)
    return {"ww": ww, "windwall": ww, "car": ww.load("scenarios/airfield_cyclecar.json")}


def of(name):
    return getattr(ww.Scenario, name.removeprefix("Scenario."), None) or getattr(ww, name)


THINGS = [*FUNCTIONS, "Scenario", *(f"Scenario.{name}" for name in QUESTIONS)]


RUN = [
    pytest.param(name, marks=[pytest.mark.slow] if name in SECONDS else [])
    for name in THINGS
    if name not in CORE
]


@pytest.mark.parametrize("name", RUN)
def test_an_example_runs(name, known):
    thing = ww.Scenario if name == "Scenario" else of(name)
    for test in examples(name, thing):
        test.globs.update(known)
        said = []
        runner = doctest.DocTestRunner(optionflags=OPTIONS)
        runner.run(test, out=said.append)
        assert runner.failures == 0, "".join(said)


def typed(name, thing):
    """What is typed in its examples."""
    return "".join(one.source for test in examples(name, thing) for one in test.examples)


def test_every_function_and_every_question_has_an_example():
    assert [name for name in FUNCTIONS if name not in CORE and not typed(name, of(name))] == []
    inside = typed("Scenario", ww.Scenario)
    shown = {name for name in QUESTIONS if f".{name}(" in inside or typed(name, of(name))}
    assert set(QUESTIONS) - shown == set()
    assert {f"Scenario.{name}" for name in QUESTIONS} >= SECONDS


def test_a_wrong_example_would_fail():
    def wrong():
        """
        >>> 1 + 1
        3
        """

    (test,) = examples("wrong", wrong)
    assert doctest.DocTestRunner().run(test, out=lambda _: None).failed == 1


def test_completion_of_the_package_offers_what_it_promises():
    shown = [name for name in dir(ww) if not name.startswith("_")]
    assert shown == sorted(ww.__all__)


@pytest.mark.parametrize("kind", ["car", "best", "ranking", "point"])
def test_completion_of_answers_offers_what_may_be_read(kind, car, best, ranking):
    thing = {
        "car": car,
        "best": best,
        "ranking": ranking,
        "point": car.operating_point("4000 rpm"),
    }[kind]
    shown = dir(thing)
    assert [one for one in shown if one.startswith("_") and not one.startswith("__")] == []
    assert "core" not in shown
    for name in shown:
        getattr(thing, name)


def modules():
    import importlib
    import pkgutil

    for one in pkgutil.walk_packages(ww.__path__, "windwall."):
        if not one.name.endswith(("__main__", "_core")):
            yield importlib.import_module(one.name)


def test_a_module_promises_only_what_is_its_own_and_there():
    for module in modules():
        for name in getattr(module, "__all__", ()):
            assert not name.startswith("_"), (module.__name__, name)
            assert getattr(module, name) is not None
