"""docs/physics/driveline.md, road.md and top_speed.md: from the flywheel to the speed."""

import re
from math import atan, cos, pi, prod, sin, tanh

from twin.gas import G

HUNDRED = 100 / 3.6  # km/h in m/s


def ratio(part, gear):
    if part["kind"] == "gearbox":
        return part["ratios"][gear]
    if part["kind"] == "chain":
        return part["teeth_rear"] / part["teeth_front"]
    if part["kind"] != "clutch" and "ratio" not in part:
        raise NotImplementedError(f"the ratio of a {part['kind']}")
    return part.get("ratio", 1.0)


def gears(vehicle):
    return max(
        [len(part["ratios"]) for part in vehicle["driveline"] if part["kind"] == "gearbox"],
        default=1,
    )


def stage(part, gear, omega, torque):
    """Torque behind one part."""
    if part["kind"] == "clutch":
        most = part["capacity"] or float("inf")
        return min(max(torque, -most), most)
    i, eta = ratio(part, gear), part["efficiency"]
    if part.get("direct_efficiency") and i == 1:
        eta = part["direct_efficiency"]
    drag = part["drag_torque"] * (tanh(omega) if omega < 20 else 1)
    drag += part.get("churning_torque", 0) * omega / (5000 * pi / 30)
    N = torque - drag
    return N * i * eta if N >= 0 else N * i / eta


def wheel_torque(vehicle, gear, omega, torque):
    for part in vehicle["driveline"]:
        torque = stage(part, gear, omega, torque)
        omega = omega / ratio(part, gear)
    return torque


def parted_torque(vehicle, gear, omega, turning, torque):
    """The same where the clutch slips: what lies behind it turns with the wheels, at `turning`."""
    parted = False
    for part in vehicle["driveline"]:
        torque = stage(part, gear, turning if parted else omega, torque)
        parted = parted or part["kind"] == "clutch"
        omega, turning = omega / ratio(part, gear), turning / ratio(part, gear)
    return torque


def dragged(vehicle, gear, turning):
    """Torque at the wheels of what turns with them behind an open clutch."""
    torque, parted = 0.0, False
    for part in vehicle["driveline"]:
        if parted:
            torque = stage(part, gear, turning, torque)
        parted = parted or part["kind"] == "clutch"
        turning /= ratio(part, gear)
    return torque


def overall_ratio(vehicle, gear):
    return prod(ratio(part, gear) for part in vehicle["driveline"])


def accelerated_mass(vehicle, gear, radius, slips):
    """With what turns; while the clutch slips without crank, blower and what lies before it."""
    behind = overall_ratio(vehicle, gear)
    held = slips and any(part["kind"] == "clutch" for part in vehicle["driveline"])
    crank = vehicle["engine"]["inertia"]
    for part in vehicle["charge_path"]:
        if part["kind"] == "positive_blower":
            crank += part["rotor_inertia"] * part["drive_ratio"] ** 2
    at_wheels = 0.0 if held else crank * behind**2
    for part in vehicle["driveline"]:
        if not held:
            at_wheels += part["inertia"] * behind**2
        held = held and part["kind"] != "clutch"
        behind /= ratio(part, gear)
    return rolling_mass(vehicle, radius) + at_wheels / radius**2


def rolling_mass(vehicle, radius):
    """Of the body and its wheels."""
    body = vehicle["body"]
    if body["wheel_inertia"] is not None:
        return body["mass"] + body["wheel_inertia"] / radius**2
    return (1 + body["rotating_share"]) * body["mass"]


def tyre_diameter(size):
    """Two of the forms that stand on sidewalls: 135/80 R13 and 4.40-10."""
    inch = lambda x: x * (25.4e-3 if x < 40 else 1e-3)  # noqa: E731
    wide = re.match(r"([\d.]+)/([\d.]+)\s*-?[A-Z]*\s*([\d.]+)", size)
    if wide:
        width, aspect, rim = map(float, wide.groups())
        return inch(rim) + 2 * inch(width) * aspect / 100
    width, rim = map(float, re.match(r"([\d.]+)-([\d.]+)", size).groups())
    return inch(rim) + 2 * inch(width)


def rolling_radius(tyres, v):
    standing = tyres["rolling_radius"] or tyres["rolling_factor"] * tyre_diameter(tyres["size"]) / 2
    return standing * (1 + tyres["growth"] * (v / HUNDRED) ** 2)


def grip_limit(vehicle):
    tyres, weight = vehicle["tyres"], vehicle["body"]["mass"] * G
    mu, f, h = tyres["grip"], tyres["weight_on_driven_axle"], tyres["height_over_wheelbase"]
    if tyres["driven_axle"] == "all":
        return mu * weight
    if tyres["driven_axle"] == "front":
        return mu * weight * f / (1 + mu * h)
    lifts = weight * (1 - f) / h if h > 0 else float("inf")
    return min(mu * weight * f / (1 - mu * h), lifts) if mu * h < 1 else lifts


def slip(vehicle, thrust):
    tyres, weight = vehicle["tyres"], vehicle["body"]["mass"] * G
    shift = {"rear": 1, "front": -1, "all": 0}[tyres["driven_axle"]] * tyres[
        "height_over_wheelbase"
    ]
    load = weight
    if tyres["driven_axle"] != "all":
        load = min(max(weight * tyres["weight_on_driven_axle"] + shift * thrust, 0), weight)
    return min(max(thrust / (tyres["slip_stiffness"] * load), -0.5), 0.5)


def road_load(vehicle, air, v):
    body, grade = vehicle["body"], atan(vehicle["goal"]["grade"])
    through_air = v + vehicle["day"]["headwind"]
    drag = air["density"] * body["drag_area"] * through_air * abs(through_air) / 2
    rolling = body["rolling_resistance"] * (1 + body["rolling_rise"] * (v / HUNDRED) ** 2)
    weight = body["mass"] * G
    return (
        drag + rolling * weight * cos(grade) * (tanh(v / 0.1) if v < 2 else 1) + weight * sin(grade)
    )
