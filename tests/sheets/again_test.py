"""jobbook again and fill: the next lot from an old job, nothing of the old lot in its file, finished when nothing is open."""

import datetime
import html
import re
import shutil
import subprocess
import zipfile

import pytest

from calls import BUILD, CHECKOUT, DEMO, done, fields, give, jobbook, rows
from money_book import edited
from office import Office, save

pytestmark = pytest.mark.dated
SECOND = CHECKOUT / "sheets" / "demo" / "clay-lot"

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
    shutil.copy(DEMO / "logo.png", folder / "notes")
    done("make", folder / "notes", folder / "old.ods", "--values", folder / "old")
    said = done("again", folder / "old.ods", folder / "new.ods")
    (folder / "said.txt").write_text(said)
    done("values", folder / "new.ods", folder / "new")
    return folder


def test_the_contractors_logo_goes_along(lots):
    with zipfile.ZipFile(lots / "new.ods") as packed:
        pictures = [packed.read(name) for name in packed.namelist() if name.startswith("Pictures/")]
    assert pictures == [(DEMO / "logo.png").read_bytes()]


def everything(path):
    """All text of the file, markup taken out, so that words split by markup are found too. Left out is when the file and
    its cell notes were written, and the cell that says which day it is: that day may be any, one of the demo's too."""
    with zipfile.ZipFile(path) as packed:
        raw = "\n".join(packed.read(name).decode("utf-8", "replace") for name in packed.namelist())
    raw = re.sub(r"<(dc:date|meta:creation-date)>[^<]*</\1>", "", raw)
    raw = re.sub(r'<table:table-cell [^>]*table:formula="of:=TODAY\(\)"[^>]*>.*?</table:table-cell>', "", raw)
    return html.unescape(raw + re.sub(r"<[^>]*>", "", raw))


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
        third, new = (  # made on two days, where midnight lies between
            [line for line in one.read_text().splitlines() if not line.startswith("Today,")]
            for one in (tmp_path / "third" / path.name, path))
        assert third == new, path.name


def test_a_file_that_is_no_job_is_refused(tmp_path):
    (tmp_path / "list.csv").write_text("a,b\n1,2\n")
    ran = jobbook("again", tmp_path / "list.csv", tmp_path / "new.ods")
    assert ran.returncode == 2 and "not a job workbook" in ran.stderr
    assert not (tmp_path / "new.ods").exists()


def headings_of(document, table):
    area = document.NamedRanges.getByName("table_" + table).getReferredCells()
    return {area.getCellByPosition(column, 0).String: area.getCellByPosition(column, 0) for column in range(area.Columns.Count)}


@pytest.fixture(scope="module")
def foreign(lots, tmp_path_factory):
    """Jobs that somebody took things out of, or named anew."""
    folder = tmp_path_factory.mktemp("foreign")

    def rename(table, heading, to):
        return lambda document: headings_of(document, table)[heading].setString(to)

    hurt = {
        "no rules": lambda document: document.Sheets.removeByName("Rules"),
        "no prices": lambda document: document.Sheets.removeByName("Prices"),
        "renamed": rename("Prices", "Price", "Cost each"),
        "doubled": rename("Prices", "Their number", "Price"),
        "two lines": rename("Runs", "Surface up", "Line"),
        "no codes": rename("Codes", "Buy as", "Bought as"),
        "other sheet": lambda document: setattr(document.Sheets.getByName("Prices"), "Name", "Our prices"),
    }
    with Office(BUILD / "extension") as office:
        for name, harm in hurt.items():
            document = office.open(lots / "old.ods")
            document.enableAutomaticCalculation(False)
            harm(document)
            save(document, folder / f"{name}.ods")
            document.close(True)
    return folder


