"""Wrong values in the input cells of a whole job, one at a time, in Calc: the demo lot with a pump and a swale.

For each input column of each table, in its first filled row, and for each field of each form: blank, words, an error, a
negative, a huge and a percent number, a date, another unit, a space, a formula that gives words. What the cell itself
refuses or warns of by its validity (list, limits), words where its format is a number's, and an error are wrong there. Then

  named     the row's check, or a finding that was not there before, names the heading
  found     there is a new finding, which does not name it
  silent    none, though it is wrong: a fault
  moves     none, and numbers that show on other rows are others than before: a fault, unless the cell's validity has the
            value among those it allows
  taken     none, the value is allowed there and nothing else moves

    /usr/bin/python3 tests/long/bad_cells.py [--only TABLE] [--after N] [--minutes N] [--report FILE] [--results FILE]
"""

import argparse
import re
import shutil
import sys
import time
from pathlib import Path
from xml.sax.saxutils import quoteattr

CHECKOUT = Path(__file__).resolve().parents[2]
sys.path += [str(CHECKOUT / "tests/sheets"), str(CHECKOUT / "tests/addin/office")]
from calls import BUILD, DEMO, done  # noqa: E402
from money_book import Book  # noqa: E402
from office import Office  # noqa: E402

INPUT = {"Measured on this lot", "Kept from job to job", "From the price book", "Permission or ticket"}
# No verdicts, pictures alone, or papers that repeat what other sheets say.
UNREAD = {"Workings", "Tables", "Functions", "Cancellation", "Drawing", "Profile", "Rules", "Crew", "Care", "Proposal", "Invoice", "Record"}
# What a sold job says of any price that is another than agreed, or of a takeoff that is another than ordered.
CONSEQUENCE = re.compile(r"the agreed price stands|stale: this job cost|not compared with Takeoff|Takeoff now|ordered(?! for this job alone)")
SWALE = {"Bottom": 2, "Side slope": 3, "Deep": 1.5, "Slope": "1%", "Roughness": 0.035}
PUMP = {"Basin": "G7", "Inside diameter": 36, "Floor": 91, "Pump on": 95, "Pump off": 93, "Pump curve": "0:29; 120:0",
        "Discharge pipe": "2 SCH40", "Discharge length": 60, "Elbows": 2, "Discharge level": 101, "Check valve": "yes", "Power out": "alarm",
        "Groundwater": 90, "Outside diameter": 40, "Empty weight": 200, "Anchor concrete": 2}
DATE = 46300  # a day of 2026

BAD = {
    "blank": lambda cell: cell.clearContents(1 | 2 | 4 | 16),
    "words": lambda cell: cell.setString("nonsense"),
    "error": lambda cell: cell.setFormula("=1/0"),
    "negative": lambda cell: cell.setValue(-7),
    "huge": lambda cell: cell.setValue(1e12),
    "percent": lambda cell: cell.setString("25 %"),
    "date": lambda cell: cell.setValue(DATE),
    "unit": lambda cell: cell.setString("7 lb"),
    "space": lambda cell: cell.setString(" "),
    "formula": lambda cell: cell.setFormula('="abc"'),
}
WORDS = {"words", "percent", "unit", "formula"}
NUMBERS = {"negative": -7, "huge": 1e12, "date": DATE}
# Money first: what the engine reads is tried there with any cell (tests/fuzz/cell_fuzz.cpp).
LAST = ["Levels", "Nodes", "Water", "Runs", "Ground", "Crossings", "Outlets", "Pump", "Layout", "Tapes", "As_built"]


def name_of(kind, area_name):
    return area_name[len(kind) + 1:]


class Cell:
    """An input cell with what is known of it from outside: its format and its validity."""

    def __init__(self, table, heading, cell, row, formats):
        self.table, self.heading, self.cell, self.row = table, heading, cell, row
        self.sheet = cell.Spreadsheet.Name
        rule = cell.Validation
        self.kind = rule.Type.value
        self.strict = rule.ErrorAlertStyle.value == "STOP"
        self.low = self.high = None
        if self.kind == "DECIMAL":
            self.low, self.high = (float(re.findall(r"-?[\d.]+(?:[eE][+-]?\d+)?", text)[-1]) for text in (rule.Formula1, rule.Formula2))
        self.words = re.findall(r'"([^"]*)"', rule.Formula1) if self.kind == "LIST" else []
        # 1 user's, 2 date, 4 time, 8 money, 16 number, 256 words: com.sun.star.util.NumberFormat
        self.number = formats.getByKey(cell.NumberFormat).Type & (2 | 4 | 8 | 16 | 32 | 128) != 0 and \
            formats.getByKey(cell.NumberFormat).FormatString not in ("General", "@")
        self.was, self.was_kind = cell.getFormula(), cell.Type.value

    def wrong(self, bad):
        """None where only its reader can know."""
        if bad == "error":
            return True
        if bad in ("blank", "space"):
            return None
        if self.kind == "LIST":
            return True if self.strict else None
        if self.kind == "DECIMAL":
            return True if bad in WORDS else not self.low <= NUMBERS[bad] <= self.high
        if self.number:
            return True if bad in WORDS else None
        return None

    def restore(self):
        if self.was_kind == "EMPTY":
            self.cell.clearContents(1 | 2 | 4 | 16)
        elif self.was_kind == "VALUE":
            self.cell.setValue(float(self.was))
        elif self.was_kind == "FORMULA":
            self.cell.setFormula(self.was)
        else:
            self.cell.setString(self.was)


