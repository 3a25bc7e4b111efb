"""What users type: a scenario with its questions as methods, and where scenarios come from.

The floors below hold functions and data; here they are put together, and nothing is worked out.
"""

from __future__ import annotations

import os
from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

from windwall import study
from windwall.results.values import completed
from windwall.results.views import Readable, frame
from windwall.scenario import files, info
from windwall.scenario.arguments import several
from windwall.study.draws import FEWEST, FOR_CHANCES, SEED
from windwall.study.long_questions import LongQuestions

if TYPE_CHECKING:
    import pandas

    from windwall.results.day import Corrected, Forecast
    from windwall.results.diagnosis import Compared
    from windwall.results.drawn import DrawnRanking, DrawnSpeed
    from windwall.results.drive import Drive
    from windwall.results.log import ReadLog
    from windwall.results.operating_point import OperatingPoint
    from windwall.results.part_load import PartLoad
    from windwall.results.ranking import Chosen, Ranking
    from windwall.results.smaller_jet import SmallerJet
    from windwall.results.standing_start import Shortfall
    from windwall.results.top_speed import TopSpeed
    from windwall.scenario.installing import Fitted
    from windwall.study.day import Day
    from windwall.study.progress import Progress

__all__ = ["Scenario", "load", "loads"]


class Scenario(LongQuestions, Readable):
    """One scenario file, understood, and what may be asked of it. Numbers go in as texts with
    units, or as `si(x)`; what is wrong with one raises `ScenarioError`. Answers hold SI.

    In the examples below `ww` is windwall, and `car` an invented cyclecar:

    >>> import windwall as ww
    >>> car = ww.load("scenarios/airfield_cyclecar.json")
    >>> car.set({"body/mass": "330 kg"}).top_speed().speed > car.brief_top_speed().speed
    True
    >>> car.operating_point("4200 rpm", opening="60 %").answered, car.hold_speed("50 km/h").answered
    (True, True)
    >>> car.full_throttle_curve(gear=4, points=10).attrs["units"]["engine/torque"]
    'N m'
    >>> list(car.coast_down("80 km/h", "30 km/h").columns), car.idle("1500 rpm").idles
    (['time', 'distance', 'speed'], True)
    >>> car.time_over("200 m") < car.time_to("100 km/h"), car.shortfall().speed > 0
    (True, True)
    >>> jet = car.install("spray").smaller_jets()[0]
    >>> jet.of_fuel > 0.25, jet.best.speed > jet.fitted.speed
    (True, True)
    >>> car.forecast(["10 degC", "30 degC"], ["98 kPa"]).speed.shape
    (2, 1)
    >>> cold = car.corrected({"temperature": "12 degC", "pressure": "102 kPa"})
    >>> cold.after.speed > cold.before.speed
    True
    >>> car.drive("three_runs", progress=False).answered, car.chosen({"gearing": 27})[0].text
    (True, '27')
    >>> car.against_observed()[0].key, car.drawn_speed(64, progress=False).spread.worlds
    ('speed', 64)
    """

    __slots__ = ()

    def __dir__(self) -> list[str]:
        return [one for one in completed(super().__dir__()) if one != "core"]

    def top_speed(self) -> TopSpeed:
        """How fast it gets, why no faster, and where the watts go."""
        return study.solve.top_speed(self)

    def brief_top_speed(self) -> TopSpeed:
        """The speed and the point there alone, for asking again and again: no accounts, no limits,
        nothing of what small changes are worth.
        """
        return study.solve.top_speed(self, brief=True)

    def operating_point(
        self, engine_speed: Any, opening: Any = 1.0, road_speed: Any = None
    ) -> OperatingPoint:
        """The engine held at a speed: texts with units (`"4200 rpm"`) or `si(x)`."""
        return study.solve.operating_point(self, engine_speed, opening, road_speed)

    def drawn_speed(
        self,
        draws: int = FOR_CHANCES,
        seed: int = SEED,
        *,
        progress: bool | Progress | None = None,
        **means: Any,
    ) -> DrawnSpeed:
        """How fast vehicles described like this one are: the speed in so many worlds, each with a
        value for all that is uncertain. `draws` is a power of two; `means` are `threads`,
        `executor` and `journal`, as of `windwall.sweep`.
        """
        return study.speed_draws.draw_speed(self, draws, seed, progress, **means)

    def drawn_ranking(
        self,
        ranking: Ranking,
        draws: int = FEWEST,
        seed: int = SEED,
        *,
        progress: bool | Progress | None = None,
        **means: Any,
    ) -> DrawnRanking:
        """How sure the gains and the sets of a ranking of this scenario are, in the same worlds for
        all of them: `ranking.summary(None, car.drawn_ranking(ranking))`. Ctrl-C keeps the worlds
        that are done. Chances in sentences are of four times as many; `means` as of `drawn_speed`.

        >>> small = ww.load("scenarios/village_microcar.json")
        >>> small.drawn_ranking(ww.rank(small, progress=False), 16, progress=False).worlds
        16
        """
        return study.rank_draws.draw_ranking(self, ranking, draws, seed, progress, **means)

    def drive(self, outing: str | None = None, *, progress: bool | Progress | None = None) -> Drive:
        """Drives an outing over time, named by its id or title; the only one needs no name. Ctrl-C
        stops it and keeps what was driven.
        """
        return study.drive.drive(self, outing, progress)

    def full_throttle_curve(self, gear: int | None = None, points: int = 40) -> pandas.DataFrame:
        """Full throttle over engine speed, one column for each result, SI; units in `attrs`."""
        return frame(study.solve.full_throttle_curve(self, gear, points))

    def time_to(self, speed: Any, **outing: Any) -> float:
        """Seconds from standstill to a speed at full throttle, `"100 km/h"`; further arguments are
        keys of an outing, such as `starts="soaked"`. Raises `NoAnswer` where it is not reached.
        """
        return study.standing_start.time_to(self, speed, **outing)

    def time_over(self, distance: Any, **outing: Any) -> float:
        """Seconds from standstill over a distance at full throttle, `"402.336 m"`; likewise."""
        return study.standing_start.time_over(self, distance, **outing)

    def shortfall(self, **outing: Any) -> Shortfall:
        """How far a run that is driven from standstill ends below the quick `top_speed()`."""
        return study.standing_start.shortfall(self, **outing)

    def smaller_jets(self) -> tuple[SmallerJet, ...]:
        """Every spray that takes more of the fuel flow than is usual, at the top speed, with what
        smaller jets in its place make of that: `one.best` is the fastest, None where none gains.
        """
        return study.smaller_jet.smaller_jets(self, self.top_speed())

    def coast_down(
        self,
        from_speed: Any,
        to_speed: Any = "10 km/h",
        headwind: Any = None,
        grade: Any = None,
        points: int = 101,
    ) -> pandas.DataFrame:
        """Time and distance of rolling from one speed down to another without drive, SI; wind and
        grade are those of the scenario unless stated. The driveline takes nothing.
        """
        return frame(
            study.coast_down.coast_down(self, from_speed, to_speed, headwind, grade, points)
        )

    def hold_speed(self, speed: Any, gear: int | None = None) -> PartLoad | pandas.DataFrame:
        """The pedal that holds a road speed, `"50 km/h"` or `si(x)`, in a gear counted from 1; else
        in the highest that can. Of several speeds a table, one column for each result, SI, with
        units in `attrs` and how each ended under `status`.
        """
        if several(speed):
            return frame(study.solve.hold_speed_curve(self, speed, gear))
        return study.solve.hold_speed(self, speed, gear)

    def idle(self, engine_speed: Any = None) -> PartLoad | pandas.DataFrame:
        """The engine alone at the speed it idles at or another; of several speeds a table."""
        if several(engine_speed):
            return frame(study.solve.idle_curve(self, engine_speed))
        return study.solve.idle(self, engine_speed)

    def against_observed(self) -> list[Compared]:
        """The model beside every fact that was observed and that it has a number for."""
        return list(study.compare.compare(self))

    def report(
        self, path: str | os.PathLike[str], *, draws: int = 0, budget: float | str | None = None
    ) -> None:
        """Writes one HTML page about it that can be sent: the answer and its reasons, pictures,
        what to buy, how well each input is known, sliders, and the scenario itself, which `load`
        reads from the page again. `draws`, a power of two, says how sure the ranking is; it names
        no set beyond the `budget`, such as "500 EUR".

        >>> import tempfile
        >>> page = tempfile.mkdtemp() + "/page.html"
        >>> small = ww.load("scenarios/village_microcar.json")
        >>> small.report(page)
        >>> ww.load(page) == small
        True
        """
        from windwall.report.page import write_page  # a page is seldom written

        write_page(self, path, draws=draws, budget=budget)

    def read_log(
        self, path: str | os.PathLike[str], mapping: str | os.PathLike[str] | None = None
    ) -> ReadLog:
        """What a log of the vehicle tells: what was mended, its pulls, its facts with their ±. The
        mapping that says what its columns are lies beside it, is named, or is proposed.

        >>> read = car.read_log("scenarios/logs/two_runs.csv")
        >>> len(read.pulls), read.facts[0].address
        (6, 'manifold/boost')
        """
        from windwall.logs.against import read_against  # a log is seldom read

        return read_against(self, path, mapping)

    def chosen(self, *what: Fitted) -> tuple[Chosen, ...]:
        """Which value each choice takes in `car.install(*what)`."""
        return info.chosen(self, *what)

    def corrected(self, to_day: Day, from_day: Day = None, speed: Any = None) -> Corrected:
        """What another day does to speed, power and torque, beside the published factors, and what
        a speed that was seen would have been then. A day is what differs from that of the file:
        `{"temperature": "12 degC", "pressure": "102 kPa"}`.
        """
        return study.day.corrected(self, to_day, from_day, speed)

    def forecast(self, temperatures: Iterable[Any], pressures: Iterable[Any]) -> Forecast:
        """The speed for every temperature and pressure, texts with units; the rest of the day is
        that of the file.
        """
        return study.day.forecast(self, temperatures, pressures)


def loads(text: str | bytes, source: str = "scenario") -> Scenario:
    """A scenario from the text of its file; `source` only names it in messages. Raises
    `ScenarioError` with everything that is wrong with it.

    >>> loads(car.text()) == car
    True
    """
    return Scenario.read(text, source)


def load(path: str | os.PathLike[str]) -> Scenario:
    """A scenario from its file. Raises `ScenarioError` with everything that is wrong with
    it, and `OSError` where there is no such file.

    >>> load("scenarios/airfield_cyclecar.json").get("body/mass")
    348.0
    """
    return Scenario.read(files.read(path), os.fspath(path))
