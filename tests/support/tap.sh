# Sourced by the tests that are scripts: TAP, and a directory that goes when the script does.
# shellcheck shell=sh
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
number=0
# report SENTENCE STATUS
report() {
  number=$((number + 1))
  if [ "$2" -eq 0 ]; then echo "ok $number - $1"; else echo "not ok $number - $1"; fi
}
# check SENTENCE COMMAND...: passes when the command does; what it said is shown when not.
check() {
  sentence=$1
  shift
  "$@" >"$scratch/said" 2>&1
  passed=$?
  report "$sentence" $passed
  [ $passed -eq 0 ] || sed 's/^/# /' "$scratch/said" | head -n 60
}
