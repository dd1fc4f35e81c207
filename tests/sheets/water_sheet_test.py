"""Rain from a pasted table, inlets and what they enter by, swales: in the job workbook, with good and bad input."""

import csv
import math

import pytest

from calls import BUILD, CHECKOUT
from money_book import book
from published import published, value

EXPORT = CHECKOUT / "tests/reference/rain_exports/ann_arbor.csv"
INVENTED = [["", "2", "10"], ["5-min", "0.4 (0.3-0.5)", "0.6 (0.5-0.7)"], ["60-min", "1.2", "1.8"], ["24-hr", "2.6", "4"]]
GPM = 448.831169  # in a cubic foot a second

NODES = [{"Node": node, "Kind": kind, "Ground": ground} for node, kind, ground in
         [("A", "downspout", 100), ("B", "cleanout", 99.5), ("C", "ditch", 98)]]
BASIN_AT_B = [{**node, "Kind": "basin"} if node["Node"] == "B" else node for node in NODES]
RUNS = [{"Line": "main", "From": "A", "To": "B", "Length": 40, "Pipe": "4 SDR35", "Slope": "1%", "Outlet level": ""},
        {"Line": "main", "From": "B", "To": "C", "Length": 60, "Pipe": "4 SDR35", "Slope": "1%", "Outlet level": 96}]
INPUTS = ["Inlet", "Node", "Roof area", "Roof C", "Paved area", "Paved C", "Yard area", "Yard C", "Enters by", "Size",
          "Open share", "Ponding", "Length", "Floor slope", "Outlet pipe", "Outlet head"]
ROOF = {"Node": "A", "Roof area": 800, "Roof C": 0.95}
SWALE = {"Outlet": "C", "Flow line": 94.5, "To lot line": 30, "To walk": 30, "To foundation": 30,
         "Other flow": "", "Bottom": 2, "Side slope": 3, "Deep": 1.5, "Slope": "1%", "Roughness": 0.035}


def shown(number):
    """As a block gives it: with twelve digits."""
    return float(f"{number:.12g}")


@pytest.fixture(scope="module")
def job():
    with book(extensions=BUILD / "extension") as made:
        yield made


@pytest.fixture(autouse=True)
def fresh(job):
    job.set("Job", "Units", "US")
    job.set("Job", "Rain", 6)
    job.set("Job", "Duration", 5)
    job.set("Job", "Return period", 10)
    paste(job, [[""]])
    job.fill("Nodes", NODES)
    job.fill("Runs", RUNS)
    water(job, ROOF)
    job.fill("Outlets", [{key: "" for key in SWALE}])


def paste(job, lines):
    headings = job.headings("Rain")
    job.fill("Rain", [dict(zip(headings, list(line) + [""] * (len(headings) - len(line)))) for line in lines])


def untyped(job, lines):
    job.set("Job", "Rain", "")
    paste(job, lines)


def water(job, *rows):
    """Inlets with these cells, each with a name of its own."""
    job.fill("Water", [{**dict.fromkeys(INPUTS, ""), **row, "Inlet": f"DS{place}"} for place, row in enumerate(rows, 1)])


def known(job):
    job.document.calculate()
    return job.rows("Water")


# Rain

def test_a_table_as_the_national_server_exports_it(job):
    with open(EXPORT, encoding="utf-8", newline="") as file:
        untyped(job, [[cell.strip() for cell in line] for line in csv.reader(file)])
    checked = 0
    for row in published("12h_noaa_atlas14_tables").values():
        given = dict(part.split("=") for part in row["inputs"].split(";") if "=" in part)
        if row["item"] != "Ann Arbor, Michigan" or row["output"] != "depth" or given.get("ARI_yr") not in ("1", "10", "1000"):
            continue
        count, unit = given["duration"].split("-")
        minutes = int(count) * {"min": 1, "hr": 60, "day": 1440}[unit]
        job.set("Job", "Duration", minutes)
        job.set("Job", "Return period", int(given["ARI_yr"]))
        job.document.calculate()
        depth, tolerance = value(row)
        assert job.value("rain_rate") * minutes / 60 == pytest.approx(depth, abs=tolerance), row
        assert job.value("rain_verdict").startswith("OK"), row
        checked += 1
    assert checked == 3 * 10


