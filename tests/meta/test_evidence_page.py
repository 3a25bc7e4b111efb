"""docs/evidence.md is what the tests make, and what they make is not trusted to the last digit."""

import re
from pathlib import Path

import pytest

from evidence import page
from evidence.notes import Notes

PUBLISHED = Path(page.PUBLISHED)
MODULES = {path.stem for path in PUBLISHED.glob("test_*.py")}
NUMBER = re.compile(r"(?<![\w.])[-+]?\d+(?:\.\d+)?(?:e[-+]?\d+)?")


@pytest.fixture
def notes(request):
    """Of the checks from outside, where all of them ran before this."""
    made = getattr(request.config, "evidence", Notes())
    noted = {check.module for check in made.checks.values()}
    if noted != MODULES or made.left_out & MODULES or request.session.testsfailed:
        pytest.skip("the page is compared where every test of tests/published ran and passed")
    return made


def near(kept, made):
    """Whether two lines differ by no more than 2 % of a number or two of its last digit."""
    if NUMBER.sub("#", kept) != NUMBER.sub("#", made):
        return False
    return all(
        abs(float(one) - float(other)) <= 0.02 * abs(float(one)) + 2 * last_digit(one)
        for one, other in zip(NUMBER.findall(kept), NUMBER.findall(made), strict=True)
    )


def last_digit(number):
    digits, _, power = number.partition("e")
    return 10.0 ** (int(power or 0) - len(digits.partition(".")[2]))


def changed(kept, made):
    kept, made = kept.splitlines(), made.splitlines()
    if len(kept) != len(made):
        return [f"{len(kept)} lines, now {len(made)}"]
    return [other for one, other in zip(kept, made, strict=True) if not near(one, other)]


def test_the_page_is_what_the_tests_make(notes):
    assert changed(page.PAGE.read_text("utf-8"), page.page(notes)) == [], "run `make evidence`"


def test_every_distribution_has_its_plot(notes):
    for name, parts in notes.distributions.items():
        plot = (page.PLOTS / f"{page.file_name(name)}.svg").read_text("utf-8")
        assert plot.count("<circle") == sum(len(errors) for errors, _ in parts.values())


@pytest.mark.parametrize("line", ["| torque | 12.4 % |", "| torque | 1.00e-05 |", "no number"])
def test_a_line_is_near_itself(line):
    assert changed(line, line) == []


@pytest.mark.parametrize("line", ["| torque | 13.4 % |", "| power | 12.4 % |", "a\nb"])
def test_another_line_is_not(line):
    assert len(changed("| torque | 12.4 % |", line)) == 1


def test_no_check_from_outside_waits_for_the_long_run():
    """The page is compared where all of them ran, and the usual run leaves the slow ones out."""
    slow = [
        name for name in MODULES if "mark.slow" in (PUBLISHED / f"{name}.py").read_text("utf-8")
    ]
    assert slow == []