@pytest.mark.parametrize("name, says", [
    ("no rules", "the old job has no Rules any more: the new one would stand on the template's values in its place"),
    ("no prices", "the old job has no Prices any more"),
    ("renamed", "Prices of the old job has no Price: a heading that has another name is not read"),
    ("doubled", "Prices has Price twice: which of them goes along?"),
    ("other sheet", "the sheet Our prices was Prices: give it its name back, and it is read"),
])
def test_a_job_that_has_lost_what_decides_its_price_is_refused(foreign, tmp_path, name, says):
    """Its tax, limits and prices would be those of the template, with nothing to be seen."""
    ran = jobbook("again", foreign / f"{name}.ods", tmp_path / "new.ods")
    assert ran.returncode == 2 and says in ran.stderr and "Nothing was written." in ran.stderr, ran.stdout + ran.stderr
    assert list(tmp_path.iterdir()) == []


def test_what_else_is_missing_is_named(lots, foreign, tmp_path):
    assert "Not in the old job" not in (lots / "said.txt").read_text(), "a job of today has it all"
    said = done("again", foreign / "no codes.ods", tmp_path / "new.ods")
    assert said.startswith("Not in the old job; here stands what the template has:\n  Codes: Buy as\n"), said
    # What belongs to the old lot stays behind, whatever it is called.
    assert "Not in the old job" not in done("again", foreign / "two lines.ods", tmp_path / "lines.ods")


def test_wording_with_formulas_goes_along(lots, tmp_path):
    """Clauses that are worked out from the job stand in the new lot's proposal too, wherever the old one had them."""
    old = shutil.copy(lots / "old.ods", tmp_path / "old.ods")
    with edited(old) as book:
        table = book.document.NamedRanges.getByName("table_Clauses").getReferredCells()
        first = table.getRangeAddress().StartRow
        keys = [row[0] for row in table.getDataArray()]
        sheet = book.document.Sheets[table.getRangeAddress().Sheet]
        sheet.getCellByPosition(1, first + keys.index("Plants")).setString("Plants are not our trade.")
        sheet.Rows.removeByIndex(first + keys.index("Rock"), 1)
    done("again", old, tmp_path / "new.ods")
    done("values", tmp_path / "new.ods", tmp_path / "values")
    clauses = {row["About"]: row["What we agree"] for row in rows(tmp_path / "values/clauses.csv")}
    assert "Rock" not in clauses and clauses["Plants"] == "Plants are not our trade."
    assert clauses["Payment"].startswith("Deposit ") and "days" in clauses["Warranty"] and all(clauses.values()), clauses
    pipes = {row["Pipe"]: row["Least slope"] for row in rows(tmp_path / "values/grade-pipes.csv")}
    assert float(pipes["4 SDR35"]) == pytest.approx(1 / 96) and all(pipes.values())


# The second demo lot: clay, another county, from the first one's file and its own site notes.

def unlike_the_first(day, step):
    """The next day from this one on that the first lot's notes do not name, so that finding it tells the lots apart."""
    first = "".join(path.read_text(encoding="utf-8") for path in DEMO.glob("*.csv")) + str(EXTRA)
    while str(day) in first:
        day += datetime.timedelta(step)
    return day


@pytest.fixture(scope="module")
def second(lots, tmp_path_factory):
    """Filled in, but the one-call service was not asked yet; then with its ticket."""
    folder = tmp_path_factory.mktemp("second")
    for name, ticket in (("asked", False), ("ready", True)):
        notes = shutil.copytree(SECOND, folder / f"notes-{name}")
        if ticket:
            today = datetime.date.today()
            begins = unlike_the_first(today - datetime.timedelta(2), -1)
            ends = unlike_the_first(today + datetime.timedelta(12), 1)
            with open(notes / "job.csv", "a", encoding="utf-8") as file:
                file.write(f"Locate ticket,DEMO-0002\nTicket good from,{begins}\n"
                           f"Ticket good until,{ends}\n")
        shutil.copy(lots / "new.ods", folder / f"{name}.ods")
        (folder / f"{name}.txt").write_text(done("fill", notes, folder / f"{name}.ods"))
        done("values", folder / f"{name}.ods", folder / name)
        done("paper", folder / f"{name}.ods", folder / f"{name}-paper")
    return folder


def printed(folder):
    return {path.name: subprocess.run(["pdftotext", "-layout", path, "-"], capture_output=True, text=True, check=True).stdout
            for path in folder.glob("*.pdf")}


