"""Account and the invoice to the owner: sums by hand, and rows that cannot be read."""

import subprocess

import pytest

from money_book import book

DAY = 46350
READY = {"Account": {"Invoice": "7", "Date of invoice": DAY, "Agreed price": 10000}, "Job": {"Owner": "A. Owner", "Site": "a lot"},
         "Sender": {"Our name": "Us", "Our address": "here", "How to pay": "By check."}}
NO_CHANGE = {"What": "", "Date": "", "Signed": "", "Labor": "", "Equipment": "", "Materials": "", "Subcontract": ""}
NO_PAYMENT = {"What": "", "Date": "", "How": "", "Paid": ""}


@pytest.fixture(scope="module")
def job():
    with book() as made:
        yield made


@pytest.fixture(autouse=True)
def fresh(job):
    for form, fields in READY.items():
        for label, value in fields.items():
            job.set(form, label, value)
    job.fill("Changes", [NO_CHANGE])
    job.fill("Payments", [NO_PAYMENT])


def page(job):
    """All text in the invoice's first column."""
    cells = job.document.Sheets.getByName("Invoice").getCellRangeByName("A1:A80").getDataArray()
    return "\n".join(str(row[0]) for row in cells if row[0])


def test_lines_close_up_and_add_to_what_is_due(job):
    job.fill("Changes", [{**NO_CHANGE, "What": "deeper basin", "Date": DAY, "Signed": "yes", "Labor": 1000},
                         {**NO_CHANGE, "What": "asked for by telephone", "Signed": "no", "Labor": 300},
                         {}, {**NO_CHANGE, "What": "one stick less", "Signed": "yes", "Materials": -100}])
    job.fill("Payments", [{**NO_PAYMENT, "What": "deposit", "Date": DAY, "How": "check", "Paid": 1000}, {},
                          {**NO_PAYMENT, "What": "half", "Date": DAY + 9, "Paid": 2500.5}])
    job.calculate()
    lines = [(row["What"], row["Date"], row["Amount"]) for row in job.rows("Invoice lines") if row["What"]]
    # The markups on changes: labor 15 %, materials 10 %.
    assert lines == [("Drainage work as agreed", "", 10000), ("deeper basin", DAY, pytest.approx(1150)),
                     ("one stick less", "", pytest.approx(-110))]
    paid = [(row["What"], row["Date"], row["Paid"]) for row in job.rows("Invoice payments") if row["What"]]
    assert paid == [("deposit, check", DAY, 1000), ("half", DAY + 9, 2500.5)]
    due = 10000 + 1150 - 110 - 1000 - 2500.5
    assert job.value("due_now") == pytest.approx(due)
    assert f"$ {due:,.2f}, until 2026-12-08." in page(job) and "By check." in page(job), page(job)
    assert "NOT READY" not in page(job)


def test_paid_and_overpaid(job):
    job.fill("Payments", [{**NO_PAYMENT, "What": "all", "Date": DAY, "Paid": 10000}])
    job.calculate()
    assert "Nothing: all is paid. Thank you." in page(job)
    job.fill("Payments", [{**NO_PAYMENT, "What": "all", "Date": DAY, "Paid": 10050}])
    job.calculate()
    assert "Nothing. 50.00 more was paid than was due and will be sent back." in page(job)
    assert job.value("account_check").startswith("CHECK: 50.00 more was paid")


@pytest.mark.parametrize("table, row, says", [
    ("Changes", {"What": "x", "Date": "May 5th", "Signed": "yes", "Labor": 100}, "not a date: May 5th"),
    ("Changes", {"What": "x", "Signed": "yes", "Labor": "1OO"}, "a cost is not a number"),
    ("Changes", {"What": "x", "Signed": "yes"}, "no amount"),
    ("Payments", {"What": "deposit", "Date": DAY, "Paid": "1,000 $"}, "not a number"),
    ("Payments", {"What": "deposit", "Date": "2026-5-31x", "Paid": 1000}, "not a date: 2026-5-31x"),
    ("Payments", {"What": "deposit", "Date": DAY}, "not a number"),
])
def test_a_row_that_cannot_be_read_keeps_the_invoice_back(job, table, row, says):
    job.fill(table, [{**(NO_CHANGE if table == "Changes" else NO_PAYMENT), **row}])
    job.calculate()
    check = job.rows(table)[0]["Check"]
    assert check.startswith("NO") and says in check, check
    assert job.value("account_check").startswith("NO: a change or payment cannot be read")
    assert "NOT READY TO SEND: a change or payment cannot be read" in page(job)
    assert "Not known yet." in page(job) and "Thank you" not in page(job)


@pytest.mark.parametrize("form, label, says", [
    ("Account", "Invoice", "number is missing"), ("Account", "Date of invoice", "date is missing"), ("Account", "Agreed price", "agreed price is missing"),
    ("Job", "Owner", "owner is missing"), ("Sender", "Our name", "our own name is missing"),
])
def test_what_is_missing_is_told(job, form, label, says):
    job.set(form, label, "")
    job.calculate()
    assert "NOT READY TO SEND" in page(job) and says in page(job), page(job)


def test_the_demos_invoice_as_paper(demo):
    """Changes by hand: 95 x 1.15 + 48.60 x 1.10 = 162.71 and -92 x 1.10 = -101.20; the third is not signed."""
    path = demo / "paper/invoice.pdf"
    text = subprocess.run(["pdftotext", "-layout", path, "-"], capture_output=True, text=True, check=True).stdout
    for words in ("Fernbank Drainage", "Invoice 2026-31 of 2026-12-11", "For Invented Owner", "162.71", "-101.20", "15,993.11", "8,465.80",
                  "$ 7,527.31, until 2026-12-25."):
        assert words in text, text
    for words in ("NOT READY", "Gravel path", "Markup", "Check", "###"):
        assert words not in text, text
    assert "Pages:           1" in subprocess.run(["pdfinfo", path], capture_output=True, text=True).stdout
