#!/bin/bash
# A build folder in which the shell in Python stands where the one in C++ does, for tests to run in as they are:
#     python_build.sh BUILD     makes BUILD/python-shell and prints its path
# Then TRENCHBOOK_BUILD=BUILD/python-shell runs any office test with that shell, those of jobbook too.
set -eu
build=$(realpath "$1")
view=$build/python-shell
rm -rf "$view"
mkdir "$view"
cp "$build/jobbook" "$view/jobbook"  # It looks beside itself, and a link is not itself.
ln -s "$build/extension-python" "$view/extension"
ln -s "$build/trenchbook-python.oxt" "$view/trenchbook.oxt"
ln -s "$build/templates" "$build/made" "$view"
echo "$view"
