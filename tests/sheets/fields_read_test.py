"""What is typed into any field or column and cannot be used there, or is unusual, is named on Job and Quote."""

from contextlib import contextmanager

import pytest

from money_book import book


@pytest.fixture(scope="module")
def job():
    with book() as filled:
        filled.calculate()
        yield filled


@contextmanager
def typed_into(job, cell, typed):
    """As typed; a text that begins with = is a formula. The cell is put back."""
    before = cell.getFormula()
    if not isinstance(typed, str):
        cell.setValue(typed)
    elif typed.startswith("="):
        cell.setFormula(typed)
    else:
        cell.setString(typed)
    job.calculate()
    try:
        yield
    finally:
        cell.setFormula(before)
        job.calculate()


@pytest.mark.parametrize("form, label, typed, named", [
    ("Change terms", "Labor", "25 %", "Account: Labor"), ("Account", "Date of invoice", "soon", "Account: Date of invoice"),
    ("Dates", "Days on the job, if not as on Labor", "three", "Dates: Days on the job, if not as on Labor"),
    ("Burden sums", "Wages a year", "much", "Labor: Wages a year"), ("Quote", "Contract tax is on", "=1/0", "Quote: Contract tax is on"),
    ("Compass", "North", "up", "Layout: North"), ("Close-out sums", "Weather days", " ", "Close-out: Weather days"),
    ("Quote", "Contract tax is on", "everything", "Quote: Contract tax is on"), ("As built shown", "Drawing shows", "all", "As built: Drawing shows"),
    ("Crew page", "Language", "fr", "Crew: Language"), ("Crew page", "Language", "=1/0", "Crew: Language"),
    ("Peak", "Largest share", "=1/0", "Peak: Largest share"), ("Dates", "Goods ordered for this job alone", "much", "Dates: Goods ordered for this job alone"), ("Account", "Invoice", "=NA()", "Account: Invoice"),
    ("Account", "Agreed price", 1e12, "Account: Agreed price=1000000000000"), ("Change terms", "Materials", 25, "Account: Materials=25"),
    ("Close-out sums", "Weather days", -7, "Close-out: Weather days=-7"), ("Account", "Date of invoice", 25, "Account: Date of invoice=25"),
])
def test_fields_that_cannot_be_used_are_named(job, form, label, typed, named):
    assert job.value("fields_unread") == ""
    area = job.document.NamedRanges.getByName("form_" + form.replace(" ", "_").replace("-", "_")).getReferredCells()
    cell = area.getCellByPosition(1, [row[0] for row in area.getDataArray()].index(label))
    before = job.value("quote_check")
    with typed_into(job, cell, typed):
        assert job.value("fields_unread") == named
        word = "CHECK" if "=" in named else "NO"
        assert job.value("fields_check").startswith(word) and named in job.value("fields_check")
        if word == "NO":
            assert job.value("job_check").startswith("NO") and job.value("quote_check").startswith("NO")
            assert job.value("proposal_missing") != ""
        else:
            assert job.value("quote_check").startswith("NO") or named in job.value("quote_check"), before
    assert job.value("fields_unread") == "" and job.value("fields_check").startswith("OK")


@pytest.mark.parametrize("table, heading, typed, named", [
    ("Payments", "Paid", "much", "Account, Payments: Paid {row}"), ("Changes", "Equipment", 1e12, "Account, Changes: Equipment {row}="),
    ("Prices", "Group", "pipes", "Prices: Group {row}"), ("Prices", "Last on", "soon", "Prices: Last on {row}"),
    ("Order", "Supplier", "=1/0", "Order: Supplier {row}"), ("Invoices", "Date", "soon", "Bills, Invoices: Date {row}"),
    ("Holidays", "Day", 7, "Dates, Holidays: Day {row}="),
])
def test_columns_that_cannot_be_used_are_named_with_their_row(job, table, heading, typed, named):
    area = job.document.NamedRanges.getByName("table_" + table).getReferredCells()
    cell = area.getCellByPosition(job.headings(table).index(heading), 4)
    told = named.format(row=cell.CellAddress.Row + 1)
    with typed_into(job, cell, typed):
        assert job.value("fields_unread") == told
        assert job.value("fields_check").startswith("CHECK" if told.endswith("=") else "NO")
    assert job.value("fields_unread") == ""
