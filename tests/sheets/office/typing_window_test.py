"""Typing in a real window: the office completes words from the cells above, and none of ours may become another word.

Needs an X server of its own (Xvfb) and xdotool.
"""

import os
import subprocess
import time

import pytest

from calls import BUILD
from office import Office, properties, url

class Window:
    """A screen of 1400 by 900 with an office in it that shows its documents."""

    def __init__(self):
        read, write = os.pipe()
        self.screen = subprocess.Popen(["Xvfb", "-displayfd", str(write), "-screen", "0", "1400x900x24", "-nolisten", "tcp"],
                                       pass_fds=[write], stderr=subprocess.DEVNULL)
        os.close(write)
        with os.fdopen(read) as pipe:
            self.display = ":" + pipe.readline().strip()
        self.before = os.environ.get("DISPLAY")
        os.environ["DISPLAY"] = self.display
        self.office = Office(BUILD / "extension", headless=False)
        # A dialogue of a first start would take the keys.
        changes = self.office.service("com.sun.star.configuration.ConfigurationProvider").createInstanceWithArguments(
            "com.sun.star.configuration.ConfigurationUpdateAccess", properties(nodepath="/org.openoffice.Office.Common/Misc"))
        changes.setPropertyValue("ShowTipOfTheDay", False)
        changes.commitChanges()

    def open(self, path):
        document = self.office.desktop.loadComponentFromURL(url(path), "_blank", 0, properties(AsTemplate=True))
        self.keys("mousemove", 700, 500)
        document.CurrentController.Frame.ContainerWindow.setFocus()
        time.sleep(2)
        return document

    def keys(self, *words):
        subprocess.run(["xdotool", *map(str, words)], check=True, env={**os.environ, "DISPLAY": self.display})

    def end(self):
        self.office.end()
        self.screen.terminate()
        self.screen.wait()
        if self.before is None:
            del os.environ["DISPLAY"]
        else:
            os.environ["DISPLAY"] = self.before


@pytest.fixture(scope="module")
def window():
    made = Window()
    yield made
    made.end()


def type_into(window, document, cell, text):
    document.CurrentController.select(cell)
    window.keys("type", "--delay", "40", text)
    window.keys("key", "Return")
    for _ in range(50):
        if cell.String:
            break
        time.sleep(0.1)
    return cell.String


def field(document, form, label):
    area = document.NamedRanges.getByName("form_" + form).getReferredCells()
    return area.getCellByPosition(1, [row[0] for row in area.getDataArray()].index(label))


def ready(document, table, heading, row=0):
    area = document.NamedRanges.getByName("table_" + table).getReferredCells()
    return area.getCellByPosition(list(area.getDataArray()[0]).index(heading), 3 + row)


def test_words_stay_as_they_are_typed(window):
    document = window.open(BUILD / "templates" / "job.ots")
    try:
        typed = [(field(document, "Job", "Outlet permission"), "needs none"), (field(document, "Job", "Septic"), "no"),
                 (field(document, "Job", "Well"), "ask"), (field(document, "Job", "Outlet permission"), "requested"),
                 (field(document, "Job", "Owners' association"), "ask"), (field(document, "Job", "Irrigation or pool lines"), "no"),
                 (ready(document, "Water", "Roof C"), "roof"), (ready(document, "Water", "Yard C"), "yard"),
                 (ready(document, "Nodes", "Node"), "N"), (ready(document, "Levels", "Point"), "P"),
                 (ready(document, "Runs", "Line"), "L"), (ready(document, "Nodes", "Kind"), "bank")]
        wrong = [f"{cell.AbsoluteName}: {word!r} became {got!r}" for cell, word in typed
                 if (got := type_into(window, document, cell, word)) != word]
        assert not wrong, "\n".join(wrong)
    finally:
        window.keys("key", "Escape")
        time.sleep(0.5)
        document.close(True)
