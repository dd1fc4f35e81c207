"""Pump in Calc: a line that ends in a basin, typed as it is on paper; what is expected is worked out here by hand.

1,000 sq ft at C 0.9 and 500 at 0.8 under 4 in/hr: 1,300 x 4 / 96.25 = 54.03 gpm. Through 60 ft of 2 in Schedule 40 with two elbows
and a check valve the pump works at 60 gpm against 14.536 ft: 8 ft of lift, 6.025 ft of friction by Hazen-Williams with C 140 over
60 + 2 x 9 + 17 ft, and 0.511 ft of velocity head; its curve is drawn straight through that point.
"""

import math

import pytest

from calls import BUILD
from money_book import book

NODES = [{"Node": node, "Kind": kind, "Ground": ground} for node, kind, ground in
         [("A", "downspout", 100), ("B", "basin", 99.5), ("P", "pump basin", 98)]]
RUNS = [{"Line": "yard", "From": up, "To": down, "Length": length, "Pipe": "4 SDR35", "Slope": slope, "Outlet level": outlet,
         "Surface up": "lawn", "Surface down": "lawn"} for up, down, length, slope, outlet in
        [("A", "B", 40, "2%", ""), ("B", "P", 50, "1.5%", 96)]]
WATER = [{"Inlet": "roof", "Node": "A", "Roof area": 1000, "Roof C": 0.9, "Paved area": "", "Paved C": ""},
         {"Inlet": "patio", "Node": "B", "Roof area": "", "Roof C": "", "Paved area": 500, "Paved C": 0.8}]
PUMP = {"Basin": "P", "Inside diameter": 36, "Floor": 91, "Pump on": 95, "Pump off": 93, "Pump curve": "0:29.072; 120:0",
        "Discharge pipe": "2 SCH40", "Discharge length": 60, "Elbows": 2, "Discharge level": 101, "Check valve": "yes", "Power out": "alarm",
        "Groundwater": 90, "Outside diameter": "", "Empty weight": "", "Anchor concrete": ""}
GALLONS = 7.48052


@pytest.fixture(scope="module")
def job():
    with book(extensions=BUILD / "extension") as made:
        made.set("Job", "Rain", 4)
        made.set("Job", "Outlet", "roadside ditch")
        yield made


@pytest.fixture(autouse=True)
def fresh(job):
    job.fill("Nodes", NODES)
    job.fill("Runs", RUNS)
    job.fill("Water", WATER)
    job.fill("Outlets", [{"Outlet": "P"}])
    job.fill("Pump", [PUMP])


def judged(job, **changes):
    job.fill("Pump", [{**PUMP, **{heading.replace("_", " "): value for heading, value in changes.items()}}])
    job.calculate()
    return job.rows("Pump")[0]


def test_a_pump_that_keeps_up(job):
    row = judged(job)
    assert row["Verdict"] == "OK", row["Check"]
    assert row["Inflow"] == pytest.approx(54.026, abs=0.001)
    assert row["Pump gives"] == pytest.approx(60, abs=0.01)
    assert row["At head"] == pytest.approx(14.536, abs=0.003)
    assert row["Speed"] == pytest.approx(0.4085 * 60 / 2.067**2, abs=0.002)
    between = math.pi / 4 * 9 * 2 * GALLONS
    assert row["Between floats"] == pytest.approx(between, abs=0.01)
    assert row["Starts an hour"] == pytest.approx(60 / (2 * between / 30), abs=0.003)
    assert row["Shortest run"] == pytest.approx(between / 60, abs=0.001)
    # Up to the lid: 3 ft of basin, and 90 ft of pipe of 3.975 in that lies all below it.
    room = math.pi / 4 * 9 * 3 + 90 * math.pi / 4 * (3.975 / 12) ** 2
    assert row["Power out minutes"] == pytest.approx(room * GALLONS / 54.026, abs=0.002)
    assert row["Held down"] == ""
    outlet = job.rows("Outlets")[0]
    assert outlet["Verdict"] == "OK" and outlet["Ends in water"] == 95, outlet
    assert "An electrician connects the pump" in job.value("job_cautions")


