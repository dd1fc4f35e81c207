"""Prices, additions, hours, quote and account against published examples, and with bad input."""

from contextlib import contextmanager
import random
from decimal import ROUND_HALF_UP, Decimal as D

import pytest

from calls import BUILD
from money_book import book
from published import published, value

MONEY = published("20f_estimating_money")
DAY = 46350  # a quote's date, as the office counts days


@pytest.fixture(scope="module")
def job():
    with book(extensions=BUILD / "extension") as made:
        yield made


@pytest.fixture(autouse=True)
def fresh(job):
    """Nothing but what a test puts in: no labor cost, no markups, no tax."""
    job.set("Labor terms", "Wage", 0)
    for key in ["contingency", "overhead", "profit", "tax.material", "tax.contract"]:
        job.rule(key, 0)
    job.set("Quote", "Subcontract", 0)
    job.set("Quote", "Gross margin wanted", "")
    job.set("Quote", "Deposit asked", "")
    job.set("Quote", "Contract tax is on", "the whole price")
    job.set("Quote", "Contingency is", "the share on Rules")
    job.set("Job", "Quote date", DAY)
    job.fill("Prices", [price("A")])
    job.fill("Additions", [{"Code": "", "Quantity": "", "Why": ""}])


def price(code, **changes):
    return {"Code": code, "Item": f"thing {code}", "Group": "other", "Unit": "piece", "Pack": 1, "Waste": 0, "Price": 10,
            "Supplier": "s", "Priced on": DAY - 5, "Taxable": "yes", **changes}


def buy(job, *prices):
    job.fill("Prices", list(prices))
    job.fill("Additions", [{"Code": row["Code"], "Quantity": 1, "Why": "test"} for row in prices])
    job.calculate()


def test_markup_and_margin(job):
    job.set("Quote", "Subcontract", 200000)
    job.rule("profit", 0.25)
    job.calculate()
    assert job.value("price_total") == pytest.approx(*[value(MONEY["001"])[0]], abs=0.005)
    assert 100 * job.value("margin") == pytest.approx(value(MONEY["002"])[0], abs=1e-9)
    assert 100 * job.value("markup") == pytest.approx(25, abs=1e-9)


@pytest.mark.parametrize("row", ["004", "005", "006", "007", "008", "009", "010", "011"])
def test_markup_that_a_margin_needs(job, row):
    margin = float(MONEY[row]["inputs"].split("=")[1]) / 100
    job.set("Quote", "Subcontract", 200000)
    job.set("Quote", "Gross margin wanted", margin)
    job.calculate()
    markup, tolerance = value(MONEY[row])
    assert 100 * job.value("markup_wanted") == pytest.approx(markup, abs=max(tolerance, 2e-4 if row == "009" else 0))
    assert job.value("price_wanted") == pytest.approx(200000 / (1 - margin), abs=0.005)


def test_factor_that_recovers_a_share_of_the_price(job):
    job.set("Quote", "Subcontract", 1000)
    job.set("Quote", "Gross margin wanted", 0.10 + 0.10)
    job.calculate()
    factor, tolerance = value(MONEY["003"])
    assert job.value("price_wanted") / 1000 == pytest.approx(factor, abs=tolerance)


@pytest.mark.parametrize("row, cost, rate", [("042", 150, 0.06), ("047", 1000, 0.0825), ("049", 1000, 0.0725)])
def test_tax_that_the_contractor_pays(job, row, cost, rate):
    job.rule("tax.material", rate)
    buy(job, price("A", Price=cost))
    tax, tolerance = value(MONEY[row])
    assert job.value("materials_tax") == pytest.approx(tax, abs=min(tolerance, 0.005))
    assert job.value("direct_cost") == pytest.approx(cost + tax, abs=0.005)
    assert job.value("contract_tax") == 0


@pytest.mark.parametrize("row, rate", [("048", 0.0825), ("050", 0.0725)])
def test_tax_on_marked_up_materials(job, row, rate):
    job.rule("profit", 0.20)
    job.rule("tax.contract", rate)
    job.set("Quote", "Contract tax is on", "marked-up materials")
    buy(job, price("A", Price=1000))
    tax, tolerance = value(MONEY[row])
    assert job.value("contract_tax") == pytest.approx(tax, abs=tolerance)
    assert job.value("price_total") == pytest.approx(1200 + tax, abs=0.005)


