#!/bin/bash
# clang-tidy by the checked-in set (.clang-tidy) over the folders that are held to it: none may have a finding. It takes some
# seconds a file.
set -u
cd "$(dirname "$0")/../.." || exit 1
build=$PWD/build/tidy
results=${TRENCHBOOK_RESULTS:-$PWD/build/results}
mkdir -p "$build" "$results"
folders="engine/src/core engine/src/grade engine/src/takeoff engine/src/water engine/src/ground"

command -v clang-tidy >/dev/null || { . .ci/packages.sh; install_packages clang clang-tidy; } || exit 1
cmake -S . -B "$build" -G Ninja -D CMAKE_CXX_COMPILER=clang++ >"$build/configured.log" 2>&1 || { cat "$build/configured.log"; exit 1; }

failed=0
{
    echo "<testsuite name=\"tidy\">"
    for folder in $folders; do
        for file in "$folder"/*.cpp; do
            echo "<testcase classname=\"tidy\" name=\"$file\">"
            if ! found=$(clang-tidy -p "$build" --quiet "$file" 2>/dev/null); then
                failed=1
                printf '%s\n' "$found" >&2
                echo "<failure message=\"clang-tidy\"/>"
            fi
            echo "</testcase>"
        done
    done
    echo "</testsuite>"
} >"$results/tidy.xml"
exit $failed
