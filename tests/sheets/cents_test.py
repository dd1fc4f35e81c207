"""Sums of the cents as they are shown, on the demo job: what a reader adds up on paper is what stands under it."""

import random
from decimal import ROUND_HALF_UP, Decimal as D

import pytest

from calls import BUILD
from money_book import Book
from office import Office

CENT = D("0.01")


class Shown(Book):
    """Cells as they are displayed, not as they are kept."""

    def lines(self, table):
        """The ready rows by heading, and the row of totals under the table."""
        area = self._area("table", table)
        at = area.RangeAddress
        sheet = self.document.Sheets[at.Sheet]
        headings = self.headings(table)
        cells = [[sheet.getCellByPosition(at.StartColumn + c, row).String for c in range(len(headings))]
                 for row in [*self._used(area, at), at.EndRow + 1]]
        rows = [dict(zip(headings, line)) for line in cells]
        return rows[:-1], rows[-1]

    @staticmethod
    def _used(area, at):
        data = area.getDataArray()
        shown = [n for n in range(area.Columns.Count) if area.Columns.getByIndex(n).IsVisible]
        return [at.StartRow + n for n in range(3, len(data) - 1) if any(data[n][column] != "" for column in shown)]

    def labels(self, form):
        area = self._area("form", form)
        return {area.getCellByPosition(0, n).String: area.getCellByPosition(1, n).String
                for n in range(area.Rows.Count) if area.Rows.getByIndex(n).IsVisible}


def dollars(text):
    return D(text.replace(",", "")) if text else D(0)


def added(rows, heading, where=lambda row: True):
    return sum((dollars(row[heading]) for row in rows if where(row)), D(0))


def share(amount, rate):
    return (amount * D(repr(rate))).quantize(CENT, ROUND_HALF_UP)


@pytest.fixture(scope="module")
def job(demo):
    with Office(BUILD / "extension") as office:
        document = office.open(demo / "job.ods")
        document.enableAutomaticCalculation(False)
        yield Shown(document)
        document.close(True)


def of_rule(job, key):
    return next(row["Value"] for row in job.rows("Rules") if row["Key"] == key)


@pytest.mark.parametrize("table, heading", [("Takeoff", "Amount"), ("Additions", "Amount"), ("Order", "Amount"), ("Changes", "Amount"),
                                            ("Payments", "Paid"), ("Invoice lines", "Amount"), ("Invoice payments", "Paid")])
def test_a_tables_total_is_the_sum_of_its_lines(job, table, heading):
    rows, under = job.lines(table)
    assert len(rows) > 1, f"the demo has lines on {table}"
    assert dollars(under[heading]) == added(rows, heading) != 0


def test_takeoff_and_quote(job):
    lines = job.lines("Takeoff")[0] + job.lines("Additions")[0]
    for row in lines:
        if row["Amount"]:
            assert dollars(row["Amount"]) == share(D(row["Order"].replace(",", "")), float(dollars(row["Price"]))), row
    typed, cost, price = (job.labels(form) for form in ("Quote", "Direct cost", "Price"))
    own = {"delivery": ("Delivery", "Delivery, not on Takeoff"), "equipment": ("Equipment", "Equipment hire"),
           "disposal": ("Disposal", "Disposal fees"), "permit": ("Permits", "Permits and fees"), "subcontract": ("Subcontract", "Subcontract")}
    for group, (label, asked) in own.items():
        assert dollars(cost[label]) == added(lines, "Amount", lambda row: row["Group"] == group) + dollars(typed[asked]), label
    assert dollars(cost["Materials"]) == added(lines, "Amount", lambda row: row["Group"] not in own)
    assert dollars(cost["Taxable purchases"]) == added(lines, "Amount", lambda row: row["Taxable"] == "yes")
    assert dollars(cost["Sales tax on purchases"]) == share(dollars(cost["Taxable purchases"]), of_rule(job, "tax.material"))
    assert dollars(cost["Labor"]) == dollars(job.labels("Labor sums")["Labor"])
    assert dollars(cost["Direct cost"]) == sum(dollars(cost[label]) for label in cost if label not in ("Direct cost", "Taxable purchases"))
    direct = dollars(cost["Direct cost"])
    # What the risks ask: the sum of what is expected of each, as shown, over direct cost.
    risks, under = job.lines("Risks")
    assert dollars(under["Expected"]) == added(risks, "Expected") > direct
    assert dollars(price["Contingency"]) == added(risks, "Expected") - direct
    assert added(risks, "Likely", lambda row: row["Chance"] == "100%") == direct, "the parts are the whole direct cost"
    # The year's own figures of the demo: 96,000 over 412,000.
    assert dollars(price["Overhead"]) == share(direct, 96000 / 412000)
    assert dollars(price["Profit"]) == share(direct + dollars(price["Overhead"]), of_rule(job, "profit"))
    assert dollars(price["Price before tax"]) == direct + sum(dollars(price[label]) for label in ("Contingency", "Overhead", "Profit"))
    assert dollars(price["Price"]) == dollars(price["Price before tax"]) + dollars(price["Contract tax"]) > 0


def test_order(job):
    rows, head = job.lines("Order")[0], job.labels("Order head")
    assert dollars(head["Goods and charges"]) == added(rows, "Amount")
    assert dollars(head["Sales tax"]) == share(added(rows, "Amount", lambda row: row["Taxable"] == "yes"), of_rule(job, "tax.material"))
    assert dollars(head["Order in all"]) == dollars(head["Goods and charges"]) + dollars(head["Sales tax"]) > 0


