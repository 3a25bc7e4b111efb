"""Fifty nasty logs and more: each is read right, or refused with its line and column."""

import re

import numpy as np
import pytest

from python.nasty_logs import READ, REFUSED, road, turning
from windwall.errors import ScenarioError
from windwall.logs.read import parse
from windwall.logs.stamps import stamp


def content(text):
    return text if isinstance(text, bytes) else text.encode()


def of(log, *words):
    """The column that is called by one of these words, or by its number."""
    return next(c for c in log.columns if any(word in c.name.lower() for word in words)).values


def test_there_are_fifty_at_least():
    assert len(READ) + len(REFUSED) >= 50
    assert len({content(text) for text, _ in (*READ.values(), *REFUSED.values())}) == len(
        READ | REFUSED
    )


@pytest.mark.parametrize("name", READ)
def test_it_is_read_right(name):
    text, said = READ[name]
    log = parse(content(text))
    revs, speed = of(log, "rpm", "drehzahl", "2"), of(log, "speed", "geschw", "3")
    assert len(revs) >= 25
    there = np.isfinite(revs)
    assert there.sum() >= len(revs) - 2
    # Every row says by its engine speed which it is, and so what else stands in it.
    row = (revs[there] - 3000) / 17.3
    assert row == pytest.approx(np.round(row), abs=1e-3)
    known = np.isfinite(speed[there])
    assert known.sum() >= there.sum() - 1
    assert speed[there][known] == pytest.approx(road(np.round(row))[known], abs=0.0051)
    assert revs[there] == pytest.approx(turning(np.round(row)), abs=0.0051)
    _one_clock(log, there, np.round(row))
    assert said in " | ".join(one.text() for one in log.mended)
    if not said:
        assert [one.text() for one in log.mended] == []


def _one_clock(log, there, row):
    """Within a part a row is 0.1 s, wherever it was in the file."""
    for part in np.unique(log.part):
        inside = log.part[there] == part
        time, rows = log.time[there][inside], row[inside]
        assert np.diff(time) == pytest.approx(0.1 * np.diff(rows), abs=1e-6)
        assert (np.diff(time) > 0).all()


PARTS = {"a gap": 2, "a clock that begins anew": 2, "the heading again": 2}


@pytest.mark.parametrize("name", READ)
def test_it_is_parted_only_where_it_has_to_be(name):
    log = parse(content(READ[name][0]))
    assert log.part[0] == 0
    assert log.part[-1] + 1 == PARTS.get(name, 1)


@pytest.mark.parametrize("name", ["cp1252 degrees", "UTF-8 cut within a letter"])
def test_letters_survive(name):
    log = parse(content(READ[name][0]))
    assert (log.columns[-1].name, log.columns[-1].unit) == ("CHT", "°C")


@pytest.mark.parametrize(
    "text, seconds, day",
    [
        ("03:22", 202, 0),
        ("14:03:22,5", 50602.5, 0),
        ("14:03:22:250", 50602.25, 0),
        ("2:03:22.25 pm", 50602.25, 0),
        ("12:00:00 AM", 0, 0),
        ("2026-07-04 14:03:22.5+02:00", 50602.5, 739801),
        ("04.07.2026 00:00:01", 1, 739801),
        ("7/31/2026 00:00:01", 1, 739828),
        ("31/7/26 00:00:01", 1, 739828),
    ],
)
def test_a_stamp_is_read(text, seconds, day):
    found = stamp(text)
    assert (found.seconds, found.day) == (pytest.approx(seconds), day)
    assert not found.doubtful


@pytest.mark.parametrize(
    "text", ["12", "1:2:3:4", "14:61:00", "14:00:61", "2026-13-41 1:00:00", "x"]
)
def test_what_is_no_stamp_is_none(text):
    assert stamp(text) is None


@pytest.mark.parametrize("name", REFUSED)
def test_it_is_refused_with_its_place(name):
    text, said = REFUSED[name]
    with pytest.raises(ScenarioError) as refused:
        parse(content(text))
    assert said in str(refused.value)
    if name != "empty":
        assert re.search(r"line \d+", str(refused.value))


@pytest.mark.parametrize("name", ["junk in a cell", "a letter for a digit", "no stamp in a row"])
def test_what_is_mended_has_a_line_and_a_column(name):
    (mended,) = parse(content(READ[name][0])).mended
    expected = {"junk in a cell": (6, "RPM"), "a letter for a digit": (8, "Speed")}
    assert (mended.lines[0], mended.column) == expected.get(name, (9, "Time"))


def test_what_is_ambiguous_is_read_once_it_is_stated():
    text, _ = REFUSED["steps of one of something"]
    log = parse(content(text), stated={"clock": {"unit": "ms"}})
    assert log.time[-1] == pytest.approx(0.029)
    text, _ = REFUSED["a comma that parts either"]
    stated = {"clock": {"unit": "s"}, "reading": {"decimal": ","}}
    assert of(parse(content(text), stated=stated), "rpm")[0] == pytest.approx(3.1)
    stated["reading"] = {"decimal": "."}
    assert of(parse(content(text), stated=stated), "rpm")[0] == pytest.approx(3100)


def test_what_is_too_long_is_refused_unread(tmp_path, monkeypatch):
    from windwall.logs import decoding, read

    monkeypatch.setattr(decoding, "MOST_BYTES", 1 << 20)
    path = tmp_path / "long.csv"
    path.write_text(READ["plain"][0] * 3000)
    with pytest.raises(ScenarioError, match="longer than the 1 MiB"):
        read.read_log(path)
