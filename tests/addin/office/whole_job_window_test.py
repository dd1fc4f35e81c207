"""A job from the empty template to the crew's page and the proposal, in a real window, by keyboard alone, with nothing read
outside the workbook. What is typed are the notes in six_runs/: an invented side yard of six runs. Entries are counted: one
for each filled cell and each choice in a menu or box. The job must be the one that jobbook makes of the same notes.

At most 120 entries and 10 minutes at a typist's pace: 40 words of five letters a minute (common practice, no source), and
two seconds for each entry to find its cell.
"""

import csv
import os
import shutil
import signal
import subprocess
import time
from pathlib import Path

import pytest

from install_test import ORDINARY, as_user, home, unopkg  # noqa: F401
from office import Office, save
from window import QUIET, Desk, Screen, WindowOffice, wait

NOTES = Path(__file__).parent / "six_runs"
ORDER = ("job", "levels", "nodes", "water", "runs", "outlets")  # as the tabs stand
BUILD = Path(os.environ.get("TRENCHBOOK_BUILD", Path(__file__).parents[3] / "build"))


def notes(name):
    with (NOTES / f"{name}.csv").open(newline="", encoding="utf-8") as file:
        rows = list(csv.reader(file))
    return rows[0], rows[1:]


class Typist(Desk):
    """Counts what somebody at the desk types and chooses."""

    def __init__(self, screen, office, document):
        super().__init__(screen, office, document)
        self.entries, self.letters = 0, 0

    def take(self, letter):
        super().take(letter)
        self.entries += 1

    def box(self, title, *keys):
        super().box(title, *keys)
        self.entries += 1

    def press(self, key):
        self.screen.tool("key", "--clearmodifiers", key)
        time.sleep(0.15)

    def write(self, text):
        self.screen.tool("type", "--delay", "25", text)

    def go(self, sheet, column, row):
        """To a cell by the Name Box, unless the cursor stands there."""
        if self.cursor() == (sheet, column, row):
            return
        self.press("ctrl+shift+t")
        time.sleep(0.3)  # until the Name Box has the keyboard
        self.press("ctrl+a")  # a cell with a name shows it there
        self.write(f"${sheet}.{chr(65 + column) if column < 26 else 'A' + chr(39 + column)}{row + 1}")
        self.press("Return")
        wait(lambda: self.cursor() == (sheet, column, row), f"the cursor did not come to {sheet}, {column}, {row}")
        time.sleep(0.4)  # the keyboard leaves the Name Box a little after the cursor

    def cursor(self):
        at = getattr(self.document.CurrentSelection, "CellAddress", None)
        return at and (self.document.Sheets.getByIndex(at.Sheet).Name, at.Column, at.Row)

    def enter(self, text, key="Tab"):
        before = self.cursor()
        self.write(text)
        self.press(key)
        wait(lambda: self.cursor() != before, f"{text} was not entered")
        self.entries += 1
        self.letters += len(text)

    def minutes(self):
        return self.letters / (40 * 5) + self.entries * 2 / 60

    def area(self, kind, name):
        return self.document.NamedRanges.getByName(f"{kind}_{name}").getReferredCells()

    def form(self, name, rows):
        area = self.area("form", name)
        at, labels = area.RangeAddress, [row[0] for row in area.getDataArray()]
        for label, value in rows:
            self.go(name, at.StartColumn + 1, at.StartRow + labels.index(label))
            self.enter(value, "Return")

    def table(self, name, headings, rows):
        area = self.area("table", name)
        at, known = area.RangeAddress, list(area.getDataArray()[0])
        columns = [at.StartColumn + known.index(heading) for heading in headings]
        for number, row in enumerate(rows):
            last = None
            for column, value in zip(columns, row):
                if not value:
                    continue
                if last is None or column != last + 1:
                    self.go(name, column, at.StartRow + 3 + number)
                self.enter(value)
                last = column


def folded(row):
    """The office begins what is typed with a capital letter."""
    return [cell.lower() if isinstance(cell, str) else cell for cell in row]


def price_book(extensions, target):
    """A book that has a price for each of its rows: somebody filled it before this lot."""
    with Office(extensions) as office:
        fill_prices(office.open(extensions / "trenchbook/templates/Trenchbook/price-book.ots", AsTemplate=True), target)
    target.chmod(0o644)
    return target


def fill_prices(book, target):
    area = book.NamedRanges.getByName("table_Prices").getReferredCells()
    values = [list(row) for row in area.getDataArray()]
    code, price, dated, taxable = (values[0].index(heading) for heading in ("Code", "Price", "Priced on", "Taxable"))
    for number, row in enumerate(values[3:-1]):
        if row[code]:
            area.getCellByPosition(price, 3 + number).setValue(10 + number)
            area.getCellByPosition(dated, 3 + number).setFormula("=TODAY()")
            area.getCellByPosition(taxable, 3 + number).setString("yes")
    save(book, target)
    book.close(True)


