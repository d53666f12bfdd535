#!/usr/bin/env bash
# Runs every fast check on a fresh machine and prints each step's name and seconds.
# Installs what it needs (Rust targets here; Node packages and a browser in the scripts it calls).
set -euo pipefail
cd "$(dirname "$0")/.."
export CARGO_TERM_COLOR=never RUSTDOCFLAGS="-D warnings"
# Property tests draw the same cases each time, so that one commit has one verdict; `cargo test` alone draws anew.
export PROPTEST_RNG_SEED="${PROPTEST_RNG_SEED:-20260829}"

started=$SECONDS
. tests/step.sh

targets() {
  rustup target add thumbv7em-none-eabihf wasm32-unknown-unknown
}

# Features are additive: the library must build with every set of them (json and schema imply serde).
features() {
  local set
  for set in "" english rehearsal english,rehearsal serde serde,english serde,rehearsal serde,english,rehearsal \
    json json,english json,rehearsal json,english,rehearsal schema; do
    echo "   features: ${set:-none}"
    cargo check --quiet --lib --no-default-features --features "$set"
  done
}

# What must not depend on a feature is tested once more on the crate without any.
without_features() {
  if cargo tree --package bismar-without-features --prefix none | grep -q '^serde'; then
    echo "the crate without features depends on serde"
    return 1
  fi
  cargo test --quiet --package bismar-without-features
}

bare() {
  cargo check --quiet --lib --no-default-features --target thumbv7em-none-eabihf
  cargo check --quiet --lib --no-default-features --target wasm32-unknown-unknown
}

# The first command of the README must do its job: print a session, and refuse a broken log whole. As the tests build it,
# since a build with release's optimisation of everything it needs takes minutes and says nothing more.
main_command() {
  cargo build --quiet --workspace --all-features --examples
  local example=${CARGO_TARGET_DIR:-target}/debug/examples/next_session
  mkdir -p target
  "$example" | tee target/next_session.txt
  awk 'length($0) > 80 { print "line wider than 80 columns: " $0; bad = 1 } END { exit bad }' target/next_session.txt
  "$example" --json > target/next_session.json
  local code=0
  echo '{"format":"bismar-log","version":1,"lifter":{"id":"x"},"events":[{"sequence":7,"day":"2026-02-30","kind":{"body_mass_recorded":{"kg":80}}}]}' > target/broken.json
  "$example" --log target/broken.json --today 2026-03-01 || code=$?
  [ "$code" = 2 ]
}

step "targets" targets
step "format" cargo fmt --all --check
step "lint" cargo clippy --quiet --workspace --all-features --all-targets
step "feature sets" features
step "bare metal and wasm" bare
step "tests" cargo test --workspace --all-features
step "tests without features" without_features
step "documentation" cargo doc --quiet --workspace --no-deps --all-features
step "package" cargo package --quiet --package bismar --allow-dirty
step "main command" main_command
step "examples" bash tests/examples.sh
for script in bindings/smoke.sh bindings/test.sh www-demo/test.sh; do
  if [ -f "$script" ]; then
    step "$script" bash "$script"
  fi
done
echo "== all: $((SECONDS - started)) s"
