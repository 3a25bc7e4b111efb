"""`python tests/bench/large_sweep.py FOLDER [VARIANTS [WORKERS]]`: one large sweep of the microcar.

It is kept in a journal and written as Zarr in that folder, then asked again, which takes what the
journal has. Whatever ends it, the same line goes on; figures are of the part that was left then.
"""

import resource
import sys
from pathlib import Path

import numpy as np
from throughput import SCENARIO, grid, timed, told

import windwall as ww

EVERY = 9  # steps of each input, of which variants are solved once more by themselves
MEGABYTE = 1e6


def size(folder, name):
    """Megabytes of a file or a folder, with what lies beside it."""
    found = [one for start in folder.glob(f"{name}*") for one in (start, *start.rglob("*"))]
    return sum(one.stat().st_size for one in found if one.is_file()) / MEGABYTE


def peak(who):
    """Megabytes that a process held at most: this one, or the largest of its workers."""
    return resource.getrusage(who).ru_maxrss * 1024 / MEGABYTE


def files(folder):
    return sum(one.is_file() for one in (folder / "grid.zarr").rglob("*"))


def same_alone(car, inputs, found):
    """Whether variants in all corners of the grid have the same bits when solved by themselves."""
    some = {address: values[::EVERY] for address, values in inputs.items()}
    alone = ww.sweep(car, some, progress=False)
    part = found.isel({dim: slice(None, None, EVERY) for dim in found.sizes})
    return alone["speed"].size, all(
        np.asarray(part[name].values, one.dtype).tobytes() == one.values.tobytes()
        for name, one in alone.data_vars.items()
    )


def main(folder, variants, workers):
    folder.mkdir(exist_ok=True)
    car, inputs = ww.load(SCENARIO), grid(variants)
    how = {"executor": workers, "journal": folder / "journal", "to": folder / "grid.zarr"}
    found, clock, processor = timed(car, inputs, **how)
    count, solved = found["speed"].size, int((found["status"].values == "solved").sum())
    told(f"{workers} processes, kept", count, clock, processor)
    print(f"{count} variants, {solved} with a speed, {clock:.0f} s, {processor:.0f} s of processor")
    here, there = peak(resource.RUSAGE_SELF), peak(resource.RUSAGE_CHILDREN)
    print(f"memory at most: {here:.0f} MB here, {there:.0f} MB in a worker")
    kept, written = size(folder, "journal"), size(folder, "grid.zarr")
    print(f"journal {kept:.1f} MB, Zarr {written:.1f} MB in {files(folder)} files")
    again, clock, processor = timed(car, inputs, **how)
    print(f"asked again: {clock:.1f} s, {processor:.1f} s of processor, the whole known")
    assert again["speed"].values.tobytes() == found["speed"].values.tobytes()
    some, same = same_alone(car, inputs, again)
    assert same
    print(f"{some} of them solved again by themselves: the same to the bit")


if __name__ == "__main__":
    numbers = [int(one) for one in sys.argv[2:]]
    main(Path(sys.argv[1]), *numbers, *[1_000_000, 2][len(numbers) :])
