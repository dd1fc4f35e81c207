"""The menu's commands on a whole job: the demo lot, made by jobbook and opened in a window that nobody sees."""

import math
import re
import shutil
import subprocess
import zipfile

import pytest

from built import BUILD, CHECKOUT
from menu import Menu, Refused, undo_titles
from menu_test import cell, column, field, job, menu, named, offered_cheaper, place_of, select, table  # noqa: F401, fixtures
from office import Office, properties, save

DEMO = CHECKOUT / "sheets" / "demo"


def jobbook(*words):
    ran = subprocess.run([str(BUILD / "jobbook"), *map(str, words)], capture_output=True, text=True, timeout=300)
    assert ran.returncode == 0, ran.stderr
    return ran.stdout


@pytest.fixture(scope="session")
def made(tmp_path_factory):
    folder = tmp_path_factory.mktemp("menu")
    jobbook("make", DEMO / "corner-lot", folder / "job.ods")
    return folder / "job.ods"


@pytest.fixture
def demo(office, made, tmp_path):
    path = shutil.copy(made, tmp_path / "job.ods")
    document = office.open(path)
    yield document
    document.close(True)


def contents(document, skip=()):
    """What every cell of every sheet holds or shows, errors as their text."""
    found = {}
    for sheet in document.Sheets:
        if sheet.Name in skip:
            continue
        cursor = sheet.createCursor()
        cursor.gotoEndOfUsedArea(False)
        at = cursor.RangeAddress
        area = sheet.getCellRangeByPosition(0, 0, at.EndColumn, at.EndRow)
        for r, row in enumerate(area.DataArray):
            for c, value in enumerate(row):
                if value is None:
                    value = area.getCellByPosition(c, r).String
                if value not in ("", 0.0):
                    found[sheet.Name, c, r] = value
    return found


def same(one, other):
    """A file keeps 15 digits of a number."""
    if isinstance(one, float) and isinstance(other, float):
        return math.isclose(one, other, rel_tol=1e-12, abs_tol=1e-12)
    return one == other


def differences(before, after):
    return {place: (before.get(place), after.get(place)) for place in before.keys() | after.keys()
            if not same(before.get(place), after.get(place))}


def file_text(path):
    with zipfile.ZipFile(path) as packed:
        return "\n".join(packed.read(name).decode("utf-8", "replace") for name in packed.namelist() if name.endswith(".xml"))


def test_a_new_job_is_the_template_and_remembers_no_path(office, menu, demo, tmp_path):  # noqa: F811
    target = tmp_path / "new.ods"
    menu.give(demo, "NewJob", To=str(target))
    assert ".ots" not in file_text(target) and "file:///" not in file_text(target)
    with pytest.raises(Refused, match="is there already"):
        menu.give(demo, "NewJob", To=str(target))
    menu.give(demo, "NewJob", To=str(target), Replace=True)
    fresh = office.open(target)
    try:
        assert field(fresh, "Job", "Job").String == "" and fresh.CurrentController is not None
        assert named(fresh, "job_check").getCellByPosition(0, 0).String.startswith("NO: still to measure or ask")
    finally:
        fresh.close(True)


def test_a_new_lot_is_what_jobbook_makes_of_it(office, menu, demo, made, tmp_path):  # noqa: F811
    said = menu.give(demo, "NewLot", To=str(tmp_path / "menu.ods"))
    assert "To measure again:" in said and "  Levels: " in said and "Job: owner" in said
    told = jobbook("again", made, tmp_path / "jobbook.ods")
    assert said.strip() in told
    ours, theirs = office.open(tmp_path / "menu.ods"), office.open(tmp_path / "jobbook.ods")
    try:
        assert differences(contents(ours), contents(theirs)) == {}
        notes = [[(note.Position.Column, note.Position.Row, note.String) for note in document.Sheets.getByName("Levels").Annotations]
                 for document in (ours, theirs)]
        assert notes[0] == notes[1] and any("The last lot had" in note[2] for note in notes[0])
    finally:
        ours.close(True)
        theirs.close(True)


def test_a_command_never_writes_over_the_job_it_reads(menu, demo, tmp_path):  # noqa: F811
    before = (tmp_path / "job.ods").read_bytes()
    for command in ("NewLot", "CopyValues"):
        with pytest.raises(Refused, match="same file"):
            menu.give(demo, command, To=str(tmp_path / "job.ods"), Replace=True)
    assert (tmp_path / "job.ods").read_bytes() == before


