"""Pieces counted from nodes and runs, against counts made by hand from the drawing."""

import random
from collections import defaultdict

import pytest

from calls import BUILD
from money_book import book
from published import published

DAY = 46350


@pytest.fixture(scope="module")
def job():
    with book(extensions=BUILD / "extension") as made:
        made.set("Job", "Quote date", DAY)
        made.rule("bedding.depth", 0)
        yield made


def runs(job, rows):
    job.fill("Runs", [{"Line": "a", "From": up, "To": down, "Length": length, "Pipe": pipe, "Slope": "1%",
                       "Outlet level": outlet, "Surface up": "lawn", "Surface down": "lawn"} for up, down, length, pipe, outlet in rows])


def nodes(job, rows):
    job.fill("Nodes", [{"Node": node, "Kind": kind, "Ground": 100.0, "Turn": turn, "Device": device} for node, kind, turn, device in rows])


def stock(job, code, pack=1, **more):
    return {"Code": code, "Item": code, "Group": "fitting", "Unit": "ft" if pack > 1 else "piece", "Pack": pack, "Waste": 0, "Price": 5,
            "Supplier": "s", "Priced on": DAY, "Taxable": "yes", **more}


def block(job, name, *headings):
    """Rows of an array formula that are there: its cells by the headings given, from the left."""
    cells = job.document.NamedRanges.getByName(name).getReferredCells().getDataArray()
    return [dict(zip(headings, row)) for row in cells if row[0] not in (None, "")]


def joints(job):
    """Bells of each run, in the order of Runs; None where they are not known."""
    cells = job.document.NamedRanges.getByName("dig_numbers").getReferredCells().getDataArray()
    return [row[5] for row, run in zip(cells[1:], job.rows("Runs")) if run["From"]]


def taken(job):
    return {row["Code"]: row for row in job.rows("Takeoff") if row["Code"]}


def test_counts_of_a_small_lot(job):
    """Main of 6 in SDR 35 with a Schedule 40 piece under a drive; a 4 in branch joins at W.

    By hand: basin B has one pipe; at W the branch comes in by one 6 x 4 wye; D is a downspout on the main: one 6 x 4 wye and one
    45 for its riser; at E the line turns 67 degrees, made of 45 + 22.5; the two runs that meet at X, on one line of pipe without
    a fitting, take a coupling; into and out of Schedule 40 one adapter each.
    """
    nodes(job, [("B", "basin", "", ""), ("C", "basin", "", "SMALLBOX"), ("W", "wye", "", ""), ("D", "downspout", "", ""), ("E", "bend", 67, ""),
                ("X", "crossing", "", ""), ("S", "crossing", "", ""), ("T", "crossing", "", ""), ("O", "bank", "", "")])
    runs(job, [("B", "W", 20, "6 SDR35", ""), ("C", "W", "12' 6\"", "4 sdr-35", ""), ("W", "D", 15, "6 SDR35", ""), ("D", "E", 15, "6 SDR35", ""),
               ("E", "X", 15, "6 SDR35", ""), ("X", "S", 15, "6 SDR35", ""), ("S", "T", 18, "6 SCH40", ""), ("T", "O", 10, "6 SDR35", 95)])
    job.fill("Prices", [stock(job, "PIPE-6SDR35", 14), stock(job, "PIPE-6SCH40", 20), stock(job, "PIPE-4SDR35", 10), stock(job, "WYE-6X4SDR35")])
    job.calculate()
    rows = taken(job)
    by_hand = {"WYE-6X4SDR35": 2, "BEND45-6SDR35": 1, "BEND22-6SDR35": 1, "BEND45-4SDR35": 1, "COUPLING-6SDR35": 1, "HUB-6SDR35": 1,
               "HUB-4SDR35": 1, "BASIN-12": 1, "SMALLBOX": 1, "DOWNSPOUT-4SDR35": 1, "GUARD-6": 1, "ADAPTER-6SDR35-SCH40": 1,
               "ADAPTER-6SCH40-SDR35": 1,
               # 108 ft of the main at 1 % and 12.5 ft of branch: B lies 3.92 ft under its grate, five rings of 6 in below 18 in;
               # C as deep. Tape over all of it.
               "BASIN-12-RISER": 5, "SMALLBOX-RISER": 5, "TAPE-WARN": 120.5,
               # The trench at O is 5 ft and the wall of 0.18 in deep, no bedding; at 1 % it is 5 ft deep 1.5 ft on.
               "SHORING": pytest.approx(1.5, abs=1e-5)}
    counted = {code: row["Net"] for code, row in rows.items() if not code.startswith(("PIPE", "CEMENT", "PRIMER", "SOD", "HAUL"))}
    assert counted == by_hand
    riser = 100 - next(row["Invert up"] for row in job.rows("Runs") if row["From"] == "D")  # its opening is the ground
    assert riser > 0
    assert rows["PIPE-6SDR35"]["Net"] == pytest.approx(20 + 15 * 4 + 10)
    assert rows["PIPE-6SCH40"]["Net"] == 18
    assert rows["PIPE-4SDR35"]["Net"] == pytest.approx(12.5 + riser)
    # Bells: 20 ft of 14 ft sticks 1, four runs of 15 ft 1 each, 12.5 ft of 10 ft sticks 1, 18 of 20 and 10 of 14 none.
    assert sum(joints(job)) == 6
    # Sockets: 2 wyes 3 each, 3 bends, coupling 2 each, 2 hubs, downspout, outlet 1 each; 2 adapters 2 each.
    assert rows["CEMENT"]["Where it comes from"].startswith(f"Pieces and bells: {2 * 3 + 3 * 2 + 2 + 2 + 1 + 1 + 2 * 2 + 6} sockets")
    assert "D" in rows["WYE-6X4SDR35"]["Where it comes from"] and "W" in rows["WYE-6X4SDR35"]["Where it comes from"]
    # Only four codes have a price: all others are flagged, not silently free.
    assert all((row["Check"] == "OK") == (code in ("PIPE-6SDR35", "PIPE-6SCH40", "PIPE-4SDR35", "WYE-6X4SDR35")) for code, row in rows.items())
    assert all("no price for" in row["Check"] for row in rows.values() if row["Check"] != "OK")
    assert job.value("takeoff_check").startswith("NO")


