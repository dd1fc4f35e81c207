#!/bin/bash
# Every harness of tests/fuzz under the address and undefined behavior sanitizers, until together 10 million executions
# have ended clean: each harness has eight minutes, then the quickest take turns of four until the sum is reached. One
# core, an hour and a half or more. What libFuzzer counted at each harness's end stands in build/sanitized/fuzz/report.txt, inputs
# that broke a law beside it.
#
# TRENCHBOOK_FUZZ_RUNS and TRENCHBOOK_FUZZ_SECONDS set another sum and another time for each harness.
set -u
cd "$(dirname "$0")/../.." || exit 1
build=${TRENCHBOOK_BUILD:-$PWD/build}/sanitized
results=${TRENCHBOOK_RESULTS:-$PWD/build/results}
aim=${TRENCHBOOK_FUZZ_RUNS:-10000000}
seconds=${TRENCHBOOK_FUZZ_SECONDS:-480}
kept=$build/fuzz
mkdir -p "$kept" "$results"

harnesses=$(for source in tests/fuzz/*_fuzz.cpp; do basename "$source" .cpp; done)
cmake -S . -B "$build" -G Ninja -D CMAKE_CXX_COMPILER=clang++ -D CMAKE_BUILD_TYPE=None \
    -D CMAKE_CXX_FLAGS="-O1 -gline-tables-only" -D TRENCHBOOK_SANITIZE=ON -D TRENCHBOOK_FUZZ=ON >"$kept/configured.log" &&
    cmake --build "$build" --target $harnesses >"$kept/built.log" || { tail -n 20 "$kept"/*ed.log; exit 1; }

declare -A runs spent failed
sum=0
# Runs one harness for so many seconds, adds up what it counted.
run() {
    local name=$1 log=$kept/$1.log start=$SECONDS counted
    mkdir -p "$build/corpus/$name"
    nice -n 15 "$build/tests/$name" -max_total_time="$2" -timeout=60 -verbosity=0 -rss_limit_mb=4096 -print_final_stats=1 \
        -artifact_prefix="$kept/$name-" "$build/corpus/$name" >"$log" 2>&1 || { failed[$name]=yes; cp "$log" "$kept/$name-failed.log"; }
    counted=$(sed -n 's/^stat::number_of_executed_units: *//p' "$log" | tail -n 1)
    runs[$name]=$((${runs[$name]:-0} + ${counted:-0}))
    spent[$name]=$((${spent[$name]:-0} + SECONDS - start))
    sum=$((sum + ${counted:-0}))
    report
}
report() {
    {
        for name in $harnesses; do
            [ -z "${runs[$name]:-}" ] ||
                printf '%-18s %9d executions in %5d s%s\n' "$name" "${runs[$name]}" "${spent[$name]}" "${failed[$name]:+, FAILED}"
        done
        printf '%-18s %9d executions\n' "all" "$sum"
    } >"$kept/report.txt"
}
for name in $harnesses; do run "$name" "$seconds"; done
# The quickest are those that come to the most in the same time.
quickest=$(for name in $harnesses; do [ -n "${failed[$name]:-}" ] || echo "${runs[$name]} $name"; done | sort -rn | head -n 3 |
    sed 's/.* //')
while [ -n "$quickest" ] && [ "$sum" -lt "$aim" ]; do
    for name in $quickest; do
        [ "$sum" -ge "$aim" ] || [ -n "${failed[$name]:-}" ] || run "$name" "$((seconds / 2))"
    done
    for name in $quickest; do [ -z "${failed[$name]:-}" ] || quickest=; done
done

{
    echo '<testsuite name="fuzz">'
    for name in $harnesses; do
        echo "<testcase classname=\"fuzz\" name=\"$name, ${runs[$name]} executions\">${failed[$name]:+<failure message=\"see build/sanitized/fuzz\"/>}</testcase>"
    done
    echo '</testsuite>'
} >"$results/fuzz.xml"
cat "$kept/report.txt"
[ ${#failed[@]} = 0 ] && [ "$sum" -ge "$aim" ]