def test_prices_come_in_from_a_book_and_go_back_in_one_step(office, menu, demo, tmp_path):  # noqa: F811
    book = office.open(BUILD / "templates" / "price-book.ots", AsTemplate=True)
    code, price = cell(demo, "Prices", "Code").String, cell(demo, "Prices", "Price").Value
    for heading in ("Code", "Item", "Group", "Unit", "Supplier", "Taxable", "Pack", "Waste"):
        cell(book, "Prices", heading).setFormula(cell(demo, "Prices", heading).getFormula())
    cell(book, "Prices", "Price").setValue(price + 1.25)
    cell(book, "Prices", "Priced on").setValue(cell(demo, "Prices", "Priced on").Value + 20)
    save(book, tmp_path / "book.ods")
    book.close(True)
    with pytest.raises(Refused, match="argument Book is missing"):
        menu.give(demo, "Prices")
    with pytest.raises(Refused, match="this workbook itself"):
        menu.give(demo, "Prices", Book=str(tmp_path / "job.ods"))
    before = contents(demo)
    said = menu.give(demo, "Prices", Book=str(tmp_path / "book.ods"))
    assert f"{code}: " in said and "Nothing was changed; Take brings in 1 row." in said
    assert differences(before, contents(demo)) == {}
    said = menu.give(demo, "Prices", Book=str(tmp_path / "book.ods"), Take=True)
    assert "+1.25" in said and said.endswith("Taken: 1 row.")
    assert cell(demo, "Prices", "Price").Value == pytest.approx(price + 1.25) and cell(demo, "Prices", "Last").Value == price
    assert undo_titles(demo) == ["Bring in prices"]
    demo.UndoManager.undo()
    assert differences(before, contents(demo)) == {}
    demo.UndoManager.redo()
    assert cell(demo, "Prices", "Price").Value == pytest.approx(price + 1.25)


def test_the_order_is_issued_in_one_step(menu, demo):  # noqa: F811
    with pytest.raises(Refused, match="stands on Order already, with 37 lines"):
        menu.give(demo, "Order", Number="PO-200")
    with pytest.raises(Refused, match='Issued: "tomorrow" is not a date'):
        menu.give(demo, "Order", Number="PO-200", Issued="tomorrow", Replace=True)
    before = contents(demo)
    said = menu.give(demo, "Order", Number="PO-200", Issued="2026-11-28", Deliver="2026-12-05", Place="by the gate", Replace=True)
    assert said.startswith("Order PO-200 of 2026-11-28, ") and "37 lines" in said
    assert named(demo, "order_number").getCellByPosition(0, 0).String == "PO-200"
    assert named(demo, "order_place").getCellByPosition(0, 0).String == "by the gate"
    assert undo_titles(demo) == ["Issue the order"]
    demo.UndoManager.undo()
    assert differences(before, contents(demo)) == {}


def test_an_order_longer_than_its_rows_gets_more_and_gives_them_back(menu, demo):  # noqa: F811
    order = named(demo, "table_Order")
    lines = order.Rows.Count
    order.Spreadsheet.unprotect("")
    order.Spreadsheet.Rows.removeByIndex(order.RangeAddress.StartRow + 3, lines - 15)
    short = named(demo, "table_Order").Rows.Count
    assert short == 15
    steps = len(undo_titles(demo))
    said = menu.give(demo, "Order", Number="PO-201", Replace=True)
    assert "37 lines" in said and "OK" in said, said
    assert named(demo, "table_Order").Rows.Count == 37 + 4
    codes = [row[0] for row in named(demo, "table_Order").DataArray[3:-1]]
    assert all(codes) and len(set(codes)) == 37
    assert len(undo_titles(demo)) == steps + 1
    demo.UndoManager.undo()
    assert named(demo, "table_Order").Rows.Count == short


def hidden(document):
    return {sheet.Name for sheet in document.Sheets if not sheet.IsVisible} - {"Workings"}


