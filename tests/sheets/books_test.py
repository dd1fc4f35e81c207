"""Price book and ledger, in an office without the add-in."""

import random
from decimal import Decimal as D

import pytest

from money_book import book

DAY = 46350


@pytest.fixture(scope="module")
def prices():
    with book("price-book") as made:
        yield made


@pytest.fixture(scope="module")
def ledger():
    with book("ledger") as made:
        yield made


def test_what_nobody_filled_is_not_ok():
    for name, form, says in (("price-book", "Price book", "CHECK: rows without a price: {Rows:.0f}"), ("ledger", "Ledger", "CHECK: no closed job yet")):
        with book(name) as made:
            made.calculate()
            told = made.fields(form)
            assert told["Ready?"] == says.format(**told), told


def test_last_three_prices_are_the_latest_before_todays(prices):
    dice = random.Random(3)
    history = [{"Code": code, "Supplier": "s", "Priced on": DAY - days, "Price": dice.randint(100, 900) / 100}
               for code in "AB" for days in (400, 90, 60, 30, 10)]
    dice.shuffle(history)
    prices.set("Price book", "Ages counted to", DAY)
    prices.fill("Prices", [{"Code": code, "Item": "x", "Group": "other", "Unit": "piece", "Pack": 1, "Price": 7.5, "Supplier": "s",
                            "Priced on": DAY - age, "Taxable": "yes"} for code, age in (("A", 0), ("B", 30))])
    prices.fill("History", history)
    prices.calculate()
    for row, age in zip(prices.rows("Prices"), (0, 30)):
        past = sorted((old for old in history if old["Code"] == row["Code"] and old["Priced on"] < DAY - age),
                      key=lambda old: -old["Priced on"])
        assert [row["Last"], row["Before"], row["Earlier"]] == [old["Price"] for old in past[:3]], row
        assert row["Change"] == pytest.approx(7.5 / past[0]["Price"] - 1)
        assert row["Check"] == "OK"


def test_the_book_tells_which_prices_are_old_by_its_own_rule(prices):
    item = {"Item": "x", "Group": "other", "Unit": "piece", "Pack": 1, "Price": 7.5, "Supplier": "s", "Taxable": "yes"}
    prices.set("Price book", "Ages counted to", DAY)
    prices.fill("Prices", [{**item, "Code": f"K{age}", "Priced on": DAY - age} for age in (0, 10, 11, 45, 46)] +
                [{**item, "Code": "tomorrow", "Priced on": DAY + 1}])
    for trusted, old in ((10, {"K11", "K45", "K46"}), (45, {"K46"}), (60, set())):
        prices.set("Price book", "Trusted for", trusted)
        prices.calculate()
        checks = {row["Code"]: row["Check"] for row in prices.rows("Prices") if row["Code"]}
        assert {code for code, check in checks.items() if f"days old; up to {trusted} is trusted" in check} == old
        assert checks["tomorrow"].startswith("CHECK: priced after"), checks
        assert prices.value("book_check") == f"CHECK: old prices: {len(old) + 1}"
    prices.set("Price book", "Trusted for", 30)


@pytest.mark.parametrize("row, says", [
    ({"Price": "7,50 or so"}, "NO: the price is missing or not a number"), ({"Priced on": "May"}, "NO: not a date"),
    ({"Code": ""}, "NO: the code is missing"), ({"Code": "GONE"}, "CHECK: no longer in the book"), ({}, "OK"),
])
def test_a_bad_row_of_the_history_is_named(prices, row, says):
    prices.fill("Prices", [{"Code": "A", "Item": "x", "Group": "other", "Unit": "piece", "Pack": 1, "Price": 7.5, "Supplier": "s",
                            "Priced on": DAY, "Taxable": "yes"}])
    old = {"Code": "A", "Supplier": "s", "Priced on": DAY - 40, "Price": 6, **row}
    prices.fill("History", [old, {"Code": "A", "Supplier": "s", "Priced on": DAY - 80, "Price": 5}])
    prices.calculate()
    assert prices.rows("History")[0]["Check"].startswith(says), prices.rows("History")[0]
    last = 6 if says == "OK" else 5  # a row that cannot be used is not taken for a price
    assert prices.rows("Prices")[0]["Last"] == last, prices.rows("Prices")[0]


