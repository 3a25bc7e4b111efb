"""What the model is asked for before anything is measured: speeds of sets, and what gauges read."""

from __future__ import annotations

from functools import cached_property
from math import isfinite
from typing import TYPE_CHECKING

from windwall.quantities.measures import Measure
from windwall.scenario.data import ScenarioData
from windwall.study.prior import Prior
from windwall.study.readings import Sensor, error
from windwall.study.worlds import Situation, answer_measure, world_answers, world_speeds

if TYPE_CHECKING:
    from numpy import ndarray

__all__ = ["Asked"]


class Asked:
    """Columns: the speed of each set, then what each gauge reads; over worlds of one scenario."""

    def __init__(
        self,
        scenario: ScenarioData,
        kits: list[tuple[str, ...]],
        sensors: list[Sensor],
        threads: int,
    ) -> None:
        self.scenario, self.kits, self.sensors = scenario, kits, sensors
        self.prior = Prior(scenario)
        self.threads = threads

    @cached_property
    def read_in_pull(self) -> tuple[str, ...]:
        """Results that gauges read where the pull ends, each once."""
        driven = (one.addresses for one in self.sensors if one.gauge.driven)
        return tuple(dict.fromkeys(address for addresses in driven for address in addresses))

    def of(self, deviations: ndarray) -> ndarray:
        """(worlds, columns) of deviations (worlds, numbers)."""
        import numpy as np

        values = self.prior.to_values(deviations)
        threads, pull = self.threads, Situation(self.read_in_pull)
        speeds = world_speeds(self.scenario, values, self.kits, False, threads).speed
        read = world_answers(self.scenario, values, [pull], False, threads).answers
        return np.concatenate([speeds, read, values], axis=1)

    def columns_of(self, sensor: Sensor) -> list[int | None]:
        """Where its numbers stand; None for an input that is known exactly."""
        first = len(self.kits)
        if sensor.gauge.driven:
            return [first + self.read_in_pull.index(one) for one in sensor.addresses]
        first += len(self.read_in_pull)
        known = list(self.prior.addresses)
        return [first + known.index(one) if one in known else None for one in sensor.addresses]

    @cached_property
    def middle(self) -> ndarray:
        """(columns) of the world in the middle of what is thought."""
        import numpy as np

        return self.of(np.zeros((1, len(self.prior))))[0]

    def can_read(self, sensor: Sensor) -> bool:
        """Whether the model has a number for it."""
        places = (at for at in self.columns_of(sensor) if at is not None)
        return all(isfinite(self.middle[at]) for at in places)

    def errors(self, sensor: Sensor) -> list[float]:
        """Its standard deviations, SI."""
        rows = zip(sensor.gauge.reads, self._values(sensor), self.measures(sensor), strict=True)
        return [error(reading.sigma, value, measure) for reading, value, measure in rows]

    def measures(self, sensor: Sensor) -> list[Measure]:
        """What its numbers measure."""
        of = answer_measure if sensor.gauge.driven else self.scenario.measure
        return [of(address) for address in sensor.addresses]

    def _values(self, sensor: Sensor) -> list[float]:
        places = zip(self.columns_of(sensor), sensor.addresses, strict=True)
        middle, get = self.middle, self.scenario.get
        return [float(get(address) if at is None else middle[at]) for at, address in places]

    def noise(self, sensor: Sensor) -> ndarray:
        """Covariance of its errors (readings, readings)."""
        import numpy as np

        errors = np.array(self.errors(sensor))
        correlation = np.eye(len(errors))
        if len(errors) == 2:
            correlation[0, 1] = correlation[1, 0] = sensor.gauge.joint
        return correlation * np.outer(errors, errors)
