"""What somebody answers to the questions of `windwall new`."""

from windwall.cli.new_questions import QUESTIONS

ANSWERS = {
    "title": "Orchard racer",
    "cylinders": "2",
    "bore": "76 mm",
    "stroke": "68.8 mm",
    "compression_ratio": "7.6 ± 0.1",
    "rev_limit": "5000 rpm",
    "throttle": "30 mm",
    "blower": "230 cm3",
    "blower_ratio": "1.35",
    "mass": "348 ± 5 kg",
    "drag_area": "0.70 ± 0.05 m2",
    "tyre": "135/80 R13 70T",
    "primary": "26:52",
    "gears": "3.2, 2.0, 1.45, 1.1",
    "final_drive": "18:30",
    "temperature": "33 degC",
    "altitude": "98.4 kPa",
    "goal_speed": "140 km/h",
    "run_up": "1600 m",
    "seen_speed": "122 ± 2 km/h",
    "seen_gear": "4",
    "seen_boost": "29 ± 4 kPa",
    "seen_knock": "not heard",
}
LEAST = {question.name: question.example for question in QUESTIONS if question.needed}
del LEAST["blower_ratio"]  # no blower, no ratio


def typed(answers):
    """What somebody types who answers these and leaves the others empty."""
    names = [one.name for one in QUESTIONS if one.follows(answers)]
    return "".join(answers.get(name, "") + "\n" for name in names)
