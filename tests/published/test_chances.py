"""Chances over common draws, against independent draws of NumPy and SciPy: of a vehicle that is
quick to solve; `tests/python/test_drawn.py` holds the blown one against them in the long run.
"""

import json
from pathlib import Path

import pytest

from published.chances import farthest, within
from windwall.study.draws import FOR_CHANCES

pytestmark = pytest.mark.published
SETS = ((), ("fairing",))
FAIRING = {"id": "fairing", "scale": {"body/drag_area": "0.88 ± 0.03"}}


@pytest.fixture(scope="module")
def text():
    microcar = json.loads(Path("scenarios/village_microcar.json").read_text(encoding="utf-8"))
    return json.dumps(microcar | {"upgrades": [FAIRING]})


# A share of 256 independent worlds has a standard error of 3 %, of 1024 of 1.6 %. Even draws have
# half of that, measured over thirty seeds of this vehicle: 1.6 % and 0.8 %. That 256 are within 6 %
# is four of these, so that it fails only where something is broken. Of 1024 the farthest of ten
# chances of one seed was seen at 1.46 and, one world more over the goal, at 1.56 %: it is held to
# three standard errors, and that a chance is within 1.5 % by the test below.
@pytest.mark.parametrize(("draws", "most"), [(256, 0.06), (FOR_CHANCES, 0.024), (4096, 0.015)])
def test_the_chance_of_a_goal_agrees_with_independent_draws(text, draws, most):
    assert farthest(text, SETS, draws) <= most


def test_nor_does_that_hang_on_the_seed(text):
    """1.5 % is two standard errors of what a chance is counted over: 95 of 100 were within it. Of
    eight seeds nine tenths, since ten chances of one seed go together; of 256 draws 65 of 100 were.
    """
    assert within(text, SETS, FOR_CHANCES, 0.015, range(8)) >= 0.9