def inputs(document):
    """Every input column, in its first row that is filled, and every input field."""
    formats = document.NumberFormats
    tables, forms, empty = [], [], []
    for name in sorted(document.NamedRanges.ElementNames):
        kind = name.split("_")[0]
        if kind not in ("table", "form"):
            continue
        area = document.NamedRanges.getByName(name).getReferredCells()
        data = area.getDataArray()
        top = area.RangeAddress.StartRow
        if kind == "form":
            for place, row in enumerate(data):
                cell = area.getCellByPosition(1, place)
                if cell.CellStyle in INPUT and area.Rows.getByIndex(place).IsVisible:
                    forms.append(Cell(name_of(kind, name), row[0], cell, top + place, formats))
            continue
        columns = [place for place, heading in enumerate(data[0]) if heading and area.getCellByPosition(place, 3).CellStyle in INPUT]
        ready = range(3, len(data) - 1)
        filled = [row for row in ready if any(data[row][column] != "" for column in columns)]
        if columns and not filled:
            empty.append(name_of(kind, name))
        for column in columns if filled else []:
            row = next((row for row in filled if data[row][column] != ""), filled[0])
            tables.append(Cell(name_of(kind, name), data[0][column], area.getCellByPosition(column, row), top + row, formats))
    return forms + sorted(tables, key=lambda cell: (cell.table in LAST, cell.table)), empty


class Seen:
    """What is compared: on every sheet the rows that hold anything."""

    def __init__(self, document):
        self.areas, self.hidden = [], {}
        for sheet in document.Sheets:
            if sheet.Name in UNREAD:
                continue
            cursor = sheet.createCursor()
            cursor.gotoEndOfUsedArea(False)
            used = cursor.RangeAddress
            self.hidden[sheet.Name] = (
                {row for row in range(used.EndRow + 1) if not sheet.Rows.getByIndex(row).IsVisible},
                {column for column in range(used.EndColumn + 1) if not sheet.Columns.getByIndex(column).IsVisible})
            rows = sheet.getCellRangeByPosition(0, 0, used.EndColumn, used.EndRow).getDataArray()
            filled = [any(value not in ("", 0.0) for value in row) for row in rows]
            first = None
            for row, holds in enumerate([*filled, False]):
                if holds and first is None:
                    first = row
                if first is not None and not holds:
                    self.areas.append((sheet.Name, first, sheet.getCellRangeByPosition(0, first, used.EndColumn, row - 1)))
                    first = None

    def now(self):
        return [area.getDataArray() for _, _, area in self.areas]

    def changes(self, before, after):
        """Sheet, row, column, old, new of every cell that differs."""
        for (sheet, first, _), was, is_ in zip(self.areas, before, after):
            for row, (old, new) in enumerate(zip(was, is_)):
                if old == new:
                    continue
                for column, (one, other) in enumerate(zip(old, new)):
                    if one != other:
                        yield sheet, first + row, column, one, other

    def shows(self, sheet, row, column):
        rows, columns = self.hidden[sheet]
        return row not in rows and column not in columns

    def row(self, held, sheet, row):
        for (name, first, _), rows in zip(self.areas, held):
            if name == sheet and first <= row < first + len(rows):
                return rows[row - first]
        return ()


def finding(text):
    return isinstance(text, str) and re.match(r"(NO|CHECK)\b", text) and not CONSEQUENCE.search(text)


