"""What the weights of a belt drive have to be."""

from __future__ import annotations

from windwall.quantities.measures import ENGINE_SPEED, TORQUE, Measure
from windwall.results.flyweights import Flyweights
from windwall.results.views import sentence

__all__ = [
    "FORCE", "MASS", "NO_SPRING", "NO_TORQUE", "RAMP", "RATE", "SPRING", "WEIGHTS",
    "flyweights_sentence",
]  # fmt: skip

MASS, FORCE = Measure("mass", "g"), Measure("force", "N")
RATE, RAMP = Measure("stiffness", "N/mm"), Measure("plain number", "")
WEIGHTS = (
    "Weights of {mass} and a spring of {preload} grip the belt at {engagement} and begin to shift "
    "it as wanted, where the flywheel gives {torque}."
)
SPRING = (
    " A rate of {rate} holds the end of the shift; or, with the spring there is, a ramp of {ramp} "
    "there."
)
NO_SPRING = (
    " No spring holds an end so slow, since none pulls: with the one there is, the ramp has to be "
    "{ramp} there."
)
NO_TORQUE = "The engine has no answer at full throttle at one of these speeds."


@sentence.register(Flyweights)
def flyweights_sentence(answer: Flyweights) -> str:
    """The weights, and the spring or the ramp where the end of the shift was wanted."""
    system = answer.scenario_info.system
    if not answer.answered:
        return NO_TORQUE
    made = WEIGHTS.format(
        mass=MASS.text(answer.weight_mass, system, 3),
        preload=FORCE.text(answer.spring_preload, system, 3),
        engagement=ENGINE_SPEED.text(answer.engagement_speed, system, 4),
        torque=TORQUE.text(answer.torque, system),
    )
    if answer["ramp_closed"] is None:
        return made
    ramp = RAMP.short(answer.ramp_closed, system, 3)
    if answer["spring_rate"] is None:
        return made + NO_SPRING.format(ramp=ramp)
    return made + SPRING.format(rate=RATE.text(answer.spring_rate, system, 3), ramp=ramp)
