"""What a builder knows of an engine: its words, its rated figures, and what is said of both."""

import json
from pathlib import Path

from python.samples import DOCUMENT
from windwall import _core
from windwall.report.text.check import check_text
from windwall.study.default_sensitivity import default_sensitivities
from windwall.study.rank import rank

PAGE = Path(__file__).parents[2] / "docs/physics/engine_classes.md"
ROAD = {
    "chamber": "two_valve_wedge",
    "cooling": "liquid",
    "duty": "road",
    "mixture": "carburettor",
    "exhaust": "muffled",
}
RATED = {
    "torque": "52 N m",
    "torque_speed": "3000 rpm",
    "compression_ratio": 8.5,
    "research_octane": 91,
}


def line_of(row):
    unit = _core.class_units()[row["address"]]
    value = f"{row['value']:g} {unit}".rstrip()
    words = ", ".join(row["words"])
    return f"| `{row['address']}` | {words} | {value} | {row['sigma']:g} | {row['source']} |"


def test_the_page_has_every_row_of_the_table():
    page = PAGE.read_text("utf-8").splitlines()
    missing = [line_of(row) for row in _core.class_priors() if line_of(row) not in page]
    assert missing == []
    rows = [line for line in page if line.startswith("| `")]
    assert len(rows) == len(_core.class_priors())


def described(car, **words):
    return car.set({f"engine/design/{key}": word for key, word in words.items()})


def test_a_check_says_what_each_word_chose(car):
    text = " ".join(check_text(described(car, **ROAD)).split())
    assert "engine/breathing/peak_efficiency: 0.84 +/- 0.05" in text
    assert "by two_valve_wedge, road, carburettor" in text
    assert "would make it" not in text
    assert "the class of engine stands in" in text


def test_a_check_says_what_a_missing_word_would_tell(car):
    text = " ".join(check_text(described(car, duty="road")).split())
    assert "design/chamber would make it +/- " in text
    assert "design/exhaust would make it +/- " in text


def test_without_words_nothing_is_said(car):
    assert "by the design" not in check_text(car)
    assert car.class_values == []


def test_a_stated_value_is_left_out(car):
    stated = described(car, **ROAD).set({"engine/exhaust/back_pressure": "5 kPa"})
    assert "engine/exhaust/back_pressure" not in check_text(stated)


def test_more_words_are_worth_a_better_answer(car):
    def spread(scenario):
        return sum((one.speed or 0) ** 2 for one in default_sensitivities(scenario)) ** 0.5

    assert spread(described(car, **ROAD)) < spread(described(car, duty="road"))


def test_a_check_prints_the_stock_engine_beside_its_figures(car):
    document = {**DOCUMENT, "engine": {**DOCUMENT["engine"], "design": ROAD, "rated": RATED}}
    made = type(car).read(json.dumps(document))
    text = " ".join(check_text(made).split())
    assert "torque: 52 N m printed," in text
    assert "became" in text
    assert "by the fuel that the maker asks for" in text
    assert made.knock_sigma == 5
    assert type(car).read(made.text()).digest == made.digest


def test_a_report_begins_with_the_stock_engine_beside_its_figures(car):
    document = {**DOCUMENT, "engine": {**DOCUMENT["engine"], "design": ROAD, "rated": RATED}}
    made = type(car).read(json.dumps(document))
    answer = made.top_speed()
    (figure,) = made.rated_fit["figures"]
    text = answer.summary()
    heading = "The stock engine against its rated figures"
    (line,) = [one for one in text.splitlines() if one.startswith("  torque ")]
    assert line.split()[1:7] == ["52", "N", "m", f"{figure['met']:.3g}", "N", "m"]
    assert text.index(heading) < text.index("balance speed")
    (told,) = answer.to_dict()["rated"]
    assert told == {key: figure[key] for key in told}
    assert set(told) == {"key", "rated", "met", "before", "unreconciled"}
    assert heading not in car.top_speed().summary()
    assert heading not in made.set({"engine/exhaust/back_pressure": "5 kPa"}).top_speed().summary()


def test_a_ranking_begins_with_it_too(car):
    document = {**DOCUMENT, "engine": {**DOCUMENT["engine"], "design": ROAD, "rated": RATED}}
    document["upgrades"] = document["upgrades"][:1]
    text = rank(type(car).read(json.dumps(document)), progress=False).summary()
    assert 0 < text.index("The stock engine against its rated figures") < text.index("recommended")


def test_a_figure_that_cannot_be_is_told_in_the_report(car):
    engine = {**DOCUMENT["engine"], "design": ROAD, "rated": RATED | {"torque": "110 N m"}}
    made = type(car).read(json.dumps({**DOCUMENT, "engine": engine}))
    assert (
        "The torque cannot be reconciled with the rest of the file." in made.top_speed().summary()
    )
