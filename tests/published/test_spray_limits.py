"""What ends a spray: dilution (Metghalchi and Keck 1982), quench, and what was measured of water
and knock (NACA WR E-244).
"""

import json
from math import pi

import numpy as np
import pytest

import windwall as ww
from published.test_exhaust_heat import bench
from windwall import physics, si

pytestmark = pytest.mark.published


def wet(rated_flow):
    """Water through a nozzle behind the plate, at 5000 rpm."""
    document = bench().document()
    document["charge_path"].append(
        {
            "id": "mist",
            "kind": "evaporative_injection",
            "blend_by": "volume",
            "methanol": "0 %",
            "rated_flow": f"{rated_flow} cm3/min",
            "pump_pressure": "7 bar",
            "rated_pressure": "7 bar",
        }
    )
    return ww.loads(json.dumps(document)).operating_point(si(5000 * pi / 30))


def test_a_flame_slows_by_twice_its_share_of_burned_gas():
    """Metghalchi and Keck, Combustion and Flame 48 (1982) 191, abstract: 1 - 2.1 f, to 20 %, within
    10 %. The duration goes with the 0.85th power of that, so 20 % burns 1.5 times as long as 5 %.
    """
    for share in (0.05, 0.10, 0.15, 0.20):
        speed = physics.slowed_burn(share) ** (-1 / 0.85)
        theirs = (1 - 2.1 * share) / (1 - 2.1 * 0.05)
        assert speed == pytest.approx(theirs, rel=1e-9)


@pytest.mark.memory
def test_dilution_is_useful_to_a_quarter():
    """Useful exhaust-gas recirculation is 10 to 25 % (Abd-Alla 2002, abstract); it ends at 20 to
    30 % (from memory).
    """
    assert physics.share_that_burns(0.20) == 1
    assert physics.share_that_burns(0.25) == 1
    assert physics.share_that_burns(0.33) < 0.5
    assert physics.share_that_burns(0.45) == 0


def test_power_over_spray_has_an_end():
    """Water up to the fuel's own mass costs an engine that does not knock a few per cent (computed
    cycles with Cantera: 0 to 4 %); several times as much puts the fire out, where a table of
    thousands of litres would otherwise promise power.
    """
    dry = wet(1).point.engine
    ratios, powers = [], []
    for flow in (20, 60, 120, 240, 480, 1000):
        held = wet(flow)
        found = held.point.engine
        ratios.append(held.point.charge_path.mist.liquid_flow / found.fuel_flow)
        powers.append(found.power / dry.power)
    print(np.round(ratios, 2), np.round(powers, 3))
    assert all(0.93 < p < 1.08 for r, p in zip(ratios, powers, strict=True) if r < 1)
    assert powers[-1] < 0.3
    assert "wet_plug" in {caution.about for caution in held.cautions}
    best = int(np.argmax(powers))
    assert all(a >= b - 1e-9 for a, b in zip(powers[best:], powers[best + 1 :], strict=False))


def test_knock_is_credited_to_one_and_a_half_of_the_fuel():
    """NACA WR E-244 measured allowed pressures to 0.6 of water on fuel; octane numbers rise to 1.5
    (Brusca and others, Heliyon 5 (2019) e01259, abstract). More is credited with nothing.
    """
    margins = [wet(flow).point.knock.margin for flow in (1, 50, 100, 600, 1000)]
    # Half of the fuel 10 to 15, as much again a few more, several times as much no more.
    assert 10 < margins[1] - margins[0] < 15
    assert 2 < margins[2] - margins[1] < 5
    assert margins[4] - margins[3] < 0.25 * (margins[2] - margins[1])
