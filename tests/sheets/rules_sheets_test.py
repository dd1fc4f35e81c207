"""Rules that only formulas of the sheets read: moved on a filled job, each changes something that people see.

The engine's rules are moved in tests/engine/rules_felt_test.cpp, whose list of the sheets' keys is read here."""

import re

import pytest

from calls import BUILD, CHECKOUT
from money_book import Book
from office import Office

# What the demo lot feels: a value on either side of what it measures or asks.
MOVED = {
    "levels.close": (0.001, 0.02),
    "levels.close.max": (0.002, 0.05),
    "soil.safety": (2, 3),
    "soil.presoak.min": (1, 60),
    "soil.agree.share": (0, 1),
    "soil.agree.drop": (0, 5),
    "spare.fittings": (0, 0.5),
    "price.age.max": (1, 700),
    "labor.burden": (0.2, 0.4),
    "labor.day": (6, 10),
    "labor.soil.clay": (1.2, 1.8),
    "labor.soil.roots": (1.5, 3),
    "labor.soil.wet": (1.1, 1.5),
    "contingency": (0.03, 0.08),
    "overhead": (0.1, 0.2),
    "profit": (0.1, 0.2),
    "tax.material": (0.05, 0.07),
    "tax.contract": (0.01, 0.05),
    "deposit.max.share": (0.01, 0.05),
    "deposit.max.amount": (500, 900),
    "quote.days": (15, 45),
    "cancel.days": (3, 5),
    "retain.callback": (180, 730),
    "bill.price.share": (0, 0.5),
    "bill.price.amount": (0, 100),
    "bill.quantity.bulk": (0, 0.5),
    "bill.tax.amount": (0, 100),
    **{f"waste.{group}": (0.05, 0.6) for group in ("pipe", "rock", "sand", "fabric", "concrete", "sod", "soil", "glue")},
}
# Both must be exceeded before readings do not agree: the other one is put out of the way.
WITH = {"soil.agree.share": {"soil.agree.drop": 0}, "soil.agree.drop": {"soil.agree.share": 0},
        "levels.close.max": {"levels.close": 0.001},
        "bill.price.share": {"bill.price.amount": 0}, "bill.price.amount": {"bill.price.share": 0}}


def keys_of_sheets():
    text = (CHECKOUT / "tests/engine/rules_felt_test.cpp").read_text(encoding="utf-8")
    table = text[text.index("ofSheets()") : text.index("return keys;")]
    return re.findall(r'\{"([a-z.]+)", *"[A-Z][a-z]+"\}', table)


@pytest.fixture(scope="module")
def job(demo):
    with Office(BUILD / "extension") as office:
        made = Book(office.open(demo / "job.ods"))
        # Heavy, wet ground with roots.
        made.set("Job", "Soil", "clay")
        made.set("Labor terms", "Roots or rock in the ground", "yes")
        made.set("Labor terms", "Wet ground", "yes")
        # Contingency and overhead by the shares on Rules, not by the risks and the year's own figures.
        made.set("Quote", "Contingency is", "the share on Rules")
        made.set("Quote", "Overhead of the year", "")
        made.set("Quote", "Direct cost of the year", "")
        yield made
        made.document.close(True)


def seen(document):
    """All that stands on the sheets but Rules itself."""
    cells = []
    for name in document.Sheets.ElementNames:
        if name == "Rules":
            continue
        sheet = document.Sheets.getByName(name)
        cursor = sheet.createCursor()
        cursor.gotoEndOfUsedArea(False)
        last = cursor.RangeAddress
        cells.append(sheet.getCellRangeByPosition(0, 0, last.EndColumn, last.EndRow).getDataArray())
    return cells


def test_the_list_is_whole():
    assert sorted(MOVED) == sorted(keys_of_sheets())


@pytest.mark.parametrize("key", sorted(MOVED))
def test_moves_something(job, key):
    if key == "waste.soil":
        buy_soil(job)
    before = dict((row["Key"], row["Value"]) for row in job.rows("Rules"))
    for other, value in WITH.get(key, {}).items():
        job.rule(other, value)
    pictures = []
    for value in MOVED[key]:
        job.rule(key, value)
        pictures.append(seen(job.document))
    for other in [key, *WITH.get(key, {})]:
        job.rule(other, before[other])
    assert pictures[0] != pictures[1], f"{key}: nothing differs between {MOVED[key][0]} and {MOVED[key][1]}"


def buy_soil(job):
    prices = job.document.NamedRanges.getByName("table_Prices").getReferredCells()
    rows = prices.getDataArray()
    headings = list(rows[0])
    free = next(place for place in range(3, len(rows)) if rows[place][0] == "")
    for heading, value in {"Code": "TOPSOIL", "Item": "screened topsoil", "Group": "soil", "Unit": "cu yd", "Pack": 1, "Price": 40,
                           "Supplier": "s", "Priced on": 46340, "Taxable": "yes"}.items():
        job._put(prices.getCellByPosition(headings.index(heading), free), value)
    additions = job.document.NamedRanges.getByName("table_Additions").getReferredCells()
    rows = additions.getDataArray()
    headings = list(rows[0])
    free = next(place for place in range(3, len(rows)) if rows[place][headings.index("Code")] == "")
    job._put(additions.getCellByPosition(headings.index("Code"), free), "TOPSOIL")
    job._put(additions.getCellByPosition(headings.index("Quantity"), free), 4)
