"""Closing a job out: the estimate as it was sold, what bills and hours cost, what is left, and the ledger that takes it in."""

import shutil
from decimal import Decimal

import pytest

from calls import CHECKOUT, DEMO, done, fields, jobbook, rows
from money_book import edited

LEDGER = CHECKOUT / "sheets/demo/ledger"
TYPED = {"labor", "equipment", "disposal", "permits", "subcontract", "call-back"}  # no bill of the demo has them


def amounts(table, column, *groups):
    """The column's sum, of these groups where any are given."""
    return sum(Decimal(row[column]) for row in table if row[column] and (not groups or row["Group"] in groups))


@pytest.fixture(scope="module")
def sold(demo, tmp_path_factory):
    """The demo job with an empty Close-out and the estimate taken by command."""
    job = tmp_path_factory.mktemp("sold") / "job.ods"
    shutil.copy(demo / "job.ods", job)
    refused = jobbook("estimate", job)
    assert refused.returncode == 2 and "Close-out has 64 rows already; --replace takes the estimate anew" in refused.stderr
    job.with_suffix(".txt").write_text(done("estimate", job, "--replace"), encoding="utf-8")
    done("values", job, job.with_suffix(""))
    return job


def test_the_estimate_is_the_direct_cost_to_the_cent(sold):
    taken = rows(sold.with_suffix("") / "close-out.csv")
    direct = {name: Decimal(value) for name, value in fields(sold.with_suffix("") / "direct-cost.csv").items()}
    assert amounts(taken, "Estimated amount") == direct["Direct cost"]
    for group, line in (("materials", "Materials"), ("tax", "Sales tax on purchases"), ("delivery", "Delivery"), ("labor", "Labor"),
                        ("equipment", "Equipment"), ("disposal", "Disposal"), ("permits", "Permits"), ("subcontract", "Subcontract")):
        assert amounts(taken, "Estimated amount", group) == direct[line], group
    sums = fields(sold.with_suffix("") / "close-out-sums.csv")
    assert "63 rows, $10,490.95" in sold.with_suffix(".txt").read_text()
    assert sums["Left for overhead and profit"] == sums["Margin"] == sums["Actual cost"] == "", "nothing is profit before cost is in"
    assert sums["Rows without an actual amount"] == "63" and sums["Ready?"] == "CHECK: nothing is closed yet"


def test_bills_and_hours_fill_blank_cells_and_add_up(sold, tmp_path):
    job = shutil.copy(sold, tmp_path / "job.ods")
    with edited(job) as book:
        lines = [row for row in book.rows("Close-out") if row["What"]]
        for row in lines:
            row["Actual quantity"] = 20 if row["What"] == "Dig trench by machine" else ""
            row["Actual amount"] = 90 if row["Code"] == "DELIVERY" else ""
        book.fill("Close-out", [{key: row[key] for key in ("What", "Actual quantity", "Actual amount")} for row in lines])
    said = done("actual", job)
    done("values", job, tmp_path / "values")
    closed = {row["What"]: row for row in rows(tmp_path / "values/close-out.csv")}
    assert closed["flatbed delivery"]["Actual amount"] == "90", "what is typed stays"
    rate = Decimal(fields(tmp_path / "values/labor-sums.csv")["Rate with burden"])
    assert Decimal(closed["Dig trench by machine"]["Actual amount"]) == 20 * rate
    bought = [row for row in closed.values() if row["Group"] not in TYPED and row["What"] != "Sales tax on hire"]
    paid = Decimal(fields(tmp_path / "values/bill-verdict.csv")["Pay"])
    assert amounts(bought, "Actual amount") == paid - 95 + 90, "what Bills says to pay, but for the one typed"
    assert closed["PVC cement"]["Actual quantity"] == "9", "three pints went back"
    assert "still open: mini excavator, day, with haul" in said and "left for overhead" not in said
    sums = fields(tmp_path / "values/close-out-sums.csv")
    assert sums["Left for overhead and profit"] == "" and Decimal(sums["Actual cost"]) == paid - 5 + 20 * rate
    again = done("actual", job)
    assert "in 0 rows more" in again