def test_burdened_hour_of_a_textbook(job):
    job.set("Burden sums", "Wages a year", value(MONEY["020"])[0])
    job.set("Burden sums", "Hours worked a year", value(MONEY["029"])[0])
    parts = [("Social security", "", 0.062, "021"), ("Medicare", "", 0.0145, "022"), ("Federal unemployment", 7000, 0.008, "023"),
             ("State unemployment", 18000, 0.045, "024"), ("Workers' compensation", "", 0.0725, "025"), ("Liability", "", 0.0075, "026")]
    job.fill("Burden", [{"Part": part, "Base": base, "Share": share, "Fixed amount": ""} for part, base, share, _ in parts] +
             [{"Part": "Health", "Base": "", "Share": "", "Fixed amount": 12 * 300},
              {"Part": "Retirement", "Base": "", "Share": 0.75 * 0.06, "Fixed amount": ""}])
    job.calculate()
    years = [row["A year"] for row in job.rows("Burden")]
    for year, (_, _, _, row) in zip(years, parts):
        printed, tolerance = value(MONEY[row])
        assert year == pytest.approx(printed, abs=tolerance)
    assert years[6] == pytest.approx(value(MONEY["027"])[0], abs=0.5)
    rate, tolerance = value(MONEY["030"])
    assert job.value("burden_rate") == pytest.approx(rate, abs=tolerance)


def test_change_order_at_a_countys_ceilings(job):
    job.fill("Changes", [{"What": "more", "Signed": "yes", "Labor": 1000, "Equipment": 400, "Materials": 600, "Subcontract": 500}])
    job.set("Account", "Agreed price", 10000)
    job.fill("Payments", [{"What": "deposit", "Date": DAY, "Paid": 1000}])
    job.calculate()
    amount, tolerance = value(MONEY["037"])
    assert job.rows("Changes")[0]["Amount"] == pytest.approx(amount, abs=tolerance)
    assert job.value("due_now") == pytest.approx(10000 + amount - 1000, abs=0.005)


@pytest.mark.parametrize("seed", range(4))
def test_totals_are_sums_of_the_cents_shown(job, seed):
    dice = random.Random(seed)
    rows = [price(f"K{n}", Price=dice.randint(1, 99999) / 1000, Pack=dice.choice([1, 3, 10]),
                  Taxable=dice.choice(["yes", "no"])) for n in range(12)]
    job.rule("tax.material", 0.0725)
    for key in ["contingency", "overhead", "profit"]:
        job.rule(key, dice.randint(1, 20) / 100)
    buy(job, *rows)
    amounts = {row["Code"]: D(repr(row["Price"])).quantize(D("0.01"), ROUND_HALF_UP) for row in rows}
    shown = [row for row in job.rows("Additions") if row["Code"]]
    for row in shown:
        assert D(str(round(row["Amount"], 4))) == amounts[row["Code"]], row
    cost = job.fields("Direct cost")
    exact = {label: D(str(round(number, 4))) for label, number in cost.items() if isinstance(number, float)}
    assert exact["Materials"] == sum(amounts.values())
    taxable = sum(amounts[row["Code"]] for row in rows if row["Taxable"] == "yes")
    assert exact["Sales tax on purchases"] == (taxable * D("0.0725")).quantize(D("0.01"), ROUND_HALF_UP)
    assert exact["Direct cost"] == sum(number for label, number in exact.items() if label not in ("Direct cost", "Taxable purchases"))
    parts = {label: D(str(round(number, 4))) for label, number in job.fields("Price").items() if isinstance(number, float)}
    assert parts["Price before tax"] == exact["Direct cost"] + parts["Contingency"] + parts["Overhead"] + parts["Profit"]
    assert parts["Price"] == parts["Price before tax"] + parts["Contract tax"]


@pytest.mark.parametrize("change, says", [
    ({"Price": "12.5O"}, "not a number: 12.5O"), ({"Price": ""}, "price is missing"), ({"Price": -3}, "above 0"),
    ({"Pack": 0}, "Pack is missing"), ({"Pack": -1}, "more than 0"), ({"Pack": "ten"}, "Pack is not a number: ten"), ({"Waste": 5}, "5 % is 0.05"), ({"Unit": ""}, "unit is missing"),
    ({"Priced on": "last week"}, "not a date"), ({"Priced on": ""}, "no date"), ({"Taxable": "perhaps"}, "yes or no"),
    ({"Code": "A*"}, "may not hold"),
])
def test_a_bad_price_is_named_and_its_line_is_not_priced(job, change, says):
    buy(job, {**price("A"), **change}, price("B"))
    row = job.rows("Prices")[0]
    assert row["Check"].startswith("NO") and says in row["Check"], row["Check"]
    line = job.rows("Additions")[0]
    assert line["Check"].startswith("NO") and line["Amount"] == "", line
    assert job.rows("Additions")[1]["Amount"] == 10
    assert job.value("quote_check").startswith("NO"), job.value("quote_check")


