"""Blocks of a whole job over tables on a sheet, as the workbooks hand them over: headings, units, a thin row, an error."""

import pytest

from calc import BAD_ARGUMENT, Error

MARK = "\u27e8error\u27e9"  # what stands in for a cell that holds an error of its own
TABLES = {
    "A1": [["Rain", 6], ["Duration", 5]],
    "D1": [["Node", "Kind", "Ground"], ["", "", "ft"], ["", "", ""], ["A", "downspout", 100], ["B", "cleanout", 99.4],
           ["Out", "bank", 97], ["", "", ""]],
    "H1": [["Inlet", "Node", "Roof area", "Roof C"], ["", "", "sq ft", ""], ["", "", "", ""], ["front", "A", 800, 0.95],
           ["", "", "", ""]],
    "A11": [["From", "To", "Length", "Pipe", "Slope", "Outlet level", "Surface up", "Surface down"],
            ["", "", "ft", "", "", "ft", "", ""], ["", "", "", "", "", "", "", ""],
            ["A", "B", 40, "4 SDR35", "1%", "", "lawn", "lawn"], ["B", "Out", 60, "4 SDR35", "1%", 95.5, "lawn", "daylight"],
            ["", "", "", "", "", "", "", ""]],
}


def wrapped(area):
    return f'IFERROR({area};"{MARK}")'


TABLES_HANDED_OVER = ";".join([wrapped("A1:B2"), wrapped("D1:F7"), wrapped("H1:K5"), wrapped("A11:H16")])


@pytest.fixture
def job(sheet):
    text = sheet.document.NumberFormats.queryKey("@", sheet.document.CharLocale, False)
    for corner, rows in TABLES.items():
        column, first = corner[0], int(corner[1:])
        for row, cells in enumerate(rows):
            for place, content in enumerate(cells):
                cell = sheet.cell(f"{chr(ord(column) + place)}{first + row}")
                if isinstance(content, str):
                    cell.NumberFormat = text if content else 0
                    cell.setString(content)
                else:
                    cell.setValue(content)
    return sheet


def numbers(job):
    """Length, ground up and down, invert up and down of each row from the thin row to the closing row."""
    return job.array("M1:Q4", f"=JOB.RUNS({TABLES_HANDED_OVER})")


def words(job):
    return job.array("S1:T4", f"=JOB.RUNS.TEXT({TABLES_HANDED_OVER})")


def test_a_row_of_the_sheet_is_a_row_of_the_block(job):
    rows = numbers(job)
    assert rows[0] == [""] * 5 and rows[3] == [""] * 5, "the thin row and the closing row"
    assert rows[2] == [60, 99.4, 97, pytest.approx(95.5 + 0.6), pytest.approx(95.5)]
    assert rows[1][3] == pytest.approx(95.5 + 0.6 + 0.4)
    assert job.type("X1", "=INDEX(M1:Q4;3;4)") == rows[2][3]
    assert job.type("X2", "=SUM(M1:M4)") == 100


def test_words_can_be_compared(job):
    said = words(job)
    assert said[0] == ["", ""]
    assert all(verdict in ("OK", "NO", "CHECK", "NOT JUDGED") for verdict, _ in said[1:3]), said
    assert job.type("X1", f'=S2="{said[1][0]}"') == 1


def test_an_error_of_its_own_is_told_in_its_row_and_the_block_stays(job):
    good = numbers(job)
    job.type("C14", "=1/0")  # the upper run's length
    rows = numbers(job)
    assert rows[2] == good[2], "the run below keeps every digit"
    assert rows[1][0] == Error(BAD_ARGUMENT)
    said = words(job)
    assert said[1][0] == "NO" and "Length holds an error" in said[1][1]


def test_columns_may_move_and_rows_may_be_inserted(job):
    good = numbers(job)
    # Length and Pipe change places, headings and units with them.
    for row in range(11, 17):
        first, second = job.cell(f"C{row}"), job.cell(f"D{row}")
        kept = (first.Formula, first.NumberFormat, second.Formula, second.NumberFormat)
        first.NumberFormat, second.NumberFormat = kept[3], kept[1]
        first.setFormula(kept[2])
        second.setFormula(kept[0])
    assert numbers(job) == good


def test_a_heading_that_is_missing_is_an_error_and_why_names_it(job):
    job.cell("C11").setString("Lenght")
    assert numbers(job)[0][0] == Error(BAD_ARGUMENT)
    why = job.type("X1", '=TRENCHBOOK.WHY("JOB.RUNS";A1:B2;D1:F7;H1:K5;A11:H16)')
    assert why == "Runs: no column is headed Length; the first row holds the headings"
