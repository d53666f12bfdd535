#!/usr/bin/env bash
# The library with the oldest compiler it names and the oldest direct dependencies that its manifest allows, with every
# feature and with none. Works on a copy, so that no lock file changes. Needs `rustup`.
set -euo pipefail
cd "$(dirname "$0")/.."

oldest=$(sed -n '/^\[package\]/,/^\[features\]/s/^rust-version = "\(.*\)"/\1/p' Cargo.toml)
rustup toolchain install --profile minimal "$oldest" > /dev/null 2>&1

copy=$(mktemp -d)
trap 'rm -rf "$copy"' EXIT
cp -r src README.md "$copy"
# The manifest of the library alone: no workspace, and nothing that only tests and benches need.
awk '
  /^\[/ { keep = ($0 ~ /^\[(package|package.metadata.docs.rs|features|dependencies)\]$/) }
  keep
' Cargo.toml | sed -e '/^include = /d' \
  -e "s/^version.workspace.*/version = \"0.0.0\"/" -e 's/^edition.workspace.*/edition = "2024"/' \
  -e 's/^license.workspace.*/license = "MIT"/' > "$copy/Cargo.toml"

cd "$copy"
RUSTC_BOOTSTRAP=1 cargo update --quiet -Z direct-minimal-versions
cargo tree --edges normal --depth 1 --all-features
for features in --no-default-features --all-features; do
  CARGO_TARGET_DIR="${CARGO_TARGET_DIR:-$copy/target}" cargo "+$oldest" check --quiet --lib $features
  echo "   rustc $oldest, oldest direct dependencies, $features"
done
