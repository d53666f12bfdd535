#!/usr/bin/env bash
# Whether versions of `libm` give the same bits: prints the versions by the digest of what they give, and fails where there
# is more than one. Without arguments those that Cargo.toml allows; before a newer one is let in: tests/libm_versions.sh 0.2.17
set -euo pipefail
cd "$(dirname "$0")/.."

allowed=(0.2.12 0.2.13 0.2.14 0.2.15 0.2.16)
copy=$(mktemp -d)
trap 'rm -rf "$copy"' EXIT
mkdir "$copy/src"
cp tests/libm/bits.rs "$copy/src/main.rs"
for version in "${allowed[@]}" "$@"; do
  cat > "$copy/Cargo.toml" <<MANIFEST
[package]
name = "bits"
version = "0.0.0"
edition = "2021"
[dependencies]
libm = { version = "=$version", default-features = false, features = ["arch"] }
[workspace]
MANIFEST
  (cd "$copy" && CARGO_TARGET_DIR="$copy/target" cargo run --quiet --release) > "$copy/bits.$version"
  echo "libm $version: $(sha256sum < "$copy/bits.$version" | cut -c1-16)"
done
for version in "${allowed[@]}" "$@"; do
  diff "$copy/bits.${allowed[0]}" "$copy/bits.$version"
done
echo "the same bits"
