#!/bin/bash
# All tests on other days than today: a year later, on 29 February, over New Year's Eve. The clocks go on from there
# for Calc, jobbook and the tests alike. The one that counts from the machine's start is moved too: leaving it out breaks
# Python's sleep. The build that the installed package is tried with needs the times of its files as they are: ninja
# would write them on one clock and read them on the other, and never be done.
set -u
cd "$(dirname "$0")/../.." || exit 1
failed=0
for start in "$(date -d '+1 year' +%F) 10:00:00" "2028-02-29 10:00:00" "$(date +%Y)-12-31 23:58:00"; do
    day=${start%% *}
    echo "== $start"
    NO_FAKE_STAT=1 faketime "$start" ctest --test-dir "$TRENCHBOOK_BUILD" -j2 --output-on-failure \
        --output-junit "$TRENCHBOOK_RESULTS/other-days-ctest-$day.xml" || failed=1
    faketime "$start" /usr/bin/python3 -m pytest -q tests -n 2 --dist loadfile \
        --junitxml "$TRENCHBOOK_RESULTS/other-days-calc-$day.xml" || failed=1
done
exit $failed
