"""A job on a machine where the add-in is missing or does not load: what rests on it is blank and says so at once, what
does not stays right, and nothing is lost."""

import shutil
import zipfile

import pytest

from calls import BUILD, done, jobbook
from office import Office, save

RESTS_ON_THE_ENGINE = ["Nodes", "Water", "Runs", "Ground", "Crossings", "Outlets", "Pump", "Plan", "Storms", "Takeoff"]
MONEY_AND_COUNTS = """materials_cost materials_taxable materials_tax delivery_cost labor_line equipment_cost
    disposal_cost permits_cost subcontract_cost direct_cost contingency_cost overhead_cost profit_cost price_net
    contract_tax price_total price_foot deposit_cap deposit markup margin labor_hours labor_days labor_cost
    qty_pipe_length pipe_total deepest_cut count_ok count_check count_no count_open plan_cost plan_typed plan_more
    plan_fits""".split()
STAYS = ["Order", "Bills", "Account", "Close-out", "Dates", "Invoice"]


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory):
    folder = tmp_path_factory.mktemp("unpacked")
    with zipfile.ZipFile(BUILD / "trenchbook.oxt") as packed:
        packed.extractall(folder / "trenchbook")
    return folder


@pytest.fixture(scope="module")
def right(demo, unpacked, tmp_path_factory):
    """The job as .ods and as .xlsx, stored where the add-in is, and all that its sheets show there."""
    folder = tmp_path_factory.mktemp("right")
    with Office(unpacked) as office:
        document = office.open(demo / "job.ods")
        shown = shows(document)
        assert on_top(document) == "OK: the engine that this file was made with"
        save(document, folder / "job.ods")
        save(document, folder / "job.xlsx", "Calc MS Excel 2007 XML")
        document.close(True)
    return folder, shown


@pytest.fixture(scope="module", params=["not installed", "no library"])
def without(request, unpacked, tmp_path_factory):
    """An office without the add-in, or with a package whose library is gone."""
    extensions = None
    if request.param == "no library":
        extensions = tmp_path_factory.mktemp("broken")
        shutil.copytree(unpacked / "trenchbook", extensions / "trenchbook")
        for library in (extensions / "trenchbook").glob("*.so"):  # of either shell
            library.unlink()
    with Office(extensions) as office:
        yield office


def shows(document):
    """Each formula's cell, by sheet, column and row: its number or text, None for an error."""
    cells = {}
    for sheet in document.Sheets:
        cursor = sheet.createCursor()
        cursor.gotoEndOfUsedArea(False)
        used = cursor.RangeAddress
        area = sheet.getCellRangeByPosition(0, 0, used.EndColumn, used.EndRow)
        for row, (formulas, values) in enumerate(zip(area.getFormulaArray(), area.getDataArray())):
            for column, (formula, value) in enumerate(zip(formulas, values)):
                if formula.startswith(("=", "{=")):
                    cells[sheet.Name, column, row] = value
    return cells


def field(document, name):
    return document.NamedRanges.getByName(name).getReferredCells().getCellByPosition(0, 0)


def same(one, other):
    if isinstance(one, float) and isinstance(other, float):
        return one == pytest.approx(other, rel=1e-12, abs=1e-12)  # a file keeps fifteen digits
    return one == other


def headed(document, sheet, heading):
    """Columns of a sheet that have this heading anywhere."""
    cells = document.Sheets.getByName(sheet)
    cursor = cells.createCursor()
    cursor.gotoEndOfUsedArea(False)
    rows = cells.getCellRangeByPosition(0, 0, cursor.RangeAddress.EndColumn, cursor.RangeAddress.EndRow).getDataArray()
    return {column for row in rows for column, value in enumerate(row) if value == heading}


def judged(document, right, rows=True):
    """What must hold in a document of the demo job while the engine does not answer.

    `rows`: the verdicts of rows too. Calc keeps those of an .xlsx as they were stored until all is calculated anew.
    """
    for name in ["engine_state", "job_check", "first_no", "takeoff_check", "labor_check", "quote_check"]:
        assert field(document, name).String.startswith("NO: "), (name, field(document, name).String)
    assert "#NAME?" in field(document, "job_check").String and "Err:504" in field(document, "job_check").String
    assert on_top(document) == field(document, "engine_state").String
    blank = {name: field(document, name).String for name in MONEY_AND_COUNTS}
    assert blank == dict.fromkeys(MONEY_AND_COUNTS, "")
    now = shows(document)
    trusted = {cell: value for cell, value in now.items()
               if cell[0] in RESTS_ON_THE_ENGINE and isinstance(value, str) and value[:2] == "OK"
               and cell[1] in headed(document, cell[0], "Check") | headed(document, cell[0], "Verdict")}
    assert not rows or trusted == {}
    compared = {(sheet, column) for sheet in ["Order"] for column in headed(document, "Order", "Takeoff now")}
    # Sentences about the takeoff, and the days that Labor counts: without the engine they are not known.
    own = {cell_of(document, name) for name in ["order_check", "order_forgotten", "order_forgotten_counted",
                                                "order_forgotten_added", "crew_days", "done_day"]}
    assert field(document, "crew_days").String == "" and field(document, "done_day").String == ""
    changed = {cell: (value, now[cell]) for cell, value in right.items() if cell[0] in STAYS
               and cell[:2] not in compared and cell not in own and not same(value, now[cell])}
    assert changed == {}
    assert "not compared with Takeoff" in field(document, "order_check").String


