#!/bin/sh
# The catalogues of translations against the texts that there are: nothing is missing in them,
# nothing is left over, and what they say is sound. Prints TAP.
#   sh test_translation.sh SOURCE-ROOT BUILD-ROOT APP-ID
source=$1 build=$2 id=$3
export LC_ALL=C.UTF-8 LANGUAGE=
# Where gettext finds out which parts of a template are text.
export GETTEXTDATADIRS=/usr/share/gettext
# shellcheck source=tests/support/tap.sh
. "$(dirname -- "$0")/../support/tap.sh"
# same ONE TWO: two files of lines are alike; what differs is said.
same() { diff "$1" "$2"; }
# empty FILE: there is nothing in it, or it is said.
empty() {
  cat "$1"
  [ ! -s "$1" ]
}

cd "$source" || exit 1
po=data/po
languages=$(grep -v '^#' $po/LINGUAS)
per_language=5
echo "1..$((7 + per_language * $(echo "$languages" | wc -w)))"

# The tools are there: without them nothing below would be looked at.
tools() {
  for tool in xgettext msgcmp msgmerge msgattrib msgfmt gettext i18nspector; do
    command -v $tool >/dev/null || { echo "$tool is missing"; return 1; }
  done
}
check the_tools_are_there tools

# ---- what there is to translate ----------------------------------------------------------------

# The keywords are those of the build.
keywords=$(grep -o -- "--keyword=[^']*" $po/meson.build)
# texts OUTPUT: a catalogue of every text in the files that are named on standard input.
texts() {
  # shellcheck disable=SC2086
  xgettext --files-from=- --from-code=UTF-8 $keywords --add-comments=translators: --no-wrap \
    --output="$1"
}
{
  find src -name '*.[ch]'
  find ui -name '*.ui'
  find data/desktop -name '*.desktop.in' -o -name '*.xml.in'
} | sort >"$scratch/every"
texts "$scratch/every.pot" <"$scratch/every"
sed -n 's/^#: //p' "$scratch/every.pot" | tr ' ' '\n' | sed 's/:[0-9]*$//' | sort -u \
  >"$scratch/with-texts"
grep -v '^#' $po/POTFILES | sort >"$scratch/potfiles"
check there_are_texts_in_code_templates_and_desktop_files \
  test "$(sed 's#/.*##' "$scratch/with-texts" | sort -u | tr '\n' ' ')" = 'data src ui '
check potfiles_names_each_file_once test -z "$(uniq -d "$scratch/potfiles")"
check potfiles_names_exactly_the_files_that_have_texts \
  same "$scratch/with-texts" "$scratch/potfiles"

