"""jobbook make, paper, values and blank, from site notes to files."""

import csv
import itertools
import re
import shutil
import subprocess
import zipfile

import pytest

from calls import BUILD, DEMO, done, fields, give, jobbook, rows

SMALL = {
    "job": "field,value\nJob,Small lot\nRain,6\n",
    "levels": "Point,Known level,Backsight,Rod\nBM,100,5,\nA,,,4\nB,,,4.5\nC,,,6\n",
    "nodes": "Node,Kind\nA,downspout\nB,bend\nC,bank\n",
    "water": "Inlet,Node,Roof area,Roof C\nDS1,A,800,0.95\n",
    "runs": 'Line,From,To,Length,Pipe,Slope,Outlet level\nmain,A,B,"40\' 6""",4 SDR35,1/8 in/ft,\n'
            "main,B,C,60,4 SDR35,1:48,96.5\n",
}


def number(text):
    return float(text)


def same_values(one, other):
    """The same files with the same cells."""
    assert sorted(path.name for path in one.iterdir()) == sorted(path.name for path in other.iterdir())
    for path in one.iterdir():
        same_file(path, other / path.name)


def same_file(one, other):
    """A file keeps numbers to 15 digits or so: differences of levels move in their last ones when it is opened."""
    with open(one, newline="") as first, open(other, newline="") as second:
        for row, twin in itertools.zip_longest(csv.reader(first), csv.reader(second)):
            assert row is not None and twin is not None and len(row) == len(twin), (one.name, row, twin)
            assert all(map(alike, row, twin)), (one.name, row, twin)


def alike(one, other):
    try:
        return float(one) == pytest.approx(float(other), rel=1e-12, abs=1e-12)
    except ValueError:
        return one == other


# What is refused: exit 2, file, line and column, nothing written.

@pytest.mark.parametrize("files, said", [
    ({"runs": "From,To,Depth\nA,B,3\n"}, ["runs.csv line 1, column 3", '"Depth" is not a heading of Runs']),
    ({"runs": "From,To,Capacity\nA,B,3\n"}, ["runs.csv line 1, column 3", '"Capacity" is computed']),
    ({"levels": "Point,Rod\nA,4\nB,x4\n"}, ["levels.csv line 3, column 2 (Rod)", '"x4" is not a number']),
    ({"levels": "Point,Rod\nA,4\nB,-4\n"}, ["levels.csv line 3, column 2 (Rod)", "is outside 0 to 25 ft"]),
    ({"nodes": "Node,Kind\nA,manhole\n"}, ["nodes.csv line 2, column 2 (Kind)", "downspout, channel"]),
    ({"job": "field,value\nUnits,imperial\n"}, ["job.csv line 2, column 2 (Units)", "US, metric"]),
    ({"job": "field,value\nHouse,3\n"}, ["job.csv line 2, column 1 (field)", '"House" is not a field of Job']),
    ({"prices": "Code,Price\nPIPE,free\n"}, ["prices.csv line 2, column 2 (Price)", '"free" is not a number']),
    ({"prices": "Code,Priced on\nPIPE,05/31/2026\n"}, ["prices.csv line 2, column 2 (Priced on)", "2026-05-31"]),
    ({"runs": 'From,To\nA,"B\n'}, ["runs.csv line 2, column 2", "never closed"]),
    ({"pipes": "a\n1\n", "sewers": "a\n1\n"}, ["sewers.csv: no table has this name"]),
])
def test_bad_notes_are_refused_with_their_place(tmp_path, files, said):
    notes = give(tmp_path / "notes", **{**SMALL, **files})
    ran = jobbook("make", notes, tmp_path / "job.ods", "--values", tmp_path / "v", "--paper", tmp_path / "p")
    assert ran.returncode == 2, ran.stdout + ran.stderr
    for words in said:
        assert words in ran.stderr
    assert sorted(path.name for path in tmp_path.iterdir()) == ["notes"], "nothing is written"


