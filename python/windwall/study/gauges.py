"""What a builder could measure, one row for each: what is read, how well, and what that takes.

Costs, hours and errors are common practice with home-made means, without a source; a sensor that
is better known takes another row, `car.what_to_measure(also=[Gauge(...)])`.
"""

from __future__ import annotations

from typing import NamedTuple

__all__ = [
    "AT_REST", "BLOWER", "CHOCKS", "DRIVEN", "FUEL", "GAUGES", "HOT", "KNOCKS", "ROAD", "TURNS",
    "Gauge", "Reading", "Reads", "in_a_pull", "of_the_vehicle",
]  # fmt: skip

HOT = "the engine is hot"
TURNS = "keep clear of belts, chains and fan"
ROAD = "on a closed course, with somebody beside to read"
KNOCKS = "knock breaks pistons within seconds: at part throttle first"
FUEL = "no flame near open fuel"
CHOCKS = "the vehicle on level ground, its wheels chocked"


class Reading(NamedTuple):
    """One number that is read: the address of a result where the pull ends, or of an input, in
    which `{word}` stands for the id of a part; and the sensor's standard deviation with its unit,
    or in % of the value.
    """

    address: str
    sigma: str


class Gauge(NamedTuple):
    """One thing to measure."""

    id: str
    title: str  # what is done
    reads: tuple[Reading, ...]
    cost: float  # EUR, of what is not in the garage already
    hours: float
    driven: bool  # read at full throttle where the pull ends; else an input, most of them at rest
    care: str = ""
    joint: float = 0.0  # correlation of the errors, where two numbers come out of one trial

    @property
    def name(self) -> str:
        """What it is called among others."""
        return self.id.replace("_", " ")


Reads = tuple[str, str]


def in_a_pull(id: str, title: str, cost: float, hours: float, care: str, *reads: Reads) -> Gauge:
    """One row of what is read at full throttle, where the pull ends."""
    return Gauge(id, title, tuple(Reading(*one) for one in reads), cost, hours, True, care)


def of_the_vehicle(
    id: str, title: str, cost: float, hours: float, care: str, *reads: Reads
) -> Gauge:
    """One row of what is measured of the vehicle itself, or of the day."""
    return Gauge(id, title, tuple(Reading(*one) for one in reads), cost, hours, False, care)


BLOWER = "charge_path/{blower}/"

DRIVEN = (
    in_a_pull("speed", "time the top speed both ways", 0, 0.5, ROAD, ("speed", "0.5 km/h")),
    in_a_pull("tachometer", "read the engine speed", 25, 0.5, ROAD, ("engine/speed", "50 rpm")),
    in_a_pull("boost", "read the boost in the plenum", 15, 1, ROAD, ("manifold/boost", "1 kPa")),
    in_a_pull(
        "charge_temperature",
        "read the charge temperature in the plenum",
        *(20, 1.5, ROAD),
        ("manifold/temperature", "3 degC"),
    ),
    in_a_pull(
        "blower_outlet",
        "read the temperature behind the blower",
        *(20, 1.5, HOT),
        (BLOWER + "outlet/temperature", "3 degC"),
    ),
    in_a_pull(
        "depression",
        "read the depression ahead of the blower on a water column",
        *(5, 1, ROAD),
        (BLOWER + "inlet_depression", "0.1 kPa"),
    ),
    in_a_pull(
        "filter_drop",
        "read the depression behind the filter on a water column",
        *(5, 1, ROAD),
        ("charge_path/{filter}/pressure_drop", "0.05 kPa"),
    ),
    in_a_pull(
        "lambda",
        "read the mixture with a wide-band probe",
        *(150, 4, HOT),
        ("engine/lambda", "0.02"),
    ),
    in_a_pull(
        "exhaust_probe",
        "read the exhaust temperature behind the port",
        *(40, 3, HOT),
        ("engine/exhaust_gas_temperature", "20 degC"),
    ),
    in_a_pull(
        "exhaust_pressure",
        "read the pressure ahead of the silencer",
        *(10, 2, HOT),
        ("engine/exhaust_pressure", "0.5 kPa"),
    ),
    in_a_pull(
        "head_temperature",
        "read the head temperature under a spark plug",
        *(25, 0.5, HOT),
        ("engine/head_temperature", "5 degC"),
    ),
    in_a_pull(
        "oil_temperature",
        "read the oil temperature in the sump",
        *(15, 0.5, HOT),
        ("engine/oil_temperature", "3 degC"),
    ),
    in_a_pull(
        "fuel_flow",
        "time a measured volume of fuel over a pull",
        *(10, 3, FUEL),
        ("engine/fuel_flow", "4 %"),
    ),
    in_a_pull(
        "sprayed",
        "weigh the sprayed liquid before and behind a pull",
        *(0, 1, ROAD),
        ("charge_path/{spray}/liquid_flow", "4 %"),
    ),
)

AT_REST = (
    of_the_vehicle(
        "weigh", "weigh the vehicle wheel by wheel", 0, 1, CHOCKS, ("body/mass", "2 kg")
    ),
    of_the_vehicle(
        "axle_weight",
        "weigh the driven axle with the driver in",
        *(0, 1, CHOCKS),
        ("tyres/weight_on_driven_axle", "1 %"),
    ),
    of_the_vehicle(
        "coast_down",
        "coast down both ways and time it",
        *(0, 3, ROAD),
        ("body/drag_area", "4 %"),
        ("body/rolling_resistance", "6 %"),
    )._replace(joint=-0.7),
    of_the_vehicle(
        "roll_out",
        "roll the vehicle one turn of the driven wheel",
        *(0, 0.3, CHOCKS),
        ("tyres/rolling_factor", "0.3 %"),
    ),
    of_the_vehicle(
        "weather",
        "read thermometer, barometer and hygrometer beside the course",
        *(30, 0.3, ""),
        ("day/temperature", "0.5 degC"),
        ("day/pressure", "0.1 kPa"),
        ("day/relative_humidity", "8 %"),
    ),
    of_the_vehicle(
        "wind", "read the wind along the course", 25, 0.5, "", ("day/headwind", "0.5 m/s")
    ),
    of_the_vehicle(
        "belt_slip",
        "count the blower's turns with a stroboscope",
        *(30, 1, TURNS),
        (BLOWER + "drive_ratio", "0.5 %"),
    ),
    of_the_vehicle(
        "bleed_down",
        "hold the rotors and time the fall of pressure in a known volume",
        *(10, 3, ""),
        (BLOWER + "leak_area", "10 %"),
    ),
    of_the_vehicle(
        "chamber",
        "fill the chamber with oil from a burette",
        *(5, 2, ""),
        ("engine/compression_ratio", "0.1"),
    ),
    of_the_vehicle(
        "valves",
        "measure the valves with the head off",
        *(0, 7, ""),
        ("engine/valves/intake_ratio", "0.005"),
        ("engine/valves/exhaust_ratio", "0.005"),
    ),
    of_the_vehicle(
        "cam_timing",
        "find where the intake valve closes with a degree wheel",
        *(10, 2, ""),
        ("engine/valves/intake_closing", "2 deg"),
    ),
    of_the_vehicle(
        "knock",
        "listen for knock while the spark is advanced degree by degree",
        *(10, 4, KNOCKS),
        ("engine/knock_anchor/octane_number", "1.5"),
    ),
    of_the_vehicle(
        "nozzle",
        "spray into a jar and weigh it",
        *(0, 0.5, ""),
        ("charge_path/{spray}/rated_flow", "3 %"),
    ),
)

GAUGES = DRIVEN + AT_REST
