#!/bin/sh
# The PDFs of every lesson as programs that are not ours read them: qpdf (is it sound), pdfinfo,
# pdffonts, pdftotext (where each word lies). Prints TAP.  sh pdf.sh OXBOW-CLI
cli=$1
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
# shellcheck source=tests/support/tap.sh
. "$here/../support/tap.sh"
echo "1..11"

# Sheets across, and handouts on both papers: a file LESSON.KIND.pdf each.
status=0
for lesson in "$OXBOW_LESSONS"/*.oxbow; do
  name=$(basename "$lesson" .oxbow)
  "$cli" draw "$lesson" -o "$scratch/$name.sheets.pdf" || status=1
  for kind in worksheet key; do
    for paper in a4 letter; do
      "$cli" draw "$lesson" -o "$scratch/$name.$kind-$paper.pdf" "--$kind" --paper "$paper" || status=1
    done
  done
done
[ "$(find "$scratch" -name '*.pdf' | wc -l)" -ge 35 ] || status=1
report every_lesson_is_written_five_ways $status

status=0
for pdf in "$scratch"/*.pdf; do
  qpdf --check "$pdf" >"$scratch/said" 2>&1 || echo "warning: exit $?" >>"$scratch/said"
  grep -qi warning "$scratch/said" && { sed 's/^/# /' "$scratch/said"; status=1; }
done
report qpdf_finds_no_fault_and_warns_of_none $status

# wants FILE KEY VALUE: a line of pdfinfo.
wants() {
  got=$(pdfinfo "$1" | sed -n "s/^$2: *//p" | head -n 1)
  [ "$got" = "$3" ] || { echo "# $(basename "$1"): $2 is \"$got\", not \"$3\""; return 1; }
}
status=0
for lesson in "$OXBOW_LESSONS"/*.oxbow; do
  name=$(basename "$lesson" .oxbow)
  title=$(jq -r .title "$lesson")
  cases=$(jq '.cases | length' "$lesson")
  wants "$scratch/$name.sheets.pdf" Title "$title" || status=1
  wants "$scratch/$name.worksheet-a4.pdf" Title "$title – worksheet" || status=1
  wants "$scratch/$name.key-a4.pdf" Title "$title – answer key" || status=1
  wants "$scratch/$name.sheets.pdf" Pages "$cases" || status=1
  for paper in a4 letter; do
    wants "$scratch/$name.key-$paper.pdf" Pages $(((cases + 1) / 2)) || status=1
    wants "$scratch/$name.worksheet-$paper.pdf" Pages $(((cases + 1) / 2)) || status=1
  done
done
report titles_are_those_of_the_lesson_and_pages_as_many_as_cases $status

status=0
for pdf in "$scratch"/*.pdf; do
  wants "$pdf" Author Oxbow && wants "$pdf" Creator Oxbow || status=1
  pdfinfo "$pdf" | grep -q '^Keywords:.*not for navigation' || status=1
done
report author_creator_and_keywords_are_given $status

status=0
for pdf in "$scratch"/*.pdf; do
  size='595.276 x 841.89 pts (A4)'
  case $pdf in
    *.sheets.pdf) size='842 x 595 pts (A4)' ;;
    *-letter.pdf) size='612 x 792 pts (letter)' ;;
  esac
  # Every page, not only the first.
  sizes=$(pdfinfo -l 999 "$pdf" | sed -n 's/^Page  *[0-9]* size: *//p' | sort -u)
  [ "$sizes" = "$size" ] || { echo "# $(basename "$pdf"): $sizes"; status=1; }
done
report every_page_is_the_paper_asked_for $status

