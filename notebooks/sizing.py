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
# # Which pulley, which cooler, how much spray?
#
# A smaller pulley is the cheapest boost there is: an evening at the lathe. More turns give more boost, but also hotter charge
# and more power into the blower, and the engine asks for a later spark. A cooler or a spray gives some of that back. The
# question is *how big has each to be, and does the answer hold on a hot day?*

# %%
import matplotlib.pyplot as plt
import numpy as np

import windwall as ww

car = ww.load("../scenarios/airfield_cyclecar.json")
RATIO, DAY = "charge_path/blower/drive_ratio", "day/temperature"
RATIOS = np.linspace(0.9, 1.9, 11).tolist()
print(
    f"as it is: {car.readable(RATIO)} turns of the blower for one of the crank, {car.readable(DAY)}"
)

# %% [markdown]
# ## Every pulley on every day
#
# Each combination is a whole top speed. Values are texts with units, or SI numbers; results come back as an xarray
# Dataset in SI, with unit and meaning as attributes.

# %%
swept = ww.sweep(
    car,
    {RATIO: RATIOS, DAY: ["5 degC", "20 degC", "35 degC"]},
    outputs=["manifold/boost", "manifold/temperature", "knock/margin", "knock/retard"],
    progress=False,
)
swept

# %%
DAYS = swept["day_temperature"].values
# What a person reads off a gauge, of what stands in SI.
READ = {
    "speed": ("speed, km/h", lambda value: 3.6 * value),
    "boost": ("boost, kPa", lambda value: value / 1e3),
    "temperature": ("charge in the manifold, °C", lambda value: value - 273.15),
    "margin": ("knock margin, octane numbers", lambda value: value),
    "retard": ("spark later than best, degrees", np.degrees),
}


def over_pulley(found, name, ax, by, label):
    """One line for each value of what was varied beside the pulley, told apart by style and marker."""
    styles = ("o-", "s--", "^:", "d-.", "v-")
    said, read = READ[name.removeprefix("manifold_")]
    for value, style in zip(found[by].values, styles, strict=False):
        line = read(found[name].sel({by: value}))
        ax.plot(found["drive_ratio"], line, style, color="black", label=label(value))
    ax.axvline(car.get(RATIO), color="0.7")
    ax.set_xlabel("turns of the blower for one of the crank")
    ax.set_ylabel(said)
    ax.legend()


def celsius(value):
    return f"{value - 273.15:.0f} °C"


_, ax = plt.subplots(layout="constrained")
over_pulley(swept, "speed", ax, "day_temperature", celsius)
ax.set_title("Speed over the pulley, on three days (grey: as it is)")
plt.show()

# %% [markdown]
# Where the lines are flat, a smaller pulley buys nothing but heat. Where they rise on the cool day and not on the hot one, it is
# the day that decides, and a pulley chosen in spring disappoints in August.
#
# ## What pays for it
#
# The same sweep, seen from the engine's side. The knock margin is held by a later spark for as long as there is spark to
# take; what that costs is in the lower right.

# %%
_, axes = plt.subplots(2, 2, figsize=(9, 7), layout="constrained")
for name, ax in zip(("boost", "manifold_temperature", "margin", "retard"), axes.flat, strict=True):
    over_pulley(swept, name, ax, "day_temperature", celsius)
plt.show()

# %% [markdown]
# ## The best pulley for each day

# %%
best = swept["speed"].idxmax("drive_ratio")
loss = swept["speed"].max("drive_ratio") - swept["speed"].sel(
    drive_ratio=car.get(RATIO), method="nearest"
)
for day in DAYS:
    ratio, worth = float(best.sel(day_temperature=day)), float(loss.sel(day_temperature=day))
    print(f"{celsius(day)}: {ratio:.2f}, {3.6 * worth:.1f} km/h over what is on it")

# %% [markdown]
# If the best stands at the end of the range, the range was too short to know. Widen it, but not past what the blower's maker
# allows: where the file states `rated_speed`, a top speed says when it is passed, and where it does not, nothing is
# known about it.
#
# ## How big a cooler?
#
# `conductance` is what a cooler is worth: watts for each kelvin between charge and cooling air. Fit the cooler of the menu, then let
# it be smaller and bigger. What it costs in pressure stays as in the file; a bigger core of the same kind has less.

# %%
cooled = car.install("cooler")
print(cooled.readable("charge_path/cooler/conductance"), "is the cooler of the menu")
coolers = ww.sweep(
    cooled,
    {
        RATIO: RATIOS,
        "charge_path/cooler/conductance": ["15 W/K", "30 W/K", "60 W/K", "120 W/K"],
    },
    outputs=["manifold/temperature"],
    progress=False,
)
_, axes = plt.subplots(1, 2, figsize=(11, 4.5), layout="constrained")
over_pulley(coolers, "speed", axes[0], "conductance", lambda value: f"{value:.0f} W/K")
axes[0].plot(RATIOS, 3.6 * swept["speed"].sel(day_temperature=DAYS[-1]), color="0.6")
axes[0].set_title("With a cooler (grey: without, at 35 °C)")
over_pulley(coolers, "temperature", axes[1], "conductance", lambda value: f"{value:.0f} W/K")
plt.show()

# %% [markdown]
# Where all lines end at one height they stand at the rev limit: no cooler helps there, a sprocket does. Before that, look for
# the cooler behind which the next bigger one moves the line no more. On a small engine that is often a small one, and then
# a duct that feeds it is worth more than its core.
#
# ## How much spray?
#
# A nozzle before the blower wets and cools what it moves. Too little does little; too much drowns the fire where the engine takes
# little air, and a variant that does has no answer. Which, and why, stands in `status` and in the sentence of a top speed.

# %%
sprayed = car.install("spray")
FLOWS = ["20 cm3/min", "50 cm3/min", "100 cm3/min", "150 cm3/min"]
sprays = ww.sweep(
    sprayed,
    {RATIO: RATIOS, "charge_path/spray/rated_flow": FLOWS},
    outputs=["knock/retard"],
    progress=False,
)
flow = dict(zip(sprays["rated_flow"].values, FLOWS, strict=True))
_, axes = plt.subplots(1, 2, figsize=(11, 4.5), layout="constrained")
over_pulley(sprays, "speed", axes[0], "rated_flow", flow.get)
over_pulley(sprays, "retard", axes[1], "rated_flow", flow.get)
plt.show()

# %%
words, counts = np.unique(sprays["status"], return_counts=True)
for word, count in zip(words, counts, strict=True):
    print(f"{word.replace('_', ' ')}: {count}")
drowned = sprayed.set({"charge_path/spray/rated_flow": "200 cm3/min", RATIO: 1.5})
print(drowned.top_speed().sentence)

# %% [markdown]
# ## What next
#
# * Sizes go together. `ww.rank(car)` tries the whole menu of the file in every allowed set, and says which buys the most speed for the money.
# * [Which upgrade, and how sure?](which_upgrade.ipynb) says whether the flat part of a line is flatter than what is known of the vehicle.
# * A nozzle is run into a jar before it is run into an engine: state what it caught under `observed`.
#
# **Before any of this is used at speed:** part throttle first, plugs read, one change at a time, on a closed course. Boost is
# read on a gauge while the throttle opens slowly, and a pump that stops must not leave the engine at a spark that needed it. Brakes, hubs,
# steering, lift and stability are not modelled, and all of them matter before speed does.