def test_a_suppliers_own_code_is_bought(job):
    job.fill("Codes", [{"Piece": "WYE-6X4SDR35", "Buy as": "Y64"}])
    job.fill("Prices", [stock(job, "Y64", Price=30)])
    job.calculate()
    rows = taken(job)
    assert "WYE-6X4SDR35" not in rows
    assert rows["Y64"]["Net"] == 2 and rows["Y64"]["Amount"] == 60
    job.fill("Codes", [{"Piece": "", "Buy as": ""}])


def test_fewest_sticks_of_a_published_list(job):
    row = published("20h_cutting_stock")["015"]
    assert row["inputs"] == "stock=2000;pieces=255x10,750x7,550x13"  # a tenth of it: no run is longer than 300 ft
    pieces = [25.5] * 10 + [75] * 7 + [55] * 13
    nodes(job, [(f"N{n}", "bend", "", "") for n in range(len(pieces))] + [("O", "bank", "", "")])
    names = [f"N{n}" for n in range(len(pieces))] + ["O"]
    runs(job, [(names[n], names[n + 1], piece, "6 SDR35", 10 if n + 1 == len(pieces) else "") for n, piece in enumerate(pieces)])
    job.fill("Prices", [stock(job, "PIPE-6SDR35", 200)])
    job.calculate()
    line = taken(job)["PIPE-6SDR35"]
    assert line["Net"] == pytest.approx(sum(pieces))
    assert line["Order"] == float(row["value"])


KERF = 0.125 / 12


def cut_list(job):
    """The crew's paper, where lengths have two decimals, with lengths and rests as they were worked out."""
    rows = block(job, "crew_cuts", "Pipe", "Stick", "Pieces", "Length", "In feet and inches", "Left over", "Left in feet and inches",
                 "Of a stick", "Whole piece", "For")
    for row, (stick, many, length, left, _) in zip(rows, cut_numbers(job, len(rows))):
        assert row["Stick"].split(" to ")[0] == f"{stick:.0f}" and row["Pieces"] == f"{many:.0f}", row
        assert float(row["Length"]) == pytest.approx(length, abs=0.005 + 1e-9), row
        assert row["Left over"] == "" if left == "" else float(row["Left over"]) == pytest.approx(left, abs=0.005 + 1e-9), row
        row.update({"Pieces": many, "Length": length, "Left over": left})
        row.update({heading: float(row[heading]) for heading in ("Of a stick", "Whole piece")})
    return rows


TABLES = "facts nodes water runs crossings outlets pit pit_facts rules rain peak ground pump prices codes terms"


def cut_numbers(job, many):
    """JOB.CUTS of the job: stick, sticks, length, what is left over, row of Runs."""
    sheets = job.document.Sheets
    if not sheets.hasByName("Cuts"):
        sheets.insertNewByName("Cuts", sheets.Count)
    area = sheets["Cuts"].getCellRangeByPosition(0, 0, 4, max(many, 2) - 1)
    sheets["Cuts"].getCellRangeByPosition(0, 0, 4, 999).clearContents(16 | 1 | 4)
    area.setArrayFormula("=JOB.CUTS(" + ";".join(f"{name}_in" for name in TABLES.split()) + ";units;runs_first)")
    return area.getDataArray()[:many]


