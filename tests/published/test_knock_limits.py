"""The octane rule and the end gas held against published knock limits under boost.

NACA Memorandum Report E-244 (1944), FAA Type Certificate Data Sheet E9CE (2011), ASME ICEF2017-361,
makers' manuals and histories: row by row in data/knock_limits.csv. A row is a pair of states that
knock alike; a judgement is right if it asks for as much more as the second fuel is better by.
"""

import numpy as np
import pytest

from published.knock_limits import knock_limits, known_to, sealed, state, too_much
from windwall import physics

pytestmark = pytest.mark.published

JUDGEMENTS = {"rule": physics.asked_by_rule, "end gas": physics.asked_by_end_gas}
BAND = 5  # of an anchor that was heard
OPEN = [row for row in knock_limits() if not sealed(row)]
CLOSED = [row for row in knock_limits() if sealed(row)]


def excess(rows, judgement):
    return np.array([too_much(row, JUDGEMENTS[judgement]) for row in rows])


def covered(rows, judgement, sigmas):
    bands = np.hypot(BAND, [known_to(row) for row in rows])
    return np.mean(np.abs(excess(rows, judgement)) < sigmas * bands)


@pytest.mark.parametrize("judgement", JUDGEMENTS)
@pytest.mark.parametrize("rows, size", [(OPEN, 5), (CLOSED, 8)], ids=["open", "closed"])
def test_asks_for_about_as_much_more_as_engines_do(rows, size, judgement):
    # On the careful side by up to 5, as the spark and the reserve of what is sold are not printed.
    # Five closed rows have a median size of 7 by the rule, fifteen open ones of 3.
    found = excess(rows, judgement)
    print(judgement, *(f"\n{x:+6.1f}  {row['id']}" for x, row in zip(found, rows, strict=True)))
    print(f"median {np.median(found):+.1f}, median size {np.median(abs(found)):.1f}")
    assert -3 < np.median(found) < 5
    assert np.median(np.abs(found)) < size


@pytest.mark.parametrize("judgement", JUDGEMENTS)
def test_the_band_of_an_anchor_covers_what_is_off(judgement):
    assert covered(OPEN + CLOSED, judgement, 1) >= 0.6
    assert covered(OPEN + CLOSED, judgement, 2) >= 0.9


def test_the_two_judgements_stay_within_their_bands_of_one_another():
    apart = excess(OPEN + CLOSED, "rule") - excess(OPEN + CLOSED, "end gas")
    print(f"median {np.median(apart):+.1f}, median size {np.median(abs(apart)):.1f}")
    assert np.median(np.abs(apart)) < BAND


@pytest.mark.parametrize("speed", [2000, 3500, 5000, 6000])
def test_both_judgements_make_the_same_of_engine_speed(speed):
    """No pair is about engine speed, and time alone would make the delay ask for 19 less at 6000
    than at 2000 rpm. Engines are said to ask for 4 to 8 less (no source): what is left beside the
    rule is what filling makes of the charge.
    """
    made = [
        float(asked(engine_speed=speed * np.pi / 30) - asked(engine_speed=2500 * np.pi / 30))
        for asked in JUDGEMENTS.values()
    ]
    assert made[1] == pytest.approx(made[0], abs=2.5)


def test_one_change_of_mixture_allows_one_ratio_of_pressures():
    """NACA E-244: 1.260 with hot and 1.261 with cool air, at pressures a sixth apart."""
    hot, cool = (r for r in knock_limits() if r["id"].startswith("v12-mixture"))
    allowed = [float(r["pressure_2"]) / float(r["pressure_1"]) for r in (hot, cool)]
    assert allowed[0] == pytest.approx(allowed[1], rel=0.002)
    assert too_much(hot, physics.asked_by_rule) == pytest.approx(
        too_much(cool, physics.asked_by_rule), abs=0.1
    )


def worth_of_water(row, asked):
    wet = state(row, 2)
    return float(asked(**(wet | {"water": 0.0})) - asked(**wet))


def test_water_of_six_tenths_of_the_fuel_is_worth_ten_to_twenty():
    """NACA E-244 allowed 1.38 to 1.80 of the pressure for it. At 30 octane numbers per logarithm
    that is 10 to 18 of them, 14 in the mean.
    """
    rows = [row for row in OPEN if row["water_2"] and row["id"].startswith("v12")]
    ours = [worth_of_water(row, physics.asked_by_rule) for row in rows]
    pressures = [float(row["pressure_2"]) / float(row["pressure_1"]) for row in rows]
    theirs = 30 * np.log(pressures)
    print(np.round(ours, 1), np.round(theirs, 1))
    assert np.all((np.array(ours) > 10) & (np.array(ours) < 18))
    assert np.mean(ours) == pytest.approx(np.mean(theirs), abs=2.5)


@pytest.mark.memory
def test_rows_from_memory_are_on_the_careful_side():
    """Performance numbers, water and methanol in aero engines, and two cars; from memory. Of the
    fluids no flow is known well, and they are credited less than was rated on them.
    """
    rows = knock_limits(memory=True)
    for judgement in JUDGEMENTS:
        found = excess(rows, judgement)
        print(judgement, *(f"\n{x:+6.1f}  {r['id']}" for x, r in zip(found, rows, strict=True)))
        assert 0 < np.median(found) < 12
