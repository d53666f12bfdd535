#!/usr/bin/env bash
# The public interface: as a list against the committed one, and by the rules of semantic versioning against an
# earlier revision. Needs a nightly toolchain for the list (documentation as JSON) and two tools:
#   cargo install --locked cargo-public-api@0.52.0 cargo-semver-checks@0.51.0
# BISMAR_UPDATE=1 writes tests/public-api.txt anew. BISMAR_BASELINE names the revision; without it, the newest tag that
# begins with v, and while there is none, the last commit.
set -euo pipefail
cd "$(dirname "$0")/.."

kept=tests/public-api.txt
mkdir -p target
cargo public-api --omit blanket-impls,auto-trait-impls,auto-derived-impls --all-features > target/public-api.txt
if [ "${BISMAR_UPDATE:-}" = 1 ]; then
  cp target/public-api.txt "$kept"
fi
code=0
diff -u "$kept" target/public-api.txt || code=1
[ "$code" = 0 ] && echo "public interface: $(wc -l < "$kept") lines, as committed"

[ -n "${BISMAR_BASELINE:-}" ] || [ -n "$(git tag --list 'v*')" ] || echo "no release yet: compared with the last commit, which shows only what is not committed"
baseline=${BISMAR_BASELINE:-$(git tag --list 'v*' --sort=-version:refname | head -1)}
cargo semver-checks --package bismar --all-features --baseline-rev "${baseline:-HEAD}" || code=1
exit "$code"