def typed_words(folder):
    """Every word and date in a folder of notes, and sums of money too long to meet by chance. Measured numbers stay in notes on purpose."""
    money, measured = ("account", "payments", "changes", "invoices"), ("Length", "Slope", "Floor slope")
    words = set()
    for path in folder.glob("*.csv"):
        for row in rows(path):
            for heading, word in row.items():
                number = re.fullmatch(r"-?[0-9.]+", word or "")
                if heading not in ("field", *measured) and word and not re.fullmatch(r"[0-9.]+ ft", word) and len(word) >= (6 if number else 4) and (not number or path.stem in money):
                    words.add(word)
    return words


def test_nothing_of_the_first_lot_is_in_the_second(lots, second, tmp_path):
    done("blank", tmp_path / "blank")
    done("make", tmp_path / "blank", tmp_path / "blank.ods")
    kept = "".join((lots / f"notes/{name}.csv").read_text() for name in ("prices", "rules", "sender", "rain", "holidays"))
    kept += everything(tmp_path / "blank.ods")
    own = "".join(path.read_text() for path in SECOND.glob("*.csv"))
    first = {word for word in typed_words(lots / "notes") if word not in kept and word not in own}
    today = datetime.date.today().isoformat()  # stands on every job and its papers, and may be a day of the first lot
    looked_for = {"PO-118", "2026-11-27", "MT-881", "M-2041", "15931.60", "ditch.jpg", "2026-12-04", "TKT-998877",
                  "Petronella Quackenbush"}
    assert len(first) > 90 and looked_for - {today} - first == set()
    before, after = everything(lots / "old.ods"), everything(second / "ready.ods")
    paper = "\n".join(printed(second / "ready-paper").values())
    # Lists of words: a failure would otherwise print whole files.
    not_found = [word for word in first if word not in before and word.rstrip("0").rstrip(".") not in before]  # 5.10 is stored as 5.1
    assert not_found == [], "the search would find them"
    assert [word for word in first if word in after] == []
    assert [word for word in first if word in paper and word != today] == []
    assert after.count("<dc:title>Clay lot above the creek (invented demo)</dc:title>") == 1


def test_it_looks_finished_only_when_nothing_is_open(lots, second):
    new, asked, ready = (fields(folder / "verdict.csv")["Ready?"] for folder in (lots / "new", second / "asked", second / "ready"))
    assert new.startswith("NO: still to measure or ask: 15"), new
    assert asked.startswith("NO: still to measure or ask: "), asked
    assert ready.startswith(("OK", "CHECK")), ready
    not_yet, done_with = printed(second / "asked-paper"), printed(second / "ready-paper")
    assert "NOT READY" in not_yet["crew-en.pdf"] and "locate ticket" in not_yet["crew-en.pdf"]
    for name in ("proposal.pdf", "crew-en.pdf", "crew-es.pdf", "care.pdf"):
        assert "NOT READY" not in done_with[name] and "NO ESTÁ" not in done_with[name].upper(), done_with[name][:600]
    assert "88 Terrace Way" in done_with["proposal.pdf"] and "Fernbank Drainage" in done_with["proposal.pdf"]
    assert "Nothing: every question is answered." in done_with["whole.pdf"]
    assert [row["Check"] for row in rows(second / "ready/runs.csv") if not row["Check"].startswith("OK")] == []


def test_old_numbers_stay_in_notes_beside_the_new_ones(lots, second):
    old, new = rows(lots / "old/levels.csv"), rows(second / "ready/levels.csv")
    assert old[1]["Rod"] == "5.32" and new[1]["Rod"] == "3.92"
    notes = set(re.findall(r"The last lot had ([^<]*?) here \((\w[^<]*?)\)", everything(second / "ready.ods")))
    assert {("5.32", "Levels, Rod, row 2"), ("1/8 in/ft", "Runs, Slope, row 1")} <= notes, sorted(notes)


