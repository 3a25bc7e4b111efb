"""The top speed of a vehicle, and everything that explains it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from windwall.results.account import Account
from windwall.results.entry import Gain, Use
from windwall.results.outcome import Outcome
from windwall.results.record import Record
from windwall.results.views import frame, sentences

if TYPE_CHECKING:
    import pandas

__all__ = ["TopSpeed"]


class TopSpeed(Outcome):
    """How fast, why no faster, where the watts go. `speed` is where full throttle stops
    accelerating; `dir()` lists what else there is, and each is explained by its row.
    """

    __slots__ = ()
    question = "top_speed"
    pictures = ("accounts", "stations")
    kinds = Outcome.kinds | {"shaft": Use, "heat": Use, "sensitivities": Gain}

    @property
    def run_up_speed(self) -> float | None:
        """Speed at the end of the goal's road, from rest, m/s; None where it names no road."""
        return self._of_run("speed")

    @property
    def run_up_time(self) -> float | None:
        """Time over the goal's road, s; no time is lost in shifts."""
        return self._of_run("time")

    def _of_run(self, key: str) -> float | None:
        run = self.run_up
        return run[key] if run else None

    @property
    def goal_speed(self) -> float:
        """The speed that goals and rankings go by: after the run-up where one is named, m/s."""
        run = self.run_up_speed
        return self.speed if run is None else run

    @property
    def next_limit(self) -> str:
        """What would bind next, and how far away it is."""
        return sentences(self)[1]

    def account(self, name: str) -> Account:
        """Where the watts go: `shaft` or `heat`."""
        if not self.answered:
            raise self.no_answer()
        return Account(name, self[name], self.scenario_info)

    @property
    def shaft(self) -> pandas.Series:
        """Watts at the crank and what becomes of them; `indicated` is the sum of the others."""
        return frame(self.account("shaft"))

    @property
    def heat(self) -> pandas.Series:
        """Watts in the fuel and where they end as heat; the others add up to `fuel` as far as the
        energy balances of engine and parts agree.
        """
        return frame(self.account("heat"))

    @property
    def knock(self) -> Record:
        """Spark and knock margin at the balance speed."""
        return self.point.knock

    @property
    def unrated(self) -> tuple[str, ...]:
        """Addresses for which no rating is given, so that nothing is said about them."""
        return self["unrated"]