def test_bounds_in_brackets_are_passed_over_and_the_typed_rain_goes_first(job):
    untyped(job, INVENTED)
    job.document.calculate()
    assert job.value("rain_rate") == pytest.approx(0.6 * 12, rel=1e-12)
    assert known(job)[0]["Flow"] == pytest.approx(shown(0.95 * 7.2 * 800 * 12 * 12 * 12 / 12 / 231 / 60), rel=1e-12)
    job.set("Job", "Rain", 5)
    job.document.calculate()
    assert job.value("rain_rate") == 5 and job.value("rain_verdict") == "OK: as typed"


def test_a_line_of_a_file_in_one_cell(job):
    untyped(job, [[",".join(line)] for line in INVENTED])
    job.document.calculate()
    assert job.value("rain_rate") == pytest.approx(7.2, rel=1e-12)


def changed(row, column, cell):
    lines = [list(line) for line in INVENTED]
    lines[row][column] = cell
    return lines


@pytest.mark.parametrize("lines, minutes, says", [
    (changed(2, 2, ""), 5, "a hole: there is no rain for 60-min at 10 years"),
    (changed(2, 2, "1.8 in"), 5, '"1.8 in"'),
    ([INVENTED[0], INVENTED[2], INVENTED[1], INVENTED[3]], 5, "out of order"),
    (INVENTED[1:], 5, "no return periods"),
    (INVENTED[:1], 5, "no durations"),
    (INVENTED, 0.5, "for 0.5 hours type 30"),
    (INVENTED, 3000, "duration"),
    ([], 5, "paste the table on Rain"),
])
def test_a_bad_table_is_said_in_words_and_gives_no_rain(job, lines, minutes, says):
    untyped(job, lines or [[""]])
    job.set("Job", "Duration", minutes)
    job.document.calculate()
    assert job.value("rain_rate") == ""
    assert job.value("rain_verdict").startswith("NO") and says in job.value("rain_verdict"), job.value("rain_verdict")
    inlet = known(job)[0]
    assert inlet["Check"].startswith("NOT JUDGED: the rain on Job is missing") and inlet["Flow"] == "", inlet
    assert inlet["Verdict"] == "NOT JUDGED"
    first = job.fields("Verdict")["First NO"]
    if lines:
        assert first.startswith("NO on Job: "), first
    else:
        lines = [line for text, in job.document.Sheets["Job"].getCellRangeByName("A1:A200").getDataArray()
                 for line in str(text).splitlines()]
        assert "Job: rain" in lines, lines


@pytest.mark.parametrize("typed, says", [("six", "must be a number above 0"), (-6, "above 0"), (0, "above 0")])
def test_a_bad_typed_rain(job, typed, says):
    job.set("Job", "Rain", typed)
    job.document.calculate()
    assert job.value("rain_rate") == "" and says in job.value("rain_verdict"), job.value("rain_verdict")


def test_millimeters_typed_into_a_us_job_are_asked_about(job):
    job.set("Job", "Rain", 152)
    job.document.calculate()
    assert job.value("rain_verdict").startswith("CHECK")


# What inlets enter by

def test_a_downspout_of_the_plumbing_code(job):
    table = published("04b_vertical_leaders_nspc2006_upc2000")
    for row in table.values():
        if row["output"] != "flow capacity" or "NSPC" not in row["item"]:
            continue
        water(job, {**ROOF, "Enters by": "downspout", "Size": row["inputs"].split("=")[1]})
        capacity, tolerance = value(row)
        assert known(job)[0]["Takes"] == pytest.approx(capacity, abs=tolerance), row


@pytest.mark.parametrize("weir, orifice", [("006", "007"), ("008", "009"), ("010", "011")])
def test_a_grate_in_a_low_spot(job, weir, orifice):
    """Edge 3 ft and opening 0.35 sq ft: half of a 24 x 12 grate with a share of 0.35 open."""
    table = published("07a_grate_weir_orifice")
    given = dict(part.split("=") for part in table[weir]["inputs"].split(";"))
    water(job, {**ROOF, "Enters by": "grate", "Size": '24" x 12"', "Open share": 0.35, "Ponding": 12 * float(given["h_ft"])})
    expected = min(value(table[weir])[0], value(table[orifice])[0])
    assert known(job)[0]["Takes"] == pytest.approx(expected * GPM, rel=1e-4)


def test_a_level_trench_drain_against_the_closed_form(job):
    """Frictionless, the head is sqrt(3) times critical depth; friction takes something off that, never adds."""
    water(job, {**ROOF, "Enters by": "trench drain", "Size": "4x4", "Length": 4})
    critical = 4 / math.sqrt(3) / 12
    ideal = math.sqrt(32.174 * critical ** 3) * 4 / 12 * GPM
    assert 0.85 * ideal < known(job)[0]["Takes"] < ideal


