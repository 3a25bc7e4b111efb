"""Whole logs held against a vehicle: what is taken for what, the pulls, the facts and their ±."""

import json
import re

import numpy as np
import pytest

import windwall as ww
from python import invented_logs
from windwall.errors import ScenarioError
from windwall.logs.against import of_bytes, read_against
from windwall.logs.mapping import read_mapping
from windwall.logs.read import parse
from windwall.logs.sensors import silent

FOLDER = invented_logs.FOLDER
SCENARIOS = FOLDER.parent
RPM = 30 / np.pi


@pytest.fixture(scope="module")
def cyclecar():
    return ww.load(SCENARIOS / "airfield_cyclecar.json")


@pytest.fixture(scope="module")
def microcar():
    return ww.load(SCENARIOS / "village_microcar.json")


@pytest.fixture(scope="module")
def two_runs(cyclecar):
    return read_against(cyclecar, FOLDER / "two_runs.csv")


@pytest.fixture(scope="module")
def bakery(microcar):
    return read_against(microcar, FOLDER / "to_the_bakery.csv")


@pytest.fixture(scope="module")
def drive():
    return invented_logs.cyclecar().drive("three_runs", progress=False)


def sampled_log(drive, mix=lambda columns: None, seed=1, step=0.05, noise=1.0):
    """One run as a log of its own, and its columns by name."""
    rng = np.random.default_rng(seed)
    times = np.arange(180, 250, step)
    columns = {
        "Time [s]": times - times[0],
        "TPS [%]": 100 * invented_logs.sampled(drive, times, "pedal"),
        "RPM": RPM * invented_logs.sampled(drive, times, "engine/speed"),
        "Speed [km/h]": 3.6 * invented_logs.sampled(drive, times, "road/speed"),
        "MAP [kPa]": invented_logs.sampled(drive, times, "manifold/pressure") / 1e3,
    }
    spread = {"RPM": 12, "Speed [km/h]": 0.25, "MAP [kPa]": 0.5, "TPS [%]": 0.3}
    for name, one in spread.items():
        columns[name] = columns[name] + noise * rng.normal(0, one, len(times))
    mix(columns)
    rows = (",".join(f"{x:.3f}" for x in row) for row in zip(*columns.values(), strict=True))
    return (",".join(columns) + "\n" + "\n".join(rows) + "\n").encode()


@pytest.mark.parametrize("name", invented_logs.LOGS)
def test_what_ships_is_what_the_model_makes(name):
    """To 1 %: then the file is made anew, by `python tests/python/invented_logs.py`."""
    shipped = parse((FOLDER / f"{name}.csv").read_bytes())
    made = parse(invented_logs.LOGS[name]().encode())
    assert made.lines.tolist() == shipped.lines.tolist()
    for now, then in zip(made.columns, shipped.columns, strict=True):
        scale = np.nanmax(np.abs(then.values))
        assert np.nanmax(np.abs(now.values - then.values)) < 0.01 * scale, now.name


def test_columns_are_proposed_with_reasons(cyclecar):
    content = (FOLDER / "two_runs.csv").read_bytes()
    found = {one.column: one for one in of_bytes(cyclecar, content).proposed}
    assert {name: one.address for name, one in found.items()} == {
        "TPS": "pedal",
        "RPM": "engine/speed",
        "GPS speed": "road/speed",
        "Boost": "manifold/boost",
        "Charge temp": "manifold/temperature",
        "CHT": "engine/head_temperature",
    }
    said = " ".join(found["RPM"].reasons)
    assert 'called "rpm"' in said
    assert re.search(r"in a gear of this vehicle in [89]\d of 100 rows", said)
    assert "counts from the local air" in found["Boost"].reasons


def test_a_proposal_is_a_mapping_that_is_read(cyclecar):
    found = of_bytes(cyclecar, (FOLDER / "two_runs.csv").read_bytes())
    assert read_mapping(found.mapping, cyclecar).text() == found.mapping


@pytest.mark.parametrize("unit, factor", [("km/h", 1), ("mph", 1 / 1.609344), ("m/s", 1 / 3.6)])
def test_a_speed_without_a_unit_is_told_by_the_gears(unit, factor, drive, cyclecar):
    def unnamed(columns):
        columns["Speed"] = factor * columns.pop("Speed [km/h]")

    (speed,) = (
        one for one in of_bytes(cyclecar, sampled_log(drive, unnamed)).proposed
        if one.column == "Speed"
    )  # fmt: skip
    assert (speed.address, speed.unit) == ("road/speed", unit)
    assert any(f"taken for {unit}" in reason for reason in speed.reasons)


def test_a_speed_that_fits_no_gear_is_left_out(drive, cyclecar):
    def odd(columns):
        columns["Speed"] = 2.2 * columns.pop("Speed [km/h]")

    found = of_bytes(cyclecar, sampled_log(drive, odd))
    (speed,) = (one for one in found.proposed if one.column == "Speed")
    assert speed.address == ""
    assert "in what?" in speed.reasons[-1]


