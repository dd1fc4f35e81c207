"""Suppliers side by side, bills with their own item numbers, tickets by the other unit. Prices and suppliers are invented."""

import shutil

import pytest

from calls import DEMO, done, jobbook, rows
from money_book import book, edited, stored


def offers():
    """Every goods row of the demo's prices from its own supplier, a tenth cheaper pipe and rock elsewhere."""
    own = [row for row in rows(DEMO / "prices.csv") if row["Supplier"]]
    made = [(row, row["Supplier"], float(row["Price"]), "A-" + row["Code"]) for row in own]
    made += [(row, "Otter Supply (invented)", round(0.9 * float(row["Price"]), 2), f"77{n}")
             for n, row in enumerate(own) if row["Group"] in ("pipe", "rock")]
    return own, made


@pytest.fixture(scope="module")
def market(tmp_path_factory):
    own, made = offers()
    file = tmp_path_factory.mktemp("market") / "book.ods"

    def fill(sheet):
        sheet.fill("Prices", [{"Code": row["Code"], "Item": row["Item"], "Group": row["Group"], "Unit": row["Unit"],
                               "Pack": float(row["Pack"]) if row["Pack"] else "", "Price": float(row["Price"]), "Supplier": row["Supplier"],
                               "Priced on": 46336, "Taxable": row["Taxable"]} for row in own])
        names = sorted({supplier for _, supplier, _, _ in made})
        sheet.fill("Suppliers", [{"Supplier": name, "Delivery": 400 if name.startswith("Otter") else 95} for name in names])
        sheet.fill("Offers", [{"Code": row["Code"], "Supplier": supplier, "Their number": number, "Unit": row["Unit"],
                               "Pack": float(row["Pack"]) if row["Pack"] else "", "Price": price, "Priced on": 46336}
                              for row, supplier, price, number in made])

    stored("price-book", file, fill)
    return file


def cheapest(job_values, most=99, delivery=400):
    """By hand: the cheaper supplier's pipe and rock, or none of it, as his delivery pays."""
    own, made = offers()
    needs = {}
    for name in ("takeoff", "additions"):
        for row in rows(job_values / f"{name}.csv"):
            if row["Order"]:
                needs[row["Code"]] = needs.get(row["Code"], 0) + float(row["Order"])
    goods = [row for row in own if row["Code"] in needs and row["Group"] not in ("delivery", "equipment", "disposal", "permit", "subcontract")]
    without = sum(round(needs[row["Code"]] * float(row["Price"]), 2) for row in goods)
    saved = sum(round(needs[row["Code"]] * float(row["Price"]), 2) - round(needs[row["Code"]] * round(0.9 * float(row["Price"]), 2), 2)
                for row in goods if row["Group"] in ("pipe", "rock"))
    homes = {row["Supplier"] for row in goods}
    return without + 95 * len(homes) - max(0, saved - delivery), saved


