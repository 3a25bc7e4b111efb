"""What happened on a drive, and how it ended."""

from __future__ import annotations

from windwall.quantities.measures import ENGINE_SPEED, LENGTH, SPEED
from windwall.results.drive import DriveEnding, DriveEvent
from windwall.results.values import Values
from windwall.results.views import sentence

__all__ = [
    "BEYOND_FOR", "ENDED", "ENERGIES", "FOR_AN_INSTANT", "GRIPS", "HAPPENED", "INSTANT", "LEGS",
    "SLIPS", "SLIPS_ON", "beyond_for", "ended_sentence", "event_sentence", "kind_text", "time_text",
]  # fmt: skip

ENDED = {
    "legs_done": "Every leg was driven, {time} and {distance} of road in all.",
    "road_ends": "The road ends in leg {leg}, {kind}, at {road_speed}.",
    "no_more_speed": "Leg {leg}, {kind}, waits for a speed that is never reached: at {road_speed} "
    "it gains no more.",
    "no_less_speed": "Leg {leg}, {kind}, waits for a speed that it never slows down to: at "
    "{road_speed} it rolls no slower.",
    "no_gear_holds": "Leg {leg}, {kind}, is slower than any gear holds: at {road_speed} the engine "
    "would turn too slowly with the clutch in, and there is no pedal to hold it.",
    "stalled": "Leg {leg}, {kind}, does not move it: full throttle gives less than the road takes, "
    "at {road_speed}.",
    "too_long": "Leg {leg}, {kind}, goes on after six hours, or 20,000 steps: at {road_speed} it "
    "is {distance} from where it set out.",
    "tank_empty": "The tank is empty in leg {leg}, {kind}, {distance} from where it set out.",
    "no_answer": "It breaks off in leg {leg}, {kind}, at {road_speed} and {time} after setting "
    "out: no state of the engine was found ({status}{part}). What stands here was driven until "
    "then.",
    "cancelled": "It was stopped in leg {leg}, {kind}, {time} after setting out. What stands here "
    "was driven until then.",
    "too_many_events": "It breaks off in leg {leg}, {kind}, at {road_speed}: more happens at once "
    "than can be followed. What stands here was driven until then.",
}
SLIPS_ON = (
    "It breaks off in leg {leg}, {kind}, at {road_speed} and {time} after setting out: at no speed "
    "of the crank do belts and tyres slip by what its torque asks for. What stands here was driven "
    "until then."
)
HAPPENED = {
    "leg_begins": "leg {leg}, {kind}",
    "clutch_grips": "{grips} at {engine_speed}, in gear {gear}",
    "clutch_slips": "{slips}",
    "shift_begins": "shift out of gear {gear} at {engine_speed}",
    "shift_ends": "gear {gear} is in, at {engine_speed}",
    "ratio_begins": "the variator leaves its lowest gearing",
    "ratio_ends": "the variator comes to its highest gearing",
    "ratio_returns": "the variator leaves its highest gearing",
    "ratio_rests": "the variator is back at its lowest gearing",
    "tyres_spin": "the driven tyres spin",
    "tyres_grip": "the driven tyres grip again",
    "rev_limit": "rev limit in gear {gear}",
    "stands_still": "it stands",
    "speed_lost": "the speed to hold is more than it has",
    "speed_gained": "the released pedal does not hold it back: the road makes it faster",
    "speed_held": "it has slowed down to the speed that is held",
    "liquid_empty": "the liquid for the nozzles is used up",
    "pump_switched_on": "the pump is switched on",
    "pump_runs": "the pump runs",
    "line_full": "the line is full: the nozzle sprays",
    "pump_switched_off": "the pump is switched off",
    "limit_passed": "passes a limit: {about}",
    "road_turns": "slope or wind changes",
    "pulls_away": "it pulls away",
}
# By the kind of part that lets crank and wheels turn apart.
GRIPS = {
    "": "crank and wheels turn together",
    "clutch": "the clutch grips",
    "centrifugal_clutch": "the centrifugal clutch grips",
    "belt_cvt": "the belt grips",
}
SLIPS = {
    "": "crank and wheels come apart",
    "clutch": "the clutch slips",
    "centrifugal_clutch": "the centrifugal clutch slips",
    "belt_cvt": "the belt slips",
}
INSTANT = 1.0  # s
FOR_AN_INSTANT = "beyond it for an instant, {time} in all"
BEYOND_FOR = "beyond it for {time} in all"
LEGS = {"full_throttle": "full throttle", "hold_speed": "holding a speed"}
# What enters the account of energy, in its order.
ENERGIES = {
    "fuel": "burnt in the fuel",
    "crank": "given by the crank",
    "driveline": "lost in the driveline",
    "clutch": "heated the clutch",
    "tyres": "slip of the tyres",
    "air": "drag of the air",
    "rolling": "rolling resistance",
    "grade": "slope",
    "brakes": "heated the brakes",
    "kinetic": "left in what moves",
    "changes": "taken by crank and clutch at changes",
}


@sentence.register(DriveEnding)
def ended_sentence(end: DriveEnding) -> str:
    """How it ended, and where."""
    system = end.scenario_info.system
    said = SLIPS_ON if end["part"] == "slip" else ENDED[end["word"]]
    return said.format(
        leg=end["leg"],
        kind=kind_text(end["kind"]),
        time=time_text(end["time"]),
        status=end["status"],
        part=f", {end['part']}" if end["part"] else "",
        **_where(end, system),
    )


@sentence.register(DriveEvent)
def event_sentence(event: DriveEvent) -> str:
    """What happened, in a few words."""
    kind = kind_text(event["kind"])
    speed = ENGINE_SPEED.text(event["engine_speed"], event.scenario_info.system)
    about = event["about"]
    return HAPPENED[event["what"]].format(
        leg=event["leg"],
        kind=kind,
        gear=event["gear"],
        about=about,
        grips=GRIPS.get(about, ""),
        slips=SLIPS.get(about, ""),
        engine_speed=speed,
    )


def kind_text(kind: str) -> str:
    """What a leg is called."""
    return LEGS.get(kind, kind)


def beyond_for(seconds: float) -> str:
    """For how long a limit is passed; that of an instant is called so."""
    if seconds < INSTANT:
        return FOR_AN_INSTANT.format(time=f"{seconds:.1f} s" if seconds >= 0.05 else "under 0.1 s")
    return BEYOND_FOR.format(time=time_text(seconds))


def _where(told: Values, system: str) -> dict[str, str]:
    return {
        "road_speed": SPEED.text(told["road_speed"], system),
        "distance": LENGTH.text(told["distance"], system),
    }


def time_text(seconds: float) -> str:
    """A time, of minutes in minutes."""
    if seconds < 120:
        return f"{seconds:.1f} s"
    minutes, rest = divmod(round(seconds), 60)
    return f"{minutes} min {rest} s" if rest else f"{minutes} min"
