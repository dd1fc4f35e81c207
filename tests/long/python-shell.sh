#!/bin/bash
# All office tests with the shell in Python in place of the one in C++, in both offices; the menu's boxes in a window of the
# older one. Left out are those of the two commands that this shell has not (docs/menu.md): a new lot, papers; of typing,
# which knows no shell; and of an installed build folder, which this view of one is not.
set -u
cd "$(dirname "$0")/../.." || exit 1
TRENCHBOOK_BUILD=$(tests/shells/python_build.sh "$TRENCHBOOK_BUILD") || exit 1
export TRENCHBOOK_BUILD
here='not typing_window and not whole_job_window and not an_installed_jobbook'
given='not a_new_lot and not papers_are_written and not test_papers and not left_changes_nothing[papers] and not never_writes_over_the_job'
failed=0
/usr/bin/python3 -m pytest -q tests/addin tests/sheets -n 2 --dist loadfile -k "$here and $given" \
    --junitxml "$TRENCHBOOK_RESULTS/python-shell.xml" || failed=1
TRENCHBOOK_RESULTS=$TRENCHBOOK_BUILD/results bash tests/newer-office.sh --only "$given" || failed=1
for file in "$TRENCHBOOK_BUILD"/results/newer-office-*.xml; do
    cp "$file" "$TRENCHBOOK_RESULTS/python-shell-$(basename "$file")"
done
exit $failed
