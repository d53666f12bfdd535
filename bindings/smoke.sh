#!/usr/bin/env bash
# A smoke of each language that is not JavaScript: built quickly, a few calls, one refusal. The full runs are
# bindings/python/test.sh, bindings/c/test.sh and bindings/java/test.sh. Nothing where BISMAR_SMOKE=0.
set -euo pipefail
cd "$(dirname "$0")/.."
[ "${BISMAR_SMOKE:-1}" != 0 ] || exit 0

part=smoke
. tests/step.sh

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
built=$(realpath -m "${CARGO_TARGET_DIR:-target}")
given=(examples/data/demo-log.json examples/data/demo-plan.json 2026-08-27)

c() {
  # With the features of the tests, so that only the interface itself is compiled.
  cargo build --quiet --workspace --all-features --lib
  gcc bindings/c/examples/next_session.c -I bindings/c/include -L "$built/debug" -lbismar_c "-Wl,-rpath,$built/debug" -o "$work/next_session"
  "$work/next_session" "${given[@]}" > "$work/session.json"
  python3 -c 'import json, sys; assert len(json.load(open(sys.argv[1]))["lifts"]) > 2' "$work/session.json"
}

# The extension without optimisation, beside the package's own files: no wheel, which takes minutes.
python() {
  cargo build --quiet --manifest-path bindings/python/Cargo.toml --target-dir "$built/python"
  python3 -m venv "$work/venv"
  "$work/venv/bin/python" -m pip install --quiet --disable-pip-version-check "numpy>=1.26"
  cp -r bindings/python/python/bismar "$work/bismar"
  cp "$built/python/debug/lib_native.so" "$work/bismar/_native.abi3.so"
  PYTHONPATH=$work "$work/venv/bin/python" bindings/python/tests/smoke.py
}

java() {
  if [ -x "${JAVA_HOME:-}/bin/javac" ] && "$JAVA_HOME/bin/javac" --release 22 -d "$work/classes" bindings/java/bismar/*.java bindings/java/tests/*.java 2> /dev/null; then
    "$JAVA_HOME/bin/java" --enable-native-access=ALL-UNNAMED "-Dbismar.library=$built/debug/libbismar_c.so" -cp "$work/classes" Misuse examples/data
  else
    echo "no JDK of 22 or later in JAVA_HOME: the class is not run here"
  fi
}

step "C" c
step "Python" python
step "Java" java
