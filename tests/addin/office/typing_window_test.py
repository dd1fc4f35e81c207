"""Typing in a real window: the office completes words from the cells above, and what is typed into a workbook of ours may
never become another word, another name or another number; in other workbooks it goes on completing.
"""

import os
import re
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
        document = job_of(office, extensions)
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


def turn(office, document):
    """Tools > AutoInput in the document's window."""
    switch = office.service("com.sun.star.frame.DispatchHelper")
    switch.executeDispatch(document.CurrentController.Frame, ".uno:AutoComplete", "", 0, ())


def another(office):
    return office.desktop.loadComponentFromURL("private:factory/scalc", "_blank", 0, ())


def job_of(office, extensions):
    template = extensions / "trenchbook/templates/Trenchbook/job.ots"
    return office.desktop.loadComponentFromURL(url(template), "_blank", 0, properties(AsTemplate=True))


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


def test_from_one_job_to_another_nothing_is_completed(typing, extensions):
    office, _screen, document, _into = typing
    second = job_of(office, extensions)
    wait(lambda: not completes(office), "completed in the second job")
    for _ in range(2):
        for front_one in (document, second):
            front(front_one)
            time.sleep(1)
            assert not completes(office)
    second.setModified(False)
    second.close(True)
    front(document)
    time.sleep(1)
    assert not completes(office)


def test_who_wants_words_completed_in_the_job_turns_it_on(typing):
    office, _screen, document, _into = typing
    turn(office, document)
    wait(lambda: completes(office), "the switch does nothing")
    other = another(office)
    assert completes(office)
    other.close(True)
    front(document)
    time.sleep(1)
    assert completes(office), "it stays on in the job"
    other = another(office)
    time.sleep(1)
    turn(office, other)  # off, by the user's own hand
    front(document)
    time.sleep(1)
    front(other)
    time.sleep(1)
    assert not completes(office), "what the user turned off stays off"
    turn(office, other)
    other.close(True)
    front(document)
    wait(lambda: not completes(office), "the job is in front again, and words are completed in it")


def stored(profile, name):
    """The setting as it stands in the profile's file; nothing where the file does not name it."""
    text = (profile / "user/registrymodifications.xcu").read_text(encoding="utf-8")
    found = re.search(rf'oor:name="{name}"[^>]*><value>(\w+)</value>', text)
    return found and found[1]


@pytest.fixture
def own(extensions, tmp_path):
    """Offices with one profile, one after the other."""
    screen = Screen()
    started = []

    def start():
        started.append(WindowOffice(screen, extensions, tmp_path / "profile"))
        return started[-1]

    def kill():
        process = started.pop().process
        if process.poll() is None:
            os.killpg(process.pid, signal.SIGKILL)
            process.wait()

    try:
        yield start, kill, tmp_path / "profile"
    finally:
        while started:
            kill()
        screen.end()


def test_an_office_that_is_killed_loses_nothing(own, extensions):
    start, kill, profile = own
    office = start()
    job_of(office, extensions)
    wait(lambda: not completes(office), "words are completed in the job")
    wait(lambda: stored(profile, "AutoInput") == "false", "never written")
    assert stored(profile, "Held") == "true", "whoever reads the file knows that it was not the user"
    kill()
    office = start()
    assert not completes(office), "as the killed office left it"
    another(office)
    wait(lambda: completes(office), "the user's setting is lost")
    wait(lambda: stored(profile, "AutoInput") != "false" and stored(profile, "Held") != "true", "never written")


def test_an_office_that_ends_with_the_job_in_front_leaves_nothing_behind(own, extensions):
    start, _kill, profile = own
    office = start()
    document = job_of(office, extensions)
    wait(lambda: stored(profile, "AutoInput") == "false", "words are completed in the job")
    document.setModified(False)
    office.end()
    assert stored(profile, "AutoInput") != "false" and stored(profile, "Held") != "true"


def test_who_never_completes_words_keeps_that(own, extensions):
    start, _kill, profile = own
    office = start()
    other = another(office)
    turn(office, other)
    wait(lambda: not completes(office), "the switch does nothing")
    document = job_of(office, extensions)
    time.sleep(1)
    document.setModified(False)
    document.close(True)
    front(other)
    time.sleep(1)
    assert not completes(office) and stored(profile, "Held") != "true"
