"""Numbers that err together: stated in a file, and left by rated figures."""

import json
from pathlib import Path

import numpy as np
import pytest

import windwall as ww
from windwall import _core
from windwall.errors import ScenarioError
from windwall.study.diagnosis import without_menu
from windwall.study.draws import drawn_values, normal_draws
from windwall.study.prior import Prior
from windwall.study.worlds import Situation, uncertain, world_answers

TEXT = Path("scenarios/airfield_cyclecar.json").read_text(encoding="utf-8")
DRAG, ROLLING, MASS = "body/drag_area", "body/rolling_resistance", "body/mass"
COAST = {"between": [DRAG, ROLLING], "correlation": -0.7, "why": "one coast-down gave both"}


def with_correlations(*entries, **more):
    document = json.loads(TEXT) | {"correlations": list(entries)} | more
    return ww.loads(json.dumps(document, indent=1, ensure_ascii=False))


def refused(*entries):
    with pytest.raises(ScenarioError) as wrong:
        with_correlations(*entries)
    return wrong.value.problems


def test_they_are_drawn_together():
    prior = Prior(with_correlations(COAST))
    i, j = prior.addresses.index(DRAG), prior.addresses.index(ROLLING)
    values = prior.to_values(normal_draws(len(prior), 4096))
    assert np.corrcoef(np.log(values[:, [i, j]]).T)[0, 1] == pytest.approx(-0.7, abs=0.02)
    alone = Prior(ww.loads(TEXT))
    assert alone.correlation[i, j] == 0


def test_one_is_saved_as_typed_and_part_of_what_a_file_means():
    car = with_correlations(COAST)
    assert car.document()["correlations"] == [COAST]
    again = ww.loads(car.text())
    assert again.text() == car.text()
    assert again.digest == car.digest
    assert car.digest != ww.loads(TEXT).digest
    assert with_correlations(COAST | {"why": "else"}).digest == car.digest


def test_those_of_upgrades_have_addresses_too():
    fairing = "upgrades/fairing/scale/body/drag_area"
    entry = {"between": [DRAG, fairing], "correlation": 0.4, "why": "of the fairing"}
    car = with_correlations(entry)
    assert kept_by(car) == [entry]
    assert (DRAG, fairing, 0.4) in _core.correlations(car.core)
    assert "of the fairing" not in {one.get("why") for one in kept_by(car.install("fairing"))}


def test_what_becomes_exact_errs_no_more():
    car = with_correlations(COAST, COAST | {"between": [MASS, ROLLING], "correlation": 0.1})
    exact = car.set({DRAG: "0.7 m2"})
    assert [one["between"] for one in exact.document()["correlations"]] == [[MASS, ROLLING]]
    assert "correlations" not in exact.set({MASS: "348 kg"}).document()
    ww.loads(exact.text())


def test_every_mistake_is_told_where_it_stands():
    problems = refused(
        {"between": ["body/drag_aera", ROLLING], "correlation": 0.5},
        {"between": [DRAG, "engine/bore"], "correlation": 0.5},
        {"between": [DRAG], "correlation": 0.5},
        {"between": [DRAG, DRAG], "correlation": 0.5},
        {"between": [DRAG, MASS], "correlation": 1.5},
        {"correlation": 0.5, "betwene": []},
        7,
    )
    said = {one.address: one.message for one in problems}
    assert 'did you mean "body/drag_area"' in said["correlations/1/between/1"]
    assert "no number with a ±" in said["correlations/2/between/2"]
    assert "two addresses" in said["correlations/3/between"]
    assert "always wrong with itself" in said["correlations/4/between"]
    assert "correlations/5/correlation" in said
    assert any(address.startswith("correlations/6") for address in said)
    assert "an object" in said["correlations/7"]
    assert all(one.line > 1 and one.column > 1 for one in problems)


