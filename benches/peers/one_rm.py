"""The peer of the batch forms: each classic equation as numpy's vectorised float64 expression.

Prints one line of JSON: versions, processor features, and for each equation the shortest time of a run in
nanoseconds for each set, and the mean of its answers, so that both sides are seen to do the same work.
"""

import json
import sys
import time

import numpy as np

COUNT = int(sys.argv[1])
RUNS = int(sys.argv[2])

index = np.arange(COUNT, dtype=np.int64)
load = 20.0 + (index * 7919 % 3600) * 0.05
halves = (2 + index * 31 % 29).astype(np.uint8)
# The conversion to float64 is left out of the timing, in the peer's favour.
reps = halves / 2.0

EQUATIONS = {
    "epley_1985": lambda w, r: w * (1 + r / 30),
    "brzycki_1993": lambda w, r: 36 * w / (37 - r),
    "brzycki_1993_decimal": lambda w, r: w / (1.0278 - 0.0278 * r),
    "lander_1985": lambda w, r: 100 * w / (101.3 - 2.67123 * r),
    "lombardi_1989": lambda w, r: w * r**0.10,
    "mayhew_1992": lambda w, r: 100 * w / (52.2 + 41.9 * np.exp(-0.055 * r)),
    "oconner_1989": lambda w, r: w * (1 + 0.025 * r),
    "wathan_1994": lambda w, r: 100 * w / (48.8 + 53.8 * np.exp(-0.075 * r)),
    "brown_1992": lambda w, r: w * (0.9849 + 0.0338 * r),
    "adams_1998": lambda w, r: w / (1 - 0.02 * r),
    "berger_1961": lambda w, r: w / (1.0261 * np.exp(-0.0262 * r)),
    "cummings_finn_1998": lambda w, r: 1.175 * w + 0.839 * r - 4.29787,
}


def features():
    try:
        from numpy._core._multiarray_umath import __cpu_features__ as found
    except ImportError:
        from numpy.core._multiarray_umath import __cpu_features__ as found
    return sorted(name for name, present in found.items() if present)


def shortest_time(equation):
    times = []
    for _ in range(RUNS):
        start = time.perf_counter_ns()
        result = equation(load, reps)
        times.append(time.perf_counter_ns() - start)
    return min(times) / COUNT, float(result.mean())


answer = {"version": np.__version__, "features": features(), "equations": {}}
for name, equation in EQUATIONS.items():
    nanoseconds, mean = shortest_time(equation)
    answer["equations"][name] = {"nanoseconds": nanoseconds, "mean": mean}
print(json.dumps(answer))
