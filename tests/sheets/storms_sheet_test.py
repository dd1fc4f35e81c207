"""The Storms sheet in a real Calc: blocks of even rain by hand, what the table lacks, what the table refuses."""

import pytest

from calls import BUILD
from money_book import book

NODES = [{"Node": node, "Kind": kind, "Ground": ground} for node, kind, ground in
         [("A", "basin", 100), ("B", "basin", 99), ("C", "bank", 97)]]
RUNS = [{"Line": "main", "From": start, "To": end, "Length": length, "Pipe": "6 SDR35", "Slope": "1%", "Outlet level": level}
        for start, end, length, level in [("A", "B", 200, ""), ("B", "C", 100, 94)]]
WATER = [{"Inlet": name, "Node": node, "Paved area": area, "Paved C": 0.9}
         for name, node, area in [("one", "A", 2000), ("two", "B", 1000)]]
RAIN = [{"Duration": "", "Entry 1": 2, "Entry 2": 10}, {"Duration": "5-min", "Entry 1": 0.4, "Entry 2": 0.6},
        {"Duration": "10-min", "Entry 1": 0.7, "Entry 2": 1}, {"Duration": "60-min", "Entry 1": 1.2, "Entry 2": 1.8}]


@pytest.fixture(scope="module")
def job():
    with book(extensions=BUILD / "extension") as opened:
        for table, notes in (("Nodes", NODES), ("Runs", RUNS), ("Water", WATER), ("Rain", RAIN)):
            opened.fill(table, notes)
        opened.set("Job", "Duration", 5)
        opened.set("Job", "Rain", "")
        yield opened


def test_a_row_a_storm(job):
    job.calculate()
    assert job.fields("Storms asked")["Rain table"] == "OK"
    rows, runs = job.rows("Storms"), job.rows("Runs")
    assert [row["Storm"] for row in rows[:8]] == ["5 min", "10 min", "15 min", "30 min", "60 min", "2 h", "6 h", "24 h"]
    for row, rate in ((rows[0], 7.2), (rows[1], 6.0), (rows[4], 1.8)):
        assert row["Intensity"] == pytest.approx(rate, rel=1e-9)
        assert row["Most of capacity"] == pytest.approx(2700 * rate / 96.25 / runs[1]["Capacity"], rel=1e-4)
        assert row["Most at run"] == "B - C"
    # The job's own rain is the table's for 5 minutes: the same water.
    assert rows[0]["Least freeboard"] == pytest.approx(min(node["Freeboard"] for node in job.rows("Nodes")[:2]), abs=1e-9)
    assert rows[2]["Rain"] == "" and rows[8]["Rain"] == pytest.approx(1.8, rel=1e-9)


def test_in_words(job):
    job.calculate()
    told = job.rows("Storms told")
    assert told[1]["Says"].startswith("In a 10-minute cloudburst of 1 in, the water in the lines stays ")
    assert told[2] == {"Fails first": "not in the table", "Says": "15 min is not in the rain table; not tried"}
    assert told[1]["Fails first"] == "not known"  # how the water enters is not said


def test_without_a_table_and_with_one_that_does_not_know_the_return_period(job):
    job.set("Job", "Return period", 100)
    job.calculate()
    said = job.fields("Storms asked")["Rain table"]
    assert said == "NO: return is 100 years, outside the rain table, which holds 2 to 10 years."
    assert job.rows("Storms")[0]["Rain"] == ""
    job.set("Job", "Return period", 10)
    job.fill("Rain", [dict.fromkeys(note, "") for note in RAIN])
    job.calculate()
    assert job.fields("Storms asked")["Rain table"].startswith("CHECK: no storm is tried")
    assert job.rows("Storms told")[0]["Fails first"] == "not in the table"
    job.fill("Rain", RAIN)
