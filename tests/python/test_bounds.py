"""Numbers of points that no machine can serve are refused, not obeyed."""

import json

import pytest

import windwall as ww
from python.samples import DOCUMENT

CAR = ww.loads(json.dumps(DOCUMENT))


@pytest.mark.parametrize("points", [0, 10**9])
def test_a_curve_has_some_points(points):
    with pytest.raises(ww.ScenarioError, match="1 to 10000 points"):
        CAR.full_throttle_curve(points=points)
