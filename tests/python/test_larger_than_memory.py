"""A sweep in a Zarr store is the one in memory."""

import builtins
import errno
import shutil

import numpy as np
import pytest

import windwall as ww
from python.studies import INPUTS, READ, in_small_pieces, same_bits
from windwall.study import executors
from windwall.study import sweep as sweeping
from windwall.study.grid import Grid


@pytest.fixture(autouse=True)
def _small(monkeypatch):
    in_small_pieces(monkeypatch, 4)
    monkeypatch.setattr(sweeping, "BLOCK", 18)  # six masses of three areas


@pytest.fixture
def place(tmp_path):
    return tmp_path / "grid.zarr"


def ask(car, place, **how):
    return ww.sweep(car, INPUTS, READ, **({"progress": False} | how), to=place)


def test_it_is_the_same(car, swept_grid, place):
    found = ask(car, place)
    assert found["speed"].encoding["chunks"] == (6, 3)
    assert found.attrs["complete"] is True
    assert same_bits(swept_grid, found)
    import xarray as xr

    again = xr.open_zarr(place, chunks=None)
    assert same_bits(swept_grid, again[list(swept_grid.data_vars)])


def test_stopped_it_says_what_was_not_reached_and_goes_on(
    car, swept_grid, place, tmp_path, monkeypatch
):
    how = {"journal": tmp_path / "journal"}
    some = ask(car, place, **how, progress=lambda done, total: done < 24)
    assert some.attrs["complete"] is False
    status = some["status"].values
    solved = status == "solved"
    assert 24 <= solved.sum() < 60
    assert set(status[~solved]) <= {"cancelled", ""}
    assert np.isnan(some["speed"].values[~solved]).all()
    before = len(list(filter(None, solved.ravel()))) // 4
    count, solve = [], executors.solved
    monkeypatch.setattr(executors, "solved", lambda *one: count.append(1) or solve(*one))
    found = ask(car, place, **how)
    assert same_bits(swept_grid, found)
    # Pieces of four do not cross blocks of eighteen, so that every fifth is of two.
    assert len(count) <= 17 - before


@pytest.mark.parametrize("left", [8 << 10, 112 << 10])  # bytes: not for its names; for some blocks
def test_a_full_disk_of_the_results_loses_nothing(car, swept_grid, small_disk, tmp_path, left):
    """The journal lies elsewhere."""
    ballast, how = small_disk / "ballast", {"journal": tmp_path / "journal"}
    ballast.write_bytes(bytes(shutil.disk_usage(small_disk).free - left))
    with pytest.raises(OSError, match="no room is left on the disk of the results") as full:
        ask(car, small_disk / "grid.zarr", **how)
    assert full.value.errno == errno.ENOSPC
    ballast.unlink()
    assert same_bits(swept_grid, ask(car, small_disk / "grid.zarr", **how))


def test_more_than_memory_is_refused_without_it(car):
    with pytest.raises(ValueError, match=r"to='NEW\.zarr'"):
        ww.sweep(car, {"body/mass": [300.0] * 1500, "body/drag_area": [0.5] * 1500})


def test_what_else_is_there_is_left_alone(car, place):
    place.mkdir()
    (place / "notes.txt").write_text("mine", encoding="utf-8")
    with pytest.raises(ww.ScenarioError, match="there already"):
        ask(car, place)
    assert (place / "notes.txt").read_text("utf-8") == "mine"


def test_a_store_that_was_just_begun_is_begun_anew(car, swept_grid, place):
    """Its head is two files, and a full disk or a kill may leave one of them, or half of it."""
    place.mkdir()
    (place / ".zgroup").write_text('{"zarr_format": 2}', encoding="utf-8")
    (place / ".zattrs").write_text('{"wind', encoding="utf-8")
    assert same_bits(swept_grid, ask(car, place))


def test_a_head_of_something_else_is_left_alone(car, place):
    place.mkdir()
    (place / ".zgroup").write_text('{"zarr_format": 2}', encoding="utf-8")
    (place / ".zattrs").write_text('{"mine": 1}', encoding="utf-8")
    with pytest.raises(ww.ScenarioError, match="there already"):
        ask(car, place)
    assert (place / ".zattrs").read_text("utf-8") == '{"mine": 1}'


def test_without_zarr_it_says_what_to_install(car, place, monkeypatch):
    real = builtins.__import__

    def without(name, *how):
        if name == "zarr":
            raise ModuleNotFoundError("No module named 'zarr'", name="zarr")
        return real(name, *how)

    monkeypatch.setattr(builtins, "__import__", without)
    with pytest.raises(ModuleNotFoundError, match=r"windwall\[studies\]"):
        ask(car, place)


@pytest.mark.parametrize("most", [1, 4, 5, 12, 36, 1000])
def test_blocks_are_boxes_and_runs_at_once(most):
    grid = Grid({"a": [1.0, 2, 3], "b": list(range(7)), "c": list(range(5))})
    seen = np.full(grid.shape, -1)
    for block in grid.blocks(most):
        assert len(block.variants) <= most
        seen[block.box] = np.reshape(block.variants, block.shape)
    assert (seen.ravel() == np.arange(grid.size)).all()
    columns = grid.columns(range(8, 40))
    assert [tuple(one) for one in columns.T] == [
        (a, b, c) for a in (1, 2, 3) for b in range(7) for c in range(5)
    ][8:40]