def test_a_price_is_drawn_over_time(prices):
    dice = random.Random(9)
    old = [{"Code": code, "Supplier": "s", "Priced on": DAY - days, "Price": dice.randint(100, 900) / 100}
           for code in "AB" for days in (10, 400, 90, 30, 60)]
    bad = {"Code": "A", "Supplier": "s", "Priced on": DAY - 50, "Price": "call"}
    prices.fill("Prices", [{"Code": code, "Item": f"thing {code}", "Group": "other", "Unit": "piece", "Pack": 1, "Price": 7.5, "Supplier": "s",
                            "Priced on": DAY - 2, "Taxable": "yes"} for code in "AB"])
    prices.fill("History", [*old, bad])
    for code in ("", "B", "A"):
        prices.set("Price course", "Code", code)
        prices.calculate()
        drawn = [(row["On"], row["Price"]) for row in prices.rows("Course") if row["On"] != ""]
        expected = sorted((row["Priced on"], row["Price"]) for row in old if row["Code"] == (code or "A")) + [(DAY - 2, 7.5)]
        assert drawn == pytest.approx(expected), code
        told = prices.fields("Price course")
        assert told["Prices drawn"] == 6 and told["Change over all of it"] == pytest.approx(7.5 / expected[0][1] - 1)
        assert told["What it is"] == f"{code or 'A'}: thing {code or 'A'}" and told["Ready?"] == "OK"
    for code, says in (("C", "NO: neither Prices nor History has C"),):
        prices.set("Price course", "Code", code)
        prices.calculate()
        assert prices.fields("Price course")["Ready?"] == says
    prices.set("Price course", "Code", "")
    sheet = prices.document.Sheets.getByName("Course")
    assert sheet.Charts.Count == 1
    chart = sheet.Charts.getByIndex(0).EmbeddedObject
    line, = chart.getFirstDiagram().getCoordinateSystems()[0].getChartTypes()[0].getDataSeries()
    drawn = {part.Values.Role: part.Values.SourceRangeRepresentation for part in line.getDataSequences()}
    table = prices.document.NamedRanges.getByName("table_Course").getReferredCells().getRangeAddress()
    headings = [sheet.getCellByPosition(column, table.StartRow).String for column in range(table.StartColumn, table.EndColumn + 1)]
    for role, heading in (("values-x", "On"), ("values-y", "Price")):
        column = chr(ord("A") + table.StartColumn + headings.index(heading))
        assert f".${column}$" in drawn[role] and drawn[role].startswith("$Course."), drawn


def test_a_job_that_cost_more_than_its_contract_is_told(ledger):
    job = {"Finished": DAY, "Contract": 5000, "Estimated cost": 4000, "Actual cost": 5000, "Billed": 5000, "Paid": 5000}
    ledger.fill("Jobs", [{"Job": "even", **job}, {"Job": "lost", **job, "Actual cost": 5612.5}])
    ledger.calculate()
    even, lost = ledger.rows("Jobs")[:2]
    assert lost["Check"] == "CHECK: the job cost 612.50 more than its contract" and not even["Check"].startswith("CHECK: the job cost")


