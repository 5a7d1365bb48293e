#!/bin/sh
# The files as other programs read them: xmllint (is it XML), gpsbabel (its points from GPX and
# from KML), jq (GeoJSON). Prints TAP.  sh parsers.sh OXBOW-CLI
cli=$1
lesson=$OXBOW_LESSONS/demo.oxbow
# shellcheck source=tests/support/tap.sh
. "$(dirname -- "$0")/../support/tap.sh"
echo "1..6"

first=$("$cli" solve "$lesson" | jq -r '.[0].case')
status=0
for format in geojson kml gpx; do
  "$cli" track "$lesson" --case "$first" --step 5 --fix-at 'N47 30.0 E011 15.0' \
    -o "$scratch/t.$format" || status=1
done
report the_three_formats_are_written $status

xmllint --noout "$scratch/t.kml" "$scratch/t.gpx"
report kml_and_gpx_are_xml $?

# Latitude and longitude to five decimals, as gpsbabel and jq read them.
points() { sort -u | grep -c .; }
gpsbabel -t -i gpx -f "$scratch/t.gpx" -o unicsv,format=y -F "$scratch/gpx.csv"
report gpsbabel_reads_the_gpx $?
gpsbabel -t -i kml -f "$scratch/t.kml" -o unicsv,format=y -F "$scratch/kml.csv"
report gpsbabel_reads_the_kml $?

jq -r '.features[] | select(.geometry.type == "LineString") | .geometry.coordinates[] |
  "\(.[1] * 100000 | round) \(.[0] * 100000 | round)"' "$scratch/t.geojson" | sort -u >"$scratch/a"
for format in gpx kml; do
  awk -F, 'NR == 1 {for (i = 1; i <= NF; i++) {if ($i == "Latitude") lat = i;
    if ($i == "Longitude") lon = i}; next}
    {gsub(/"/, ""); printf "%.0f %.0f\n", $lat * 100000, $lon * 100000}' \
    "$scratch/$format.csv" | sort -u >"$scratch/b"
  # A last figure may round the other way: each must be within one of a point of the other.
  awk 'NR == FNR {for (i = -1; i < 2; i++) for (j = -1; j < 2; j++) seen[$1 + i, $2 + j] = 1; n++; next}
    {m++; if (!(($1, $2) in seen)) bad++}
    END {if (n < 100 || m < 100 || bad) {print "# " n " and " m " points, " bad " strangers"; exit 1}}' \
    "$scratch/a" "$scratch/b"
  report "${format}_and_geojson_have_the_same_points" $?
done
