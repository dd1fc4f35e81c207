#!/bin/bash
# The package for Windows is made, and the engine and the catalog compute under Wine what they compute here: their tests
# run as .exe files, and thousands of answers are compared with those of this machine to 1e-12. Not tested is the package
# inside an office for Windows: there is none here; the same shell in Python runs in the office of this machine
# (tests/shells, tests/long/python-shell.sh).
#
# Ends with 0 and "skipped: WHY" where mingw-w64 or Wine cannot be installed.
set -u
cd "$(dirname "$0")/../.." || exit 1
build=$TRENCHBOOK_BUILD
results=$TRENCHBOOK_RESULTS
. .ci/packages.sh
missing=$(missing_packages $windows_packages wine64)
if [ -n "$missing" ] && ! install_packages $missing; then
    echo "skipped: no package for" $missing
    exit 0
fi
bash .ci/windows.sh tests && cmake --build "$build" --target values || exit 1

# A folder of its own in place of a home, no window.
export WINEPREFIX=$build/windows/wine DISPLAY= WINEDEBUG=-all
# To a program under Wine this machine's files are the drive Z:.
wine() { /usr/lib/wine/wine64 "$@"; }
made=$build/windows/tests/windows
cp "$build/windows/addin/c/trenchbook_c.dll" "$made"
failed=0
for name in engine_tests catalog_tests; do
    rm -f "$results/windows-$name.xml"
    wine "$made/$name.exe" --gtest_brief=1 --gtest_output="xml:Z:$results/windows-$name.xml" || failed=1
    [ -e "$results/windows-$name.xml" ] || failed=1
done
"$build/tests/values" >"$build/windows/values-here.txt" || failed=1
wine "$made/values.exe" >"$build/windows/values-windows.txt" || failed=1
/usr/bin/python3 tests/windows/same_values.py "$build/windows/values-here.txt" "$build/windows/values-windows.txt" \
    "$results/windows-values.xml" || failed=1
exit $failed
