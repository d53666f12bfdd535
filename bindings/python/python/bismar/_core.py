"""What is written by hand: the ways in that are the same for every function."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from bismar import _native
from bismar._error import BismarError
from bismar._native import Progress


def _column(given: ArrayLike) -> NDArray[np.float64] | float:
    """A contiguous column of float64, without a copy where it is one already; a number stands for every row."""
    if isinstance(given, (int, float)):
        return float(given)
    return np.ascontiguousarray(given, dtype=np.float64)


def batch(
    key: str, *columns: ArrayLike, out: NDArray[np.float64] | None = None, refused: str = "raise"
) -> NDArray[np.float64]:
    """Runs a function of numbers over columns, as fast as the library can: the same bits as ``flat`` for every row.

    Columns are anything that numpy can take as float64 (a column of pandas, Polars or Arrow); a number stands for the
    same number in every row. With ``refused="nan"`` a row that the function refuses is NaN; else the first such row is
    raised, with its place behind the field.
    """
    if refused not in ("raise", "nan"):
        raise ValueError('refused is "raise" or "nan"')
    given = [_column(column) for column in columns]
    if out is None:
        rows = next((len(column) for column in given if not isinstance(column, float)), 1)
        out = np.empty(rows, dtype=np.float64)
    _native.batch(key, given, out, refused == "nan")
    return out


def fold_many(
    logs: Iterable[Mapping[str, Any] | str], *, threads: int | None = None
) -> list[Progress | BismarError]:
    """Folds many logs (objects or JSON texts) on all processors, or on so many threads.

    In the order given; in the place of a log that is refused stands its error, and no other log is lost for it.
    """
    return _native.fold_many(list(logs), threads)


def logs_of(
    lifters: Iterable[Any], events: Iterable[str], about: Mapping[Any, Mapping[str, Any]] | None = None
) -> dict[Any, str]:
    """The log of every lifter, as JSON text, from two columns of a table: whose event, and the event as JSON text.

    ``about`` has the log's field ``lifter`` of each (sex and day of birth change what is said); without it a lifter has an
    id and nothing more. The order of the rows does not matter, since a fold sorts by day and number.
    """
    grouped: dict[Any, list[str]] = {}
    for lifter, event in zip(lifters, events, strict=True):
        grouped.setdefault(lifter, []).append(event)

    def log(lifter: Any, own: list[str]) -> str:
        who = json.dumps((about or {}).get(lifter, {"id": str(lifter)}))
        return f'{{"format":"bismar-log","version":1,"lifter":{who},"events":[{",".join(own)}]}}'

    return {lifter: log(lifter, own) for lifter, own in grouped.items()}


def call_many(key: str, given: Sequence[str], *, threads: int | None = None) -> list[str | BismarError]:
    """Calls one function for each JSON text on all processors, or on so many threads.

    In the order given; in the place of a text that is refused stands its error, and no other is lost for it.
    """
    return _native.call_many(key, list(given), threads)
