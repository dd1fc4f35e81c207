#!/bin/bash
# try.sh BUILD: installs the engine of a build beside it, then builds and runs a program that only knows the package.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
prefix=$1/installed
rm -rf "$prefix" "$1/installed-try"
cmake --install "$1/engine" --prefix "$prefix"
cmake -S "$here" -B "$1/installed-try" -G Ninja -D CMAKE_PREFIX_PATH="$prefix"
cmake --build "$1/installed-try"
"$1/installed-try/try"
