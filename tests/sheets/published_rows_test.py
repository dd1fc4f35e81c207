"""Published examples of levels, earthwork, money, variances and cutting stock, typed into the sheets.

Every row of tests/reference/20d to 20h is checked here, checked by another test that is named, or left out with its reason.
"""

import pytest

from calls import BUILD
from money_book import book
from published import published, value

LEVELS, EARTH, MONEY, VARIANCES, STICKS = (published(name) for name in (
    "20d_levelling_and_grade", "20e_earthwork", "20f_estimating_money", "20g_purchase_variances", "20h_cutting_stock"))
DAY = 46350


@pytest.fixture(scope="module")
def job():
    with book(extensions=BUILD / "extension") as made:
        made.set("Job", "Quote date", DAY)
        yield made


def inputs(row):
    return dict(part.split("=", 1) for part in row["inputs"].split(";") if "=" in part)


def near(row, ours):
    printed, tolerance = value(row)
    assert ours == pytest.approx(printed, abs=tolerance), (row["id"], row["item"], row["output"])


def between(first, last):
    return [f"{n:03}" for n in range(first, last + 1)]


# Levels

def leveled(job, *rows):
    """Rows of point, known level, backsight, rod; what Levels makes of them, by point, the last shot of each."""
    job.fill("Levels", [dict(zip(("Point", "Known level", "Backsight", "Rod"), row)) for row in rows])
    job.calculate()
    return {row["Point"]: row for row in job.rows("Levels") if row["Point"]}


RUN = between(7, 12)          # three set-ups
SECTION = between(15, 22) + ["026"]
SETUP = ["029", "030"]
CIRCUIT = between(31, 41)
METRIC = between(61, 67)


def test_level_run_of_a_study_guide(job):
    got = leveled(job, ("BM1", 100.00, 4.20, ""), ("TP1", "", 5.15, 2.50), ("TP2", "", 3.05, 3.50), ("BM2", "", "", 4.10))
    for number, point in zip(RUN, ("BM1", "TP1", "TP1", "TP2", "TP2", "BM2")):
        near(LEVELS[number], got[point]["Height of instrument" if LEVELS[number]["output"] == "HI" else "Level"])


def test_level_section_and_its_misclosure(job):
    got = leveled(job, ("BM A", 100.00, 3.10, ""), ("TP1", "", 6.44, 9.82), ("TP2", "", 8.76, 6.96), ("TP3", "", 7.12, 3.27),
                  ("BM B", 94.91, "", 10.42))
    for number, point in zip(SECTION, ("BM A", "TP1", "TP1", "TP2", "TP2", "TP3", "TP3", "BM B", "BM B")):
        near(LEVELS[number], got[point]["Closing error" if number == "026" else
                                        "Height of instrument" if LEVELS[number]["output"] == "HI" else "Level"])


def test_four_set_ups(job):
    """The sums of backsights and foresights are no cells of ours; what they are for, the last level less the first, is."""
    heights = [float(text) for text in inputs(LEVELS["027"])["HI"].split(",")]
    levels = [float(text) for text in inputs(LEVELS["027"])["elev"].split(",")]
    after = [float(text) for text in inputs(LEVELS["028"])["elev"].split(",")]
    back = [round(height - level, 3) for height, level in zip(heights, levels)]
    fore = [round(height - level, 3) for height, level in zip(heights, after)]
    got = leveled(job, ("P0", levels[0], back[0], ""), *((f"P{n}", "", back[n], fore[n - 1]) for n in (1, 2, 3)), ("P4", "", "", fore[3]))
    difference = float(LEVELS["027"]["value"]) - float(LEVELS["028"]["value"])
    assert got["P4"]["Level"] - got["P0"]["Level"] == pytest.approx(difference, abs=0.0005)
    assert [got[f"P{n}"]["Height of instrument"] for n in range(4)] == pytest.approx(heights, abs=0.0005)