def test_a_pit_in_this_clay_is_refused_with_every_reason(second, tmp_path):
    """The pit that was thought of first: the soak test, the survey and the well speak against it."""
    path = shutil.copy(second / "ready.ods", tmp_path / "pit.ods")
    done("fill", SECOND / "pit-tried", path)
    done("values", path, tmp_path / "values")
    reasons = [row["Reason"] for row in rows(tmp_path / "values/pit-reasons.csv") if row["Kind"] == "NO"]
    for words in ("soil takes too little", "percolation too slow", "too long to empty", "too near a well: 70 ft", "high water", "soil group D"):
        assert any(words in reason for reason in reasons), reasons
    check = fields(tmp_path / "values/pit-results.csv")["Check"]
    assert check.startswith("NO") and all(reason in check for reason in reasons), check
    assert fields(tmp_path / "values/verdict.csv")["Ready?"].startswith("NO")


def test_what_was_measured_is_never_written_over(second, tmp_path):
    path = shutil.copy(second / "asked.ods", tmp_path / "job.ods")
    before = path.read_bytes()
    other = give(tmp_path / "notes", job="field,value\nOwner,Somebody Else\nSoil,sand\n", levels="Point,Rod\nA,4\n",
                 rules="Key,Value\ncover.lawn,10\n")
    ran = jobbook("fill", other, path)
    assert ran.returncode == 2 and "Nothing was written." in ran.stderr
    for says in ("Job: Owner is filled already: R. Hollowell (invented)", "Levels: Rod is filled already, in 11 rows: row "):
        assert says in ran.stderr, ran.stderr
    assert path.read_bytes() == before
    # Rules and prices are not measured: new ones take the place of the old.
    (other / "job.csv").unlink()
    (other / "levels.csv").unlink()
    (other / "prices.csv").write_text("Code,Item,Group,Unit,Pack,Price,Supplier,Priced on,Taxable\nONLY,one thing,other,piece,1,2.50,s,2026-12-01,yes\n")
    done("fill", other, path)
    done("values", path, tmp_path / "values")
    assert [row["Code"] for row in rows(tmp_path / "values/prices.csv")] == ["ONLY"]
    assert {row["Key"]: row["Value"] for row in rows(tmp_path / "values/rules.csv")}["cover.lawn"] == "10"


def test_fill_corrects_what_it_wrote_itself_and_names_what_a_hand_changed(second, tmp_path):
    path = shutil.copy(second / "asked.ods", tmp_path / "job.ods")
    notes = [line.split(",") for line in (SECOND / "levels.csv").read_text(encoding="utf-8").splitlines()]
    point, rod = notes[0].index("Point"), notes[0].index("Rod")
    notes[-1][rod] = "4.44"
    other = give(tmp_path / "notes", levels="\n".join(",".join(line) for line in notes) + "\n", job="field,value\nSoil,sand\n")
    done("fill", other, path)
    done("values", path, tmp_path / "values")
    read = rows(tmp_path / "values/levels.csv")
    assert [row["Point"] for row in read] == [line[point] for line in notes[1:]] and float(read[-1]["Rod"]) == 4.44
    assert fields(tmp_path / "values/job.csv")["Soil"] == "sand"
    with edited(path) as job:
        job.fill("Levels", [{"Rod": line[rod] and float(line[rod])} for line in notes[1:-1]] + [{"Rod": 4.11}])
    ran = jobbook("fill", give(tmp_path / "notes", levels="\n".join(",".join(line) for line in notes) + "\n"), path)
    assert ran.returncode == 2 and "Levels: Rod is filled already, in 1 row: row " in ran.stderr and "holds 4.11" in ran.stderr, ran.stderr


def test_bad_notes_are_refused_with_their_place(second, tmp_path):
    path = shutil.copy(second / "asked.ods", tmp_path / "job.ods")
    before = path.read_bytes()
    ran = jobbook("fill", give(tmp_path / "notes", soak="Hole,Minutes\nA,soon\n"), path)
    assert ran.returncode == 2 and "soak.csv line 2, column 2 (Minutes)" in ran.stderr, ran.stderr
    assert path.read_bytes() == before
