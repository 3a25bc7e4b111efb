"""What was learned of a vehicle from what it was seen to do."""

from __future__ import annotations

from collections.abc import Iterator

from windwall.quantities.measures import SPEED
from windwall.report.text_layout import Block, Blocks, Title, bullet, paragraph, section, table
from windwall.results.posterior import HeldFact, Interval, LearnedInput, Posterior, Trade
from windwall.results.views import content

__all__ = [
    "FACT_HEADER", "FEW", "INPUT_HEADER", "KIND_HEADER", "MODEL", "OUTLIER", "ROUGH", "SHOWN_LEFT",
    "SHOWN_MOVED", "SPEED_AFTER", "SPEED_BEFORE", "TOLD", "TRADES", "UNEXPLAINED", "UNLEARNED",
    "UNSETTLED", "learned_text", "listed", "name_of", "remarks", "span", "trade_text",
]  # fmt: skip

FEW = 24  # facts that are listed one by one
SHOWN_MOVED, SHOWN_LEFT = 0.25, 0.9
TOLD = 0.5  # standard deviations of a circumstance that are worth a sentence
FACT_HEADER = ("", "observed", "+/-", "described", "learned", "standard deviations off")
KIND_HEADER = ("", "facts", "standard deviations off, root of the mean square")
INPUT_HEADER = ("", "before", "now", "+/-", "moved", "+/- left")
SPEED_BEFORE = "Before: {outer} in 95 of 100 vehicles described like this."
SPEED_AFTER = "Now: {outer} in 95 of 100 that would have been seen to do the same, {inner} in 68."
TRADES = (
    "{names} {verb}: together they are known to {known} % of before, each alone hardly better than "
    "it was."
)
UNLEARNED = "Nothing was learned of {names}, which the speed leans on."
OUTLIER = (
    "{source} is an outlier: {off} of its standard deviations from the most probable vehicle, so "
    "that all facts were taken with long tails and it counts little."
)
UNEXPLAINED = (
    "No vehicle within the ± of this file explains {source}: the nearest is {away} standard "
    "deviations away. Either it was read wrong, or something is wrong that the file does not have."
)
ROUGH = "The draws are worth {count} equal ones: take the interval as rough."
UNSETTLED = "The search for the most probable vehicle did not settle; what stands here is its end."
MODEL = (
    "The model itself is taken to be off by some percent or kelvin in each kind of fact, as is "
    "common practice; the page how_sure.md says how much."
)


@content.register(Posterior)
def learned_text(found: Posterior) -> Blocks:
    """Everything worth reading about what was learned."""
    lines: Blocks = [Title(found.title), f"Learned from {len(found.facts)} facts."]
    lines += section("Top speed", _speeds(found))
    lines += section("What was seen beside the model", _facts(found))
    lines += section("What is believed of the vehicle", _inputs(found))
    lines += section("What to know", (line for one in remarks(found) for line in bullet(one)))
    return lines


def _speeds(found: Posterior) -> Iterator[Block]:
    if found.before:
        yield from paragraph(SPEED_BEFORE.format(outer=span(found.before, found.system)))
    if found.after:
        inner = span(found.after, found.system, inner=True)
        yield from paragraph(SPEED_AFTER.format(outer=span(found.after, found.system), inner=inner))


def span(one: Interval, system: str, inner: bool = False) -> str:
    """`118.2 to 127 km/h`."""
    low, high = one.inner if inner else one.outer
    return f"{SPEED.number(low, system, 4)} to {SPEED.text(high, system, 4)}"


def _facts(found: Posterior) -> Blocks:
    if len(found.facts) <= FEW:
        return table((_fact(one, found.system) for one in found.facts), head=FACT_HEADER)
    return table(_kinds(found), head=KIND_HEADER)


def _fact(one: HeldFact, system: str) -> tuple[str, ...]:
    off = f"{one.off:+z.1f}"
    if isinstance(one.observed, str):
        before, after = (f"{value:+z.1f} octane" for value in (one.before, one.after))
        return one.source, one.observed, "", before, after, off
    measure = one.measure
    observed, before, after = (
        measure.short(value, system) for value in (one.observed, one.before, one.after)
    )
    spread = measure.spread.number(one.sigma, system, 2)
    return one.source, observed, spread, before, after, off


def _kinds(found: Posterior) -> Iterator[tuple[str, str, str]]:
    for address in dict.fromkeys(one.address for one in found.facts):
        offs = [one.off for one in found.facts if one.address == address]
        size = (sum(off**2 for off in offs) / len(offs)) ** 0.5
        yield address, str(len(offs)), f"{size:.1f}"


def _inputs(found: Posterior) -> Blocks:
    shown = sorted(
        (one for one in found.inputs if abs(one.moved) > SHOWN_MOVED or one.left < SHOWN_LEFT),
        key=lambda one: -(one.moved**2) - (1 - one.left**2),
    )
    lines = table((_input(one, found.system) for one in shown), head=INPUT_HEADER) if shown else []
    others = len(found.inputs) - len(shown)
    return lines + paragraph(
        f"{'Of the others nothing much was learned' if shown else 'Nothing much was learned'}: "
        f"{others} inputs move a fact or the speed and stay about as they were."
    )


def _input(one: LearnedInput, system: str) -> tuple[str, ...]:
    measure = one.input.measure
    before, now = (measure.short(value, system, 3) for value in (one.before, one.value))
    sigma = measure.spread.number(one.sigma, system, 2)
    return one.address, before, now, sigma, f"{one.moved:+z.1f}", f"{100 * one.left:.0f} %"


def remarks(found: Posterior) -> Iterator[str]:
    """Sentences: what is known only together, what is not, and what does not fit."""
    for one in found.facts:
        if one.unexplained:
            yield UNEXPLAINED.format(source=one.source, away=f"{one.nearest:.1f}")
        if one.outlier:
            yield OUTLIER.format(source=one.source, off=f"{abs(one.off):.1f}")
    yield from map(trade_text, found.trades)
    if found.unlearned:
        yield UNLEARNED.format(names=listed([name_of(one) for one in found.unlearned]))
    for name, moved, _ in found.circumstances:
        if abs(moved) > TOLD:
            yield f"It fits best with {name} {moved:+z.1f} of its ± off."
    if found.unasked:
        yield f"The model has no number for {listed(list(found.unasked))}: nothing came of it."
    if found.rough:
        yield ROUGH.format(count=round(found.equal_draws))
    if not found.converged:
        yield UNSETTLED
    yield MODEL


def trade_text(one: Trade) -> str:
    """`leak area and drag area trade against each other: ...`"""
    names = listed([name_of(address) for address in one.addresses])
    verb = "trade against each other" if len(set(one.ways)) == 1 else "go up and down together"
    if len(one.addresses) > 2:
        verb = "trade against each other"
    return TRADES.format(names=names, verb=verb, known=round(100 * one.known_to))


def name_of(address: str) -> str:
    """`body/drag_area` as people say it: its last word, with the group before it."""
    group, _, last = address.rpartition("/")
    near = group.rpartition("/")[2]
    words = last if near in ("", "body", "engine", "day", "tyres") else f"{last} of the {near}"
    return words.replace("_", " ")


def listed(names: list[str]) -> str:
    """`a, b and c`."""
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