def test_one_set_up_and_a_circuit(job):
    got = leveled(job, ("S", 820.00, 8.42, ""), ("X", "", "", 1.20))
    near(LEVELS["029"], got["S"]["Height of instrument"])
    near(LEVELS["030"], got["X"]["Level"])
    got = leveled(job, ("Hydrant", 5869.31, 2.68, ""), ("TP1", "", 10.83, 5.59), ("BM1", "", 10.61, 6.46), ("BM2", "", 7.57, 8.91),
                  ("TP2", "", 9.01, 5.14), ("Rock", 5880.03, "", 3.83))
    for number, point in zip(CIRCUIT, ("Hydrant", "TP1", "TP1", "BM1", "BM1", "BM2", "BM2", "TP2", "TP2", "Rock", "Rock")):
        near(LEVELS[number], got[point]["Closing error" if number == "041" else
                                        "Height of instrument" if LEVELS[number]["output"] == "HI" else "Level"])


def test_sewer_levels_in_metric(job):
    try:
        job.set("Job", "Units", "metric")
        readings = {point: float(inputs(LEVELS[number])["reading"]) for number, point in zip(METRIC[1:], "BCDEFG")}
        got = leveled(job, ("A", 72.042, 0.624, ""), *((point, "", "", rod) for point, rod in readings.items()))
        near(LEVELS["061"], got["A"]["Height of instrument"])
        for number, point in zip(METRIC[1:], "BCDEFG"):
            near(LEVELS[number], got[point]["Level"])
            assert got[point]["Check"] == "OK"
    finally:
        job.set("Job", "Units", "US")


# Runs: inverts and cuts of printed sewers. The books' cut ends at the invert, ours at the trench bottom.

def laid(job, nodes, runs):
    """Nodes as name: ground (none: shot on Levels); runs as from, to, feet, slope, outlet level."""
    job.fill("Nodes", [{"Node": name, "Kind": "bend", "Ground": ground} for name, ground in nodes.items()])
    job.fill("Runs", [dict(zip(("Line", "From", "To", "Length", "Pipe", "Slope", "Outlet level"), ("a", up, down, feet, "6 SDR35", slope, level)))
                      for up, down, feet, slope, level in runs])
    job.calculate()
    return {row["From"]: row for row in job.rows("Runs") if row["From"]}


STAKEOUT = between(68, 71)
STAKES = between(72, 80)
PERCENT = between(90, 97)


def test_sewer_stakeout_of_a_training_manual(job):
    run = laid(job, {"9+00": 126.94, "8+50": 127.33}, [("9+00", "8+50", 50, "2.18%", 121.78)])["9+00"]
    near(LEVELS["068"], run["Invert up"] - run["Invert down"])
    assert run["Invert up"] == pytest.approx(float(inputs(LEVELS["069"])["invert_9+00"]), abs=0.005)
    near(LEVELS["069"], run["Invert down"])
    near(LEVELS["070"], run["Ground up"] - run["Invert up"])
    near(LEVELS["071"], run["Ground down"] - run["Invert down"])


def test_grade_stakes_from_rods_to_cuts(job):
    stations = [int(inputs(LEVELS[number])["station_ft"]) for number in STAKES[2:]]
    rods = [float(inputs(LEVELS[number])["rod"]) for number in STAKES[2:]]
    got = leveled(job, ("BM", 163.42, 4.06, ""), *((f"S{at}", "", "", rod) for at, rod in zip(stations, rods)))
    near(LEVELS["072"], got["BM"]["Height of instrument"])
    slope = f"{100 * (160.85 - 159.72) / 564:.9f}%"
    runs = laid(job, {f"S{at}": "" for at in stations},
                [(f"S{up}", f"S{down}", down - up, slope, 159.72 if down == 564 else "") for up, down in zip(stations, stations[1:])])
    near(LEVELS["073"], -100 * runs["S0"]["Slope %"])
    for number, at in zip(STAKES[2:], stations):
        run, end = (runs[f"S{at}"], "up") if at < 564 else (runs["S500"], "down")
        near(LEVELS[number], run[f"Ground {end}"] - run[f"Invert {end}"])


def test_inverts_at_one_percent(job):
    at = sorted(int(inputs(LEVELS[number])["distance_ft"]) for number in PERCENT)
    runs = laid(job, {f"D{d}": 330 for d in at}, [(f"D{a}", f"D{b}", b - a, "1%", 323.12 if b == at[-1] else "") for a, b in zip(at, at[1:])])
    inverts = {**{d: runs[f"D{d}"]["Invert up"] for d in at[:-1]}, at[-1]: runs[f"D{at[-2]}"]["Invert down"]}
    for number in PERCENT:
        near(LEVELS[number], inverts[int(inputs(LEVELS[number])["distance_ft"])])


