"""Every entry of the menu in a real window, by keyboard alone: Alt+B opens the menu, a letter takes the entry."""

import os
import re
import signal
import time
from pathlib import Path

import pytest

from menu import undo_titles
from menu_test import cell, column, field, named, offered_cheaper, place_of, select, selected, table
from office import properties, save, url
from window import Desk, Screen, WindowOffice, wait


@pytest.fixture(scope="module")
def desk(extensions, tmp_path_factory):
    screen = Screen()
    profile = tmp_path_factory.mktemp("window") / "profile"
    office = WindowOffice(screen, extensions, profile)
    try:
        template = extensions / "trenchbook/templates/Trenchbook/job.ots"
        document = office.desktop.loadComponentFromURL(url(template), "_blank", 0, properties(AsTemplate=True))
        wait(lambda: screen.windows("Calc"), "no window")
        yield Desk(screen, office, document)
    finally:
        # It would ask for each window whether to save.
        os.killpg(office.process.pid, signal.SIGKILL)
        office.process.wait()
        screen.end()


def test_each_entry_is_given_here(desk):
    node = properties(nodepath="/org.openoffice.Office.Addons/AddonUI/OfficeMenuBar/trenchbook.menu/Submenu")
    provider = desk.office.service("com.sun.star.configuration.ConfigurationProvider")
    entries = provider.createInstanceWithArguments("com.sun.star.configuration.ConfigurationAccess", node)
    titles = [title for name in entries.ElementNames if (title := entries.getByName(name).Title)]
    letters = [title[title.index("~") + 1].lower() for title in titles if "~" in title]
    assert len(letters) == len(set(letters)) == len(titles)
    given = set(re.findall(r'(?:desk|example)\.take\("(\w)"\)', Path(__file__).read_text(encoding="utf-8")))
    assert set(letters) - given == set()
    assert given - set(letters) in (set(), {"l", "d"}), "the shell in Python has no new lot and no papers"


def test_next_thing_missing_moves_the_cursor_and_asks_nothing(desk):
    select(desk.document, field(desk.document, "Job", "Units"))
    desk.take("m")
    wanted = place_of(field(desk.document, "Job", "Job"))
    wait(lambda: selected(desk.document) == wanted, "the cursor did not move")


def test_about_and_explain_show_a_box(desk):
    desk.take("a")
    desk.box("About and self-test")
    desk.take("e")
    desk.box("Explain this cell")


def test_shots_are_picked_their_columns_shown_and_undone(desk, tmp_path):
    (tmp_path / "shots.csv").write_text("Name,Elev,Code\nQ1,101.25,ditch\n", encoding="utf-8")
    desk.take("s")
    desk.pick("Shots as CSV", tmp_path / "shots.csv")
    desk.box("Site notes from CSV")  # the columns as guessed
    desk.box("from CSV")  # how many came in
    assert [point for point in column(desk.document, "Levels", "Point") if point] == ["Q1"]
    assert undo_titles(desk.document)[0] == "Site notes from CSV"
    desk.screen.keys("alt+e", "u")
    wait(lambda: not any(column(desk.document, "Levels", "Point")), "not undone")


def test_prices_are_shown_before_they_come_in(desk, extensions, tmp_path):
    book = desk.office.open(extensions / "trenchbook/templates/Trenchbook/price-book.ots", AsTemplate=True)
    rock = column(desk.document, "Prices", "Code").index("ROCK")
    for document, price, day in ((book, 41.5, 46360), (desk.document, 40.0, 46353)):
        assert cell(document, "Prices", "Code", rock).String == "ROCK"
        cell(document, "Prices", "Supplier", rock).setString("somebody")
        cell(document, "Prices", "Taxable", rock).setString("yes")
        cell(document, "Prices", "Price", rock).setValue(price)
        cell(document, "Prices", "Priced on", rock).setValue(day)
    save(book, tmp_path / "book.ods")
    book.close(True)
    desk.take("p")
    desk.pick("The price book", tmp_path / "book.ods")
    desk.box("Bring in prices", "alt+y")
    wait(lambda: cell(desk.document, "Prices", "Price", rock).Value == 41.5, "the price did not come in")
    assert cell(desk.document, "Prices", "Last", rock).Value == 40.0
    assert undo_titles(desk.document)[0] == "Bring in prices"


def test_a_refusal_is_a_box_and_changes_nothing(desk):
    before = undo_titles(desk.document)
    desk.take("o")
    desk.box("Issue the order")  # number, supplier, dates
    desk.box("Issue the order")  # why not: nothing is taken off yet
    assert undo_titles(desk.document) == before


