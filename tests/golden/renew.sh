#!/bin/bash
# Makes tests/golden/next anew: the demo job's workbook and its values on the day in `day`. Only for the version that is
# not frozen yet: a folder named by a version stays as it is for good. TRENCHBOOK_BUILD names the build folder.
#
# When a version is frozen, `git mv tests/golden/next tests/golden/VERSION`, and this script makes the next one.
set -eu
cd "$(dirname "$0")/../.."
build=${TRENCHBOOK_BUILD:-$PWD/build}
kept=tests/golden/next
mkdir -p "$kept"
[ -s "$kept/day" ] || date "+%Y-%m-%d 09:00:00" >"$kept/day"
rm -rf "$kept/job.ods" "$kept/values"
faketime "$(cat "$kept/day")" "$build/jobbook" make sheets/demo/corner-lot "$kept/job.ods" --values "$kept/values"
