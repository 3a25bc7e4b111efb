"""What a ranking of the scenarios names can be fitted, and goes as fast as it says."""

import pytest

from regression.compare_answers import SCENARIOS
from regression.stored import pointed_at
from windwall.results.answer import answer_rows


def printed(ranking):
    """The place of every set that a row of the answer names, and of each upgrade fitted first."""
    first = {frozenset({name, *required(ranking.menu, name)}) for name in ranking.upgrades}
    places = {at for at, one in enumerate(ranking.sets) if frozenset(one.upgrades) in first}
    return sorted(places | set(pointed_at(ranking.numbers, answer_rows("ranking"))))


def required(menu, name):
    for one in menu[name].requires:
        yield from (one, *required(menu, one))


@pytest.mark.timeout(400)  # where it is run alone, it ranks the demo
@pytest.mark.parametrize("name", SCENARIOS)
def test_every_set_that_is_printed_can_be_installed(name, today):
    scenario, ranking = today(name).scenario, today(name).ranking
    for at in printed(ranking):
        one = ranking.sets[at]
        if not one.answered:
            continue
        fitted = scenario.install(one).brief_top_speed()
        assert fitted.goal_speed == pytest.approx(one.speed[1], rel=1e-9), one.name


def test_that_is_every_kind_of_set(today):
    ranking = today("lakebed_streamliner").ranking
    named = {ranking.sets[at].upgrades for at in printed(ranking)}
    kinds = [*ranking.best_by_cost, *ranking.best_by_hours, ranking.target, ranking.fastest]
    assert {one.upgrades for one in kinds} <= named
    for worth in ranking.upgrades.values():
        pairs = (worth.best_pair, worth.most_helped, worth.most_hindered)
        assert {ranking.sets[pair.pair].upgrades for pair in pairs if pair} <= named
    assert any("sprocket" in one for one in named), "which leaves a choice"