class InstalledOffice(WindowOffice):
    """With the package installed by an ordinary user, as only then the templates stand under File > New."""

    def __init__(self, screen, home):
        shown = [f"{name}={screen.environment[name]}" for name in ("DISPLAY", "SAL_USE_VCLPLUGIN")]
        Office.__init__(self, None, home / "profile", [*as_user(home), *shown])


def install(package, home):
    (home / "profile/user").mkdir(parents=True)
    (home / "profile/user/registrymodifications.xcu").write_text(QUIET, encoding="utf-8")
    shutil.copy(package, home / "trenchbook.oxt")
    os.chmod(home / "trenchbook.oxt", 0o644)
    if os.geteuid() == 0:
        subprocess.run(["chown", "-R", ORDINARY, home], check=True)
    added = unopkg(home, "add", "-s", str(home / "trenchbook.oxt"))
    assert added.returncode == 0, added.stderr


@pytest.fixture()
def at_the_desk(package, home):  # noqa: F811
    install(package, home)
    screen = Screen()
    office = InstalledOffice(screen, home)
    try:
        yield screen, office
    finally:
        # It would ask for each window whether to save.
        os.killpg(office.process.pid, signal.SIGKILL)
        office.process.wait()
        screen.end()


def from_the_template(screen, office):
    """File > New > Templates, as its shortcut opens it; the template is found by typing its name."""
    office.desktop.loadComponentFromURL("private:factory/scalc", "_blank", 0, ())
    wait(lambda: screen.windows("Untitled 1"), "no window")
    screen.keys("ctrl+shift+n")
    wait(lambda: screen.windows("Templates"), "no templates")
    screen.type("Drainage job")
    time.sleep(2)
    screen.keys(*["Tab"] * 4, "Return")
    found = []

    def there():
        found[:] = [one for one in office.documents() if hasattr(one, "NamedRanges") and one.NamedRanges.hasByName("table_Runs")]
        return found

    wait(there, "the template did not open")
    return found[0]


def typed_prices(typist):
    """The same with prices typed instead of brought in: price and day of each row that the takeoff asks for."""
    rows = typist.area("table", "Takeoff").getDataArray()
    code, net = rows[0].index("Code"), rows[0].index("Net")
    asked = [row[code] for row in rows[3:-1] if row[code] and isinstance(row[net], float) and row[net] > 0]
    assert asked
    brought = 3  # the command, the book, the answer
    entries = typist.entries - brought + 2 * len(asked)
    letters = typist.letters + len(asked) * len("12.50" + "2026-05-31")
    print(f"with prices typed: {len(asked)} rows, {entries} entries, {letters / (40 * 5) + entries * 2 / 60:.1f} minutes")


def test_six_runs_from_the_template_to_the_papers(at_the_desk, extensions, home, tmp_path):  # noqa: F811
    screen, office = at_the_desk
    book = price_book(extensions, home / "book.ods")
    papers = home / "papers"
    papers.mkdir()
    papers.chmod(0o777)
    document = from_the_template(screen, office)
    typist = Typist(screen, office, document)
    typist.entries += 2  # the dialogue and the template
    document.CurrentController.Frame.ContainerWindow.setFocus()
    for name in ORDER:
        headings, rows = notes(name)
        sheet = name.capitalize()
        typist.form(sheet, rows) if headings == ["field", "value"] else typist.table(sheet, headings, rows)
    typist.take("p")
    typist.pick("The price book", book)
    typist.box("Bring in prices", "alt+y")
    typist.take("d")
    typist.pick("Folder for the papers", papers)
    typist.box("Papers as PDF")
    print(f"{typist.entries} entries, {typist.minutes():.1f} minutes")
    typed_prices(typist)
    assert typist.entries <= 120 and typist.minutes() <= 10, (typist.entries, typist.minutes())

    for paper, words in (("crew-en.pdf", "Rod reading"), ("proposal.pdf", "Side yard (invented)")):
        text = subprocess.run(["pdftotext", "-layout", papers / paper, "-"], capture_output=True, text=True,
                              check=True).stdout
        assert words in text, paper
    subprocess.run([BUILD / "jobbook", "make", NOTES, tmp_path / "made.ods"], check=True, stdout=subprocess.DEVNULL)
    with Office(extensions, tmp_path / "other") as other:
        made = other.open(tmp_path / "made.ods")
        for name in ("Levels", "Nodes", "Water", "Runs", "Outlets", "Takeoff"):
            typed, notes_made = (one.NamedRanges.getByName(f"table_{name}").getReferredCells().getDataArray() for one in (document, made))
            for row, (ours, theirs) in enumerate(zip(typed, notes_made)):
                if name == "Takeoff":  # prices came in, the notes have none: pieces alone
                    pieces = [typed[0].index(heading) for heading in ("Code", "Item", "Group", "Net", "Unit")]
                    ours, theirs = ([line[at] for at in pieces] for line in (ours, theirs))
                assert folded(ours) == folded(theirs), (name, row)
        made.close(True)
