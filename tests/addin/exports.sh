#!/bin/sh
# A component's exported functions, and the engine found beside it under a versioned name.
#     exports.sh trenchbook.uno.so trenchbook_functions...
shown=$(nm -D --defined-only "$1" | awk '{print $3}')
library=$1
shift
if [ "$(echo $shown)" != "$*" ]; then
    echo "exported: $shown"
    exit 1
fi
readelf -d "$library" | grep -q 'RUNPATH.*\[\$ORIGIN\]$' || { echo "does not look beside itself"; exit 1; }
readelf -d "$library" | grep -q 'NEEDED.*\[libtrenchbook\.so\.[0-9]' || { echo "needs no versioned engine"; exit 1; }
if readelf -d "$library" | grep -q 'NEEDED.*boost'; then
    echo "needs a Boost library; the office has another one"
    exit 1
fi
