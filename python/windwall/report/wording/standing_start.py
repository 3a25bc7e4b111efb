"""How far a driven run ends below the quick top speed."""

from __future__ import annotations

from windwall.quantities.measures import LENGTH, SPEED
from windwall.results.standing_start import Shortfall
from windwall.results.views import sentence

__all__ = ["AS_FAST", "BELOW", "LEAST", "OVER", "UNTIL", "WHY", "shortfall_sentence"]

OVER = "Driven from standstill over {road}"
UNTIL = "Driven from standstill until it gets no faster"
BELOW = "{how}, it ends at {driven}: {below} below the {quick} of top_speed(), {why}."
AS_FAST = "{how}, it ends at {driven}, no slower than the {quick} of top_speed()."
WHY = "which loses no time in shifts and takes everything as warm as in a long pull"
LEAST = 1e-3  # m/s, below which nobody calls it slower


@sentence.register(Shortfall)
def shortfall_sentence(one: Shortfall) -> str:
    """Both speeds and what lies between."""
    system = one.system
    how = UNTIL if one.run_up is None else OVER.format(road=LENGTH.short(one.run_up, system))
    said = {"how": how, "driven": SPEED.text(one.driven, system, 4)}
    said["quick"] = SPEED.text(one.quick, system, 4)
    if one.speed < LEAST:
        return AS_FAST.format(**said)
    return BELOW.format(**said, below=SPEED.text(one.speed, system, 2), why=WHY)