def test_the_lesser_of_grate_and_outlet_pipe_counts_and_is_named(job):
    job.fill("Nodes", BASIN_AT_B)
    grate = {**ROOF, "Node": "B", "Enters by": "grate", "Size": "12x12", "Open share": 0.4, "Ponding": 1}
    water(job, grate, {**grate, "Outlet pipe": "4 SDR35", "Outlet head": 2}, {**grate, "Outlet pipe": "4 SDR35", "Outlet head": 12})
    alone, drowned, roomy = known(job)[:3]
    assert alone["Check"] == "OK" and roomy["Takes"] == alone["Takes"]
    assert drowned["Takes"] < alone["Takes"] and drowned["Check"].startswith("NO: outlet pipe takes"), drowned


@pytest.mark.parametrize("area, word", [(300, "OK"), (344, "CHECK"), (440, "NO")])
def test_the_verdict_follows_the_share(job, area, word):
    water(job, {**ROOF, "Roof area": area, "Enters by": "downspout", "Size": "2x3"})
    row = known(job)[0]
    assert row["% of what it takes"] == pytest.approx(row["Flow"] / row["Takes"]) and row["Check"].startswith(word), row


def test_a_word_in_place_of_a_coefficient(job):
    water(job, {**ROOF, "Roof C": "roof"}, {**ROOF, "Roof C": 0.95}, {**ROOF, "Roof C": "lawn"})
    by_word, by_number, vague = known(job)[:3]
    assert by_word["Flow"] == by_number["Flow"]  # 0.95 is printed as the high end for roofs
    assert vague["Check"].startswith("NO: Roof C") and "Lawn" in vague["Check"], vague["Check"]


NO, OPEN = "NO", "NOT JUDGED"  # a cell that cannot be used, one that is missing


@pytest.mark.parametrize("change, word, says", [
    ({"Roof C": 95}, NO, "0.95"),
    ({"Roof C": ""}, OPEN, "Roof C is missing"),
    ({"Roof C": "thatch"}, NO, "thatch"),
    ({"Roof area": "big"}, NO, "big"),
    ({"Roof area": ""}, OPEN, "no area"),
    ({"Node": "Z"}, NO, "no node Z on Nodes"),
    ({"Node": ""}, OPEN, "Node is missing"),
    ({"Enters by": "funnel"}, NO, '"funnel"; allowed: downspout, grate, trench drain'),
    ({"Enters by": "downspout"}, OPEN, "Size of the downspout is missing"),
    ({"Enters by": "downspout", "Size": "wide"}, NO, "wide"),
    ({"Enters by": "grate", "Size": "12x12", "Open share": 0, "Ponding": 1}, NO, "a grate without openings"),
    ({"Enters by": "grate", "Size": "12x12", "Ponding": 1}, OPEN, "grate: Open share is missing"),
    ({"Enters by": "grate", "Size": "12x12", "Open share": 0.4}, OPEN, "grate: Ponding is missing"),
    ({"Enters by": "grate", "Size": "twelve", "Open share": 0.4, "Ponding": 1}, NO, "twelve"),
    ({"Enters by": "trench drain", "Size": "4x4", "Length": 20, "Ponding": 5}, NO, "the outlet drowns it"),
    ({"Enters by": "trench drain", "Size": "4", "Length": 20}, NO, "depth"),
    ({"Enters by": "trench drain", "Size": "4x4"}, OPEN, "trench drain: Length is missing"),
    ({"Outlet pipe": "9 TIN", "Outlet head": 8}, NO, "9 TIN"),
    ({"Outlet pipe": "4 SDR35"}, OPEN, "outlet pipe: Outlet head is missing"),
])
def test_a_bad_row_says_what_is_wrong_and_spoils_only_itself(job, change, word, says):
    water(job, {**ROOF, "Roof area": 1}, {**ROOF, "Enters by": "downspout", "Size": "3x4"})
    before = known(job)[1]
    water(job, {**ROOF, **change}, {**ROOF, "Enters by": "downspout", "Size": "3x4"})
    bad, good = known(job)[:2]
    assert bad["Verdict"] == word and bad["Check"].startswith(word + ": ") and says in bad["Check"], bad["Check"]
    assert good == before


