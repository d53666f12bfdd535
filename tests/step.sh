# Sourced by the scripts that check: runs one named step and prints its name and seconds, with `part` before the name.
step() {
  local name="${part:+$part: }$1" from=$SECONDS
  shift
  echo "== $name"
  "$@"
  echo "== $name: $((SECONDS - from)) s"
}
