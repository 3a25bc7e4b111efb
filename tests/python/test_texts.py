"""What stands in the printed answers is what the answers say."""

import re
from math import degrees


def line_of(text, start):
    (found,) = [line for line in text.splitlines() if line.strip().startswith(start)]
    return found


def test_the_goal_is_short_by_the_difference(car, best):
    goal = line_of(repr(best), "goal")
    assert goal.split()[1:3] == ["150.0", "km/h:"]
    easy = line_of(repr(car.set({"goal/speed": "100 km/h"}).top_speed()), "goal")
    assert easy.endswith("reached")
    hard = line_of(repr(car.set({"goal/speed": "200 km/h"}).top_speed()), "goal")
    assert hard.endswith(f"{200 - best.goal_speed * 3.6:.1f} km/h short")


def test_an_account_is_printed_in_watts_and_shares(best):
    air = line_of(repr(best), "air ")
    watts, share = re.fullmatch(r"air ([\d ]+?) +([\d.]+)", re.sub(" +", " ", air.strip())).groups()
    assert float(watts.replace(" ", "")) == round(best.shaft["air"])
    assert float(share) == round(100 * best.shaft["air"] / best.shaft["indicated"], 1)


def test_accessories_that_nobody_states_are_not_said_to_take_nothing(car, best):
    account = repr(best).split("Shaft: where the power goes")[1]
    assert re.search(r"\n  accessories +not stated\n", account)
    for key in ("torque", "fan_torque"):
        stated = repr(car.set({f"engine/accessories/{key}": "0 N m"}).top_speed())
        assert re.search(r"\n  accessories +0 +0.0\n", stated)
        assert "not stated" not in stated.split("Shaft:")[1].split("Heat:")[0]


def test_stations_are_printed_as_they_are(best):
    words = line_of(repr(best), "behind roots").split()
    pressure = best.stations.loc["behind roots", "pressure"]
    assert float(words[2]) == round(pressure / 1e3, 1)
    assert float(words[3]) == round((pressure - 99e3) / 1e3, 1)


def test_a_point_says_each_row_with_its_unit(car):
    point = car.operating_point("4200 rpm")
    line = line_of(repr(point), "Torque at the flywheel")
    assert line.endswith(" N m")
    assert float(line.split()[-3]) == round(point.engine.torque, 2)


def test_holding_knock_off_has_a_consequence(car):
    worse = car.set({"engine/knock_anchor/octane_number": 105.0}).top_speed()
    assert worse.knock.retard > 0
    text = " ".join(repr(worse).split())
    assert "At the spark of best torque and the engine's own mixture it would be -" in text
    assert "To hold the margin the spark is held" in text
    assert "heats the exhaust" in text
    assert "Left after that:" in text


def test_going_faster_than_seen_names_the_energy(car, best):
    text = " ".join(repr(best).split())
    energy = 0.5 * car.get("body/mass") * best.goal_speed**2 / 1e3
    assert f"would carry {energy:.0f} kJ" in text
    assert "brakes would have to take it" in text
    slow = car.set({"body/drag_area": "3 m2"}).top_speed()
    assert "Faster than seen" not in repr(slow)


def test_gains_are_printed_at_three_anchors(ranking):
    text = repr(ranking)
    table = text[text.index("\nEvery upgrade") : text.index("Gains in")]
    words = line_of(table, "small_pulley ").split()
    worth = ranking.upgrades["small_pulley"]
    printed = [float(word) for word in words[1:10]]
    gains = [gain * 3.6 for gain in (*worth.alone, *worth.last, *worth.share)]
    assert printed == [round(gain, 1) + 0.0 for gain in gains]
    assert words[10] == f"{degrees(ranking.alone_with('small_pulley').retard):.0f}"
    assert words[11] == f"{ranking.alone_with('small_pulley')['lambda']:.2f}"
    assert words[12:14] == ["45", "EUR"]
    assert float(words[14]) == round(45 / (worth.alone[1] * 3.6))
