"""What to measure next: what each reading would teach of the speed, and of which set to buy."""

from __future__ import annotations

from collections.abc import Iterable

from windwall.results.measure import ToMeasure, Worth
from windwall.results.ranking import Ranking, set_name
from windwall.scenario.data import ScenarioData
from windwall.scenario.inputs import belt_slips
from windwall.study.draws import FEWEST
from windwall.study.gauges import GAUGES, Gauge
from windwall.study.measure_draws import Draws, Planned, drawn
from windwall.study.measure_model import Asked
from windwall.study.nearest_sets import nearest, price
from windwall.study.progress import Progress
from windwall.study.rank import rank
from windwall.study.readings import Sensor, sensors
from windwall.study.solve import top_speed

__all__ = ["AS_IT_IS", "answer", "first_the_best", "measure", "with_belt_doubt", "worth"]

AS_IT_IS: tuple[str, ...] = ()


def measure(
    scenario: ScenarioData,
    budget: str | float | None = None,
    also: Iterable[Gauge] = (),
    draws: int = FEWEST,
    planned: Planned | None = None,
    progress: bool | Progress | None = None,
    threads: int = 0,
) -> ToMeasure:
    """Every gauge that the vehicle has a place for, what teaches most first.

    Of each is found what it leaves of the doubt about the speed and about the lead of the best set
    over the second, and what choosing after it is worth, over `draws` of the whole model, a power
    of two: by straight lines, and by curves, by which they are ordered. A blower's drive that is
    stated without its ± is known to 2 %. `planned` is told what the draws will cost once a few of
    them are done; Ctrl-C keeps those that are, from the first 32.
    """
    sound = top_speed(scenario, brief=True)
    if not sound.answered:
        raise sound.no_answer()
    car = with_belt_doubt(scenario)
    ranking = rank(car, budget, progress=progress, threads=threads) if car.upgrades else None
    found = nearest(ranking) if ranking and ranking.answered else []
    kits = [tuple(one.upgrades) for one in found] or [AS_IT_IS]
    asked = Asked(car, kits, list(sensors(car, [*GAUGES, *also])), threads)
    worlds = Draws(asked, drawn(asked, draws, planned, progress))
    rows = [worth(asked, sensor, worlds) for sensor in asked.sensors if asked.can_read(sensor)]
    return answer(asked, worlds, tuple(sorted(rows, key=first_the_best)), ranking, draws)


def with_belt_doubt(scenario: ScenarioData) -> ScenarioData:
    """A blower's drive ratio that is stated without its ± has that of a belt that slips."""
    doubts = {one.address: f"{one.value!r} ± {one.sigma!r}" for one in belt_slips(scenario)}
    return scenario.set(doubts) if doubts else scenario


def worth(asked: Asked, sensor: Sensor, worlds: Draws) -> Worth:
    """One gauge, by straight lines and by curves."""
    row = sensor.gauge
    return Worth(
        id=row.id,
        title=row.title,
        addresses=sensor.addresses,
        sigmas=tuple(asked.errors(sensor)),
        measures=tuple(asked.measures(sensor)),
        cost=row.cost,
        hours=row.hours,
        care=row.care,
        by_lines=worlds.by_lines(sensor),
        by_curves=worlds.by_curves(sensor),
    )


def first_the_best(one: Worth) -> tuple[float, float]:
    """By what choosing after it is worth, as far as draws can tell that from nothing, then by what
    it teaches of the speed.
    """
    return -(one.by_curves.gain or 0.0) if one.pays else 0.0, one.by_curves.speed_left


def answer(
    asked: Asked, worlds: Draws, rows: tuple[Worth, ...], ranking: Ranking | None, draws: int
) -> ToMeasure:
    """What there is to say beside the rows."""
    two = worlds.two
    names = list(map(set_name, asked.kits))
    return ToMeasure(
        title=asked.scenario.name,
        system=asked.scenario.system,
        vehicle=names[0],
        speed=float(worlds.speeds[:, 0].mean()),
        sigma=float(worlds.speeds[:, 0].std()),
        first=names[two[0]] if two else None,
        second=names[two[1]] if two else None,
        ahead=None if worlds.ahead is None else float(worlds.ahead.mean()),
        ahead_sigma=None if worlds.ahead is None else float(worlds.ahead.std()),
        could_be_first=len(asked.kits),
        perfect=worlds.perfect,
        price=price(ranking) if ranking and two else None,
        budget=ranking.budget if ranking else None,
        currency=asked.scenario.currency,
        asked=draws,
        draws=worlds.count,
        refused=worlds.refused,
        rows=rows,
    )
