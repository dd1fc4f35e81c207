#!/bin/bash
# The package for Windows, made on Linux: build/windows/trenchbook-windows-x86_64.oxt. The library is compiled with
# mingw-w64; the shell in Python, names, help and templates are those of the build for this machine.
#
#     bash .ci/windows.sh            the package
#     bash .ci/windows.sh tests      and the tests as .exe, for tests/long/windows.sh
#
# TRENCHBOOK_BUILD names the build folder, else build/; TRENCHBOOK_RELEASE=ON gives the package its plain version.
set -eu
cd "$(dirname "$0")/.."
build=${TRENCHBOOK_BUILD:-$PWD/build}
release=${TRENCHBOOK_RELEASE:-OFF}
. .ci/packages.sh
missing=$(missing_packages $packages $windows_packages)
[ -z "$missing" ] || install_packages $missing

cmake -S . -B "$build" -G Ninja -D TRENCHBOOK_RELEASE="$release"
cmake --build "$build" --target oxt
cmake -S . -B "$build/windows" -G Ninja --toolchain addin/python/mingw.cmake \
    -D TRENCHBOOK_HOST_BUILD="$build" -D TRENCHBOOK_RELEASE="$release" -D TRENCHBOOK_WERROR=ON
cmake --build "$build/windows" --target oxt_python
# What Windows itself brings, and nothing else, may be needed.
needed=$(x86_64-w64-mingw32-objdump -p "$build/windows/addin/c/trenchbook_c.dll" | sed -n 's/.*DLL Name: //p' | sort)
if [ "$needed" != "$(printf 'KERNEL32.dll\nmsvcrt.dll')" ]; then
    echo "trenchbook_c.dll needs $needed"
    exit 1
fi
[ "${1:-}" != tests ] || cmake --build "$build/windows" --target engine_tests catalog_tests values
