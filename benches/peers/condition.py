"""Filter and smoother of a wandering level with statsmodels, timed; started by benches/condition.rs.

Reads one value a line (an empty line is a day without a reading), writes the smoothed level, a line each, and prints
the best time in seconds.
"""

import sys
import time

import numpy as np
from statsmodels.tsa.statespace.structural import UnobservedComponents

values_path, smoothed_path, variance, drift, repeats = sys.argv[1:6]
with open(values_path) as lines:
    values = np.array([float(line) if line.strip() else np.nan for line in lines])
model = UnobservedComponents(values, "llevel", use_exact_diffuse=True)
parameters = [float(variance), float(drift)]
best = None
for _ in range(int(repeats)):
    start = time.perf_counter()
    result = model.smooth(parameters, return_ssm=True)
    took = time.perf_counter() - start
    best = took if best is None else min(best, took)
with open(smoothed_path, "w") as out:
    for filtered, smoothed in zip(result.filtered_state[0], result.smoothed_state[0]):
        out.write(f"{float(filtered)!r} {float(smoothed)!r}\n")
import statsmodels

print(best, f"statsmodels {statsmodels.__version__}, numpy {np.__version__}")
