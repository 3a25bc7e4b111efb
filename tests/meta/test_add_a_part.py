"""A part of the charge path is one header and one word in the list of kinds, and nothing else.

A copy of the core gets a toy part that way, and only that way. The copy is built without bindings
and asked, through code that knows no kind of part, what a part is promised. Whatever would need a
second file of its own, a table, a list of keys or a case for this kind, is missing there, since no
second file was touched: so each assertion fails as soon as its promise does.
"""

import json
import os
import re
import shutil
import subprocess
from pathlib import Path

import pytest

HERE = Path(__file__).parent / "add_a_part"
ROOT = Path(__file__).parents[2]
INCLUDE = '#include "windwall/charge/catch_can.hpp"\n'
LAST_INCLUDE = '#include "windwall/charge/throttle.hpp"\n'
LIST = re.compile(r"(using Part = fields::OneOf<[^>]*)>")

CAN = {"id": "can", "kind": "catch_can", "drop": "2 kPa", "at_flow": "20 g/s"}
RESULT = "charge_path/can/pressure_drop"


def copy_with_the_part(to):
    """The core and its contract tests with the toy in them: a header, and a word in the list."""
    for folder in ("cpp/windwall", "tests/bench", "tests/cpp/charge"):
        shutil.copytree(ROOT / folder, to / folder, ignore=shutil.ignore_patterns("bindings"))
    for file in ["CMakeLists.txt", *(ROOT / "tests/cpp").glob("*.*")]:
        shutil.copy(ROOT / file, to / (ROOT / file).relative_to(ROOT))
    # The program that asks; it is built as one more folder of tests is, and no part of the core.
    (to / "tests/cpp/probe").mkdir()
    shutil.copy(HERE / "probe.cpp", to / "tests/cpp/probe")

    shutil.copy(HERE / "catch_can.hpp", to / "cpp/windwall/charge")
    kinds = to / "cpp/windwall/charge/part.hpp"
    text = kinds.read_text()
    assert text.count(LAST_INCLUDE) == 1
    with_word, found = LIST.subn(
        r"\1, CatchCan>", text.replace(LAST_INCLUDE, LAST_INCLUDE + INCLUDE)
    )
    assert found == 1
    kinds.write_text(with_word)


def attempt(source, unity, *jobs):
    """Unoptimised, the quickest there is; what went wrong, if anything."""
    made = source / "build"
    # The compiler cache knows the files wherever the copy lies.
    environment = {**os.environ, "CCACHE_BASEDIR": str(source), "CCACHE_NOHASHDIR": "1"}
    options = ["-DWINDWALL_PYTHON=OFF", "-DWINDWALL_TESTS=ON", f"-DWINDWALL_UNITY={unity}"]
    options += ["-DCMAKE_BUILD_TYPE=Debug", "-DCMAKE_CXX_FLAGS_DEBUG=-O0", "-GNinja"]
    for command in (
        ["cmake", "-S", str(source), "-B", str(made), *options],
        ["cmake", "--build", str(made), "--target", "test_probe", "test_charge", *jobs],
    ):
        done = subprocess.run(command, capture_output=True, text=True, env=environment)
        if done.returncode != 0:
            return done.stdout[-4000:] + done.stderr[-4000:]
    return ""


def build(source):
    """Several files at once; one alone after another if that fails, as it does where neighbours
    share a name, and where a busy machine has no memory for a compiler and ends it."""
    went_wrong = attempt(source, "ON") and attempt(source, "OFF", "--parallel", "1")
    assert not went_wrong, went_wrong
    return source / "build"


@pytest.fixture(scope="module")
def built(tmp_path_factory):
    source = tmp_path_factory.mktemp("windwall")
    copy_with_the_part(source)
    return build(source)


@pytest.fixture(scope="module")
def told(built, tmp_path_factory):
    """What the core says of a microcar with the toy behind its throttle, by what is asked."""

    def ask(**more):
        document = json.loads((ROOT / "scenarios/village_microcar.json").read_text())
        document["charge_path"].append(CAN | more)
        file = tmp_path_factory.mktemp("scenario") / "microcar.json"
        file.write_text(json.dumps(document))
        return json.loads(subprocess.check_output([built / "test_probe", file], text=True))

    return ask


# How long the build takes is the machine's affair, and says nothing of the part.
pytestmark = [pytest.mark.slow, pytest.mark.timeout(600, func_only=True)]


def test_the_loader_reads_it_and_its_mistakes(told):
    # A reader that lists kinds or keys by hand would refuse the word, or take any number.
    good = told()
    assert good["problems"] == ""
    assert json.loads(good["saved"])["charge_path"][-1] == CAN
    assert "drop: 90 kPa is outside" in told(drop="90 kPa")["problems"]
    assert 'did you mean "rated_drop"?' in told(rated_drp="3 kPa")["problems"]


def test_the_schema_lists_it(told):
    # A schema kept beside the code would know neither the kind nor the keys.
    items = told()["schema"]["properties"]["charge_path"]["items"]
    assert "catch_can" in items["properties"]["kind"]["enum"]
    (mine,) = (
        case["then"]
        for case in items["allOf"]
        if case["if"]["properties"]["kind"]["const"] == "catch_can"
    )
    assert {"id", "kind", "drop", "at_flow", "rated_drop"} == set(mine["properties"])


def test_the_reference_page_lists_it(told):
    # A page written by hand would have no section for it and no line for its keys.
    page = told()["page"]
    assert "## `catch_can`\n\nCan in which the charge leaves the oil it carries." in page
    assert "| `rated_drop` |" in page.split("## `catch_can`")[1].split("\n## ")[0]


def test_the_contract_tests_run_over_it(built):
    # Tests that name the parts they try would never meet it.
    run = subprocess.run(
        [built / "test_charge", "--gtest_filter=EveryPart/catch_can.*"],
        capture_output=True,
        text=True,
    )
    assert run.returncode == 0, run.stdout
    assert int(re.search(r"\[  PASSED  \] (\d+) tests?", run.stdout)[1]) >= 5


def test_its_rating_is_a_limit_and_its_loss_is_felt(told):
    # Limits that ask known parts for known ratings would never watch it, and a balance that knows
    # its parts by name would pass it by.
    free, rated = told(drop="0 kPa"), told(rated_drop="0.1 kPa")
    assert RESULT in free["unrated"]
    assert rated["limits"][RESULT] == {"max": pytest.approx(100), "why": "the can folds"}
    assert RESULT not in rated["unrated"]
    assert rated["passed"][RESULT] > 100
    assert 0 < rated["speed"] < free["speed"]
