"""Ratios beside numpy, pandas and Polars, all of one run, as the table that the README shows.

Both sides of a line take turns in one process and in one thread, whose processor time is taken: other work on the machine
lengthens it less than the time on a clock, and meets both sides alike. The ratio is the median over the turns. Polars, which
may use further threads, is timed by the clock. Not part of the fast checks. `--check` prints the equations alone and ends with an error where one is
slower than numpy.
"""

import json
import os
import platform
import statistics
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np

import bismar

ROWS = 1_000_000
TURNS = 31
INDEX = np.arange(ROWS)
REPS = 1.0 + (INDEX * 31 % 19) * 0.5

LOADS: dict[str, Any] = {
    "half kilograms": 40.0 + (INDEX * 7919 % 240) * 0.5,
    "tenths of a kilogram": 20.0 + (INDEX * 7919 % 1200) * 0.1,
    "pounds in kilograms": (INDEX * 7919 % 400 + 45) / 2.2046226218487757,
    "thirds of a kilogram": (INDEX * 7919 % 400 + 61) / 3.0,
}

# The published forms, as one would write them in numpy.
PEERS: dict[str, Callable[[Any, Any], Any]] = {
    "epley_1985": lambda load, reps: load * (1 + reps / 30),
    "brzycki_1993": lambda load, reps: load * 36 / (37 - reps),
    "brzycki_1993_decimal": lambda load, reps: load / (1.0278 - 0.0278 * reps),
    "lander_1985": lambda load, reps: 100 * load / (101.3 - 2.67123 * reps),
    "lombardi_1989": lambda load, reps: load * reps**0.1,
    "mayhew_1992": lambda load, reps: 100 * load / (52.2 + 41.9 * np.exp(-0.055 * reps)),
    "oconner_1989": lambda load, reps: load * (1 + 0.025 * reps),
    "wathan_1994": lambda load, reps: 100 * load / (48.8 + 53.8 * np.exp(-0.075 * reps)),
    "brown_1992": lambda load, reps: load * (0.9849 + 0.0338 * reps),
    "adams_1998": lambda load, reps: load / (1 - 0.02 * reps),
    "berger_1961": lambda load, reps: load / (1.0261 * np.exp(-0.0262 * reps)),
    "cummings_finn_1998": lambda load, reps: 1.175 * load + 0.839 * reps - 4.29787,
}


def seconds(run: Callable[[], Any], clock: Callable[[], float] = time.thread_time) -> float:
    started = clock()
    run()
    return clock() - started


def beside(
    ours: Callable[[], Any], theirs: Callable[[], Any], clock: Callable[[], float] = time.thread_time
) -> tuple[float, float, float]:
    """Medians of both, and the median of the ratios of the turns."""
    ours(), theirs()
    turns = [(seconds(ours, clock), seconds(theirs, clock)) for _ in range(TURNS)]
    our, their = (statistics.median(side) for side in zip(*turns))
    return our, their, statistics.median(their / our for our, their in turns)


def equations() -> list[str]:
    """A line an equation: how many times as fast as numpy for each kind of loads."""
    behind = []
    print(f"| equation | ours, ns a row | numpy, ns a row | {' | '.join(LOADS)} |")
    print(f"|---|---:|---:|{'---:|' * len(LOADS)}")
    for name, peer in PEERS.items():
        key, found = f"one_rm.{name}", []
        for what, loads in LOADS.items():
            assert np.allclose(bismar.batch(key, loads, REPS), peer(loads, REPS), rtol=1e-5), key
            found.append(beside(lambda: bismar.batch(key, loads, REPS), lambda: peer(loads, REPS)))
            if found[-1][2] < 1:
                behind.append(f"{name}, {what}")
        our, their, _ = found[0]
        ratios = " | ".join(f"{ratio:.2f}" for _, _, ratio in found)
        print(f"| `{name}` | {our / ROWS * 1e9:.2f} | {their / ROWS * 1e9:.2f} | {ratios} |", flush=True)
    return behind


def tables() -> None:
    import pandas as pd
    import polars as pl

    loads = LOADS["half kilograms"]
    frame, table = pd.DataFrame({"load": loads, "reps": REPS}), pl.DataFrame({"load": loads, "reps": REPS})
    load, reps = pl.col("load"), pl.col("reps")
    print("\n| on their columns | ours | peer | times as fast |\n|---|---:|---:|---:|")
    expressions = {
        "oconner_1989": load * (1 + 0.025 * reps),
        "wathan_1994": 100 * load / (48.8 + 53.8 * (-0.075 * reps).exp()),
    }
    for name, expression in expressions.items():
        key, peer = f"one_rm.{name}", PEERS[name]
        in_frame = beside(
            lambda: bismar.batch(key, frame["load"], frame["reps"]), lambda: peer(frame["load"], frame["reps"])
        )
        in_table = beside(
            lambda: bismar.batch(key, table["load"], table["reps"]),
            lambda: table.select(expression),
            time.perf_counter,
        )
        for (our, their, ratio), other in ((in_frame, "pandas"), (in_table, "Polars, by the clock")):
            print(f"| `{name}` | {our * 1e3:.2f} ms | {other} {their * 1e3:.2f} ms | {ratio:.2f} |")
    print(f"\nnumpy {np.__version__}, pandas {pd.__version__}, Polars {pl.__version__}")


def lifters() -> None:
    folder = Path(__file__).resolve().parents[3] / "examples/data"
    log = (folder / "demo-log.json").read_text()
    plan = json.loads((folder / "demo-plan.json").read_text())
    logs = [log] * 60
    one, two = (min(seconds(lambda: bismar.fold_many(logs, threads=many), time.perf_counter) for _ in range(3)) for many in (1, 2))
    print(f"`fold_many`, {len(logs)} logs: 1 thread {one * 1e3:.0f} ms, 2 threads {two * 1e3:.0f} ms")
    kept = bismar.Progress(log)
    session = min(seconds(lambda: kept.next_session(plan, "2026-08-27")) for _ in range(50))
    given = {"load": {"kg": 100}, "reps": 8}
    call = min(seconds(lambda: [bismar.call("one_rm.epley_1985", given) for _ in range(1000)]) for _ in range(15))
    print(f"next session of a kept state {session * 1e6:.0f} us; `call` {call * 1e3:.2f} us")


if __name__ == "__main__":
    load = os.getloadavg()[0]
    print(f"{platform.machine()}, {os.cpu_count()} threads, load average {load:.1f}, {ROWS} rows, {TURNS} turns\n")
    behind = equations()
    if "--check" in sys.argv:
        sys.exit(f"slower than numpy: {behind}" if behind else 0)
    tables()
    lifters()
