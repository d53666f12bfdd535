"""Loads by mixed integer programming: scipy's milp (HiGHS), one problem a line.

Reads JSON lines {"masses": [...], "pairs": [...], "room": kg}: masses of one disc in kg, pairs of each, and what
may go on one end. Writes lines "answer {json}" with {"counts": [...], "seconds": s, "proved": bool}; the solver
may print lines of its own in between. The time is the processor time of the milp call alone, so that a busy
machine does not make the peer look slow. A problem without a proved optimum in the time limit counts with the time
it had.
"""

import json
import sys
import time

import numpy
import scipy
from scipy.optimize import Bounds, LinearConstraint, milp

TIME_LIMIT_SECONDS = 5.0

print("answer " + json.dumps({"peer": "scipy milp (HiGHS)", "version": scipy.__version__}), flush=True)
for line in sys.stdin:
    problem = json.loads(line)
    masses = numpy.array(problem["masses"])
    limit = LinearConstraint(masses, -numpy.inf, problem["room"])
    bounds = Bounds(0, numpy.array(problem["pairs"]))
    whole = numpy.ones(len(masses))
    options = {"mip_rel_gap": 0.0, "time_limit": TIME_LIMIT_SECONDS}
    start = time.process_time()
    found = milp(-masses, constraints=limit, bounds=bounds, integrality=whole, options=options)
    seconds = time.process_time() - start
    counts = [] if found.x is None else [int(round(x)) for x in found.x]
    answer = {"counts": counts, "seconds": seconds, "proved": found.status == 0}
    print("answer " + json.dumps(answer), flush=True)
