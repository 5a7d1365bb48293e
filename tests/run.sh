#!/bin/sh
# Sets Oxbow's tests up and runs them all:  sh tests/run.sh
# Plain, then under AddressSanitizer and UndefinedBehaviorSanitizer; the display tests run on a
# virtual display, whose absence is a failure. The last line is "N passed, N failed".
#   sh tests/run.sh setup      only installs what is missing
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$top/src/packages.sh"
# shellcheck disable=SC2154,SC2086
need $build_packages libcmocka-dev libgsl-dev xvfb dbus at-spi2-core xdotool locales poppler-utils qpdf librsvg2-bin proj-bin \
  i18nspector libxml2-utils jq gpsbabel desktop-file-utils appstream appstream-util \
  libgtk-4-bin libglib2.0-bin mandoc shellcheck codespell
locale -a 2>/dev/null | grep -qix 'de_DE.utf-\{0,1\}8' || {
  as_root=; [ "$(id -u)" -eq 0 ] || as_root=sudo
  $as_root localedef -i de_DE -f UTF-8 de_DE.UTF-8
}
[ "${1:-}" = setup ] && exit 0

passed=0 failed=0 failures=
# The tests of the window wait for frames half of their time.
processes=$(($(nproc) * 2))

# failures_in LOG: a line each, with what the test said below it.
failures_in() {
  awk '/^test: / { test = $0; sub(/^test: */, "", test); below = 0 }
    /^result: / && !/exit status 0$/ { print "  " test ": " $0 }
    /^#/ && below { print "    " $0 }
    !/^#/ { below = 0 }
    /^not ok / { print "  " test ": " $0; below = 1 }' "$1"
}

# run NAME MESON-OPTION...: builds and tests one variant, adds to the two counts.
run() {
  name=$1 build="$top/.build/$1"
  shift
  if ! { [ -f "$build/build.ninja" ] || meson setup "$build" "$top" -Dwerror=true "$@" >/dev/null; } ||
    ! ninja -C "$build" --quiet; then
    failed=$((failed + 1)) failures="$failures
$name: does not build"
    return
  fi
  status=0
  meson test -C "$build" --no-rebuild --print-errorlogs --num-processes "$processes" \
    --timeout-multiplier 3 || status=$?
  log="$build/meson-logs/testlog.txt"
  ok=$(grep -c '^ok ' "$log") || ok=0
  not_ok=$(grep -c '^not ok ' "$log") || not_ok=0
  # A program that crashed or timed out has no "not ok" line of its own.
  [ "$status" -ne 0 ] && [ "$not_ok" -eq 0 ] && not_ok=1
  # No test at all is a failure, not a success.
  [ "$ok" -eq 0 ] && not_ok=$((not_ok + 1))
  passed=$((passed + ok))
  failed=$((failed + not_ok))
  [ "$status" -ne 0 ] && failures="$failures
$name:
$(failures_in "$log")"
  return 0
}

echo "== plain"
run plain --buildtype=debugoptimized
echo "== address and undefined behaviour sanitizers"
run sanitized --buildtype=debugoptimized -Doptimization=1 -Db_sanitize=address,undefined -Db_lundef=false

# Once more at the end, where a log that is cut still has them.
[ -z "$failures" ] || echo "== what failed$failures"
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
