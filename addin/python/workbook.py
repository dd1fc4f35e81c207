# An open workbook as the commands of the library read it, and their steps carried out on it.
import json
from contextlib import contextmanager

import unohelper
from com.sun.star.document import XUndoAction
from com.sun.star.sheet.CellFlags import FORMULA
from com.sun.star.sheet.FormulaResult import ERROR
from com.sun.star.table import CellAddress, CellRangeAddress
from com.sun.star.table.CellContentType import EMPTY


def rect(at):
    return (at.Sheet, at.StartColumn, at.StartRow, at.EndColumn, at.EndRow)


def used_area(sheet):
    cursor = sheet.createCursor()
    cursor.gotoEndOfUsedArea(False)
    end = cursor.RangeAddress
    return sheet.getCellRangeByPosition(0, 0, end.EndColumn, end.EndRow)


def cells_of(area):
    """Rows of values; an error arrives as nothing, and what the cell shows is its code."""
    return tuple(row if None not in row else
                 tuple(area.getCellByPosition(column, place).String if cell is None else cell
                       for column, cell in enumerate(row))
                 for place, row in enumerate(area.getDataArray()))


def sheet_values(document, place):
    sheet = document.Sheets.getByIndex(place)
    area = used_area(sheet)
    width, height = area.RangeAddress.EndColumn + 1, area.RangeAddress.EndRow + 1
    formulas = bytearray(b"0") * (width * height)
    for at in area.queryContentCells(FORMULA).RangeAddresses:
        ones = b"1" * (at.EndColumn - at.StartColumn + 1)
        for row in range(at.StartRow, at.EndRow + 1):
            formulas[row * width + at.StartColumn:row * width + at.EndColumn + 1] = ones
    hidden = bytearray(b"1") * width
    for at in area.queryVisibleCells().RangeAddresses:
        hidden[at.StartColumn:at.EndColumn + 1] = b"0" * (at.EndColumn - at.StartColumn + 1)
    printed = sheet.getPrintAreas()
    return [sheet.Name, float(sheet.IsVisible), cells_of(area), formulas.decode("ascii"), hidden.decode("ascii"),
            (rect(printed[0]),) if len(printed) == 1 else (), drawn_to(document, sheet, place)]


def drawn_to(document, sheet, place):
    """The row in which the lowest chart or picture ends; rows have many heights."""
    shapes = document.DrawPages.getByIndex(place)
    lowest = -1
    for n in range(shapes.Count):
        shape = shapes.getByIndex(n)
        lowest = max(lowest, shape.Position.Y + shape.Size.Height)
    if lowest < 0:
        return -1
    above, below = 0, 1
    while sheet.getCellByPosition(0, below).Position.Y < lowest:
        below *= 2
    while below - above > 1:
        middle = (above + below) // 2
        if sheet.getCellByPosition(0, middle).Position.Y < lowest:
            above = middle
        else:
            below = middle
    return above


def named_cells(document, name):
    """The cells of a defined name; nothing where there are none."""
    names = document.NamedRanges
    return names.getByName(name).getReferredCells() if names.hasByName(name) else None


def cursor_of(document):
    selection = document.CurrentSelection
    at = getattr(selection, "RangeAddress", None)
    return () if at is None else ((at.Sheet, at.StartColumn, at.StartRow),)


def workbook(document):
    """The values of a WORKBOOK, as addin/c/trenchbook_c.h lists them."""
    values = [document.Sheets.Count]
    for place in range(document.Sheets.Count):
        values += sheet_values(document, place)
    found = [(name, named_cells(document, name)) for name in document.NamedRanges.ElementNames]
    values.append(tuple((name,) + rect(cells.RangeAddress) for name, cells in found if cells is not None))
    kept = document.DocumentProperties.UserDefinedProperties
    pairs = [(one.Name, kept.getPropertyValue(one.Name)) for one in kept.PropertySetInfo.Properties]
    values.append(tuple((name, text) for name, text in pairs if type(text) is str))
    values.append(cursor_of(document))
    return values


