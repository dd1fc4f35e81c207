#!/bin/bash
# Installs what is missing, builds, and runs all tests; the log of each step is kept in build/log.
#
#     bash tests/run.sh             everything
#     bash tests/run.sh --quick     without sanitizers and fuzzing
#     bash tests/run.sh --long      everything, and each script in tests/long
#     bash tests/run.sh --write     brings docs/functions.md, docs/limits.md and docs/checks.md up to date on the way
set -u
cd "$(dirname "$0")/.." || exit 1

quick=no
long=no
write=()
for word in "$@"; do
    case $word in
        --quick) quick=yes ;;
        --long) long=yes ;;
        --write) write=(--write) ;;
        *) echo "run.sh does not know $word"; exit 2 ;;
    esac
done

build=$PWD/build
results=$build/results
mkdir -p "$build/log"
rm -rf "$results" "$build/checks.csv"
mkdir -p "$results"
export TRENCHBOOK_BUILD=$build TRENCHBOOK_CHECKS=$build/checks.csv TRENCHBOOK_RESULTS=$results
failed_steps=0
passed_steps=0

# Runs one step with its output in a log; shows the log's end when it fails.
step() {
    local name=$1 log=$build/log/${1// /-}.log start=$SECONDS
    shift
    printf '%-28s' "$name"
    if "$@" >"$log" 2>&1; then
        tail -n 1 "$log" | grep '^skipped: ' || echo "ok, $((SECONDS - start)) s"
        return 0
    fi
    echo "FAILED, $((SECONDS - start)) s; from $log:"
    tail -n 40 "$log"
    return 1
}
# A step that reports its cases in results/NAME.xml or NAME-*.xml: they are counted at the end. Where it fails without
# naming a case, the step itself is the failure.
cases() {
    local name=$1
    shift
    step "$@" || grep -qs '<failure\|<error' "$results/$name.xml" "$results/$name"-*.xml ||
        failed_steps=$((failed_steps + 1))
}
# A step that builds: nothing after it can run.
must() { step "$@" || { echo "0 passed, 1 failed"; exit 1; }; }
# A step that is a test by itself.
check() { if step "$@"; then passed_steps=$((passed_steps + 1)); else failed_steps=$((failed_steps + 1)); fi; }

. .ci/packages.sh
[ $quick = yes ] || packages="$packages clang $clang_runtime"
[ -z "$format" ] || packages="$packages mmdebstrap"
missing=$(missing_packages $packages)
[ -z "$missing" ] || must "installing" install_packages $missing

# Names the files that clang-format would change; other versions of it lay out some lines in another way.
formatted() { git ls-files -z '*.cpp' '*.h' | xargs -0 clang-format-14 --dry-run -Werror; }
[ -z "$format" ] || check "format" formatted
must "configuring" cmake -S . -B "$build" -G Ninja -D TRENCHBOOK_WERROR=ON
must "building" cmake --build "$build"
[ ${#write[@]} = 0 ] || must "function reference" cmake --build "$build" --target reference
[ ${#write[@]} = 0 ] || TRENCHBOOK_WRITE_LIMITS=1 must "limits of formulas" \
    "$build/tests/sheets_tests" --gtest_filter=FormulaLimits.StandInTheDocs

cases ctest "engine, catalog, site notes" \
    ctest --test-dir "$build" -j2 --output-on-failure --output-junit "$results/ctest.xml"
cases calc "in a real Calc" \
    /usr/bin/python3 -m pytest -q tests -n 2 --dist loadfile --junitxml "$results/calc.xml"
# A day that the demo names, too: on no day may a date of today be taken for one of the job.
cases dated "on another day" \
    faketime "2026-12-03 09:00:00" /usr/bin/python3 -m pytest -q tests -m dated -n 2 --dist loadfile \
    --junitxml "$results/dated.xml"
# The same files in a newer office; with --long all of its tests, below.
[ $long = yes ] || cases newer-office "in a newer office" bash tests/newer-office.sh --sample
check "checks from outside" \
    /usr/bin/python3 tests/docs/checks.py "$TRENCHBOOK_CHECKS" "$build/made/functions.json" docs/checks.md "${write[@]}"

if [ $quick = no ]; then
    unset TRENCHBOOK_CHECKS
    must "configuring for sanitizers" cmake -S . -B "$build/sanitized" -G Ninja -D CMAKE_CXX_COMPILER=clang++ \
        -D CMAKE_BUILD_TYPE=None -D CMAKE_CXX_FLAGS="-O1 -gline-tables-only" \
        -D TRENCHBOOK_SANITIZE=ON -D TRENCHBOOK_FUZZ=ON
    must "building with sanitizers" cmake --build "$build/sanitized"
    # Without the comparison with another solver, which takes minutes there; GradeBrute runs the same engine code.
    cases sanitized "engine under sanitizers" "$build/sanitized/tests/engine_tests" --gtest_filter="-GradeMilp.*" \
        --gtest_output="xml:$results/sanitized.xml"
    for source in tests/fuzz/*_fuzz.cpp; do
        name=$(basename "$source" .cpp)
        mkdir -p "$build/sanitized/corpus/$name"
        check "$name" "$build/sanitized/tests/$name" -max_total_time=10 -timeout=10 -verbosity=0 -rss_limit_mb=4096 \
            -artifact_prefix="$build/sanitized/corpus/" "$build/sanitized/corpus/$name"
    done
fi

# Steps that take long: each script says in its first lines what it tests, writes what it counts to
# $TRENCHBOOK_RESULTS/NAME-*.xml, and ends with 0 when all is well.
if [ $long = yes ]; then
    unset TRENCHBOOK_CHECKS
    for script in tests/long/*.sh; do
        name=$(basename "$script" .sh)
        cases "$name" "${name//-/ }" bash "$script"
    done
fi

/usr/bin/python3 - "$passed_steps" "$failed_steps" "$results"/*.xml <<'PYTHON'
import sys
import xml.etree.ElementTree as xml

passed, failed = int(sys.argv[1]), int(sys.argv[2])
for path in sys.argv[3:]:
    for case in xml.parse(path).getroot().iter("testcase"):
        bad = case.find("failure") is not None or case.find("error") is not None or case.get("status") == "fail"
        failed += bad
        passed += not bad and case.find("skipped") is None
print(f"{passed} passed, {failed} failed")
sys.exit(1 if failed else 0)
PYTHON
