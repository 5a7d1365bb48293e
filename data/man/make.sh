#!/bin/sh
# The manual page of oxbow-cli: the frame of oxbow-cli.1.in with the verbs and options as
# `oxbow-cli --help` has them, so that the two cannot differ.
#   sh make.sh OXBOW-CLI FRAME [LANGUAGE CATALOGUES]
# C.UTF-8 is a locale that there is everywhere; LANGUAGE says which catalogue is asked for.
set -eu
verbs=$(mktemp)
trap 'rm -f "$verbs"' EXIT
LC_ALL=C.UTF-8 LANGUAGE="${3:-}" OXBOW_LOCALE="${4:-}" "$1" --help | LC_ALL=C.UTF-8 awk '
  # A new sentence stands on a new line, a backslash is no escape, no line begins with a dot.
  function text(s) {
    gsub(/\\/, "\\e", s)
    gsub(/^[.\x27]/, "\\\\\\&&", s)
    gsub(/[.] /, ".\n", s)
    print s
  }
  # An option begins with its dashes, everything else is as it is typed.
  function item(s) {
    gsub(/\\/, "\\e", s)
    gsub(/-/, "\\-", s)
    print ".It Sy \"" gensub_quotes(s) "\""
  }
  function gensub_quotes(s) { gsub(/"/, "\\(dq", s); return s }
  function nest(level) {
    while (depth < level) { print ".Bl -tag -width Ds"; depth++ }
    while (depth > level) { print ".El"; depth-- }
  }
  /^  [a-z]/ || /^      -/ {
    nest($0 ~ /^      -/ ? 1 : 0)
    inside = 1
    body = $0
    sub(/^ +/, "", body)
    gap = index(substr($0, 7), "   ")
    if (gap) {
      term = substr($0, 1, gap + 5)
      rest = substr($0, gap + 6)
    } else { term = $0; rest = "" }
    gsub(/^ +| +$/, "", term)
    gsub(/^ +| +$/, "", rest)
    item(term)
    if (rest != "") text(rest)
    next
  }
  inside && /^ +[^ ]/ && !/^  -/ { sub(/^ +/, ""); text($0); next }
  inside && /^$/ { nest(0); exit }
' >"$verbs"
awk -v verbs="$verbs" '
  $0 == "@VERBS@" { while ((getline line < verbs) > 0) print line; next } { print }' "$2"
