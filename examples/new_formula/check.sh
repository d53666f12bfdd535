#!/usr/bin/env bash
# Does the steps of the walk-through on a copy of the project and runs the new checks there: without the data file they
# must fail, with it they must pass.
set -euo pipefail
cd "$(dirname "$0")/../.."
copy=target/new_formula/copy
steps=$PWD/examples/new_formula

rm -rf "$copy"
mkdir -p "$copy"
git ls-files -z --cached --others --exclude-standard -- Cargo.toml Cargo.lock README.md src tests/published \
  tests/published.rs examples/shared | tar --null -T - -cf - | tar -C "$copy" -xf -
cd "$copy"
# The crate alone, unoptimised and without what its other tests need, so that this takes seconds.
sed -i -e 's/^members = .*/members = ["."]/' -e '/^\[dev-dependencies\]/,/^$/d' -e '/^\[\[bench\]\]/,/^$/d' Cargo.toml
export CARGO_TARGET_DIR=../built CARGO_PROFILE_DEV_OPT_LEVEL=0 CARGO_PROFILE_DEV_DEBUG=0

# Step 1: one file.
cp "$steps/same_volume.rs" src/dose/
# Step 2: where the module lists its files.
sed -i -e 's/^mod volume;/mod same_volume;\n&/' -e 's/^pub use volume::{/pub use same_volume::same_volume_load;\n&/' \
  -e 's/^    volume::DECLARED,/    same_volume::DECLARED,\n&/' src/dose/mod.rs
# Without step 3 the row has no check.
if cargo test --quiet --all-features --test published every_row_has_a_check > ../without.txt 2>&1; then
  echo "a row without a check was not found" && exit 1
fi
grep -o 'rows without a check.*' ../without.txt
# Step 3: one data file; step 4: the lists anew, and the checks.
cp "$steps/same-volume.json" tests/published/
mkdir -p ../cases && cp "$steps/same-volume.json" ../cases/
BISMAR_UPDATE=1 BISMAR_VECTORS=$PWD/../cases cargo test --quiet --all-features --test published -- --nocapture every_row \
  names_are_listed the_page_is_fresh cases_from_outside > ../with.txt 2>&1 || { cat ../with.txt; exit 1; }
grep -o 'same-volume.json: .* mapped' ../with.txt
grep -q '"dose.same_volume_load"' tests/published/names.json
grep -q '| `same_volume_load` | arithmetic |' src/guide/provenance.md
echo "the walk-through's formula is listed, on the provenance page, and its checks hold"