@pytest.mark.parametrize("letter, title", [("o", "Issue the order"), ("w", "The other way"), ("d", "Folder for the papers"),
                                           ("c", "Where the copy goes")], ids=["order", "option", "papers", "copy"])
def test_a_box_that_is_left_changes_nothing(desk, letter, title):
    before = undo_titles(desk.document)
    desk.take(letter)
    desk.box(title, "Escape")
    assert undo_titles(desk.document) == before


def test_print_ranges(desk):
    desk.take("f")
    desk.box("Print ranges")


def test_papers(desk, tmp_path):
    (tmp_path / "papers").mkdir()
    desk.take("d")
    desk.pick("Folder for the papers", tmp_path / "papers")
    desk.box("Papers as PDF")
    assert (tmp_path / "papers/crew-es.pdf").stat().st_size > 1000


def test_a_copy(desk, tmp_path):
    desk.take("c")
    desk.pick("Where the copy goes", tmp_path / "copy")
    desk.box("Copy for somebody")
    assert (tmp_path / "copy.ods").exists() and (tmp_path / "copy.xlsx").exists()


@pytest.fixture
def example(desk, extensions):
    """The shipped example, a whole job, in a window of its own."""
    template = extensions / "trenchbook/templates/Trenchbook/example.ots"
    document = desk.office.desktop.loadComponentFromURL(url(template), "_blank", 0, properties(AsTemplate=True))
    yield Desk(desk.screen, desk.office, document)
    document.setModified(False)
    document.close(True)


def test_an_order_is_issued_anew(example):
    example.take("o")
    wait(lambda: example.screen.windows("Issue the order"), "no box")
    example.screen.keys("ctrl+a")
    example.screen.type("PO-77")
    example.box("Issue the order")  # number, supplier, dates
    example.box("Issue the order", "alt+y")  # one stands there already
    example.box("Issue the order")  # how many lines, and the sum
    assert named(example.document, "order_number").getCellByPosition(0, 0).String == "PO-77"
    assert undo_titles(example.document)[0] == "Issue the order"


def test_another_way_stands_beside_this_one(example, tmp_path):
    save(example.document, tmp_path / "other.ods")
    example.take("w")
    example.pick("The other way", tmp_path / "other.ods")
    example.box("Other way to do it")
    files = [name for name in column(example.document, "Options", "File") if name]
    assert files == ["other.ods"]
    assert undo_titles(example.document)[0] == "Other way to do it"


def test_a_change_comes_from_another_file(example, tmp_path):
    save(example.document, tmp_path / "longer.ods")
    field(example.document, "Quote", "Subcontract").setValue(250)
    example.document.calculateAll()
    example.take("h")
    example.pick("The changed job", tmp_path / "longer.ods")
    example.box("Change from another file")
    assert "longer" in column(example.document, "Changes", "What")
    assert undo_titles(example.document)[0] == "Change from another file"


def test_suppliers_stand_side_by_side_before_the_cheapest_comes_in(example, extensions, tmp_path):
    job = example.document
    place = column(job, "Prices", "Code").index("PIPE-6SDR35")
    price = cell(job, "Prices", "Price", place).Value
    book = example.office.open(extensions / "trenchbook/templates/Trenchbook/price-book.ots", AsTemplate=True)
    offered_cheaper(book, job, place)
    save(book, tmp_path / "book.ods")
    book.close(True)
    for answer, supplier in (("alt+n", cell(job, "Prices", "Supplier", place).String), ("alt+y", "Near")):
        example.take("y")
        example.pick("The price book", tmp_path / "book.ods")
        example.box("Suppliers side by side", answer)
        wait(lambda: cell(job, "Prices", "Supplier", place).String == supplier, f"not {supplier}")
    assert cell(job, "Prices", "Price", place).Value == pytest.approx(price - 1)
    assert undo_titles(job)[0] == "Suppliers side by side"


def test_sheets_step_aside_and_come_back(example):
    def shown():
        return {sheet.Name for sheet in example.document.Sheets if sheet.IsVisible}

    before = shown()
    assert "Pump" not in before and "Pit" in before
    example.take("n")
    example.box("Sheets needed")
    assert shown() - before == {"Pump", "Peak"}
    example.take("n")
    example.box("Sheets needed")
    assert shown() == before


