# Sourced by the scripts that check.

# The compiler's flags, one set for all of them and added once however often this is read: where flags differ, cargo
# compiles everything anew.
case " ${RUSTFLAGS:-} " in
  *" -D warnings "*) ;;
  *) RUSTFLAGS="${RUSTFLAGS:+$RUSTFLAGS }-D warnings" ;;
esac
export RUSTFLAGS
# A machine that builds once has no use for what speeds up a second build, and debug information is most of the many
# test programs' weight: together half of the disk that the checks take.
export CARGO_INCREMENTAL="${CARGO_INCREMENTAL:-0}" CARGO_PROFILE_DEV_DEBUG="${CARGO_PROFILE_DEV_DEBUG:-0}"

# Runs one named step and prints its name and seconds, with `part` before the name.
step() {
  local name="${part:+$part: }$1" from=$SECONDS
  shift
  echo "== $name"
  "$@"
  echo "== $name: $((SECONDS - from)) s"
}

# Tests in a browser, one file after the other. On a busy machine a browser is now and then too late, so a file in which
# something failed is run once more, alone: if it then passes it is named as flaky, and if it fails again the step fails.
browser_tests() {
  local run=(node --test --test-concurrency=1 --test-timeout=600000) told failed file code=0 flaky=0
  told=$(mktemp)
  if "${run[@]}" --test-reporter=spec --test-reporter-destination=stdout --test-reporter=tap --test-reporter-destination="$told" "$@"; then
    failed=()
  else
    code=1
    # Where each failure stands, `location: 'FILE:LINE:COLUMN'`; without it for all of them nothing is tried again.
    mapfile -t failed < <(sed -nE "s/^ *location: '(.*\.test\.mjs):[0-9]+:[0-9]+'$/\1/p" "$told" | sort -u)
    if [ "${#failed[@]}" -gt 0 ] && [ "$(grep -cE '^ *not ok ' "$told")" = "$(grep -cE "^ *location: '.*\.test\.mjs:" "$told")" ]; then
      code=0
    fi
  fi
  rm "$told"
  for file in "${failed[@]}"; do
    echo "-- ${file##*/} failed: once more, alone"
    if "${run[@]}" --test-reporter=spec "$file"; then
      echo "flaky: ${file##*/} failed once and passed at the second try"
      flaky=$((flaky + 1))
    else
      echo "failed twice: ${file##*/}"
      code=1
    fi
  done
  echo "flaky files: $flaky"
  return "$code"
}