def test_an_acceleration_that_does_not_go_with_the_speed_is_left_out(drive, cyclecar):
    def shaken(columns):
        columns["Accel [m/s2]"] = np.random.default_rng(5).normal(0, 2, len(columns["RPM"]))

    found = of_bytes(cyclecar, sampled_log(drive, shaken))
    (one,) = (one for one in found.proposed if one.column == "Accel")
    assert one.address == ""
    assert "hardly goes with" in one.reasons[-1]


def test_pulls_are_cut_by_pedal_gear_and_slip(two_runs):
    assert [pull.gear for pull in two_runs.pulls] == [2, 3, 4, 2, 3, 4]
    for pull in two_runs.pulls:
        assert abs(pull.slip) < 0.005
        assert pull.day == {"day/temperature": pytest.approx(306.15), "day/pressure": 98400}
        part = two_runs.log.part[pull.first : pull.last + 1]
        assert len(set(part)) == 1


def test_without_a_pedal_the_manifold_tells(bakery):
    assert [pull.gear for pull in bakery.pulls] == [2, 3, 2, 3]
    assert "No column is pedal" in bakery.left_out[0]


def test_a_part_throttle_run_has_no_pulls(drive, cyclecar):
    def half(columns):
        columns["TPS [%]"] *= 0.5

    found = of_bytes(cyclecar, sampled_log(drive, half))
    assert found.pulls == ()
    assert not found.answered
    assert "never passes" in found.left_out[0]


def test_a_lifted_pedal_ends_a_pull(drive, cyclecar):
    def lifts(columns):
        time = columns["Time [s]"]
        columns["TPS [%]"] = np.where((time > 40) & (time < 41), 60, columns["TPS [%]"])

    cut = of_bytes(cyclecar, sampled_log(drive, lifts)).pulls
    assert not [one for one in cut if one.time[0] < 40.5 < one.time[1]]
    assert len(cut) == len(of_bytes(cyclecar, sampled_log(drive)).pulls) + 1


def test_a_gauge_that_counts_from_vacuum_is_no_boost_whatever_it_is_called(drive, cyclecar):
    def called(columns):
        columns["Boost [kPa]"] = columns.pop("MAP [kPa]")

    found = {one.column: one for one in of_bytes(cyclecar, sampled_log(drive, called)).proposed}
    assert found["Boost"].address == "manifold/pressure"
    assert "never near zero, so it counts from vacuum" in found["Boost"].reasons


def test_a_clutch_that_slips_is_cut_off(drive, cyclecar):
    def slips(columns):
        time = columns["Time [s]"]
        columns["RPM"] = columns["RPM"] * np.where(time > 40, 1.04, 1)

    whole = of_bytes(cyclecar, sampled_log(drive)).pulls[-1]
    cut = of_bytes(cyclecar, sampled_log(drive, slips)).pulls
    assert not [one for one in cut if one.time[0] < 40 < one.time[1]]
    assert whole.time[0] < 40 < whole.time[1]


def test_a_lag_that_is_stated_is_taken_off(cyclecar):
    """The receiver is a quarter of a second late: in second gear that is 3 % of ratio."""
    content = (FOLDER / "two_runs.csv").read_bytes()
    text = (FOLDER / "two_runs.mapping.json").read_text("utf-8")
    late = read_mapping(text.replace('"0.25 s"', '"0 s"'), cyclecar)
    right = read_mapping(text, cyclecar)
    assert of_bytes(cyclecar, content, "log", late).pulls[0].slip > 0.025
    assert abs(of_bytes(cyclecar, content, "log", right).pulls[0].slip) < 0.005


def test_a_stuck_and_a_railed_sensor_are_taken_for_none(drive, cyclecar):
    def broken(columns):
        pressure, revs = columns["MAP [kPa]"], columns["RPM"]
        columns["MAP [kPa]"] = np.minimum(pressure, 125.0)
        revs[600:660] = revs[600]

    found = of_bytes(cyclecar, sampled_log(drive, broken))
    said = " | ".join(one.text() for one in found.mended)
    assert "against its highest number 125" in said
    assert "column RPM: stuck at" in said
    pressures = [one.value for one in found.facts if one.address == "manifold/pressure"]
    assert max(pressures) < 125.5e3


def test_a_sensor_at_rest_is_believed():
    rng = np.random.default_rng(7)
    noisy = rng.normal(0, 1, 400).round(3)
    assert list(silent(np.r_[np.zeros(200), noisy])) == []
    assert list(silent(np.full(300, 7.0))) == []
    assert (
        list(silent(np.repeat(noisy, 12))) == []
    )  # a sensor that is asked more often than it says
    stuck = list(silent(np.r_[noisy, np.full(40, 0.123), noisy]))
    assert [(one[0], one[1]) for one in stuck] == [(400, 440)]


