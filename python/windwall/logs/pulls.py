"""Cuts a log into pulls: full throttle, one gear, no slip, nothing missing."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

import numpy as np

from windwall.logs.channels import Channel
from windwall.logs.gears import Gear, gear_at
from windwall.logs.mapping import Mapping, quantity
from windwall.results.log import Log, Pull
from windwall.scenario.data import ScenarioData

__all__ = [
    "AFTER_SHIFT", "BEFORE_LIFT", "BIN", "HIGH", "LEAST_ROWS", "LEAST_TIME", "MEDIAN_OF", "NEARLY",
    "SAME_RATIO", "TURNS", "pulls", "speeding_at_top",
]  # fmt: skip

NEARLY = 0.95  # of the pedal's highest, and of the manifold's at that engine speed
HIGH = 0.8  # of the manifold's highest, above which its top at an engine speed is full throttle
BIN = 52.4  # rad/s, 500 rpm
SAME_RATIO = 0.025  # within which a clutch or belt does not slip
LEAST_TIME = 1.5  # s
LEAST_ROWS = 12
AFTER_SHIFT, BEFORE_LIFT = 0.4, 0.2  # s, left out of each pull at its ends
MEDIAN_OF = 5
TURNS = 5.0  # rad/s2, that an engine gains at least where no road speed tells a gear


def pulls(
    log: Log,
    channels: dict[str, Channel],
    gears: tuple[Gear, ...],
    mapping: Mapping,
    scenario: ScenarioData,
) -> tuple[tuple[Pull, ...], tuple[str, ...]]:
    """Every pull of a log, in order, and why there are none or fewer than one may expect."""
    if "engine/speed" not in channels:
        return (), ("No column is engine/speed; without it nothing is known of a pull.",)
    full, reason = _full_throttle(log, channels)
    if full is None:
        return (), (reason,)
    gear, ratio = _gear(log, channels, gears)
    found: list[Pull] = []
    left: list[str] = []
    for first, last in _stretches(full, gear, log):
        whole = log.time[last] - log.time[first]
        kept = _without_slip(first, last, ratio)
        if whole >= LEAST_TIME and kept is None:
            left.append(
                f"Lines {log.lines[first]} to {log.lines[last]}: the clutch or a belt slips."
            )
        whole_rows = kept and _trimmed(log, *kept)
        if not whole_rows:
            continue
        found.append(_pull(log, channels, gears, *whole_rows, gear, ratio, len(found) + 1))
    day = _stated_day(mapping, scenario)
    made = tuple(one._replace(day=day | _read_day(channels, one)) for one in found)
    return made, (reason, *left) if reason else tuple(left)


def _full_throttle(log: Log, channels: dict[str, Channel]) -> tuple[np.ndarray | None, str]:
    if "pedal" in channels:
        pedal = channels["pedal"].on(log.time)
        top = np.nanpercentile(pedal, 99)
        if top < 0.8:
            return None, f"The pedal never passes {100 * top:.0f} %; no pull is at full throttle."
        return pedal >= NEARLY * top, ""
    pressure = _pressure(log, channels)
    if pressure is None:
        said = (
            "No column is pedal, manifold/pressure or manifold/boost; full throttle is not known."
        )
        return None, said
    turning = channels["engine/speed"].on(log.time)
    speeding = np.gradient(turning, log.time) > 0
    said = "No column is pedal; full throttle is where the manifold is near its top, speeding up."
    return speeding_at_top(turning, pressure, speeding), said


def _pressure(log: Log, channels: dict[str, Channel]) -> np.ndarray | None:
    """Above vacuum; of a boost gauge above the standard air, which is near enough."""
    if "manifold/pressure" in channels:
        return channels["manifold/pressure"].on(log.time)
    if "manifold/boost" in channels:
        return channels["manifold/boost"].on(log.time) + 1e5
    return None


def speeding_at_top(turning: np.ndarray, pressure: np.ndarray, speeding: np.ndarray) -> np.ndarray:
    """Where the pressure is near the highest of its engine speed, and that near that of all."""
    found = np.zeros(len(turning), bool)
    bins = np.floor(np.nan_to_num(turning, nan=-1.0) / BIN)
    highest = np.nanpercentile(pressure, 99)
    for one in np.unique(bins):
        inside = (bins == one) & np.isfinite(pressure)
        if inside.sum() > 2:
            top = np.percentile(pressure[inside], 95)
            found |= inside & (pressure >= NEARLY * top) & (top > HIGH * highest)
    return found & _mostly(speeding)


def _mostly(true: np.ndarray) -> np.ndarray:
    """Noise flips a sign now and then: what most of the rows nearby say."""
    return np.convolve(true, np.ones(9) / 9, "same") > 0.5


def _gear(
    log: Log, channels: dict[str, Channel], gears: tuple[Gear, ...]
) -> tuple[np.ndarray, np.ndarray]:
    """The gear of each row, -1 where an engine speeds up and no road speed tells; and the ratio."""
    turning = channels["engine/speed"].on(log.time)
    if "road/speed" not in channels:
        slope = np.gradient(_median(turning), log.time)
        return np.where(_mostly(slope > TURNS), -1, 0), np.full(len(turning), np.nan)
    road = channels["road/speed"].on(log.time)
    with np.errstate(divide="ignore", invalid="ignore"):
        ratio = _median(np.where(road > 1, turning / road, np.nan))
    return gear_at(gears, ratio * road, road), ratio


def _median(values: np.ndarray) -> np.ndarray:
    """A running median of a few rows."""
    padded = np.pad(values, MEDIAN_OF // 2, mode="edge")
    windows = np.lib.stride_tricks.sliding_window_view(padded, MEDIAN_OF)
    return np.median(windows, axis=1)


def _stretches(full: np.ndarray, gear: np.ndarray, log: Log) -> Iterator[tuple[int, int]]:
    """First and last row of each stretch in which nothing changes and that is full throttle."""
    state = np.where(full, gear, 0)
    ends = np.flatnonzero((np.diff(state) != 0) | (np.diff(log.part) != 0))
    bounds = np.r_[-1, ends, len(state) - 1]
    for before, last in pairwise(bounds):
        if state[last] != 0 and last - before >= LEAST_ROWS:
            yield int(before) + 1, int(last)


def _without_slip(first: int, last: int, ratio: np.ndarray) -> tuple[int, int] | None:
    """The longest run of rows of a stretch that keep its ratio."""
    inside = ratio[first : last + 1]
    if np.isnan(inside).all():
        return first, last
    # The later half of a pull slips least.
    usual = np.nanmedian(inside[len(inside) // 2 :])
    keeps = np.abs(inside / usual - 1) <= SAME_RATIO
    edges = np.flatnonzero(np.diff(np.r_[0, keeps.astype(int), 0]))
    if not len(edges):
        return None
    begin, end = max(zip(edges[::2], edges[1::2], strict=True), key=lambda one: one[1] - one[0])
    return first + int(begin), first + int(end) - 1


def _trimmed(log: Log, first: int, last: int) -> tuple[int, int] | None:
    time = log.time
    begin = int(np.searchsorted(time, time[first] + AFTER_SHIFT))
    end = int(np.searchsorted(time, time[last] - BEFORE_LIFT, "right")) - 1
    if end - begin + 1 < LEAST_ROWS or time[end] - time[begin] < LEAST_TIME:
        return None
    return begin, end


def _pull(
    log: Log,
    channels: dict[str, Channel],
    gears: tuple[Gear, ...],
    first: int,
    last: int,
    gear: np.ndarray,
    ratio: np.ndarray,
    number: int,
) -> Pull:
    within = slice(first, last + 1)
    turning = channels["engine/speed"].on(log.time)[within]
    its = int(gear[first]) if gear[first] > 0 else None
    there = next((one for one in gears if one.number == its), None)
    slip = None
    if there is not None and not there.varies:
        slip = float(np.nanmedian(ratio[within]) / np.sqrt(there.low * there.high) - 1)
    return Pull(
        f"pull {number}",
        first,
        last,
        (int(log.lines[first]), int(log.lines[last])),
        None if there is not None and there.varies else its,
        slip,
        (float(np.nanmin(turning)), float(np.nanmax(turning))),
        (float(log.time[first]), float(log.time[last])),
        {},
    )


def _stated_day(mapping: Mapping, scenario: ScenarioData) -> dict[str, float]:
    return {
        f"day/{key}": quantity(text, scenario.measure(f"day/{key}"))
        for key, text in mapping.day.items()
    }


def _read_day(channels: dict[str, Channel], pull: Pull) -> dict[str, float]:
    """The middle of what the columns of the day show over a pull."""
    within = slice(pull.first, pull.last + 1)
    return {
        address: float(np.nanmedian(one.values[within]))
        for address, one in channels.items()
        if address.startswith("day/") and np.isfinite(one.values[within]).any()
    }
