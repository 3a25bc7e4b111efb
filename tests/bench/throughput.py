"""`python tests/bench/throughput.py [VARIANTS]`: what a sweep of the microcar costs over workers.

Each way sweeps the same grid and has to give the same bits. Times are of the clock, since that is
what workers are for, beside them those of the processor; a machine that others use makes the first
long and leaves the second alone.
"""

import os
import sys
import time
from contextlib import contextmanager
from pathlib import Path

import windwall as ww

SCENARIO = Path(__file__).parents[2] / "scenarios/village_microcar.json"
DAYS = 86400


def grid(variants):
    """So many variants, or a few less: masses, drag areas and carburettors."""
    side = round(variants ** (1 / 3))
    steps = [at / max(side - 1, 1) for at in range(side)]
    return {
        "body/mass": [380 + 100 * step for step in steps],
        "body/drag_area": [0.6 + 0.3 * step for step in steps],
        "charge_path/carburettor/bore": [0.026 + 0.01 * step for step in steps],
    }


@contextmanager
def cluster(workers):
    """A Dask cluster of so many processes on this machine."""
    from distributed import Client, LocalCluster

    with (
        LocalCluster(
            n_workers=workers, threads_per_worker=1, dashboard_address=None, memory_limit=0
        ) as made,
        Client(made) as client,
    ):
        yield client


def timed(car, inputs, **how):
    """What a sweep gives, in which time of the clock and of the processor, its workers' with it."""
    clock, before = time.perf_counter(), os.times()
    found = ww.sweep(car, inputs, progress=False, **how)
    after = os.times()
    spent = sum(after[:4]) - sum(before[:4])
    return found, time.perf_counter() - clock, spent


def spent_there(client):
    """Seconds of processor that the workers of a cluster took so far."""
    return sum(client.run(time.process_time).values())


def bits(found):
    return [found[name].values.tobytes() for name in found.variables]


def told(name, variants, clock, processor):
    rate = variants / clock
    print(
        f"{name:24} {rate:8.0f} variants/s  {processor / variants * 1e6:8.0f} s of processor and "
        f"{clock / variants * 1e6:8.0f} s of clock a million, 1e9 in {1e9 / rate / DAYS:6.1f} days",
        flush=True,
    )


def main(variants):
    car, inputs = ww.load(SCENARIO), grid(variants)
    whole, clock, processor = timed(car, inputs, threads=1)
    size = whole["speed"].size
    print(f"{size} variants, {os.cpu_count()} cores, load {os.getloadavg()[0]:.1f}")
    told("one thread", size, clock, processor)
    for workers in (1, 2, 4):
        found, clock, processor = timed(car, inputs, executor=workers)
        told(f"{workers} processes", size, clock, processor)
        assert bits(found) == bits(whole)
    for workers in (1, 2, 4):
        with cluster(workers) as client:
            before = spent_there(client)
            found, clock, processor = timed(car, inputs, executor=client)
            processor += spent_there(client) - before
        told(f"Dask, {workers} workers", size, clock, processor)
        assert bits(found) == bits(whole)
    print("all of them to the same bit")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 8000)
