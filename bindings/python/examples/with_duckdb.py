"""DuckDB on one machine: the session of every lifter, as a function that SQL calls with a list of events."""

import bismar
import duckdb
import pyarrow as pa
from lifters import one_by_one, session, table

LIFTERS = 60


def sessions(lifters: pa.ChunkedArray, lists: pa.ChunkedArray) -> pa.Array:
    return pa.array([session(name, own) for name, own in zip(lifters.to_pylist(), lists.to_pylist())])


def e1rm(loads: pa.ChunkedArray, reps: pa.ChunkedArray) -> pa.Array:
    return pa.array(bismar.batch("one_rm.epley_1985", loads.to_numpy(), reps.to_numpy()))


def main() -> None:
    connection = duckdb.connect(config={"threads": 2})
    connection.create_function("e1rm", e1rm, ["DOUBLE", "DOUBLE"], "DOUBLE", type="arrow")
    connection.create_function("next_session", sessions, ["VARCHAR", "VARCHAR[]"], "VARCHAR", type="arrow")
    found = connection.sql("SELECT e1rm(load, reps) FROM (VALUES (60.0, 8.0), (100.0, 3.0)) AS sets(load, reps)").fetchall()
    assert found == [(bismar.flat("one_rm.epley_1985", *row),) for row in [(60.0, 8.0), (100.0, 3.0)]], found

    names, events = table(LIFTERS)
    connection.register("log", pa.table({"lifter": names, "event": events}))
    answers = connection.sql("SELECT lifter, next_session(lifter, list(event)) FROM log GROUP BY lifter").fetchall()
    assert dict(answers) == one_by_one(names, events)
    threads = connection.sql("SELECT current_setting('threads')").fetchall()[0][0]
    print(f"duckdb: {len(answers)} lifters on {threads} threads, as one by one")


if __name__ == "__main__":
    main()