def test_the_cheapest_way_counts_deliveries(demo, market, tmp_path):
    job = shutil.copy(demo / "job.ods", tmp_path / "job.ods")
    cost, saved = cheapest(demo / "values")
    assert 100 < saved < 400, "his delivery of 400 does not pay"
    said = done("buy", job, market)
    assert f"cheapest: ${cost:,.2f} from " in said and "Otter" not in said.split("cheapest:")[1].split("\n")[0], said
    assert "Nothing was changed" in said
    # From an amount on that his pipe and rock come to he delivers free, and pays again; a cent over it he does not.
    with edited(market) as changed:
        changed.fill("Suppliers", [{"Supplier": row["Supplier"], "Free from": 500 if row["Supplier"].startswith("Otter") else ""}
                                   for row in changed.rows("Suppliers") if row["Supplier"]])
    free, _ = cheapest(demo / "values", delivery=0)
    said = done("buy", job, market)
    assert f"cheapest: ${free:,.2f} from " in said and "Otter Supply (invented) (delivers free)" in said, said
    alone = float(said.split("Otter Supply (invented) alone: $")[1].split(",  without")[0].split(", without")[0].replace(",", ""))
    with edited(market) as changed:
        changed.fill("Suppliers", [{"Supplier": row["Supplier"], "Free from": round(alone + 0.01, 2) if row["Supplier"].startswith("Otter") else ""}
                                   for row in changed.rows("Suppliers") if row["Supplier"]])
    assert f"cheapest: ${cost:,.2f} from " in done("buy", job, market)
    with edited(market) as changed:
        changed.fill("Suppliers", [{"Supplier": row["Supplier"], "Free from": "500 up" if row["Supplier"].startswith("Otter") else ""}
                                   for row in changed.rows("Suppliers") if row["Supplier"]])
    ran = jobbook("buy", job, market)
    assert ran.returncode == 2 and "Suppliers, Otter Supply (invented): NO: not a number" in ran.stderr, ran.stderr
    with edited(market) as changed:
        suppliers = [row for row in changed.rows("Suppliers") if row["Supplier"]]
        changed.fill("Suppliers", [{"Supplier": row["Supplier"], "Free from": "", "Delivery": 50 if row["Supplier"].startswith("Otter") else row["Delivery"]}
                                   for row in suppliers])
    cost, saved = cheapest(demo / "values", delivery=50)
    said = done("buy", job, market, "--take")
    assert f"cheapest: ${cost:,.2f} from " in said and "Otter" in said.split("cheapest:")[1].split("\n")[0], said
    done("values", job, tmp_path / "values")
    prices = {row["Code"]: row for row in rows(tmp_path / "values/prices.csv")}
    assert prices["PIPE-6SDR35"]["Price"] == "41.58" and prices["PIPE-6SDR35"]["Supplier"].startswith("Otter")
    assert prices["PIPE-6SDR35"]["Last"] == "46.2" and prices["PIPE-6SDR35"]["Their number"].startswith("77")
    assert prices["CEMENT"]["Supplier"].startswith("Millrace") and prices["CEMENT"]["Their number"] == "A-CEMENT"

    # The order of one supplier alone, with his numbers.
    said = done("order", job, "--number", "PO-9", "--only", prices["PIPE-6SDR35"]["Supplier"], "--replace")
    done("values", job, tmp_path / "order")
    lines = rows(tmp_path / "order/order.csv")
    assert {row["Supplier"] for row in lines} == {"Otter Supply (invented)"} and "PO-9" in said
    assert {row["Code"]: row["Their number"] for row in lines}["PIPE-6SDR35"] == prices["PIPE-6SDR35"]["Their number"]
    rock = next(row for row in lines if row["Code"] == "ROCK")
    assert rock["Tons a yard"] == "1.4", "rock.density of Rules"
    ran = jobbook("order", job, "--number", "PO-9", "--only", "Nobody", "--replace")
    assert ran.returncode == 2 and "Prices has nothing of this order from Nobody" in ran.stderr


def test_two_units_for_one_code_are_refused(demo, market, tmp_path):
    bad = shutil.copy(market, tmp_path / "bad.ods")
    with edited(bad) as changed:
        lines = [row for row in changed.rows("Offers") if row["Code"]]
        rock = next(row for row in lines if row["Code"] == "ROCK")
        rock["Unit"] = "cu yd"
        changed.fill("Offers", [{"Unit": row["Unit"]} for row in lines])
        changed.calculate()
        check = next(row for row in changed.rows("Offers") if row["Code"] == "ROCK" and row["Unit"] == "cu yd")["Check"]
        assert check == "NO: two units for one code: on Prices it is ton"
        assert next(row for row in changed.rows("Offers") if row["Code"] == "APRON")["Check"].startswith(("OK", "CHECK"))
    ran = jobbook("buy", shutil.copy(demo / "job.ods", tmp_path / "job.ods"), bad)
    assert ran.returncode == 2 and "Offers, ROCK of Stonebrook Yard (invented): NO: two units for one code" in ran.stderr


