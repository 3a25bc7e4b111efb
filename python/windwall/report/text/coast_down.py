"""Drag area and rolling resistance, as read off a road."""

from __future__ import annotations

from windwall.quantities.measures import DENSITY, LENGTH, MASS, SHARE, SPEED, TIME, wind
from windwall.report.text_layout import Blocks, Title, bullet, headline, paragraph, section, table
from windwall.results.coast_down import CoastDownFit, Rolling
from windwall.results.views import content

__all__ = ["coast_down_text", "rolling_text"]


@content.register(CoastDownFit)
def coast_down_text(fit: CoastDownFit) -> Blocks:
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
    lines = [Title("Coasting down"), "", *headline(fit.sentence), "", *table(rows, left=(0, 1))]
    said = [line for one in fit.sentences for line in bullet(one)]
    return lines + section("What to know", said)


@content.register(Rolling)
def rolling_text(rolling: Rolling) -> Blocks:
    """A coast-down of the model, row by row."""
    system, run = rolling.system, rolling.run
    held = run.conditions
    rows = [
        ("mass with turning wheels", MASS.text(held["accelerated_mass"], system, 4)),
        ("air", DENSITY.text(held["air_density"], system, 4)),
        ("headwind", wind(system).short(held["headwind"], system)),
        ("grade", SHARE.short(held["grade"], system)),
    ]
    names = (("time", TIME), ("distance", LENGTH), ("speed", SPEED))
    header = tuple(f"{name}, {measure.shown(system)}" for name, measure in names)
    lines = [
        tuple(
            measure.number(float(one), system, 4)
            for one, (_, measure) in zip(row, names, strict=True)
        )
        for row in zip(run.time, run.distance, run.speed, strict=True)
    ]
    said = (
        "Rolling without drive, in neutral; the driveline takes nothing. A `coast` leg of an "
        "outing drags along what lies behind the clutch, and is over sooner."
    )
    return [
        Title(rolling.title),
        *paragraph(said, ""),
        "",
        *table(rows, left=(0, 1)),
        "",
        *table(lines, head=header, left=()),
    ]