def test_a_pump_that_is_too_small_stops_the_job(job):
    row = judged(job, Pump_curve="0:20; 80:0")
    assert row["Verdict"] == "NO" and "the pump gives" in row["Check"] and "54 gpm come" in row["Check"]
    assert job.rows("Outlets")[0]["Verdict"] == "NO" and "see Pump" in job.rows("Outlets")[0]["Check"]
    assert "NO on" in job.value("first_no")


def test_what_is_missing_is_named(job):
    for heading in ("Floor", "Pump curve", "Elbows", "Check valve", "Power out", "Groundwater"):
        row = judged(job, **{heading: ""})
        assert row["Verdict"] == "NOT JUDGED" and f"{heading} is missing" in row["Check"], (heading, row["Check"])
    row = judged(job, Pump_curve="29 ft")
    assert row["Check"].startswith("NO: Pump curve is ") and "0:24; 20:21" in row["Check"]
    job.fill("Pump", [dict.fromkeys(PUMP, "")])
    job.calculate()
    assert "no row on Pump" in job.rows("Outlets")[0]["Check"]


def test_in_wet_ground_it_floats_until_concrete_holds_it(job):
    # 4 ft of 40 in outside push with 2,179 lb; 200 lb and 35.1 cu ft of concrete, 87.57 lb under water, are 1.5 of it.
    row = judged(job, Groundwater=95, Outside_diameter=40, Empty_weight=200)
    assert row["Verdict"] == "NO" and row["Held down"] == pytest.approx(200 / 2179.2, abs=1e-3)
    row = judged(job, Groundwater=95, Outside_diameter=40, Empty_weight=200, Anchor_concrete=35.1)
    assert row["Verdict"] == "OK" and row["Held down"] == pytest.approx((200 + 35.1 * 87.572) / 2179.2, abs=1e-3)


def test_pump_valve_and_discharge_are_bought(job):
    day = 46350
    job.set("Job", "Quote date", day)
    goods = {"PUMP": 300, "PUMP-BASIN": 250, "PUMP-ALARM": 60, "CHECK-VALVE-2": 25, "BEND90-2SCH40": 4, "PIPE-2SCH40": 18}
    job.fill("Prices", [{"Code": code, "Item": code, "Group": "pump", "Unit": "ft" if code.startswith("PIPE") else "each",
                         "Pack": 20 if code.startswith("PIPE") else 1, "Waste": 0, "Price": price, "Supplier": "s", "Priced on": day,
                         "Taxable": "yes"} for code, price in goods.items()])
    judged(job)
    rows = {row["Code"]: row for row in job.rows("Takeoff") if row["Code"]}
    counts = {code: rows[code]["Net"] for code in goods}
    assert counts == {"PUMP": 1, "PUMP-BASIN": 1, "PUMP-ALARM": 1, "CHECK-VALVE-2": 1, "BEND90-2SCH40": 2, "PIPE-2SCH40": 60}
    amounts = {code: rows[code]["Amount"] for code in goods}
    assert amounts == {"PUMP": 300, "PUMP-BASIN": 250, "PUMP-ALARM": 60, "CHECK-VALVE-2": 25, "BEND90-2SCH40": 8, "PIPE-2SCH40": 54}
    def work():
        return {row["Work"]: row["Quantity"] for row in job.rows("Labor")}

    before = work()
    assert before["Bed, lay, join, grade: small pipe"] == 90 + 60
    # Ten feet more of discharge: 12 in wide, as deep as 12 in of cover over 2.375 in of pipe.
    judged(job, Discharge_length=70)
    assert work()["Dig trench by machine"] - before["Dig trench by machine"] == pytest.approx(10 * (1 + 2.375 / 12) / 27, abs=1e-9)
