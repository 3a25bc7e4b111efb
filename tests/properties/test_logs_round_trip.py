"""However a table of numbers is written, it is read as the same numbers."""

import csv
import io

import numpy as np
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st

from windwall.errors import ScenarioError
from windwall.logs.read import parse

PARTS = [",", ";", "\t", "|"]
ENCODINGS = ["utf-8", "utf-8-sig", "utf-16", "cp1252"]
CLOCKS = {
    "Time [s]": lambda s: f"{s:.3f}",
    "Zeit [ms]": lambda s: f"{1000 * s:.0f}",
    "Time": lambda s: f"{int(s // 3600):02d}:{int(s // 60 % 60):02d}:{s % 60:06.3f}",
    "Timestamp": lambda s: f"2026-05-17 09:{int(s // 60):02d}:{s % 60:06.3f}",
}
PREAMBLES = ["", "Recorder 7\n\n", "# made by hand\nDriver: Henrike\n"]
HEADS = [("RPM [1/min]", "v [km/h]", "CHT [°C]"), ("RPM", "Speed (km/h)", "Temp_C")]


@st.composite
def written(draw):
    part = draw(st.sampled_from(PARTS))
    mark = draw(st.sampled_from(".,"))
    assume((part, mark) != (",", ","))
    return {
        "part": part,
        "mark": mark,
        "encoding": draw(st.sampled_from(ENCODINGS)),
        "ends": draw(st.sampled_from(["\n", "\r\n", "\r"])),
        "quoted": draw(st.booleans()),
        "clock": draw(st.sampled_from(sorted(CLOCKS))),
        "preamble": draw(st.sampled_from(PREAMBLES)),
        "head": draw(st.sampled_from(HEADS)),
        "digits": draw(st.sampled_from([1, 2, 4])),
        "seed": draw(st.integers(0, 2**32 - 1)),
        "empty": draw(st.booleans()),
    }


@settings(max_examples=120, deadline=None)
@given(written())
def test_numbers_come_back(how):
    rng = np.random.default_rng(how["seed"])
    count = int(rng.integers(6, 40))
    time = 0.125 * np.arange(count)
    values = np.round(rng.uniform(-200, 6000, (count, 3)), how["digits"])
    text = [[f"{x:.{how['digits']}f}".replace(".", how["mark"]) for x in row] for row in values]
    if how["empty"]:
        text[3][1], values[3, 1] = "", np.nan
    stamps = [CLOCKS[how["clock"]](s).replace(".", how["mark"]) for s in time]
    made = io.StringIO()
    quoting = csv.QUOTE_ALL if how["quoted"] else csv.QUOTE_MINIMAL
    writer = csv.writer(made, delimiter=how["part"], quoting=quoting, lineterminator="\n")
    writer.writerow([how["clock"], *how["head"]])
    writer.writerows([stamp, *row] for stamp, row in zip(stamps, text, strict=True))
    content = how["preamble"] + made.getvalue()
    log = parse(content.replace("\n", how["ends"]).encode(how["encoding"]))
    assert len(log.columns) == 3
    np.testing.assert_array_equal(np.stack([one.values for one in log.columns], axis=1), values)
    np.testing.assert_allclose(log.time, time, atol=1e-9)
    units = [one.unit for one in log.columns]
    assert units in (["1/min", "km/h", "°C"], ["", "km/h", "C"])


@settings(max_examples=150, deadline=None)
@given(st.binary(max_size=300) | st.text(max_size=300).map(lambda one: one.encode("utf-8")))
def test_whatever_a_file_holds_it_is_read_or_refused(content):
    read_or_refused(content)


JUNK = st.lists(
    st.lists(st.sampled_from(["1", "2.5", "3,5", "a", "", "NaN", "12:30:01", '"', "#", "9e9"]),
             min_size=1, max_size=4),
    min_size=1, max_size=12,
)  # fmt: skip


@settings(max_examples=200, deadline=None)
@given(JUNK, st.sampled_from(PARTS))
@example([["9e9"], ["1"], ["1", "1"], ["2.5", "1"], ["1", "1"]], ",")
def test_tables_of_junk_are_read_or_refused(rows, part):
    read_or_refused("\n".join(part.join(row) for row in rows).encode())


def read_or_refused(content):
    try:
        log = parse(content)
    except ScenarioError:
        return
    assert np.isfinite(log.time).all()
    assert len(log.columns) >= 1
    assert len(log.time) >= 5
