"""The menu's commands in a real Calc, given as a program gives them: by address, with arguments, on the frame's workbook."""

import subprocess

import pytest
import uno

from calc import Sheet
from menu import Menu, Refused, undo_titles
from office import properties, url


@pytest.fixture(scope="session")
def menu(office):
    return Menu(office)


@pytest.fixture
def job(office, extensions):
    """A new job from the template that the package brings."""
    document = office.open(extensions / "trenchbook/templates/Trenchbook/job.ots", AsTemplate=True)
    yield document
    document.close(True)


def named(document, name):
    return document.NamedRanges.getByName(name).ReferredCells


def table(document, name):
    """A table's area: headings, units, thin row, ready rows, closing row."""
    return document.NamedRanges.getByName(f"table_{name}").ReferredCells


def cell(document, name, heading, ready=0):
    area = table(document, name)
    headings = list(area.getCellRangeByPosition(0, 0, area.Columns.Count - 1, 0).DataArray[0])
    return area.getCellByPosition(headings.index(heading), 3 + ready)


def offered_cheaper(book, job, place):
    """The price book sells the job's row of Prices at a dollar less, by Near, who delivers free above an amount."""
    for heading in ("Code", "Item", "Group", "Unit", "Supplier", "Taxable", "Pack", "Waste"):
        cell(book, "Prices", heading).setFormula(cell(job, "Prices", heading, place).getFormula())
    for heading, value in (("Supplier", "Near"), ("Delivery", 40), ("Free from", 100)):
        cell(book, "Suppliers", heading).setFormula(str(value))
    for heading in ("Code", "Unit", "Pack"):
        cell(book, "Offers", heading).setFormula(cell(job, "Prices", heading, place).getFormula())
    cell(book, "Offers", "Supplier").setString("Near")
    cell(book, "Offers", "Price").setValue(cell(job, "Prices", "Price", place).Value - 1)
    cell(book, "Offers", "Priced on").setValue(cell(job, "Prices", "Priced on", place).Value + 20)


def column(document, name, heading):
    """What the ready rows hold under a heading."""
    top = cell(document, name, heading).CellAddress
    area = table(document, name)
    return [row[top.Column - area.RangeAddress.StartColumn] for row in area.DataArray[3:-1]]


def field(document, form, label):
    area = named(document, f"form_{form}")
    labels = [row[0] for row in area.DataArray]
    return area.getCellByPosition(1, labels.index(label))


def selected(document):
    at = document.CurrentSelection.RangeAddress
    return document.Sheets[at.Sheet].Name, at.StartColumn, at.StartRow


def place_of(found):
    at = found.CellAddress
    return found.Spreadsheet.Name, at.Column, at.Row


def select(document, found):
    document.CurrentController.select(found)


def all_missing(menu, document):
    """Every cell that the command leads to, once around, with what it said there."""
    told = {}
    while True:
        said = menu.give(document, "NextMissing")
        if selected(document) in told:
            return told
        told[selected(document)] = said


def test_the_office_shows_the_menu_in_calc_alone(office):
    node = properties(nodepath="/org.openoffice.Office.Addons/AddonUI/OfficeMenuBar")[0]
    provider = office.service("com.sun.star.configuration.ConfigurationProvider")
    node.Name = "nodepath"
    bars = provider.createInstanceWithArguments("com.sun.star.configuration.ConfigurationAccess", (node,))
    ours = bars.getByName("trenchbook.menu")
    assert ours.Title == "Trench~book" and ours.Context == "com.sun.star.sheet.SpreadsheetDocument"
    entries = [ours.Submenu.getByName(name) for name in sorted(ours.Submenu.ElementNames)]
    urls = [entry.URL for entry in entries]
    assert urls[-1] == "trenchbook.menu:About" and "private:separator" in urls
    assert all(entry.Title for entry in entries if entry.URL != "private:separator")


def test_about_tells_what_is_installed_and_tests_itself(menu, sheet):
    said = menu.give(sheet.document, "About")
    assert said == sheet.formula("TRENCHBOOK.SUPPORT()")
    right, of = said.rsplit("self-test: ", 1)[1].split(" printed")[0].split(" of ")
    assert right == of and int(of) > 5
    assert "LibreOffice" in said
    assert "autoprueba" in menu.give(sheet.document, "About", Language="es")


