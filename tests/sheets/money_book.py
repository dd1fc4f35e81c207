"""A shipped workbook in an office without the add-in, its tables filled and read by heading."""

import re
from contextlib import contextmanager

from calls import BUILD
from office import Office, save


class Book:
    def __init__(self, document):
        self.document = document

    def _area(self, kind, name):
        named = self.document.NamedRanges.getByName(kind + "_" + re.sub("[ -]", "_", name))
        return named.getReferredCells()

    def headings(self, table):
        return list(self._area("table", table).getDataArray()[0])

    def fill(self, table, rows):
        """Puts the rows (dictionaries) under the headings named in them; all other rows of those columns are emptied."""
        area = self._area("table", table)
        headings = self.headings(table)
        ready = area.Rows.Count - 4
        assert len(rows) <= ready, f"{table} has {ready} rows, not {len(rows)}"
        for heading in sorted({heading for row in rows for heading in row}):
            column = headings.index(heading)
            area.getCellRangeByPosition(column, 3, column, ready + 2).clearContents(1 | 2 | 4)
            for place, row in enumerate(rows):
                if row.get(heading) not in (None, ""):
                    self._put(area.getCellByPosition(column, 3 + place), row[heading])

    def set(self, form, label, value):
        area = self._area("form", form)
        place = [row[0] for row in area.getDataArray()].index(label)
        self._put(area.getCellByPosition(1, place), value)

    def rule(self, key, value):
        area = self._area("table", "Rules")
        keys = [row[0] for row in area.getDataArray()]
        self._put(area.getCellByPosition(1, keys.index(key)), value)

    @staticmethod
    def _put(cell, value):
        if isinstance(value, str):
            cell.setString(value)
        else:
            cell.setValue(float(value))

    def calculate(self):
        self.document.calculateAll()

    def rows(self, table):
        area = self._area("table", table).getDataArray()
        return [dict(zip(area[0], row)) for row in area[3:-1]]

    def fields(self, form):
        """What a reader sees: label and value of the rows that are not hidden."""
        area = self._area("form", form)
        return {row[0]: row[1] for place, row in enumerate(area.getDataArray()) if area.Rows.getByIndex(place).IsVisible}

    def value(self, name):
        return self.document.NamedRanges.getByName(name).getReferredCells().getDataArray()[0][0]


@contextmanager
def book(name="job", extensions=None):
    with Office(extensions) as office:
        document = office.open(BUILD / "templates" / f"{name}.ots", AsTemplate=True)
        document.enableAutomaticCalculation(False)
        yield Book(document)
        document.close(True)


@contextmanager
def edited(path):
    """A stored workbook with the add-in, to be changed by hand; computed and stored back."""
    with Office(BUILD / "extension") as office:
        document = office.open(path)
        yield Book(document)
        document.calculateAll()
        save(document, path)
        document.close(True)


def stored(name, path, fill):
    """A shipped workbook with what `fill` puts in, stored at `path`."""
    with book(name) as made:
        fill(made)
        made.calculate()
        save(made.document, path)
