"""A few calls of every kind and one refusal, in a second; the full checks stand beside it."""

import json
from pathlib import Path

import numpy as np

import bismar

DATA = Path(__file__).resolve().parents[3] / "examples/data"
LOG, PLAN = (DATA / "demo-log.json").read_text(), (DATA / "demo-plan.json").read_text()

# 100 * (1 + 15 / 30), by hand.
assert bismar.one_rm.epley_1985(load={"kg": 100}, reps=15) == {"kg": 150.0}
found = bismar.batch("one_rm.epley_1985", np.full(100, 100.0), 15.0 + np.zeros(100))
assert found.tolist() == [150.0] * 100
try:
    bismar.one_rm.epley_1985(load={"kg": 100}, reps=300)
except bismar.BismarError as error:
    assert (error.code, error.field) == ("out_of_range", "reps"), (error.code, error.field)
else:
    raise AssertionError("300 repetitions were taken")
kept = bismar.Progress(LOG)
session = kept.next_session(json.loads(PLAN), "2026-08-27")
assert session == json.loads(bismar.call_json("prescription.next_session", f'{{"log":{LOG},"plan":{PLAN},"today":"2026-08-27"}}'))
table = "Date,Exercise,Weight (kg),Reps\n2026-08-27,front squat,40,5\n2026-08-27,bicycle,0,1\n"
told = bismar.answers.sets_to_log(table={"csv": table}, log=json.loads(LOG))
assert (told["rows"], told["taken"], [row["why"] for row in told["left_out"]]) == (2, 1, ["unknown_lift"])
assert isinstance(bismar.fold_many([LOG, "{"])[1], bismar.BismarError)
print(f"smoke: {len(bismar.keys())} functions, a column, a kept state, a table of sets, refusals")
