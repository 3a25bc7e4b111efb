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
# # Learning from a log
#
# A logger ran along while the invented cyclecar made two of its runs. What does it say of the vehicle that the file only guesses at?
#
# The car that was logged is not quite the one of its file: it has 0.74 m² of drag area where the file says 0.70 ± 0.05, and its
# blower leaks through 13 mm² instead of 11 ± 3. Nothing below is told that.

# %%
import matplotlib.pyplot as plt
import numpy as np

import windwall as ww

car = ww.load("../scenarios/airfield_cyclecar.json")
read = car.read_log("../scenarios/logs/two_runs.csv")
print(read.summary().partition("What they tell")[0])

# %% [markdown]
# ## What the logger wrote
#
# Nothing had to be said of how the file is written. What its columns are stands in a small file beside it; without one it is proposed, each
# column with its reasons. The pulls that were found are shaded: full throttle, one gear, nothing slips.

# %%
log = read.log
first = log.time < 70
figure, (above, below) = plt.subplots(2, 1, sharex=True, figsize=(8, 5))
above.plot(log.time[first], log.column("RPM").values[first], lw=0.8)
above.set_ylabel("engine speed, rpm")
below.plot(log.time[first], log.column("Boost").values[first], lw=0.8)
below.set_ylabel("boost, kPa")
below.set_xlabel("time, s")
for pull in read.pulls[:3]:
    for axes in (above, below):
        axes.axvspan(*pull.time, alpha=0.15)
    above.text(pull.time[0], 1300, f" gear {pull.gear}")
plt.show()

# %% [markdown]
# ## Facts, and how sure they are
#
# The thousand rows of a pull are no thousand readings. Each window of a pull gives one number, with a ± that holds the noise, the gauge's own error and
# what a pull of seconds differs from a vehicle held there. The thrust left over to accelerate comes from the slope of the speed, and says the most.

# %%
gears = {gear: car.full_throttle_curve(gear=gear) for gear in (2, 3, 4)}
for gear, curve in gears.items():
    told = [
        fact
        for fact in read.facts
        if fact.address == "road/surplus" and fact.situation["gear"] == gear
    ]
    turns = [9.549 * fact.situation["engine_speed"] for fact in told]
    plt.errorbar(
        turns,
        [fact.value for fact in told],
        [fact.sigma for fact in told],
        fmt="o",
        color=f"C{gear}",
    )
    shown = 9.549 * curve["engine/speed"] > 3200
    turning = 9.549 * curve["engine/speed"][shown]
    plt.plot(turning, curve["road/surplus"][shown], color=f"C{gear}", label=f"gear {gear}")
plt.xlabel("engine speed, rpm")
plt.ylabel("thrust left over, N")
plt.legend(title="line: the file, dots: the log")
plt.show()

# %% [markdown]
# ## What is believed now
#
# The facts of the first run together say which of the vehicles that the file allows was logged. What moved and what narrowed stands in standard deviations of
# what was believed before; what trades against each other is said in words, since two numbers that a log only knows together
# are each hardly better known than before.

# %%
run = {pull.name for pull in read.pulls[:3]}
told = [fact.plain() for fact in read.facts if fact.group in run]
posterior = car.calibrate(told, progress=False)
posterior

# %% [markdown]
# The vehicle that has learned is an ordinary scenario. Save it, and ask it what the first one was asked: `car.learned(posterior).save("learned.json")`.

# %%
learned = car.learned(posterior)
speeds = 3.6 * np.array([one.brief_top_speed().goal_speed for one in (car, learned)])
print(f"{speeds[0]:.1f} km/h as described, {speeds[1]:.1f} km/h as learned")
print(learned.readable("body/drag_area"), learned.readable("charge_path/blower/leak_area"))

# %% [markdown]
# ## What next
#
# * `windwall logs mine.json run.csv --write-mapping run.mapping.json` writes what the columns of your own log were taken for. Correct it, above all `lag` and `sigma`.
# * Log the same road both ways: wind and slope then take less of the answer with them.
# * [Logs](../docs/logs.md) tells what is read, mended and refused; [how sure](../docs/how_sure.md) how it is learned from.
#
# **Before any of this is used at speed:** part throttle first, plugs read, one change at a time, on a closed course. Brakes,
# hubs, steering, lift and stability are not modelled, and all of them matter before speed does. Somebody else watches the logger.
