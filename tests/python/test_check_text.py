"""What a file leaves open, and how its mistakes are shown."""

from windwall.errors import Problem, ScenarioError
from windwall.report.text.check import WIDEST, check_text, left_open, offending, problems_text


def test_what_is_left_open_is_said(car):
    addresses = [address for address, _ in left_open(car)]
    assert addresses[0] == "engine/knock_anchor/octane_number"
    assert "charge_path/roots/rotor_speed" in addresses
    anchored = car.set({"engine/knock_anchor/octane_number": "90 ± 5"})
    assert addresses[1:] == [address for address, _ in left_open(anchored)]


def test_nobody_knows_exactly_where_an_engine_knocks(car):
    exact = car.set({"engine/knock_anchor/octane_number": "90"})
    address, sentence = next(left_open(exact))
    assert address == "engine/knock_anchor/octane_number"
    assert "taken as known to +/- 5 octane numbers" in sentence
    assert exact.operating_point("4200 rpm").knock_band.sigma == 5
    stated = car.set({"engine/knock_anchor/octane_number": "90 ± 3"})
    assert stated.operating_point("4200 rpm").knock_band.sigma == 3


def test_a_good_file_names_its_digest(car):
    text = check_text(car)
    assert text.startswith("scenario: no problems")
    assert car.digest in text


def test_a_mark_stands_under_the_place():
    assert offending(Problem("a", 2, 3, ""), ["one", "two", "x"]) == ["    two", "      ^"]


def test_a_long_line_is_cut_around_the_place():
    line = "x" * 500 + "HERE" + "x" * 500
    shown, mark = offending(Problem("a", 1, 501, ""), [line])
    assert len(shown) <= WIDEST + 4
    assert shown[mark.index("^") :].startswith("HERE")


def test_signs_that_move_a_cursor_are_blanked():
    shown, mark = offending(Problem("a", 1, 5, ""), ["\x1b\t‮z\x07!"])
    assert shown == "       z !"
    assert mark.index("^") == 8


def test_a_problem_without_a_place_has_no_line():
    assert offending(Problem("a", 0, 0, ""), ["one"]) == []
    assert offending(Problem("a", 9, 1, ""), ["one"]) == []
    wrong = ScenarioError([Problem("budget", 0, 0, "no cost")])
    assert problems_text(wrong, "") == "budget: no cost\n1 problem"
