"""How the questions of `windwall new` are answered in US units."""

__all__ = ["ALSO", "EXAMPLES", "SEAT"]

SEAT = "Steel seat left at home, 20 USD, mass - 26 lb"
EXAMPLES = {
    "displacement": "38 in3",
    "bore": "3.00 in",
    "stroke": "2.70 in",
    "rated_torque": "32 lbf ft at 2500 rpm",
    "rated_power": "19.5 hp at 3600 rpm",
    "throttle": "1.2 in",
    "blower": "14 in3",
    "mass": "770 ± 10 lb",
    "drag_area": "7.5 ± 0.5 ft2",
    "temperature": "77 degF",
    "altitude": "400 ft",
    "goal_speed": "87 mph",
    "run_up": "1 mi",
    "seen_speed": "76 ± 1 mph",
    "seen_boost": "4.2 ± 0.6 psi",
    "upgrades": "sprockets 60 USD, fairing 150 USD",
    "upgrade": SEAT,
    "upgrade_2": SEAT,
    "upgrade_3": SEAT,
}
ALSO = {
    "rated_power": "gross, 21 hp gross at 3600 rpm, where it was printed without silencer",
    "drag_area": "height x width, such as 48 in x 51 in, for a guess",
    "tyre": "the measured rolling radius, such as 10.4 in",
    "altitude": "the barometer, such as 29.1 inHg abs",
}