def follow(desk, sheet):
    """Clicks on a sheet's name in the list on Job; gives the sheet and the cell that the window shows then."""
    document, screen, view = desk.document, desk.screen, desk.document.CurrentController
    job = document.Sheets.getByName("Job")
    names = [row[0] for row in job.getCellRangeByName("A1:A200").DataArray]
    cell = job.getCellByPosition(0, names.index(sheet, names.index("What stands on which sheet")))
    view.setActiveSheet(job)
    select(document, cell)  # which brings it in sight
    wait(lambda: view.ActiveSheet.Name == "Job" and selected(document) == place_of(cell), "Job does not show its list")
    time.sleep(1)
    seen, pixels = view.VisibleArea, view.VisibleAreaOnScreen
    x = pixels.X + (cell.Position.X + 400 - seen.X) * pixels.Width // seen.Width
    y = pixels.Y + (cell.Position.Y + 200 - seen.Y) * pixels.Height // seen.Height
    screen.tool("mousemove", str(x), str(y), "click", "1")
    time.sleep(1)
    return view.ActiveSheet.Name, selected(document)


def test_the_link_to_a_sheet_that_stepped_aside_says_why_and_leads_there_when_it_is_back(example):
    document = example.document
    assert not document.Sheets.getByName("Pump").IsVisible and document.Sheets.getByName("Pit").IsVisible
    assert follow(example, "Pit")[0] == "Pit"
    sheet, (_, _, row) = follow(example, "Pump")
    said = document.Sheets.getByName("Job").getCellByPosition(1, row).String
    assert sheet == "Job" and said.startswith("(NOT NEEDED: NO PUMP BASIN; HIDDEN)"), said
    example.take("n")
    example.box("Sheets needed")
    assert follow(example, "Pump")[0] == "Pump"
    document.CurrentController.Frame.ContainerWindow.setFocus()
    example.screen.keys("alt+e", "u")
    wait(lambda: not document.Sheets.getByName("Pump").IsVisible, "the sheets are not put aside again")
    sheet, (_, _, again) = follow(example, "Pump")
    assert (sheet, again) == ("Job", row)


def test_what_was_sold_is_held_against_what_it_cost(example):
    example.take("t")
    example.box("Sold", "alt+n")  # rows stand there already
    example.box("Sold")  # why not
    before = len([what for what in column(example.document, "Close_out", "What") if what])
    example.take("t")
    example.box("Sold", "alt+y")
    example.box("Sold")  # how many rows, and the sum
    assert undo_titles(example.document)[0] == "Sold: the estimate to Close-out"
    amounts = column(example.document, "Close_out", "Actual amount")
    assert not any(amounts) and before
    example.take("b")
    example.box("What bills and hours cost")
    assert undo_titles(example.document)[0] == "What bills and hours cost"
    assert sum(1 for amount in column(example.document, "Close_out", "Actual amount") if amount) > 20
    for _ in range(2):
        example.screen.keys("alt+e", "u")
    wait(lambda: column(example.document, "Close_out", "Actual amount") != amounts, "not undone")


def test_the_drawing_goes_into_a_folder(example, tmp_path):
    example.take("x")
    example.pick("Folder for the drawing", tmp_path)
    example.box("Drawing as DXF")
    assert (tmp_path / "drawing.dxf").read_text(encoding="ascii").endswith("\nEOF\n")


def test_rates_come_from_a_ledger_and_a_job_goes_into_one(example, extensions, tmp_path):
    template = extensions / "trenchbook/templates/Trenchbook/ledger.ots"
    ledger = example.office.desktop.loadComponentFromURL(url(template), "_blank", 0, properties(AsTemplate=True))
    save(ledger, tmp_path / "ledger.ods")
    save(example.document, tmp_path / "job.ods")
    desk = Desk(example.screen, example.office, ledger)
    desk.take("g")
    desk.pick("The finished job", tmp_path / "job.ods")
    desk.box("Take a finished job")
    assert [name for name in column(ledger, "Jobs", "Job") if name] == [field(example.document, "Job", "Job").String]
    ledger.setModified(False)
    ledger.close(True)
    example.take("r")
    example.pick("The ledger", tmp_path / "ledger.ods")
    example.box("Learn rates")


def test_a_new_lot_opens_in_a_window_of_its_own(desk):
    before = len(list(desk.office.documents()))
    desk.take("l")
    desk.box("New lot from this job")
    wait(lambda: len(list(desk.office.documents())) == before + 1, "no new lot")


def test_a_new_job_opens_in_a_window_of_its_own(desk):
    before = len(list(desk.office.documents()))
    desk.take("j")
    wait(lambda: len(list(desk.office.documents())) == before + 1, "no new job")
