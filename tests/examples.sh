#!/usr/bin/env bash
# Runs the examples an embedding developer would copy. Those in JavaScript run with the package's tests.
set -euo pipefail
cd "$(dirname "$0")/.."
. tests/step.sh

# A line that must be among the answers.
expect() {
  grep -qF -- "$1" "$2" || { echo "not in $2: $1"; exit 1; }
}

# As the tests build them, so that after those nothing is compiled anew.
cargo build --quiet --workspace --all-features --examples
built=${CARGO_TARGET_DIR:-target}/debug/examples

mkdir -p target/demo

# Whoever stops reading early gets no complaint: here nobody reads at all by the time it is printed.
for option in "" --json; do
  { sleep 0.2; "$built/next_session" $option 2> target/closed_pipe.err; } | true
  [ ! -s target/closed_pipe.err ]
done
# Nor does whoever reads the first line alone.
first=$("$built/next_session" --json 2> target/closed_pipe.err | head -1)
[ -n "$first" ] && [ ! -s target/closed_pipe.err ]

# The committed demo is what the generator makes, byte for byte.
"$built/generate_log" --out target/demo
cmp target/demo/demo-log.json examples/data/demo-log.json
cmp target/demo/demo-plan.json examples/data/demo-plan.json

"$built/service" < examples/data/requests.jsonl > target/service.jsonl
[ "$(wc -l < target/service.jsonl)" = "$(wc -l < examples/data/requests.jsonl)" ]
expect '{"id":1,"answer":{"kg":150}}' target/service.jsonl
expect '{"id":2,"error":{"code":"out_of_range","field":"reps","value":"300"' target/service.jsonl
expect '{"id":4,"answer":{"session":{"stops":[],' target/service.jsonl
expect '"sentence":"Entry 5 of the log. ' target/service.jsonl
expect '{"id":6,"answer":{"format":"bismar-state","version":' target/service.jsonl
expect '{"id":null,"error":{"code":"not_json"' target/service.jsonl
# A bad line, of any bytes, is one error line, and those around it are answered.
{ head -n 1 examples/data/requests.jsonl; printf '\xff\xfe\x00\x1b[2J\n\xc3\n'; printf '{"id":7,"ask":"\\u001b[2J"}\r\n'; head -n 1 examples/data/requests.jsonl; } | "$built/service" > target/bytes.jsonl
[ "$(wc -l < target/bytes.jsonl)" = 5 ]
[ "$(grep -c '"code":"not_json"' target/bytes.jsonl)" = 2 ]
[ "$(grep -cF '{"id":1,"answer":{"kg":150}}' target/bytes.jsonl)" = 2 ]
if grep -qP '[\x00-\x09\x0b-\x1f\x7f]' target/bytes.jsonl; then echo "a raw control character in an answer"; exit 1; fi

"$built/many_lifters" > target/many_lifters.txt
expect 'the same bits' target/many_lifters.txt
printf 'invented 1,60,5\ninvented 1,300,300\n' > target/bad_table.txt
if "$built/many_lifters" target/bad_table.txt 2> target/bad_table.err; then exit 1; fi
expect 'line 2: 300 repetitions' target/bad_table.err

"$built/provenance" | diff - src/guide/provenance.md
examples/new_formula/check.sh
