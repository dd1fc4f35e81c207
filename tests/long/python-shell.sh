#!/bin/bash
# All office tests with the shell in Python in place of the one in C++, in both offices. Those of the menu's commands and
# of the package that is installed for this machine have the shell in C++ only.
set -u
cd "$(dirname "$0")/../.." || exit 1
TRENCHBOOK_BUILD=$(tests/shells/python_build.sh "$TRENCHBOOK_BUILD") || exit 1
export TRENCHBOOK_BUILD
failed=0
/usr/bin/python3 -m pytest -q tests/addin tests/sheets -n 2 --dist loadfile -k 'not menu and not window' \
    --junitxml "$TRENCHBOOK_RESULTS/python-shell.xml" || failed=1
TRENCHBOOK_RESULTS=$TRENCHBOOK_BUILD/results bash tests/newer-office.sh --sample || failed=1
for file in "$TRENCHBOOK_BUILD"/results/newer-office-*.xml; do
    cp "$file" "$TRENCHBOOK_RESULTS/python-shell-$(basename "$file")"
done
exit $failed
