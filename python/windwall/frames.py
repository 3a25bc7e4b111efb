"""Results as pandas objects, in SI, with their units in `attrs`."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import pandas

    from windwall.ranking import Ranking
    from windwall.records import Record

GAS = ("pressure", "temperature", "flow", "liquid")


def station_rows(point: Record) -> list[tuple[str, Record]]:
    """The gas in front of the first part, and behind each part in the order of the air."""
    parts = list(point.charge_path.items())
    if not parts:
        return []
    first, part = parts[0]
    return [(f"before {first}", part.inlet), *((f"behind {name}", p.outlet) for name, p in parts)]


def stations(point: Record) -> pandas.DataFrame:
    import pandas as pd

    rows = station_rows(point)
    frame = pd.DataFrame(
        [[gas[key] for key in GAS] for _, gas in rows],
        columns=list(GAS),
        index=pd.Index([name for name, _ in rows], name="station"),
    )
    frame.attrs["units"] = rows[0][1].units() if rows else {}
    return frame


def account(entries: list[tuple[str, float]], name: str) -> pandas.Series:
    """Where the watts go: the total first, which is the sum of the others."""
    import pandas as pd

    series = pd.Series(dict(entries), name=name, dtype=float)
    series.attrs["units"] = "W"
    return series


def curve(numbers: dict[str, Any]) -> pandas.DataFrame:
    """One column for each number of an operating point, by its address."""
    import pandas as pd

    from windwall.records import result_row

    frame = pd.DataFrame(dict(zip(numbers["addresses"], numbers["columns"], strict=True)))
    frame.insert(0, "gear", frame.pop("road/gear").astype(int))
    rows = {address: result_row(address) for address in frame.columns[1:]}
    frame.attrs["units"] = {address: row["si"] for address, row in rows.items()}
    frame.attrs["long_name"] = {address: row["sentence"] for address, row in rows.items()}
    frame["status"] = numbers["status"]
    return frame


def gains(ranking: Ranking) -> pandas.DataFrame:
    """Gains in m/s at the three knock anchors, one row for each upgrade."""
    import pandas as pd

    from windwall.ranking import ANCHORS

    rows = {}
    for key, worth in ranking.upgrades.items():
        terms = ranking.menu[key]
        row: dict[str, Any] = {"title": terms.title, "cost": terms.cost, "hours": terms.hours}
        for view in ("alone", "last", "share"):
            row |= {
                f"{view}_{anchor}": gain
                for anchor, gain in zip(ANCHORS, getattr(worth, view), strict=True)
            }
        rows[key] = row | {"in_target": worth.in_target, "outside": worth.outside}
    frame = pd.DataFrame.from_dict(rows, orient="index")
    frame.index.name = "upgrade"
    units = {name: "m/s" for name in frame.columns if name.endswith(ANCHORS)}
    frame.attrs["units"] = units | {"cost": ranking.currency, "hours": "h"}
    return frame