def says(job, *words):
    """The lines of the crew's page and of its cut list that hold all these words."""
    lines = []
    for sheet in ("Crew", "Cut list"):
        used = job.document.Sheets[sheet].createCursor()
        used.gotoEndOfUsedArea(False)
        lines += job.document.Sheets[sheet].getCellRangeByPosition(0, 0, 0, used.RangeAddress.EndRow).getDataArray()
    return [line for line, in lines if all(word in str(line) for word in words)]


@pytest.mark.parametrize("seed", range(4))
def test_the_crews_cut_list_holds_every_piece_on_as_many_sticks_as_are_bought(job, seed):
    dice = random.Random(seed)
    sticks = {"PIPE-6SDR35": 14, "PIPE-4SDR35": 10, "PIPE-6SCH40": 20, "PIPE-4SCH40": 10}  # the last for risers
    pieces = [(f"N{n}", f"N{n + 1}", round(dice.uniform(1, 45), 2), dice.choice(["6 SDR35", "4 SDR35", "6 SCH40"]))
              for n in range(24)]
    nodes(job, [(f"N{n}", dice.choice(["bend", "cleanout", "downspout"]), "", "") for n in range(24)] + [("N24", "bank", "", "")])
    runs(job, [(*piece, 10 if piece[1] == "N24" else "") for piece in pieces])
    job.fill("Prices", [stock(job, code, stick, Group="pipe") for code, stick in sticks.items()])
    job.calculate()
    wanted = {f"{up} to {down}": length for up, down, length, _ in pieces}
    risers = {row["Node"] for row in job.rows("Nodes") if row["Kind"] in ("cleanout", "downspout")}
    wanted.update({f"riser at {row['From']}": 100 - row["Invert up"] for row in job.rows("Runs") if row["From"] in risers})
    assert len(wanted) > 24, "some nodes have risers"
    cut, used, left = defaultdict(float), defaultdict(float), {}
    for row in cut_list(job):
        cut[row["For"]] += row["Pieces"] * row["Length"]
        first, last = (int(number) for number in (str(row["Stick"]).split(" to ") * 2)[:2])
        assert last - first + 1 == row["Pieces"], row
        row["Pipe"] = row["Pipe"].replace(" ", "")
        assert row["Of a stick"] == sticks["PIPE-" + row["Pipe"]]
        assert row["Whole piece"] == pytest.approx(wanted[row["For"]], abs=0.005 + 1e-9), "two decimals on paper"
        for stick in range(first, last + 1):
            used[row["Pipe"], stick] += row["Length"] + (KERF if used[row["Pipe"], stick] else 0)
            if row["Left over"] != "":
                left[row["Pipe"], stick] = row["Left over"]
    wrong = {piece: (cut.get(piece), wanted.get(piece)) for piece in {*cut, *wanted}
             if abs(cut.get(piece, 0) - wanted.get(piece, 0)) > 1e-5}
    assert not wrong, "every run and riser, whole"
    assert set(left) == set(used), "each stick says what is left of it"
    bought = {row["Code"]: row["Order"] for row in job.rows("Takeoff") if row["Code"] in sticks}
    counted = {row["Code"]: row["Fewest"] for row in job.rows("Takeoff") if row["Code"] in sticks}
    for (pipe, stick), length in used.items():
        assert length <= sticks["PIPE-" + pipe] + 2e-4, (pipe, stick)
        assert left[pipe, stick] == pytest.approx(max(0, sticks["PIPE-" + pipe] - length - KERF), abs=1e-4) or length == sticks["PIPE-" + pipe]
    for code, order in bought.items():
        numbers = sorted(stick for pipe, stick in used if "PIPE-" + pipe == code)
        assert numbers == list(range(1, len(numbers) + 1)), code
        assert len(numbers) == counted[code] == order, code
    assert not says(job, "NOT ALL IS ON THIS LIST")
    english = [row["Length"] for row in block(job, "crew_cuts", *"abc", "Length")]
    language = job.document.NamedRanges.getByName("paper_language").getReferredCells().getCellByPosition(0, 0)
    language.setString("es")
    job.calculate()
    spanish = block(job, "crew_cuts", *"abc", "Length", *"defgh", "For")
    language.setString("en")
    assert [row["Length"] for row in spanish] == english
    assert all(" a N" in row["For"] or row["For"].startswith("tubo vertical en N") for row in spanish)


