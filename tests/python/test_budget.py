"""A budget in the file: what a ranking keeps to unless it is asked with another."""

import copy
import json

import pytest

import windwall as ww
from python.samples import DOCUMENT
from windwall.errors import ScenarioError

OF_THE_FILE = ", as the file states"


def stated(budget="150 EUR", **changes):
    made = copy.deepcopy(DOCUMENT) | changes
    made.setdefault("goal", {})["budget"] = budget
    return made


def load(*how, **changes):
    return ww.loads(json.dumps(stated(*how, **changes)))


@pytest.fixture(scope="module")
def car():
    return load()


@pytest.fixture(scope="module")
def ranking(car):
    return ww.rank(car, progress=False)


def test_a_ranking_keeps_to_the_budget_of_its_file(car, ranking):
    asked = ww.rank(ww.loads(json.dumps(DOCUMENT)), "150 EUR", progress=False)
    assert ranking.budget == 150.0
    assert ranking.target.upgrades == asked.target.upgrades
    assert ranking.target.cost <= 150.0
    assert ranking.budget_of_file
    assert not asked.budget_of_file
    assert f"budget 150 EUR{OF_THE_FILE}" in " ".join(ranking.summary().split())
    assert OF_THE_FILE not in " ".join(asked.summary().split())
    document = ranking.to_dict()
    assert (document["budget"], document["budget_of_file"]) == (150.0, True)


@pytest.mark.parametrize("asked, kept", [("60 EUR", 60.0), (60, 60.0), ("none", None)])
def test_what_is_asked_goes_before_the_file(car, asked, kept):
    found = ww.rank(car, asked, progress=False)
    assert found.budget == kept
    assert not found.budget_of_file


def test_the_command_and_the_page_say_which_budget(windwall, file, tmp_path):
    file.write_text(json.dumps(stated()))
    said = windwall("rank", file).stdout
    assert OF_THE_FILE in " ".join(said.split())
    other = windwall("rank", file, "--budget", "60 EUR").stdout
    assert "budget 60 EUR" in other
    assert OF_THE_FILE not in " ".join(other.split())
    assert "no budget" in windwall("rank", file, "--budget", "none").stdout
    pages = {}
    for name, how in (("own", ()), ("other", ("--budget", "60 EUR"))):
        windwall("report", file, "-o", tmp_path / f"{name}.html", *how)
        pages[name] = (tmp_path / f"{name}.html").read_text("utf-8")
    assert f"Which upgrade, for at most 150 EUR{OF_THE_FILE}</h2>" in pages["own"]
    assert "Which upgrade, for at most 60 EUR</h2>" in pages["other"]


def test_it_is_written_read_and_described_as_the_other_goals(car):
    assert car.get("goal/budget") == 150.0
    assert car.readable("goal/budget") == "150 EUR"
    assert json.loads(car.text())["goal"]["budget"] == "150 EUR"
    assert "for at most 150 EUR" in car.summary()
    more = car.set({"goal/budget": "220.5 EUR"})
    assert ww.loads(more.text()).get("goal/budget") == 220.5
    assert json.loads(car.set({"goal/budget": 90.0}).text())["goal"]["budget"] == "90 EUR"
    assert "budget" not in json.loads(car.set({"goal/budget": None}).text()).get("goal", {})


def test_a_file_without_one_is_the_file_it_was(car):
    plain = ww.loads(json.dumps(DOCUMENT))
    assert car.set({"goal/budget": None}).digest == plain.digest
    assert car.digest != plain.digest
    assert ww.rank(plain, upgrades=[], progress=False).budget is None


def test_one_file_counts_in_one_currency(car):
    with pytest.raises(ScenarioError, match="one currency, and the sums above are in USD"):
        load("150 USD")
    with pytest.raises(ScenarioError, match="one currency, and its costs are in EUR"):
        car.set({"goal/budget": "150 USD"})
    with pytest.raises(ScenarioError, match="goal/budget: 150 what"):
        load(150)


def test_where_nothing_has_a_cost_the_budget_says_the_currency():
    free = load("150 CHF", upgrades=[])
    assert free.currency == "CHF"
    assert free.readable("goal/budget") == "150 CHF"
    assert json.loads(free.set({"goal/budget": 90.0}).text())["goal"]["budget"] == "90 CHF"
    other = free.set({"goal/budget": "100 USD"})
    assert other.currency == "USD"
    assert ww.loads(other.text()).currency == "USD"
    assert free.set({"goal/budget": None}).currency == ""


def test_fitting_an_upgrade_leaves_the_currency(car):
    fitted = car.install(*car.upgrades)
    assert fitted.currency == "EUR"
    assert ww.loads(fitted.text()).get("goal/budget") == 150.0


def test_a_bare_sum_counts_in_the_currency_of_the_costs():
    dollars = json.loads(json.dumps(DOCUMENT).replace(" EUR", " USD"))
    car = ww.loads(json.dumps(dollars)).set({"goal/budget": 90.0})
    assert json.loads(car.text())["goal"]["budget"] == "90 USD"
    assert ww.loads(car.text()).readable("goal/budget") == "90 USD"
