#!/bin/bash
# Builds everything on Debian 13 with its own compiler, Boost and office, warnings as errors, and runs the C++ tests there;
# then the demo in the office there. What is built there is not what is shipped: it does not load on Debian 12.
set -u
cd "$(dirname "$0")/../.." || exit 1
checkout=$PWD
build=$PWD/build/newer-system
results=${TRENCHBOOK_RESULTS:-$PWD/build/results}
mkdir -p "$build" "$results"
. tests/offices/newer_root.sh
newer_root system "$(system=trixie; . .ci/packages.sh; echo $packages)"

in_newer_root "export CCACHE_DIR=/var/cache/ccache
    cmake -S . -B $build -G Ninja -D TRENCHBOOK_WERROR=ON && cmake --build $build &&
    ctest --test-dir $build -j2 --output-on-failure --output-junit $results/newer-system.xml &&
    $build/jobbook make sheets/demo/corner-lot $build/job.ods --replace --paper $build/paper --values $build/values"