def test_a_pipe_without_a_stick_length_is_missed_by_the_cut_list_and_said(job):
    nodes(job, [("A", "bend", "", ""), ("B", "bend", "", ""), ("O", "bank", "", "")])
    runs(job, [("A", "B", 25, "4 SDR35", ""), ("B", "O", 12, "6 SDR35", 95)])
    job.fill("Prices", [stock(job, "PIPE-6SDR35", 14, Group="pipe")])
    job.calculate()
    assert [(row["Pipe"], row["For"], row["Length"]) for row in cut_list(job)] == [("6 SDR35", "B to O", 12)]
    assert says(job, "NOT ALL IS ON THIS LIST")
    assert job.value("takeoff_says") == "A-B: no stick length is known for PIPE-4SDR35"
    # What has no price is named first; the amount is not forgotten behind it.
    assert job.value("takeoff_check").startswith("NO: no price for PIPE-4SDR35")
    assert job.value("takeoff_uncounted") == 1


def test_cleanouts_that_the_rules_ask_are_said_and_bought_on_demand(job):
    """By hand: 4 in pipe every 50 ft, so 120 ft from the head want two; 6 in pipe every 100 ft; a turn of 67.5 that is
    45 ft from the last cleanout wants one, and C, which is a cleanout, starts anew."""
    nodes(job, [("A", "bend", "", ""), ("B", "wye", "", ""), ("C", "cleanout", "", ""), ("D", "bend", 67.5, ""), ("O", "bank", "", "")])
    runs(job, [("A", "B", 120, "4 SDR35", ""), ("B", "C", 10, "6 SDR35", ""), ("C", "D", 45, "6 SDR35", ""), ("D", "O", 101, "6 SDR35", 90)])
    job.fill("Prices", [stock(job, "PIPE-6SDR35", 14), stock(job, "PIPE-4SDR35", 10)])
    job.calculate()
    job.fill("Prices", [stock(job, "PIPE-6SDR35", 14), stock(job, "PIPE-4SDR35", 10), stock(job, "WYE-4SDR35")] +
             [stock(job, code) for code in taken(job) if not code.startswith("PIPE")])
    for buy, more in (("no", 0), ("yes", 1)):
        job.set("Takeoff choices", "Buy cleanouts asked", buy)
        job.calculate()
        assert job.value("cleanouts_asked") == 2 + 1 + 1, "two on A-B, at D, and one on 101 ft below it"
        said = job.value("takeoff_says").splitlines()
        assert "A-B: the rules ask 2 more cleanouts: on A to B 2 x, 50 ft below A" in said, said
        assert "D-O: the rules ask 2 more cleanouts: at D; on D to O, 100 ft below D" in said, said
        rows = taken(job)
        # On Nodes: one cleanout, its 6 x 4 wye and its 45; B's bend is straight, its wye a reducer in size only.
        assert rows["CLEANOUT-4SDR35"]["Net"] == 1 + 4 * more
        assert rows["BEND45-4SDR35"]["Net"] == 1 + 4 * more
        assert rows["WYE-6X4SDR35"]["Net"] == 1 + 2 * more
        assert ("WYE-4SDR35" in rows) == bool(more) and (not more or rows["WYE-4SDR35"]["Net"] == 2)
        assert rows["CLEANOUT-4SDR35"]["Where it comes from"].startswith("Rules: ") == bool(more)
        assert job.value("takeoff_check") == ("OK" if more else "CHECK: the rules ask 4 more cleanouts than Nodes has")
    job.set("Takeoff choices", "Buy cleanouts asked", "no")


def test_an_error_in_one_run_spoils_its_own_count(job):
    nodes(job, [("A", "bend", "", ""), ("B", "bend", 45, ""), ("O", "bank", "", "")])
    runs(job, [("A", "B", "ten", "6 SDR35", ""), ("B", "O", 12, "6 SDR35", 95)])
    job.fill("Prices", [stock(job, "PIPE-6SDR35", 14)])
    job.calculate()
    assert joints(job) == [None, 0]
    assert job.value("takeoff_says").startswith("A-B: the length is not known"), job.value("takeoff_says")
    assert taken(job)["BEND45-6SDR35"]["Net"] == 1
    assert job.value("takeoff_check").startswith("NO")


def test_crew_lists_that_cannot_be_worked_out_are_said_to_be_missing(job):
    nodes(job, [("A", "bend", "", ""), ("O", "bank", "", "")])
    runs(job, [("A", "O", 12, "6 SDR35", 95)])
    job.fill("Prices", [stock(job, "PIPE-6SDR35", 14)])
    job.set("Takeoff choices", "New sod", "many")
    job.calculate()
    assert says(job, "NO STATIONS") and says(job, "NO CUTS")
    job.set("Takeoff choices", "New sod", 0.25)
    job.calculate()
    assert not says(job, "NO STATIONS") and not says(job, "NO CUTS")
    assert [row["Length"] for row in cut_list(job)] == [12]
