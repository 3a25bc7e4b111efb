"""Coasting down as SciPy's ODE solver has it, from the equation on the page."""

import numpy as np
from scipy.integrate import solve_ivp

GRAVITY = 9.80665


def rolled(
    start,
    end,
    rows=80,
    way=1,
    wind=0.0,
    grade=0.0,
    mass=300.0,
    drag_area=0.45,
    rolling=0.015,
    density=1.2,
    accelerated=330.0,
):
    """Seconds, metres and m/s; wind and grade are those of who drives there (`way` 1)."""
    slope = np.arctan(grade)
    constant = mass * GRAVITY * (rolling * np.cos(slope) + way * np.sin(slope))

    def slowing(_, state):
        air = state[1] + way * wind
        return [state[1], -(constant + density * drag_area / 2 * air * abs(air)) / accelerated]

    def there(_, state):
        return state[1] - end

    there.terminal = True
    run = solve_ivp(
        slowing, (0, 2000), [0.0, start], events=there, dense_output=True, rtol=1e-12, atol=1e-11
    )
    time = np.linspace(0, run.t_events[0][0], rows)
    return (time, *run.sol(time))


def table(*runs):
    """Runs as (way, seconds, m/s), one below the other."""
    columns = {"run": [], "way": [], "time": [], "speed": []}
    for at, (way, time, speed) in enumerate(runs):
        columns["run"] += [at] * len(time)
        columns["way"] += ["there" if way == 1 else "back"] * len(time)
        columns["time"] += list(time)
        columns["speed"] += list(speed)
    return columns


def both_ways(start=30.0, end=6.0, **road):
    """A table of one run there and one back."""
    runs = ((way, rolled(start, end, way=way, **road)) for way in (1, -1))
    return table(*((way, time, speed) for way, (time, _, speed) in runs))
