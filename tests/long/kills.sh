#!/bin/bash
# Kills and signals at moments drawn by a fixed seed, over every command of jobbook and of the menu that writes: what is
# written is whole, the old or the new; nothing of ours stays; the next run works (tests/long/kills.py). An hour or two on a quiet machine.
set -u
cd "$(dirname "$0")/../.." || exit 1
export TRENCHBOOK_BUILD=${TRENCHBOOK_BUILD:-$PWD/build}
mkdir -p "${TRENCHBOOK_RESULTS:-$TRENCHBOOK_BUILD/results}"
exec /usr/bin/python3 tests/long/kills.py "$@" --report "$TRENCHBOOK_BUILD/kills.txt" \
    --results "${TRENCHBOOK_RESULTS:-$TRENCHBOOK_BUILD/results}/kills.xml"
