"""The ledger and the job: a closed job goes in by one command, learned rates come back by another."""

import math
import shutil

import pytest

from calls import CHECKOUT, done, jobbook, rows
from money_book import book, edited

LEDGER = CHECKOUT / "sheets/demo/ledger"


@pytest.fixture(scope="module")
def ledger(tmp_path_factory):
    """Ten invented closed jobs."""
    file = tmp_path_factory.mktemp("ledger") / "ledger.ods"
    done("ledger", LEDGER, file)
    return file


def plain(row):
    return float(row["Hours"]) / float(row["Soil factor"]) / float(row["Access factor"])


def test_rates_lie_between_start_and_average(ledger, tmp_path):
    """By hand from the notes: the start counts as four jobs of the mean amount."""
    done("values", ledger, tmp_path / "values")
    known = {row["Work"]: row for row in rows(tmp_path / "values/rates.csv")}
    notes = rows(LEDGER / "hours.csv")
    assert len(rows(LEDGER / "jobs.csv")) == 10
    learned = {work for work, row in known.items() if row["Learned"]}
    assert learned == {row["Work"] for row in notes} and len(learned) > 8
    for work in learned:
        mine = [row for row in notes if row["Work"] == work]
        hours, amounts = sum(plain(row) for row in mine), sum(float(row["Amount"]) for row in mine)
        start = float(known[work]["Start"])
        held = 4 * amounts / len(mine)
        assert float(known[work]["Jobs"]) == len(mine)
        assert float(known[work]["Average"]) == pytest.approx(hours / amounts, rel=1e-9), work
        assert float(known[work]["Learned"]) == pytest.approx((hours + held * start) / (amounts + held), rel=1e-9), work
        alone = math.sqrt(sum((plain(row) / float(row["Amount"]) / start - 1) ** 2 for row in mine) / len(mine))
        assert float(known[work]["Start misses by"]) == pytest.approx(alone, rel=1e-9), work
        misses = 0
        for out in mine:
            h, a = hours - plain(out), amounts - float(out["Amount"])
            kept = 4 * a / (len(mine) - 1)
            misses += (plain(out) / float(out["Amount"]) / ((h + kept * start) / (a + kept)) - 1) ** 2
        assert float(known[work]["Misses by"]) == pytest.approx(math.sqrt(misses / len(mine)), rel=1e-9), work


def test_labor_is_offered_what_was_learned_and_keeps_its_own(ledger, demo, tmp_path):
    job = shutil.copy(demo / "job.ods", tmp_path / "job.ods")
    said = done("learn", ledger, job)
    assert "Dig trench by machine: 0.540 -> " in said and "from 8 jobs" in said
    done("values", job, tmp_path / "values")
    before = {row["Work"]: row for row in rows(tmp_path / "values/labor.csv")}
    digging = before["Dig trench by machine"]
    assert float(digging["Hours each"]) == 0.54 and float(digging["From jobs"]) == 8 and digging["Learned on"]
    assert float(digging["Hours"]) == pytest.approx(float(digging["Quantity"]) * 0.54)
    assert before["Set channel drain in concrete"]["Learned"] == ""
    with edited(job) as open_job:
        open_job.set("Labor terms", "Hours each are", "what the jobs say")
    done("values", job, tmp_path / "after")
    after = {row["Work"]: row for row in rows(tmp_path / "after/labor.csv")}
    for work, row in after.items():
        each = float(row["Learned"] or row["Hours each"])
        assert float(row["Hours"]) == pytest.approx(float(row["Quantity"]) * each), work


