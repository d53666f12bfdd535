#!/usr/bin/env bash
# Runs every bench with its peers, prints one table and writes it to src/guide/benchmarks.md.
# Needs python3 with numpy, scipy, pandas and statsmodels for the peers; the JavaScript lines need the package
# (cargo run -p bismar-build -- package) and are left out without it.
# BISMAR_BENCH_LINES=FILE makes the page from the output of an earlier run instead.
set -euo pipefail
cd "$(dirname "$0")/.."

lines=${BISMAR_BENCH_LINES:-target/benches.txt}
page=src/guide/benchmarks.md
if [ -z "${BISMAR_BENCH_LINES:-}" ]; then
  for bench in one_rm loading dose condition progression doors package; do
    echo "bench: $bench"
    cargo bench --all-features --bench "$bench"
  done | tee "$lines"
fi

# A line of measurement, without the heads of the single tables.
rows() {
  grep '^| ' "$lines" | grep -v '^| what '
}

names() {
  case $1 in
    one_rm) echo "One-repetition maximum, in batches" ;;
    loading) echo "Loads on the bar" ;;
    dose) echo "Work done" ;;
    condition) echo "Trend" ;;
    progression) echo "Fold of a log" ;;
    doors) echo "Questions to a log" ;;
    package) echo "JavaScript package, beside native" ;;
  esac
}

{
  cat <<TEXT
How fast is it, and beside what?

Written by \`benches/table.sh\`, which runs every bench of \`benches/\` with its peer in the same run. A ratio is how many
times as fast ours is as the peer; a budget was set before the measurement. Times are the shortest of several runs on both
sides, since other work on a machine only makes them longer (loads on the bar: over many stocks, as said there). Times belong
to the machine, ratios less so. A growth exponent of 1 is time in proportion to size; the rounds of a fit also depend on the
data.

TEXT
  grep '^machine: ' "$lines" | sed -E 's/; load average.*//; s/^machine: /Machine: /' | sort -u | sed 's/$/./'
  loads=$(grep '^machine: ' "$lines" | sed -E 's/.*load average ([0-9.]+).*/\1/' | sort -n)
  echo "Load average at the start of the benches: $(echo "$loads" | head -1) to $(echo "$loads" | tail -1)."
  echo "Above the number of threads, others were at work and the times are too long."
  echo "Built with $(rustc --version | cut -d' ' -f1,2) and the release profile, as of version $(sed -n 's/^version = "\(.*\)"/\1/p' Cargo.toml | head -1)."
  echo
  met=$(rows | grep -c '| met |$' || true)
  missed=$(rows | grep -c '| NOT MET |$' || true)
  echo "Budgets: $met met, $missed not met."
  for bench in one_rm loading dose condition progression doors package; do
    found=$(awk -v bench="bench: $bench" '/^bench: /{on = $0 == bench} on && /^\| / && !/^\| what /' "$lines")
    [ -n "$found" ] || continue
    printf '\n# %s\n\n| what | ours | peer | ratio | budget | met |\n|---|---:|---:|---:|---|---|\n%s\n' "$(names "$bench")" "$found"
  done
} > "$page"
cat "$page"
