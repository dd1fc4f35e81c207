"""Typing in a real window: the office completes words from the cells above, and none of ours may become another word."""

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

        yield document, into
    finally:
        os.killpg(office.process.pid, signal.SIGKILL)
        office.process.wait()
        screen.end()


def test_words_stay_as_they_are_typed(typing):
    document, into = typing
    typed = [(field(document, "Job", label), word) for label, word in
             [("Outlet permission", "needs none"), ("Septic", "no"), ("Well", "ask"), ("Outlet permission", "requested"),
              ("Owners' association", "ask"), ("Irrigation or pool lines", "no")]]
    typed += [(cell(document, table, heading), word) for table, heading, word in
              [("Water", "Roof C", "roof"), ("Water", "Yard C", "yard"), ("Nodes", "Node", "N"), ("Levels", "Point", "P"),
               ("Runs", "Line", "L"), ("Nodes", "Kind", "bank")]]
    wrong = [f"{place.AbsoluteName}: {word!r} became {got!r}" for place, word in typed if (got := into(place, word)) != word]
    assert not wrong, "\n".join(wrong)