def test_a_job_goes_in_when_it_is_closed_out_and_once(ledger, demo, tmp_path):
    book_file, job = shutil.copy(ledger, tmp_path / "ledger.ods"), shutil.copy(demo / "job.ods", tmp_path / "job.ods")
    bytes_before = book_file.read_bytes()
    columns = ("What", "Group", "Estimated quantity", "Estimated amount", "Actual quantity", "Actual amount", "Cause", "Code")
    for lines, says in (([], "no actual cost"), ([{"What": "Lay sod", "Group": "labor", "Estimated amount": 100, "Actual amount": 90},
                                                  {"What": "Dig pit", "Group": "labor", "Estimated amount": 50}],
                                                 "rows without an actual amount: 1")):
        with edited(job) as open_job:
            open_job.fill("Close-out", lines or [dict.fromkeys(columns)])
        ran = jobbook("close", job, book_file)
        assert ran.returncode == 2 and "Close-out is not filled in" in ran.stderr and (not lines or says in ran.stderr), ran.stderr
    assert book_file.read_bytes() == bytes_before
    with edited(job) as open_job:
        open_job.fill("Close-out", [
            {"What": "Dig trench by machine", "Group": "labor", "Estimated quantity": 17, "Estimated amount": 592, "Actual quantity": 21,
             "Actual amount": 731},
            {"What": "waiting", "Group": "labor", "Estimated quantity": 0, "Estimated amount": 0, "Actual quantity": 3, "Actual amount": 104},
            {"What": "Lay sod", "Group": "labor", "Estimated amount": 0, "Actual amount": 0},
            {"What": "all goods", "Group": "materials", "Estimated amount": 3249, "Actual amount": 3300}])
    said = done("close", job, book_file, "--finished", "2026-12-18")
    assert "not learned from: waiting" in said and "1 kinds of work" in said
    assert "not learned from: Lay sod, no hours" in said
    done("values", book_file, tmp_path / "values")
    jobs = {row["Job"]: row for row in rows(tmp_path / "values/jobs.csv") if row["Job"]}
    closed = jobs["Corner lot with workshop (invented demo)"]
    assert len(jobs) == 11 and closed["Finished"] == "2026-12-18" and closed["Soil"] == "loam"
    assert (float(closed["Actual hours"]), float(closed["Actual cost"])) == (24, 731 + 104 + 3300)
    hours = [row for row in rows(tmp_path / "values/hours.csv") if row["Job"] == closed["Job"]]
    assert [(row["Work"], row["Hours"], row["Check"]) for row in hours] == [("Dig trench by machine", "21", "OK")]
    again = jobbook("close", job, book_file)
    assert again.returncode == 2 and "has this job already" in again.stderr


def test_a_ledger_of_one_job_says_that_its_error_is_not_known(tmp_path):
    notes = tmp_path / "notes"
    notes.mkdir()
    (notes / "jobs.csv").write_text("Job,Contract,Actual cost\nA,100,80\n", encoding="utf-8")
    (notes / "hours.csv").write_text("Job,Work,Amount,Hours,Soil factor,Access factor\nA,Lay sod,100,2,1,1\n", encoding="utf-8")
    done("ledger", notes, tmp_path / "one.ods")
    done("values", tmp_path / "one.ods", tmp_path / "values")
    rate = next(row for row in rows(tmp_path / "values/rates.csv") if row["Work"] == "Lay sod")
    assert rate["Check"] == "CHECK: one job alone: its own error is not known" and rate["Misses by"] == ""
    # The start of 0.012 hours counts as four jobs of this amount: (2 + 4 x 100 x 0.012) / (100 + 4 x 100).
    assert float(rate["Learned"]) == pytest.approx((2 + 400 * float(rate["Start"])) / 500)


def test_bad_rows_of_hours_are_named():
    """Without the add-in: the average stands, what is learned says why not."""
    good = {"Job": "A", "Work": "Lay sod", "Amount": 100, "Hours": 2, "Soil factor": 1, "Access factor": 1}
    with book("ledger") as made:
        made.fill("Jobs", [{"Job": "A"}])
        for change, says in (({}, "OK"), ({"Hours": ""}, "NO: hours are missing"), ({"Amount": 0}, "NO: amount and factors are above 0"),
                             ({"Work": "dance"}, "NO: no rate for this work"), ({"Job": ""}, "NO: which job?"),
                             ({"Amount": "ten"}, "NO: an amount is not a number"), ({"Job": "B"}, "CHECK: this job is not on Jobs")):
            made.fill("Hours", [{**good, **change}])
            made.calculate()
            assert made.rows("Hours")[0]["Check"].startswith(says), (change, made.rows("Hours")[0])
        made.fill("Hours", [good])
        made.calculate()
        sod = next(row for row in made.rows("Rates") if row["Work"] == "Lay sod")
        assert sod["Average"] == pytest.approx(0.02) and sod["Check"] == "NO: nothing is learned without the add-in"
        assert next(row for row in made.rows("Rates") if row["Work"] == "Backfill and tamp")["Check"] == "CHECK: no job yet"
