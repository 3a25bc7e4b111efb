"""Every loop of the core ends: by a count, or for a reason that stands here.

A loop over a range, or one that counts by whole numbers to a bound, needs none. What is left are
loops that go on while something about numbers holds; each is listed with what bounds it.
"""

import re
from pathlib import Path

import pytest

CPP = Path(__file__).parents[2] / "cpp" / "windwall"
FLOORS = ["numerics", "media", "charge", "engine", "driveline", "road", "vehicle", "solve", "study"]

COMMENT = re.compile(r"//[^\n]*|/\*.*?\*/|\"(?:\\.|[^\"\\\n])*\"", re.DOTALL)
LOOP = re.compile(r"\b(while|do|for)\b\s*(?=[({])")
# `i < n` with a step of one, or `i-- > 0`, is a count.
COUNT = re.compile(r"\w+(?:::\w+)? \w+ = [^;]*;[^;]*\b\w+ <=? [^;]*; \+\+\w+(?:,[^;]*)?")
COUNT_DOWN = re.compile(r"std::size_t \w+ = [^;]*; \w+-- > 0;")
# `while (i + 1 < n && ...) ++i;` and `while (i > 0 && ...) --i;` walk along something.
WALK_UP = re.compile(r"\b([\w.]+) (?:\+ \d )?< ")
WALK_DOWN = re.compile(r"\b(\w+) > 0 && ")

HALVED = "halved at least each time, and given up at a least value"
WIDENED = "twice as far each time, up to an end"
# What bounds it, and where that is not plain, how the question ends.
ENDS = {
    "numerics/newton.cpp": {
        "while (!converged())": "each turn evaluates or stalls; evaluations are counted: too_many",
        "for (double length = 1; length >= least;)": HALVED,
    },
    "charge/characteristic.cpp": {
        "while (speeds[faster.first] < speed && faster.last + 1 < speeds.size())": "a later "
        "line of the map each time",
    },
    "media/nested_equilibrium.cpp": {
        "for (; excess_high < 0 && high < hottest; step *= 2)": WIDENED,
    },
    "road/size_scanner.hpp": {
        "while (!text.empty())": "a text, shorter each time",
        "while (rest_.starts_with(' '))": "a text, shorter each time",
    },
    "road/tyre_size.cpp": {
        "for (auto word = scan.word(); !word.empty(); word = scan.word())": "words of a text",
    },
    "solve/answer/flyweights.cpp": {
        "while (!vehicle.driveline[at].part.as<driveline::BeltCvt>())": "along the driveline to "
        "the belt drive that has been found there",
    },
    "solve/drive/run.cpp": {
        "for (leg_ = 0; leg_ < outing_.legs.size() && verdict != Verdict::drive_ends; "
        "++leg_)": "the legs of the outing",
        "for (double at = kept_at_ + (stands ? options_.every_standing : options_.every); at < to; "
        "at = kept_at_ + (stands ? options_.every_standing : options_.every))": "each keeps a "
        "moment later, up to the end of the step",
        "for (Verdict verdict = Verdict::leg_goes_on;;)": "time goes on, six hours on the move at "
        "most: too_long; events without time between them are counted: too_many_events",
    },
    "solve/drive/run_ends.cpp": {
        "for (double step = std::min(longest, integrator_.next_step()); step > shortest_step; "
        "step /= shorter)": "an eighth as long each time",
    },
    "solve/drive/run_hold.cpp": {
        "while (gear + 1 < shifts_.up.size())": "a gear higher each time",
        "for (std::size_t gear = shifts_.up.size() - 1; gear > lowest; --gear)": "a gear lower "
        "each time",
    },
    "solve/full_throttle/equilibrium_near.cpp": {
        "for (double step = first_step; ends.above > 0 && ends.high < walk.end(); "
        "step *= widening)": WIDENED,
        "for (double step = first_step; ends.below <= 0 && ends.low > 0; "
        "step *= widening)": WIDENED,
    },
    "solve/full_throttle/full_load_curve.cpp": {
        "for (int step = 1; ignored.empty(); ++step)": "counted inside; then there is no answer",
        "for (std::size_t i = 0; i + 1 < nodes_.size() && nodes_.size() < most_nodes;)": "each "
        "turn goes on or adds one of most_nodes",
    },
    "solve/full_throttle/torque_over_speed.cpp": {
        "for (std::size_t from = 0; from + 1 < nodes.size();)": "each turn ends at a later node",
    },
    "solve/part_load/held_speed.cpp": {
        "while (excess(high) < 0)": "twice as much each time, up to 64 usual torques: out_of_range",
        "while (excess(low) > 0)": "likewise, the other way",
    },
    "solve/part_load/held_torque.cpp": {
        "while (above < 0 && high < 1)": WIDENED,
    },
    "solve/point/hold_knock.cpp": {
        "while (below < 0)": "a share less each time, down to 2 %: no_survivable_state",
    },
    "solve/point/loop_bracket.cpp": {
        "for (double w = way; std::abs(w) <= std::abs(end); w += way)": "steps of one to 16; "
        "evaluations are counted: not_converged",
    },
    "solve/point/series_bracket.cpp": {
        "for (double flow = larger * flow_step; flow > least_flow; flow *= flow_step)": "a share "
        "less each time, 106 times: no_survivable_state",
    },
    "study/batch.cpp": {
        "while (!stop)": "a number higher each time, up to the items",
        "while (!finished.wait_for(lock, std::chrono::milliseconds(100), "
        "[this] { return working == 0; }))": "as long as workers work, which all end",
    },
    "study/fair_share.cpp": {
        "for (Set set = 0; set != target;)": "subsets in rising order, the last is the whole",
        "for (auto set = sets.rbegin(); set != sets.rend(); ++set)": "a range backwards",
    },
    "study/gains.cpp": {
        "while (!order.empty() && first.size() < most_leaders)": "one fewer each time",
    },
}