@contextmanager
def unprotected(sheet):
    """A protected sheet takes no rows: it is open meanwhile."""
    was = sheet.isProtected()
    if was:
        sheet.unprotect("")
    try:
        yield
    finally:
        if was:
            sheet.protect("")


def show_sheet(document, place, visible):
    """A sheet steps aside or comes back. A link to a hidden sheet shows the next one that is not: so in the list on Job the
    link of one that stepped aside leads to the words beside it, which say why, and how it comes back."""
    sheet = document.Sheets.getByIndex(place)
    sheet.IsVisible = visible
    listed = named_cells(document, "sheets_aside")
    if listed is None:
        return
    for shape in document.DrawPages.getByIndex(listed.RangeAddress.Sheet):
        if shape.Title == sheet.Name and shape.Hyperlink.startswith("#") and hasattr(shape.Anchor, "CellAddress"):
            beside = "%s.B%d" % (listed.Spreadsheet.Name, shape.Anchor.CellAddress.Row + 1)
            shape.Hyperlink = "#" + (sheet.Name if visible else beside)


class SheetShown(unohelper.Base, XUndoAction):
    """The same as a step to be undone: Calc 25.2 records none of its own for it."""

    def __init__(self, document, place, visible):
        self.document, self.place, self.visible = document, place, visible
        self.Title = "Show Sheet" if visible else "Hide Sheet"

    def undo(self):
        self.show(not self.visible)

    def redo(self):
        self.show(self.visible)

    def show(self, visible):
        self.document.UndoManager.lock()
        try:
            show_sheet(self.document, self.place, visible)
        finally:
            self.document.UndoManager.unlock()


class Hand:
    """Carries steps out. To be undone, cells are written one by one; on a copy, as a whole."""

    def __init__(self, document, undone):
        self.document, self.undone = document, undone

    def sheet(self, place):
        return self.document.Sheets.getByIndex(place)

    def carry_out(self, steps):
        for step in steps:
            getattr(self, "do_" + step["do"])(step)

    def do_put(self, step):
        place, column, row = step["at"]
        rows = step["rows"]
        if not rows:
            return
        sheet = self.sheet(place)
        if self.undone:
            for down, values in enumerate(rows):
                for right, value in enumerate(values):
                    self.put(sheet.getCellByPosition(column + right, row + down), value)
            return
        area = sheet.getCellRangeByPosition(column, row, column + len(rows[0]) - 1, row + len(rows) - 1)
        # Cells lose their notes when they are written.
        inside = area.RangeAddress
        notes = [(note.Position, note.String) for note in sheet.Annotations
                 if inside.StartColumn <= note.Position.Column <= inside.EndColumn
                 and inside.StartRow <= note.Position.Row <= inside.EndRow]
        area.setDataArray(tuple(tuple("" if value is None else value for value in values) for values in rows))
        for at, says in notes:
            sheet.Annotations.insertNew(at, says)

    @staticmethod
    def put(cell, value):
        if isinstance(value, str):
            cell.setString(value)
        elif value is not None:
            cell.setValue(value)
        elif cell.Type != EMPTY:
            cell.setFormula("")

    def do_unprotect(self, step):
        self.sheet(step["sheet"]).unprotect("")

    def do_clear(self, step):
        place, column, row, last_column, last_row = step["area"]
        self.sheet(place).getCellRangeByPosition(column, row, last_column, last_row).clearContents(FORMULA)

    def do_note(self, step):
        place, column, row = step["at"]
        self.sheet(place).Annotations.insertNew(CellAddress(place, column, row), step["says"])

    def do_rows(self, step):
        """New rows get what stands in the row above; what is there already is copied, too."""
        place, column, _, last_column, _ = step["pattern"]
        before, count = step["before"], step["count"]
        sheet = self.sheet(place)
        with unprotected(sheet):
            sheet.Rows.insertByIndex(before, count)
            done = 0
            while done < count:
                size = min(done + 1, count - done)
                sheet.copyRange(CellAddress(place, column, before + done),
                                CellRangeAddress(place, column, before - 1, last_column, before + size - 2))
                done += size

    def do_print(self, step):
        self.sheet(step["area"][0]).setPrintAreas((CellRangeAddress(*step["area"]),))

    def do_select(self, step):
        view = self.document.CurrentController
        if hasattr(view, "setActiveSheet"):
            place, column, row = step["at"]
            view.setActiveSheet(self.sheet(place))
            view.select(self.sheet(place).getCellByPosition(column, row))

    def do_show(self, step):
        if not self.undone:
            show_sheet(self.document, step["sheet"], bool(step["visible"]))
            return
        action = SheetShown(self.document, step["sheet"], bool(step["visible"]))
        action.redo()
        self.document.UndoManager.addUndoAction(action)

    def do_remember(self, step):
        kept = self.document.DocumentProperties.UserDefinedProperties
        if kept.PropertySetInfo.hasPropertyByName(step["name"]):
            kept.setPropertyValue(step["name"], step["text"])
        else:
            kept.addProperty(step["name"], 128, step["text"])  # com.sun.star.beans.PropertyAttribute.REMOVABLE


