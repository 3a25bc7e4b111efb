# ---
# jupyter:
#   jupytext:
#     formats: ipynb,py:percent
#     text_representation:
#       extension: .py
#       format_name: percent
#   kernelspec:
#     display_name: Python 3
#     language: python
#     name: python3
# ---

# %% [markdown]
# # How does a study of a night survive the night?
#
# A grid of a thousand variants takes a second. A million takes a quarter of an hour and more on the vehicles with more in them, and
# somebody closes the lid. *How is it kept, how is it shared among machines, and is the answer the same?* The vehicle is the
# invented microcar; the grids are small here, and nothing below changes for large ones.

# %%
import tempfile
import time
from pathlib import Path

import matplotlib.pyplot as plt
import numpy as np
import xarray as xr

import windwall as ww

car = ww.load("../scenarios/village_microcar.json")
folder = Path(tempfile.mkdtemp())
INPUTS = {
    "body/mass": np.linspace(340, 460, 61).tolist(),
    "body/drag_area": np.linspace(0.6, 0.9, 61).tolist(),
    "day/headwind": ["0 km/h", "15 km/h"],
}
print(car.title)

# %% [markdown]
# ## Kept in a journal
#
# `journal=` names a file to which every piece goes as soon as it is solved. Here the study is stopped on purpose, as a Ctrl-C would:
# `progress` may be a function that is told how far it is, and says whether to go on.


# %%
def until_half(done, total):
    return done < total / 2


def timed(**how):
    began = time.perf_counter()
    found = ww.sweep(car, INPUTS, **how)
    solved = int((found["status"] != "cancelled").sum())
    print(f"{solved} of {found['speed'].size} variants after {time.perf_counter() - began:.2f} s")
    return found


journal = folder / "microcar.journal"
timed(journal=journal, progress=until_half)
kept = timed(journal=journal, progress=False)
again = timed(journal=journal, progress=False)  # nothing is left to solve

# %% [markdown]
# ## The same, to the bit
#
# Each variant starts from its own cold guess, so that neither the order nor the cuts nor the workers change anything. That is the difference
# between a study that can be shared and one that has to be believed.

# %%
alone = timed(progress=False)
print("as without a journal:", alone.identical(kept), "and", alone.identical(again))

# %% [markdown]
# ## More workers
#
# `executor=` takes a number of processes, a pool of `concurrent.futures`, or a client of a Dask cluster, which may be on other
# machines. Workers get plain data: the text of the scenario and their columns. A cluster of two small workers on this machine stands in
# for ten in a workshop; with an address instead, `Client("tcp://...")`, the last line is the same.

# %%
try:
    from dask.distributed import Client, LocalCluster
except ImportError:
    print("pip install 'windwall[studies]' brings Dask")
else:
    with (
        LocalCluster(
            n_workers=2, threads_per_worker=1, processes=False, dashboard_address=None
        ) as cluster,
        Client(cluster) as client,
    ):
        shared = timed(executor=client, progress=False)
        print("as alone:", alone.identical(shared))

# %% [markdown]
# ## Larger than memory
#
# `to=` names a Zarr store that is written block by block. What comes back reads from it as it is asked.

# %%
stored = timed(to=folder / "microcar.zarr", journal=journal, progress=False)
print("as alone:", bool((stored["speed"] == alone["speed"]).all()))
print("whole:", xr.open_zarr(folder / "microcar.zarr", chunks=None).attrs["complete"])

# %% [markdown]
# ## And what does it say?
#
# Mass hardly counts on the level, air does, and a headwind moves the whole picture. Where no lines are, the engine is at its rev limit.

# %%
_, axes = plt.subplots(1, 2, figsize=(10, 4.2), layout="constrained", sharey=True)
for wind, ax in zip(alone["headwind"].values, axes, strict=True):
    lines = ax.contour(
        alone["mass"],
        alone["drag_area"],
        3.6 * alone["speed"].sel(headwind=wind).transpose("drag_area", "mass"),
        colors="black",
    )
    ax.clabel(lines, fmt="%.0f km/h")
    ax.set_title(f"headwind {3.6 * wind:.0f} km/h")
    ax.set_xlabel("mass, kg")
axes[0].set_ylabel("drag area, m²")
plt.show()

# %% [markdown]
# ## What next
#
# * The same from a shell: `windwall sweep FILE --vary ... --journal NAME --workers 4 --output NAME.zarr`.
# * `ww.rank(car, executor=..., journal=...)` and `car.drawn_ranking(...)` take the same two words.
# * [Studies that outgrow a machine](../docs/studies.md) has the throughput that was measured, what a million variants take, and what
#   happens when a worker or the scheduler dies.
#
# **Before any of this is used at speed:** part throttle first, plugs read, one change at a time, on a closed course. Brakes,
# hubs, steering, lift and stability are not modelled, and all of them matter before speed does.
