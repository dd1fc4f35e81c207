"""jobbook prices: what a price book says anew, and bringing it in on purpose."""

import datetime
import shutil

import pytest

from calls import done, give, jobbook, rows
from money_book import edited, stored

DAY = datetime.date(2026, 11, 20)
OFFICE = (DAY - datetime.date(1899, 12, 30)).days  # as the office counts
NOTES = {
    "job": "field,value\nJob,Prices lot\nQuote date,2026-11-20\nRain,6\n",
    "runs": "Line,From,To,Length,Pipe,Slope,Outlet level\n",
    "prices": "Code,Item,Group,Unit,Pack,Waste,Price,Supplier,Priced on,Taxable\n"
              + "".join(f"{code},thing {code},other,piece,{pack},0,{price},s,{date},yes\n" for code, pack, price, date in [
                  ("UP", 1, "10.00", "2026-09-01"), ("DOWN", 1, "8.00", "2026-09-01"), ("SAME", 1, "5.00", "2026-09-01"),
                  ("PACK", 10, "20.00", "2026-09-01"), ("NEWER", 1, "3.00", "2026-11-19"), ("BAD", 1, "4.00", "2026-09-01"),
                  ("GONE", 1, "6.00", "2026-09-01"), ("STILL", 1, "7.00", "2026-11-10")]),
    "additions": "Code,Quantity,Why\n" + "".join(f"{code},3,test\n" for code in ("UP", "DOWN", "SAME", "PACK", "NEWER", "GONE", "WANTED")),
}


def book_row(code, price, days=5, **changes):
    return {"Code": code, "Item": f"thing {code}", "Group": "other", "Unit": "piece", "Pack": 1, "Waste": 0, "Price": price,
            "Supplier": "s", "Priced on": OFFICE - days, "Taxable": "yes", **changes}


BOOK = [book_row("WANTED", 2.5), book_row("STILL", 7, 10), book_row("UP", 11.5), book_row("DOWN", 7.2, Supplier="t"), book_row("SAME", 5),
        book_row("PACK", 36, Pack=20), book_row("NEWER", 2.9, 200), book_row("BAD", "4.2O"), book_row("OTHER", 9)]


@pytest.fixture(scope="module")
def files(tmp_path_factory):
    folder = tmp_path_factory.mktemp("prices")
    stored("price-book", folder / "book.ods", lambda book: book.fill("Prices", BOOK))
    done("make", give(folder / "notes", **NOTES), folder / "job.ods", "--values", folder / "before")
    return folder


@pytest.fixture(scope="module")
def taken(files, tmp_path_factory):
    path = shutil.copy(files / "job.ods", tmp_path_factory.mktemp("taken") / "job.ods")
    said = done("prices", path, files / "book.ods", "--take")
    path.with_suffix(".txt").write_text(said)
    done("values", path, path.with_name("values"))
    return path


def parts(said):
    """The lines under each heading."""
    made = {}
    for line in said.splitlines():
        if line.startswith("  "):
            made[heading].append(line.strip())
        else:
            heading = line.rsplit(" (", 1)[0]
            made[heading] = []
    return made


EXPECTED = {
    "Changed": ["UP: 10.00 of 2026-09-01 -> 11.50 of 2026-11-15; +1.50 (+15.0 %)",
                'DOWN: 8.00 of 2026-09-01 -> 7.20 of 2026-11-15; -0.80 (-10.0 %); Supplier "s" -> "t"',
                'PACK: 20.00 of 2026-09-01 -> 36.00 of 2026-11-15; +16.00 (+80.0 %), for another pack; Pack "10" -> "20"'],
    "Same price, new date": ["SAME: 5.00 of 2026-09-01 -> 5.00 of 2026-11-15"],
    "Asked for here, only in the book": ["WANTED: 2.50 of 2026-11-15"],
    "Older in the book, left as it is": ["NEWER: 3.00 of 2026-11-19 -> 2.90 of 2026-05-04"],
    "Cannot be used: the book says": ["BAD: NO: the price is not a number: 4.2O"],
    "Not in the book, left as it is": ["GONE"],
    "Only in the book, not asked for here": ["OTHER"],
}


