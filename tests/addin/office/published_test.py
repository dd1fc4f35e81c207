"""Printed values in Calc's own cells: the tables of tests/reference as columns, our functions beside them."""

import csv
import re

import pytest

from built import CHECKOUT
from calc import Error

CFS = 448.8312  # gpm
BOOK_MANNING = 1.49 / 1.48592  # a table computed with 1.49 for the exact constant


def read_rows(name):
    """The rows of a reference table that were read in their source."""
    with open(CHECKOUT / "tests" / "reference" / name, newline="", encoding="utf-8") as lines:
        return [row for row in csv.DictReader(lines) if row["provenance"] == "read"]


def inputs(row):
    return dict(pair.split("=", 1) for pair in row["inputs"].split(";") if "=" in pair)


def compare(sheet, checks, least):
    """checks: (row, formula, factor that turns ours into the row's unit)."""
    assert len(checks) >= least
    shown = sheet.formulas([formula for _, formula, _ in checks])
    wrong = [f"{row['id']}: ={formula} shows {ours}, printed {row['value']} {row['unit']} ({row['source']})"
             for (row, formula, factor), ours in zip(checks, shown)
             if isinstance(ours, Error) or abs(ours * factor - float(row["value"])) > float(row["tol_abs"]) * (1 + 1e-9)]
    assert not wrong, "\n".join(wrong)


def test_runoff_depth_by_curve_number(sheet):
    rows = read_rows("03a_tr55_table2-1_runoff_depth.csv")
    compare(sheet, [(row, f"RUNOFF.DEPTH({inputs(row)['P_in']};{inputs(row)['CN']})", 1) for row in rows], 200)


def test_runoff_depth_in_metric(sheet):
    rows = read_rows("03a_tr55_table2-1_runoff_depth.csv")
    compare(sheet, [(row, f"RUNOFF.DEPTH({inputs(row)['P_in']}*25.4;{inputs(row)['CN']};0.2;\"metric\")", 1 / 25.4)
                    for row in rows], 200)


def test_part_full_flow_of_a_one_foot_pipe(sheet):
    rows = [row for row in read_rows("12e_circular_elements_printed_table.csv") if row["output"].startswith("discharge")]
    compare(sheet, [(row, f"PIPE.CAPACITY(12;0.005;0.013;{inputs(row)['y/d']})", BOOK_MANNING / CFS) for row in rows], 45)


def test_sizes_of_schedule_40_and_sdr_35(sheet):
    checks = []
    for row in read_rows("11a_pipe_dimensions.csv"):
        named = re.fullmatch(r"(Sch 40|SDR 35) PVC, nominal (3|4|6|8) in", row["item"])
        function = {"outside diameter": "PIPE.OUTSIDE", "inside diameter": "PIPE.BORE"}.get(row["output"])
        if named and function:
            name = f"{named[2]} {named[1].replace(' ', '').upper()}"
            checks.append((row, f'{function}("{name}")', 1))
    compare(sheet, checks, 8)


def test_rain_from_a_table_in_cells(sheet):
    """The frequency table stands in cells as it is printed, durations as text; every printed depth comes back."""
    rows = [row for row in read_rows("12h_noaa_atlas14_tables.csv")
            if row["output"] == "depth" and row["item"] == "Ann Arbor, Michigan"]
    durations = list(dict.fromkeys(inputs(row)["duration"] for row in rows))
    years = list(dict.fromkeys(inputs(row)["ARI_yr"] for row in rows))
    text = sheet.document.NumberFormats.queryKey("@", sheet.document.CharLocale, False)
    table = sheet.document.Sheets[0].getCellRangeByPosition(10, 0, 10 + len(years), len(durations))
    for column, year in enumerate(years, start=1):
        table.getCellByPosition(column, 0).setValue(float(year))
    for line, duration in enumerate(durations, start=1):
        table.getCellByPosition(0, line).NumberFormat = text
        table.getCellByPosition(0, line).setString(duration)
    for row in rows:
        table.getCellByPosition(1 + years.index(inputs(row)["ARI_yr"]),
                                1 + durations.index(inputs(row)["duration"])).setValue(float(row["value"]))
    address = table.AbsoluteName.split(".")[-1]
    unit = {"min": 1, "hr": 60, "day": 1440}
    checks = []
    for row in rows:
        count, name = inputs(row)["duration"].split("-")
        checks.append((row, f"RAIN.DEPTH({address};{int(count) * unit[name]};{inputs(row)['ARI_yr']})", 1))
    compare(sheet, checks, 100)


@pytest.mark.parametrize("formula, printed, tolerance, source", [
    ("PIT.ROCK(140;0.4)*27", 350, 0.5, "municipal ordinance, infiltration trench example"),
    ("SLOPE.READ(\"1/8 in/ft\")*96", 1, 1e-12, "twelve inches to the foot"),
    ("TAPE.FEET(\"5' 6-1/2\"\"\")*24", 133, 1e-9, "twelve inches to the foot"),
    ("TAPE.FEET(\"3.5 m\";\"metric\")", 3.5, 1e-12, "a meter is a meter"),
    ("RUNOFF.FLOW(43560;0.5;1)", 0.5 * 43560 / 12 / 3600 * 7.48051948 * 60, 1e-6,
     "one inch an hour on an acre, exact (231 cubic inches to the gallon)"),
])
def test_single_values(sheet, formula, printed, tolerance, source):
    assert sheet.formula(formula) == pytest.approx(printed, abs=tolerance), source
