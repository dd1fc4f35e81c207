"""Lots of tests/lots as workbooks: what the sheets and jobbook's summary say is what an old hand wrote about them.

Three of them in the usual run; every one, with its twin and its other cases, where TRENCHBOOK_EVERY_LOT is set.
"""

import csv
import os
import re

import pytest

from calls import CHECKOUT, done, fields, rows

LOTS = CHECKOUT / "tests" / "lots"
USUAL = [("hardly-any-fall", "measured"), ("pit-in-clay", "measured"), ("under-an-irrigation-line", "twin")]
KEEPS_FROM_OK = ["NO", "NOT JUDGED", "CHECK"]  # the worst first
NAMED_BY = {"runs": ["From", "To"], "crossings": ["From", "To"], "ground": ["From", "To", "At"], "soak": ["Hole", "Reading"]}
OPEN_ON_EVERY_LOT = 2  # grounds are typed, not shot; nobody has called 811


def cases():
    return [(folder.name, line["Lot"]) for folder in sorted(LOTS.iterdir()) if folder.is_dir()
            for line in rows(folder / "verdict.csv") if line["Sheet"] == "all"]


def name_of(file, row):
    return "-".join(row[heading] for heading in NAMED_BY.get(file, [next(iter(row))]))


def lines(lot, case, file):
    return [line for line in rows(LOTS / lot / f"{file}.csv") if line["Lot"] == case]


def notes_of(lot, case, folder):
    """The lot's site notes with what is changed in this case."""
    folder.mkdir()
    changes = lines(lot, case, "changes")
    for path in (LOTS / lot / "notes").iterdir():
        table = rows(path)
        headings = list(table[0])
        for change in [change for change in changes if change["File"] == path.stem]:
            found = [row for row in table if name_of(path.stem, row) == change["Row"]]
            if not found:  # a label that the form did not have
                found = [{"field": change["Row"]}]
                table += found
            assert len(found) == 1 and change["Column"] in headings, change
            found[0][change["Column"]] = change["Value"]
        with open(folder / path.name, "w", encoding="utf-8", newline="") as file:
            writer = csv.DictWriter(file, headings)
            writer.writeheader()
            writer.writerows(table)
    assert {change["File"] for change in changes} <= {path.stem for path in folder.iterdir()}
    return folder


def worst(severities):
    return next((severity for severity in KEEPS_FROM_OK if severity in severities), "OK")


def tells(check, line):
    """Whether one of the sentences of a Check is of this severity and has these words in it."""
    return any(said.startswith(f"{line['Verdict']}: ") and line["Words"] in said
               for said in re.split("; (?=NO: |NOT JUDGED: |CHECK: |caution: |saving: )", check))


@pytest.mark.parametrize("lot, case", cases() if os.environ.get("TRENCHBOOK_EVERY_LOT") else USUAL)
def test_the_workbook_says_what_the_old_hand_wrote(tmp_path, lot, case):
    values = tmp_path / "values"
    said = done("make", notes_of(lot, case, tmp_path / "notes"), tmp_path / "job.ods", "--values", values)
    expected = lines(lot, case, "verdict")
    found = {"OK": 0, "NO": 0, "NOT JUDGED": 0, "CHECK": 0}
    for sheet in ["Nodes", "Water", "Runs", "Ground", "Crossings", "Outlets", "Pump", "Pit"]:
        if sheet == "Pit":
            check = fields(values / "pit-results.csv")["Check"]
            table = [{"Name": "G", "Check": check, "Verdict": re.split("[:;]", check)[0]}] if check else []
        else:
            table = [{"Name": name_of(sheet.lower(), {heading: row[heading] for heading in row
                                                      if heading not in ("Verdict", "Check")}), **row}
                     for row in rows(values / f"{sheet.lower()}.csv")]
        told = [line for line in expected if line["Sheet"] == sheet]
        assert {line["Row"] for line in told} <= {row["Name"] for row in table}, sheet
        for row in table:
            of_row = [line for line in told if line["Row"] == row["Name"]]
            assert row["Verdict"] == worst([line["Verdict"] for line in of_row]), (sheet, row["Name"], row["Check"])
            for line in of_row:
                assert tells(row["Check"], line), (line, row["Check"])
            found[row["Verdict"]] += 1

    job = fields(values / "verdict.csv")
    soaked = [row["Check"] for row in rows(values / "soak.csv")]
    assert not any(check.startswith(("NO", "CHECK")) for check in soaked)
    assert int(job["Rows with NO"]) == found["NO"]
    assert int(job["Rows to CHECK"]) == found["CHECK"]
    assert int(job["Rows with OK"]) == found["OK"] + sum(check.startswith("OK") for check in soaked)
    # Each sentence counts here, not each row.
    assert int(job["Not judged"]) == OPEN_ON_EVERY_LOT + sum(line["Verdict"] == "NOT JUDGED" for line in expected[1:])
    # jobbook's summary lists the rows, and Job names the first NO.
    overall = expected[0]["Verdict"]
    assert worst([word for word in KEEPS_FROM_OK if found[word]]) == overall
    assert job["First NO"].startswith("NO on ") == (overall == "NO"), job["First NO"]
    for line in expected[1:]:
        if line["Verdict"] == "NO":
            place = {"Runs": f"Runs {line['Row'].replace('-', ' to ')}", "Pit": "Pit"}.get(line["Sheet"], line["Sheet"])
            assert any(text.strip().startswith(place) and line["Words"] in text for text in said.split("\n")), line