def test_looking_changes_nothing(files):
    before = (files / "job.ods").read_bytes()
    said = done("prices", files / "job.ods", files / "book.ods")
    told = parts(said)
    for heading, lines in EXPECTED.items():
        assert told.pop(heading) == lines, said
    assert list(told) == ["Nothing was changed; --take brings in 5 rows."], said
    assert (files / "job.ods").read_bytes() == before


def test_taken_prices_stand_with_the_old_ones_beside_them(files, taken):
    told = parts(taken.with_suffix(".txt").read_text())
    assert all(told[heading] == lines for heading, lines in EXPECTED.items())
    assert "Taken: 5 rows." in told
    before, after = ({row["Code"]: row for row in rows(folder / "prices.csv")} for folder in (files / "before", taken.with_name("values")))
    shown = {code: [row[heading] for heading in ("Price", "Priced on", "Last", "Last on")] for code, row in after.items()}
    assert shown == {
        "UP": ["11.5", "2026-11-15", "10", "2026-09-01"], "DOWN": ["7.2", "2026-11-15", "8", "2026-09-01"],
        "PACK": ["36", "2026-11-15", "20", "2026-09-01"], "SAME": ["5", "2026-11-15", "", ""], "WANTED": ["2.5", "2026-11-15", "", ""],
        "NEWER": ["3", "2026-11-19", "", ""], "BAD": ["4", "2026-09-01", "", ""], "GONE": ["6", "2026-09-01", "", ""],
        "STILL": ["7", "2026-11-10", "", ""]}
    assert float(after["UP"]["Change"]) == pytest.approx(0.15) and after["DOWN"]["Supplier"] == "t" and after["PACK"]["Pack"] == "20"
    assert list(after)[:len(before)] == list(before), "rows stay in their places"


def test_the_job_is_priced_anew(files, taken):
    before, after = ({row["Code"]: row for row in rows(folder / "additions.csv")} for folder in (files / "before", taken.with_name("values")))
    # Three pieces of each; of PACK one pack does, before of 10 and now of 20.
    assert {code: float(row["Amount"]) for code, row in after.items()} == pytest.approx(
        {"UP": 34.5, "DOWN": 21.6, "SAME": 15, "PACK": 36, "NEWER": 9, "GONE": 18, "WANTED": 7.5})
    assert before["WANTED"]["Check"].startswith("NO: no price") and after["WANTED"]["Check"] == "OK"
    assert before["UP"]["Check"].startswith("CHECK: 80 days old") and after["UP"]["Check"] == "OK"
    assert after["GONE"]["Check"].startswith("CHECK: 80 days old")


def test_the_second_time_nothing_is_new(files, taken, tmp_path):
    path = shutil.copy(taken, tmp_path / "job.ods")
    assert "Nothing new in the book." in done("prices", path, files / "book.ods", "--take")
    done("values", path, tmp_path / "values")
    assert (tmp_path / "values/prices.csv").read_text() == taken.with_name("values").joinpath("prices.csv").read_text()


def test_an_issued_order_keeps_its_prices(files, tmp_path):
    path = shutil.copy(files / "job.ods", tmp_path / "job.ods")
    with edited(path) as book:
        book.fill("Additions", [{"Code": "UP", "Quantity": 3, "Why": "test"}])
    done("order", path, "--number", "7")
    done("prices", path, files / "book.ods", "--take")
    done("values", path, tmp_path / "values")
    assert [(row["Code"], row["Price"], row["Amount"]) for row in rows(tmp_path / "values/order.csv")] == [("UP", "10", "30")]
    assert [row["Amount"] for row in rows(tmp_path / "values/additions.csv")] == ["34.5"]


def test_a_file_that_is_no_price_book_is_refused(files, tmp_path):
    path = shutil.copy(files / "job.ods", tmp_path / "job.ods")
    before = path.read_bytes()
    ran = jobbook("prices", path, files / "job.ods", "--take")
    assert ran.returncode == 2 and "not a price book" in ran.stderr, ran.stderr
    assert path.read_bytes() == before
