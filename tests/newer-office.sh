#!/bin/bash
# The package, the templates and jobbook that were built here, on Debian 12 with LibreOffice 7.4, used on Debian 13 with
# LibreOffice 25.2: the office tests run there, and the demo job is compared cell by cell, .ods and .xlsx, both ways.
#
#     bash tests/newer-office.sh            all office tests and the comparison
#     bash tests/newer-office.sh --sample   the functions' tests and the comparison
#     bash tests/newer-office.sh --only "not papers"     tests that pytest picks by these words, and the comparison
#
# Debian 13 lives in a folder of its own under ~/.cache/trenchbook (XDG_CACHE_HOME), made once; removing it is all it
# takes to be rid of it. That needs root and the machine's own package mirror: without them this ends with 0 and a line
# "skipped: WHY". TRENCHBOOK_BUILD names the build folder, else build/.
set -u
cd "$(dirname "$0")/.." || exit 1
checkout=$PWD
build=$(realpath "${TRENCHBOOK_BUILD:-build}")
results=${TRENCHBOOK_RESULTS:-$build/results}
made=$build/two-offices
mkdir -p "$results"
. tests/offices/newer_root.sh

case ${1:-} in
    "") tests="tests/addin/office tests/sheets" without="" ;;
    --sample) tests="tests/addin/office" without="and not menu" ;;
    --only) tests="tests/addin/office tests/sheets" without="and $2" ;;
    *) echo "newer-office.sh does not know $1"; exit 2 ;;
esac
newer_root office "libreoffice-calc python3-uno python3-pytest python3-pytest-xdist procps poppler-utils
    fonts-liberation fonts-dejavu-core faketime"

# Each office shows the job that either made, and then the .xlsx files of both.
shown="tests/offices/shown.py $build"
rm -rf "$made"
mkdir -p "$made"
"$build/jobbook" make sheets/demo/corner-lot "$made/made-by-older.ods" >"$made/older.log" &&
    /usr/bin/python3 $shown "$made/older" "$made/made-by-older.ods" || exit 1
in_newer_root "$build/jobbook make sheets/demo/corner-lot $made/made-by-newer.ods >$made/newer.log &&
    python3 $shown $made/newer $made/made-by-older.ods $made/made-by-newer.ods $made/older/*.xlsx" || exit 1
/usr/bin/python3 $shown "$made/older" "$made"/*/made-by-older-*.xlsx || exit 1
in_newer_root "python3 $shown $made/newer $made/newer/made-by-older-newer.xlsx" || exit 1

failed=0
TRENCHBOOK_OFFICES=$made /usr/bin/python3 -m pytest -q tests/offices/two_offices.py \
    --junitxml "$results/newer-office-compared.xml" || failed=1
# Without the test of installing what was built, which is not the office's, and those of a window: no screen is there.
in_newer_root "python3 -m pytest -q $tests -n 2 --dist loadfile -k 'not installed_jobbook and not window $without' \
    --junitxml $results/newer-office-tests.xml" || failed=1
exit $failed
