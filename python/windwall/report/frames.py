"""Results as pandas objects, in SI, with their units in `attrs`."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from windwall.report.wording.names import by_name
from windwall.report.wording.sets import outside
from windwall.results.account import Account
from windwall.results.coast_down import CoastDown
from windwall.results.curve import Curve
from windwall.results.driven_gains import DrivenGains
from windwall.results.driven_ranking import DrivenRanking
from windwall.results.gearing import BestGearing
from windwall.results.outcome import Outcome
from windwall.results.ranking import ANCHORS, Ranking
from windwall.results.record import Record, result_row
from windwall.results.views import frame

if TYPE_CHECKING:
    import pandas

__all__ = [
    "GAS", "at_anchors", "coast_down", "driven_gains", "driven_ranking", "full_throttle", "gains",
    "gearing", "is_gain", "powers", "station_rows", "stations",
]  # fmt: skip

GAS = ("pressure", "temperature", "flow", "liquid")


def station_rows(point: Record) -> list[tuple[str, Record]]:
    """The gas in front of the first part, and behind each part in the order of the air."""
    parts = list(point.charge_path.items())
    if not parts:
        return []
    first, part = parts[0]
    return [(f"before {first}", part.inlet), *((f"behind {name}", p.outlet) for name, p in parts)]


@frame.register(Outcome)
def stations(answer: Outcome) -> pandas.DataFrame:
    """The gas from station to station."""
    import pandas as pd

    rows = station_rows(answer.point)
    made = pd.DataFrame(
        [[gas[key] for key in GAS] for _, gas in rows],
        columns=list(GAS),
        index=pd.Index([name for name, _ in rows], name="station"),
    )
    made.attrs["units"] = rows[0][1].units() if rows else {}
    return made


@frame.register(Account)
def powers(account: Account) -> pandas.Series:
    """Where the watts go: the total first, which is the sum of the others."""
    import pandas as pd

    series = pd.Series(by_name(account.entries), name=account.name, dtype=float)
    series.attrs["units"] = "W"
    return series


@frame.register(Curve)
def full_throttle(curve: Curve) -> pandas.DataFrame:
    """One column for each number of an operating point, by its address."""
    import pandas as pd

    columns = dict(zip(curve.addresses, curve.columns, strict=True))
    gears = columns.pop("road/gear", None)
    first = {} if gears is None else {"gear": [int(gear) for gear in gears]}
    made = pd.DataFrame(first | columns | {"status": curve.status})
    rows = {address: result_row(address) for address in columns}
    made.attrs["units"] = {address: row["si"] for address, row in rows.items()}
    made.attrs["long_name"] = {address: row["sentence"] for address, row in rows.items()}
    return made


@frame.register(CoastDown)
def coast_down(run: CoastDown) -> pandas.DataFrame:
    """Time, distance and speed; the table that `coast_down_fit` takes."""
    import pandas as pd

    made = pd.DataFrame({"time": run.time, "distance": run.distance, "speed": run.speed})
    made.attrs["units"] = {"time": "s", "distance": "m", "speed": "m/s"}
    made.attrs["conditions"] = dict(run.conditions)
    return made


@frame.register(BestGearing)
def gearing(best: BestGearing) -> pandas.DataFrame:
    """Speed or time of every value that was tried."""
    import pandas as pd

    name = "speed" if best.mark is None else "time"
    made = pd.DataFrame(list(best.tried), columns=["value", name], dtype=float)
    made.attrs["units"] = {"value": best.measure.si, name: best.of_merit.si}
    made.attrs["address"] = best.address
    return made


@frame.register(DrivenGains)
def driven_gains(answer: DrivenGains) -> pandas.DataFrame:
    """Time or speed without and with each upgrade, and the change."""
    import pandas as pd

    rows = {one.id: (one.title, one.before, one.fitted, one.change) for one in answer.gains}
    columns = ["title", "before", "fitted", "change"]
    made = pd.DataFrame.from_dict(rows, orient="index", columns=columns)
    made.index.name = "upgrade"
    made.attrs["units"] = dict.fromkeys(columns[1:], answer.of_merit.si)
    return made


@frame.register(DrivenRanking)
def driven_ranking(answer: DrivenRanking) -> pandas.DataFrame:
    """Every set that was driven, the best first."""
    import pandas as pd

    name = "speed" if answer.mark is None else "time"
    rows = [
        (one.fitted.name, one.fitted.cost, one.fitted.hours, one.merit, answer.gain(one))
        for one in answer.runs
    ]
    made = pd.DataFrame(rows, columns=["set", "cost", "hours", name, "gain"])
    made.attrs["units"] = dict.fromkeys((name, "gain"), answer.of_merit.si)
    made.attrs["units"] |= {"cost": answer.currency, "hours": "h"}
    return made


def is_gain(value: Any) -> bool:
    """Whether it is one number for each knock anchor."""
    return isinstance(value, tuple) and bool(value) and isinstance(value[0], float)


def at_anchors(name: str, gain: tuple[float, ...]) -> dict[str, float]:
    """A column for each knock anchor."""
    return {f"{name}_{anchor}": one for anchor, one in zip(ANCHORS, gain, strict=True)}


@frame.register(Ranking)
def gains(ranking: Ranking) -> pandas.DataFrame:
    """Gains in m/s at the three knock anchors, one row for each upgrade."""
    import pandas as pd

    rows = {}
    for key, worth in ranking.upgrades.items():
        terms = ranking.menu[key]
        row: dict[str, Any] = {"title": terms.title, "cost": terms.cost, "hours": terms.hours}
        for name, value in worth.items():
            row |= at_anchors(name, value) if is_gain(value) else {}
            row |= {name: value} if isinstance(value, bool) else {}
        rows[key] = row | {"outside": outside(ranking, worth)}
    made = pd.DataFrame.from_dict(rows, orient="index")
    made.index.name = "upgrade"
    units = {name: "m/s" for name in made.columns if name.endswith(ANCHORS)}
    made.attrs["units"] = units | {"cost": ranking.currency, "hours": "h"}
    return made