def test_two_items_with_one_code(job):
    buy(job, price("A"), price("A", Price=11))
    assert all("another row has this code" in row["Check"] for row in job.rows("Prices")[:2])
    assert job.rows("Additions")[0]["Amount"] == ""


def test_an_old_price_is_told(job):
    buy(job, price("A", **{"Priced on": DAY - 31}), price("B", **{"Priced on": DAY - 30}))
    first, second = job.rows("Prices")[:2]
    assert first["Check"].startswith("CHECK: 31 days old") and second["Check"] == "OK"
    assert job.rows("Additions")[0]["Check"].startswith("CHECK") and job.rows("Additions")[0]["Amount"] == 10


def test_how_old_a_price_may_be_is_a_rule(job):
    prices = [price("A", **{"Priced on": DAY - 31}), price("B", **{"Priced on": DAY - 8})]
    for days, old in ((7, 2), (14, 1), (60, 0)):
        job.rule("price.age.max", days)
        buy(job, *prices)
        assert sum(row["Check"].startswith("CHECK") and f"up to {days} is trusted" in row["Check"] for row in job.rows("Prices")) == old
        assert sum(row["Check"].startswith("CHECK") for row in job.rows("Additions")) == old
    job.rule("price.age.max", 30)


@pytest.mark.parametrize("row, says", [
    ({"Code": "ZZ", "Quantity": 1}, "no price for ZZ"), ({"Code": "A", "Quantity": -2}, "not above 0"),
    ({"Code": "A", "Quantity": "two"}, "not a number: two"), ({"Code": "", "Quantity": 3}, "code is missing"),
])
def test_a_bad_addition_is_named(job, row, says):
    job.fill("Prices", [price("A")])
    job.fill("Additions", [{**row, "Why": "test"}])
    job.calculate()
    line = job.rows("Additions")[0]
    assert line["Check"].startswith("NO") and says in line["Check"] and line["Amount"] == "", line
    assert job.value("quote_check").startswith("NO")


@pytest.mark.parametrize("key", ["tax.material", "tax.contract"])
def test_a_percent_typed_for_a_rate_gives_no_price(job, key):
    job.rule(key, 7.25)
    buy(job, price("A"))
    assert job.value("price_total") == ""
    assert "7.25 % is 0.0725" in job.value("quote_check")


def test_deposit_stays_under_the_cap(job):
    job.set("Quote", "Deposit asked", 501)
    job.set("Labor terms", "Concrete saw-cut", 10)  # a job without hours has no price
    job.set("Labor terms", "Wage", 26)  # nor has one without a wage
    job.rule("deposit.max.share", 0.1)
    job.calculate()
    job.set("Quote", "Subcontract", 5000 - job.value("labor_cost"))
    job.calculate()
    assert job.value("deposit_cap") == 500
    assert job.value("quote_check").startswith("NO: the deposit asked is over the cap"), job.value("quote_check")
    job.set("Quote", "Subcontract", 50000)
    job.calculate()
    assert job.value("deposit_cap") == 1000


def test_packs_are_whole(job):
    buy(job, price("A", Pack=10, Waste=0.05))
    job.fill("Additions", [{"Code": "A", "Quantity": 23, "Why": "catalog's own example"}])
    job.calculate()
    assert job.rows("Additions")[0]["Order"] == 3


@contextmanager
def term_of_labor(job, label, typed):
    job.set("Labor terms", "Wage", 26)
    before = job.fields("Labor terms")[label]
    job.set("Labor terms", label, typed)
    job.calculate()
    try:
        yield
    finally:
        job.set("Labor terms", label, before)
        job.calculate()


@pytest.mark.parametrize("label, typed, says", [
    ("Access factor", "", "the access factor is missing"),
    ("Access factor", 0, "the access factor is not above 0"),
    ("Access factor", "1,2 or so", "the access factor is not a number"),
    ("Access factor", 0.01, "the access factor is not from 0.5 to 5"),
    ("Access factor", 120, "the access factor is not from 0.5 to 5"),
    ("Wage", 0.5, "the wage is below 5 an hour"),
    ("Crew", "", "the crew is missing"),
    ("Crew", "three", "the crew is not a number"),
    ("Crew", 0.5, "the crew is below 1"),
    ("Roots or rock in the ground", "y", "roots or rock is yes or no"),
    ("Wet ground", "Yes ", "wet ground is yes or no"),
    ("Wage", 0, "the wage is not above 0"),
    ("Wage", -26, "the wage is not above 0"),
    ("Hand digging beside crossings", "20 ft", "hand digging beside crossings is not a number"),
    ("Concrete saw-cut", -3, "the concrete saw-cut is below 0"),
])
def test_terms_of_labor_that_cannot_be_used(job, label, typed, says):
    with term_of_labor(job, label, typed):
        assert says in job.value("labor_terms_check") and job.value("labor_terms_check").startswith("NO")
        assert job.value("labor_check").startswith("NO") and job.value("quote_check").startswith("NO")
        assert job.value("proposal_missing") != ""


