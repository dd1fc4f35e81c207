"""Dates: deposits by state, days to cancel, the earliest start, steps of payment; and what is kept back. All without the add-in."""

import datetime

import pytest

from calls import DEMO, fields, rows
from money_book import book

EPOCH = datetime.date(1899, 12, 30)


def day(year, month, date):
    return (datetime.date(year, month, date) - EPOCH).days


@pytest.fixture(scope="module")
def job():
    with book("job") as made:
        made.set("Account", "Agreed price", 6000)
        made.set("Account", "Agreed on", day(2026, 12, 3))  # a Thursday
        yield made


# Sections and texts as engine/src/money/state_law.cpp names them: California 10 % or 1,000, the lesser; Maine, Maryland one third;
# Pennsylvania one third and special orders; Massachusetts one third or special orders where they cost more.
@pytest.mark.parametrize("state, special, limit", [("CA", 0, 600), ("ME", 0, 2000), ("md", 100, 2000), ("PA", 500, 2500),
                                                   ("MA", 500, 2000), ("MA", 2600, 2600), ("AZ", 0, ""), ("OH", 0, ""), ("", 0, "")])
def test_the_largest_deposit_is_the_states_or_asked(job, state, special, limit):
    job.set("Dates", "State", state)
    job.set("Dates", "Goods ordered for this job alone", special)
    job.calculate()
    told = job.fields("Dates")
    assert told["Largest deposit of this state"] == limit
    if state in ("OH", ""):
        assert told["Section and text"] == "ask the state: nothing of it was read"
    if state == "OH":
        assert told["Ready?"] == "CHECK: nothing of OH was read: ask the state"


def test_the_right_to_cancel_counts_saturdays(job):
    """16 CFR 429.0(f): all days but Sundays and federal holidays. Thursday's third business day is Monday, with a holiday Tuesday."""
    job.fill("Holidays", [{"Holiday": "none", "Day": ""}])
    job.calculate()
    assert job.fields("Dates")["Last day to cancel"] == day(2026, 12, 7)
    assert job.value("said_cancel_until") == "2026-12-07"
    job.fill("Holidays", [{"Holiday": "invented", "Day": day(2026, 12, 4)}])
    job.calculate()
    assert job.fields("Dates")["Last day to cancel"] == day(2026, 12, 8)
    assert job.value("said_cancel_until") == "2026-12-08", "the notice tells the same day"
    job.set("Account", "Agreed on", day(2026, 11, 24))  # Thanksgiving Day is nobody's to type
    job.calculate()
    assert job.fields("Dates")["Last day to cancel"] == day(2026, 11, 28) and job.value("said_cancel_until") == "2026-11-28"
    job.fill("Holidays", [{"Holiday": "invented", "Day": "4 July"}])
    job.calculate()
    assert job.fields("Dates")["Ready?"] == "NO: the day of a holiday is not a date"
    job.set("Account", "Agreed on", day(2026, 12, 3))


def test_the_start_is_held_by_what_is_over_last(job):
    job.fill("Holidays", [{"Holiday": "none", "Day": ""}])
    job.fill("Waits", [{"What": "ticket", "Asked on": day(2026, 12, 2), "Days": 3, "Counted": "working", "Got on": ""},
                       {"What": "permit", "Asked on": day(2026, 11, 16), "Days": 26, "Counted": "calendar", "Got on": ""},
                       {"What": "pipe", "Asked on": day(2026, 12, 2), "Days": "", "Counted": "", "Got on": day(2026, 12, 9)}])
    job.set("Dates", "Days on the job, if not as on Labor", 2.5)
    job.calculate()
    told = job.fields("Dates")
    assert (told["Work may start on"], told["Held by"]) == (day(2026, 12, 14), "permit"), "a Saturday gives way to Monday"
    assert told["Done by"] == day(2026, 12, 16)
    # In a row of its own: the first rows know their dates from Job, Account and Order.
    job.fill("Waits", [{}] * 5 + [{"What": "association", "Asked on": "", "Days": 3, "Counted": "working"}])
    job.calculate()
    assert job.rows("Waits")[5]["Check"] == "CHECK: not asked for yet, or its days are missing"
    assert job.fields("Dates")["Work may start on"] == "" and job.fields("Dates")["Held by"] == ""


