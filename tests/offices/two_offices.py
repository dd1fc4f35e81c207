"""The demo job in two offices, cell by cell. TRENCHBOOK_OFFICES names the folder that tests/newer-office.sh filled:
older/ and newer/ hold what each office showed of which file. Not collected with the other tests: it needs both."""

import json
import os
import re
from pathlib import Path

import pytest

MADE = Path(os.environ["TRENCHBOOK_OFFICES"])
VALUES_OF_XLSX = 1e-9  # relative


def cells(office, file, what):
    """{(sheet, row, column): value} of all cells that are not blank."""
    sheets = json.loads((MADE / office / f"{file}.json").read_text(encoding="utf-8"))
    found = {(name, row, column): without_office(value) for name, sheet in sheets.items()
             for row, line in enumerate(sheet[what], 1) for column, value in enumerate(line, 1) if value != ""}
    assert len(found) > 5000, "a workbook with the job in it"
    if what == "shown":
        assert sum(re.search(r"[.]\d0$", text) is not None for text in found.values()) > 100, "as cells show them"
    return found


def without_office(value):
    """TRENCHBOOK.SUPPORT names the office that it runs in, and the shell's Python."""
    return re.sub(r"LibreOffice [0-9.]+; shell in [^;]+;", "LibreOffice;", value) if isinstance(value, str) else value


def same(one, other):
    if isinstance(one, float) and isinstance(other, float):
        return one == pytest.approx(other, rel=VALUES_OF_XLSX, abs=1e-12)
    return one == other


def different(one, other):
    return {cell: (one.get(cell, ""), other.get(cell, "")) for cell in one.keys() | other.keys()
            if not same(one.get(cell, ""), other.get(cell, ""))}


@pytest.mark.parametrize("what", ["values", "shown"])
@pytest.mark.parametrize("newer", ["made-by-older.ods", "made-by-newer.ods"])
def test_the_demo_is_the_same_cell_by_cell(newer, what):
    assert different(cells("older", "made-by-older.ods", what), cells("newer", newer, what)) == {}


@pytest.mark.parametrize("writer, reader", [("older", "newer"), ("newer", "older"), ("older", "older"), ("newer", "newer")])
def test_xlsx_of_either_is_read_by_either(writer, reader):
    told = cells("older", "made-by-older.ods", "values")
    assert different(told, cells(reader, f"made-by-older-{writer}.xlsx", "values")) == {}
