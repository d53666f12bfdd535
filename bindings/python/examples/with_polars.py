"""Polars on one machine: a column through an equation, and the session of every lifter of a table of events.

Polars groups; the library answers for all lifters on two threads, an error in the place of each that is refused.
"""

import os

os.environ["POLARS_MAX_THREADS"] = "2"

import bismar
import polars as pl
from lifters import one_by_one, request, table

LIFTERS = 60


def main() -> None:
    sets = pl.DataFrame({"load": [60.0, 62.5, 100.0], "reps": [8, 5, 3]})
    e1rm = pl.struct("load", "reps").map_batches(
        lambda rows: pl.Series(bismar.batch("one_rm.epley_1985", rows.struct.field("load"), rows.struct.field("reps"))),
        return_dtype=pl.Float64,
    )
    found = sets.with_columns(e1rm=e1rm)["e1rm"].to_list()
    assert found == [bismar.flat("one_rm.epley_1985", *row) for row in sets.iter_rows()], found

    names, events = table(LIFTERS)
    log = pl.DataFrame({"lifter": names, "event": events})
    grouped = log.group_by("lifter").agg("event")
    asked = [request(lifter, own) for lifter, own in grouped.iter_rows()]
    # One log that is cut off: refused alone, in its place.
    answers = bismar.call_many("prescription.next_session", [*asked, asked[0][:1000]], threads=2)
    assert isinstance(answers[-1], bismar.BismarError) and answers[-1].code == "not_json"
    sessions = dict(zip(grouped["lifter"], answers))
    assert sessions == one_by_one(names, events)
    print(f"polars: {len(sessions)} lifters on {pl.thread_pool_size()} threads, as one by one")


if __name__ == "__main__":
    main()