def test_sheets_step_aside_and_come_back(menu, demo):  # noqa: F811
    away = hidden(demo)
    assert away and "Pit" not in away and "Job" not in away, "jobbook has put aside what this job does not need"
    before = contents(demo)
    said = menu.give(demo, "Sheets")
    assert said.startswith("Shown: ") and hidden(demo) == set(), said
    said = menu.give(demo, "Sheets")
    assert said.startswith("Stepped aside, not needed: ") and hidden(demo) == away
    assert undo_titles(demo)[:2] == ["Sheets needed, or every one"] * 2
    demo.UndoManager.undo()
    assert hidden(demo) == set()
    demo.UndoManager.undo()
    assert hidden(demo) == away and differences(before, contents(demo)) == {}
    demo.UndoManager.redo()
    assert hidden(demo) == set()
    demo.UndoManager.redo()
    assert hidden(demo) == away
    demo.UndoManager.undo()
    demo.UndoManager.undo()
    assert hidden(demo) == away and differences(before, contents(demo)) == {} and undo_titles(demo) == []
    menu.give(demo, "Sheets", Every=True)
    assert hidden(demo) == set()
    assert menu.give(demo, "Sheets", Every=True).startswith("Every sheet"), "no turning back"


def sheet_list(document):
    """What Job says of each sheet."""
    job = document.Sheets.getByName("Job")
    labels = [row[0] for row in job.getCellRangeByName("A1:A200").DataArray]
    first = labels.index("What stands on which sheet") + 1
    last = labels.index("", first)
    return {labels[row]: job.getCellByPosition(1, row).String for row in range(first, last)}


def test_a_sheet_that_is_needed_and_hidden_is_named_in_red(menu, demo):  # noqa: F811
    assert "Pump" in hidden(demo)
    assert not named(demo, "job_check").getCellByPosition(0, 0).String.startswith("CHECK: hidden")
    cell(demo, "Nodes", "Kind", 20).setString("pump basin")
    cell(demo, "Nodes", "Node", 20).setString("sump")
    demo.calculate()
    lines = sheet_list(demo)
    assert lines["Pump"].startswith("NO: needed, and hidden; it comes back by Sheets needed"), lines["Pump"]
    assert not lines["Pit"].startswith("NO: needed")
    menu.give(demo, "Sheets", Every=False)
    assert "Pump" not in hidden(demo)
    demo.calculate()
    assert sheet_list(demo)["Pump"] and not sheet_list(demo)["Pump"].startswith("NO")


@pytest.fixture(scope="session")
def ledger(tmp_path_factory):
    file = tmp_path_factory.mktemp("ledger") / "ledger.ods"
    jobbook("ledger", DEMO / "ledger", file)
    return file


def test_rates_are_learned_from_a_ledger_in_one_step(menu, demo, ledger):  # noqa: F811
    before = contents(demo)
    said = menu.give(demo, "Learn", Ledger=str(ledger))
    assert "Dig trench by machine: 0.540 -> " in said and "from 8 jobs" in said
    assert cell(demo, "Labor", "Learned", column(demo, "Labor", "Work").index("Dig trench by machine")).Value > 0
    assert undo_titles(demo)[0] == "Learn rates from the ledger"
    demo.UndoManager.undo()
    assert differences(before, contents(demo)) == {}
    with pytest.raises(Refused, match="has no table Hours"):
        menu.give(demo, "Learn", Ledger=str(BUILD / "templates" / "price-book.ots"))


def test_a_finished_job_goes_into_the_ledger_in_the_window(office, menu, demo, ledger, tmp_path):  # noqa: F811
    book = office.open(shutil.copy(ledger, tmp_path / "ledger.ods"))
    try:
        before = contents(book)
        finished = shutil.copy(tmp_path / "job.ods", tmp_path / "closed.ods")
        with pytest.raises(Refused, match='Finished: "soon" is not a date'):
            menu.give(book, "Close", Job=str(finished), Finished="soon")
        said = menu.give(book, "Close", Job=str(finished), Finished="2026-12-18")
        assert said.startswith("Into the ledger:") and "kinds of work" in said, said
        assert [name for name in column(book, "Jobs", "Job") if name][-1].startswith("Corner lot")
        assert undo_titles(book)[0] == "Take a finished job into this ledger"
        with pytest.raises(Refused, match="has this job already"):
            menu.give(book, "Close", Job=str(finished))
        book.UndoManager.undo()
        assert differences(before, contents(book)) == {}
        with pytest.raises(Refused, match="no table Hours"):
            menu.give(demo, "Close", Job=str(finished))
    finally:
        book.close(True)


