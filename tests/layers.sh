#!/bin/sh
# The arrows between the layers, held by their includes; and the few rules of form that a script
# can check. Prints TAP.  sh tests/layers.sh SOURCE-ROOT
cd "$1" || exit 1
number=0
# check SENTENCE OFFENDERS: passes when there are none.
check() {
  number=$((number + 1))
  if [ -z "$2" ]; then
    echo "ok $number - $1"
  else
    echo "not ok $number - $1"
    printf '%s\n' "$2" | sed 's/^/# /'
  fi
}
# includes FOLDER ALLOWED-REGEX: the includes in a folder that the regex does not match.
includes() {
  find "src/$1" -name '*.[ch]' -exec grep -nH '^ *# *include' {} + |
    grep -vE "include *(\"[a-z_0-9]+\.h\"|$2)" || :
}
c_std='<(stddef|stdbool|stdint|string|math|float|limits)\.h>'
c_io='"oxbow/text\.h"|<(stdio|stdlib|ctype|errno|locale|time|stdarg|unistd|fcntl)\.h>|<sys/[a-z]+\.h>'
engine='"oxbow/(mark|status|units|angle|atmosphere|wind|turn|limits|entry|steady|case|fields|leg|flight|flaws|presets|variants|area|spread|endurance)\.h"'

echo "1..17"
check the_engine_includes_only_libm_and_itself "$(includes engine "$c_std|$engine")"
places='"oxbow/(place|route|fix|journey)\.h"'
check the_store_sees_engine_places_and_cjson \
  "$(includes store "$c_std|$c_io|$engine|$places|\"oxbow/(lesson|file|ink)\.h\"|<(cjson/)?cJSON\.h>")"
check the_ink_sees_only_plain_geometry \
  "$(includes ink "$c_std|<stdlib\.h>|\"oxbow/(ink|angle|status)\.h\"")"
check the_texts_see_only_the_c_library "$(includes text "$c_std|$c_io|\"oxbow/mark\.h\"|<(libintl|stdatomic)\.h>")"
check the_places_see_the_engine_and_the_geodesic \
  "$(includes places "$c_std|$c_io|$engine|$places|<geodesic\.h>")"
check the_navigation_data_see_engine_and_places \
  "$(includes navdata "$c_std|$c_io|<sys/[a-z]+\.h>|$engine|$places|\"oxbow/navdata\.h\"")"
check the_tracks_out_see_engine_and_places \
  "$(includes trackout "$c_std|$c_io|<inttypes\.h>|$engine|$places|\"oxbow/trackout\.h\"")"
check the_handles_see_only_the_engine "$(includes handles "$c_std|$c_io|$engine|\"oxbow/handles\.h\"")"
check the_words_see_only_the_engine \
  "$(includes words "$c_std|$c_io|$engine|\"oxbow/(words|moments|differences|crosscheck|guess|ink)\.h\"")"
check the_clearances_see_engine_places_and_words \
  "$(includes clearance "$c_std|$c_io|$engine|$places|\"oxbow/(words|clearance)\.h\"")"
check the_painter_knows_no_window \
  "$(includes paint "$c_std|$c_io|$engine|\"oxbow/(words|moments|moments_page|viewport|picture|canvas|export|ink)\.h\"|<(cairo|cairo-pdf|cairo-svg|pango/[a-z]+)\.h>|<gif_lib\.h>")"
check the_placed_see_places_and_the_painter \
  "$(includes placed "$c_std|$c_io|$engine|$places|\"oxbow/(placed|picture)\.h\"")"
check the_sheets_see_words_and_the_painter \
  "$(includes sheets "$c_std|$c_io|<inttypes\.h>|$engine|\"oxbow/(words|picture|export|sheets)\.h\"|<(cairo|cairo-pdf|pango/[a-z]+)\.h>")"
check the_command_line_knows_no_window \
  "$(grep -rnE 'include *<(gtk|gdk|gio|glib)' src/cli || :)"
check the_engine_has_no_globals_and_no_output \
  "$(grep -nE '^(static )?(double|int|char|bool|ox_[a-z_]+) [a-z_0-9]+( = .*)?;' src/engine/*.c |
    grep -vE ':static const ' || :)$(grep -nE '\b(printf|fopen|malloc|calloc|setlocale)\(' src/engine/*.c || :)"
check lines_have_at_most_100_columns \
  "$(LC_ALL=C.UTF-8 grep -rnHE '^.{101,}' --include='*.[ch]' src include || :)"
check files_have_at_most_600_lines \
  "$(find src include -name '*.[ch]' -exec awk 'END {if (FNR > 600) print FILENAME " " FNR}' {} \;)"