def test_a_job_that_is_not_sold_or_has_no_price_takes_no_estimate(demo, tmp_path):
    job = shutil.copy(demo / "job.ods", tmp_path / "job.ods")
    with edited(job) as book:
        book.set("Account", "Agreed price", "")
    ran = jobbook("estimate", job, "--replace")
    assert ran.returncode == 2 and "The job is not sold: the agreed price on Account is missing" in ran.stderr
    done("again", demo / "job.ods", tmp_path / "next.ods")
    ran = jobbook("actual", tmp_path / "next.ods")
    assert ran.returncode == 2 and "Close-out is empty: take the estimate first" in ran.stderr


def test_the_demo_tells_one_story(demo, tmp_path):
    """Close-out, ledger and learned rates from the same invented hours and bills."""
    closed = rows(demo / "values/close-out.csv")
    sums = fields(demo / "values/close-out-sums.csv")
    assert sums["Ready?"] == "OK"
    assert amounts(closed, "Estimated amount") == Decimal(fields(demo / "values/direct-cost.csv")["Direct cost"])
    bought = [row for row in closed if row["Group"] not in TYPED and row["What"] != "Sales tax on hire"]
    assert amounts(bought, "Actual amount") == Decimal(fields(demo / "values/bill-verdict.csv")["Pay"])
    cost, contract = amounts(closed, "Actual amount"), Decimal(fields(demo / "values/account-sums.csv")["Contract in all"])
    assert Decimal(sums["Actual cost"]) == cost and Decimal(sums["Left for overhead and profit"]) == contract - cost
    for column in ("Difference", "By price", "By quantity"):
        by_group = sum(Decimal(row[{"Difference": "Off", "By price": "Off by price", "By quantity": "Off by quantity"}[column]])
                       for row in rows(demo / "values/close-out-groups.csv"))
        assert by_group == amounts(closed, column), column

    ledger = tmp_path / "ledger.ods"
    done("ledger", LEDGER, ledger)
    done("close", demo / "job.ods", ledger, "--finished", "2026-12-11")
    done("values", ledger, tmp_path / "values")
    job = next(row for row in rows(tmp_path / "values/jobs.csv") if row["Job"].startswith("Corner lot"))
    labor = [row for row in closed if row["Group"] == "labor"]
    told = {"Contract": contract, "Actual cost": cost, "Estimated cost": amounts(closed, "Estimated amount"), "Left": contract - cost,
            "Billed": contract, "Paid": Decimal(fields(demo / "values/account-sums.csv")["Paid so far"]),
            "Actual hours": amounts(labor, "Actual quantity"), "Weather days": 1, "Call-backs": 4,
            "Cost off": cost - amounts(closed, "Estimated amount")}
    assert {name: Decimal(job[name]) for name in told} == told
    assert float(job["Estimated hours"]) == pytest.approx(float(amounts(labor, "Estimated quantity")))
    items = [row for row in rows(tmp_path / "values/items.csv") if row["Job"] == job["Job"]]
    coded = [row for row in closed if row["Code"] and Decimal(row["Actual quantity"]) > 0]
    assert sum(Decimal(row["Cost"]) for row in items) == amounts(coded, "Actual amount") and len(items) == len(coded)
    assert {row["Check"] for row in items} == {"OK"}
    hours = {row["Work"]: row for row in rows(tmp_path / "values/hours.csv") if row["Job"] == job["Job"]}
    assert {work: Decimal(row["Hours"]) for work, row in hours.items()} == {row["What"]: Decimal(row["Actual quantity"]) for row in labor}
    rates = {row["Work"]: row for row in rows(tmp_path / "values/rates.csv")}
    before = [row for row in rows(LEDGER / "hours.csv") if row["Work"] == "Dig trench by machine"]
    assert float(rates["Dig trench by machine"]["Jobs"]) == len(before) + 1, "one job more teaches"
    plain = sum(float(row["Hours"]) / float(row["Soil factor"]) / float(row["Access factor"]) for row in before)
    dug, amount = hours["Dig trench by machine"], sum(float(row["Amount"]) for row in before)
    average = (plain + float(dug["Hours"]) / float(dug["Soil factor"]) / float(dug["Access factor"])) / (amount + float(dug["Amount"]))
    assert float(rates["Dig trench by machine"]["Average"]) == pytest.approx(average, rel=1e-9)
