#!/bin/sh
# The files as other programs read them: xmllint (is it XML), gpsbabel (its points from GPX and
# from KML), jq (GeoJSON). Prints TAP.  sh parsers.sh OXBOW-CLI
cli=$1
lesson=$OXBOW_LESSONS/demo.oxbow
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
number=0
# report SENTENCE STATUS
report() {
  number=$((number + 1))
  if [ "$2" -eq 0 ]; then echo "ok $number - $1"; else echo "not ok $number - $1"; fi
}
echo "1..6"

first=$("$cli" solve "$lesson" | jq -r '.[0].case')
status=0
for format in geojson kml gpx; do
  "$cli" track "$lesson" --case "$first" --step 5 --fix-at 'N47 30.0 E011 15.0' \
    -o "$folder/t.$format" || status=1
done
report the_three_formats_are_written $status

xmllint --noout "$folder/t.kml" "$folder/t.gpx"
report kml_and_gpx_are_xml $?

# Latitude and longitude to five decimals, as gpsbabel and jq read them.
points() { sort -u | grep -c .; }
gpsbabel -t -i gpx -f "$folder/t.gpx" -o unicsv,format=y -F "$folder/gpx.csv"
report gpsbabel_reads_the_gpx $?
gpsbabel -t -i kml -f "$folder/t.kml" -o unicsv,format=y -F "$folder/kml.csv"
report gpsbabel_reads_the_kml $?

jq -r '.features[] | select(.geometry.type == "LineString") | .geometry.coordinates[] |
  "\(.[1] * 100000 | round) \(.[0] * 100000 | round)"' "$folder/t.geojson" | sort -u >"$folder/a"
for format in gpx kml; do
  awk -F, 'NR == 1 {for (i = 1; i <= NF; i++) {if ($i == "Latitude") lat = i;
    if ($i == "Longitude") lon = i}; next}
    {gsub(/"/, ""); printf "%.0f %.0f\n", $lat * 100000, $lon * 100000}' \
    "$folder/$format.csv" | sort -u >"$folder/b"
  # A last figure may round the other way: each must be within one of a point of the other.
  awk 'NR == FNR {for (i = -1; i < 2; i++) for (j = -1; j < 2; j++) seen[$1 + i, $2 + j] = 1; n++; next}
    {m++; if (!(($1, $2) in seen)) bad++}
    END {if (n < 100 || m < 100 || bad) {print "# " n " and " m " points, " bad " strangers"; exit 1}}' \
    "$folder/a" "$folder/b"
  report "${format}_and_geojson_have_the_same_points" $?
done
