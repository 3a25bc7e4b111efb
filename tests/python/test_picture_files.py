"""Pictures as files: the same bytes each time, text as text, words for who does not see them."""

import re
import xml.etree.ElementTree as ET

import pytest

import windwall as ww
from windwall.report.plot_files import inline_svg, save, svg

plt = pytest.importorskip("matplotlib.pyplot")
SVG = "{http://www.w3.org/2000/svg}"
XLINK = "{http://www.w3.org/1999/xlink}href"


@pytest.fixture(autouse=True)
def nothing_stays_open():
    yield
    plt.close("all")


def test_the_same_picture_is_the_same_file(best, tmp_path):
    for kind in ("svg", "png", "pdf"):
        first, second = (tmp_path / f"{at}.{kind}" for at in (1, 2))
        for path in (first, second):
            save(ww.plot.stations(best), path)
        assert first.read_bytes() == second.read_bytes()
        assert len(first.read_bytes()) > 2000
    assert (tmp_path / "1.png").read_bytes().startswith(b"\x89PNG")
    assert (tmp_path / "1.pdf").read_bytes().startswith(b"%PDF")


def test_text_is_text_with_a_title_and_a_description(best):
    axes = ww.plot.stations(best)
    picture = ET.fromstring(svg(axes))
    assert picture.attrib["role"] == "img"
    assert [one.tag for one in picture[:2]] == [f"{SVG}title", f"{SVG}desc"]
    assert picture[0].text == "The charge, station by station Garden roadster, blown twin"
    assert re.search(r"behind roots 1\d\d kPa and \d\d", picture[1].text)
    words = {"".join(one.itertext()).strip() for one in picture.iter(f"{SVG}text")}
    assert {"Pressure (above), kPa", "butterfly"} <= words


def test_what_a_file_says_cannot_become_markup(document):
    import json

    document["title"] = 'a <script>alert("&")</script>'
    best = ww.loads(json.dumps(document)).top_speed()
    picture = ET.fromstring(svg(ww.plot.accounts(best)))
    assert picture[0].text.endswith(document["title"])
    assert not list(picture.iter("script")) + list(picture.iter(f"{SVG}script"))


def test_two_pictures_fit_into_one_page(best, car):
    drawn = [
        inline_svg(ww.plot.stations(best), "stations"),
        inline_svg(ww.plot.force_against_speed(car), "force"),
    ]
    names = [name for one in drawn for name in re.findall(r'\bid="([^"]+)"', one)]
    assert len(names) == len(set(names)) > 20
    for one in drawn:
        assert one.startswith("<svg")
        assert one.endswith("</svg>")
        assert "<metadata" not in one
        picture = ET.fromstring(one)
        inside = {other.attrib["id"] for other in picture.iter() if "id" in other.attrib}
        referred = {other.attrib[XLINK] for other in picture.iter() if XLINK in other.attrib}
        referred |= {f"#{name}" for name in re.findall(r"url\(#([^)]+)\)", one)}
        assert {name.removeprefix("#") for name in referred} <= inside


def test_nothing_outside_is_asked_for(best):
    picture = inline_svg(ww.plot.stations(best), "it")
    assert not re.search(r'(href|src)="(?!#)', picture)
