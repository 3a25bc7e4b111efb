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
# # An afternoon of three runs
#
# A top speed is one number, for an engine that is as warm as after a long pull. An afternoon is not like that: the car waits
# in a queue, launches, runs out of road, stands, and goes again. What is warm then, and what does it cost? The file
# of the airfield cyclecar holds such an afternoon as an *outing*: a list of legs, driven one after the other.

# %%
import json

import matplotlib.pyplot as plt
import pandas as pd

import windwall as ww

car = ww.load("../scenarios/airfield_cyclecar.json")
outing = car.outings["three_runs"]
for number, leg in enumerate(outing["legs"], 1):
    print(number, leg)

# %% [markdown]
# ## The whole afternoon
#
# Every moment is solved as it is: the speed, the gear, and the temperature of everything that takes time to warm up.

# %%
drive = car.drive("three_runs", progress=False)
print(drive)

# %%
_, axes = plt.subplots(3, 1, figsize=(9, 9), layout="constrained")
for address, ax in zip(
    ("road/speed", "engine/head/temperature", "charge_path/blower/case/temperature"),
    axes,
    strict=True,
):
    ww.plot.over_time(drive, address, ax)
plt.show()

# %% [markdown]
# ## The first run and the third
#
# The same road and the same driver. What differs is what the runs before have left behind.

# %%
marks = pd.DataFrame(drive.summary.marks)
marks = marks[marks["at_distance"].notna()]
table = marks.pivot_table(index="at_distance", columns="run", values="time")
table["third - first"] = table[3] - table[1]
table.round(3)

# %%
_, axes = plt.subplots(1, 2, figsize=(11, 4.5), layout="constrained")
runs = {"first": (drive, 1), "third": (drive, 3)}
ww.plot.runs_overlaid(runs, "road/speed", axes[0])
ww.plot.runs_overlaid(runs, "manifold/temperature", axes[1])
plt.show()

# %% [markdown]
# ## Hot and cold
#
# The same outing, set out with everything as warm as the day's air. An outing is data, so that it is changed as the
# rest of a file is: the text of the scenario, read again.

# %%
document = car.document()
document["outings"][0]["starts"] = "cold"
cold = ww.loads(json.dumps(document)).drive("three_runs", progress=False)

_, axes = plt.subplots(1, 2, figsize=(11, 4.5), layout="constrained")
runs = {"hot": (drive, 1), "cold": (cold, 1)}
ww.plot.runs_overlaid(runs, "road/speed", axes[0])
ww.plot.runs_overlaid(runs, "engine/torque", axes[1])
plt.show()

# %%
for name, driven in (("hot", drive), ("cold", cold)):
    fastest = driven.summary.fastest[0].value
    oil = driven.dataset["engine__oil__temperature"].sel(time=180, method="nearest").item()
    print(
        f"{name}: {3.6 * fastest:.1f} km/h at its fastest, oil at {oil - 273.15:.0f} °C at the start"
    )

# %% [markdown]
# A warm intake costs charge and asks for a later spark; cold oil costs friction. Which of the two is larger is what the
# drive works out, and it depends on the car. What is known worst here is how quickly each part warms, since its heat
# capacity is a class value with a wide ±.
#
# ## What happened, and where the energy went

# %%
drive.events.head(12)

# %%
energy = pd.Series(drive.summary.energy) / 1e3
print(energy.round(1).to_string())
print(f"in no entry: {drive.summary.imbalance:.1e} of what the crank gave")

# %% [markdown]
# ## What next
#
# * `drive.dataset` is an xarray Dataset of every column, each with its unit and its meaning.
# * Fit something first and drive again: `car.install("cooler").drive("three_runs")`. An outing names nothing of
#   the vehicle, so it goes with any set.
# * Write an outing of your own road: [scenario files](../docs/scenario_files.md) lists the legs.
#
# **Before any of this is used at speed:** part throttle first, plugs read, one change at a time, on a closed course. Brakes,
# hubs, steering, lift and stability are not modelled, and all of them matter before speed does.
