#!/usr/bin/env bash
# The tests of use and misuse under Valgrind, which sees into the library where the sanitizers of the C side do not.
set -euo pipefail
cd "$(dirname "$0")/../.."
. tests/step.sh
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
# Both, as the checks build them, so that nothing is compiled anew.
cargo build --quiet --package bismar-build --package bismar-c
built=$(realpath "${CARGO_TARGET_DIR:-target}")/debug
gcc -std=c11 -O1 -g -D_GNU_SOURCE -I bindings/c/include bindings/c/tests/misuse.c -o "$work/misuse" \
  -L "$built" -lbismar_c -lpthread "-Wl,-rpath,$built"
valgrind --quiet --error-exitcode=9 --leak-check=full --errors-for-leak-kinds=definite,indirect \
  "$work/misuse" examples/data
echo "c: nothing found by valgrind"