def judged(seen, cell, before, after):
    """What the workbook says of the value, and which numbers moved elsewhere."""
    found, moved = [], []
    for sheet, row, column, old, new in seen.changes(before, after):
        if finding(new):
            found.append((sheet, row, new))
        # An error is None here: it shows.
        if isinstance(new, float) and not (sheet == cell.sheet and row == cell.row) and seen.shows(sheet, row, column) and \
                not (isinstance(old, float) and abs(new - old) <= 1e-9 * max(1, abs(old))):
            moved.append((sheet, row, column, old, new))
    own = [text for sheet, row, text in found if (sheet, row) == (cell.sheet, cell.row)]
    own += [text for text in seen.row(after, cell.sheet, cell.row) if finding(text)] if not own else []
    # A sentence may say the heading shorter: its first word of some length.
    word = next((word for word in cell.heading.lower().split() if len(word) > 3), cell.heading.lower())
    named = [text for _, _, text in found if word in text.lower()]
    return own, named, found, moved


def main():
    asked = argparse.ArgumentParser()
    asked.add_argument("--only", help="one table or form")
    asked.add_argument("--after", type=int, default=0, help="how many columns and fields to leave out at the start")
    asked.add_argument("--minutes", type=float, default=600)
    asked.add_argument("--report", default=str(BUILD / "bad-cells.txt"))
    asked.add_argument("--results")
    asked = asked.parse_args()
    work = BUILD / "bad-cells"
    shutil.rmtree(work, ignore_errors=True)
    work.mkdir()
    done("make", DEMO, work / "job.ods")
    counts, faults, begun = {}, {}, time.monotonic()
    with Office(BUILD / "extension") as office, open(asked.report, "w", encoding="utf-8") as report:
        def say(line):
            print(line, file=report, flush=True)
            print(line, flush=True)

        document = office.open(work / "job.ods")
        document.enableAutomaticCalculation(False)
        book = Book(document)
        book.fill("Outlets", [{"Outlet": "S8", **SWALE}, {"Outlet": "G7", **SWALE}])
        book.fill("Pump", [PUMP])
        document.calculateAll()
        cells, empty = inputs(document)
        say(f"{len(cells)} input columns and fields of {len({cell.table for cell in cells})} tables and forms; no row filled in: " + ", ".join(empty))
        seen = Seen(document)
        before = seen.now()
        tried = 0
        for cell in cells[asked.after:]:
            if asked.only not in (None, cell.table):
                continue
            if time.monotonic() - begun > 60 * asked.minutes:
                say(f"stopped before {cell.table}, {cell.heading}: no time left; --after {cells.index(cell)} goes on")
                break
            tried += 1
            where = f"{cell.table}, {cell.heading}"
            for bad, put in BAD.items():
                if bad == "blank" and cell.was_kind == "EMPTY":
                    continue
                put(cell.cell)
                document.calculate()
                own, named, found, moved = judged(seen, cell, before, seen.now())
                cell.restore()
                wrong = cell.wrong(bad)
                if own or named:
                    what = "named"
                elif found:
                    what = "found"
                elif wrong:
                    what = "silent"
                elif moved:
                    what = "moves"
                else:
                    what = "taken"
                counts[what] = counts.get(what, 0) + 1
                fault = what == "silent" or (what == "moves" and wrong is not False)
                if fault:
                    faults.setdefault(where, []).append(f"{bad}: {what}")
                example = (named or own or [text for _, _, text in found] or [""])[0][:140]
                moves = "; ".join(f"{sheet} row {row + 1}, column {column + 1}: {old if old != '' else 'blank'} -> {new}"
                                  for sheet, row, column, old, new in moved[:3])
                allowed = "" if wrong is None else " (wrong)" if wrong else " (allowed)"
                say(f"{'FAULT ' if fault else ''}{where}, {bad}{allowed}: {what}; {example}"
                    f" | {len(moved)} numbers moved{': ' + moves if moves else ''}")
            document.calculate()
            left = list(seen.changes(before, seen.now()))
            if left:
                say(f"NOT RESTORED {where}: {left[:3]}")
                document.calculateAll()
                before = seen.now()
        say(f"{sum(counts.values())} values in {tried} columns and fields in {time.monotonic() - begun:.0f} s: "
            + ", ".join(f"{what} {count}" for what, count in sorted(counts.items())) + f"; faults in {len(faults)}")
        document.close(True)
    if asked.results:
        with open(asked.results, "w", encoding="utf-8") as file:
            file.write('<testsuite name="bad-cells">\n')
            for where in sorted({f"{cell.table}, {cell.heading}" for cell in cells}):
                file.write(f'<testcase classname="bad-cells" name={quoteattr(where)}>')
                if where in faults:
                    file.write(f"<failure message={quoteattr('; '.join(faults[where]))}/>")
                file.write("</testcase>\n")
            file.write("</testsuite>\n")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