def close_out(document):
    return {row[0]: row for row in table(document, "Close_out").DataArray[3:-1] if row[0]}


def test_the_estimate_goes_to_close_out_and_bills_and_hours_beside_it(menu, demo, made, tmp_path):  # noqa: F811
    with pytest.raises(Refused, match="Close-out has 64 rows already; Replace takes the estimate anew"):
        menu.give(demo, "Estimate")
    before = contents(demo)
    said = menu.give(demo, "Estimate", Replace=True)
    theirs = shutil.copy(made, tmp_path / "theirs.ods")
    assert said.strip() in jobbook("estimate", theirs, "--replace")
    assert undo_titles(demo) == ["Sold: the estimate to Close-out"]
    assert not any(column(demo, "Close_out", "Actual amount"))
    said = menu.give(demo, "Actual")
    assert said.strip() in jobbook("actual", theirs) and "still open: " in said
    assert undo_titles(demo)[0] == "What bills and hours cost"
    other = menu.office.open(theirs)
    try:
        assert differences(close_out(demo), close_out(other)) == {}, "the same as by jobbook"
    finally:
        other.close(True)
    for _ in range(2):
        demo.UndoManager.undo()
    assert differences(before, contents(demo)) == {} and undo_titles(demo) == []


def test_bills_without_an_estimate_have_nothing_to_stand_beside(menu, job):  # noqa: F811
    with pytest.raises(Refused, match="Close-out is empty: take the estimate first"):
        menu.give(job, "Actual")
    with pytest.raises(Refused, match="price"):
        menu.give(job, "Estimate")


def test_another_way_stands_beside_this_one_on_quote(menu, demo, made, tmp_path):  # noqa: F811
    other = shutil.copy(made, tmp_path / "other.ods")
    before = contents(demo)
    said = menu.give(demo, "Option", Other=str(other), Name="by hand")
    assert re.match(r"by hand: \$[\d,]+\.\d\d, 0\.00 more than this job", said), said
    headings, *rows = table(demo, "Options").DataArray
    shown = [(row[headings.index("Option")], row[headings.index("File")]) for row in rows]
    assert ("by hand", "other.ods") in shown
    assert undo_titles(demo) == ["Other way to do it"]
    demo.UndoManager.undo()
    assert differences(before, contents(demo)) == {}


def test_a_change_comes_from_another_file(menu, demo, made, tmp_path):  # noqa: F811
    other = shutil.copy(made, tmp_path / "longer.ods")
    before = contents(demo)
    with pytest.raises(Refused, match="nothing is changed"):
        menu.give(demo, "Change", Changed=str(other))
    field(demo, "Quote", "Subcontract").setValue(250)
    demo.calculateAll()
    said = menu.give(demo, "Change", Changed=str(other), What="less for others")
    assert re.match(r"less for others: pipe \+0\.0 ft, deepest cut [\d.]+ ft, cost -\$250\.00; with the markups of Account \$-?262\.50, to be signed", said), said
    assert "less for others" in column(demo, "Changes", "What")
    assert undo_titles(demo)[0] == "Change from another file"
    demo.UndoManager.undo()
    field(demo, "Quote", "Subcontract").setString("")
    demo.calculateAll()
    assert differences(before, contents(demo)) == {}


def test_suppliers_side_by_side(menu, office, demo, tmp_path):  # noqa: F811
    code, place = "PIPE-6SDR35", column(demo, "Prices", "Code").index("PIPE-6SDR35")
    price = cell(demo, "Prices", "Price", place).Value
    book = office.open(BUILD / "templates" / "price-book.ots", AsTemplate=True)
    offered_cheaper(book, demo, place)
    save(book, tmp_path / "book.ods")
    book.close(True)
    before = contents(demo)
    said = menu.give(demo, "Buy", Book=str(tmp_path / "book.ods"))
    assert "Near alone: $" in said and "Near (delivers free)" in said and "Take brings in 1 price." in said, said
    assert differences(before, contents(demo)) == {}
    with pytest.raises(Refused, match="Most is a number of suppliers"):
        menu.give(demo, "Buy", Book=str(tmp_path / "book.ods"), Most="many")
    said = menu.give(demo, "Buy", Book=str(tmp_path / "book.ods"), Most="1", Take=True)
    assert f"{code}: " in said and said.endswith("Taken: 1 price."), said
    assert (cell(demo, "Prices", "Supplier", place).String, cell(demo, "Prices", "Price", place).Value) == ("Near", pytest.approx(price - 1))
    assert undo_titles(demo) == ["Suppliers side by side"]
    demo.UndoManager.undo()
    assert differences(before, contents(demo)) == {}


