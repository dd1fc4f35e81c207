#!/bin/bash
# Small wrong changes to engine and catalog, one at a time: at least 95 % of 80 must be caught by the C++ tests, which
# are built by then. Leaves its report in build/mutation/report.txt.
set -u
cd "$(dirname "$0")/../.." || exit 1
exec nice -n 5 /usr/bin/python3 tests/mutation/mutate.py --build "$TRENCHBOOK_BUILD"
