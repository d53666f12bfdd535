#!/usr/bin/env bash
# Builds the npm package and runs all its tests, from nothing: toolchain targets, npm packages, Chromium.
# BISMAR_REPRODUCIBLE=1 adds a second build in another folder and compares byte for byte. The native tests of the
# conversions run with the workspace's.
set -euo pipefail
cd "$(dirname "$0")/.."

part=bindings
. tests/step.sh

targets() {
  rustup target list --installed | grep -qx wasm32-unknown-unknown || rustup target add wasm32-unknown-unknown
}

packages() {
  (cd bindings && npm ci --no-audit --no-fund --loglevel=error)
}

browser() {
  if command -v chromium >/dev/null; then return; fi
  apt-get update -qq
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends chromium >/dev/null
}

no_registry_host() {
  if grep -n '"resolved"' bindings/package-lock.json; then return 1; fi
}

# The same sources in another folder give the same bytes.
reproducible() {
  local other
  other=$(mktemp -d)/elsewhere
  mkdir -p "$other"
  git ls-files -z --cached --others --exclude-standard | tar --null -T - -cf - | tar -C "$other" -xf -
  ln -s "$PWD/bindings/node_modules" "$other/bindings/node_modules"
  CARGO_TARGET_DIR="$other/target" "${CARGO_TARGET_DIR:-target}/debug/bismar-build" package --root "$other" --parts "$BISMAR_PARTS" >/dev/null
  diff -r bindings/pkg "$other/bindings/pkg"
  echo "byte for byte the same from two folders"
  rm -rf "$(dirname "$other")"
}

tests() {
  # One file after the other: they share two cores with whatever else runs.
  node --test --test-reporter=spec --test-concurrency=1 "$@"
}

# Parts of the package to build and test beside the whole; `.ci/run` names all of them.
export BISMAR_PARTS=${BISMAR_PARTS-session}
export BISMAR_VITE_OUT=${BISMAR_VITE_OUT:-$PWD/target/bindings-vite}
export BISMAR_CORPUS=${BISMAR_CORPUS:-$PWD/target/bindings-corpus}

step "toolchain target" targets
step "npm packages" packages
step "lock file names no host" no_registry_host
step "build the package" cargo run --quiet --package bismar-build -- package --parts "$BISMAR_PARTS"
step "corpus and native digests" cargo run --quiet --package bismar-build -- corpus "$BISMAR_CORPUS"
step "surface, boundary, instance, logs, tables, published checks, schemas, types, bits, rows in Node" tests \
  bindings/tests/{surface,boundary,instance,attack,progress,tables,published,schemas,types,bits,rows}.test.mjs
step "parts" tests bindings/tests/{parts,english}.test.mjs
step "packed tarball in small projects" tests bindings/tests/packaging.test.mjs
step "Chromium" browser
step "published checks and bits in Chromium" browser_tests bindings/tests/browser.test.mjs
step "speed" node bindings/tests/speed.mjs
if [ "${BISMAR_REPRODUCIBLE:-}" = 1 ]; then
  step "reproducible from another folder" reproducible
fi
step "sizes" cargo run --quiet --package bismar-build -- sizes
echo "== bindings: all done in $SECONDS s"