def formula_of(document, place, column, row):
    formula = document.Sheets.getByIndex(place).getCellByPosition(column, row).getFormula()
    return formula[1:-1] if formula.startswith("{=") and formula.endswith("}") else formula


def worked_out(document, place, row, formulas):
    """What formulas give in a row of a sheet; nothing is drawn, and nothing kept for undoing."""
    sheet = document.Sheets.getByIndex(place)
    area = sheet.getCellRangeByPosition(sheet.Columns.Count - 1, row, sheet.Columns.Count - 1, row)
    cell = area.getCellByPosition(0, 0)
    document.lockControllers()
    document.UndoManager.lock()
    try:
        with unprotected(sheet):
            answers = []
            for formula in formulas:
                if formula:
                    cell.setFormula(formula)
                answers.append(cells_of(area)[0][0] if formula else "")
                cell.setFormula("")
            return tuple((answer,) for answer in answers)
    finally:
        document.UndoManager.unlock()
        document.unlockControllers()


def unknown_function(library, formula):
    """The first function of ours that the office did not know when it read the formula: those stand in lower case."""
    outside = "".join(formula.split('"')[::2])
    for name in re.findall(r"([A-Za-z0-9._]+)\(", outside):
        if name != name.lower():
            continue
        if name.startswith("trenchbook.functions.") or knows(library, name):
            return name
    return None


def knows(library, name):
    try:
        asked(library, name.encode("ascii"), ())
    except Refusal as refusal:
        return refusal.code != NO_FUNCTION
    return True


def require_resolved(library, document, file):
    """Refuses a workbook with a function of ours that is not there: its sums would be wrong."""
    ranges = [cells for cells in [named_cells(document, "engine_here")] if cells is not None]
    for place in range(document.Sheets.Count):
        sheet = document.Sheets.getByIndex(place)
        ranges += [sheet.getCellRangeByPosition(at.StartColumn, at.StartRow, at.EndColumn, at.EndRow)
                   for at in sheet.queryFormulaCells(ERROR).RangeAddresses]
    for area in ranges:
        for row, line in enumerate(area.getFormulaArray()):
            for column, formula in enumerate(line):
                name = unknown_function(library, formula)
                if name:
                    where = area.getCellByPosition(column, row).AbsoluteName.replace("$", "")
                    raise Refusal(BAD_ARGUMENT, "%s: %s asks for the function %s, which is not there: the file was written "
                                  "by another version, or by an office that does not keep its names; its sums would be "
                                  "wrong" % (file, where, name))
