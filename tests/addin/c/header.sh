#!/bin/bash
# The program that stands in the header of the C interface compiles as it is written, as C99 and as C++, and runs beside
# the library; no other name than the header's is exported.
#     header.sh CXX_COMPILER HEADER LIBRARY ENGINE ENGINE_SONAME
set -eu
compiler=$1 header=$2 library=$3
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
beside="$folder/mit Umlaut ä"
mkdir "$beside"
cp "$library" "$beside"
cp "$4" "$beside/$5"
sed -n '/^ \*     #include <stdio.h>/,/^ \*     }$/s/^ \*     \{0,1\}//p; /^ \*$/s/.*//p' "$header" |
    sed -n '/#include <stdio.h>/,/^}$/p' >"$folder/program.c"
strict="-Wall -Wextra -Wpedantic -Werror -I $(dirname "$header")"
for language in "c -std=c99" "c++ -std=c++11"; do
    "$compiler" -x $language $strict "$folder/program.c" -x none -o "$folder/program" "$beside/$(basename "$library")"
    LD_LIBRARY_PATH="$beside" "$folder/program" | tee "$folder/said"
    grep -Eqx '[0-9]+\.[0-9] gpm' "$folder/said"
done
declared=$(grep -o 'trenchbook_[a-z_]*(' "$header" | grep -v 'trenchbook_answer' | tr -d '(' | sort -u)
exported=$(nm -D --defined-only "$library" | awk '{print $3}' | sort -u)
[ "$declared" = "$exported" ] || { echo "declared: $declared, exported: $exported"; exit 1; }
