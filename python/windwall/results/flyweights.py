"""Weights and spring of a belt drive, fitted to the engine speeds that are wanted of it."""

from __future__ import annotations

from windwall.quantities.si import SI
from windwall.results.outcome import Outcome

__all__ = ["Flyweights"]


class Flyweights(Outcome):
    """The mass of one weight, and where an engagement and an end of the shift were wanted, the
    spring. `changes` fits them: `car.set(car.flyweights("4200 rpm").changes)`.
    """

    __slots__ = ()
    question = "flyweights"

    @property
    def cautions(self) -> tuple[()]:
        return ()

    @property
    def changes(self) -> dict[str, SI]:
        """Address and value of everything that is to be changed. Where no spring holds the end that
        was wanted, it is the ramp that is changed.
        """
        made = {"weight_mass": self.weight_mass, "spring_preload": self.spring_preload}
        if self["end_torque"] is not None:
            softest = self["spring_rate"] is None
            key = "ramp_closed" if softest else "spring_rate"
            made[key] = self[key]
        return {f"{self.address}/{key}": SI(value) for key, value in made.items()}
