#!/bin/sh
# The validators of everything that is installed beside the programs. Prints TAP.
#   sh validate.sh SOURCE-ROOT BUILD-ROOT APP-ID OXBOW OXBOW-CLI
source=$1 build=$2 id=$3
oxbow=$(readlink -f "$4") cli=$(readlink -f "$5")
# shellcheck source=tests/support/tap.sh
. "$(dirname -- "$0")/../support/tap.sh"
# The programs speak English here whatever the language of whoever runs this.
export LC_ALL=C.UTF-8 LANGUAGE=
echo "1..20"

check desktop_file desktop-file-validate "$build/data/$id.desktop"
check appstream appstreamcli validate --no-net --pedantic --explain \
  "$build/data/$id.metainfo.xml"
check appstream_relaxed appstream-util validate-relax --nonet "$build/data/$id.metainfo.xml"

icons() {
  xmllint --noout "$source/data/icons/app.svg" "$source/data/icons/app-symbolic.svg" || return 1
  for size in 16 32 48 128; do
    for icon in app app-symbolic; do
      rsvg-convert -w $size -h $size "$source/data/icons/$icon.svg" -o "$scratch/icon.png" || return 1
      [ "$(head -c 24 "$scratch/icon.png" | tail -c 8 | od -An -tx1 | tr -d ' \n')" = \
        "$(printf '%08x%08x' $size $size)" ] || return 1
    done
  done
}
check icons_are_drawn_at_every_size icons

media_type() {
  mkdir -p "$scratch/share/mime/packages"
  cp "$build/data/$id.xml" "$scratch/share/mime/packages/"
  update-mime-database -V "$scratch/share/mime" || return 1
  cp "$source/data/lessons/demo.oxbow" "$scratch/demo.oxbow"
  cp "$source/data/lessons/demo.oxbow" "$scratch/no-ending"
  for file in demo.oxbow no-ending; do
    XDG_DATA_HOME=$scratch/share gio info -a standard::content-type "$scratch/$file" |
      grep -q 'application/x-oxbow-lesson+json' || { echo "$file is not known"; return 1; }
  done
}
check the_media_type_is_known_by_name_and_by_content media_type

# The program is started by its name on the bus, and answers there.
activation() {
  mkdir -p "$scratch/share/dbus-1/services" "$scratch/share/applications" "$scratch/bin"
  sed "s#^Exec=.*/oxbow#Exec=$oxbow#" "$build/data/$id.service" \
    >"$scratch/share/dbus-1/services/$id.service"
  cp "$build/data/$id.desktop" "$scratch/share/applications/"
  export XDG_DATA_HOME="$scratch/share" XDG_STATE_HOME="$scratch/state" \
    XDG_CONFIG_HOME="$scratch/config"
  mkdir -p "$scratch/state" "$scratch/config"
  # shellcheck disable=SC2016
  ID=$id PATH="$(dirname "$oxbow"):$PATH" dbus-run-session -- sh -c '
    dbus-update-activation-environment DISPLAY XDG_DATA_HOME XDG_STATE_HOME XDG_CONFIG_HOME \
      GSK_RENDERER GDK_BACKEND GTK_A11Y
    gapplication launch "$ID" || exit 1
    gdbus call --session --dest "$ID" --object-path "/$(echo "$ID" | tr . /)" \
      --method org.gtk.Actions.List | grep quit || exit 1
    gapplication action "$ID" quit'
}
check it_starts_by_its_name_on_the_bus activation

