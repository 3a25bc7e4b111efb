"""Every sentence about an answer, one module for each kind of answer.

Each is a template with named values, worded whole, so that it can be said in another language; the
values are texts already, in the units of the scenario.
"""

from windwall.report.wording import (
    cautions,
    coast_down,
    day,
    drive,
    driven_ranking,
    faults,
    flyweights,
    gearing,
    knock,
    leans_on,
    measure,
    operating_point,
    part_load,
    ranking,
    sets,
    smaller_jet,
    standing_start,
    top_speed,
)

__all__ = [
    "cautions",
    "coast_down",
    "day",
    "drive",
    "driven_ranking",
    "faults",
    "flyweights",
    "gearing",
    "knock",
    "leans_on",
    "measure",
    "operating_point",
    "part_load",
    "ranking",
    "sets",
    "smaller_jet",
    "standing_start",
    "top_speed",
]
