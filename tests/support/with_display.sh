#!/bin/sh
# Runs a program on a display of its own:  sh with_display.sh PROGRAM [ARGUMENT...]
# The server itself takes a number that is free. xvfb-run looks for one first, and two that look at
# the same time find the same.
set -u
place=$(mktemp -d) || exit 1
server=
leave() {
  [ -z "$server" ] || kill "$server" 2>/dev/null
  rm -rf "$place"
}
trap leave EXIT
trap 'exit 143' TERM INT HUP
mkfifo "$place/number"
Xvfb -displayfd 3 -screen 0 1920x1080x24 -nolisten tcp -noreset 3>"$place/number" >"$place/log" 2>&1 &
server=$!
read -r number <"$place/number" || {
  echo "there is no display:" >&2
  cat "$place/log" >&2
  exit 1
}
DISPLAY=:$number "$@"
