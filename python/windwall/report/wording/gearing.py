"""Which gearing is best, what it is worth and how little it matters near there."""

from __future__ import annotations

from windwall.quantities.measures import ENGINE_SPEED, LENGTH, SPEED
from windwall.results.gearing import FLAT, NEAR, BestGearing, Shift
from windwall.results.views import sentence, sentences

__all__ = [
    "AIMS", "AS_IT_IS", "BEST", "EDGE", "FLATNESS", "LAUNCH", "LIMIT", "PEAK", "SHIFT", "STEEP",
    "STOPPED", "TRIED", "WITHOUT", "aim", "best_gearing_sentence", "best_gearing_sentences",
    "shown", "tried_heading",
]  # fmt: skip

BEST = "The best {address} is {best}: {merit}{aim}, {gain} than with the {now} there is."
AS_IT_IS = "The {address} of {now} is the best there is: {merit}{aim}."
WITHOUT = "The best {address} is {best}: {merit}{aim}; with the {now} there is no answer."
FLATNESS = "From {low} to {high} it is within {share} of that."
STEEP = "Its neighbours are worse by more than {share}."
EDGE = (
    "CAUTION: that is the end of what was tried, and better may lie beyond; state a larger reach."
)
STOPPED = (
    "It was stopped when {count} of {wanted} had been tried, those nearest to what there is first: "
    "better may be among the rest, and where to start and to shift is not told."
)
PEAK = "There is another peak at {value}: {merit}, {less} {worse}."
TRIED = "Tried: {count} from {first} to {last}"
LAUNCH = "Start in gear {gear}."
SHIFT = "Out of gear {gear} at {engine_speed}, {road_speed}{why}."
LIMIT = ", where the engine turns no faster"
AIMS = {"highest": "", "run_up": " at the end of {road}", "mark": " to {mark}"}


def shown(gearing: BestGearing, value: float) -> str:
    """A value of the address, as people of these units read it."""
    if gearing.whole:
        return f"{value:.0f}"
    return gearing.measure.short(value, gearing.system)


def aim(gearing: BestGearing) -> str:
    """What the speed or time is of."""
    if gearing.mark is not None:
        mark = gearing.mark.measure.short(gearing.mark.value, gearing.system, 6)
        return AIMS["mark"].format(mark=mark)
    if gearing.run_up is None:
        return AIMS["highest"]
    return AIMS["run_up"].format(road=LENGTH.short(gearing.run_up, gearing.system))


@sentence.register(BestGearing)
def best_gearing_sentence(gearing: BestGearing) -> str:
    """The best value and what it is worth."""
    said = {
        "address": gearing.address,
        "best": shown(gearing, gearing.best.value),
        "now": shown(gearing, gearing.now.value),
        "merit": gearing.of_merit.text(gearing.best.merit or 0.0, gearing.system, 4),
        "aim": aim(gearing),
    }
    if gearing.gain is None:
        return WITHOUT.format(**said)
    if gearing.best.value == gearing.now.value:
        return AS_IT_IS.format(**said)
    more = "more" if gearing.mark is None else "less"
    gain = f"{gearing.of_merit.text(gearing.gain, gearing.system, 2)} {more}"
    return BEST.format(**said, gain=gain)


@sentences.register(BestGearing)
def best_gearing_sentences(gearing: BestGearing) -> list[str]:
    """How flat it is, where to start and where to shift."""
    low, high = gearing.flat
    share = f"{FLAT:.1%}"
    flat = FLATNESS.format(low=shown(gearing, low), high=shown(gearing, high), share=share)
    said = [flat if low < high else STEEP.format(share=share), *_other_peaks(gearing)]
    ends = (gearing.tried[0].value, gearing.tried[-1].value)
    said += [EDGE] if gearing.best.value in ends and not gearing.stopped else []
    if gearing.stopped:
        said.append(STOPPED.format(count=len(gearing.tried), wanted=gearing.wanted))
    if gearing.launch_gear is not None and len(gearing.shifts) > 0:
        said.append(LAUNCH.format(gear=gearing.launch_gear))
    return said + [_shift(one, gearing.system) for one in gearing.shifts]


def tried_heading(gearing: BestGearing) -> str:
    """How many were tried, and from where to where."""
    first, last = (shown(gearing, one.value) for one in (gearing.tried[0], gearing.tried[-1]))
    return TRIED.format(count=len(gearing.tried), first=first, last=last)


def _other_peaks(gearing: BestGearing) -> list[str]:
    """Those that come near enough to the best to be worth a thought."""
    best, merit, system = gearing.best.merit or 0.0, gearing.of_merit, gearing.system
    worse = "less" if gearing.mark is None else "more"
    return [
        PEAK.format(
            value=shown(gearing, one.value),
            merit=merit.text(found, system, 4),
            less=merit.text(abs(found - best), system, 2),
            worse=worse,
        )
        for one in gearing.peaks
        if one != gearing.best and abs((found := one.merit or 0.0) - best) <= NEAR * abs(best)
    ]


def _shift(one: Shift, system: str) -> str:
    return SHIFT.format(
        gear=one.gear,
        engine_speed=ENGINE_SPEED.text(one.engine_speed, system, 4),
        road_speed=SPEED.text(one.road_speed, system),
        why=LIMIT if one.at_the_limit else "",
    )
