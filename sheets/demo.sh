#!/bin/bash
# The demo lot, computed in a real Calc: installs what is missing, builds, makes the job's workbook, its papers and
# values in demo-job/, says how the job stands, and opens the workbook when there is a display.
set -u
cd "$(dirname "$0")/.." || exit 1
build=$PWD/build
out=$PWD/demo-job
mkdir -p "$build/log"

# Runs one step with its output in a log; shows the log's end when it fails.
step() {
    local name=$1 log=$build/log/demo-${1// /-}.log start=$SECONDS
    shift
    printf '%-14s' "$name"
    if "$@" >"$log" 2>&1; then
        echo "ok, $((SECONDS - start)) s"
    else
        echo "FAILED, from $log:"
        tail -n 40 "$log"
        exit 1
    fi
}

. .ci/packages.sh
missing=$(missing_packages $packages)
[ -z "$missing" ] || step "installing" install_packages $missing
[ -f "$build/build.ninja" ] || step "configuring" cmake -S . -B "$build" -G Ninja
step "building" cmake --build "$build" --target jobbook oxt

make_job() {
    "$build/jobbook" make sheets/demo/corner-lot "$out/job.ods" --replace --paper "$out/paper" --values "$out/values" \
        >"$out/summary.txt"
}
rm -rf "$out/paper" "$out/values"
mkdir -p "$out"
step "computing" make_job
# The demo job is closed out: it goes into a ledger of ten invented jobs, which learns from it.
close_job() {
    "$build/jobbook" ledger sheets/demo/ledger "$out/ledger.ods" --replace &&
        "$build/jobbook" close "$out/job.ods" "$out/ledger.ods" --finished 2026-12-11
}
step "closing" close_job
echo
cat "$out/summary.txt"

if [ -n "${DISPLAY:-}" ]; then
    # With the add-in for this session only, in a profile of its own: nothing is installed for good.
    soffice --norestore --nologo --calc "-env:UserInstallation=file://$build/demo-profile" \
        "-env:BUNDLED_EXTENSIONS=file://$build/extension" "$out/job.ods" >"$build/log/demo-calc.log" 2>&1 &
    echo "Calc opens $out/job.ods"
fi
