"""Every picture of the three scenarios, in metric and US units: nothing is cut, nothing lies on
anything else, lines are told apart without colour, and axes end where the vehicle does.
"""

import re
from itertools import pairwise

import pytest

import windwall as ww
from python.drawn_pictures import cut, drawn_texts, looks, overlapping, under_a_legend
from windwall.report.plot_axes import COLOURS, SIZE
from windwall.study.sweep_limits import with_limits

plt = pytest.importorskip("matplotlib.pyplot")

SCENARIOS = ("airfield_cyclecar", "lakebed_streamliner", "village_microcar")
MENUS = {
    "airfield_cyclecar": ["small_pulley", "gearing", "fairing", "hard_tyres", "diet", "spray"],
    "lakebed_streamliner": ["small_pulley", "nose", "tail", "weights", "headers"],
    "village_microcar": None,
}
SWEPT = {
    "airfield_cyclecar": ("charge_path/blower/drive_ratio", [1.2, 1.5, 1.7, 2.4, 4.0]),
    "lakebed_streamliner": ("charge_path/blower/drive_ratio", [1.0, 1.4, 1.8, 2.2]),
    "village_microcar": ("body/drag_area", ["0.5 m2", "0.6 m2", "0.7 m2"]),
}
AIR = ["-5 degC", "20 degC", "40 degC"]
# What is drawn, and a unit that it shows in metric and in US.
PICTURES = {
    "force_against_speed": ("km/h", "mph"),
    "accounts": (" kW", " hp"),
    "stations": ("degC", "degF"),
    "knock_over_engine_speed": ("rpm", "rpm"),
    "gains": ("km/h", "mph"),
    "best_by_cost": ("km/h", "mph"),
    "sweep_curve": ("km/h", "mph"),
    "sweep_curve of two": ("km/h", "mph"),
    "sweep_map": ("degC", "degF"),
    "forecast": ("km/h", "mph"),
}
ONE_EACH = ("airfield_cyclecar us", "lakebed_streamliner metric", "village_microcar us")
EVERY = [f"{name} {system}" for name in SCENARIOS for system in ("metric", "us")]
PARAMETERS = [
    one if one in ONE_EACH else pytest.param(one, marks=pytest.mark.slow) for one in EVERY
]


@pytest.fixture(scope="module")
def answers():
    """What is drawn, solved once for each scenario."""
    found = {}
    for name in SCENARIOS:
        car = ww.load(f"scenarios/{name}.json")
        address, values = SWEPT[name]
        one = ww.sweep(car, {address: values}, progress=False)
        two = {address: values, "day/temperature": AIR}
        found[name] = {
            "car": car,
            "best": car.top_speed(),
            "ranking": ww.rank(car, upgrades=MENUS[name], progress=False),
            "one": with_limits(car, one, progress=False),
            "two": with_limits(car, ww.sweep(car, two, progress=False), progress=False),
            "forecast": car.forecast(AIR, ["95 kPa", "100 kPa"]),
        }
    return found


def in_us(answer):
    """The same answer as a scenario in US units has it: SI inside, shown otherwise."""
    made = answer.copy()
    made["car"] = made["car"].shown_in("us")
    for key in ("best", "ranking"):
        info = answer[key].scenario_info._replace(system="us")
        made[key] = shown_by(answer[key], info)
    for key in ("one", "two"):
        made[key] = answer[key].assign_attrs(system="us")
    made["forecast"] = made["car"].forecast(AIR, ["95 kPa", "100 kPa"])
    return made


def shown_by(answer, info):
    kind, (numbers, _, *rest) = answer.__reduce__()
    return kind(numbers, info, *rest)


def drawn(what, answer):
    if what == "sweep_curve of two":
        return ww.plot.sweep_curve(answer["two"])
    of = {
        "force_against_speed": "car",
        "knock_over_engine_speed": "car",
        "gains": "ranking",
        "best_by_cost": "ranking",
        "sweep_curve": "one",
        "sweep_map": "two",
        "forecast": "forecast",
    }
    return getattr(ww.plot, what)(answer[of.get(what, "best")])


@pytest.fixture(params=PARAMETERS)
def answer(answers, request):
    name, system = request.param.split()
    return in_us(answers[name]) if system == "us" else answers[name]


@pytest.fixture(autouse=True)
def nothing_stays_open():
    yield
    plt.close("all")


@pytest.mark.parametrize("what", PICTURES)
def test_a_picture_can_be_read(what, answer):
    axes = drawn(what, answer)
    texts = drawn_texts(axes.figure)
    assert cut(texts, axes.figure.bbox) == []
    assert overlapping(texts) == []
    assert under_a_legend(axes.figure) == []
    assert {one.size for one in texts} == {SIZE}
    told = looks(axes)
    assert len(set(told.values())) == len(told)
    assert axes.get_label().endswith(".")  # what it comes to, for whoever does not see it
    words = "\n".join(one.words for one in texts)
    assert not re.search(r"_|\.json|\bsafe", words)
    if axes.axison:
        metric, us = PICTURES[what]
        theirs, others = (us, metric) if answer["car"].system == "us" else (metric, us)
        assert theirs in words
        assert theirs == others or others not in words


