"""One bad cell moves nothing that does not hang on it: an error, a text and a negative number in every input column."""

import pytest

from calls import BUILD
from lines_sheet_test import demo, notes  # noqa: F401, the fixture
from money_book import book

# Input columns from the first to the last that are handed to the engine, and a row of the garden line.
TABLES = {"Runs": ("Line", "Approval", ("From", "G3")), "Nodes": ("Node", "Photo", ("Node", "G3")),
          "Water": ("Inlet", "Outlet head", ("Node", "G4")), "Crossings": ("What", "Good until", ("From", "G3")),
          "Outlets": ("Outlet", "Roughness", ("Outlet", "G7")), "Pump": ("Basin", "Anchor concrete", ("Basin", "G7"))}
WORKED = {"Nodes": {"Ground level"}}
# Where any words or numbers are a name, and nothing can be wrong but an error.
NAMES = {"Line", "Shot", "Device", "Tie 1", "Tie 2", "Photo", "What", "Ticket", "Inlet", "Node", "From", "To", "Outlet",
         "Approval", "Engineer", "Basin"}
# A level may lie below zero.
LEVELS = {"Ground", "Rim or grate", "Fixed level", "Outlet level", "Outlet highest", "Outlet water", "Flow line", "Known invert up",
          "Known invert down", "Floor", "Pump on", "Pump off", "Discharge level", "Groundwater"}
SWALE = {"Bottom": 2, "Side slope": 3, "Deep": 1.5, "Slope": "1%", "Roughness": 0.035}

PUMP = {"Basin": "G7", "Inside diameter": 36, "Floor": 91, "Pump on": 95, "Pump off": 93, "Pump curve": "0:29; 120:0",
        "Discharge pipe": "2 SCH40", "Discharge length": 60, "Elbows": 2, "Discharge level": 101, "Check valve": "yes", "Power out": "alarm",
        "Groundwater": 90, "Outside diameter": 40, "Empty weight": 200, "Anchor concrete": 2}


@pytest.fixture(scope="module")
def job():
    with book(extensions=BUILD / "extension") as made:
        yield made


def others(job):
    """All rows that do not lie on the garden line, with every cell."""
    kept = {}
    for table, heading in (("Runs", "From"), ("Nodes", "Node"), ("Water", "Node"), ("Crossings", "From"), ("Outlets", "Outlet"),
                           ("Planned", "Run")):
        kept[table] = [row for row in job.rows(table) if str(row[heading]).startswith(("S", "P"))]
    return kept


@pytest.mark.parametrize("table", TABLES)
def test_a_bad_cell_moves_no_other_row(job, table):
    job.fill("Outlets", [{"Outlet": "S8", **SWALE}, {"Outlet": "G7", **SWALE}])
    job.fill("Pump", [PUMP])
    job.document.calculateAll()
    before = others(job)
    assert len(before["Runs"]) == len(before["Planned"]) == 9 and len(before["Outlets"]) == 1 and before["Crossings"]
    first, last, (key, name) = TABLES[table]
    headings = job.headings(table)
    area = job._area("table", table)
    at = next(place for place, row in enumerate(area.getDataArray()) if row[headings.index(key)] == name)
    for column in range(headings.index(first), headings.index(last) + 1):
        heading = headings[column]
        if heading in WORKED.get(table, ()):
            continue
        cell = area.getCellByPosition(column, at)
        was, kind = cell.getFormula(), cell.Type.value
        for bad in ("=1/0", "nonsense", -7):
            if bad == "=1/0":
                cell.setFormula(bad)
            else:
                job._put(cell, bad)
            job.document.calculate()
            after = others(job)
            for name_, rows in before.items():
                assert after[name_] == rows, (table, heading, bad, name_)
            check = job.rows(table)[at - 3]["Check"]
            if bad == "=1/0":
                assert f"NO: {heading} holds an error" in check, (heading, check)
            elif heading not in NAMES and not (heading in LEVELS and bad == -7):
                assert check.startswith("NO: ") and f"{heading} is " in check, (heading, bad, check)
            if kind == "VALUE":
                cell.setValue(float(was))
            else:
                cell.setString(was)
    job.document.calculate()
    assert others(job) == before
