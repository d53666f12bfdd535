"""The two-component response fitted by scipy from the same starts. JSON in, time and squares as JSON out."""

import json
import sys
import time

import numpy
import scipy
from scipy.optimize import least_squares
from scipy.signal import lfilter

question = json.load(sys.stdin)
loads = numpy.array(question["loads"])
values = numpy.array(question["values"])


def trace(days):
    """What is left before each day's session."""
    left = numpy.exp(-1.0 / days)
    after = lfilter([1.0], [1.0, -left], loads)
    return numpy.concatenate([[0.0], left * after[:-1]])


def residuals(parameters):
    baseline, fitness_gain, fatigue_gain, slow, quick = parameters
    return baseline + fitness_gain * trace(slow) - fatigue_gain * trace(quick) - values


def slope(days):
    """Derivative of the trace by its time constant."""
    left = numpy.exp(-1.0 / days)
    after = lfilter([1.0], [1.0, -left], loads)
    fading = left / days**2
    return lfilter([0.0, fading], [1.0, -left], after)


def derivatives(parameters):
    _, fitness_gain, fatigue_gain, slow, quick = parameters
    return numpy.column_stack([
        numpy.ones(len(loads)), trace(slow), -trace(quick), fitness_gain * slope(slow), -fatigue_gain * slope(quick)
    ])


def fit(jac):
    best = None
    for slow, quick in question["starts"]:
        # The same linear start that a separable fit works out for itself.
        columns = numpy.column_stack([numpy.ones(len(loads)), trace(slow), -trace(quick)])
        linear = numpy.linalg.lstsq(columns, values, rcond=None)[0]
        linear[1:] = numpy.maximum(linear[1:], 1e-6)
        answer = least_squares(
            residuals,
            [*linear, slow, quick],
            bounds=([-numpy.inf, 0, 0, 10, 1], [numpy.inf, numpy.inf, numpy.inf, 120, 40]),
            x_scale="jac",
            jac=jac,
        )
        if best is None or answer.cost < best.cost:
            best = answer
    return best


def timed(jac):
    times = []
    for _ in range(15):
        start = time.perf_counter()
        best = fit(jac)
        times.append(time.perf_counter() - start)
    return min(times), 2.0 * best.cost


# As it is called by default, and with the derivatives written out by hand.
seconds, squares = timed("2-point")
seconds_derivatives, squares_derivatives = timed(derivatives)
print(json.dumps({
    "peer": f"scipy {scipy.__version__} least_squares",
    "seconds": seconds,
    "seconds_derivatives": seconds_derivatives,
    "squares": min(squares, squares_derivatives),
}))