@pytest.mark.parametrize("label, typed, says", [("Wage", 2600, "the wage is above 200 an hour"), ("Crew", 30, "the crew is above 20")])
def test_terms_of_labor_that_are_asked_about(job, label, typed, says):
    with term_of_labor(job, label, typed):
        assert job.value("labor_terms_check") == f"CHECK: {says}"
        # A line without hours, or no hours at all, comes before it.
        assert job.value("labor_check").startswith("NO") or job.value("labor_check") == f"CHECK: {says}"


@pytest.mark.parametrize("typed, says", [("350 $", "is not a number: type 350"), ("1,200", "is not a number"), ("about 300", "is not a number")])
@pytest.mark.parametrize("label", ["Equipment hire", "Deposit asked"])
def test_money_typed_as_text_is_refused(job, label, typed, says):
    job.set("Quote", label, typed)
    job.calculate()
    try:
        assert job.value("quote_amounts").startswith(f"NO: {label}") and says in job.value("quote_amounts")
        assert job.value("quote_check").startswith("NO") and job.value("proposal_missing") != ""
    finally:
        job.set("Quote", label, "")


def test_a_deposit_below_0_is_refused(job):
    job.set("Quote", "Deposit asked", -50)
    job.calculate()
    assert job.value("quote_amounts") == "NO: the deposit asked is below 0"
    assert job.value("quote_check").startswith("NO") and job.value("proposal_missing") != ""
    clause = next(row["What we agree"] for row in job.rows("Clauses") if row["About"] == "Payment")
    assert "to be set" in clause and "50" not in clause


@pytest.mark.parametrize("share, says", [(25, "25 % is 0.25"), ("", "missing or not a number"), ("half", "missing or not a number")])
def test_a_share_of_sod_that_is_none(job, share, says):
    job.set("Takeoff choices", "New sod", share)
    job.calculate()
    assert job.value("takeoff_check").startswith("NO") and says in job.value("takeoff_check")
    assert says in job.value("quote_check") and says in job.value("proposal_missing")
    job.set("Takeoff choices", "New sod", 0.25)


def test_a_word_that_is_neither_yes_nor_no_buys_nothing_in_silence(job):
    job.set("Takeoff choices", "Buy cleanouts asked", "y")
    job.calculate()
    try:
        assert job.value("takeoff_check") == "NO: buying the cleanouts asked is yes or no"
        assert job.value("quote_check").startswith("NO")
    finally:
        job.set("Takeoff choices", "Buy cleanouts asked", "no")


def test_contract_tax_is_on_one_of_two_things(job):
    job.set("Quote", "Contract tax is on", "materials")
    job.calculate()
    assert job.value("quote_amounts").startswith("NO: contract tax is on")
    assert job.value("quote_check").startswith("NO")


@pytest.mark.parametrize("days, says", [(-1, "issued before the quote's date"), (0, ""), (30, ""), (31, "issued after the quoted price held"),
                                        (800, "issued after the quoted price held")])
def test_an_order_of_another_year_is_told(job, days, says):
    """30 days is the usual quote.days of Rules."""
    job.fill("Order", [{"Code": "A", "Item": "thing A", "Quantity": 1, "Unit": "piece", "Price": 10, "Taxable": "no", "Sort": "goods"}])
    for label, typed in [("Order", "PO-1"), ("Supplier", "s"), ("Issued on", DAY + days)]:
        job.set("Order head", label, typed)
    job.calculate()
    try:
        assert (says in job.value("order_check")) if says else "issued" not in job.value("order_check").replace("as issued", "")
        assert not job.value("order_check").startswith("NO"), job.value("order_check")
    finally:
        job.fill("Order", [{"Code": "", "Item": "", "Quantity": "", "Unit": "", "Price": "", "Taxable": "", "Sort": ""}])
        for label in ["Order", "Supplier", "Issued on"]:
            job.set("Order head", label, "")


