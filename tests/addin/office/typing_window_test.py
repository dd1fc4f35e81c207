"""Typing in a real window: the office completes words from the cells above, and what is typed into a workbook of ours may
never become another word, another name or another number; in other workbooks it goes on completing.
"""

import os
import signal
import time

import pytest

from menu_test import cell, field, select
from office import properties, url
from window import Screen, WindowOffice, wait


@pytest.fixture(scope="module")
def typing(extensions, tmp_path_factory):
    """Types a word into a cell and gives what the cell then holds."""
    screen = Screen()
    office = WindowOffice(screen, extensions, tmp_path_factory.mktemp("typing") / "profile")
    try:
        template = extensions / "trenchbook/templates/Trenchbook/job.ots"
        document = office.desktop.loadComponentFromURL(url(template), "_blank", 0, properties(AsTemplate=True))
        wait(lambda: screen.windows("Calc"), "no window")

        def into(place, word):
            select(document, place)
            document.CurrentController.Frame.ContainerWindow.setFocus()
            screen.type(word)
            screen.keys("Return")
            end = time.monotonic() + 10
            while not place.String and time.monotonic() < end:
                time.sleep(0.1)
            return place.String

        yield office, screen, document, into
    finally:
        os.killpg(office.process.pid, signal.SIGKILL)
        office.process.wait()
        screen.end()


def test_words_stay_as_they_are_typed(typing):
    _office, _screen, document, into = typing
    typed = [(field(document, "Job", label), word) for label, word in
             [("Outlet permission", "needs none"), ("Septic", "no"), ("Well", "ask"), ("Outlet permission", "requested"),
              ("Owners' association", "ask"), ("Irrigation or pool lines", "no")]]
    typed += [(cell(document, table, heading), word) for table, heading, word in
              [("Water", "Roof C", "roof"), ("Water", "Yard C", "yard"), ("Nodes", "Node", "N"), ("Levels", "Point", "P"),
               ("Runs", "Line", "L"), ("Nodes", "Kind", "bank")]]
    wrong = [f"{place.AbsoluteName}: {word!r} became {got!r}" for place, word in typed if (got := into(place, word)) != word]
    assert not wrong, "\n".join(wrong)


def test_what_is_typed_stays_below_longer_words(typing):
    _office, screen, document, into = typing
    longer = [("Nodes", "Kind", "cleanout + downspout", "cleanout"), ("Nodes", "Node", "N10", "N1"),
              ("Runs", "From", "N10", "N1"), ("Runs", "Length", "42", "4"), ("Runs", "Slope", "1/8 in/ft", "1%")]
    wrong = []
    for table, heading, first, second in longer:
        for ready, word in ((1, first), (2, second)):
            got = into(cell(document, table, heading, ready), word)
            assert not screen.windows("Not in the list"), f"{word} is not offered under {heading}"
            if got.lower() != word.lower():  # the office begins with a capital letter
                wrong.append(f"{table}, {heading}: {word!r} became {got!r}")
    assert not wrong, "\n".join(wrong)


def completes(office):
    node = properties(nodepath="/org.openoffice.Office.Calc/Input")
    provider = office.service("com.sun.star.configuration.ConfigurationProvider")
    return provider.createInstanceWithArguments("com.sun.star.configuration.ConfigurationAccess", node).getByName("AutoInput")


def test_other_workbooks_go_on_completing(typing):
    office, screen, document, into = typing
    assert not completes(office)
    other = office.desktop.loadComponentFromURL("private:factory/scalc", "_blank", 0, ())
    try:
        wait(lambda: completes(office), "another workbook is in front, and nothing is completed in it")
        sheet = other.Sheets.getByIndex(0)
        sheet.getCellByPosition(0, 0).String = "cleanout + downspout"
        place = sheet.getCellByPosition(0, 1)
        other.CurrentController.select(place)
        other.CurrentController.Frame.ContainerWindow.setFocus()
        screen.type("cleanout")
        screen.keys("Return")
        wait(lambda: place.String, "nothing was typed")
        assert place.String == "cleanout + downspout"
    finally:
        other.close(True)
    front(document)
    wait(lambda: not completes(office), "the job is in front again, and words are completed in it")


def front(document):
    document.CurrentController.Frame.activate()
    document.CurrentController.Frame.ContainerWindow.toFront()
    document.CurrentController.Frame.ContainerWindow.setFocus()


def test_who_wants_words_completed_in_the_job_turns_it_on(typing):
    office, _screen, document, _into = typing
    switch = office.service("com.sun.star.frame.DispatchHelper")
    switch.executeDispatch(document.CurrentController.Frame, ".uno:AutoComplete", "", 0, ())
    wait(lambda: completes(office), "the switch does nothing")
    other = office.desktop.loadComponentFromURL("private:factory/scalc", "_blank", 0, ())
    assert completes(office)
    other.close(True)
    assert completes(office)
