"""Rolling and fading means by pandas. Loads as JSON on standard input, times and values as JSON out."""

import json
import sys
import time

import pandas

question = json.load(sys.stdin)
loads = pandas.Series(question["loads"], dtype=float)


def means():
    return [
        loads.rolling(7).mean(),
        loads.rolling(28).mean(),
        loads.ewm(span=7, adjust=False).mean(),
        loads.ewm(span=28, adjust=False).mean(),
    ]


times = []
for _ in range(101):
    start = time.perf_counter()
    means()
    times.append(time.perf_counter() - start)

values = [[None if value != value else value for value in series] for series in means()]
print(json.dumps({"peer": f"pandas {pandas.__version__}", "seconds": min(times), "values": values}))
