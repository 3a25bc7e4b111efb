"""Studies that something happens to: small ones, and a program that carries one out."""

import numpy as np

import windwall as ww
from windwall.study import executors
from windwall.study import sweep as sweeping

INPUTS = {
    "body/mass": [f"{mass} kg" for mass in range(320, 360, 2)],
    "body/drag_area": ["0.5 m2", "0.55 m2", "0.6 m2"],
}
READ = ["manifold/boost"]
PIECE = 2  # variants


def in_small_pieces(monkeypatch=None, size=PIECE):
    """Makes pieces small, so that there are many."""

    def small(*_):
        return size

    if monkeypatch is None:
        sweeping.size_by_cost = small
    else:
        monkeypatch.setattr(sweeping, "size_by_cost", small)


def same_bits(one, other):
    """Whether two Datasets are the same to the last bit, attributes and all."""
    return list(one.data_vars) == list(other.data_vars) and all(
        one[name].values.astype(one[name].dtype).tobytes()
        == other[name].values.astype(one[name].dtype).tobytes()
        and one[name].attrs == other[name].attrs
        and one[name].dims == other[name].dims
        for name in one.variables
    )


def main(scenario, journal, log, answer, workers):
    """Sweeps with a journal, notes each piece that is solved here, and writes the answer."""
    in_small_pieces()
    solved = executors.solved

    def noted(task, *how):
        found = solved(task, *how)
        with open(log, "a", encoding="utf-8") as file:
            file.write(task.key + "\n")
        return found

    executors.solved = solved if workers else noted
    with open(scenario, encoding="utf-8") as file:
        car = ww.loads(file.read())
    how = {"executor": workers or None, "journal": journal, "progress": False, "threads": 1}
    found = ww.sweep(car, INPUTS, READ, **how)
    np.savez(answer, **{name: found[name].values for name in found.variables})