def test_papers_are_written_from_what_the_window_shows(menu, demo, tmp_path):  # noqa: F811
    field(demo, "Job", "Owner").setString("Changed in the window")
    before = contents(demo)
    said = menu.give(demo, "Papers", Folder=str(tmp_path / "papers"), Size="A4")
    names = {line.rsplit("/", 1)[1] for line in said.splitlines()}
    assert names == {"as-built.pdf", "proposal.pdf", "drawing.pdf", "crew-en.pdf", "crew-es.pdf", "record.pdf", "order-1-millrace-supply.pdf",
                     "order-2-stonebrook-yard.pdf", "order-3-greenfield-turf.pdf", "invoice.pdf", "care.pdf", "whole.pdf"}
    text = subprocess.run(["pdftotext", "-layout", str(tmp_path / "papers/proposal.pdf"), "-"], capture_output=True, text=True).stdout
    assert "Changed in the window" in text
    size = subprocess.run(["pdfinfo", str(tmp_path / "papers/proposal.pdf")], capture_output=True, text=True).stdout
    assert "(A4)" in size, size
    assert differences(before, contents(demo)) == {}, "the workbook itself stays as it is"
    with pytest.raises(Refused, match="argument Folder is missing"):
        menu.give(demo, "Papers")
    with pytest.raises(Refused, match="Letter or A4"):
        menu.give(demo, "Papers", Folder=str(tmp_path), Size="Legal")


def test_the_drawing_for_other_programs(menu, demo, tmp_path):  # noqa: F811
    before = contents(demo)
    with pytest.raises(Refused, match="argument Folder is missing"):
        menu.give(demo, "DrawingFiles")
    said = menu.give(demo, "DrawingFiles", Folder=str(tmp_path / "files")).splitlines()
    assert said == [str(tmp_path / "files/drawing.dxf"), str(tmp_path / "files/as-built.dxf"), "no GeoJSON: type Longitude and Latitude of two points on Layout"]
    text = (tmp_path / "files/drawing.dxf").read_text(encoding="ascii")
    assert text.endswith("\nEOF\n") and "\n$INSUNITS\n70\n2\n" in text and text.count("\nPIPE-SMALL\n") > 10
    assert differences(before, contents(demo)) == {} and undo_titles(demo) == []


def test_a_copy_for_somebody_without_the_add_in(menu, demo, tmp_path):  # noqa: F811
    before = contents(demo)
    said = menu.give(demo, "CopyValues", To=str(tmp_path / "copy"))
    assert said.splitlines() == [str(tmp_path / "copy.ods"), str(tmp_path / "copy.xlsx")]
    assert differences(before, contents(demo)) == {} and undo_titles(demo) == []
    assert "table:formula=" not in file_text(tmp_path / "copy.ods")
    assert re.findall(r"<f[ >]", file_text(tmp_path / "copy.xlsx")) == []
    state = named(demo, "engine_state").getCellByPosition(0, 0).String
    changed_by_right = {place for place, value in before.items() if place[0] == "Job" and value == state}
    assert changed_by_right, "Job says which engine it is"
    changed_by_right |= {place_of(named(demo, "engine_here").getCellByPosition(0, 0)), ("Job", 0, 1)}
    with Office() as plain:
        for ending in ("ods", "xlsx"):
            copy = plain.open(tmp_path / f"copy.{ending}")
            copy.calculateAll()
            changed = differences(before, contents(copy))
            assert set(changed) == changed_by_right, dict(list(changed.items())[:5])
            assert all("a copy of values" in now for _, now in changed.values())
            copy.close(True)
    with pytest.raises(Refused, match="is there already"):
        menu.give(demo, "CopyValues", To=str(tmp_path / "copy.xlsx"))