def test_bills_are_matched_by_the_suppliers_number_and_tickets_by_density():
    with book("job") as job:
        job.rule("tax.material", 0.0725)
        order = {"Quantity": 5, "Unit": "cu yd", "Price": 60.20, "Taxable": "yes", "Sort": "goods"}
        job.fill("Order", [order | {"Code": "ROCK", "Their number": "SB-12", "Tons a yard": 1.4},
                           order | {"Code": "PIPE", "Unit": "stick", "Price": 10, "Quantity": 3, "Their number": "4417"}])
        job.fill("Tickets", [{"Ticket": "W-1", "Code": "SB-12", "Quantity": 7, "Unit": "ton"}, {"Ticket": "W-2", "Code": "PIPE", "Quantity": 3}])
        job.fill("Invoices", [{"Invoice": "A", "Tax": 24.00}])
        job.fill("Bills", [{"Invoice": "A", "Code": "SB-12", "Quantity": 5, "Unit": "cu yd", "Price": 60.20},
                           {"Invoice": "A", "Code": "4417", "Quantity": 3, "Unit": "stick", "Price": 10}])
        job.calculate()
        assert [row["Check"] for row in job.rows("Tickets")[:2]] == ["OK: 5.00 cu yd as ordered", "OK"]
        assert [row["Check"] for row in job.rows("Bills")[:2]] == ["OK", "OK"]
        # 5 x 60.20 + 3 x 10 = 331.00; tax 23.9975, so 24.00.
        assert job.fields("Bill verdict")["Verdict"] == "OK: pay 355.00"
        # A yard more than the seven tons are: the quantity is held, with the tax on it to the cent.
        job.fill("Bills", [{"Invoice": "A", "Code": "SB-12", "Quantity": 6, "Unit": "cu yd", "Price": 60.20},
                           {"Invoice": "A", "Code": "4417", "Quantity": 3, "Unit": "stick", "Price": 10}])
        job.fill("Invoices", [{"Invoice": "A", "Tax": 28.36}])
        job.calculate()
        assert job.fields("Bill verdict")["Verdict"] == "NO: hold 64.56, pay 355.00", "60.20 and 4.36 tax"
        # Nothing typed is skipped: a bulk line without a code, an amount as text.
        job.fill("Tickets", [{"Ticket": "W-1", "Code": "", "Item": "rock", "Quantity": 7, "Unit": "ton"}, {"Ticket": "W-2", "Code": "PIPE", "Quantity": 3}])
        job.fill("Bills", [{"Invoice": "A", "Code": "", "Item": "rock", "Quantity": 5, "Unit": "cu yd", "Price": 60.20, "Amount": "$301.00"},
                           {"Invoice": "A", "Code": "", "Item": "rock", "Quantity": 5, "Unit": "cu yd", "Price": 60.20, "Amount": ""}])
        job.calculate()
        assert job.rows("Tickets")[0]["Check"] == "NO: no code"
        assert [row["Check"] for row in job.rows("Bills")[:2]] == ["NO: the amount is not a number: $301.00", "NO: no code: which line of the order is it?"]
        assert job.fields("Bill verdict")["Verdict"].startswith("NO: hold everything")


def test_a_pasted_list_without_headings_is_refused(tmp_path):
    notes = shutil.copytree(DEMO, tmp_path / "notes")
    (notes / "bills.csv").write_text("M-2041,CEMENT,PVC cement,12,pint,12.60,151.20\n", encoding="utf-8")
    ran = jobbook("make", notes, tmp_path / "job.ods")
    assert ran.returncode == 2 and "bills.csv" in ran.stderr and "M-2041" in ran.stderr, ran.stderr
    assert not (tmp_path / "job.ods").exists()
