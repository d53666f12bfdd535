"""Loads by mixed integer programming: scipy's milp (HiGHS), one problem a line.

Reads JSON lines {"masses": [...], "pairs": [...], "room": kg}: masses of one disc in kg, pairs of each, and what
may go on one end. Writes JSON lines {"counts": [...], "seconds": s}. The time is that of the milp call alone.
"""

import json
import sys
import time

import numpy
import scipy
from scipy.optimize import Bounds, LinearConstraint, milp

print(json.dumps({"peer": "scipy milp (HiGHS)", "version": scipy.__version__}), flush=True)
for line in sys.stdin:
    problem = json.loads(line)
    masses = numpy.array(problem["masses"])
    limit = LinearConstraint(masses, -numpy.inf, problem["room"])
    bounds = Bounds(0, numpy.array(problem["pairs"]))
    whole = numpy.ones(len(masses))
    start = time.perf_counter()
    found = milp(-masses, constraints=limit, bounds=bounds, integrality=whole, options={"mip_rel_gap": 0.0})
    seconds = time.perf_counter() - start
    counts = [] if found.x is None else [int(round(x)) for x in found.x]
    print(json.dumps({"counts": counts, "seconds": seconds}))
