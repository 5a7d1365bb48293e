#!/bin/sh
# Time from start to the first frame of the window, against an empty window of the same toolkit in
# the same run:  bench_start.sh OXBOW EMPTY [ROUNDS]
# Needs a display. Prints the medians and their ratio; fails when a run fails.
set -eu
oxbow=$1 empty=$2 rounds=${3:-11}
export OXBOW_EXIT_AFTER_FIRST_FRAME=1
# A start without a session bus waits for none; both programs are alike in that.
export GTK_A11Y=none

now_ms() { date +%s%N | sed 's/......$//'; }

# one PROGRAM: milliseconds of one run.
one() {
  begin=$(now_ms)
  "$1" >/dev/null 2>&1 || { echo "$1 failed" >&2; exit 1; }
  echo $(($(now_ms) - begin))
}
"$oxbow" >/dev/null 2>&1 || { echo "$oxbow failed (is there a display?)" >&2; exit 1; }
"$empty" >/dev/null 2>&1 || { echo "$empty failed" >&2; exit 1; }

list=$(mktemp -d)
trap 'rm -rf "$list"' EXIT
i=0
while [ "$i" -lt "$rounds" ]; do # in turn, so that both meet the same load
  one "$empty" >>"$list/empty"
  one "$oxbow" >>"$list/oxbow"
  i=$((i + 1))
done
middle() { sort -n "$1" | sed -n "$((rounds / 2 + 1))p"; }
e=$(middle "$list/empty") o=$(middle "$list/oxbow")
echo "empty window: $e ms to the first frame (median of $rounds)"
echo "oxbow:        $o ms"
echo "ratio:        $(awk "BEGIN { printf \"%.2f\", $o / ($e > 0 ? $e : 1) }")"