def in_brackets(text, at):
    """What stands in the brackets that open there, brackets included."""
    depth = 0
    for end in range(at, len(text)):
        depth += {"(": 1, ")": -1}.get(text[end], 0)
        if depth == 0:
            return text[at : end + 1]
    return text[at:]


def counted(keyword, head, behind):
    """Whether a loop with this head, and this text behind it, ends by a count."""
    if keyword == "for":
        return ";" not in head or COUNT.fullmatch(head) or COUNT_DOWN.fullmatch(head)
    up, down = WALK_UP.search(head), WALK_DOWN.match(head)
    return (up and behind.startswith(f"++{up[1]};")) or (
        down and behind.startswith(f"--{down[1]};")
    )


def uncounted(text):
    """Loops of a file that do not end by a count, as they are written but for white space."""
    code = COMMENT.sub("", text)
    found = []
    for match in LOOP.finditer(code):
        brackets = in_brackets(code, match.end()) if match[1] != "do" else "()"
        head = " ".join(brackets[1:-1].split())
        behind = code[match.end() + len(brackets) :].lstrip(" {\n")
        if not counted(match[1], head, behind):
            found.append(f"{match[1]} ({head})" if head else match[1])
    return found


def loops(floor):
    return {
        path.relative_to(CPP).as_posix(): found
        for path in sorted((CPP / floor).rglob("*.?pp"))
        if (found := uncounted(path.read_text("utf-8")))
    }


@pytest.mark.parametrize("floor", FLOORS)
def test_every_loop_ends(floor):
    unnamed = {
        (path, loop)
        for path, found in loops(floor).items()
        for loop in found
        if loop not in ENDS.get(path, {})
    }
    assert unnamed == set()


def test_no_reason_outlives_its_loop():
    there = {path: set(found) for floor in FLOORS for path, found in loops(floor).items()}
    stale = {path: set(ends) - there.get(path, set()) for path, ends in ENDS.items()}
    assert {path: ends for path, ends in stale.items() if ends} == {}


@pytest.mark.parametrize(
    "loop",
    [
        "while (true)",
        "for (;;)",
        "while (high - low > 1e-9)",
        "do",
        "for (double x = 1; x > y; x /= 2)",
        "for (std::size_t i = 0; i < n;)",
        "while (i + 1 < ends.size() && x > ends[i])",
    ],
)
def test_a_loop_without_a_count_is_found(loop):
    assert uncounted(f"void f() {{\n    {loop} {{ g(); }}\n}}") == [loop]


@pytest.mark.parametrize(
    "loop",
    [
        "for (const auto& one : all)",
        "for (int i = 0; i < most && high - low > 1e-9; ++i)",
        "for (std::size_t i = n; i-- > 0;)",
        "while (i + 1 < ends.size() && x > ends[i]) ++i; if (y)",
        "// while (true)",
    ],
)
def test_a_loop_with_one_is_not(loop):
    assert uncounted(f"void f() {{\n    {loop} {{ g(); }}\n}}") == []
