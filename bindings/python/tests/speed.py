"""Ratios beside numpy, pandas and Polars, all of one run: shortest of several on both sides. Not part of the fast checks,
but for `--check`: every batch form of an equation at least as fast as numpy.
"""

import json
import os
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np

import bismar

ROWS = 1_000_000
LOADS = 40.0 + (np.arange(ROWS) % 240) * 0.5
REPS = 1.0 + (np.arange(ROWS) % 10)

# The published forms, as one would write them in numpy.
PEERS: dict[str, Callable[[Any, Any], Any]] = {
    "epley_1985": lambda load, reps: load * (1 + reps / 30),
    "brzycki_1993": lambda load, reps: load * 36 / (37 - reps),
    "lander_1985": lambda load, reps: 100 * load / (101.3 - 2.67123 * reps),
    "lombardi_1989": lambda load, reps: load * reps**0.1,
    "mayhew_1992": lambda load, reps: 100 * load / (52.2 + 41.9 * np.exp(-0.055 * reps)),
    "oconner_1989": lambda load, reps: load * (1 + 0.025 * reps),
    "wathan_1994": lambda load, reps: 100 * load / (48.8 + 53.8 * np.exp(-0.075 * reps)),
}


def shortest(run: Callable[[], Any], times: int = 15) -> float:
    best = float("inf")
    for _ in range(times):
        started = time.perf_counter()
        run()
        best = min(best, time.perf_counter() - started)
    return best


def equations(loads: Any, reps: Any, what: str) -> list[str]:
    behind = []
    for name, peer in PEERS.items():
        key = f"one_rm.{name}"
        assert np.allclose(bismar.batch(key, loads, reps), peer(loads, reps), rtol=1e-5), key
        ours, theirs = shortest(lambda: bismar.batch(key, loads, reps)), shortest(lambda: peer(loads, reps))
        print(f"| `batch` `{name}`, {what} | {ours / ROWS * 1e9:.2f} ns | {theirs / ROWS * 1e9:.2f} ns | {theirs / ours:.2f} |")
        if theirs < ours:
            behind.append(name)
    return behind


def tables() -> None:
    import pandas as pd
    import polars as pl

    frame = pd.DataFrame({"load": LOADS, "reps": REPS})
    table = pl.DataFrame({"load": LOADS, "reps": REPS})
    peer = PEERS["wathan_1994"]
    ours = shortest(lambda: bismar.batch("one_rm.wathan_1994", frame["load"], frame["reps"]))
    theirs = shortest(lambda: peer(frame["load"], frame["reps"]))
    print(f"| `wathan_1994` on pandas columns | {ours * 1e3:.2f} ms | pandas {theirs * 1e3:.2f} ms | {theirs / ours:.2f} |")
    expression = 100 * pl.col("load") / (48.8 + 53.8 * (-0.075 * pl.col("reps")).exp())
    ours = shortest(lambda: bismar.batch("one_rm.wathan_1994", table["load"], table["reps"]))
    theirs = shortest(lambda: table.select(expression))
    print(f"| `wathan_1994` on Polars columns | {ours * 1e3:.2f} ms | Polars {theirs * 1e3:.2f} ms | {theirs / ours:.2f} |")


def lifters() -> None:
    folder = Path(__file__).resolve().parents[3] / "examples/data"
    log = (folder / "demo-log.json").read_text()
    plan = json.loads((folder / "demo-plan.json").read_text())
    logs = [log] * 200
    one = shortest(lambda: bismar.fold_many(logs, threads=1), 3)
    two = shortest(lambda: bismar.fold_many(logs, threads=2), 3)
    print(f"| `fold_many`, 200 logs, 1 thread | {one * 1e3:.0f} ms | 2 threads {two * 1e3:.0f} ms | {one / two:.2f} |")
    kept = bismar.Progress(log)
    session = shortest(lambda: kept.next_session(plan, "2026-08-27"), 50)
    print(f"| next session of a kept state | {session * 1e6:.0f} us | | |")
    call = shortest(lambda: [bismar.call("one_rm.epley_1985", {"load": {"kg": 100}, "reps": 8}) for _ in range(1000)])
    print(f"| `call` | {call * 1e3:.2f} us | | |")


if __name__ == "__main__":
    print(f"load average {os.getloadavg()[0]:.1f}, numpy {np.__version__}, {ROWS} rows")
    print("| what | ours | peer | times as fast |\n|---|---:|---:|---:|")
    behind = equations(LOADS, REPS, "half kilograms")
    if "--check" in sys.argv:
        sys.exit(f"slower than numpy: {behind}" if behind else 0)
    equations(20.0 + (np.arange(ROWS) % 1200) * 0.1, REPS, "tenths of a kilogram")
    equations((np.arange(ROWS) % 400 + 45) / 2.2046226218487757, REPS, "pounds in kilograms")
    tables()
    lifters()
