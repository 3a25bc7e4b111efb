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
# # First speed: how fast, and why no faster?
#
# The question that every garage has heard, and the shortest way to an answer that can be argued with.
#
# The vehicle is an invented cyclecar with a blown twin and no charge cooler. Copy this notebook, put the path of your
# own file in the next cell, and everything below is about yours. `windwall new mine.json` makes such a file from a few
# questions.

# %%
import matplotlib.pyplot as plt

import windwall as ww

car = ww.load("../scenarios/airfield_cyclecar.json")
car

# %% [markdown]
# ## How fast, and why no faster
#
# One call solves the whole vehicle at full throttle, in every gear and up to the speed where it stops accelerating.
# Numbers that you read off the answer are in SI, here metres a second; what is printed is in the units of the file.

# %%
best = car.top_speed()
print(
    f"{best.goal_speed:.1f} m/s is {3.6 * best.goal_speed:.0f} km/h at the end of the goal's road"
)
print(f"limited by: {best.limited_by.replace('_', ' ')}")
print(best.sentence)

# %% [markdown]
# ## The picture behind it
#
# A vehicle stops accelerating where the thrust of its best gear meets the load of air, rolling and slope. Look at two
# things: how flat the two lines meet, since a flat crossing moves far for a little power or drag; and whether the gear
# on either side would cross higher up.

# %%
ww.plot.force_against_speed(car)
plt.show()

# %% [markdown]
# ## How far to knock
#
# A margin in octane numbers with a band around it. Nobody knows the middle of that band well before an engine has
# been listened to, so it is never a promise.

# %%
print(best.knock_band.sentence if best.knock_band else "a torque curve says nothing of knock")
best.margins

# %%
ww.plot.knock_over_engine_speed(car)
plt.show()

# %% [markdown]
# ## Does the model know this vehicle?
#
# The file says what was seen on the road. Before the model is believed about what would be, it is held against what
# was.

# %%
found = car.diagnose()
for one in found.compared:
    seen = one.observed
    seen = seen if isinstance(seen, str) else one.measure.short(seen, car.system)
    far = "" if one.off is None else f", {one.off:+.1f} standard deviations off"
    print(f"{one.key}: observed {seen}, model {one.measure.short(one.model, car.system)}{far}")

# %% [markdown]
# ## What a little is worth
#
# The same vehicle with one thing changed by a little, solved again for each. It is the shortest list of what to try.

# %%
for gain in best.sensitivities:
    worth = "no answer" if gain.speed is None else f"{3.6 * gain.speed:+.2f} km/h"
    print(f"{gain.change:24} {worth}")

# %% [markdown]
# ## What next
#
# * Values that nobody stated stand at a default with a wide band. `car.default_sensitivities()` says which of them the
#   speed leans on most. Measure the first, put it in the file, and run this again.
# * What becomes of all that fuel? [Where do the watts go?](where_the_watts_go.ipynb)
# * `windwall report mine.json -o mine.html` puts all of this on a page that can be sent.
#
# **Before any of this is used at speed:** part throttle first, plugs read, one change at a time, on a closed course. Brakes,
# hubs, steering, lift and stability are not modelled, and all of them matter before speed does.
