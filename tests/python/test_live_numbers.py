"""Numbers in a page have the digits that the package prints."""

import random
from pathlib import Path

import pytest

import windwall.report.live
from python.browser import browser, needs_browser
from windwall import _core
from windwall.quantities.measures import (
    ENGINE_SPEED,
    PRESSURE,
    SHARE,
    SPEED,
    TEMPERATURE,
)
from windwall.report.live.words import unit

SCRIPT = Path(windwall.report.live.__file__).with_name("numbers.js")
TIES = [0.5, 1.5, 2.5, 0.125, 0.375, 2.25, 1234.5, 1235.5, 99.5, 0.0625, -2.5, -0.125, 1e13, 1e-5]


@pytest.fixture(scope="module")
def page():
    with browser() as running:
        page = running.new_page()
        page.add_script_tag(path=SCRIPT)
        yield page


def numbers(count, seed):
    draw = random.Random(seed)
    return [draw.choice([-1, 1]) * 10 ** draw.uniform(-7, 15) for _ in range(count)]


@needs_browser
def test_significant_digits(page):
    found = TIES + numbers(4000, 1)
    for digits in (1, 2, 3, 4, 7):
        said = page.evaluate("([all, d]) => all.map(x => readable(x, d))", [found, digits])
        assert said == [_core.readable_number(one, digits) for one in found]


@needs_browser
def test_fixed_decimals(page):
    found = TIES + [round(one, 3) for one in numbers(4000, 2) if 1e-3 < abs(one) < 1e9]
    for decimals in (0, 1, 2):
        said = page.evaluate("([all, d]) => all.map(x => fixed(x, d))", [found, decimals])
        assert said == [f"{one:.{decimals}f}" for one in found]


@needs_browser
@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize("measure", [SPEED, ENGINE_SPEED, PRESSURE, SHARE, TEMPERATURE], ids=str)
def test_with_units(page, measure, system):
    draw = random.Random(3)
    found = [273.15, 0.0, *(10 ** draw.uniform(-2, 5) for _ in range(500))]
    of = unit(measure, system)
    said = page.evaluate("([u, all]) => all.map(x => [text(u, x, 4), short(u, x)])", [of, found])
    assert said == [[measure.text(x, system, 4), measure.short(x, system)] for x in found]
