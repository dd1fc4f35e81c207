"""Array answers: numbers with errors in single rows, text that can be compared, blank rows, bigger and smaller areas."""

import pytest

from calc import BAD_ARGUMENT, Error
from com.sun.star.sheet.CellDeleteMode import UP
from com.sun.star.sheet.CellInsertMode import DOWN

RUNS = [  # from, to, length, pipe, slope, outlet invert
    ("A", "B", 40, "4 SDR35", "1%", ""),
    ("B", "C", 60, "4 SDR35", "1/8 in/ft", ""),
    ("C", "Out", 30, "6 SDR35", 0.02, 97.5),
]
COLUMNS = "$A$2:$A$6;$B$2:$B$6;$C$2:$C$6;$D$2:$D$6;$E$2:$E$6;$F$2:$F$6"


def fill(sheet, runs):
    """Rows between a blank row above and a blank row below, as the workbooks lay tables out."""
    text = sheet.document.NumberFormats.queryKey("@", sheet.document.CharLocale, False)
    for row, run in enumerate(runs, start=3):
        for column, content in zip("ABCDEF", run):
            cell = sheet.cell(f"{column}{row}")
            if isinstance(content, str):
                cell.NumberFormat = text if content else 0
                cell.setString(content)
            else:
                cell.NumberFormat = 0
                cell.setValue(content)


@pytest.fixture
def runs(sheet):
    fill(sheet, RUNS)
    return sheet


def inverts(sheet):
    return sheet.array("H2:I6", f"=LINES.INVERTS({COLUMNS})")


def test_numbers_uphill_from_the_outlet(runs):
    rows = inverts(runs)
    down = [row[1] for row in rows[1:4]]
    assert rows[3] == [pytest.approx(97.5 + 30 * 0.02), pytest.approx(97.5)]
    assert down[0] == pytest.approx(rows[2][0])
    assert rows[1][0] == pytest.approx(rows[2][0] + 40 * 0.01)


def test_blank_rows_stay_blank_and_do_not_count(runs):
    rows = inverts(runs)
    assert rows[0] == ["", ""] and rows[4] == ["", ""]
    assert runs.type("K1", '=H2=""') == 1
    assert runs.type("K2", "=COUNT(H2:H6)") == 3
    assert runs.type("K3", "=SUM(H2:H6)") == pytest.approx(sum(row[0] for row in rows[1:4]))


def test_a_bad_row_spoils_itself_and_what_lies_downstream_of_its_numbers_only(runs):
    good = inverts(runs)
    runs.type("E3", "steep")
    rows = inverts(runs)
    assert rows[1][0] == Error(BAD_ARGUMENT)
    assert rows[2] == good[2] and rows[3] == good[3], "the rows it does not feed keep every digit"
    assert runs.type("K1", "=ISERROR(H3)") == 1
    assert runs.type("K2", "=ERRORTYPE(H3)") == BAD_ARGUMENT
    assert runs.type("K3", '=IFERROR(H3;"see Check")') == "see Check"
    assert runs.type("K4", "=INDEX(H2:I6;2;1)") == Error(BAD_ARGUMENT)
    assert runs.type("K5", "=INDEX(H2:I6;3;1)") == good[2][0]
    assert runs.type("K6", "=SUM(H2:H6)") == Error(BAD_ARGUMENT)
    assert runs.type("K7", "=AGGREGATE(9;6;H2:H6)") == pytest.approx(good[2][0] + good[3][0])


def test_text_blocks_can_be_compared(runs):
    runs.type("B4", "A")  # B runs back to A
    runs.array("H2:H6", "=LINES.FAULTS($A$2:$A$6;$B$2:$B$6;$C$2:$C$6;$D$2:$D$6)")
    fault = runs.shows("H4")
    assert "loop" in fault.lower()
    assert runs.type("K1", "=H2=\"\"") == 1
    assert runs.type("K2", "=H4=H3") == (1 if runs.shows("H3") == fault else 0)
    runs.cell("L1").setString(fault)
    assert runs.type("K3", "=H4=L1") == 1
    assert runs.type("K4", "=COUNTIF(H2:H6;L1)") >= 1
    assert runs.type("K5", "=MATCH(L1;H2:H6;0)") >= 2
    assert runs.type("K6", "=EXACT(INDEX(H2:H6;3);L1)") == 1


def test_columns_of_different_height_are_refused_in_words(runs):
    short = "LINES.FLOW($A$3:$A$5;$B$3:$B$4;$A$3:$A$5;$C$3:$C$5)"
    assert runs.array("H2:H4", "=" + short)[0][0] == Error(BAD_ARGUMENT)
    reason = runs.type("K1", '=TRENCHBOOK.WHY("LINES.FLOW";$A$3:$A$5;$B$3:$B$4;$A$3:$A$5;$C$3:$C$5)')
    assert "2 rows" in reason and "3 rows" in reason and "to" in reason


def test_an_area_beyond_the_answer_shows_not_available(runs):
    rows = runs.array("H2:H8", f"=LINES.INVERTS({COLUMNS})")
    assert rows[5][0] == Error(32767) and rows[6][0] == Error(32767)


def test_error_cells_are_kept_out_by_wrapping(runs):
    good = inverts(runs)
    runs.type("C3", "=1/0")
    wrapped = COLUMNS.replace("$C$2:$C$6", 'IFERROR($C$2:$C$6;"")')
    rows = runs.array("H2:I6", f"=LINES.INVERTS({wrapped})")
    assert isinstance(rows[1][0], Error) and rows[2] == good[2]


def test_row_order_never_matters(runs):
    good = inverts(runs)
    fill(runs, RUNS[::-1])
    rows = inverts(runs)
    assert rows[1:4] == good[3:0:-1]


def test_rows_inserted_deleted_and_sorted(runs):
    inverts(runs)
    good = [runs.shows(f"H{row}") for row in (3, 4, 5)]
    # The block stands beside its table here, so rows are inserted in the table's own columns.
    address = runs.cells.getCellRangeByName("A4:F4").RangeAddress
    runs.cells.insertCells(address, DOWN)
    assert runs.cells.getCellRangeByName("H2:I6").ArrayFormula.count("$A$2:$A$7") == 1
    assert runs.shows("H3") == good[0] and runs.shows("H4") == "" and runs.shows("H5") == good[1]
    runs.cells.removeRange(address, UP)
    assert [runs.shows(f"H{row}") for row in (3, 4, 5)] == good
