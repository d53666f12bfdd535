"""Spark as the distributed engine: the session of every lifter of a table of events.

The rows are brought together by lifter and handed to Python as Arrow batches. A fold needs every event of a lifter, so there
is no partial aggregate: a lifter is the smallest piece of work.

    python with_spark.py [WORKERS] [LIFTERS ...]

prints a line for each number of lifters, with the growth exponent from one to the next.
"""

from __future__ import annotations

import math
import os
import sys
import time
from collections.abc import Iterator

import pyarrow as pa
from lifters import one_by_one, session, table
from pyspark.sql import DataFrame, SparkSession

# The workers run the Python that has the library.
os.environ.setdefault("PYSPARK_PYTHON", sys.executable)
SCHEMA = "lifter string, session string"
# Named, since a batch in which no lifter ends has no values to show it by.
COLUMNS = pa.schema([("lifter", pa.string()), ("session", pa.string())])


def sessions(batches: Iterator[pa.RecordBatch]) -> Iterator[pa.RecordBatch]:
    """Answers for the lifters of one partition, whose rows stand together; a lifter may lie across two batches."""
    lifter: str | None = None
    own: list[str] = []
    for batch in batches:
        names: list[str] = []
        answers: list[str] = []
        for name, event in zip(batch.column("lifter").to_pylist(), batch.column("event").to_pylist()):
            if lifter is not None and name != lifter:
                names.append(lifter)
                answers.append(session(lifter, own))
                own = []
            lifter = name
            own.append(event)
        yield pa.RecordBatch.from_pydict({"lifter": names, "session": answers}, COLUMNS)
    if lifter is not None:
        last = {"lifter": [lifter], "session": [session(lifter, own)]}
        yield pa.RecordBatch.from_pydict(last, COLUMNS)


def next_sessions(log: DataFrame, partitions: int) -> DataFrame:
    together = log.repartition(partitions, "lifter").sortWithinPartitions("lifter")
    return together.mapInArrow(sessions, SCHEMA)


def main(workers: int, sizes: list[int]) -> None:
    spark = (
        SparkSession.builder.master(f"local[{workers}]")
        .appName("next sessions")
        .config("spark.ui.enabled", "false")
        .config("spark.sql.adaptive.enabled", "false")
        .config("spark.driver.bindAddress", "127.0.0.1")
        .config("spark.driver.host", "127.0.0.1")
        .getOrCreate()
    )
    spark.sparkContext.setLogLevel("ERROR")
    before: tuple[int, float] | None = None
    for lifters in [sizes[0], *sizes]:
        names, events = table(lifters)
        log = spark.createDataFrame(pa.table({"lifter": names, "event": events})).cache()
        log.count()
        started = time.perf_counter()
        found = {row["lifter"]: row["session"] for row in next_sessions(log, 4 * workers).collect()}
        taken = time.perf_counter() - started
        log.unpersist()
        assert found == one_by_one(names, events)
        if before is None:
            # The first run starts the workers; it is not counted.
            before = (0, taken)
            continue
        grown = f", exponent {math.log(taken / before[1]) / math.log(lifters / before[0]):.2f}" if before[0] else ""
        print(f"spark local[{workers}]: {lifters} lifters, {len(events)} events, {taken:.2f} s, as one by one{grown}")
        before = (lifters, taken)
    spark.stop()


if __name__ == "__main__":
    given = [int(word) for word in sys.argv[1:]]
    main(given[0] if given else 2, given[1:] or [100])
