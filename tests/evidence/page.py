"""Makes docs/evidence.md of the notes: weak points first, then every check by what it is of."""

import ast
from collections import Counter
from pathlib import Path

import numpy as np

from evidence.notes import EXACT
from evidence.strip import strip

ROOT = Path(__file__).parents[2]
PAGE = ROOT / "docs" / "evidence.md"
PLOTS = ROOT / "docs" / "evidence"
PUBLISHED = ROOT / "tests" / "published"
WEAK = Path(__file__).parent / "weak.md"
VEHICLE = {
    "test_best_gearing",
    "test_coast_down",
    "test_coast_down_fit",
    "test_coast_down_table",
    "test_drive_closed_forms",
    "test_drive_rules",
    "test_road",
    "test_road_tests",
}
ENGINE = {
    "test_blown_ratings",
    "test_exhaust_heat",
    "test_fuel_air_cycle",
    "test_gains",
    "test_knock",
    "test_old_ratings",
    "test_power_correction",
    "test_ratings",
    "test_temperatures",
    "test_whole_engine",
}
HELD = """more lean on a number that is remembered and count as nothing. A line is one test; of its
comparisons the one that used up most of its tolerance is shown, in SI units or those of the test.
Where a test holds bounds only, or draws its cases at random, its line has no numbers. Errors below
1e-9 are those of arithmetic."""
STRIPS = """Model over what was printed, less one. Grey is the target for the median size, red the
median. Open rows could be looked at while class values were chosen, sealed ones (a third, by a hash
of their names) could not; nothing was chosen on the tables of blown engines, of the 1970s and of
changes, so there the halves are alike."""
GROUPS = ("Parts and what flows through them", "Engines", "Vehicles")


def group(module):
    if module in VEHICLE:
        return GROUPS[2]
    return GROUPS[1] if module in ENGINE or module.startswith("test_engine") else GROUPS[0]


def write(notes):
    PLOTS.mkdir(exist_ok=True)
    PAGE.write_text(page(notes), "utf-8")
    for name, parts in notes.distributions.items():
        (PLOTS / f"{file_name(name)}.svg").write_text(strip(name, parts), "utf-8")


def file_name(plot):
    return plot.lower().replace(" ", "_").replace(",", "")


def page(notes):
    checks = list(notes.checks.values())
    parts = [WEAK.read_text("utf-8").rstrip(), targets(checks), counted(checks), plots(notes)]
    parts += [one_group(name, checks) for name in GROUPS]
    return "\n\n".join(parts) + "\n"


def targets(checks):
    """What was aimed at and is not reached."""
    missed = [(check, one) for check in checks for one in check.bounds if not one.met]
    lines = ["## Targets that are not met", ""]
    lines += head("claim", "found", "target", "held at", "test")
    lines += [
        row(one.claim, short(one.found), short(one.target), short(one.held), f"`{check.name}`")
        for check, one in missed
    ]
    return "\n".join(lines)


def counted(checks):
    cases = Counter()
    for check in checks:
        cases["memory" if check.remembered else group(check.module)] += check.cases
    told = ", ".join(f"{cases[name]} of {name.lower()}" for name in GROUPS)
    return f"## What was held\n\nChecks from outside: {told}. {cases['memory']} {HELD}"


def plots(notes):
    lines = ["## Distributions", "", STRIPS, ""]
    lines += head("table", "part", "rows", "median", "median size", "nine tenths within")
    for name, parts in notes.distributions.items():
        lines += [of_part(name, part, errors) for part, (errors, _) in parts.items()]
    for name in notes.distributions:
        lines += ["", f"![{name}](evidence/{file_name(name)}.svg)"]
    return "\n".join(lines)


def of_part(name, part, errors):
    sizes = np.abs(errors)
    spread = percent(np.median(sizes)), percent(np.quantile(sizes, 0.9))
    return row(name, part, len(errors), f"{100 * np.median(errors):+.1f} %", *spread)


def one_group(name, checks):
    modules = dict.fromkeys(check.module for check in checks if group(check.module) == name)
    told = [one_module(module, [c for c in checks if c.module == module]) for module in modules]
    return "\n\n".join([f"## {name}", *told])


def one_module(module, checks):
    doc = ast.get_docstring(ast.parse((PUBLISHED / f"{module}.py").read_text("utf-8")))
    title = module.removeprefix("test_").replace("_", " ").capitalize()
    lines = [f"### {title}", "", *doc.splitlines(), ""]
    lines += head("claim", "cases", "ours", "theirs", "error", "tolerance")
    return "\n".join(lines + [line for check in checks for line in of_check(check)])


def of_check(check):
    """Its line, and one more for each comparison or bound that has a claim of its own."""
    lines = [of_comparison(one.claim, "", one) for one in check.compared if one.claim]
    lines += [row(one.claim, "", short(one.found), "", "", side(one)) for one in check.bounds]
    claim = (check.claim or check.name.removeprefix("test_").replace("_", " ")).replace("|", "\\|")
    claim += " (from memory)" if check.remembered else ""
    if check.worst:
        return [of_comparison(claim, check.cases, check.worst), *lines]
    return lines or [row(claim, check.cases, "", "", "", "drawn" if check.drawn else "bounds")]


def of_comparison(claim, cases, one):
    numbers = short(one.ours), short(one.theirs), error(one), relative(one.tolerance, one)
    return row(claim, cases, *numbers)


def side(bound):
    return f"at {'least' if bound.at_least else 'most'} {short(bound.held)}"


def head(*cells):
    return [row(*cells), row(*["---"] * len(cells))]


def row(*cells):
    return f"| {' | '.join(map(str, cells))} |"


def short(number):
    return f"{number:.4g}"


def percent(share):
    return f"{100 * share:.1f} %"


def error(one):
    return "exact" if one.relative < EXACT else relative(one.error, one)


def relative(size, one):
    """In per cent of theirs, or as it is where theirs is nought."""
    return f"{100 * size / abs(one.theirs):.2g} %" if one.theirs else f"{size:.2g}"
