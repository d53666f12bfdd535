#!/usr/bin/env bash
# Builds the Python package, installs it in a clean virtual environment and runs its checks. Installs what it needs there.
set -euo pipefail
cd "$(dirname "$0")/../.."

part=python
. tests/step.sh

work=$(mktemp -d)
native=${BISMAR_NATIVE:-$work/native}
trap 'rm -rf "$work"' EXIT
python=$work/venv/bin/python
export MYPY_CACHE_DIR=$work/mypy

generated() {
  cargo run --quiet --package bismar-build -- python
  if [ -n "$(git status --porcelain -- bindings/python)" ]; then
    git status --short -- bindings/python
    echo "the generated files of the Python package are stale: commit what cargo run -p bismar-build -- python writes"
    return 1
  fi
}

install() {
  python3 -m venv "$work/venv"
  env -u RUSTFLAGS "$python" -m pip install --quiet --disable-pip-version-check mypy ./bindings/python
}

typed() {
  "$python" -m mypy --config-file bindings/python/pyproject.toml bindings/python/python bindings/python/tests/example.py
  "$python" bindings/python/tests/example.py
}

published() {
  bash bindings/checks/native.sh "$native"
  # shellcheck disable=SC2046
  "$python" bindings/python/tests/published_checks.py $(cat "$native/counted")
}

bits() {
  "$python" bindings/python/tests/same_bits.py "$native/corpus"
}

step "generated files" generated
step "wheel in a clean environment" install
step "a few calls of each kind" "$python" bindings/python/tests/smoke.py
step "types" typed
step "published checks" published
step "same bits" bits
step "columns, kept states, bad calls" "$python" bindings/python/tests/surface.py
echo "== python: all done in $SECONDS s"
