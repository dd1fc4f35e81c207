"""jobbook again: the next lot from an old job, and nothing of the old lot in its file."""

import re
import zipfile

import pytest

from calls import DEMO, done, fields, give, jobbook, rows

TYPED_WORDS = {  # columns whose words belong to the lot
    "levels": ["Point", "Note"], "nodes": ["Node", "Shot", "Tie 1", "Tie 2", "Photo"], "water": ["Inlet"],
    "runs": ["Line"], "crossings": ["What", "Ticket"], "soak": ["Hole"],
}
LOT_FIELDS = ["Job", "Owner", "Site", "Quote date", "Locate ticket", "Ticket good from", "Ticket good until", "Notes"]
EXTRA = {  # on top of the demo's notes, so that every kind of trace is there
    "job": {"Owner": "Petronella Quackenbush", "Site": "4711 Umbrella Court", "Locate ticket": "TKT-998877",
            "Quote date": "2026-03-07", "Ticket good from": "2026-03-01", "Ticket good until": "2026-03-21",
            "Notes": "gate code 8642 zulu"},
}


@pytest.fixture(scope="module")
def lots(tmp_path_factory):
    folder = tmp_path_factory.mktemp("again")
    files = {path.stem.replace("-", "_"): path.read_text(encoding="utf-8") for path in DEMO.glob("*.csv")}
    lines = [line for line in files["job"].splitlines() if line.split(",")[0] not in EXTRA["job"]]
    files["job"] = "\n".join(lines + [f"{label},{value}" for label, value in EXTRA["job"].items()]) + "\n"
    give(folder / "notes", **files)
    give(folder / "notes", rules="Key,Value\ncover.lawn,13\n")
    done("make", folder / "notes", folder / "old.ods", "--values", folder / "old")
    said = done("again", folder / "old.ods", folder / "new.ods")
    (folder / "said.txt").write_text(said)
    done("values", folder / "new.ods", folder / "new")
    return folder


def everything(path):
    """All text of the file, markup taken out, so that words split by markup are found too."""
    with zipfile.ZipFile(path) as packed:
        raw = "\n".join(packed.read(name).decode("utf-8", "replace") for name in packed.namelist() if name.endswith(".xml"))
    return raw + re.sub(r"<[^>]*>", "", raw)


def test_nothing_of_the_old_lot_is_left_in_the_file(lots, tmp_path):
    done("blank", tmp_path / "blank")
    done("make", tmp_path / "blank", tmp_path / "blank.ods")
    plain, old, new = (everything(path) for path in (tmp_path / "blank.ods", lots / "old.ods", lots / "new.ods"))
    words = {value for label, value in fields(lots / "old/job.csv").items() if label in LOT_FIELDS}
    for name, columns in TYPED_WORDS.items():
        for row in rows(lots / f"old/{name}.csv"):
            words.update(row[column] for column in columns)
    # Short names and words that every workbook has cannot tell one lot from another.
    telling = {word for word in words if len(word) >= 4 and word not in plain}
    assert len(telling) > 20 and set(EXTRA["job"].values()) <= telling
    for word in telling:
        assert word in old, "the search would find it"
        assert word not in new, word


def test_measured_cells_are_blank(lots):
    for name in ("levels", "nodes", "water", "runs", "crossings", "soak"):
        assert rows(lots / f"new/{name}.csv") == [], name
    job = fields(lots / "new/job.csv")
    for label in LOT_FIELDS:
        assert job[label] == "", label


def test_prices_and_rules_go_along(lots):
    before, after = rows(lots / "old/prices.csv"), rows(lots / "new/prices.csv")
    assert before and [drop(row, "Check") for row in before] == [drop(row, "Check") for row in after]
    rules = {row["Key"]: row["Value"] for row in rows(lots / "new/rules.csv")}
    assert rules == {row["Key"]: row["Value"] for row in rows(lots / "old/rules.csv")}
    assert float(rules["cover.lawn"]) == 13
    old, new = fields(lots / "old/job.csv"), fields(lots / "new/job.csv")
    for label in ("Units", "Rain station", "Return period", "Duration", "Rain"):
        assert old[label] == new[label], label


def drop(row, heading):
    return {name: value for name, value in row.items() if name != heading}


def test_each_old_number_is_in_a_note(lots):
    with zipfile.ZipFile(lots / "new.ods") as packed:
        content = packed.read("content.xml").decode()
    notes = set(re.findall(r"The last lot had ([^<]*?) here \((\w[^<]*?)\)", content))
    for line, row in enumerate(rows(lots / "old/levels.csv"), start=1):
        for heading in ("Known level", "Backsight", "Rod"):
            if row[heading]:
                assert (row[heading], f"Levels, {heading}, row {line}") in notes, (line, heading)


def test_it_says_what_to_measure_again(lots):
    said = (lots / "said.txt").read_text()
    assert "To measure again:" in said and re.search(r"Levels: \d+ numbers", said)
    assert "Still missing:" in said and "Job: name" in said and "Levels: rod readings" in said


def test_the_new_lot_is_filled_like_any_other(lots, tmp_path):
    """Twice the same gives the same: the next lot's file is a job like the first."""
    done("again", lots / "new.ods", tmp_path / "third.ods")
    done("values", tmp_path / "third.ods", tmp_path / "third")
    for path in (lots / "new").iterdir():
        assert (tmp_path / "third" / path.name).read_text() == path.read_text(), path.name


def test_a_file_that_is_no_job_is_refused(tmp_path):
    (tmp_path / "list.csv").write_text("a,b\n1,2\n")
    ran = jobbook("again", tmp_path / "list.csv", tmp_path / "new.ods")
    assert ran.returncode == 1 and "not a job workbook" in ran.stderr
    assert not (tmp_path / "new.ods").exists()
