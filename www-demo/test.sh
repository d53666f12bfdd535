#!/usr/bin/env bash
# Builds the offline page and tests it in Chromium, from nothing: toolchain target, npm packages, browser.
set -euo pipefail
cd "$(dirname "$0")/.."

part=page
. tests/step.sh

targets() {
  rustup target list --installed | grep -qx wasm32-unknown-unknown || rustup target add wasm32-unknown-unknown
}

packages() {
  # The package's own tools (wasm-opt) live in bindings/.
  [ -d bindings/node_modules ] || (cd bindings && npm ci --no-audit --no-fund --loglevel=error)
  (cd www-demo && npm ci --no-audit --no-fund --loglevel=error)
}

browser() {
  if command -v chromium >/dev/null; then return; fi
  apt-get update -qq
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends chromium >/dev/null
}

no_registry_host() {
  if grep -n '"resolved"' www-demo/package-lock.json; then return 1; fi
}

# One file that names no address: nothing to fetch, nothing to follow.
self_contained() {
  local page=www-demo/dist/bismar.html
  if grep -oE '(src|href)="(https?:)?//[^"]*"' "$page"; then return 1; fi
  grep -q "connect-src 'none'" "$page"
}

types() {
  (cd www-demo && npx tsc --noEmit)
}

tests() {
  (cd www-demo && browser_tests tests/*.test.mjs)
}

step "toolchain target" targets
step "npm packages" packages
step "lock file names no host" no_registry_host
step "build" cargo run --quiet --package bismar-build -- page
step "types" types
step "one file" self_contained
step "browser" browser
step "Chromium" tests
