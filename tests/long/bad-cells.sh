#!/bin/bash
# Every kind of wrong value into every input column of every sheet of the demo job in Calc (tests/long/bad_cells.py): each is
# named, none is skipped in silence, no number moves without a finding. An hour and a half.
set -u
cd "$(dirname "$0")/../.." || exit 1
export TRENCHBOOK_BUILD=${TRENCHBOOK_BUILD:-$PWD/build}
mkdir -p "${TRENCHBOOK_RESULTS:-$TRENCHBOOK_BUILD/results}"
exec /usr/bin/python3 tests/long/bad_cells.py "$@" --report "$TRENCHBOOK_BUILD/bad-cells.txt" \
    --results "${TRENCHBOOK_RESULTS:-$TRENCHBOOK_BUILD/results}/bad-cells.xml"
