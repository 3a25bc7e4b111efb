"""Drag area and rolling resistance, as read off a road."""

from __future__ import annotations

from windwall.quantities.measures import DENSITY, MASS, SPEED
from windwall.report.text_layout import bullet, paragraph, section, table
from windwall.results.coast_down import CoastDownFit
from windwall.results.views import summary


@summary.register(CoastDownFit)
def coast_down_text(fit: CoastDownFit) -> str:
    """Everything worth reading about a fit."""
    system = fit.system
    low, high = (SPEED.text(speed, system) for speed in fit.speeds)
    rows = [
        ("runs", f"{len(fit.runs)}, {'both ways' if fit.both_ways else 'one way'}"),
        ("speeds", f"{low} to {high}"),
        ("mass", MASS.text(fit.mass, system, 4)),
        ("mass with turning wheels", MASS.text(fit.accelerated_mass, system, 4)),
        ("air", DENSITY.text(fit.air_density, system, 4)),
    ]
    lines = ["Coasting down", "", *paragraph(fit.sentence), "", *table(rows, left=(0, 1))]
    said = [line for one in fit.sentences for line in bullet(one)]
    return "\n".join(lines + section("What to know", said))
