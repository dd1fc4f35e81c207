"""jobbook order: today's takeoff as an order that stays, whatever the job does afterwards."""

import shutil
from decimal import ROUND_HALF_UP, Decimal as D

import pytest

from calls import DEMO, done, fields, jobbook, rows
from money_book import edited

TYPED = ["Code", "Item", "Quantity", "Unit", "Price", "Taxable", "Sort"]
LATER = ("order", "order-head", "bills", "tickets", "invoices", "account", "changes", "payments")  # what comes after the quote


@pytest.fixture(scope="module")
def quoted(tmp_path_factory):
    """The demo job on the day of the quote: nothing is ordered yet."""
    folder = tmp_path_factory.mktemp("order")
    notes = folder / "notes"
    shutil.copytree(DEMO, notes)
    for name in LATER:
        (notes / f"{name}.csv").unlink(missing_ok=True)
    done("make", notes, folder / "job.ods")
    return folder / "job.ods"


@pytest.fixture
def job(quoted, tmp_path):
    return shutil.copy(quoted, tmp_path / "job.ods")


@pytest.fixture(scope="module")
def issued(quoted, tmp_path_factory):
    path = shutil.copy(quoted, tmp_path_factory.mktemp("issued") / "job.ods")
    path.with_suffix(".txt").write_text(done("order", path, "--number", "PO-118", "--date", "2026-11-27", "--deliver", "2026-12-03",
                                             "--place", "on the apron"))
    return path


def lines(path, tmp_path):
    done("values", path, tmp_path / "values")
    return {row["Code"]: row for row in rows(tmp_path / "values/order.csv")}


def same(one, other):
    try:
        return float(one) == float(other)
    except ValueError:
        return one == other


def test_the_order_is_what_a_buyer_wrote_by_hand(issued, tmp_path):
    """The demo's own order was typed line by line from its drawing and price list."""
    ordered, typed = lines(issued, tmp_path), {row["Code"]: row for row in rows(DEMO / "order.csv")}
    assert set(ordered) == set(typed)
    for code, row in typed.items():
        assert all(same(row[heading], ordered[code][heading]) for heading in TYPED), (row, ordered[code])
    head = fields(tmp_path / "values/order-head.csv")
    assert [head[label] for label in ("Order", "Issued on", "Deliver on", "Deliver to", "Ready?")] == \
           ["PO-118", "2026-11-27", "2026-12-03", "on the apron", "OK"]
    assert "Millrace Supply (invented)" in head["Supplier"] and "Stonebrook Yard (invented)" in head["Supplier"]
    assert "Lark Street Rental" not in head["Supplier"], "hire is on no order"
    amounts = {code: (D(row["Quantity"]) * D(row["Price"])).quantize(D("0.01"), ROUND_HALF_UP) for code, row in typed.items()}
    tax = sum(amounts[code] for code, row in typed.items() if row["Taxable"] == "yes") * D("0.0725")
    total = sum(amounts.values()) + tax.quantize(D("0.01"), ROUND_HALF_UP)
    assert D(head["Order in all"]).quantize(D("0.01")) == total
    assert f"{len(typed)} lines, ${total:,} with tax" in issued.with_suffix(".txt").read_text()


def test_it_does_not_move_when_runs_and_prices_do(issued, tmp_path):
    path = shutil.copy(issued, tmp_path / "job.ods")
    before = lines(path, tmp_path)
    with edited(path) as book:
        runs, prices = book.rows("Runs"), book.rows("Prices")
        book.fill("Runs", [{"Length": 60.0 if row["From"] == "S1" else row["Length"]} for row in runs if row["From"]])
        book.fill("Prices", [{"Price": 2 * row["Price"]} for row in prices if row["Code"]])
    after = lines(path, tmp_path)
    for code, row in before.items():
        assert all(row[heading] == after[code][heading] for heading in TYPED + ["Amount"]), code
    pipe = after["PIPE-6SDR35"]
    # 32 ft more of 14 ft sticks are at least two sticks more.
    assert float(pipe["Takeoff now"]) >= float(pipe["Quantity"]) + 2
    assert pipe["Check"] == f"CHECK: Takeoff now asks for {pipe['Takeoff now']}"
    assert fields(tmp_path / "values/order-head.csv")["Ready?"].startswith("CHECK")


