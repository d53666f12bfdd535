#!/usr/bin/env bash
# One look at each language whose own checks stand outside the test command: the C example prints a session, and the Python
# package, built as quickly as it can be, answers a few calls.
set -euo pipefail
cd "$(dirname "$0")/.."

part=smoke
. tests/step.sh

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
target=$(realpath -m "${CARGO_TARGET_DIR:-target}")

c() {
  # Both, as the checks of C build them, so that nothing is compiled anew there.
  cargo build --quiet --package bismar-build --package bismar-c
  "${CC:-cc}" bindings/c/examples/next_session.c -I bindings/c/include -L "$target/debug" -lbismar_c \
    "-Wl,-rpath,$target/debug" -o "$work/next_session"
  "$work/next_session" examples/data/demo-log.json examples/data/demo-plan.json 2026-08-27 > "$work/session.json"
  python3 -c 'import json, sys; print("C: a session of", len(json.load(sys.stdin)["lifts"]), "lifts")' < "$work/session.json"
}

python() {
  if ! python3 -c 'import ensurepip' 2> /dev/null; then
    apt-get update -qq
    DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends python3-venv > /dev/null
  fi
  python3 -m venv "$work/venv"
  "$work/venv/bin/python" -m pip install --quiet --disable-pip-version-check maturin numpy
  # Not optimised; the wheel as it ships is what bindings/python/test.sh installs.
  CARGO_INCREMENTAL=0 CARGO_TARGET_DIR="$target/python" "$work/venv/bin/maturin" build --quiet --compatibility linux \
    --manifest-path bindings/python/Cargo.toml --interpreter "$work/venv/bin/python" --out "$work"
  "$work/venv/bin/python" -m pip install --quiet --disable-pip-version-check "$work"/bismar-*.whl
  "$work/venv/bin/python" bindings/python/tests/smoke.py
}

step "C" c
step "Python" python
