"""What a notebook shows says what a terminal says, and does nothing else."""

import json
import re
from html.parser import HTMLParser

import pytest

import windwall as ww
from python.samples import CURVE
from windwall.report.html.fragment import body
from windwall.report.html.tables import table_html
from windwall.report.text_layout import Bars, table

EMPTY = {"rect", "path", "circle", "br"}


class Reader(HTMLParser):
    """What a browser would read, and whether every element that is opened is closed."""

    def __init__(self, html):
        super().__init__()
        self.open, self.tags, self.attributes, self.said = [], [], [], ""
        self.feed(html)
        self.close()
        self.words = self.said.split()

    def handle_starttag(self, tag, attrs):
        self.tags.append(tag)
        self.attributes += attrs
        self.open.append(tag)
        self._apart(tag)

    def handle_startendtag(self, tag, attrs):
        self.tags.append(tag)
        self.attributes += attrs

    def handle_endtag(self, tag):
        assert self.open.pop() == tag
        self._apart(tag)

    def handle_data(self, data):
        if "style" not in self.open:
            self.said += data

    def _apart(self, tag):
        self.said += "" if tag == "code" else " "


@pytest.fixture(scope="module")
def shown(car, best, ranking):
    """One of each kind that is quick."""
    curve = ww.loads(json.dumps(CURVE))
    return {
        "scenario": car,
        "top speed": best,
        "ranking": ranking,
        "drawn ranking": car.drawn_ranking(ranking, 64, progress=False),
        "drawn speed": car.drawn_speed(64, progress=False),
        "point": car.operating_point("4000 rpm"),
        "a point of a torque curve": curve.operating_point("4000 rpm"),
        "hold": car.hold_speed("60 km/h"),
        "idle": car.idle(),
        "record": best.point.manifold,
        "gearing": ww.best_gearing(car),
        "corrected": car.corrected({"temperature": "12 degC"}),
        "forecast": car.forecast(["10 degC", "30 degC"], ["95 kPa", "102 kPa"]),
        "faults": car.faults([]),
        "leans": car.leans_on(rows=64, progress=False),
        "learned": car.calibrate(progress=False),
        "account": best.account("shaft"),
    }


KINDS = [
    "scenario", "top speed", "ranking", "drawn ranking", "drawn speed", "point",
    "a point of a torque curve", "hold", "idle", "record", "gearing", "corrected", "forecast",
    "faults", "leans", "learned", "account",
]  # fmt: skip


def words(text):
    """Without what only lays a text out, and sets apart what is typed; with ± as a page has it."""
    return [one for one in text.replace("`", "").replace("+/-", "±").split() if one != "-"]


@pytest.mark.parametrize("kind", KINDS)
def test_both_say_the_same(shown, kind):
    read = Reader(shown[kind]._repr_html_())
    headings = [x for x in read.words if x != "-"]
    said = words(repr(shown[kind]))
    assert [one for one in said if one not in headings] == []
    assert read.open == []
    assert len(read.words) < 1.3 * len(said) + 20  # headings of bars alone are added


@pytest.mark.parametrize("kind", KINDS)
def test_nothing_is_fetched_and_nothing_runs(shown, kind):
    html = shown[kind]._repr_html_()
    assert not re.search(r"https?:|url\(|@import|javascript:|<script|<img|<link|<iframe", html)
    read = Reader(html)
    assert {key for key, _ in read.attributes if key.startswith(("on", "src", "href"))} == set()


def test_every_result_that_is_readable_has_a_page(shown):
    for one in shown.values():
        assert "<pre>" not in one._repr_html_()


def test_what_a_file_says_is_escaped_wherever_it_stands(document):
    nasty = '<img src=x onerror=alert(1)>"&'
    document["title"] = nasty
    document["upgrades"][0]["title"] = nasty
    document["limits"] = {"road/speed": {"max": "60 km/h", "why": nasty}}
    car = ww.loads(json.dumps(document))
    for one in (car, car.top_speed(), ww.rank(car, progress=False)):
        read = Reader(one._repr_html_())
        assert "img" not in read.tags
        assert nasty.split()[0] in read.words


def test_gains_are_drawn_with_their_range_and_losses_are_hollow():
    bars = Bars("gain", ((1.0, 2.0, 4.0), (-2.0, -2.0, -2.0), None))
    (made,) = table([("a", "+2"), ("b", "-2"), ("c", "-")], head=("", ""), bars=bars)
    first, second, third = table_html(made).split("<tbody>")[1].split("<tr>")[1:]
    assert 'class="gain"' in first
    assert 'class="range"' in first
    assert 'class="loss"' in second
    assert 'class="range"' not in second
    assert "<svg" not in third


def test_bars_stand_to_one_scale():
    bars = Bars("", ((0.0, 5.0, 10.0), (2.0, 2.0, 2.0)))
    (made,) = table([("a", "5"), ("b", "2")], bars=bars)
    wide = [
        float(x) for x in re.findall(r'rect class="gain"[^>]* width="([\d.]+)"', table_html(made))
    ]
    assert wide[0] / wide[1] == pytest.approx(2.5, rel=0.01)
    assert wide[0] == pytest.approx(96 / 2)


def test_a_stopped_search_says_so_in_a_notebook_too(stuck):
    shown = stuck.top_speed()._repr_html_()
    assert "No answer" in shown


def test_what_is_typed_is_set_apart_and_still_escaped():
    assert body(["type `windwall learn <x>` (`b`)"]) == (
        "<p>type <code>windwall learn &lt;x&gt;</code> (<code>b</code>)</p>"
    )
    assert body(["one ` alone"]) == "<p>one ` alone</p>"
