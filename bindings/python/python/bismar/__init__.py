"""Progression maths for barbell lifts: plain objects in, plain objects out, every argument checked, every number with
its source, and the same bits as in Rust. Generated from the library; do not edit.
"""

# ruff: noqa
from bismar import answers, condition, dose, gate, horizon, loading, one_rm, prescription, progression, quantity, record, rehearsal, statistics, text
from bismar._core import batch, call_many, fold_many, logs_of
from bismar._error import BismarError
from bismar._native import Progress, call, call_json, flat, keys, rows, version

__version__ = version()
__all__ = [
    "answers",
    "condition",
    "dose",
    "gate",
    "horizon",
    "loading",
    "one_rm",
    "prescription",
    "progression",
    "quantity",
    "record",
    "rehearsal",
    "statistics",
    "text",
    "BismarError",
    "Progress",
    "batch",
    "call",
    "call_json",
    "call_many",
    "flat",
    "fold_many",
    "keys",
    "logs_of",
    "rows",
    "version",
]
