"""A belt drive of variable ratio as its file states it, in three depths, and its questions."""

import copy
import json

import numpy as np
import pytest

import windwall as ww
from python.samples import DOCUMENT

WEIGHTS = {
    "weight_mass": "180 g",
    "weight_radius": "50 mm",
    "ramp": 0.6,
    "spring_preload": "400 N",
    "spring_rate": "25 N/mm",
}
CAM = {
    "spring_preload": "500 N",
    "spring_rate": "25 N/mm",
    "cam_radius": "50 mm",
    "cam_angle": "35 deg",
}
SHEAVES = {"centre_distance": "270 mm", "belt_length": "1000 mm", "friction": 0.5}
BY_FORCES = {"sheaves": SHEAVES, "flyweights": WEIGHTS, "torque_cam": CAM}
RPM = np.pi / 30


def car(behind=(), **stated):
    belt = {"id": "belt", "kind": "belt_cvt", "low_ratio": 2.8, "high_ratio": 0.8}
    belt |= {"rated_torque": "80 N m"} | stated
    made = copy.deepcopy(DOCUMENT) | {"upgrades": [], "observed": []}
    made["driveline"] = [belt, *(behind or [{"id": "axle", "kind": "final_drive", "ratio": 3.4}])]
    return ww.loads(json.dumps(made))


def test_weights_and_springs_hold_the_engine_where_it_shifts():
    answer = car(**BY_FORCES).top_speed()
    assert answer.answered
    assert answer.point.variator.clamp_force > 500
    assert 0 < answer.point.variator.slip < 0.05
    assert "variator/temperature" not in answer.unrated  # a belt has the limit of its class


def test_a_line_between_two_speeds_lies_between_both():
    slow, fast = (car(shift_speed=speed).top_speed() for speed in ("3800 rpm", "4600 rpm"))
    between = car(shift_speed="3800 rpm", shift_end_speed="4600 rpm").top_speed()
    speeds = sorted([slow.engine_speed, fast.engine_speed])
    assert speeds[0] <= between.engine_speed <= speeds[1]


def test_fitted_weights_hold_what_was_wanted():
    made = car(**BY_FORCES)
    fit = made.flyweights("3600 rpm", "4800 rpm", "2200 rpm")
    fitted = made.set(fit.changes)
    curve = fitted.full_throttle_curve(gear=1, points=61)
    shifting = curve[curve["variator/ratio"].between(0.8001, 2.7999)]
    assert shifting["engine/speed"].iloc[0] == pytest.approx(3600 * RPM, rel=0.02)
    assert shifting["engine/speed"].iloc[-1] == pytest.approx(4800 * RPM, rel=0.02)
    assert fit.engagement_speed == pytest.approx(2200 * RPM, rel=1e-9)
    assert "g" in fit.sentence
    assert fit.summary() == fit.sentence


def test_more_weight_for_less_speed():
    made = car(**BY_FORCES)
    masses = [made.flyweights(f"{speed} rpm").weight_mass for speed in (3500, 4000, 4500)]
    assert masses == sorted(masses, reverse=True)
    assert set(made.flyweights("4000 rpm").changes) == {
        "driveline/belt/flyweights/weight_mass",
        "driveline/belt/flyweights/spring_preload",
    }


def test_no_spring_pulls():
    fit = car(**BY_FORCES).flyweights("4200 rpm", "2500 rpm")
    assert fit["spring_rate"] is None
    assert "No spring" in fit.sentence
    assert "driveline/belt/flyweights/ramp_closed" in fit.changes


def test_what_cannot_be_fitted_is_said():
    with pytest.raises(ww.ScenarioError, match="flyweights and torque_cam"):
        car(shift_speed="4200 rpm").flyweights("4000 rpm")
    with pytest.raises(ww.ScenarioError, match="gripped before it shifts"):
        car(**BY_FORCES).flyweights("3000 rpm", engagement_speed="3500 rpm")
    with pytest.raises(ww.ScenarioError, match="what"):
        car(**BY_FORCES).flyweights(3000)


@pytest.mark.parametrize(
    ("stated", "complaint"),
    [
        ({}, "either shift_speed is needed"),
        (BY_FORCES | {"shift_speed": "4200 rpm"}, "one or the other"),
        ({"sheaves": SHEAVES, "flyweights": WEIGHTS}, "stated together"),
        ({"flyweights": WEIGHTS, "torque_cam": CAM}, "balance at radii"),
        ({"shift_speed": "4200 rpm", "shift_end_speed": "1500 rpm"}, "slow faster"),
        ({"shift_speed": "4200 rpm", "sheaves": SHEAVES}, "clamp_force"),
    ],
)
def test_half_a_belt_drive_is_refused(stated, complaint):
    with pytest.raises(ww.ScenarioError, match=complaint):
        car(**stated)


def test_it_starts_in_the_high_gear_behind_the_belt():
    """Belt, box and chain are one train: with the low gear left out it sets out in the high one."""
    chain = {"id": "chain", "kind": "chain", "teeth_front": 15, "teeth_rear": 50}
    box = {"id": "box", "kind": "gearbox", "ratios": [1.8, 1.0]}
    both = car([box, chain], **BY_FORCES).top_speed()
    high = car([box | {"ratios": [1.0]}, chain], **BY_FORCES).top_speed()
    assert both.answered
    assert high.answered
    assert (both.run_up.start_gear, both.run_up.gear) == (1, both.gear)
    assert high.run_up.time > both.run_up.time
    assert high.speed <= both.speed * (1 + 1e-9)
    assert high.belt.ratio < 2.8
