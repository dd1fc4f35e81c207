#!/bin/bash
# exports.sh LIBRARY LIST [--write]: compares the names that the library exports with the checked-in list.
# Names only, without arguments: an overload or another argument does not change the list, a function that is no longer
# there or shows by mistake does.
set -euo pipefail
shown=$(nm -D --defined-only -C "$1" | sed -E 's/^[0-9a-f]* . //; s/\[abi:[^]]*\]//g; s/\(.*//' |
    grep -E '^(typeinfo for |vtable for )?trenchbook::' | grep -v '^typeinfo name' | LC_ALL=C sort -u)
others=$(nm -D --defined-only -C "$1" | sed -E 's/^[0-9a-f]* . //' | grep -vE '(^| )trenchbook::' || true)
if [ -n "$others" ]; then
    printf 'names that are not ours:\n%s\n' "$others"
    exit 1
fi
if [ "${3-}" = --write ]; then
    printf '%s\n' "$shown" >"$2"
    exit 0
fi
diff <(printf '%s\n' "$shown") "$2" || { echo "< exported, > listed; after a change on purpose: $0 $1 $2 --write"; exit 1; }
