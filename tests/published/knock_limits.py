"""The table of published knock limits, how a row becomes two states, and which rows stay closed."""

import csv
import hashlib
from math import pi
from pathlib import Path

TABLE = Path(__file__).parent / "data" / "knock_limits.csv"

DAY = 298.15  # K
WEATHER = 100e3  # Pa, in front of the filter and behind an engine without a turbine
BLOWN = 105e3  # Pa, from here on an engine is taken as blown
EFFICIENCY = 0.65  # isentropic, of whatever compresses; judged
LEFT_BY_COOLER = 0.3  # of the rise behind the compressor; judged
UNBLOWN_LAMBDA, BLOWN_LAMBDA = 0.87, 0.80  # at full throttle, as sold; judged
BLOWN_RETARD = 8 * pi / 180  # as sold with a blower; judged
PETROL_AIR = 14.604
RATIO = 8.0  # where neither side prints one


def knock_limits(memory=False):
    """Rows that were read, or those from memory, as texts by column; see data/knock_limits.md."""
    lines = TABLE.read_text(encoding="utf-8").splitlines()
    rows = csv.DictReader(line for line in lines if not line.startswith("#"))
    return [row for row in rows if (row["from_memory"] == "yes") == memory]


def sealed(row):
    """Whether a row stays closed: the first byte of SHA-256 of its id divides by three."""
    return hashlib.sha256(row["id"].encode()).digest()[0] % 3 == 0


def charge_temperature(pressure, cooled):
    rise = DAY * ((pressure / WEATHER) ** (2 / 7) - 1) / EFFICIENCY
    return DAY + rise * (LEFT_BY_COOLER if cooled else 1)


def state(row, side):
    """One side, 1 or 2, as arguments of `physics.asked_by_rule` and `asked_by_end_gas`."""

    def given(column, unstated, factor=1.0, offset=0.0):
        text = row.get(f"{column}_{side}", "")
        return float(text) * factor + offset if text else unstated

    pressure = given("pressure", WEATHER, 1e3)
    blown, charging = pressure > BLOWN, row["charging"]
    temperature = charge_temperature(pressure, "cooled" in charging) if blown else DAY
    lambda_ = given("lambda", BLOWN_LAMBDA if blown else UNBLOWN_LAMBDA)
    late = BLOWN_RETARD if blown and row["basis"] == "sold" else 0.0
    return {
        "compression_ratio": given("ratio", RATIO),
        "engine_speed": given("speed", 3000 * pi / 30, pi / 30),
        "manifold_pressure": pressure,
        "charge_temperature": given("temperature", temperature, 1.0, 273.15),
        "exhaust_pressure": pressure if blown and charging.startswith("turbo") else WEATHER,
        "lambda_": lambda_,
        "retard": given("retard", late, pi / 180),
        "water": given("water", 0.0) / (PETROL_AIR * lambda_),
        "methanol": given("methanol", 0.0) / (PETROL_AIR * lambda_),
    }


def fuels_differ(row):
    """Octane numbers by which the second side's fuel is better."""
    return float(row["octane_2"]) - float(row["octane_1"])


def too_much(row, asked):
    """Octane numbers asked from side 1 to side 2 beyond what the fuels differ by."""
    before, after = (float(asked(**state(row, side))) for side in (1, 2))
    return after - before - fuels_differ(row)


def known_to(row):
    """One standard deviation of what a row says, octane numbers."""
    return float(row["known_to"])