def test_an_error_cell_is_named(job):
    water(job, ROOF, ROOF)
    area = job._area("table", "Water")
    area.getCellByPosition(job.headings("Water").index("Roof area"), 3).setFormula("=1/0")
    bad, good = known(job)[:2]
    assert bad["Check"].startswith("NO: Roof area holds an error") and bad["Verdict"] == "NO"
    assert good["Verdict"] == "OK" and good["Check"] == "OK; caution: not compared with what it takes: Enters by is blank"


# Metric

def test_metric_agrees_with_us(job):
    foot, inch = 0.3048, 25.4
    untyped(job, [["Point precipitation frequency estimates (inches)"], *INVENTED])
    rows = [{**ROOF, "Enters by": "downspout", "Size": 3},
            {**ROOF, "Enters by": "grate", "Size": "12x10", "Open share": 0.4, "Ponding": 1, "Outlet pipe": "4 SDR35", "Outlet head": 6},
            {**ROOF, "Enters by": "trench drain", "Size": "4x5", "Length": 20, "Floor slope": "0.5%"}]
    water(job, *rows)
    job.fill("Outlets", [SWALE])
    us = known(job)[:3]
    swale = job.rows("Outlets")[0]
    job.set("Job", "Units", "metric")
    for row, size in zip(rows, (3 * inch, "304.8x254", "101.6x127")):
        row.update({"Roof area": 800 * foot ** 2, "Size": size,
                    **{key: row[key] * scale for key, scale in (("Ponding", inch), ("Outlet head", inch), ("Length", foot)) if key in row}})
    water(job, *rows)
    job.fill("Runs", [{**run, "Length": run["Length"] * foot} for run in RUNS])
    job.fill("Outlets", [{**SWALE, "Flow line": 96 - 1.5 * foot, "Bottom": 2 * foot, "Deep": 1.5 * foot}])
    metric = known(job)[:3]
    litres = 231 * 0.0254 ** 3 * 1000 / 60
    for before, after in zip(us, metric):
        for heading in ("Flow", "Takes"):
            assert after[heading] == pytest.approx(before[heading] * litres, rel=1e-9), (heading, before, after)
        assert after["% of what it takes"] == pytest.approx(before["% of what it takes"], rel=1e-9)
        assert after["Check"].split()[0] == before["Check"].split()[0]
    after = job.rows("Outlets")[0]
    for heading in ("Water depth", "Velocity", "Critical depth", "Spare depth"):
        assert after[heading] == pytest.approx(swale[heading] * foot, rel=1e-9), (heading, swale, after)
    assert after["Check"] == swale["Check"] == "OK"


# Swale

def swale(job, **changes):
    job.fill("Outlets", [{**SWALE, **changes}])
    job.document.calculate()
    return job.rows("Outlets")[0]


def test_the_swale_takes_the_lines_flow(job):
    job.fill("Nodes", BASIN_AT_B)
    water(job, ROOF, {**ROOF, "Node": "B"})
    row = swale(job, **{"Other flow": 100})
    flow = 2 * 0.95 * 6 * 800 * 1728 / 12 / 231 / 60
    assert row["Line's flow"] == pytest.approx(shown(flow), rel=1e-12) and row["Flow"] == pytest.approx(shown(flow + 100), rel=1e-12)
    depth = row["Water depth"]
    area, wet = depth * (2 + 3 * depth), 2 + 2 * depth * math.sqrt(10)
    manning = 0.3048 ** (-1 / 3) / 0.035 * area * (area / wet) ** (2 / 3) * 0.1
    assert manning * GPM == pytest.approx(row["Flow"], rel=1e-6)
    assert row["Velocity"] == pytest.approx(row["Flow"] / GPM / area, rel=1e-6)
    assert row["Spare depth"] == pytest.approx(1.5 - depth) and row["Check"] == "OK"


def test_critical_depth_of_a_textbook(job):
    depth, tolerance = value(published("05a_efm_channel_examples")["002"])
    row = swale(job, **{"Other flow": 500 * GPM - job_flow(job), "Bottom": 20, "Side slope": 1, "Deep": 10})
    assert row["Critical depth"] == pytest.approx(depth, abs=tolerance)


def job_flow(job):
    return known(job)[0]["Flow"]


