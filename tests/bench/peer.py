"""The compiled peer of `make bench`: peer.c, built and called; its vehicle read by the plain twin.

`Peer(vehicle)` takes a vehicle as `twin.twin.understood` gives it.
"""

import ctypes
import re
import shutil
import subprocess
import tempfile
from functools import cache
from math import degrees, log, nan, pi, sqrt
from pathlib import Path

import numpy as np

from twin import engine as cylinder
from twin import heat, path
from twin.gas import blend

HERE = Path(__file__).parent
COMPILER = shutil.which("cc") or shutil.which("gcc")
KINDS = ["filter", "throttle", "positive_blower", "plenum"]  # in this order, the throttle at least


def structure(name):
    """A struct of doubles, from its text in C: it is spelt there only."""
    text = (HERE / "peer_equations.h").read_text("utf-8")
    text = re.sub(r"/\*.*?\*/", "", text, flags=re.DOTALL)
    members = re.search(rf"struct {name} {{(.*?)}};", text, re.DOTALL)[1]
    fields = [
        (key, ctypes.c_double * int(size) if size else ctypes.c_double)
        for key, size in re.findall(r"(\w+)(?:\[(\d+)\])?[,;]", members)
    ]
    return type(name, (ctypes.Structure,), {"_fields_": fields})


Car, Answer = structure("car"), structure("answer")


@cache
def library():
    """The function of peer.c, compiled with the optimisation of the core."""
    with tempfile.TemporaryDirectory() as folder:
        built = Path(folder) / "peer.so"
        flags = ["-std=c11", "-O2", "-shared", "-fPIC"]
        subprocess.run([COMPILER, *flags, HERE / "peer.c", "-o", built, "-lm"], check=True)
        return ctypes.CDLL(str(built)).peer_points


class Peer:
    """One vehicle, ready to be asked for points at full throttle."""

    def __init__(self, vehicle):
        numbers = air(vehicle) | charge(vehicle) | engine(vehicle) | burning(vehicle)
        numbers |= warmth(vehicle) | knock(vehicle)
        missing = {key for key, _ in Car._fields_} ^ numbers.keys()
        assert not missing, missing
        self.car = Car()
        for key, kind in Car._fields_:
            number = numbers[key]
            setattr(self.car, key, number if kind is ctypes.c_double else kind(*number))
        self.call = library()

    def points(self, asked, cold=True):
        """Answers by name, arrays of n, for engine and road speed (n, 2) in rad/s and m/s."""
        asked = np.ascontiguousarray(asked, float).reshape(-1, 2)
        answers = (Answer * len(asked))()
        pointer = ctypes.c_void_p(asked.ctypes.data)
        self.call(ctypes.byref(self.car), pointer, len(asked), int(cold), answers)
        table = np.frombuffer(answers).reshape(len(asked), -1)
        return {key: table[:, k] for k, (key, _) in enumerate(Answer._fields_)}


def air(vehicle):
    day, hood = vehicle["air"], vehicle["under_hood"]
    return {
        "air_p": day["p"],
        "air_T": day["T"],
        "w": day["w"],
        "density": day["density"],
        "R": day["gas"]["R"],
        "cp": day["gas"]["a"][:5],
        "h0": day["gas"]["a"][5],
        "headwind": vehicle["day"]["headwind"],
        "hood_rise": hood["rise"] * (0.35 if hood["hood"] == "open" else 1),
        "hood_halving": hood["halving_speed"],
        "hood_stir": hood["stir"],
        "hood_share": hood["intake_share"],
        "ram": hood["ram_recovery"],
    }


def charge(vehicle):
    parts = {part["kind"]: part for part in vehicle["charge_path"]}
    kinds = [part["kind"] for part in vehicle["charge_path"]]
    if kinds != [kind for kind in KINDS if kind in kinds] or "throttle" not in kinds:
        raise NotImplementedError(f"a path of {', '.join(kinds)}")
    if parts["throttle"]["linkage"] is not None:
        raise NotImplementedError("a linkage of the throttle")
    return (
        filtering(parts.get("filter"))
        | throttling(parts["throttle"])
        | blowing(parts.get("positive_blower"))
        | plenum(parts.get("plenum"))
    )


