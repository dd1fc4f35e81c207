#!/bin/bash
# All office tests with LibreOffice 25.2 on Debian 13, and the demo compared cell by cell: tests/newer-office.sh.
exec bash "$(dirname "$0")/../newer-office.sh"