# Templates name our own types and functions, which the tool does not know: the window's tests load
# those. Whatever else it complains of is ours to mend.
ui_files() {
  for file in "$source"/ui/*.ui; do
    xmllint --noout "$file" || return 1
    said=$(gtk4-builder-tool validate "$file" 2>&1) && continue
    echo "$said" | grep -qE "No function named|Invalid object type 'Ox" || {
      echo "$file: $said"
      return 1
    }
  done
}
check ui_files ui_files

check manual_of_oxbow mandoc -T lint -W warning "$source/data/man/oxbow.1"
check manual_of_oxbow_cli mandoc -T lint -W warning "$build/data/oxbow-cli.1"
check german_manual_of_oxbow mandoc -T lint -W warning "$source/data/man/de/oxbow.1"
check german_manual_of_oxbow_cli mandoc -T lint -W warning "$build/data/man/de/oxbow-cli.1"

# Every verb and option of the help stands in the manual.
manual_is_complete() {
  mandoc -T utf8 "$1" | sed 's/.\x08//g' >"$scratch/manual"
  "$cli" --help | grep -oE -- '(^|[[ ])--[a-z][a-z-]*|^  [a-z]+ ' | tr -d '[ ' | sort -u |
    while read -r word; do
      grep -qF -- "$word" "$scratch/manual" || echo "$word is missing"
    done >"$scratch/missing"
  cat "$scratch/missing"
  [ ! -s "$scratch/missing" ]
}
check the_manual_has_every_verb_and_option manual_is_complete "$build/data/oxbow-cli.1"
check the_german_manual_has_them_too manual_is_complete "$build/data/man/de/oxbow-cli.1"

completion_parses() {
  bash -n "$source/data/completion/oxbow" && bash -n "$source/data/completion/oxbow-cli" &&
    shellcheck -s bash "$source/data/completion/oxbow" "$source/data/completion/oxbow-cli"
}
check completion_parses completion_parses

# offered WORD...: what is offered after these words, the last of them half typed.
offered() {
  bash -c '. "$0/data/completion/oxbow-cli"
    COMP_WORDS=("$@") COMP_CWORD=$(($# - 1))
    _oxbow_cli
    printf "%s\n" "${COMPREPLY[@]}"' "$source" "$cli" "$@" | sort
}
completion_offers() {
  "$cli" --help | awk '/^  [a-z]/ {print $1}' | cat - "$scratch/two" | sort >"$scratch/want"
  offered '' | diff "$scratch/want" - || return 1
  printf '%s\n' dark light print projector | sed 's/^/ /; s/ //' >"$scratch/want"
  offered draw x --palette '' | diff "$scratch/want" - || return 1
  # Every option that a verb is offered is one that it takes: the program knows it.
  for verb in solve track draw say spread; do
    offered "$verb" x -- | while read -r option; do
      "$cli" "$verb" "$option" 2>&1 | grep -q 'there is no option' &&
        echo "$verb does not take $option"
    done >"$scratch/wrong"
    [ ! -s "$scratch/wrong" ] || { cat "$scratch/wrong"; return 1; }
    [ -n "$(offered "$verb" x --)" ] || { echo "$verb is offered nothing"; return 1; }
  done
}
printf '%s\n' --help --version >"$scratch/two"
check completion_offers_what_there_is completion_offers

# The application's name in the resources is the one of the build.
resources_agree() {
  path=/$(echo "$id" | tr . /)
  grep -q "prefix=\"$path\"" "$source/ui/oxbow.gresource.xml" &&
    grep -q "apps/$id.svg" "$source/ui/oxbow.gresource.xml" &&
    ! grep -rn "$id" "$source/src" --include='*.[ch]'
}
check the_name_is_the_same_everywhere resources_agree

scripts() {
  find "$source/src" "$source/tests" "$source/data" -name '*.sh' -exec shellcheck -x -P "$source" \
    -s sh -e SC1091,SC2034 {} +
}
check scripts_are_clean scripts

check spelling codespell -q 3 -L 'vermillion,ans,efc,therefrom,te,nd,fo,ba,ot,hist,inout,parm,ist,als,oder,alle' \
  "$source/README.md" "$source/DEVELOPERS.md" "$source"/data/man/oxbow* "$source/data/desktop" \
  "$source/include"

# Installed and taken away again, nothing is left.
uninstall() {
  DESTDIR="$scratch/root" meson install -C "$build" --no-rebuild --quiet || return 1
  find "$scratch/root" -name "$id.desktop" | grep -q . || return 1
  DESTDIR="$scratch/root" ninja -C "$build" uninstall || return 1
  [ -z "$(find "$scratch/root" -type f)" ] || { find "$scratch/root" -type f; return 1; }
}
check it_is_installed_and_taken_away_again uninstall

version() { "$oxbow" --version | grep -qx "Oxbow $("$cli" --version | awk '{print $NF}')"; }
check both_programs_have_one_version version
