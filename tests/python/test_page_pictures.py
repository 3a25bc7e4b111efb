"""Pictures of a page: large enough to be read, whole, beside what they belong to, and explained."""

import re

import matplotlib as mpl
import pytest

import windwall as ww
from python.browser import browser, needs_browser
from python.few_upgrades import few_upgrades
from windwall.report.page import page
from windwall.report.page import steps as below
from windwall.report.page.spoken import ADDRESS, in_words
from windwall.report.plots.money import keyed_sets

PAPER = 703  # px, A4 without its margins
TYPE = """() => [...document.querySelectorAll("figure text")].map(one => {
    const to = one.getScreenCTM();
    return parseFloat(getComputedStyle(one).fontSize) * Math.hypot(to.a, to.b);
})"""
CUT = """() => [...document.querySelectorAll("figure text")].filter(one => {
    const word = one.getBoundingClientRect(), all = one.ownerSVGElement.getBoundingClientRect();
    return word.left < all.left - 1 || word.right > all.right + 1
        || word.top < all.top - 1 || word.bottom > all.bottom + 1;
}).map(one => one.textContent)"""


@pytest.fixture(scope="module", autouse=True)
def aside():
    mpl.use("Agg")


@pytest.fixture(scope="module")
def few():
    return few_upgrades(gearing="Another rear sprocket with a new chain")


@pytest.fixture(scope="module")
def ranking(few):
    return ww.rank(few, progress=False)


@pytest.fixture(scope="module")
def text(few):
    return page(few, live=False)


@pytest.fixture(scope="module")
def tab(text, tmp_path_factory):
    path = tmp_path_factory.mktemp("page") / "page.html"
    path.write_text(text, encoding="utf-8")
    with browser() as running:
        opened = running.new_page()
        opened.goto(path.as_uri())
        yield opened


def test_no_picture_repeats_the_vehicle_and_all_are_drawn_to_one_size(few, text):
    drawn = re.findall(r"<svg[^>]*viewBox.*?</svg>", text, flags=re.S)
    pictures = [one for one in drawn if "<title>" in one]
    assert len(pictures) == 6
    assert len({re.search(r'viewBox="0 0 (\S+) ', one)[1] for one in pictures}) == 1
    for one in pictures:
        assert few.title not in one
        assert re.search(r"<title>\w[^<]+</title>", one)  # for whoever does not see it


@needs_browser
@pytest.mark.parametrize(
    "width, media, least", [(1000, "screen", 11.5), (1400, "screen", 11.5), (PAPER, "print", 8.6)]
)
def test_type_in_pictures_is_large_enough_and_whole(tab, width, media, least):
    tab.set_viewport_size({"width": width, "height": 900})
    tab.emulate_media(media=media)
    sizes = tab.evaluate(TYPE)
    assert len(sizes) > 100
    assert min(sizes) > least  # px; on paper 6.5 points
    assert max(sizes) < 1.3 * min(sizes)
    assert tab.evaluate(CUT) == []


@needs_browser
@pytest.mark.parametrize("width, media", [(1000, "screen"), (PAPER, "print")])
def test_a_picture_stands_beside_its_words(tab, width, media):
    tab.set_viewport_size({"width": width, "height": 900})
    tab.emulate_media(media=media)
    sections = tab.locator(".beside")
    assert sections.count() == 2
    for at in range(2):
        said = sections.nth(at).locator("> div:not(.above)").nth(0).bounding_box()
        drawn = sections.nth(at).locator("figure").bounding_box()
        assert said["x"] + said["width"] <= drawn["x"]
        assert abs(said["y"] - drawn["y"]) < 30


def test_the_steps_lead_from_set_to_set(ranking):
    (shown,) = below.steps(ranking)
    keyed = keyed_sets(ranking)
    assert [row[0] for row in shown.rows] == [str(at) for at in range(1, len(keyed) + 1)]
    fitted = set()
    for row, one in zip(shown.rows, keyed, strict=True):
        added, _, gone = row[3].partition("without ")
        for key in one.upgrades:
            title = ranking.menu[key].title
            assert (title in added) or key in fitted  # new, or as before
        left = {key for key in fitted if key not in one.upgrades}
        assert all(ranking.menu[key].title in gone for key in left)
        fitted = set(one.upgrades)
    assert any(": 29 teeth" in row[3] or ": 28 teeth" in row[3] for row in shown.rows)


def test_gains_that_are_too_small_for_the_picture_are_told(ranking, monkeypatch):
    assert below.rest(ranking) == []
    monkeypatch.setattr(below, "MOST", 2)
    (told,) = below.rest(ranking)
    by_gain = sorted(ranking.upgrades.values(), key=lambda one: -one.alone[1])
    for at, one in enumerate(by_gain):
        assert (ranking.menu[one.id].title in told.text) is (at >= 2)


@pytest.mark.parametrize(
    "said, words",
    [
        ("tyres/growth: 0.3 %", "growth (tyres): 0.3 %"),
        (
            "for charge_path/blower/rotor_speed (speed of the rotor), road/speed (how fast)",
            "for speed of the rotor (blower), how fast (road)",
        ),
        ("charge_path/blower: it is hot", "blower: it is hot"),
        ("charge_path/blower/outlet/temperature", "temperature (blower outlet)"),
        ("engine/breathing/best_speed", "best speed (engine breathing)"),
        ('in observed/1 ("not heard")', 'in observation 1 ("not heard")'),
        ("observed/2/boost: 34 kPa", "boost (observation 2): 34 kPa"),
        ("120 km/h and 40 cm3/min", "120 km/h and 40 cm3/min"),
    ],
)
def test_addresses_are_told_in_words(said, words):
    assert in_words(said) == words


def test_no_address_is_left_but_beside_all_inputs(text):
    told = re.sub(r"<(script|style).*?</\1>", "", text, flags=re.S)
    every = re.search(r"<summary>All inputs.*?</details>", told, flags=re.S)[0]
    assert ADDRESS.search(every)  # there, whoever opens it finds them in the file
    assert not ADDRESS.search(told.replace(every, ""))