def test_shots_from_a_file_and_the_columns_are_asked_once(office, menu, demo, tmp_path):  # noqa: F811
    csv = tmp_path / "shots.csv"
    csv.write_text("Pkt,Hoehe,Bem\nN1,99.25,by the ditch\nN2,98.75,\n", encoding="utf-8")
    with pytest.raises(Refused, match="which columns hold the point and its level or rod. It has Pkt, Hoehe, Bem"):
        menu.give(demo, "Shots", File=str(csv))
    before = contents(demo)
    said = menu.give(demo, "Shots", File=str(csv), Point="Pkt", Level="Hoehe", Note="Bem")
    assert said == "2 shots brought in from shots.csv."
    headings = list(table(demo, "Levels").DataArray[0])
    rows = {row[headings.index("Point")]: row for row in table(demo, "Levels").DataArray}
    assert rows["N1"][headings.index("Level")] == 99.25 and rows["N1"][headings.index("Note")] == "by the ditch"
    assert rows["N2"][headings.index("Check")] == "OK"
    assert undo_titles(demo) == ["Site notes from CSV"]
    assert menu.give(demo, "Shots", File=str(csv)).startswith("0 shots brought in"), "the columns are remembered"
    save(demo, tmp_path / "kept.ods")
    again = office.open(tmp_path / "kept.ods")
    try:
        assert "2 lines stood on Levels already" in menu.give(again, "Shots", File=str(csv)), "in the file, too"
    finally:
        again.close(True)
    while undo_titles(demo):
        demo.UndoManager.undo()
    assert differences(before, contents(demo)) == {}


def test_more_shots_than_rows(menu, demo, tmp_path):  # noqa: F811
    ready = table(demo, "Levels").Rows.Count - 4
    before = [point for point in column(demo, "Levels", "Point") if point]
    csv = tmp_path / "many.csv"
    csv.write_text("point,rod\n" + "".join(f"Z{n},{4 + n / 100}\n" for n in range(ready)), encoding="utf-8")
    menu.give(demo, "Shots", File=str(csv))
    points = column(demo, "Levels", "Point")
    assert [point for point in points if point] == before + [f"Z{n}" for n in range(ready)]
    checks = [check for check, point in zip(column(demo, "Levels", "Check"), points) if point.startswith("Z")]
    assert len(checks) == ready and set(checks) == {"OK"}, "an inserted row has its formulas"


def test_a_cell_is_explained_with_method_source_and_arguments(menu, sheet):  # noqa: F811
    sheet.type("B2", 0.01)
    sheet.type("C2", '=PIPE.CAPACITY("4 SDR35";B2)')
    select(sheet.document, sheet.cell("C2"))
    said = menu.give(sheet.document, "Explain")
    source = sheet.formula('TRENCHBOOK.SOURCE("PIPE.CAPACITY")')
    for part in ("Sheet1.C2", 'PIPE.CAPACITY("4 SDR35";B2)', "Method and source: " + source, 'pipe = "4 SDR35"', "slope = 0.01", "Reason: OK"):
        assert part in said, said
    sheet.type("B2", -1)
    reason = sheet.formula('TRENCHBOOK.WHY("PIPE.CAPACITY";"4 SDR35";B2)')
    assert reason != "OK" and "Reason: " + reason in menu.give(sheet.document, "Explain")
    assert "Motivo: " + sheet.formula('TRENCHBOOK.WHY("PIPE.CAPACITY";"4 SDR35";B2;"es")') in menu.give(sheet.document, "Explain", Language="es")
    sheet.type("D2", "typed")
    select(sheet.document, sheet.cell("D2"))
    assert "It is typed, not worked out." in menu.give(sheet.document, "Explain")


def test_a_cell_of_the_job_is_explained_down_to_its_block_and_rules(menu, demo):  # noqa: F811
    before = contents(demo)
    undone = undo_titles(demo)
    select(demo, cell(demo, "Runs", "Ground up"))
    said = menu.give(demo, "Explain")
    for part in ("Runs.", "Ground up: ", "It is looked up in the block runs_numbers on Workings: =JOB.RUNS(", "nodes = the table Nodes",
                 "Reason: OK", "What the rules say of this row:", "aslaid.tolerance", "Check: "):
        assert part in said, said
    assert differences(before, contents(demo)) == {} and undo_titles(demo) == undone
    select(demo, cell(demo, "Levels", "Level", 1))
    assert "Calc's own functions alone" in menu.give(demo, "Explain")