def test_axes_of_speed_end_where_the_vehicle_does(answer):
    speed = answer["best"].speed * (3.6 if answer["car"].system == "metric" else 1 / 0.44704)
    end = ww.plot.force_against_speed(answer["car"]).get_xlim()[1]
    assert speed < end < 1.2 * speed
    high = ww.plot.best_by_cost(answer["ranking"]).get_ylim()[1]
    assert high < 1.3 * speed or not answer["ranking"].upgrades


ENDS = {
    "rev limit": {"body/drag_area": "0.3 m2"},
    "rev limit, hardly": {"engine/rev_limit": "4500 rpm"},
    "grip": {"tyres/grip": 0.1},
    "knock": {"engine/compression_ratio": 15},
}


@pytest.mark.parametrize("end", ENDS)
def test_a_picture_can_be_read_whatever_ends_the_speed(car, end):
    car = (car if end == "knock" else ww.load("scenarios/airfield_cyclecar.json")).set(ENDS[end])
    best = car.top_speed()
    assert end.partition(",")[0] in best.limited_by.replace("_", " ")
    force = ww.plot.force_against_speed(car)
    for axes in (force, ww.plot.knock_over_engine_speed(car)):
        texts = drawn_texts(axes.figure)
        assert cut(texts, axes.figure.bbox) == []
        assert overlapping(texts) == []
        assert under_a_legend(axes.figure) == []
    mark = next(one for one in force.get_lines() if one.get_markerfacecolor() == "none")
    reach = mark.get_markersize() / 2 * force.figure.dpi / 72
    (x, y), box = force.transData.transform(mark.get_xydata()[0]), force.bbox
    assert box.x0 < x - reach
    assert x + reach < box.x1
    assert y + reach < box.y1


def test_colours_differ_in_lightness():
    """In print and for any eye: by the luminance of IEC 61966-2-1, sRGB."""
    from matplotlib.colors import to_rgb

    def linear(part):
        return part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4

    def lightness(colour):
        red, green, blue = map(linear, to_rgb(colour))
        luminance = 0.2126 * red + 0.7152 * green + 0.0722 * blue
        return 116 * luminance ** (1 / 3) - 16 if luminance > 0.008856 else 903.3 * luminance

    seen = sorted(map(lightness, COLOURS))
    assert all(above - below > 12 for below, above in pairwise(seen))
    assert seen[-1] < 75  # and all differ from paper


def test_refused_regions_are_hatched_and_named(answers):
    axes = ww.plot.sweep_curve(answers["airfield_cyclecar"]["one"])
    hatched = {patch.get_label(): patch for patch in axes.patches if patch.get_hatch()}
    beyond = next(one for label, one in hatched.items() if label.startswith("passes a limit"))
    none = hatched["no answer"]
    assert beyond.get_hatch() != none.get_hatch()
    ratio = [patch.get_x() for patch in (beyond, none)]
    assert ratio == pytest.approx([1.6, 3.2])  # half way from 1.5 to 1.7, and from 2.4 to 4
    words = " ".join(" ".join(text.get_text().split()) for text in axes.get_legend().get_texts())
    assert "blower load ratio" in words
    assert "no answer" in words


def test_a_map_hatches_cells_and_marks_the_best_that_is_not_refused(answers):
    two = answers["airfield_cyclecar"]["two"]
    axes = ww.plot.sweep_map(two)
    cells = [patch for patch in axes.patches if patch.get_hatch()]
    refused = (two["passed"].values != "") | (two["speed"].isnull().values)
    assert len(cells) == refused.sum() > 0
    (x,), (y,) = next(line for line in axes.get_lines() if line.get_marker() == "*").get_data()
    allowed = two["speed"].where(~refused)
    at = allowed.argmax(...)
    assert x == two["drive_ratio"].values[at["drive_ratio"].values]
    assert y == pytest.approx(two["temperature"].values[at["temperature"].values] - 273.15)


def test_keys_of_the_table_are_the_steps(answers):
    ranking = answers["airfield_cyclecar"]["ranking"]
    axes = ww.plot.best_by_cost(ranking)
    keys = [text for text in axes.texts if re.fullmatch(r"\d", text.get_text())]
    steps = [text for text in keys if text.xycoords == "data"]
    heads = [text for text in keys if text.xycoords != "data" and text.get_weight() == "bold"]
    assert [text.get_text() for text in steps] == [text.get_text() for text in heads]
    assert len(steps) > 3
    best = {one.cost: one for one in ranking.best_by_cost}
    words = " ".join(text.get_text() for text in axes.texts)
    for step in steps:
        one = best[step.xy[0]]
        assert step.xy[1] == pytest.approx(3.6 * one.speed[1])
        assert all(ranking.menu[name].title[:30] in words for name in one.upgrades)


def test_names_of_the_table_end_before_its_columns(answers):
    axes = ww.plot.best_by_cost(answers["airfield_cyclecar"]["ranking"])
    texts = drawn_texts(axes.figure)
    columns = min(one.box.x0 for one in texts if one.words == "\N{BLACK CIRCLE}")
    longest = next(one for one in texts if one.words.startswith("Water and methanol"))
    assert longest.box.x1 < columns


@pytest.mark.slow
def test_a_long_menu_can_be_read(answers):
    ranking = ww.rank(answers["airfield_cyclecar"]["car"], progress=False)
    for plot in (ww.plot.gains, ww.plot.best_by_cost):
        axes = plot(ranking)
        texts = drawn_texts(axes.figure)
        assert cut(texts, axes.figure.bbox) == []
        assert overlapping(texts) == []