def test_what_nothing_could_be_drawn_from_is_refused_at_the_pair_that_makes_it_so():
    pairs = [
        {"between": [DRAG, ROLLING], "correlation": 0.6},
        {"between": [ROLLING, MASS], "correlation": 0.6},
        {"between": [DRAG, MASS], "correlation": -0.6},
    ]
    (problem,) = refused(*pairs)
    assert problem.address == "correlations/3/correlation"
    assert "cannot be" in problem.message
    strong = [one | {"correlation": 0.9} for one in pairs]
    with_correlations(*strong)  # though any two of them alone would be refused
    (problem,) = refused(*strong[:2], strong[2] | {"correlation": -0.9})
    assert problem.address == "correlations"
    (problem,) = refused(COAST, COAST | {"between": [ROLLING, DRAG]})
    assert "named above already" in problem.message


def rated_car():
    """An engine with a plate, unblown, on the day that its figures are of."""
    document = json.loads(TEXT)
    document["charge_path"] = [document["charge_path"][0] | {"drop": "0 kPa"}]
    document["upgrades"], document["limits"], document["observed"] = [], {}, []
    document["outings"] = []
    return ww.loads(json.dumps(document))


def test_drawn_engines_scatter_as_far_as_their_rated_figures_are_known():
    car = rated_car()
    free = ["breathing/peak_efficiency", "breathing/best_speed", "breathing/fall_off",
            "friction/scale", "combustion/real_cycle_factor", "exhaust/back_pressure"]  # fmt: skip
    known = uncertain(car)
    moved = [known.address.index(f"engine/{key}") for key in free]
    situation = Situation(("engine/torque",), engine_speed=2500 * np.pi / 30, retard=0.0)

    def scatter(prior):
        values = np.repeat(known.value[None], 256, axis=0)
        values[:, moved] = drawn_values(prior, 256)[:, moved]
        torque = world_answers(car, values, [situation]).answers[:, 0]
        return np.nanstd(torque) / np.nanmean(torque)

    together, apart = scatter(Prior(car)), scatter(Prior(car, np.eye(len(known.address))))
    # A figure on a plate is known to 2.5 %; some more comes of what is not linear.
    assert together < 0.035
    assert apart > 1.3 * together


def kept_by(car):
    return car.document().get("correlations", [])


def left_to(car):
    return {frozenset(pair[:2]): pair[2] for pair in _core.correlations(car.core)}


def test_what_rated_figures_leave_outlasts_an_upgrade_and_a_value_of_the_engine():
    car = with_correlations()
    left, scale = left_to(car), "engine/friction/scale"
    assert left
    assert left_to(car.install("fairing")) == pytest.approx(left)
    warmer = car.set({"engine/head_temperature": "180 degC"})
    assert left_to(warmer) == pytest.approx(left)
    assert left_to(ww.loads(warmer.text())) == pytest.approx(left)
    told = left_to(car.set({scale: "1.1 ± 0.05"}))  # which is known from elsewhere now
    assert told == pytest.approx({both: one for both, one in left.items() if scale not in both})


def test_the_file_rules_over_what_rated_figures_leave():
    both = ["engine/breathing/peak_efficiency", "engine/friction/scale"]
    left = {frozenset(pair[:2]): pair[2] for pair in _core.correlations(rated_car().core)}
    assert left[frozenset(both)] != 0
    stated = with_correlations({"between": both, "correlation": 0.25})
    pairs = [pair for pair in _core.correlations(stated.core) if set(pair[:2]) & set(both)]
    assert pairs == [(*both, 0.25)]


def test_a_vehicle_without_its_menu_has_no_correlations_of_it():
    fairing = "upgrades/fairing/scale/body/drag_area"
    car = with_correlations(COAST, {"between": [DRAG, fairing], "correlation": 0.4})
    assert without_menu(car).document()["correlations"] == [COAST]
    assert car.diagnose().explained  # which asks the vehicle without its menu, again and again
    only = with_correlations({"between": [DRAG, fairing], "correlation": 0.4})
    assert "correlations" not in without_menu(only).document()