def on_top(document):
    """The verdict in the first lines of Job, which are in sight on opening."""
    lines = document.Sheets.getByName("Job").getCellRangeByPosition(0, 0, 0, 5).getDataArray()
    told = [line[0] for line in lines if str(line[0]).startswith(("OK: ", "CHECK: ", "NO: "))]
    assert len(told) == 1, lines
    return told[0]


def cell_of(document, name):
    cell = field(document, name)
    return cell.Spreadsheet.Name, cell.CellAddress.Column, cell.CellAddress.Row


@pytest.mark.parametrize("ending", ["ods", "xlsx"])
def test_says_so_on_load_and_after_calculating_all(without, right, ending):
    folder, shown = right
    document = without.open(folder / f"job.{ending}")
    try:
        judged(document, shown, rows=ending == "ods")
        document.calculateAll()
        judged(document, shown)
    finally:
        document.close(True)


def test_nothing_is_lost(without, right, unpacked, tmp_path):
    folder, shown = right
    document = without.open(folder / "job.ods")
    document.calculateAll()
    save(document, tmp_path / "job.ods")
    document.close(True)
    with Office(unpacked) as office:
        document = office.open(tmp_path / "job.ods")
        now = shows(document)
        document.close(True)
    assert {cell: (value, now.get(cell)) for cell, value in shown.items() if not same(value, now.get(cell))} == {}


@pytest.fixture(scope="module")
def unknown(demo, tmp_path_factory):
    """Jobs that ask for functions that are not there: of a version to come, and by names that an office made up."""
    folder = tmp_path_factory.mktemp("unknown")
    swaps = {"newer": (b"TRENCHBOOK.FUNCTIONS.JOBRUNS(", b"TRENCHBOOK.FUNCTIONS.JOBALLRUNS("),
             "other-office": (b"TRENCHBOOK.FUNCTIONS.TRENCHBOOKVERSION(", b"trenchbook.version(")}
    for name, (old, new) in swaps.items():
        with zipfile.ZipFile(demo / "job.ods") as packed, zipfile.ZipFile(folder / f"{name}.ods", "w") as made:
            for item in packed.infolist():
                content = packed.read(item)
                if item.filename == "content.xml":
                    assert old in content
                    content = content.replace(old, new)
                made.writestr(item, content)
    return folder


@pytest.mark.parametrize("name", ["newer", "other-office"])
@pytest.mark.parametrize("command", ["paper", "values", "again", "option", "order"])
def test_jobbook_refuses_unknown_functions(unknown, demo, tmp_path, name, command):
    job = tmp_path / "job.ods"
    shutil.copy(unknown / f"{name}.ods", job)
    before = job.read_bytes()
    words = {"paper": [job, tmp_path / "made"], "values": [job, tmp_path / "made"],
             "again": [job, tmp_path / "made.ods"], "order": [job, "--number", "PO-9"],
             "option": [tmp_path / "main.ods", job]}[command]
    shutil.copy(demo / "job.ods", tmp_path / "main.ods")
    main = (tmp_path / "main.ods").read_bytes()
    ran = jobbook(command, *words)
    assert ran.returncode == 2, ran.stdout + ran.stderr
    said = "joballruns" if name == "newer" else "Job!"
    assert said in ran.stderr and "which is not there" in ran.stderr and "Nothing was written." in ran.stderr
    assert job.read_bytes() == before and (tmp_path / "main.ods").read_bytes() == main
    assert not list(tmp_path.glob("made*"))


def test_a_slip_in_a_cell_of_ones_own_is_no_reason(demo, unpacked, tmp_path):
    with Office(unpacked) as office:
        document = office.open(demo / "job.ods")
        document.Sheets.getByName("Labor").getCellByPosition(20, 3).setFormula("=myown.slip(1)")
        save(document, tmp_path / "job.ods")
        document.close(True)
    done("values", tmp_path / "job.ods", tmp_path / "values")
    assert (tmp_path / "values" / "runs.csv").exists()
