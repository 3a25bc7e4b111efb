"""From a file to a speed, a reason and a ranked menu, the way a builder types it."""

import pickle
import subprocess
import sys

import numpy as np
import pytest

import windwall as ww


def test_a_speed_a_reason_and_two_accounts(best):
    assert 20 < best.run_up_speed < best.speed < 80
    assert best.limited_by in {"drag", "rev_limit", "grip", "knock"}
    for account in (best.shaft, best.heat):
        assert account.iloc[0] == pytest.approx(account.iloc[1:].sum(), rel=1e-9)


def test_set_and_get_speak_si_and_text(car):
    assert car.get("charge_path/butterfly/bore") == 0.036
    heavier = car.set({"body/mass": "400 kg"})
    assert heavier.get("body/mass") == 400.0
    assert car.get("body/mass") == 340.0  # the first one is unchanged
    with pytest.raises(ww.ScenarioError, match="body/mass"):
        car.set({"body/mass": "400 km"})


def test_a_float_out_of_range_is_read_to_the_builder_both_ways(car):
    with pytest.raises(ww.ScenarioError, match="rpm"):
        car.set({"engine/rev_limit": 6000.0})


def test_installing_is_what_the_menu_says(car):
    fitted = car.install("small_pulley")
    assert fitted.get("charge_path/roots/drive_ratio") == 1.6
    with pytest.raises(ValueError, match="no upgrade"):
        car.install("smal_pulley")


def test_no_answer_says_so_and_gives_no_number(stuck):
    answer = stuck.top_speed()
    assert answer.status != "solved"
    assert "clutch" in answer.sentence
    with pytest.raises(ww.NoAnswer):
        _ = answer.speed


def test_pickles_keep_vehicle_and_numbers(car, best):
    again = pickle.loads(pickle.dumps(car))
    assert again.digest == car.digest
    assert pickle.loads(pickle.dumps(best)).speed == best.speed


def test_the_curve_is_the_textbook_plot(car):
    curve = car.full_throttle_curve()
    assert set(np.unique(curve["gear"])) == {1, 2, 3, 4}


def test_importing_stays_light():
    heavy = "pandas xarray matplotlib"
    code = f"import sys, windwall; print([m for m in '{heavy}'.split() if m in sys.modules])"
    said = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, timeout=60
    )
    assert said.stdout.strip() == "[]"


def test_a_ranking_sums_its_shares(ranking):
    text = str(ranking)
    for words in ("Every upgrade", "fair share", "Best set for every budget", "The goal", "Care"):
        assert words in text
