"""A scenario is a value: what changes it makes another one."""

import json
import pickle

import pytest

import windwall as ww


def test_it_reads_from_text_bytes_and_file(document, file):
    text = json.dumps(document)
    assert ww.loads(text) == ww.loads(text.encode()) == ww.load(file)
    assert ww.load(file).source == str(file)


def test_values_are_si_words_lists_or_none(car):
    assert car.get("day/temperature") == pytest.approx(301.15)
    assert car.get("engine/spark/policy") == "hold_margin"
    assert car.get("driveline/box/ratios") == [3.2, 2.0, 1.45, 1.1]
    assert car.get("driveline/box/ratios/3") == 1.45
    assert car.get("day/altitude") is None


def test_an_unknown_address_names_the_near_one(car):
    with pytest.raises(ww.ScenarioError, match='did you mean "body/mass"'):
        car.get("body/mas")
    with pytest.raises(ww.ScenarioError, match="result, not an input"):
        car.get("manifold/boost")


def test_set_takes_texts_floats_words_and_nothing(car):
    changed = car.set(
        {
            "body/mass": "300 ± 4 kg",
            "engine/bore": 0.081,
            "tyres/driven_axle": "front",
            "goal/run_up": None,
        }
    )
    assert changed.get("body/mass") == 300
    assert changed.sigma("body/mass") == 4
    assert changed.get("engine/bore") == 0.081
    assert changed.get("tyres/driven_axle") == "front"
    assert changed.get("goal/run_up") is None
    assert changed.top_speed().run_up_speed is None
    assert car.get("body/mass") == 340


def test_set_reports_everything_that_is_wrong(car):
    with pytest.raises(ww.ScenarioError) as caught:
        car.set({"body/mass": "3 m", "engine/bore": 3.0, "nothing": 1})
    assert [problem.address for problem in caught.value.problems] == [
        "body/mass",
        "engine/bore",
        "nothing",
    ]
    assert "3 m is about 3000 mm and outside 20 to 160 mm" in str(caught.value)


def test_what_is_stated_is_told_from_defaults(car):
    assert car.given("body/mass")
    assert not car.given("engine/lambda")
    assert car.sigma("engine/lambda") == pytest.approx(0.04)


def test_the_menu_is_listed_and_shrinks(car):
    assert list(car.upgrades) == ["intercooler", "small_pulley", "fairing"]
    assert car.upgrades["small_pulley"].cost == 45
    fitted = car.install("intercooler", "fairing")
    assert fitted == car.install("fairing", "intercooler")
    assert list(fitted.upgrades) == ["small_pulley"]
    assert fitted.get("body/mass") == 344
    assert fitted.get("charge_path/core/conductance") == 90


def test_saving_keeps_what_was_typed(car, tmp_path):
    path = tmp_path / "saved.json"
    car.save(path)
    again = ww.load(path)
    assert again == car
    assert again.digest == car.digest
    assert '"9 ± 2 mm2"' in path.read_text(encoding="utf-8")
    assert again.text() == car.text()


def test_the_digest_is_of_the_physics(car):
    assert car.set({"body/mass": "340 ± 5 kg"}).digest == car.digest
    assert car.set({"body/mass": "341 ± 5 kg"}).digest != car.digest
    assert len(car.digest) == 64


def test_it_pickles_as_its_text(car):
    again = pickle.loads(pickle.dumps(car))
    assert again == car
    assert hash(again) == hash(car)
    assert again.source == car.source
    assert car.text().encode() in pickle.dumps(car)


def test_observations_carry_their_spread(car):
    (seen,) = car.observed
    assert seen["speed"] == (pytest.approx(122 / 3.6), pytest.approx(2 / 3.6))
    assert seen["gear"] == (4, None)
    assert seen["engine_speed"] is None


def test_limits_are_stated_or_built_in(car, document):
    addresses = {limit["address"] for limit in car.limits}
    assert {"knock/margin", "road/speed"} <= addresses
    document["limits"] = {"manifold/temperature": {"max": "60 degC", "why": "hoses"}}
    stated = ww.loads(json.dumps(document)).limits[0]
    assert stated["max"] == pytest.approx(333.15)


def test_it_is_readable(car):
    text = repr(car)
    for words in ("Garden roadster", "150 km/h after 1500 m", "airbox > butterfly", "260 EUR"):
        assert words in text
    assert text.isascii()


def test_a_file_that_is_too_long_is_refused(tmp_path):
    path = tmp_path / "long.json"
    path.write_text('{"title": "' + "x" * (5 << 20) + '"}')
    with pytest.raises(ww.ScenarioError, match="longer than 4 MiB"):
        ww.load(path)
