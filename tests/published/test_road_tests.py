"""Drives of cars by their power and weight against the road tests of Motor Trend 1974 (quarter
mile) and of 1972 to 1982 (0 to 60 mph; E. Ramos and D. Donoho, ASA Data Exposition 1983).

One set of assumptions, in road_tests.py, was committed before the first run.
"""

from functools import cache

import numpy as np
import pytest
from scipy.stats import spearmanr

from published.road_tests import QUARTER_MILE, SIXTY, car, quarter_miles, sixties

pytestmark = pytest.mark.published


@cache
def over_quarter_mile(horsepower, weight_lb):
    return car(horsepower, weight_lb).time_over(f"{QUARTER_MILE} m")


@cache
def to_sixty(horsepower, weight_lb):
    return car(horsepower, weight_lb).time_to(f"{SIXTY} m/s")


def compared(table, key, model):
    """Seconds of the model and of the print, row by row."""
    rows = [(row["horsepower"], row["weight_lb"], row[key]) for row in table]
    return np.array([(model(power, weight), printed) for power, weight, printed in rows]).T


def test_quarter_miles_of_1974(evidence, distribution):
    model, printed = compared(quarter_miles(), "quarter_mile_s", over_quarter_mile)
    errors = model / printed - 1
    distribution("Road tests of the 1970s", "quarter mile, 1974", errors, within=0.045)
    name = "quarter mile of 32 cars of 1974"
    evidence.at_most(f"{name}: median error", abs(np.median(errors)), 0.03)
    evidence.at_most(f"{name}: median size", np.median(np.abs(errors)), 0.045)
    order = spearmanr(model, printed).statistic
    evidence.at_least(f"{name}: Spearman's rank correlation", order, 0.82)


def test_sixty_of_1972_to_1982(evidence, distribution):
    """Order and scatter only: the offset is the launch, the gears and the converter that no row
    prints, and no assumption is bent to take it away."""
    model, printed = compared(sixties(), "sixty_mph_s", to_sixty)
    errors = model / printed - 1
    distribution("Road tests of the 1970s", "0 to 60 mph, 1972-82", errors, within=0.115)
    name = f"0 to 60 mph of {len(errors)} cars of 1972 to 1982"
    order = spearmanr(model, printed).statistic
    evidence.at_least(f"{name}: Spearman's rank correlation", order, 0.73)
    evidence.at_most(f"{name}: scatter of its logarithm", np.std(np.log(model / printed)), 0.115)
    evidence.at_most(f"{name}: median error, stated and left", abs(np.median(errors)), 0.20)
