#!/bin/sh
# Sets Oxbow up and runs it:  sh src/run.sh [LESSON]
# Installs what is missing, builds optimised, opens the window on the lesson (the demo without
# one). Where there is no display it draws the lesson to a PNG and a PDF and says where they are.
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$top/src/packages.sh"
# shellcheck disable=SC2154,SC2086
need $build_packages

build="$top/.build/release"
mkdir -p "$top/.build"
[ -f "$build/build.ninja" ] ||
  meson setup "$build" "$top" --buildtype=plain -Doptimization=2 -Db_ndebug=false >"$top/.build/setup.log" 2>&1 || {
    cat "$top/.build/setup.log" >&2
    exit 1
  }
ninja -C "$build" --quiet src/app/oxbow src/cli/oxbow-cli oxbow-gmo

export OXBOW_LOCALE="$build/data/po"

lesson=${1:-$top/data/lessons/demo.oxbow}
if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
  exec "$build/src/app/oxbow" "$lesson"
fi
echo "No display: drawing $lesson instead."
for format in png pdf; do
  "$build/src/cli/oxbow-cli" draw "$lesson" -o "$top/.build/oxbow.$format"
  echo "  $top/.build/oxbow.$format"
done
