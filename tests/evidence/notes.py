"""What checks from outside compared, noted while they run.

`pytest.approx` is watched, so a test says its numbers once; where a test holds a bound instead it
asks the fixture `evidence` to hold it.
"""

from dataclasses import dataclass, field
from functools import cache

import numpy as np

EXACT = 1e-9  # errors below it are those of arithmetic


@dataclass(frozen=True)
class Compared:
    """One number of ours beside one of theirs, in whatever unit the test has."""

    ours: float
    theirs: float
    tolerance: float
    claim: str = ""  # where it deserves a line of its own

    @property
    def error(self):
        return abs(self.ours - self.theirs)

    @property
    def relative(self):
        return self.error / abs(self.theirs) if self.theirs else self.error

    @property
    def share(self):
        """Of the tolerance that was used up."""
        return self.error / self.tolerance if self.error else 0.0


@dataclass(frozen=True)
class Bound:
    """Something found that has to stay at or below `held`, or at or above it; the target may be
    harder to meet than that."""

    claim: str
    found: float
    target: float
    held: float
    at_least: bool = False

    def within(self, bound):
        return self.found >= bound if self.at_least else self.found <= bound

    @property
    def met(self):
        return self.within(self.target)


@dataclass
class Check:
    """All that one test function said, over its parameters."""

    module: str
    name: str
    claim: str
    remembered: bool
    drawn: bool = False  # at random, so that no number is the same again
    cases: int = 0
    compared: list[Compared] = field(default_factory=list)
    bounds: list[Bound] = field(default_factory=list)

    def at_most(self, claim, found, target, held=None):
        """Holds `found` at the target or below, or where that is not met below what was found."""
        self.hold(Bound(claim, float(found), target, target if held is None else held))

    def at_least(self, claim, found, target):
        self.hold(Bound(claim, float(found), target, target, at_least=True))

    def hold(self, bound):
        self.bounds.append(bound)
        assert bound.within(bound.held), bound

    def near(self, ours, theirs, tolerance, claim=""):
        """Holds numbers, or arrays of them, within a tolerance."""
        for one in pairs(ours, theirs, tolerance, claim):
            self.compared.append(one)
            assert one.share <= 1 + EXACT, one

    @property
    def worst(self):
        """The comparison that used up most of its tolerance; the first, if all are exact."""
        some = [one for one in self.compared if not one.claim]
        real = [one for one in some if one.relative > EXACT]
        return max(real, key=lambda one: one.share) if real else next(iter(some), None)


class Notes:
    """Checks in the order they ran, and distributions by name and part."""

    def __init__(self):
        self.checks = {}
        self.distributions = {}
        self.left_out = set()

    def of(self, item):
        """The check that a test belongs to, counted once more."""
        function = item.function
        key = (item.path.stem, item.originalname)
        doc = (function.__doc__ or "").strip().split("\n\n")[0]
        if key not in self.checks:
            memory = item.get_closest_marker("memory") is not None
            drawn = hasattr(function, "hypothesis")
            self.checks[key] = Check(*key, " ".join(doc.split()), memory, drawn)
        self.checks[key].cases += 1
        return self.checks[key]

    def distribution(self, plot, part, errors, within):
        """Relative errors to be plotted, and the median size that is aimed at."""
        self.distributions.setdefault(plot, {})[part] = (np.asarray(errors, float), within)


def watching(approx, check):
    """`pytest.approx` that notes in `check` what is compared with it."""

    @cache
    def kind_like(kind):
        class Watched(kind):
            __hash__ = None

            def __eq__(self, actual):
                same = super().__eq__(actual)
                if same:
                    note(check, actual, self)
                return same

        return Watched

    def watched(expected, *args, **kwargs):
        made = approx(expected, *args, **kwargs)
        made.__class__ = kind_like(type(made))
        return made

    return watched


def note(check, actual, expected):
    theirs = expected.expected
    if isinstance(theirs, dict):
        actual, theirs = ([some[key] for key in theirs] for some in (actual, theirs))
    if np.asarray(theirs).dtype.kind not in "fiu":
        return
    theirs = np.asarray(theirs, float)
    rel = expected.rel
    if rel is None:
        rel = 1e-6 if expected.abs is None else 0.0
    least = 1e-12 if expected.abs is None else float(expected.abs)
    check.compared += pairs(actual, theirs, np.maximum(float(rel) * np.abs(theirs), least))


def pairs(ours, theirs, tolerance, claim=""):
    """Each number of arrays that may be broadcast."""
    arrays = np.broadcast_arrays(*(np.asarray(one, float) for one in (ours, theirs, tolerance)))
    flat = (one.ravel().tolist() for one in arrays)
    return [Compared(*trio, claim) for trio in zip(*flat, strict=True)]
