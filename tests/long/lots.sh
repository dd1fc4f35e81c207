#!/bin/bash
# Every lot of tests/lots, with its twin and its other cases, made into a workbook: the sheets say what an old hand wrote.
set -u
cd "$(dirname "$0")/../.." || exit 1
TRENCHBOOK_EVERY_LOT=yes exec /usr/bin/python3 -m pytest -q tests/sheets/lots_test.py -n 2 \
    --junitxml "$TRENCHBOOK_RESULTS/lots.xml"