def filtering(part):
    if part is None:
        return {"filter_linear": 0.0, "filter_square": 0.0}
    drop, share = part["drop"] * part["at_density"], part["linear_share"]
    return {
        "filter_linear": share * drop / part["at_flow"],
        "filter_square": (1 - share) * drop / part["at_flow"] ** 2,
    }


def throttling(part):
    area = part["discharge_coefficient"] * path.throttle_area(part, 1.0)
    regained = min(area / (pi / 4 * part["bore"] ** 2), 0.9)
    return {
        "plate_area": area,
        "plate_lost": 1 / (1 - regained) ** 2,
        "plate_leak": part["leak_area"],
    }


def blowing(part):
    names = {
        "displacement": "displacement",
        "drive_ratio": "drive_ratio",
        "built_in": "built_in_ratio",
        "rotor_leak": "leak_area",
        "fill_loss": "fill_loss",
        "belt": "belt_efficiency",
        "friction_torque": "friction_torque",
        "friction_slope": "friction_torque_per_speed",
        "to_charge": "friction_to_charge",
        "to_case": "case_conductance",
        "to_air": "case_to_air",
        "case_T": "case_temperature",
        "case_exchange": "case_exchange",
        "mount": "mount_conductance",
        "mount_T": "mount_temperature",
    }
    sizes = {"case_surface": 0.0, "pocket": 0.0}
    if part is None:
        return dict.fromkeys(names, 0.0) | sizes | {"built_in": 1.0}
    numbers = {ours: part[theirs] for ours, theirs in names.items()}
    size = part["displacement"] ** (1 / 3)
    sizes = {"case_surface": part["case_area"] or 25 * size**2, "pocket": size / 2}
    return {key: nan if x is None else x for key, x in numbers.items()} | sizes


def plenum(part):
    if part is None:
        return {"plenum_surface": 0.0, "plenum_conductance": 0.0}
    stated = part["conductance"]
    return {
        "plenum_surface": 6 * part["volume"] ** (2 / 3),
        "plenum_conductance": nan if stated is None else stated,
    }


def engine(vehicle):
    given, valves = vehicle["engine"], vehicle["engine"]["valves"]
    breathing, exhaust, limit = given["breathing"], given["exhaust"], given["rev_limit"]
    if breathing["stated_efficiency"] is not None:
        raise NotImplementedError("a stated filling")
    late = min(max(degrees(valves["intake_closing"]), 20), 60)
    cubics = cylinder.FILLING_AT.c  # of the third order down to none, per piece and closing
    pieces = [np.interp(late, cylinder.CLOSINGS, cubics[k, j]) for j in range(8) for k in range(4)]
    loss = valves["flow_loss"] * 4.12 / valves["per_side"] ** 2
    reference = 1.184 * cylinder.swept_flow(given, limit)
    driven = given["accessories"]
    return {
        "swept": cylinder.swept(given),
        "stroke": given["stroke"],
        "compression": given["compression_ratio"],
        "known_speed": heat.known_speed(given),
        "known_flow": heat.known_flow(given),
        "filling": breathing["peak_efficiency"] / sqrt(breathing["reference_temperature"]),
        "fall_off": breathing["fall_off"],
        "best_speed": breathing["best_speed"] or 0.7 * limit,
        "valve_area": valves["flow_coefficient"] * valves["per_side"] * valves["intake_ratio"] ** 2,
        "mach": pieces,
        "wall_share": breathing["wall_heating"],
        "wall_T": breathing["reference_head_temperature"],
        "back_pressure": exhaust["back_pressure"] * 101325 / vehicle["air"]["p"],
        "exhaust_flow": exhaust["at_flow"] or reference,
        "inlet_loss": loss / 1.184 / valves["intake_ratio"] ** 4,
        "outlet_loss": loss / 101325 / valves["exhaust_ratio"] ** 4,
        "rub_base": given["friction"]["base"],
        "rub_slope": given["friction"]["per_piston_speed"],
        "rub_scale": given["friction"]["scale"],
        "gas_load": given["friction"]["gas_load"],
        "torque": driven["torque"],
        "fan_torque": driven["fan_torque"] / driven["fan_speed"] ** 2,
    }


