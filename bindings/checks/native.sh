#!/usr/bin/env bash
# What every other language is held against, into a folder, unless it is there: how many published checks the native run
# counts, and the corpus with its native digests.
set -euo pipefail
cd "$(dirname "$0")/../.."
. tests/step.sh
folder=$1
if [ ! -f "$folder/counted" ]; then
  mkdir -p "$folder"
  cargo run --quiet --package bismar-build -- corpus --plain "$folder/corpus"
  cargo test --quiet --workspace --all-features --test published -- --nocapture |
    sed -n 's/.*published checks: \([0-9]*\) cases over \([0-9]*\) functions.*/\1 \2/p' | head -1 > "$folder/counts"
  grep -q '^[0-9]* [0-9]*$' "$folder/counts"
  mv "$folder/counts" "$folder/counted"
fi
