"""What a scenario is about, on one screen."""

from __future__ import annotations

from collections.abc import Iterator

from windwall.report.text_layout import Blocks, Title, section, table
from windwall.report.wording.scenario import conditions
from windwall.report.wording.sets import sum_of_money
from windwall.results.ranking import Upgrade
from windwall.results.views import content
from windwall.scenario.data import ScenarioData
from windwall.scenario.info import scenario_info

__all__ = ["engine_text", "facts", "goal_text", "scenario_text", "upgrade_row"]


@content.register(ScenarioData)
def scenario_text(scenario: ScenarioData) -> Blocks:
    """The vehicle, the day, the goal and the menu."""
    lines = [Title(scenario.name), *table(facts(scenario), left=(0, 1))]
    menu = [upgrade_row(one, scenario.currency) for one in scenario.upgrades.values()]
    return [*lines, *section("Upgrades", table(menu, left=(0, 1)))]


def facts(scenario: ScenarioData) -> Iterator[tuple[str, str]]:
    document = scenario.document()
    yield "goal", goal_text(scenario)
    yield "day", conditions(scenario_info(scenario))
    mass, area = scenario.readable("body/mass"), scenario.readable("body/drag_area")
    yield "body", f"{mass}, drag area {area}"
    yield "charge path", " > ".join(part["id"] for part in document["charge_path"])
    yield "engine", engine_text(scenario)
    yield "driveline", " > ".join(part["id"] for part in document["driveline"])
    yield "digest", scenario.digest[:16]


def engine_text(scenario: ScenarioData) -> str:
    if scenario.document()["engine"]["kind"] == "torque_curve":
        size, limit = (scenario.readable(f"engine/{key}") for key in ("displacement", "rev_limit"))
        return f"{size} by its measured torque, to {limit}"
    cylinders = scenario.get("engine/cylinders")
    bore, stroke = scenario.readable("engine/bore"), scenario.readable("engine/stroke")
    ratio = scenario.readable("engine/compression_ratio")
    limit = scenario.readable("engine/rev_limit")
    plural = "" if cylinders == 1 else "s"
    return (
        f"{cylinders:.0f} cylinder{plural}, bore {bore}, stroke {stroke}, compression ratio "
        f"{ratio}, to {limit}"
    )


def goal_text(scenario: ScenarioData) -> str:
    speed, road = scenario.get("goal/speed"), scenario.get("goal/run_up")
    words = [] if speed is None else [scenario.readable("goal/speed")]
    words += [] if road is None else [f"after {scenario.readable('goal/run_up')} from rest"]
    budget = scenario.get("goal/budget")
    spent = [] if budget is None else [f"for at most {sum_of_money(budget, scenario.currency)}"]
    return ", ".join(filter(None, [" ".join(words), *spent])) or "none stated"


def upgrade_row(upgrade: Upgrade, currency: str) -> tuple[str, str, str, str]:
    cost = "" if upgrade.cost is None else sum_of_money(upgrade.cost, currency)
    hours = "" if upgrade.hours is None else f"{upgrade.hours:g} h"
    return upgrade.id, upgrade.title, cost, hours