def test_a_command_without_a_job_or_a_name_is_refused_in_words(menu, sheet):
    with pytest.raises(Refused, match="not a job workbook"):
        menu.give(sheet.document, "NextMissing")
    with pytest.raises(Refused, match="no es un libro de obra"):
        menu.give(sheet.document, "NextMissing", Language="es")
    with pytest.raises(Refused, match="no command Bore"):
        menu.give(sheet.document, "Bore")


def test_the_next_missing_thing_is_the_cell_where_it_is_typed(menu, job):
    labels = ["Job", "Owner", "Site", "Quote date", "Rain", "Rules fit this county", "Soil", "Outlet", "Outlet permission",
              "Septic", "Irrigation or pool lines", "Owners' association"]
    select(job, field(job, "Job", "Units"))
    for label in labels:
        said = menu.give(job, "NextMissing")
        assert selected(job) == place_of(field(job, "Job", label)), said
    for name, heading in [("Levels", "Point"), ("Water", "Inlet"), ("Runs", "Line")]:
        said = menu.give(job, "NextMissing")
        assert selected(job) == place_of(cell(job, name, heading)), said
    said = menu.give(job, "NextMissing")
    assert selected(job) == place_of(field(job, "Job", "Locate ticket")) and "call 811" in said
    assert undo_titles(job) == []


def test_what_is_filled_is_not_asked_again(menu, job):
    field(job, "Job", "Job").setString("Made-up lane")
    field(job, "Job", "Septic").setString("no")
    job.calculate()
    select(job, field(job, "Job", "Units"))
    said = menu.give(job, "NextMissing")
    assert "owner" in said and selected(job) == place_of(field(job, "Job", "Owner"))
    first = selected(job)
    seen = all_missing(menu, job)
    assert first in seen, "from the last one back to the first"
    assert place_of(field(job, "Job", "Job")) not in seen and place_of(field(job, "Job", "Septic")) not in seen
    assert place_of(field(job, "Job", "Well")) in seen, "the other half of the question"


def test_a_finding_of_a_row_leads_to_its_row(menu, job):
    for heading, typed in [("Line", "a"), ("From", "A"), ("To", "B"), ("Pipe", "4 SDR35")]:
        cell(job, "Runs", heading, 4).setString(typed)
    job.calculate()
    wanted = place_of(cell(job, "Runs", "Length", 4))
    told = all_missing(menu, job)
    assert wanted in told and "Runs A-B" in told[wanted], told


def test_print_ranges_follow_the_filled_rows_and_can_be_undone(menu, job):
    runs = job.Sheets.getByName("Runs")
    menu.give(job, "PrintRanges")
    short = runs.PrintAreas[0].EndRow
    cell(job, "Runs", "Line", 12).setString("a")
    undone = len(undo_titles(job))
    said = menu.give(job, "PrintRanges")
    assert "to the last row" in said
    assert runs.PrintAreas[0].EndRow == cell(job, "Runs", "Line", 12).CellAddress.Row > short
    assert undo_titles(job)[0] == "Print ranges follow the filled rows" and len(undo_titles(job)) == undone + 1
    assert "already" in menu.give(job, "PrintRanges")
    job.UndoManager.undo()
    assert runs.PrintAreas[0].EndRow == short


def test_pages_printed_from_calc_end_with_the_filled_rows(menu, job, tmp_path):
    """Printed by the office itself: an empty job's Runs is one page wide and one high."""
    menu.give(job, "PrintRanges")
    target = tmp_path / "runs.pdf"
    data = properties(Selection=job.Sheets.getByName("Levels"))
    job.storeToURL(url(target), properties(FilterName="calc_pdf_Export",
                                           FilterData=uno.Any("[]com.sun.star.beans.PropertyValue", data)))
    told = subprocess.run(["pdfinfo", str(target)], capture_output=True, text=True).stdout
    assert "Pages:           1\n" in told, told
