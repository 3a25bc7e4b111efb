"""What stands beside the pictures of a menu: the numbers in one, and what the other leaves out."""

from __future__ import annotations

from windwall.quantities.measures import SPEED
from windwall.report.plots.menu import upgrade_title
from windwall.report.plots.money import keyed_sets
from windwall.report.plots.ranking import by_gain
from windwall.report.text_layout import Blocks, paragraph, table
from windwall.report.wording.sets import cost, speed_number
from windwall.results.ranking import MIDDLE, Ranking, UpgradeSet

__all__ = ["AS_IT_IS", "MOST", "REST", "WITHOUT", "rest", "steps"]

MOST = 8  # upgrades in the picture of gains
REST = "Less than these, each alone: {gains} {unit}."
AS_IT_IS = "nothing fitted"
WITHOUT = "without {names}"


def steps(ranking: Ranking) -> Blocks:
    """Each with its cost, its speed, and what it has beyond the one above it."""
    system = ranking.scenario_info.system
    before: set[str] = set()
    rows = []
    for number, one in enumerate(keyed_sets(ranking), 1):
        labels = _labels(one)
        speed = speed_number(one.speed[MIDDLE], system)
        rows.append((str(number), cost(one, ranking), speed, _change(labels, before, ranking)))
        before = labels
    head = ("", "cost", SPEED.shown(system), "fitted beyond the line above")
    return table(rows, head=head, left=(3,))


def rest(ranking: Ranking) -> Blocks:
    """The gains that are too small for the picture."""
    system = ranking.scenario_info.system
    said = [
        f"{upgrade_title(one.label, ranking)} {SPEED.change(one.alone[MIDDLE], system)}"
        for one in by_gain(ranking)[MOST:]
    ]
    sentence = REST.format(gains=", ".join(said), unit=SPEED.shown(system))
    return paragraph(sentence) if said else []


def _labels(one: UpgradeSet) -> set[str]:
    return set(map(one.label, one.upgrades))


def _change(now: set[str], before: set[str], ranking: Ranking) -> str:
    other = {_id(one) for one in now}  # another value of a choice is no other upgrade
    gone = {one for one in before - now if _id(one) not in other}
    added, left = _named(now - before, ranking), _named(gone, ranking)
    said = [added] if added else []
    said += [WITHOUT.format(names=left)] if left else []
    return "; ".join(said) or AS_IT_IS


def _id(label: str) -> str:
    return label.partition(": ")[0]


def _named(labels: set[str], ranking: Ranking) -> str:
    """By their titles, in the order of the menu."""
    order = {key: at for at, key in enumerate(ranking.menu)}
    known = sorted(labels, key=lambda one: order[_id(one)])
    return ", ".join(upgrade_title(one, ranking) for one in known)