@pytest.mark.parametrize("days, says", [(-1, "agreed before the quote's date"), (30, ""), (31, "agreed when the price no longer held")])
def test_a_price_agreed_when_it_no_longer_held_is_told(job, days, says):
    job.set("Account", "Agreed price", 100)
    job.set("Account", "Agreed on", DAY + days)
    job.calculate()
    try:
        assert (says in job.value("account_check")) if says else "agreed" not in job.value("account_check").split(";")[0]
    finally:
        job.set("Account", "Agreed price", "")
        job.set("Account", "Agreed on", "")


def test_sold_loose_by_weight_is_ordered_to_the_tenth(job):
    """4.41 t at 40 a ton with no waste: 4.5 t for 180; in whole tons it would be 5 t for 200."""
    for pack, packs, amount in [("", 4.5, 180), (0, 4.5, 180), (1, 5, 200)]:
        job.fill("Prices", [price("ROCK", Unit="ton", Group="rock", Pack=pack, Price=40)])
        job.fill("Additions", [{"Code": "ROCK", "Quantity": 4.41, "Why": "test"}])
        job.calculate()
        row = job.rows("Additions")[0]
        assert (row["Order"], row["Amount"]) == pytest.approx((packs, amount), abs=1e-9), pack
        assert row["Check"] == "OK"
    buy(job, price("P", Pack=""))
    assert job.rows("Prices")[0]["Check"] == "NO: Pack is missing; only tons and yards go without"


def test_the_states_limit_holds_for_the_offer_too(job):
    """California, a tenth or 1,000, the lesser (Business and Professions Code 7159): of the price offered before anything is signed."""
    job.set("Account", "Agreed price", "")
    job.fill("Changes", [{"What": "", "Signed": "", "Labor": "", "Equipment": "", "Materials": "", "Subcontract": ""}])
    job.set("Labor terms", "Concrete saw-cut", 10)
    job.set("Labor terms", "Wage", 26)
    job.rule("deposit.max.share", 0.5)
    job.rule("deposit.max.amount", 100000)
    job.calculate()
    job.set("Quote", "Subcontract", 6000 - job.value("labor_cost"))
    job.set("Dates", "State", "CA")
    step = {"Step": "", "Share": "", "Fixed": ""}
    job.fill("Steps", [step | {"Step": "Deposit", "Share": 0.1}, step | {"Step": "end"}])
    job.calculate()
    assert job.value("price_total") == pytest.approx(6000)
    assert job.value("law_deposit") == 600 and job.value("deposit_cap") == 600 and job.value("deposit") == 600
    assert job.value("said_steps") == "Deposit: 600.00; end: 5,400.00"
    job.set("Account", "Agreed price", 5000)
    job.calculate()
    assert job.value("law_deposit") == 500 and job.value("said_steps") == "", "steps of a contract that is not the price offered"
    job.set("Account", "Agreed price", "")
    job.fill("Steps", [step | {"Step": "Deposit", "Share": 0.2}, step | {"Step": "end"}])
    job.calculate()
    assert job.rows("Steps")[0]["Check"].startswith("NO: over the state's largest deposit of 600.00")
    assert "a step of payment cannot stand like this" in job.value("proposal_missing") and job.value("said_steps") == ""
    job.set("Dates", "State", "")
    job.calculate()
    assert job.value("deposit_cap") == 3000, "where nothing of the state was read the rules alone"


def test_a_job_without_hours_and_a_negative_margin_have_no_quiet_price(job):
    """The sentences for what would make a price look right that is none: totals go or say so, they never change quietly."""
    job.set("Labor terms", "Wage", 26)
    job.set("Labor terms", "Concrete saw-cut", 0)
    job.set("Quote", "Subcontract", 1000)
    job.calculate()
    assert job.fields("Labor sums")["Ready?"] == "NO: no hours"
    assert job.value("quote_check") == "NO: the price is short: Labor: no hours"
    job.set("Labor terms", "Concrete saw-cut", 10)
    job.calculate()
    assert not job.value("quote_check").startswith("NO: the price is short"), job.value("quote_check")
    sold = job.value("price_total")
    job.rule("profit", -0.1)
    job.calculate()
    assert job.value("quote_check") == "NO: a negative margin: the profit on Rules is below 0"
    assert job.value("margin") < 0 and job.value("price_total") < sold, "shown as it is, and refused"
    assert "a negative margin" in job.value("proposal_missing")
    job.set("Quote", "Gross margin wanted", -0.2)
    job.calculate()
    assert job.value("quote_check").startswith("NO: the gross margin wanted is a share from 0 to 0.95")
