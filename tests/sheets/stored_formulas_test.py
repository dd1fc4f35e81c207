"""The limits of the templates' formulas, in the built files and as these store them: longer than the edit line shows it."""

import html
import re
import zipfile

import pytest

from calls import BUILD

LONGEST, DEEPEST, MOST, CHARACTERS = 300, 8, 25000, 2500000


def depth(formula):
    reached = now = 0
    for character in re.sub(r'"[^"]*"', "", formula):
        now += (character == "(") - (character == ")")
        reached = max(reached, now)
    return reached


@pytest.mark.parametrize("name", ["job", "ledger", "price-book"])
def test_formulas_are_short_and_flat(name):
    with zipfile.ZipFile(BUILD / "templates" / f"{name}.ots") as file:
        content = file.read("content.xml").decode()
    formulas = [html.unescape(text) for text in re.findall(r'table:formula="([^"]*)"', content)]
    assert len(formulas) > 1000, "they are read"
    assert not [text for text in formulas if len(text) > LONGEST or depth(text) > DEEPEST]
    if name == "job":
        assert len(formulas) <= MOST
        # Without what the file adds: of: in front, brackets and a dot at a reference, the place where functions come from.
        shown = [re.sub(r"\[\.?([^\]]*)\]", lambda at: at[1].replace(":.", ":"), text[3:]) for text in formulas]
        shown = [re.sub(r"(TRENCHBOOK\.FUNCTIONS|COM\.MICROSOFT)\.", "", text) for text in shown]
        assert sum(map(len, shown)) <= CHARACTERS
