"""The demo lot measured after the work: what the sheet says of it, and its drawing."""
import csv
import json
import math
import re
import shutil
import subprocess

import pytest

from calls import BUILD, DEMO
from drawing_test import PIPE, segments

# Invented. S6 is measured half a foot farther from both corners than it was planned, S4 lies 0.03 ft high.
MEASURED = [("S7", "96.39", "", ""), ("S6", "96.68", "house W 65.3", "house S 77.3"), ("S4", "97.14", "", "")]


# At 45 degrees north a degree is 78,847 m of longitude and 111,132 m of latitude (WGS 84): 183 ft due east of pin W.
EAST, NORTH = 78846.8, 111131.8
PLACES = {"pin W": (-93.1, 45.0), "pin N": (-93.1 + 183 * 0.3048 / EAST, 45.0)}


def with_places(file):
    with open(file, encoding="utf-8") as stream:
        rows = list(csv.DictReader(stream))
    for row in rows:
        row["Longitude"], row["Latitude"] = PLACES.get(row["Point"], ("", ""))
    with open(file, "w", newline="", encoding="utf-8") as stream:
        writer = csv.DictWriter(stream, rows[0])
        writer.writeheader()
        writer.writerows(rows)


@pytest.fixture(scope="module")
def built(tmp_path_factory):
    folder = tmp_path_factory.mktemp("as-built")
    notes = folder / "notes"
    shutil.copytree(DEMO, notes)
    with open(notes / "as-built.csv", "w", newline="", encoding="utf-8") as file:
        csv.writer(file).writerows([("Node", "Invert", "Tie 1", "Tie 2"), *MEASURED])
    with_places(notes / "layout.csv")
    subprocess.run([str(BUILD / "jobbook"), "make", str(notes), str(folder / "job.ods"), "--paper", str(folder / "paper"),
                    "--values", str(folder / "values")], check=True, stdout=subprocess.DEVNULL)
    subprocess.run([str(BUILD / "jobbook"), "drawing", str(folder / "job.ods"), str(folder / "files")], check=True, stdout=subprocess.DEVNULL)
    return folder


def polylines(file):
    """Layer and points of every polyline of an ASCII DXF: pairs of a group code and a value, a line each."""
    lines = file.read_text(encoding="ascii").splitlines()
    pairs = list(zip(map(int, lines[::2]), lines[1::2]))
    assert pairs[-1] == (0, "EOF")
    unit = pairs[pairs.index((9, "$INSUNITS")) + 1]
    found, entity = [], None
    for code, value in pairs[[pair for pair in pairs].index((2, "ENTITIES")):]:
        if code == 0:
            entity = value
            if value == "POLYLINE":
                found.append(["", []])
            if value == "VERTEX":
                found[-1][1].append([None, None])
        elif entity == "POLYLINE" and code == 8:
            found[-1][0] = value
        elif entity == "VERTEX" and code in (10, 20):
            found[-1][1][-1][code // 10 - 1] = float(value)
    return unit, found


def test_each_row_is_judged_beside_the_plan(built):
    with open(built / "values/as-built.csv", encoding="utf-8") as file:
        rows = {row["Node"]: row for row in csv.DictReader(file) if row["Node"]}
    # From the outlet's 96.10 uphill: 24 ft at 1.2 %, 26 ft at 1:90, 18 and 22 ft at 1/8 in a foot.
    planned = {"S7": 96.10 + 24 * 0.012}
    planned["S6"] = planned["S7"] + 26 / 90
    # At S5 Schedule 40 ends, whose bore is wider (6.065 in, ASTM D1785, to 5.915 of SDR 35): tops meet there.
    planned["S4"] = planned["S6"] + 40 / 96 + (6.065 - 5.915) / 12
    for node, level in planned.items():
        assert float(rows[node]["Planned invert"]) == pytest.approx(level, abs=0.002), rows[node]
    assert rows["S7"]["Check"] == rows["S6"]["Check"] == "OK"
    assert rows["S4"]["Check"].startswith("CHECK: Invert not as planned")
    assert float(rows["S6"]["Moved"]) == pytest.approx(0.5, abs=0.3)
    assert rows["S7"]["Moved"] == ""


def test_the_second_drawing_has_what_moved(built):
    plan, laid = (built / "paper" / name for name in ("drawing.pdf", "as-built.pdf"))
    text = subprocess.run(["pdftotext", "-layout", str(laid), "-"], capture_output=True, text=True, check=True).stdout
    assert re.search(r"The lot as built", text) and "NOT COMPLETE" not in text and "Not drawn" not in text, text
    assert "The lot as built" not in subprocess.run(["pdftotext", str(plan), "-"], capture_output=True, text=True, check=True).stdout
    ends = [{point for line in segments(pdf, PIPE) for point in line} for pdf in (plan, laid)]
    near = [min(abs(x - a) + abs(y - b) for a, b in ends[0]) for x, y in ends[1]]
    # One node has left its place by half a foot or so, 1.8 points at 20 ft to the inch; the others have not.
    assert sum(far > 1 for far in near) == 1, near
    assert sum(far < 0.3 for far in near) == len(near) - 1, near


def test_dxf_has_the_lot_in_feet(built):
    unit, lines = polylines(built / "files/drawing.dxf")
    assert unit == (70, "2"), "feet"
    with open(DEMO / "runs.csv", encoding="utf-8") as file:
        typed = sorted(float(run["Length"].split("'")[0]) for run in csv.DictReader(file))
    pipes = sorted(math.dist(*points) for layer, points in lines if layer.startswith("PIPE-"))
    assert pipes == pytest.approx(typed, abs=0.3), "a run is as long as it was taped"
    lot = next(points for layer, points in lines if layer == "LOT-LINE" and len(points) == 4)
    assert lot == [[-97, 7], [86, 7], [86, -88], [-97, -88]]
    # As built, one node has moved, and with it the ends of two runs; its letters say the invert.
    after = [points for layer, points in polylines(built / "files/as-built.dxf")[1] if layer.startswith("PIPE-")]
    before = [points for layer, points in lines if layer.startswith("PIPE-")]
    assert sum(math.dist(a, b) > 0.2 for old, new in zip(before, after) for a, b in zip(old, new)) == 2
    assert "\nS6 CO 96.68\n" in (built / "files/as-built.dxf").read_text(encoding="ascii")


def test_geojson_lies_where_two_points_were_typed(built):
    made = json.loads((built / "files/drawing.geojson").read_text(encoding="utf-8"))
    assert made["type"] == "FeatureCollection"
    house = next(one for one in made["features"] if one["properties"] == {"layer": "BUILDING", "name": "house"})
    # House W is 97 ft east and 7 ft south of pin W; the ring may begin anywhere.
    at = (-93.1 + 97 * 0.3048 / EAST, 45 - 7 * 0.3048 / NORTH)
    ring = house["geometry"]["coordinates"][0]
    assert ring[0] == ring[-1]
    assert min(math.dist(at, one) for one in ring) < 2e-7, "two centimeters"
    assert (built / "files/as-built.geojson").exists()