def burning(vehicle):
    if vehicle["fuel"]["ethanol"] or vehicle["fuel"]["methanol"]:
        raise NotImplementedError("alcohol in the tank, which cools the charge at the valve")
    given, fuel = vehicle["engine"], blend(vehicle["fuel"])
    exponents = np.array(cylinder.EXPONENTS).T
    return {
        "lambda": given["lambda"],
        "richest": given["spark"]["richest"],
        "stoichiometric": fuel["air"],
        "heating": fuel["heating"],
        "exponent": [
            np.interp(given["compression_ratio"], cylinder.RATIOS, row) for row in exponents
        ],
        "cycle_factor": given["combustion"]["real_cycle_factor"],
    }


def warmth(vehicle):
    given, known, air = vehicle["engine"], vehicle["engine"]["cooling"], vehicle["air"]
    by, oil = known["by"], given["oil"]
    there = known["coolant_temperature"] if by == "liquid" else known["known_air_temperature"]
    here = there if by == "liquid" else air["T"]
    if known["warm_air_share"] or known["pull_time"] is not None:
        raise NotImplementedError("cooling air from under the bodywork, or a short pull")
    densities = (air["p"] / air["T"]) / (101325 / known["known_air_temperature"])
    head = given["head_temperature"] or known["known_head_temperature"]
    gas = heat.gas_that_heats(given, known["known_charge_temperature"], 1.17)
    known_oil = heat.to_the_oil(
        given, heat.known_speed(given), heat.known_flow(given), 1.17, 1.17 * 2.972e6
    )
    return {
        "head_ratio": (head - there) / (gas - head),
        "gas_T": known["gas_temperature"],
        "fan": densities / heat.known_speed(given) if by == "fan" else 0.0,
        "wind": densities / known["known_road_speed"] if by == "ram_air" else 0.0,
        "steady": 1.0 if by == "liquid" else 0.0,
        "cool_T": here,
        "walls": given["walls"]["share"],
        **out_of_the_cylinder(given),
        "oil_T": oil["temperature"] or nan,
        "oil_rise": (oil["known_temperature"] - there) / known_oil,
        "oil_share": oil["wall_share"],
        "hot_oil": oil["hot_temperature"],
        "oil_exponent": oil["viscosity_exponent"],
    }


def out_of_the_cylinder(given):
    known = heat.known_speed(given)
    filled = heat.known_flow(given) / (1.184 * cylinder.swept_flow(given, known))
    stroke = 0.165 * 0.55 * given["walls"]["share"] * filled**-1.1
    return {
        "stroke_loss": stroke,
        "port_loss": max(0.0, -log(given["walls"]["port_keeps"]) - stroke),
    }


def knock(vehicle):
    given, spark = vehicle["engine"], vehicle["engine"]["spark"]
    if spark["policy"] == "as_given":
        raise NotImplementedError("a spark from a table")
    fuel, anchor = vehicle["fuel"], given["knock_anchor"]
    ron, mon = fuel["research_octane"], fuel["motor_octane"]
    has = ron - given["octane_sensitivity_weight"] * (ron - mon)
    needed = (  # by a state of zeros at 1 Pa, to which the point adds
        anchor["octane_number"]
        + 5 * (given["compression_ratio"] - anchor["compression_ratio"])
        - 30 * log(anchor["manifold_pressure"])
        - anchor["charge_temperature"] / 7
        - anchor["head_temperature"] / 10
        + degrees(anchor["retard"])
        - anchor["exhaust_pressure"] / 30e3
        + cylinder.appetite(anchor["lambda"])
        + anchor["engine_speed"] * 30 / pi / 1000
        - (cylinder.damping(vehicle["air"]["w"]) - cylinder.damping(anchor["humidity_ratio"]))
    )
    return {
        "lacking": needed - has + cylinder.wanted_margin(given),
        "most_retard": spark["most_retard"],
        "hottest": spark["hottest_exhaust"],
    }