def test_grade_check_of_an_examination(job):
    leveled(job, ("BM", 106.35, 4.65, ""), ("G", "", "", 2.40))
    run = laid(job, {"G": "", "O": 108}, [("G", "O", 10, "1%", 107.85 - 0.1)])["G"]
    near(LEVELS["098"], run["Ground up"] - run["Invert up"])


# Earthwork and goods in bulk

def test_soil_loose_and_its_truckloads(job):
    """The room that bedding and pipe take, made as large as the example's bank volume: forty runs of 300 ft."""
    row = EARTH["019"]
    bank, swell = float(inputs(row)["bcy"]), float(inputs(row)["swell"])
    laid(job, {f"R{n}": 100 for n in range(41)}, [(f"R{n}", f"R{n + 1}", 300, "0.1%", 60 if n == 39 else "") for n in range(40)])
    job.fill("Runs", [{"Trench width": 48} for _ in range(40)])
    job.rule("bedding.depth", 12)
    job.calculate()
    trench = job.document.NamedRanges.getByName("dig_numbers").getReferredCells().getDataArray()[1:41]
    bedding, pipe = (sum(run[place] for run in trench) for place in (2, 3))  # JOB.DIG: width, soil, bedding, pipe room
    assert bedding == pytest.approx(12000 * 4 * 1 / 27)
    job.rule("bedding.depth", 12 * (bank - pipe) / bedding)
    job.rule("swell.loam", swell)
    job.rule("truck.load", float(inputs(EARTH["020"])["truck_lcy"]))
    job.rule("sand.density", float(EARTH["032"]["value"]) / 2000)
    job.calculate()
    loose = next(work for work in job.rows("Labor") if work["Work"] == "Load and haul spoil")["Quantity"]
    near(EARTH["019"], loose)
    bulk = {goods["Code"]: goods["Net"] for goods in job.rows("Takeoff")}
    near(EARTH["020"], bulk["HAUL"])
    assert bulk["BEDDING"] * 2000 == pytest.approx(float(EARTH["032"]["value"]) * (bank - pipe), rel=1e-9)
    job.rule("swell.loam", float(EARTH["028"]["value"]) - 1)
    job.calculate()
    loose = next(work for work in job.rows("Labor") if work["Work"] == "Load and haul spoil")["Quantity"]
    assert loose / bank == pytest.approx(float(EARTH["028"]["value"]), rel=1e-9)
    for key, usual in (("bedding.depth", 4), ("swell.loam", 0.25), ("truck.load", 10), ("sand.density", 1.3)):
        job.rule(key, usual)
    job.fill("Runs", [{"Trench width": ""}])


# Money: one rate for the whole direct cost, so each kind of work by itself

@pytest.mark.parametrize("number", ["016", "017"])
def test_differential_markup_of_one_kind_of_work(job, number):
    cost, factor = (float(inputs(MONEY[number])[key]) for key in ("cost", "factor"))
    laid(job, {"A": ""}, [("", "", "", "", "")])
    job.set("Labor terms", "Wage", 0)
    for key in ("contingency", "overhead", "tax.material", "tax.contract"):
        job.rule(key, 0)
    job.set("Quote", "Contingency is", "the share on Rules")
    job.rule("profit", factor - 1)
    job.set("Quote", "Subcontract", cost)
    job.calculate()
    assert job.value("direct_cost") == cost
    near(MONEY[number], job.value("price_total"))


# Variances: all of the table, from its own inputs

EXAMPLES = {}
for _number, _row in VARIANCES.items():
    if {"AQ", "AP", "SP", "SQ"} <= set(inputs(_row)):
        EXAMPLES.setdefault(_row["inputs"], []).append(_number)


@pytest.mark.parametrize("example", list(EXAMPLES))
def test_close_out_splits_a_difference_as_accounting_texts_do(job, example):
    given = {key: float(text) for key, text in (part.split("=") for part in example.split(";"))}
    job.fill("Close-out", [{"What": "material", "Group": "materials", "Estimated quantity": given["SQ"],
                            "Estimated amount": given["SQ"] * given["SP"], "Actual quantity": given["AQ"],
                            "Actual amount": given["AQ"] * given["AP"], "Cause": "price"}])
    job.calculate()
    row = job.rows("Close-out")[0]
    headings = {"price": "By price", "quantity": "By quantity", "total": "Difference"}
    for number in EXAMPLES[example]:
        near(VARIANCES[number], row[headings[VARIANCES[number]["output"].split()[0]]])