status=0
for pdf in "$scratch"/*.pdf; do
  # Columns from the end: emb sub uni object-number generation.
  pdffonts "$pdf" | awk 'NR > 2 {n++; if ($(NF - 4) != "yes" || $(NF - 2) != "yes") bad++}
    END {exit n < 1 || bad > 0}' || { pdffonts "$pdf" | sed 's/^/# /'; status=1; }
done
report fonts_are_embedded_and_their_text_can_be_copied $status

# One line a page: "\f" ends a page.
pages() { pdftotext "$1" - | tr '\n' ' ' | tr '\f' '\n'; }
status=0
for pdf in "$scratch"/*.pdf; do
  all=$(pages "$pdf" | grep -c .)
  marked=$(pages "$pdf" | grep -c 'For instruction only, not for navigation')
  [ "$all" -eq "$marked" ] || { echo "# $(basename "$pdf"): $marked of $all pages"; status=1; }
done
report the_caution_is_on_every_page $status

status=0
for lesson in "$OXBOW_LESSONS"/*.oxbow; do
  name=$(basename "$lesson" .oxbow)
  for pdf in "$scratch/$name".*.pdf; do
    pages "$pdf" >"$scratch/text"
    # A worksheet keeps the names to itself: they give answers away.
    asked='.title, (.cases[].hold.fix | if type == "object" then .name else . end)'
    case $pdf in *.worksheet-*) ;; *) asked="$asked, .cases[].name" ;; esac
    jq -r "$asked" "$lesson" | sort -u | while read -r words; do
      # A long name may be broken over two lines: those are one here.
      grep -qF -- "$words" "$scratch/text" || echo "# $(basename "$pdf"): no \"$words\""
    done >"$scratch/missing"
    cat "$scratch/missing"
    [ -s "$scratch/missing" ] && status=1
  done
done
report title_cases_and_fixes_can_be_found_by_searching $status

status=0
for pdf in "$scratch"/*.pdf; do
  pdftotext -bbox "$pdf" - | awk -f "$here/pdf_words.awk" >"$scratch/said" || {
    sed "s/^/# $(basename "$pdf"): /" "$scratch/said"
    status=1
  }
done
# The check itself: a word laid on its neighbour, and one over the edge, are found.
pdftotext -bbox "$scratch/demo.sheets.pdf" - >"$scratch/good"
sed '0,/<word /s/.*<word .*/&\n&/' "$scratch/good" | awk -f "$here/pdf_words.awk" | grep -q ' lies on ' || status=1
sed '0,/<word /s/xMin="[0-9.]*"/xMin="-1.0"/' "$scratch/good" |
  awk -f "$here/pdf_words.awk" | grep -q ' leaves the page' || status=1
report no_word_leaves_its_page_or_lies_on_another $status

# The list of contents tells the cases apart, and each line leads to its page: two holds a page.
contents() { qpdf --json --json-key=outlines "$1" | jq -r '.outlines[] | "\(.title)|\(.destpageposfrom1)"'; }
status=0
for lesson in "$OXBOW_LESSONS"/*.oxbow; do
  name=$(basename "$lesson" .oxbow)
  jq -r '.cases | to_entries[] | "\(.value.name)|\(.key + 1)"' "$lesson" >"$scratch/want"
  contents "$scratch/$name.sheets.pdf" | diff "$scratch/want" - | sed 's/^/# /' | grep . && status=1
  jq -r '.cases | to_entries[] | "Hold \(.key + 1)  \(.value.name)|\(.key / 2 | floor + 1)"' "$lesson" \
    >"$scratch/want"
  contents "$scratch/$name.key-a4.pdf" | diff "$scratch/want" - | sed 's/^/# /' | grep . && status=1
  sed 's/^\(Hold [0-9]*\)  .*|/\1|/' "$scratch/want" >"$scratch/blank"
  contents "$scratch/$name.worksheet-a4.pdf" | diff "$scratch/blank" - | sed 's/^/# /' | grep . && status=1
done
report the_list_of_contents_leads_to_each_case $status

status=0
mkdir "$scratch/again"
# again KIND OPTIONS
# shellcheck disable=SC2086
again() { "$cli" draw "$OXBOW_LESSONS/demo.oxbow" -o "$scratch/again/demo.$1.pdf" $2 || status=1; }
again sheets ''
again worksheet-letter '--worksheet --paper letter'
again key-a4 '--key --paper a4'
for pdf in "$scratch"/again/*.pdf; do
  cmp "$pdf" "$scratch/$(basename "$pdf")" || status=1
done
report the_same_lesson_gives_the_same_bytes $status
