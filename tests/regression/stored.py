"""Answers kept as numbers, so that their texts can be tried without solving anything."""

import json
from pathlib import Path

import windwall as ww
from windwall.quantities.measures import Measure
from windwall.quantities.uncertain_input import UncertainInput
from windwall.results.answer import answer_rows
from windwall.results.diagnosis import (
    Compared,
    Diagnosis,
    Explained,
    Explanation,
    Fact,
    FirstGain,
    Spoiled,
)
from windwall.results.ranking import Ranking, Upgrade
from windwall.results.scenario_info import RatedFigure, ScenarioInfo
from windwall.results.top_speed import TopSpeed

STORED = Path(__file__).parent / "stored"


def keep(name, answer, diagnosis):
    """Writes an answer down. Of a ranking's sets only those that its text is about."""
    made = {"info": answer.scenario_info._asdict(), "diagnosis": plain(diagnosis)}
    if isinstance(answer, Ranking):
        made["numbers"] = needed_sets(answer.numbers)
        made["menu"] = [one.numbers for one in answer.menu.values()]
        made["terms"] = {"currency": answer.currency, "budget": answer.budget}
    else:
        made["numbers"] = answer.numbers
    text = json.dumps(made, indent=0, ensure_ascii=False)
    (STORED / f"{name}.json").write_text(text + "\n", encoding="utf-8")


def needed_sets(numbers):
    """The base and the best, with the places of the others closed up."""
    rows = answer_rows("ranking")
    places = sorted({0, *pointed_at(numbers, rows)})
    moved = {old: new for new, old in enumerate(places)} | {None: None}
    sets = [numbers["sets"][at] for at in places]
    return renumbered(numbers, rows, moved) | {"sets": sets}


def pointed_at(numbers, rows):
    """Every place in the list of sets that rows name, however deep."""
    for key, row in rows.items():
        value = numbers[key]
        if row.get("into") == "sets":
            yield from flat([value])
        elif "rows" in row:
            for one in value if isinstance(value, list) else [value] if value else []:
                yield from pointed_at(one, row["rows"])


def renumbered(numbers, rows, moved):
    """The same with other places."""
    made = dict(numbers)
    for key, row in rows.items():
        value = numbers[key]
        if row.get("into") == "sets":
            made[key] = renamed(value, moved)
        elif "rows" in row and isinstance(value, list):
            made[key] = [renumbered(one, row["rows"], moved) for one in value]
        elif "rows" in row and value:
            made[key] = renumbered(value, row["rows"], moved)
    return made


def flat(value):
    """The places in lists of places and none."""
    if isinstance(value, list):
        return [at for one in value for at in flat(one)]
    return [] if value is None else [value]


def renamed(value, moved):
    return [moved[at] for at in value] if isinstance(value, list) else moved[value]


def plain(diagnosis):
    far = [diagnosis.compared.index(one.compared) for one in diagnosis.explained]
    inputs = [one.inputs for one in diagnosis.explained]
    made = {"compared": diagnosis.compared, "far": far, "inputs": inputs}
    return made | {"first": diagnosis.first}


def rebuilt(made):
    """The same as tuples with names."""
    compared = tuple(Compared(Fact(*fact), *model) for fact, *model in made["compared"])
    explained = tuple(
        Explained(compared[at], [explanation(*one) for one in inputs])
        for at, inputs in zip(made["far"], made["inputs"], strict=True)
    )
    return Diagnosis(compared, explained, tuple(FirstGain(*one) for one in made["first"]))


def explanation(known, deviations, gains, speeds, rated, spoils):
    *values, measure = known
    moved = UncertainInput(*values, Measure(*measure))
    figures = tuple(RatedFigure(*one) for one in rated)
    spoiled = tuple(Spoiled(Fact(*fact), off) for fact, off in spoils)
    return Explanation(moved, deviations, tuple(gains), speeds, figures, spoiled)


def stored(name):
    """An answer as it was kept, and what was found of observations."""
    made = json.loads((STORED / f"{name}.json").read_text(encoding="utf-8"))
    rated = tuple(RatedFigure(*figure) for figure in made["info"].pop("rated"))
    info, diagnosis = ScenarioInfo(**made["info"], rated=rated), rebuilt(made["diagnosis"])
    if "menu" not in made:
        return TopSpeed(made["numbers"], info), diagnosis
    menu = {one["id"]: Upgrade(one) for one in made["menu"]}
    return Ranking(made["numbers"], info, menu, made["terms"]), diagnosis


def keep_budget(scenario):
    """The one text that is about a budget."""
    ranking = ww.rank(scenario, budget="500 EUR", progress=False)
    keep("rank_airfield_cyclecar_500_eur", ranking, scenario.diagnose(ranking))
