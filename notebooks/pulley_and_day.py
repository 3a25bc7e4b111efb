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
# # A pulley and a day, swept
#
# A smaller pulley is the cheapest boost there is: an evening at the lathe. The question is *how small, and does the answer
# hold on a hot day?* More turns give more boost, but also hotter charge and more power into the blower; on a hot day the
# engine sooner asks for a later spark.

# %%
import matplotlib.pyplot as plt
import numpy as np

import windwall as ww

car = ww.load("../scenarios/airfield_cyclecar.json")
RATIO, DAY = "charge_path/blower/drive_ratio", "day/temperature"
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
    {RATIO: np.linspace(0.9, 1.9, 11).tolist(), DAY: ["5 degC", "20 degC", "35 degC"]},
    outputs=["manifold/boost", "manifold/temperature", "knock/margin", "knock/retard"],
    progress=False,
)
swept

# %%
names = [name for name in swept.data_vars if "units" in swept[name].attrs]
for name in names:
    print(f"{name:15} {swept[name].attrs['units']:6} {swept[name].attrs['long_name']}")

# %% [markdown]
# ## Speed over the pulley


# %%
def labelled(name):
    return f"{name.replace('_', ' ')}, {swept[name].attrs['units']}"


def over_pulley(name, ax):
    """One line for each day, told apart by style and by marker."""
    for day, style in zip(swept["day_temperature"].values, ("o-", "s--", "^:"), strict=True):
        line = swept[name].sel(day_temperature=day)
        ax.plot(swept["drive_ratio"], line, style, color="black", label=f"{day - 273.15:.0f} °C")
    ax.set_xlabel(labelled("drive_ratio"))
    ax.set_ylabel(labelled(name))
    ax.legend()


_, ax = plt.subplots(layout="constrained")
over_pulley("speed", ax)
ax.axvline(car.get(RATIO), color="0.7", label="as it is")
ax.set_title(swept.attrs["title"])
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
    over_pulley(name, ax)
plt.show()

# %% [markdown]
# ## The best pulley for each day

# %%
best = swept["speed"].idxmax("drive_ratio")
loss = swept["speed"].max("drive_ratio") - swept["speed"].sel(
    drive_ratio=car.get(RATIO), method="nearest"
)
for day in swept["day_temperature"].values:
    ratio, worth = float(best.sel(day_temperature=day)), float(loss.sel(day_temperature=day))
    print(f"{day - 273.15:3.0f} °C: {ratio:.2f}, {3.6 * worth:.1f} km/h over what is on it")

# %% [markdown]
# If the best stands at the end of the range, the range was too short to know. Widen it, but not past what the blower's maker
# allows: where the file states `rated_speed`, a top speed says when it is passed, and where it does not, nothing is
# known about it.
#
# ## How each variant ended
#
# A sweep never stops at a variant without an answer: its speed is NaN and `status` says why. Here is the count.

# %%
words, counts = np.unique(swept["status"], return_counts=True)
for word, count in zip(words, counts, strict=True):
    print(f"{word}: {count}")

# %% [markdown]
# ## What next
#
# * Fit the cooler first, `car.install("cooler")`, and sweep again: the flat part moves.
# * `ww.rank(car)` tries the whole menu of the file, and says which set buys the most speed for the money.
#
# **Before any of this is used at speed:** part throttle first, plugs read, one change at a time, on a closed course. Boost is
# read on a gauge while the throttle opens slowly. Brakes, hubs, steering, lift and stability are not modelled, and all
# of them matter before speed does.
