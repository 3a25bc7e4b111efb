"""An impeller against a printed answer: a question of engineering examinations with its solution,
as read at byjus.com in 2026 (air of 350 K, 16 000 rpm, 0.6 m, slip 0.9, work factor 1.05).
"""

import numpy as np
import pytest

from windwall import physics

pytestmark = pytest.mark.published

DIAMETER, SPEED, INLET = 0.6, 16000 * np.pi / 30, 350.0
SLIP, WORK_FACTOR, EFFICIENCY = 0.9, 1.05, 0.88
HEAT, RATIO_OF_HEATS = 1005.0, 1.4  # J/(kg K), as the solution has them
PRINTED_OUTLET, PRINTED_RATIO = 587.577, 5.15


# The work factor multiplies the slip, as it does the work.
def test_outlet_temperature_of_an_impeller():
    work = physics.impeller_work(DIAMETER, SPEED, SLIP * WORK_FACTOR)
    assert INLET + work / HEAT == pytest.approx(PRINTED_OUTLET, abs=6e-4)


def test_pressure_ratio_of_an_impeller():
    found = physics.impeller_pressure_ratio(
        DIAMETER, SPEED, SLIP * WORK_FACTOR, EFFICIENCY, INLET, HEAT, RATIO_OF_HEATS
    )
    assert found == pytest.approx(PRINTED_RATIO, abs=5e-3)