@pytest.mark.parametrize("missing", ["job", "runs"])
def test_a_missing_file_is_named(tmp_path, missing):
    notes = give(tmp_path / "notes", **{name: text for name, text in SMALL.items() if name != missing})
    ran = jobbook("make", notes, tmp_path / "job.ods")
    assert ran.returncode == 2
    assert f"{missing}.csv: this file is missing" in ran.stderr
    assert not (tmp_path / "job.ods").exists()


@pytest.mark.parametrize("words", [
    [], ["draw"], ["make", "only-one"], ["make", "a", "b.xls"],
    ["paper", "missing.ods", "p", "--size", "A3"], ["make", "a", "b.ods", "--colour", "x"],
])
def test_a_wrong_command_explains_itself(tmp_path, words):
    ran = jobbook(*words, cwd=tmp_path)
    assert ran.returncode == 2
    assert "jobbook make" in ran.stderr and not list(tmp_path.iterdir())


def test_an_old_workbook_stays_when_the_notes_are_wrong(tmp_path):
    (tmp_path / "job.ods").write_text("the old one")
    notes = give(tmp_path / "notes", **{**SMALL, "runs": "Depth\n1\n"})
    assert jobbook("make", notes, tmp_path / "job.ods").returncode == 2
    assert (tmp_path / "job.ods").read_text() == "the old one"


def test_without_the_add_in_it_says_what_is_missing(tmp_path):
    alone = shutil.copy(BUILD / "jobbook", tmp_path / "jobbook")
    ran = jobbook("make", give(tmp_path / "notes", **SMALL), tmp_path / "job.ods", program=alone)
    assert ran.returncode == 1 and "the add-in is not beside" in ran.stderr
    assert not (tmp_path / "job.ods").exists()


# What is taken.

@pytest.fixture(scope="module")
def small(tmp_path_factory):
    folder = tmp_path_factory.mktemp("small")
    done("make", give(folder / "notes", **SMALL), folder / "job.ods", "--values", folder / "values")
    return folder


def test_levels_by_hand(small):
    # Height of instrument 100 + 5; levels 105 - 4, 105 - 4.5, 105 - 6.
    levels = {row["Point"]: row["Level"] for row in rows(small / "values/levels.csv")}
    assert [number(levels[point]) for point in "ABC"] == [101, 100.5, 99]


def test_inverts_by_hand(small):
    runs = rows(small / "values/runs.csv")
    assert len(runs) == 2, "blank rows are left out"
    # 60 ft at 1:48 up from 96.5, then 40.5 ft at 1/8 in/ft.
    assert number(runs[1]["Invert up"]) == pytest.approx(96.5 + 60 / 48)
    assert number(runs[0]["Invert up"]) == pytest.approx(96.5 + 60 / 48 + 40.5 / 96)


def test_the_trades_spelling_stays_as_typed(small):
    runs = rows(small / "values/runs.csv")
    assert [row["Slope"] for row in runs] == ["1/8 in/ft", "1:48"]
    assert runs[0]["Length"] == "40' 6\""


def test_blank_cells_are_blank(small):
    for name in ("levels", "nodes", "runs"):
        for row in rows(small / f"values/{name}.csv"):
            assert not [cell for cell in row.values() if cell.startswith("#")], row


def test_the_title_is_the_jobs_name_and_no_template_is_remembered(small):
    with zipfile.ZipFile(small / "job.ods") as packed:
        meta = packed.read("meta.xml").decode()
    assert "<dc:title>Small lot</dc:title>" in meta
    assert "template" not in meta


def test_everything_typed_comes_back(demo):
    for path in sorted(DEMO.glob("*.csv")):
        given = rows(path)
        values = demo / "values" / path.name
        if "field" in given[0]:
            shown = fields(values)
            for row in given:
                assert not row["value"] or same(row["value"], shown[row["field"]]), (path.name, row)
            continue
        shown = rows(values)
        given = [row for row in given if any(row.values())]
        if path.name == "rules.csv":  # its rows go by their key
            by_key = {row["Key"]: row for row in shown}
            shown = [by_key[row["Key"]] for row in given]
        assert len(shown) == len(given), path.name
        for before, after in zip(given, shown):
            for heading, cell in before.items():
                assert not cell or same(cell, after[heading]), (path.name, heading, cell, after[heading])


