#!/usr/bin/env bash
# The examples of engines, each against the answers one by one: Polars and DuckDB on two threads, Spark with one worker and
# two, the nightly job. Not in the fast checks. Spark needs a Java of 17 or later, and pandas. Numbers of lifters for Spark may be given.
set -euo pipefail
cd "$(dirname "$0")/../.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
python3 -m venv "$work/venv"
"$work/venv/bin/python" -m pip install --quiet --disable-pip-version-check polars duckdb pyarrow pandas pyspark ./bindings/python
cd bindings/python/examples
for example in with_polars with_duckdb nightly; do
  "$work/venv/bin/python" "$example.py"
done
sizes=("$@")
[ "${#sizes[@]}" -gt 0 ] || sizes=(100 200 400)
for workers in 1 2; do
  "$work/venv/bin/python" with_spark.py "$workers" "${sizes[@]}" 2> "$work/spark.err" || { cat "$work/spark.err"; exit 1; }
done