# Every property of a template that people read is marked.
unmarked() {
  grep -nE '<(property|attribute) name="(label|title|tooltip-text|placeholder-text|description)"[^>]*>[^<]*[A-Za-z]{2}' \
    ui/*.ui | grep -v 'translatable="yes"' >"$scratch/unmarked" || :
  for file in ui/*.ui; do
    ! grep -q 'translatable="yes"' "$file" || grep -q '<interface domain="oxbow">' "$file" ||
      echo "$file names no domain"
  done >>"$scratch/unmarked"
  empty "$scratch/unmarked"
}
check every_text_of_a_template_is_marked unmarked

# What is compared or written for programs is not asked of a translator.
no_keys() {
  grep -nE '^msgid "(win|app|hold|arrival|aircraft|technique)\.[a-z_.-]*"$' "$scratch/every.pot" \
    >"$scratch/keys" || :
  empty "$scratch/keys"
}
check keys_and_actions_are_not_translated no_keys

# ---- each catalogue ----------------------------------------------------------------------------

complete() {
  msgcmp "$po/$1.po" "$scratch/every.pot" 2>"$scratch/verdict" && return 0
  tail -n 1 "$scratch/verdict"
  msgmerge --quiet --no-fuzzy-matching --no-wrap "$po/$1.po" "$scratch/every.pot" |
    msgattrib --untranslated --no-obsolete --no-wrap | grep -E '^(#: |msgid "..*)'
  return 1
}

nothing_fuzzy_or_left_over() {
  msgattrib --only-fuzzy --no-obsolete --no-wrap "$po/$1.po" | grep '^msgid "..*' >"$scratch/rest"
  msgmerge --quiet --no-fuzzy-matching --no-wrap "$po/$1.po" "$scratch/every.pot" |
    grep '^#~ msgid' >>"$scratch/rest"
  empty "$scratch/rest"
}

# With -v msgfmt says how much is translated: all of it.
sound() {
  msgfmt --check --verbose --output-file="$scratch/$1.mo" "$po/$1.po" 2>"$scratch/verdict"
  cat "$scratch/verdict"
  grep -qx '[1-9][0-9]* translated messages\.' "$scratch/verdict" &&
    [ "$(wc -l <"$scratch/verdict")" -eq 1 ]
}

# The team and the last translator have one address, that of the project: the only remark allowed.
inspected() {
  i18nspector "$po/$1.po" >"$scratch/remarks" || :
  grep -v ': language-team-equal-to-last-translator' "$scratch/remarks" >"$scratch/rest" || :
  empty "$scratch/rest"
}

# labels FILE: the labels of each menu in a template with an access key, "MENU LABEL" a line. The
# sections of a menu are one menu to the reader.
labels() {
  awk '
    /<menu id=/ { split($0, part, "\""); menu = part[2]; depth = 0 }
    /<submenu/ { depth++; menu = menu "/" depth }
    /<\/submenu>/ { sub("/[0-9]*$", "", menu); depth-- }
    /<\/menu>/ { menu = "" }
    menu != "" && /<attribute name="label"/ {
      sub(/^[^>]*>/, ""); sub(/<.*$/, "")
      if ($0 ~ /_/) print menu " " $0
    }' "$1"
}
access_keys_are_unique() {
  mkdir -p "$scratch/$1/LC_MESSAGES"
  msgfmt --output-file="$scratch/$1/LC_MESSAGES/oxbow.mo" "$po/$1.po" || return 1
  for file in ui/*.ui; do labels "$file"; done >"$scratch/labels"
  [ "$(wc -l <"$scratch/labels")" -ge 20 ] || { echo 'there are hardly any labels'; return 1; }
  while read -r menu label; do
    said=$(TEXTDOMAINDIR=$scratch LANGUAGE=$1 gettext oxbow "$label")
    key=$(echo "$said" | sed -n 's/^[^_]*_\(.\).*/\1/p' | sed 's/.*/\L&/')
    [ -n "$key" ] || echo "$menu: \"$said\" has no access key"
    [ "$said" != "$label" ] || echo "$menu: \"$label\" is not translated"
    echo "$menu $key" >&3
  done <"$scratch/labels" 3>"$scratch/taken" >"$scratch/rest"
  sort "$scratch/taken" | uniq -d | sed 's/$/ stands for more than one item/' >>"$scratch/rest"
  empty "$scratch/rest"
}

for language in $languages; do
  check "the_catalogue_of_${language}_has_every_text" complete "$language"
  check "nothing_in_${language}_is_fuzzy_or_left_over" nothing_fuzzy_or_left_over "$language"
  check "the_catalogue_of_${language}_is_sound" sound "$language"
  check "the_catalogue_of_${language}_passes_inspection" inspected "$language"
  check "the_access_keys_of_${language}_are_unique_in_their_menu" access_keys_are_unique "$language"
done

# ---- what the desktop is given -----------------------------------------------------------------

desktop_is_translated() {
  for language in $languages; do
    for key in GenericName Comment Keywords; do
      grep -q "^$key\[$language\]=." "$build/data/$id.desktop" ||
        echo "$key is not translated to $language"
    done
    for file in "$id.metainfo.xml" "$id.xml"; do
      grep -q "xml:lang=\"$language\"" "$build/data/$file" || echo "$file is not in $language"
    done
    [ -s "$build/data/man/$language/oxbow-cli.1" ] &&
      ! grep -q '^every number of each case' "$build/data/man/$language/oxbow-cli.1" ||
      echo "no manual in $language, or its verbs are English"
    [ -d "data/help/$language" ] || echo "no help in $language"
  done >"$scratch/rest"
  empty "$scratch/rest"
}
check the_desktop_is_given_every_language desktop_is_translated