def test_account(job):
    changes, sums = job.lines("Changes")[0], job.labels("Account sums")
    signed = added(changes, "Amount", lambda row: row["Signed"] == "yes")
    assert dollars(sums["Agreed"]) == dollars(job.labels("Account")["Agreed price"])
    assert dollars(sums["Changes signed"]) == signed
    assert dollars(sums["Changes not signed yet"]) == added(changes, "Amount") - signed
    assert dollars(sums["Contract in all"]) == dollars(sums["Agreed"]) + signed
    assert dollars(sums["Paid so far"]) == added(job.lines("Payments")[0], "Paid")
    assert dollars(sums["Due now"]) == dollars(sums["Contract in all"]) - dollars(sums["Paid so far"])


def test_bills(job):
    bills, invoices = job.lines("Bills")[0], job.lines("Invoices")[0]
    verdict, causes = job.labels("Bill verdict"), job.labels("Bill causes")
    lines = {row["Invoice"]: dollars(row["Lines"]) for row in invoices}
    of_lines = {number: D(0) for number in lines}
    for row in bills:
        of_lines[row["Invoice"]] += dollars(row["Amount"]) if row["Amount"] else share(D(row["Quantity"].replace(",", "")), float(dollars(row["Price"])))
    assert of_lines == lines
    for row in invoices:
        assert dollars(row["Total off"]) == (dollars(row["Total"]) - dollars(row["Lines"]) - dollars(row["Tax"]) if row["Total"] else 0)
    billed = sum(lines.values()) + added(invoices, "Tax") + added(invoices, "Total off")
    assert dollars(verdict["Billed"]) == billed > 0
    assert dollars(verdict["Difference"]) == billed - dollars(verdict["Should have been billed"])
    assert dollars(verdict["Pay"]) == billed - dollars(verdict["Hold"])
    parts = [label for label in causes if label not in ("All causes", "Tax held")]
    assert dollars(causes["All causes"]) == sum(dollars(causes[label]) for label in parts) == dollars(verdict["Difference"])
    from_lines = ("Price", "Quantity", "Not delivered", "Credit not given", "Arithmetic", "Unit mix-up", "Billed twice", "Not ordered",
                  "Surcharge", "Substitution", "Unclear")
    assert added(bills, "Difference") == sum(dollars(causes[label]) for label in from_lines)


@pytest.mark.parametrize("seed", range(3))
def test_close_out(job, seed):
    """The demo's estimate, closed with costs made up here: thirds of cents everywhere in the unit prices."""
    dice = random.Random(seed)
    groups = {"materials": "Materials", "tax": "Sales tax on purchases", "delivery": "Delivery", "labor": "Labor", "equipment": "Equipment",
              "disposal": "Disposal", "permits": "Permits", "subcontract": "Subcontract"}
    cost = job.labels("Direct cost")
    estimate = [{"What": row["Item"], "Group": "materials", "Estimated quantity": float(row["Order"].replace(",", "")), "Estimated amount": float(dollars(row["Amount"]))}
                for row in job.lines("Takeoff")[0] + job.lines("Additions")[0]
                if row["Amount"] and row["Group"] not in ("delivery", "equipment", "disposal", "permit", "subcontract")]
    estimate += [{"What": label, "Group": group, "Estimated quantity": "", "Estimated amount": float(dollars(cost[label]))}
                 for group, label in groups.items() if group != "materials"]
    for row in estimate:
        actual = round(row["Estimated amount"] * dice.uniform(0.7, 1.4), 2)
        quantity = row["Estimated quantity"] and max(1, row["Estimated quantity"] + dice.randint(-2, 3))
        row.update({"Actual amount": actual if dice.random() > 0.1 else "", "Actual quantity": quantity, "Cause": "price"})
    job.fill("Close-out", estimate)
    job.calculate()
    rows, under = job.lines("Close-out")
    assert len(rows) == len(estimate)
    closed = [row for row in rows if row["Actual amount"]]
    for row in closed:
        assert dollars(row["Difference"]) == dollars(row["Actual amount"]) - dollars(row["Estimated amount"]), row
        assert dollars(row["Difference"]) == dollars(row["By price"]) + dollars(row["By quantity"]), row
    for heading in ("Estimated amount", "Actual amount", "Difference", "By price", "By quantity"):
        assert dollars(under[heading]) == added(rows, heading), heading
    told, all_told = job.lines("Close-out groups")
    pairs = {"Estimate": "Estimated amount", "Actual": "Actual amount", "Off": "Difference", "Off by price": "By price", "Off by quantity": "By quantity"}
    for group in told:
        for heading, source in pairs.items():
            assert dollars(group[heading]) == added(rows, source, lambda row: row["Group"] == group["Group"]), (group, heading)
    for heading, source in pairs.items():
        assert dollars(all_told[heading]) == added(rows, source), heading
    # The estimate copied line by line is the direct cost that Quote shows.
    assert dollars(under["Estimated amount"]) == dollars(cost["Direct cost"])
    sums = job.labels("Close-out sums")
    assert dollars(sums["Actual cost"]) == added(rows, "Actual amount")
    assert len(closed) == len(rows) or sums["Left for overhead and profit"] == ""  # no profit before every cost is in
    for row in estimate:
        row["Actual amount"] = row["Actual amount"] or 1 / 3
    job.fill("Close-out", estimate)
    job.calculate()
    sums = job.labels("Close-out sums")
    assert dollars(sums["Left for overhead and profit"]) == dollars(sums["Contract in all"]) - dollars(sums["Actual cost"])