# Sticks: the sheet counts a saw cut of 1/8 in for each piece, the print none. A piece typed shorter by its cut, from a
# stick shorter by one, takes the printed length.

PACKED = ["011", "014"]
KERF = 0.125 / 12


@pytest.mark.parametrize("number", PACKED)
def test_fewest_sticks_as_printed(job, number):
    given = inputs(STICKS[number])
    stick = float(given.get("stock") or given["capacity"]) - KERF
    pieces = [float(text) - KERF for text in (given.get("sizes") or given["lengths"]).split(",")]
    job.fill("Prices", [{"Code": "PIPE-6SDR35", "Item": "pipe", "Group": "pipe", "Unit": "ft", "Pack": stick, "Waste": 0, "Price": 5,
                         "Supplier": "s", "Priced on": DAY, "Taxable": "yes"}])
    laid(job, {"N0": 100}, [(f"N{n}", f"N{n + 1}", piece, "1%", 10 if n + 1 == len(pieces) else "") for n, piece in enumerate(pieces)])
    line = next(row for row in job.rows("Takeoff") if row["Code"] == "PIPE-6SDR35")
    assert line["Net"] == pytest.approx(sum(pieces))
    assert line["Order"] == float(STICKS[number]["value"])
    cut = [row for row in job.document.NamedRanges.getByName("crew_cuts").getReferredCells().getDataArray() if row[0]]
    assert len({stick for _, stick, *_ in cut}) == float(STICKS[number]["value"]) and len(cut) == len(pieces)


# The whole of the five tables

HERE = {"20d": {*RUN, *SECTION, "027", "028", *SETUP, *CIRCUIT, *METRIC, *STAKEOUT, *STAKES, *PERCENT, "098"},
        "20e": {"019", "020", "028", "032"}, "20f": {"016", "017"},
        "20g": {number for numbers in EXAMPLES.values() for number in numbers}, "20h": set(PACKED)}
ELSEWHERE = {  # site_test, quote_test, books_test, takeoff_test
    "20d": set(between(1, 6)), "20f": {*between(1, 11), *between(20, 27), "028", "029", "030", *between(33, 37), "042", *between(47, 50)},
    "20g": {"017"}, "20h": {"015"}}
LEFT_OUT = {
    "20d": {"Levels shows levels and the misclosure, not the sums of sights": ["013", "014", "023", "024", "025"],
            "Levels flags a misclosure and does not spread it: a misclosed loop is shot again": between(42, 46)},
    "20e": {"cross sections are no input: a trench is width by cut, a pit has upright walls": [*between(1, 3), *between(4, 8), "016", "017"],
            "nothing is compacted to a measured volume": ["018", "027", "029"],
            "swell is a rule, not worked out from densities": ["025", "026"],
            "weights that the sheets do not buy by, or the same product as 032": ["030", "031", "033", "034", "035", "036", "037", "038"],
            "words": ["039"]},
    "20f": {"misprinted": ["018"], "a total over kinds of work with rates of their own; Quote has one rate": ["019"],
            "words": between(38, 41), "tax already paid in another state is no input": ["043"]},
    "20g": {"a step on the way: Bills takes the unit price as billed": ["001"], "misprinted: its exact amount is tested in books_test": ["016"]},
    "20h": {"bounds and patterns on the way to the optimum": ["001", "002", "003", "012", "013"],
            "120 pieces and more: the template has 40 ready runs; tested on the function": ["004", "005", "006", "007", "008", "016"]},
}


@pytest.mark.parametrize("table, rows", [("20d", LEVELS), ("20e", EARTH), ("20f", MONEY), ("20g", VARIANCES), ("20h", STICKS)])
def test_no_row_is_forgotten(table, rows):
    left = {number for numbers in LEFT_OUT[table].values() for number in numbers}
    assert not HERE[table] & left
    decided = HERE[table] | ELSEWHERE.get(table, set()) | left
    assert decided == set(rows), (sorted(set(rows) - decided), sorted(decided - set(rows)))
