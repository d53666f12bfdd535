#!/usr/bin/env bash
# Builds the C interface and runs its checks: the header is what the source says, use and misuse under the address and
# undefined sanitizers, memory under bad calls, every published check and the corpus of the same bits.
set -euo pipefail
cd "$(dirname "$0")/../.."

part=c
. tests/step.sh

work=$(mktemp -d)
native=${BISMAR_NATIVE:-$work/native}
trap 'rm -rf "$work"' EXIT
built=${CARGO_TARGET_DIR:-target}/debug
data=examples/data
strict=(-std=c11 -O1 -g -Wall -Wextra -Wpedantic -Werror -Wno-type-limits -D_GNU_SOURCE -I bindings/c/include)
sanitized=(-fsanitize=address,undefined -fno-sanitize-recover=all)
linked=(-L "$built" -lbismar_c -lpthread "-Wl,-rpath,$(realpath -m "$built")")

header() {
  # Both at once: one compilation of the library for the two.
  cargo build --quiet --package bismar-build --package bismar-c
  cargo run --quiet --package bismar-build -- c-header
  if [ -n "$(git status --porcelain -- bindings/c/include)" ]; then
    echo "the header is stale: commit what cargo run -p bismar-build -- c-header writes"
    return 1
  fi
}

programs() {
  gcc "${strict[@]}" "${sanitized[@]}" bindings/c/tests/misuse.c -o "$work/misuse" "${linked[@]}"
  gcc "${strict[@]}" "${sanitized[@]}" bindings/c/tests/runner.c -o "$work/runner" "${linked[@]}"
  gcc "${strict[@]}" bindings/c/tests/misuse.c -o "$work/plain" "${linked[@]}"
  gcc "${strict[@]}" "${sanitized[@]}" bindings/c/examples/next_session.c -o "$work/next_session" "${linked[@]}"
  echo '#include "bismar.h"' | g++ -std=c++17 -Wall -Wextra -Wpedantic -Werror -I bindings/c/include -fsyntax-only -x c++ -
}

example() {
  "$work/next_session" "$data/demo-log.json" "$data/demo-plan.json" 2026-08-27 > "$work/session.json"
  head -c 100 "$work/session.json"
  echo
}

# A sanitizer that finds nothing because it does not run would pass as well: one read beyond the end has to be seen.
watched() {
  printf '#include "bismar.h"\n#include <stdlib.h>\nint main(void) { BismarBytes b; char *k = malloc(3); return bismar_keys(&b) + b.data[b.length + 1] + k[0]; }\n' > "$work/wrong.c"
  gcc "${strict[@]}" -Wno-all "${sanitized[@]}" "$work/wrong.c" -o "$work/wrong" "${linked[@]}"
  if "$work/wrong" 2> "$work/found"; then
    echo "the sanitizer does not see a byte beyond the end"
    return 1
  fi
  grep -q "heap-buffer-overflow" "$work/found"
}

spoken() {
  bash bindings/checks/native.sh "$native"
  # shellcheck disable=SC2046
  python3 bindings/checks/spoken_checks.py C $(cat "$native/counted") "$native/corpus" "$work/runner"
}

step "header" header
step "programs" programs
step "example" example
step "sanitizers see a fault" watched
step "use and misuse" "$work/misuse" "$data"
step "memory" "$work/plain" "$data" memory
step "published checks and same bits" spoken
echo "== c: all done in $SECONDS s"
