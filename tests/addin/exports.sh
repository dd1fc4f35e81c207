#!/bin/sh
# A component's one exported function, and the engine found beside it under a versioned name.
#     exports.sh trenchbook.uno.so trenchbook_functions
shown=$(nm -D --defined-only "$1" | awk '{print $3}')
if [ "$shown" != "$2" ]; then
    echo "exported: $shown"
    exit 1
fi
readelf -d "$1" | grep -q 'RUNPATH.*\[\$ORIGIN\]$' || { echo "does not look beside itself"; exit 1; }
readelf -d "$1" | grep -q 'NEEDED.*\[libtrenchbook\.so\.[0-9]' || { echo "needs no versioned engine"; exit 1; }
if readelf -d "$1" | grep -q 'NEEDED.*boost'; then
    echo "needs a Boost library; the office has another one"
    exit 1
fi
