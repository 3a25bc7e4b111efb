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
# # Which upgrade, and how sure?
#
# A ranking names one set, as if everything about the vehicle were known. It is not: drag area, breathing and the knock
# limit have a ± each, and so has what an upgrade promises. So the question is *would the answer be the same for another
# vehicle that could have been described like this one*, and if not, *what would have to be known*.

# %%
import matplotlib.pyplot as plt

import windwall as ww

car = ww.load("../scenarios/airfield_cyclecar.json")
MENU = ["cooler", "small_pulley", "fairing", "diet", "hard_tyres", "shroud"]

# %% [markdown]
# ## As stated
#
# Six entries of the menu, to keep this short; leave `upgrades` out for all of them.

# %%
ranking = ww.rank(car, upgrades=MENU, progress=False)
print(ranking.sentence)
ranking.table[["cost", "alone_middle"]]

# %% [markdown]
# ## In many worlds
#
# A world gives every number that is not known exactly a value, from its ±. Every set is solved in the same worlds, so that
# what they share drops out of the difference. First the vehicle as it is: what may be expected on the road at all.

# %%
speeds = car.drawn_speed(128, progress=False)
print(speeds)

# %% [markdown]
# Then the whole menu. Each gain has a ±, and the set to choose is the cheapest whose mean cannot be told from the fastest on
# the road.

# %%
drawn = car.drawn_ranking(ranking, 64, progress=False)
for one in sorted(drawn.gains, key=lambda one: -one.alone.mean):
    mean, sigma = one.alone.mean * 3.6, one.alone.sigma * 3.6
    print(f"{one.id:13}{mean:+6.1f} ± {sigma:.1f} km/h, helps in {10 * one.helps:.0f} of 10 worlds")
print("to choose:", " + ".join(drawn.recommended) or "nothing")
print("fastest:  ", " + ".join(drawn.fastest) or "nothing")
print(f"regret of that choice: {drawn.regret * 3.6:.2f} km/h in the mean")

# %% [markdown]
# ## What it leans on
#
# Of the scatter of the speed, each number has a share. The filled bar is what would go if that number were known; the
# hatched one counts what it does together with others. They are of the vehicle as it is.

# %%
first, second = sorted(drawn.gains, key=lambda one: -one.alone.mean)[:2]
leans = car.leans_on(([first.id], [second.id]), rows=128, progress=False)
print(leans.sentence)
ww.plot.leans_on(leans)
plt.show()

# %% [markdown]
# What decides between the two upgrades that gain most is something else: the numbers that move both alike drop out.

# %%
for sentence in leans.sentences:
    print("-", sentence)
ww.plot.leans_on(leans, "difference")
plt.show()

# %% [markdown]
# ## What to do next
#
# * Buy what helps in nearly all worlds and is cheap first; it is right whatever else turns out.
# * Where two lie within their ±, do not buy the dearer one yet. Measure what the second plot names first: a coast-down for
#   the drag area, a gauge in the manifold for breathing. `windwall measure` says which of these is worth its evening.
# * State what was measured with its ± in the file, and run this again: the bars that it was about shrink.
# * `car.leans_on(ranking, rows=512)` halves the whiskers; `windwall leans` says before what it will cost.
#
# And before any of it at speed: one change at a time, part throttle first, plugs read after each pull, on a closed course.