def same(given, shown):
    if given == shown:
        return True
    digits = given.rstrip("%").lstrip("$")
    try:
        return float(shown) == pytest.approx(float(digits) / (100 if given.endswith("%") else 1), rel=1e-14)
    except ValueError:
        return False


def test_the_demo_has_no_error_cells(demo):
    for path in sorted((demo / "values").glob("*.csv")):
        if path.name.startswith("profile-"):
            continue  # gaps of the chart are #N/A on purpose
        for line, row in enumerate(csv.reader(open(path, encoding="utf-8", newline="")), start=1):
            wrong = [cell for cell in row if cell.startswith(("Err:", "#")) and not cell.startswith("# ")]
            assert not wrong, (path.name, line, row)


def test_the_summary_speaks_of_the_job(demo):
    said = (demo / "said.txt").read_text(encoding="utf-8")
    name = fields(demo / "values/job.csv")["Job"]
    assert said.startswith(name + "\n")
    for words in ("Verdicts", "rows OK", "Least spare fall", "Flow at ", "Price", "$"):
        assert words in said
    checks = [row["Check"] for path in (demo / "values").glob("*.csv") for row in rows(path) if "Check" in row]
    for word in ("OK", "CHECK", "NO", "NOT JUDGED"):
        assert sum(re.match(rf"{word}\b(?! JUDGED)", check) is not None for check in checks) == counted(said, word), word


def test_the_summary_tells_only_what_a_reader_can_see(demo):
    """Values are what is visible: what a hidden cell keeps for others is no verdict."""
    said = (demo / "said.txt").read_text(encoding="utf-8")
    told = [line.split(": ", 1)[1] for line in said.splitlines() if re.match(r"    \S.*: ", line)]
    shown = {cell for path in (demo / "values").glob("*.csv") for row in csv.reader(path.open(encoding="utf-8", newline="")) for cell in row}
    assert len(told) > 10 and [verdict for verdict in told if verdict not in shown] == []


def counted(said, word):
    line = next(line for line in said.splitlines() if "Verdicts" in line).replace(",", "").split()
    return int(line[{"OK": 1, "CHECK": 4, "NO": 7, "NOT JUDGED": 10}[word]])


def test_papers_show_the_job(demo):
    name = fields(demo / "values/job.csv")["Job"]
    for file in ("crew-en.pdf", "whole.pdf"):
        text = subprocess.run(["pdftotext", "-layout", demo / "paper" / file, "-"], capture_output=True, text=True).stdout
        assert name in text, file
        assert "###" not in text, file
    assert "Rod reading" in subprocess.run(["pdftotext", "-layout", demo / "paper/crew-en.pdf", "-"],
                                           capture_output=True, text=True).stdout


def test_paper_sizes(demo, tmp_path):
    for size, points in (("A4", (595, 842)), ("Letter", (612, 792))):
        done("paper", demo / "job.ods", tmp_path / size, "--size", size)
        for file in ("crew-en.pdf", "whole.pdf"):
            info = subprocess.run(["pdfinfo", "-l", "-1", tmp_path / size / file], capture_output=True, text=True).stdout
            sizes = [line.split(":")[1].split() for line in info.splitlines() if "size:" in line and "Page" in line]
            assert sizes
            for shown in sizes:
                assert sorted((float(shown[0]), float(shown[2]))) == [pytest.approx(side, abs=1) for side in points]


def test_values_of_a_stored_workbook_are_those_of_the_making(demo, tmp_path):
    done("values", demo / "job.ods", tmp_path)
    same_values(demo / "values", tmp_path)


def test_inserted_rows_are_found(small, tmp_path):
    from office import Office, save

    with Office(BUILD / "extension") as office:
        document = office.open(small / "job.ods")
        runs = document.NamedRanges.getByName("table_Runs").getReferredCells()
        at = runs.getRangeAddress()
        sheet = document.Sheets[at.Sheet]
        sheet.Rows.insertByIndex(at.StartRow, 2)       # above the headings
        sheet.Rows.insertByIndex(at.StartRow + 2 + 4, 1)  # between the two runs
        save(document, tmp_path / "job.ods")
        document.close(True)
    done("values", tmp_path / "job.ods", tmp_path / "values")
    same_file(small / "values/runs.csv", tmp_path / "values/runs.csv")


