"""Input columns handed to an array function by a defined name that marks errors, as the workbooks do it."""

import pytest

from calc import Error, Sheet, BAD_ARGUMENT
from com.sun.star.table import CellAddress
from office import Office, save

MARK = "\u27e8error\u27e9"
ROWS = [("A", "B", 40), ("B", "C", 60), ("C", "Out", 30)]
CALL = "=LINES.STATIONS(INDEX(runs_in;0;1);INDEX(runs_in;0;2);INDEX(runs_in;0;3);INDEX(runs_in;0;1))"


@pytest.fixture
def handed(sheet):
    """Thin row 2, runs in rows 3 to 5, closing row 6; the answers on a second sheet."""
    for row, (start, end, length) in enumerate(ROWS, start=3):
        sheet.cell(f"A{row}").setString(start)
        sheet.cell(f"B{row}").setString(end)
        sheet.cell(f"C{row}").setValue(length)
    sheet.document.Sheets.insertNewByName("Workings", 1)
    cells = f"${sheet.cells.Name}.$A$2:$C$6"
    sheet.document.NamedRanges.addNewByName(
        "runs_in", f'IF(ISERROR(SUM({cells}));IFERROR({cells};"{MARK}");{cells})', CellAddress(), 0)
    return sheet


def answers(document):
    workings = Sheet(document)
    workings.cells = document.Sheets.getByName("Workings")
    return workings


def given(document):
    """What the name hands over, cell by cell."""
    return answers(document).array("F1:H5", "=runs_in")


def stations(document):
    return answers(document).array("A1:A5", CALL)


def test_the_name_works_inside_an_array_formula(handed):
    rows = stations(handed.document)
    assert [row[0] for row in rows[1:4]] == [pytest.approx(130), pytest.approx(90), pytest.approx(30)]
    assert rows[0][0] == "" and rows[4][0] == ""


def test_an_error_cell_is_marked_and_the_others_stay(handed):
    good = stations(handed.document)
    handed.type("C3", "=1/0")
    assert given(handed.document)[1] == ["A", "B", MARK]
    rows = [answers(handed.document).shows(f"A{row}") for row in range(1, 6)]
    assert rows[1] == Error(BAD_ARGUMENT)
    assert rows[2] == good[2][0] and rows[3] == good[3][0]


def test_it_follows_an_edit_without_a_full_recalculation(handed):
    stations(handed.document)
    handed.type("C5", 35)
    assert answers(handed.document).shows("A2") == pytest.approx(135)


def test_rows_inserted_at_either_end_belong_to_it(handed):
    stations(handed.document)
    handed.cells.Rows.insertByIndex(2, 1)  # below the thin row
    handed.cells.Rows.insertByIndex(6, 1)  # above the closing row
    content = handed.document.NamedRanges.getByName("runs_in").Content
    assert "$A$2:$C$8" in content.replace("$Sheet1.", "")
    handed.cell("A7").setString("X")
    handed.cell("B7").setString("Out")
    handed.cell("C7").setValue(12)
    workings = answers(handed.document)
    assert workings.shows("A3") == pytest.approx(130) and workings.shows("A5") == pytest.approx(30)


def test_it_survives_saving_and_loading(handed, office, tmp_path):
    good = stations(handed.document)
    handed.cells.Rows.insertByIndex(3, 1)
    save(handed.document, tmp_path / "handed.ods")
    again = office.open(tmp_path / "handed.ods")
    try:
        workings = answers(again)
        assert workings.shows("A2") == good[1][0] and workings.shows("A4") == good[2][0]
        assert MARK in again.NamedRanges.getByName("runs_in").Content
        first = Sheet(again)
        first.type("C3", 41)
        assert workings.shows("A2") == pytest.approx(131)
        first.type("C3", "=1/0")
        assert workings.shows("A2") == Error(BAD_ARGUMENT) and workings.shows("A4") == good[2][0]
    finally:
        again.close(True)
