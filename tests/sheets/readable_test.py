"""Workbooks and papers for people who see little or nothing: contrast of every style, words for every drawing, PDFs with
a structure and a title.

Contrast as WCAG 2.1 defines it (w3.org/TR/WCAG21): relative luminance of sRGB, (lighter + 0.05) / (darker + 0.05). Text
needs at least 4.5 (1.4.3), the border that tells an input cell's kind at least 3 (1.4.11)."""

import re
import subprocess
import xml.etree.ElementTree as etree
import zipfile

import pytest
from calls import BUILD

TEMPLATES = ("job", "ledger", "price-book")
SPACES = {"office": "urn:oasis:names:tc:opendocument:xmlns:office:1.0", "style": "urn:oasis:names:tc:opendocument:xmlns:style:1.0",
          "fo": "urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0", "draw": "urn:oasis:names:tc:opendocument:xmlns:drawing:1.0",
          "svg": "urn:oasis:names:tc:opendocument:xmlns:svg-compatible:1.0"}
INPUTS = ("Measured on this lot", "Kept from job to job", "From the price book", "Permission or ticket")


def part(template, file):
    with zipfile.ZipFile(BUILD / "templates" / f"{template}.ots") as packed:
        return etree.fromstring(packed.read(file))


def luminance(color):
    def linear(share):
        return share / 12.92 if share <= 0.03928 else ((share + 0.055) / 1.055) ** 2.4

    red, green, blue = (linear(int(color[at:at + 2], 16) / 255) for at in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other):
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def look_of_styles(template):
    """Of every cell style that a cell of ours has (the office brings more), with what it has from its parents: text, fill, border."""
    styles = {}
    name = "{%s}" % SPACES["style"]
    for style in part(template, "styles.xml").iterfind(".//style:style[@style:family='table-cell']", SPACES):
        own = {}
        for properties in style:
            for key, value in properties.attrib.items():
                own[key.split("}")[1]] = value
        styles[style.get(name + "name")] = (style.get(name + "display-name") or style.get(name + "name"),
                                            style.get(name + "parent-style-name"), own)

    def whole(style):
        shown, parent, own = styles[style]
        return {**(whole(parent) if parent in styles else {}), **own}

    content = zipfile.ZipFile(BUILD / "templates" / f"{template}.ots").read("content.xml").decode()
    used = set(re.findall(r'(?:style:parent-style-name|table:style-name|apply-style-name)="([^"]*)"', content))
    return {shown: whole(style) for style, (shown, _, _) in styles.items() if style in used or shown in used}


def test_the_definition_gives_its_own_extremes():
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.005)  # the lightest gray that fails, as often told


@pytest.mark.parametrize("template", TEMPLATES)
def test_text_of_every_style_stands_out(template):
    low = {}
    looks = look_of_styles(template)
    assert len(looks) > 12
    for name, look in looks.items():
        fill = look.get("background-color", "transparent")
        ratio = contrast(look.get("color", "#000000"), "#ffffff" if fill == "transparent" else fill)
        if ratio < 4.5:
            low[name] = round(ratio, 2)
    assert low == {}


@pytest.mark.parametrize("template", TEMPLATES)
def test_kinds_of_input_are_told_by_a_border_that_can_be_seen(template):
    looks = look_of_styles(template)
    borders = {}
    for name, look in looks.items():
        if name in INPUTS:
            width, line, color = look["border"].rsplit(" ", 2)
            assert contrast(color, "#ffffff") >= 3 and contrast(color, look["background-color"]) >= 3, (name, color)
            borders[name] = (width, line)
    assert len(borders) >= (len(INPUTS) if template == "job" else 1)
    assert len({line for _, line in borders.values()}) == len(borders), borders


@pytest.mark.parametrize("template", TEMPLATES)
def test_every_drawing_says_what_it_shows(template):
    frames = part(template, "content.xml").findall(".//draw:frame", SPACES)
    assert frames or template != "job"
    for frame in frames:
        title, says = frame.findtext("svg:title", "", SPACES), frame.findtext("svg:desc", "", SPACES)
        assert title and (" by " in says or says.startswith("Drawing to scale: ")), frame.attrib


def test_papers_have_a_structure_and_a_title(demo):
    papers = sorted((demo / "paper").glob("*.pdf"))
    assert papers
    for paper in papers:
        told = subprocess.run(["pdfinfo", paper], capture_output=True, text=True, check=True).stdout
        # Calc learned to write the structure after 7.4; it is asked for in any.
        assert "Tagged:          yes" in told or "LibreOffice 7.4" in told, paper.name
        title = [line for line in told.splitlines() if line.startswith("Title:")]
        assert title and title[0].split(":", 1)[1].strip(), paper.name