def test_facts_are_those_of_the_vehicle_that_was_logged(two_runs):
    """Against the vehicle of the log held at each fact, which knows nothing of how it was read: all
    within 3 of their sigmas, though each holds the gauge's error times the root of its count. Of so
    many about one is beyond 2.5 by chance, and one is.
    """
    car = invented_logs.cyclecar()
    curves = {gear: car.full_throttle_curve(gear=gear) for gear in (2, 3, 4)}
    assert len(two_runs.facts) > 60
    for fact in two_runs.facts:
        curve = curves[fact.situation["gear"]]
        held = np.interp(fact.situation["engine_speed"], curve["engine/speed"], curve[fact.address])
        assert abs(fact.value - held) < 3 * fact.sigma, fact


def test_the_surplus_is_mass_times_acceleration_within_its_noise(drive, cyclecar):
    """40 logs of one run that differ by noise alone, beside the drive's own acceleration and the
    mass in gear: the root mean square of error over the part of ± that is noise is one, to a
    quarter; what all facts share is taken out of it first.
    """
    off = []
    for seed in range(40):
        found = of_bytes(cyclecar, sampled_log(drive, seed=seed))
        facts = [one for one in found.facts if one.address == "road/surplus"]
        mass = {one.number: one.mass for one in invented_gears(cyclecar)}
        for fact in facts:
            shared = fact.value * np.hypot(np.hypot(0.01, 5 / 348), 0.005) * np.sqrt(len(facts))
            time = 180 + 0.05 * (int(fact.source.rpartition(" ")[2]) - 2)
            true = mass[fact.situation["gear"]] * invented_logs.sampled(drive, time, "acceleration")
            off.append((fact.value - true) / np.sqrt(fact.sigma**2 - shared**2))
    assert np.sqrt(np.mean(np.square(off))) == pytest.approx(1, abs=0.25)


def invented_gears(car):
    from windwall.logs.gears import gears_of

    return gears_of(car)


def test_all_facts_of_a_gauge_are_no_surer_than_one_reading_of_it(two_runs):
    """The weighted mean of n facts of one column has a ± of the gauge's own at least."""
    sigmas = np.array([one.sigma for one in two_runs.facts if one.address == "manifold/boost"])
    assert len(sigmas) > 15
    assert 1 / np.sqrt(np.sum(sigmas**-2.0)) > 2e3


def test_a_fact_says_where_it_comes_from(two_runs):
    fact = two_runs.facts[0].plain()
    assert set(fact) == {"situation", "address", "value", "sigma", "source", "group", "day"}
    assert fact["source"].startswith("pull 1, line ")
    assert fact["group"] == "pull 1"
    assert fact["situation"]["kind"] == "held"
    assert fact["situation"]["gear"] == 2


def test_a_mapped_column_that_is_missing_is_refused(cyclecar):
    document = json.loads((FOLDER / "two_runs.mapping.json").read_text("utf-8"))
    document["columns"]["Oil"] = {"address": "engine/oil_temperature", "unit": "degC"}
    stated = read_mapping(json.dumps(document), cyclecar)
    with pytest.raises(ScenarioError, match="column Oil: is mapped, and missing; there are TPS"):
        of_bytes(cyclecar, (FOLDER / "two_runs.csv").read_bytes(), "log", stated)


def test_a_mapped_column_of_words_is_refused_with_line_and_column(drive, cyclecar):
    content = sampled_log(drive).decode().replace("\n", ",on\n").replace(",on", ",Switch", 1)
    stated = read_mapping(
        json.dumps({
            "format": "windwall-log/1",
            "columns": {"Switch": {"address": "manifold/boost", "unit": "kPa"}},
        }),
        cyclecar,
    )  # fmt: skip
    with pytest.raises(ScenarioError, match='line 2, column Switch: "on" is no number'):
        of_bytes(cyclecar, content.encode(), "log", stated)


def test_the_command_tells_it(windwall, tmp_path):
    said = windwall("logs", SCENARIOS / "village_microcar.json", FOLDER / "to_the_bakery.csv")
    assert said.returncode == 0, said.stderr
    for words in ("came late", "0x7FFF", "stuck at", "cut short", "pull 4", "road/surplus"):
        assert words in said.stdout
    car, log = SCENARIOS / "airfield_cyclecar.json", FOLDER / "two_runs.csv"
    document = json.loads(windwall("logs", car, log, "--json").stdout)
    assert len(document["pulls"]) == 6
    assert document["units"]["road/surplus"] == "N"
    path = tmp_path / "made.json"
    assert windwall("logs", car, log, "--write-mapping", path).returncode == 0
    assert json.loads(path.read_text("utf-8"))["format"] == "windwall-log/1"
    again = windwall("logs", car, log, "--write-mapping", path)
    assert again.returncode == 2  # it is not written over


def test_the_command_refuses_with_a_line(windwall, tmp_path):
    path = tmp_path / "bad.csv"
    path.write_text("Time,RPM\n" + "".join(f"{i},{3000 + i}\n" for i in range(20)))
    said = windwall("logs", SCENARIOS / "airfield_cyclecar.json", path)
    assert said.returncode == 2
    assert "line 2, column Time" in said.stderr