def test_ledger_sums_and_trends(ledger):
    dice = random.Random(5)
    jobs = [{"Job": f"J{n}", "Finished": DAY - n, "Contract": dice.randint(5000, 20000), "Estimated cost": dice.randint(3000, 9000),
             "Actual cost": dice.randint(3000, 12000) if n % 4 else "", "Billed": 5000, "Paid": 4000 + 100 * n,
             "Estimated hours": 80, "Actual hours": 60 + 3 * n, "Pipe": 200} for n in range(9)]
    items = [{"Job": f"J{dice.randint(0, 8)}", "Bought on": DAY - n, "Code": dice.choice(["PIPE", "WYE"]), "Estimated": dice.randint(5, 9),
              "Bought": dice.randint(5, 12), "Cost": dice.randint(1000, 9000) / 100} for n in range(30)]
    ledger.fill("Jobs", jobs)
    ledger.fill("Items", items)
    ledger.calculate()
    closed = [job for job in jobs if job["Actual cost"] != ""]
    sums = ledger.fields("Ledger")
    assert sums["Jobs"] == 9
    assert sums["Still due"] == sum(5000 - job["Paid"] for job in jobs)
    assert sums["Cost off"] == pytest.approx(sum(j["Actual cost"] - j["Estimated cost"] for j in closed) / sum(j["Estimated cost"] for j in closed))
    assert sums["Margin"] == pytest.approx(1 - sum(j["Actual cost"] for j in closed) / sum(j["Contract"] for j in closed))
    assert [row["Check"].startswith("CHECK: finished") for row in ledger.rows("Jobs")[:9]] == [job["Actual cost"] == "" for job in jobs]
    trends = {row["Code"]: row for row in ledger.rows("Trends") if row["Code"]}
    assert set(trends) == {item["Code"] for item in items}
    for code, row in trends.items():
        mine = [item for item in items if item["Code"] == code]
        assert row["Times"] == len(mine)
        assert row["Average price"] == pytest.approx(sum(i["Cost"] for i in mine) / sum(i["Bought"] for i in mine))
        last = max(mine, key=lambda item: item["Bought on"])
        assert row["Last price"] == pytest.approx(last["Cost"] / last["Bought"])
        assert row["Waste"] == pytest.approx(sum(i["Bought"] for i in mine) / sum(i["Estimated"] for i in mine) - 1)


@pytest.mark.parametrize("row, says", [({"Job": ""}, "which job"), ({"Contract": "many"}, "not a number"), ({"Finished": "May"}, "not a date")])
def test_a_bad_job_is_named(ledger, row, says):
    ledger.fill("Jobs", [{"Job": "J", "Finished": "", "Contract": 1, "Estimated cost": "", "Actual cost": "", "Billed": "", "Paid": "",
                          "Estimated hours": "", "Actual hours": "", "Pipe": "", **row}])
    ledger.calculate()
    check = ledger.rows("Jobs")[0]["Check"]
    assert check.startswith("NO") and says in check, check
    assert ledger.value("ledger_check").startswith("NO")


@pytest.fixture(scope="module")
def job():
    with book() as made:
        yield made


@pytest.mark.parametrize("billed, paid, ordered, planned, price, quantity", [
    # Accounting texts, read (20g_purchase_variances.csv); the last one must not round the unit price on the way.
    (450, 2925, 6.9, 430, -180, 138), (4500, 22950, 5, 4000, 450, 2500), (29000, 158050, 5.8, 28500, -10150, 2900),
    (22060, 273544, 12.3, 24480, 2206, -29766), (300000, 535000, 2, 240000, -65000, 120000),
])
def test_close_out_splits_as_accounting_texts_do(job, billed, paid, ordered, planned, price, quantity):
    job.fill("Close-out", [{"What": "material", "Group": "materials", "Estimated quantity": planned, "Estimated amount": float(D(str(ordered)) * planned),
                            "Actual quantity": billed, "Actual amount": paid, "Cause": "price"}])
    job.calculate()
    row = job.rows("Close-out")[0]
    assert (row["By price"], row["By quantity"]) == pytest.approx((price, quantity), abs=0.005)
    assert row["Difference"] == pytest.approx(price + quantity, abs=0.005)
    assert job.rows("Close-out groups")[0]["Off"] == pytest.approx(price + quantity, abs=0.005)