def test_an_order_is_issued_once(issued, tmp_path):
    path = shutil.copy(issued, tmp_path / "job.ods")
    before = path.read_bytes()
    ran = jobbook("order", path, "--number", "PO-119")
    assert ran.returncode == 2 and "Order PO-118 stands on Order already, with 37 lines; --replace" in ran.stderr, ran.stderr
    assert path.read_bytes() == before
    with edited(path) as book:
        book.fill("Additions", [{"Code": "TEEGRATE-9", "Quantity": 2, "Why": "spares"}])
    done("order", path, "--number", "PO-119", "--date", "2026-11-30", "--replace")
    after = lines(path, tmp_path)
    # The grates of the takeoff and of the additions are one line; what only the old additions asked for is gone.
    taken = {row["Code"]: row for row in rows(tmp_path / "values/takeoff.csv")}
    assert float(after["TEEGRATE-9"]["Quantity"]) == float(taken["TEEGRATE-9"]["Order"]) + 2
    assert "BOX-6" not in after and len(after) == len(taken.keys() - {"HAUL", "RESTORE-DRIVE"})
    head = fields(tmp_path / "values/order-head.csv")
    assert (head["Order"], head["Issued on"], head["Deliver to"]) == ("PO-119", "2026-11-30", "on the apron")


def test_every_line_that_cannot_be_bought_is_named(job):
    with edited(job) as book:
        prices = {row["Code"]: row["Price"] for row in book.rows("Prices") if row["Code"]}
        bad = {"PIPE-4SDR35": "", "CEMENT": "12.5O", "ROCK": -3.0, "TRENCHER": "not asked for"}
        book.fill("Prices", [{"Price": bad.get(code, price)} for code, price in prices.items()])
        book.fill("Prices", [{"Code": "SOMETHING" if code == "TEE-4SDR35" else code} for code in prices])
        quantities = [row["Quantity"] for row in book.rows("Additions") if row["Code"]]
        book.fill("Additions", [{"Quantity": -2.0 if place == 0 else old} for place, old in enumerate(quantities)])
        lengths = [row["Length"] for row in book.rows("Runs") if row["From"]]
        book.fill("Runs", [{"Length": "ten" if place == 0 else old} for place, old in enumerate(lengths)])
    before = job.read_bytes()
    ran = jobbook("order", job, "--number", "PO-1")
    assert ran.returncode == 2 and "Nothing was written." in ran.stderr, ran.stdout + ran.stderr
    for says in ("Takeoff is not complete", "PIPE-4SDR35: NO: the price is missing", "CEMENT: NO: the price is not a number: 12.5O",
                 "ROCK: NO: a price is above 0", "TEE-4SDR35: NO: no price for TEE-4SDR35", "Additions DELIVERY: NO: the quantity is not above 0"):
        assert says in ran.stderr, ran.stderr
    assert "TRENCHER" not in ran.stderr
    assert job.read_bytes() == before
    assert [path.name for path in job.parent.iterdir()] == ["job.ods"], "nothing half-written is left"


def test_a_wrong_order_command_explains_itself(job):
    before = job.read_bytes()
    for words, says in [([], "no number"), (["--number", "1", "--date", "27 November"], "--date"),
                        (["--number", "1", "--colour", "red"], "no option --colour")]:
        ran = jobbook("order", job, *words)
        assert ran.returncode == 2 and says in ran.stderr, ran.stderr
        assert job.read_bytes() == before


def test_a_file_open_elsewhere_is_left_alone(job):
    lock = job.with_name(".~lock.job.ods#")
    lock.write_text(",somebody,here,,;")
    ran = jobbook("order", job, "--number", "PO-1")
    assert ran.returncode == 2 and "open in an office" in ran.stderr and str(lock) in ran.stderr
