"""Injector sizing as an injector manual prints it, with units by pint.

Rated flow = power x brake specific fuel consumption / (injectors x duty), with 0.5 lb/(hp h) and a
duty of at most 0.90 (section on sizing of an injector manual). And the orifice law, by fluids.
"""

import numpy as np
import pytest

from windwall import physics

pytestmark = pytest.mark.published


@pytest.fixture(scope="module")
def units(oracle):
    return oracle("pint").UnitRegistry()


@pytest.mark.parametrize("power, injectors", [(300, 8), (200, 4), (45, 1), (60, 2)])
@pytest.mark.parametrize("rpm", [3000, 6500])
def test_sizing_formula(units, power, injectors, rpm):
    fuel = (power * units.hp * 0.5 * units.lb / units.hp / units.hour).to("kg/s").magnitude
    manual = (power * 0.5 / (injectors * 0.90) * units.lb / units.hour).to("kg/s").magnitude
    speed = rpm * np.pi / 30
    pulse = physics.injector_pulse_width(fuel, speed, manual / 745, 3e5, 3e5, 745, 0.0, injectors)
    # The manual leaves the dead time out.
    assert physics.injector_duty(pulse, speed) == pytest.approx(0.90, rel=1e-9)


def test_a_pulse_may_last_two_turns(units):
    rpm = 6000 * units.turn / units.minute
    cycle = (2 * units.turn / rpm).to("s").magnitude
    assert physics.injector_duty(cycle, rpm.to("rad/s").magnitude) == pytest.approx(1, rel=1e-12)


@pytest.mark.parametrize("drop", [1.5e5, 2.4e5, 3.4e5, 4e5])
def test_flow_follows_the_orifice_law(oracle, drop):
    # A small sharp orifice in a wide pipe, discharge coefficient fixed: ISO 5167 form in fluids.
    fluids = oracle("fluids")

    def flow(p):
        return fluids.flow_meter.flow_meter_discharge(
            D=0.02, Do=0.0005, P1=p + 1e5, P2=1e5, rho=745.0, C=0.8, expansibility=1.0
        )

    args = {"fuel_flow": 1e-3, "engine_speed": 500, "rated_flow": 7e-6, "rated_pressure": 3e5}
    wide, here = (
        physics.injector_pulse_width(
            **args, pressure_drop=p, fuel_density=745, dead_time=0.0, count=1
        )
        for p in (3e5, drop)
    )
    assert wide / here == pytest.approx(flow(drop) / flow(3e5), rel=1e-6)
