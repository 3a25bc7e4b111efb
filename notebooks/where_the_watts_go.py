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
# # Where do the watts go?
#
# A tank holds a lot of heat and little of it ends as speed. *Who takes the rest, which share is worth fighting for, and
# does it look the same at half the speed?* The vehicle is the invented cyclecar; put the path of your own file instead.

# %%
import matplotlib.pyplot as plt
import pandas as pd

import windwall as ww

car = ww.load("../scenarios/airfield_cyclecar.json")
best = car.top_speed()
print(best.sentence)
# J for one kg of fuel, by the account of heat itself
HEATING_VALUE = best.heat["fuel"] / best.point["engine/fuel_flow"]

# %% [markdown]
# ## Two accounts
#
# The first is of the shaft: what the pistons get, who takes a share of it, and what pushes air and rolls tyres in the
# end. The second is of the heat in the fuel. Each total is the sum of its other entries; what does not close is an
# entry of its own and is said.

# %%
ww.plot.accounts(best)
plt.show()

# %%
accounts = pd.concat(
    {"shaft": best.shaft / best.shaft.iloc[0], "heat": best.heat / best.heat.iloc[0]}
)
(100 * accounts).round(1).rename("per cent of the first entry").to_frame()

# %% [markdown]
# ## The charge on its way
#
# The blower is paid twice: once on the shaft, once by what it does to the charge. From station to station:

# %%
ww.plot.stations(best)
plt.show()

# %%
stations = best.stations
print(stations.attrs["units"])
stations.round(4)

# %% [markdown]
# Steps of pressure before the blower are filter and throttle: vacuum that the blower pays for and nobody gets back. The
# step of temperature behind it is what a charge cooler would have to work on.
#
# ## The same vehicle at an easy pace
#
# Held at a steady speed the plate is nearly shut, and the shares are others: most of the fuel turns the engine against
# its own pumping and friction.

# %%
cruise = car.hold_speed(["40 km/h", "60 km/h", "80 km/h", "100 km/h"])
road = cruise["road/thrust"] * cruise["road/speed"]
held = pd.DataFrame(
    {
        "km/h": 3.6 * cruise["road/speed"],
        "opening, %": 100 * cruise["engine/opening"],
        "manifold, kPa": cruise["manifold/pressure"] / 1e3,
        "road, kW": road / 1e3,
        "blower, kW": cruise["charge_path/blower/crank_power"] / 1e3,
        "petrol, g/km": 1e6 * cruise["engine/fuel_flow"] / cruise["road/speed"],
        "of its heat to the road, %": 100 * road / (cruise["engine/fuel_flow"] * HEATING_VALUE),
    }
)
held.round(1)

# %% [markdown]
# The share of the heat that reaches the road grows with the load: rubbing and pumping are nearly the same at any pace, and at
# an easy one there is little else to divide them by. Air is another matter: twice the speed is eight times the watts.

# %%
curve = car.full_throttle_curve(gear=car.top_speed().gear)
_, ax = plt.subplots(layout="constrained")
shown = curve["road/air"].notna()
speed = 3.6 * curve["road/speed"][shown]
for name, style in (("air", "-"), ("rolling", "--")):
    watts = curve[f"road/{name}"][shown] * curve["road/speed"][shown]
    ax.plot(speed, watts / 1e3, style, color="black", label=name)
ax.plot(
    speed, curve["charge_path/blower/crank_power"][shown] / 1e3, ":", color="black", label="blower"
)
ax.set_xlabel("speed, km/h")
ax.set_ylabel("power taken at full throttle, kW")
ax.set_title("What grows with speed")
ax.legend()
plt.show()

# %% [markdown]
# ## What next
#
# * The longest bar that you can reach is not always the one to shorten: `best.sensitivities` says what a little of each is worth
#   in speed, and `ww.rank(car)` what the parts of your menu are.
# * `car.drive("three_runs")` has the same account over a whole outing: what went into warming head and oil, and what the
#   clutch took.
# * Next: [sizing a pulley, a cooler and a spray](sizing.ipynb).
#
# **Before any of this is used at speed:** part throttle first, plugs read, one change at a time, on a closed course. Brakes,
# hubs, steering, lift and stability are not modelled, and all of them matter before speed does.