def test_steps_come_to_the_contract_and_the_deposit_stays_under_its_limit(job):
    job.set("Dates", "State", "CA")
    step = {"Step": "", "Share": "", "Fixed": ""}
    job.fill("Steps", [step | {"Step": "Deposit", "Share": 0.1}, step | {"Step": "half way", "Fixed": 2700.005}, step | {"Step": "end"}])
    job.calculate()
    steps = job.rows("Steps")[:3]
    assert [round(row["Amount"], 2) for row in steps] == [600, 2700.01, 2699.99] and {row["Check"] for row in steps} == {"OK"}
    for lines, says in (([step | {"Step": "Deposit", "Share": 0.2}, step | {"Step": "end"}], "NO: over the state's largest deposit of 600.00"),
                        ([step | {"Step": "Deposit"}, step | {"Step": "end"}], "NO: one step alone may take what is left"),
                        ([step | {"Step": "Deposit", "Share": 0.1}, step | {"Step": "end", "Share": 0.8}], "NO: the steps do not come"),
                        ([step | {"Step": "Deposit", "Share": 0.1, "Fixed": 5}], "NO: a share or a fixed amount, not both"),
                        ([step | {"Step": "Deposit", "Share": "tenth"}], "NO: an amount is not a number"),
                        ([step | {"Step": "Deposit", "Fixed": 7000}, step | {"Step": "end"}], "NO: over the state's")):
        job.fill("Steps", lines)
        job.calculate()
        assert job.rows("Steps")[0]["Check"].startswith(says), (lines, job.rows("Steps")[0]["Check"])
    assert job.fields("Dates")["Ready?"] == "NO: a step of payment cannot stand like this"


def test_what_is_kept_back_is_not_due_and_unsigned_changes_stand_apart(job):
    job.fill("Changes", [{"What": "more pipe", "Signed": "yes", "Labor": 100, "Pipe": 12}, {"What": "a path", "Signed": "no", "Labor": 200, "Pipe": 5}])
    job.fill("Payments", [{"What": "deposit", "Paid": 600}])
    job.set("Account", "Kept back until later", 0.1)
    job.calculate()
    sums = job.fields("Account sums")
    assert sums["Contract in all"] == 6115 and sums["Changes not signed yet"] == 230 and sums["If all changes are signed"] == 6345
    assert sums["Pipe by changes signed"] == 12
    assert sums["Kept back"] == 611.5 and sums["Due now"] == 6115 - 600 - 611.5
    job.set("Account", "Kept back is due now", "yes")
    job.calculate()
    assert job.fields("Account sums")["Due now"] == 5515
    job.set("Account", "Kept back until later", 10)
    job.calculate()
    assert job.fields("Account sums")["Ready?"].startswith("NO: what is kept back is a share")


def test_a_loss_is_said_when_the_job_is_closed_out(job):
    job.set("Account", "Agreed price", 1000)
    job.fill("Changes", [{"What": "", "Signed": "", "Labor": "", "Pipe": ""}])
    for cost, left, says in ((800, 200, "OK"), (1312.5, -312.5, "CHECK: the job cost 312.50 more than its contract")):
        job.fill("Close-out", [{"What": "all of it", "Group": "subcontract", "Estimated quantity": 1, "Estimated amount": cost,
                                "Actual quantity": 1, "Actual amount": cost}])
        job.calculate()
        sums = job.fields("Close-out sums")
        assert sums["Left for overhead and profit"] == left and sums["Ready?"] == says, sums


def test_the_demos_payments_are_its_steps(demo):
    steps = rows(demo / "values/steps.csv")
    assert [row["Amount"] for row in steps] == ["1000", "7465.8", "7527.31"]
    assert sum(float(row["Amount"]) for row in steps) == pytest.approx(float(fields(demo / "values/account-sums.csv")["Contract in all"]))
    assert [row["Paid"] for row in rows(DEMO / "payments.csv")] == ["1000", "7465.80"]
    dates = fields(demo / "values/dates.csv")
    assert dates["Last day to cancel"] == "2026-11-28", "signed on a Tuesday, Thursday is Thanksgiving"
    assert dates["Section and text"] == "ask the state: nothing of it was read"
