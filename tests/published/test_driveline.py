"""Gearing, stage losses and the chain's ripple against builders' tables, textbooks and Pint.

Mannering and Washburn, Principles of Highway Engineering and Traffic Analysis, 5th ed. (2013),
Problem 2.7 with a solution on a question-and-answer page; an encyclopaedia of machine elements for
vocational schools (bs-wiki) on the polygon effect.
"""

import numpy as np
import pint
import pytest

from windwall import physics

pytestmark = pytest.mark.published

unit = pint.UnitRegistry()


def si(value, text):
    return unit.Quantity(value, text).to_base_units().magnitude


def miles_an_hour(engine_speed, ratio, radius, slip=0.0):
    speed = physics.overall_ratio_speed(si(engine_speed, "rpm"), ratio, si(radius, "inch"), slip)
    return unit.Quantity(speed, "m/s").to("mph").magnitude


class TestBuilders:
    @pytest.mark.parametrize(
        ("engine_speed", "ratio", "diameter", "printed", "digit"),
        [
            (7150, 19.75, 26, 28, 0.5),  # 60/13 teeth and 4.28
            (6500, 2.47, 28, 219, 0.5),  # a land-speed car, top gear direct
            (6000, 5.5, 20, 64, 1.0),  # cut, not rounded
        ],
    )
    def test_speeds_that_builders_print(self, engine_speed, ratio, diameter, printed, digit):
        """Three builders' pages, mph."""
        assert miles_an_hour(engine_speed, ratio, diameter / 2) == pytest.approx(printed, abs=digit)

    @pytest.mark.parametrize(
        ("gearbox", "large", "small"),
        [(3.337, 38, 35), (1.995, 63, 58), (1.418, 89, 83), (1.00, 127, 117)],
    )
    def test_a_four_speed_box_on_two_tyres(self, gearbox, large, small):
        """A kit car's table: 6800 rpm, axle 3.636, tyres of 72 and 66.5 in around, mph."""
        for around, printed in ((72, large), (66.5, small)):
            found = miles_an_hour(6800, gearbox * 3.636, around / (2 * np.pi))
            # The table cuts to whole mph; its 58 is cut from 58.96, with 66.42 in of 954 turns.
            assert -0.05 < found - printed < 1.05


class TestMannering:
    """Problem 2.7: top speed 130 mi/h in third, ratio 2.5, wheels of 12.6 in, 3 % slip, efficiency
    0.88; the solution prints 4469.15 rev/min, 923.4 N of drag and 134.33 N m."""

    def test_engine_speed(self):
        found = physics.overall_ratio_engine_speed(si(130, "mph"), 2.5, si(12.6, "inch"), 0.03)
        assert unit.Quantity(found, "rad/s").to("rpm").magnitude == pytest.approx(4469.15, abs=0.05)

    def test_engine_torque(self):
        drag = physics.air_drag(si(0.28 * 19.8, "ft**2"), si(0.00206, "slug/ft**3"), si(130, "mph"))
        assert drag == pytest.approx(923.4, abs=0.05)
        at_wheels = physics.stage_torque(134.33, 468.0, 2.5, 0.88)
        assert at_wheels / si(12.6, "inch") == pytest.approx(drag, rel=1e-4)


class TestPolygonEffect:
    """bs-wiki on chains: the unevenness is 2 % at 16 teeth and 1.2 % at 20."""

    @pytest.mark.parametrize(("teeth", "printed", "digit"), [(16, 2.0, 0.1), (20, 1.2, 0.05)])
    def test_as_printed(self, teeth, printed, digit):
        assert 100 * physics.chain_speed_ripple(teeth) == pytest.approx(printed, abs=digit)

    def test_is_the_dip_of_a_polygon(self):
        """Numbers by NumPy: the lever arm of the chain over one tooth's turn of the sprocket."""
        for teeth in (11, 13, 17, 21):
            turn = np.linspace(-np.pi / teeth, np.pi / teeth, 10001)
            arm = np.cos(turn)
            assert physics.chain_speed_ripple(teeth) == pytest.approx(1 - arm.min(), rel=1e-9)