@pytest.mark.parametrize("many", [100, 300])
def test_more_rows_than_are_ready(tmp_path, many):
    """The template's tables get more rows, and what answers for them is as tall: 300 are more than blocks have to spare."""
    files = dict(SMALL)
    files["nodes"] = "Node,Kind,Ground\n" + "".join(f"N{n},bend,{100 + n / 50}\n" for n in range(many + 1))
    files["runs"] = "Line,From,To,Length,Pipe,Slope,Outlet level\n" + "".join(
        f"main,N{n},N{n - 1},2,4 SDR35,1%,{96 if n == 1 else ''}\n" for n in range(many, 0, -1))
    files["prices"] = "Code,Unit,Pack,Price\nPIPE-4SDR35,ft,10,12\n"
    del files["levels"], files["water"]
    done("make", give(tmp_path / "notes", **files), tmp_path / "job.ods", "--values", tmp_path / "values")
    runs = rows(tmp_path / "values/runs.csv")
    assert len(runs) == many
    for run in runs:
        n = int(run["From"][1:])
        assert number(run["Invert up"]) == pytest.approx(96 + n * 2 * 0.01), run["From"]
        assert number(run["Station"]) == pytest.approx((n - 1) * 2), run["From"]
        assert run["Check"], "judged"
    pipe, = (row for row in rows(tmp_path / "values/takeoff.csv") if row["Code"] == "PIPE-4SDR35")
    assert number(pipe["Net"]) == 2 * many, "each is counted once"
    crew = {row["Node"]: row for row in rows(tmp_path / "values/crew-stations.csv")}
    assert {f"N{n}" for n in range(many + 1)} <= set(crew)
    assert number(crew[f"N{many}"]["Station"]) == 2 * many
    cuts = rows(tmp_path / "values/crew-cuts.csv")
    assert sum(number(row["Pieces"]) * number(row["Length"]) for row in cuts) == pytest.approx(2 * many, abs=0.5)


def test_without_the_template_it_says_what_is_missing(small, tmp_path):
    alone = shutil.copy(BUILD / "jobbook", tmp_path / "jobbook")  # with the add-in
    (tmp_path / "extension").symlink_to(BUILD / "extension")
    ran = jobbook("make", small / "notes", tmp_path / "job.ods", program=alone)
    assert ran.returncode == 1 and "the template job.ots is not beside" in ran.stderr, ran.stderr
    assert sorted(path.name for path in tmp_path.iterdir()) == ["extension", "jobbook"]


def test_blank_notes(tmp_path):
    done("blank", tmp_path / "notes")
    assert (tmp_path / "notes/runs.csv").read_text().startswith("Line,From,To,Length,Pipe,Slope,")
    assert "Job," in (tmp_path / "notes/job.csv").read_text().splitlines()
    assert jobbook("blank", tmp_path / "notes").returncode == 2, "never over notes that are there"
    done("make", tmp_path / "notes", tmp_path / "job.ods", "--values", tmp_path / "values")
    assert rows(tmp_path / "values/runs.csv") == []


def test_an_installed_jobbook_needs_nothing_of_the_build_folder(tmp_path, small):
    """As a user has it: bin/jobbook, the add-in and the templates under share."""
    subprocess.run(["cmake", "--install", BUILD, "--prefix", tmp_path / "usr"], check=True, capture_output=True)
    assert (tmp_path / "usr/share/trenchbook/templates/job.ots").exists()
    assert (tmp_path / "usr/share/trenchbook/trenchbook.oxt").exists()
    done("make", small / "notes", tmp_path / "job.ods", "--values", tmp_path / "values",
         program=tmp_path / "usr/bin/jobbook")
    same_values(small / "values", tmp_path / "values")
