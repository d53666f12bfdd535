# Sourced by the scripts that check.

# The compiler's flags, one set for all of them and added once however often this is read: where flags differ, cargo
# compiles everything anew.
case " ${RUSTFLAGS:-} " in
  *" -D warnings "*) ;;
  *) RUSTFLAGS="${RUSTFLAGS:+$RUSTFLAGS }-D warnings" ;;
esac
export RUSTFLAGS

# Runs one named step and prints its name and seconds, with `part` before the name.
step() {
  local name="${part:+$part: }$1" from=$SECONDS
  shift
  echo "== $name"
  "$@"
  echo "== $name: $((SECONDS - from)) s"
}
