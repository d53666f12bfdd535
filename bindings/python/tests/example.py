"""A program as a sport scientist would write it; checked by mypy in strict mode and run."""

import json
from pathlib import Path

import numpy as np

import bismar
from bismar import BismarError, Progress, one_rm
from bismar.types import Kilograms, LogInput, PlanInput, SessionPlan

DATA = Path(__file__).resolve().parents[3] / "examples/data"


def estimate(kilograms: float, reps: float) -> Kilograms | None:
    try:
        return one_rm.brzycki_1993(load={"kg": kilograms}, reps=reps)
    except BismarError as error:
        print(f"refused: {error.code} at {error.field}, allowed {error.allowed}")
        return None


log: LogInput = json.loads((DATA / "demo-log.json").read_text())
plan: PlanInput = json.loads((DATA / "demo-plan.json").read_text())

print(estimate(100.0, 8), estimate(100.0, 300))
print(bismar.batch("one_rm.brzycki_1993", np.array([100.0, 90.0]), np.array([8.0, 10.0])))

session: SessionPlan = Progress(log).next_session(plan, "2026-08-27")
week = bismar.answers.week(log=log, today="2026-08-27")
print(len(session["lifts"]), "lifts today;", len(bismar.rows()), "rows in the registry;", week["today"])
