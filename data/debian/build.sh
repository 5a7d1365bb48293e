#!/bin/sh
# Builds the Debian package and has lintian look at it:  sh data/debian/build.sh [FOLDER]
# The package lands in FOLDER (.build/package).
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/../.." && pwd)
. "$top/src/packages.sh"
# shellcheck disable=SC2154,SC2086
need $build_packages debhelper dpkg-dev fakeroot lintian
folder=${1:-$top/.build/package}
mkdir -p "$folder"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir "$work/oxbow"
for part in src include ui tests data meson.build README.md DEVELOPERS.md LICENSE; do
  cp -a "$top/$part" "$work/oxbow/"
done
mv "$work/oxbow/data/debian" "$work/oxbow/debian"
cd "$work/oxbow"
DEB_BUILD_OPTIONS="nocheck ${DEB_BUILD_OPTIONS:-}" dpkg-buildpackage -us -uc -b >"$folder/build.log" 2>&1 || {
  tail -n 40 "$folder/build.log" >&2
  exit 1
}
lintian --fail-on error,warning --info "$work"/*.changes
mv "$work"/*.deb "$folder/"
ls -l "$folder"/*.deb