@pytest.mark.parametrize("changes, says", [
    ({"Slope": "20%", "Other flow": 3000}, "NO: too fast for grass"),
    ({"Deep": 0.05}, "NO: runs over"),
    ({"Deep": 0.5}, "CHECK: "),
    ({"Outlet": "B"}, "NO: a run leaves B"),
    ({"Outlet": "Z"}, "NO: no run ends at Z"),
    ({"Outlet": ""}, "NOT JUDGED: Outlet is missing: which node ends a line here?"),
    ({"Slope": "steep"}, "NO: Slope is \"steep\""),
    ({"Slope": ""}, "NOT JUDGED: Slope is missing"),
    ({"Roughness": ""}, "NOT JUDGED: Roughness is missing"),
    ({"Bottom": -1}, "NO: Bottom is -1"),
    ({"Deep": ""}, "NOT JUDGED: Deep is missing"),
    ({"Other flow": "some"}, 'NO: Other flow is "some"'),
])
def test_what_the_swale_cannot_take(job, changes, says):
    job.fill("Outlets", [{**SWALE, **changes}, SWALE])
    job.document.calculate()
    bad, good = job.rows("Outlets")[:2]
    assert bad["Check"].startswith(says) and bad["Verdict"] == says.split(":")[0], bad["Check"]
    assert good["Check"] == "OK", good


def test_a_fault_upstream_gives_no_flow(job):
    water(job, {**ROOF, "Roof C": 95})
    row = swale(job)
    assert row["Flow"] == "" and row["Check"].startswith("NOT JUDGED: no flow at C"), row


# Tables

def test_every_listed_word_is_taken_by_its_function(job):
    job.document.calculate()
    coefficients = job.rows("Coefficients")
    assert len(coefficients) > 20
    for start in range(0, len(coefficients), 20):
        some = coefficients[start:start + 20]
        water(job, *[{**ROOF, "Roof area": 1000, "Roof C": row["Surface"]} for row in some])
        for row, inlet in zip(some, known(job)):
            assert inlet["Flow"] == pytest.approx(shown(row["High"] * 6 * 1000 * 1728 / 12 / 231 / 60), rel=1e-12), (row, inlet)
    for row in job.rows("Leaders"):
        water(job, {**ROOF, "Enters by": "downspout", "Size": row["Downspout"]})
        assert known(job)[0]["Takes"] == shown(row["Takes"]), row
    for table in ("Stock", "Surfaces", "Coefficients", "Curve numbers", "Sheet flow", "Shallow flow", "Fittings", "Leaders"):
        for row in job.rows(table):
            source = next(row[heading] for heading in ("Source", "Source of sizes", "Rule") if heading in row)
            assert source, (table, row)


@pytest.mark.parametrize("roof, slope, cleans", [(300, "1%", True), (800, "1%", True), (800, "0.62%", True), (500, "0.4%", False)])
def test_runs_show_velocity_shear_and_self_cleaning(job, roof, slope, cleans):
    """Manning at n 0.011 in a 4 in SDR 35, bore 3.975 in by ASTM D3034: depth by halving, shear = weight of water x
    hydraulic radius x slope. Full it needs 2 ft/s to keep clean, velocity.min on Rules."""
    job.fill("Runs", [{**row, "Slope": slope} for row in RUNS])
    water(job, {**ROOF, "Roof area": roof})
    known(job)
    shown = job.rows("Runs")[0]
    flow = 6 / 43200 * roof * 0.95  # cu ft/s: in/hr over sq ft
    bore, fall = 3.975 / 12, {"1%": 0.01, "0.62%": 0.0062, "0.4%": 0.004}[slope]

    def wetted(angle):
        return bore ** 2 / 8 * (angle - math.sin(angle)), bore / 2 * angle  # area, perimeter

    def velocity(angle):
        area, perimeter = wetted(angle)
        return 0.3048 ** (-1 / 3) / 0.011 * (area / perimeter) ** (2 / 3) * math.sqrt(fall)

    low, high = 0, 5.2
    for _ in range(200):
        middle = (low + high) / 2
        low, high = (middle, high) if velocity(middle) * wetted(middle)[0] < flow else (low, middle)
    area, perimeter = wetted(high)
    assert shown["Velocity"] == pytest.approx(flow / area, rel=1e-6)
    assert shown["Wall shear"] == pytest.approx(62.4 * area / perimeter * fall, rel=1e-3)  # 62.4 rounded
    full = 0.3048 ** (-1 / 3) / 0.011 * (bore / 4) ** (2 / 3) * math.sqrt(fall)
    assert (full >= 2) == cleans
    assert ("slow: " not in shown["Check"]) == cleans, shown["Check"]
