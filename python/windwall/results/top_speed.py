"""The top speed of a vehicle, and everything that explains it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from windwall.results.account import Account
from windwall.results.diagnosis import Diagnosis
from windwall.results.entry import Gain, Margins, Passed
from windwall.results.knock import KnockBand
from windwall.results.outcome import Outcome
from windwall.results.record import Record
from windwall.results.views import document, frame, sentences, summary

if TYPE_CHECKING:
    import pandas


class TopSpeed(Outcome):
    """How fast, why no faster, where the watts go. Numbers are SI; printing shows the usual units.

    A number read off an outcome that has no answer raises `NoAnswer` with its sentence.
    """

    @property
    def speed(self) -> float:
        """The balance speed, m/s: where full throttle stops accelerating."""
        return self._number("speed")

    @property
    def run_up_speed(self) -> float | None:
        """Speed at the end of the goal's road, from rest, m/s; None where it names no road."""
        run = self._number("run_up")
        return run["speed"] if run else None

    @property
    def run_up_time(self) -> float | None:
        """Time over the goal's road, s; no time is lost in shifts."""
        run = self._number("run_up")
        return run["time"] if run else None

    @property
    def start_gear(self) -> int | None:
        """The gear that a run over the goal's road starts in, from 1; None where it names none."""
        run = self._number("run_up")
        return run["start_gear"] if run else None

    @property
    def goal_speed(self) -> float:
        """The speed that goals and rankings go by: after the run-up where one is named, m/s."""
        run = self.run_up_speed
        return self.speed if run is None else run

    @property
    def gear(self) -> int:
        """The gear in use at the balance speed, from 1."""
        return self._number("gear")

    @property
    def engine_speed(self) -> float:
        """rad/s at the balance speed."""
        return self._number("engine_speed")

    @property
    def opening(self) -> float:
        """Share of the throttle's travel there: below 1 where knock holds it back."""
        return self._number("opening")

    @property
    def limited_by(self) -> str:
        """One word: drag, rev_limit, grip, knock, torque_step, no_answer or standstill."""
        return self._numbers["limited_by"]

    @property
    def next_limit(self) -> str:
        """What would bind next, and how far away it is."""
        return sentences(self)[1]

    def account(self, name: str) -> Account:
        """Where the watts go: `shaft` or `heat`."""
        return Account(name, self._number(name))

    @property
    def shaft(self) -> pandas.Series:
        """Watts at the crank and what becomes of them; `indicated` is the sum of the others."""
        return frame(self.account("shaft"))

    @property
    def heat(self) -> pandas.Series:
        """Watts in the fuel and where they end as heat; `fuel` is the sum of the others."""
        return frame(self.account("heat"))

    @property
    def exhaust_temperature(self) -> float:
        """K, of what the heat account leaves to the exhaust."""
        return self._number("exhaust_temperature")

    @property
    def knock(self) -> Record:
        """Spark and knock margin at the balance speed."""
        return self.point.knock

    @property
    def knock_band(self) -> KnockBand | None:
        """The margin with its band; `word` is likely, marginal or unlikely."""
        return KnockBand.of(self.knock, self._info.knock_sigma)

    @property
    def margins(self) -> Margins:
        """What is left at the balance speed until nothing is left of the knock margin."""
        return Margins(self._number("margins"), self._info)

    @property
    def sensitivities(self) -> list[Gain]:
        """What small changes add, each found by solving again."""
        return [Gain(one, self._info) for one in self._number("sensitivities")]

    @property
    def passed(self) -> list[Passed]:
        """Limits passed on the way up through the gears or at the balance speed."""
        return [Passed(one, self._info) for one in self._number("passed")]

    @property
    def unrated(self) -> list[str]:
        """Addresses for which no rating is given, so that nothing is said about them."""
        return list(self._numbers["unrated"])

    def to_dict(self, diagnosis: Diagnosis | None = None) -> dict[str, Any]:
        """Everything as plain numbers in SI, ready for JSON; with `car.diagnose()`, that too."""
        return document(self, diagnosis=diagnosis)

    def summary(self, diagnosis: Diagnosis | None = None) -> str:
        """As text. Nothing is solved for it; `car.diagnose()` puts what was observed beside it."""
        return summary(self, diagnosis=diagnosis)
