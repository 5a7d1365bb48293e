#!/bin/sh
# Runs a program on a session bus of its own:  sh with_bus.sh PROGRAM [ARGUMENT...]
# What the bus's services say goes where errors go: the output is the program's alone.
set -u
exec 3>&1
# shellcheck disable=SC2016
exec dbus-run-session -- sh -c 'exec "$@" >&3 3>&-' sh "$@" >&2
