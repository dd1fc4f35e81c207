"""What a metric job and a Spanish job show: every visible text of the demo lot under the other choice on Job.

The demo's numbers stay as they are; it is the words around them that are looked at. What is typed into input cells is the
user's own and is left out.
"""

import re

import pytest

from calls import BUILD
from money_book import Book
from office import Office

INPUT_STYLES = {"Measured on this lot", "Kept from job to job", "From the price book", "Permission or ticket"}

US_UNIT = re.compile(r"(?<![A-Za-z])(?:ft|gpm|inch|inches|feet|foot|cu yd|lb|psf|ft2|in/hr|in/ft|gallons?)(?![A-Za-z])"
                     r"|\d[\d./-]* ?in(?![A-Za-z/]| \d)")
METRIC_UNIT = re.compile(r"metric|(?<![A-Za-z])(?:m|mm|m2|m3|mm/h|L/s|L)(?![A-Za-z])")

# Words that no Spanish sentence has; "no", "a", "me", "son" and the like are both.
ENGLISH = re.compile(r"\b(?:the|of|is|are|was|and|or|with|without|not|on|to|for|from|by|at|it|its|this|that|these|than|must|has|have|had|be|"
                     r"missing|holds?|below|above|until|only|row|rows|line|lines|price|number|water|trench|ditch|pipe|level|measured|"
                     r"typed|ask|asked|least|most|never|before|after|when|where|which|what|who|how|each|every|all|your|our|you|we)\b", re.I)


class Seen:
    """Texts of a document as they show, with their place; input cells apart."""

    def __init__(self, document, sheets=None, styles=None):
        self.texts, self.typed = [], set()
        for sheet in document.Sheets:
            if not sheet.IsVisible:
                continue
            wanted = sheets is None or sheet.Name in sheets
            cursor = sheet.createCursor()
            cursor.gotoEndOfUsedArea(False)
            for ranges in sheet.getCellRangeByPosition(0, 0, cursor.RangeAddress.EndColumn, cursor.RangeAddress.EndRow).queryVisibleCells():
                at = ranges.RangeAddress
                for r, cells in enumerate(ranges.getDataArray()):
                    for c, value in enumerate(cells):
                        if not isinstance(value, str) or not re.search("[A-Za-z]{2}", value):
                            continue
                        cell = sheet.getCellByPosition(at.StartColumn + c, at.StartRow + r)
                        typed = cell.CellStyle in INPUT_STYLES and not cell.Formula.startswith("=")
                        if typed:
                            self.typed.add(value)
                        elif wanted and (styles is None or cell.CellStyle in styles):
                            self.texts.append((f"{sheet.Name} {cell.AbsoluteName.split('.')[-1].replace('$', '')}", value))


@pytest.fixture(scope="module")
def job(demo):
    with Office(BUILD / "extension") as office:
        document = office.open(demo / "job.ods")
        yield Book(document)
        document.close(True)


@pytest.fixture(scope="module")
def metric(job):
    job.set("Job", "Units", "metric")
    job.calculate()
    yield job
    job.set("Job", "Units", "US")
    job.calculate()


@pytest.fixture(scope="module")
def spanish(job):
    job.set("Job", "Language", "es")
    job.calculate()
    yield job
    job.set("Job", "Language", "en")
    job.calculate()


# Where a metric job keeps US units, and why.
KEPT_US = {
    "Functions": "live examples of functions: each says its own units",
    "Rules": "sources are quoted as they are printed",
    "Tables": "sources are quoted as they are printed; pipe sold by inches is named by them",
}
# Words that hold a US unit for a reason: pipe named by inches, both units side by side, tables as they are pasted, feet to walk on.
BOTH_UNITS = re.compile(r"\b\d[\d/-]* ?(?:in )?(?:SDR|SCH|D2729|CORRUGATED|DUALWALL)|usual are 0\.5 to 15 in/hr|\d+ ft \([\d.]+ m\)|"
                        r"\$/ft \(metric: [^)]*\)|by the foot \(metric: by the meter\)|inches, millimeters|mower and feet")


def without(text, typed):
    """The text without what the user typed: names, prices' items, units of goods."""
    for own in sorted((own for own in typed if len(own) > 3), key=len, reverse=True):
        text = text.replace(own, "")
    return "" if text in typed else text


def test_a_metric_job_shows_no_us_units(metric):
    found = []
    seen = Seen(metric.document)
    for place, text in seen.texts:
        if place.split(" ")[0] in KEPT_US:
            continue
        if US_UNIT.search(without(BOTH_UNITS.sub("", text), seen.typed)):
            found.append(f"{place}: {text}")
    assert not found, "\n".join(found)


def test_headings_and_charts_name_both_units(metric):
    found, said = [], 0
    for sheet in metric.document.Sheets:
        for alike in sheet.UniqueCellFormatRanges:
            help = " ".join(alike.Validation.InputMessage.split())
            said += help != ""
            # Slopes are read in the trade's spelling whatever the job's units.
            words = re.sub(r"[Aa]s the trade says it: [^.]*\.|\d/\d+ in/ft", "", help)
            if US_UNIT.search(words) and not METRIC_UNIT.search(words):
                found.append(f"{sheet.Name}: {help}")
        for chart in sheet.Charts:
            diagram = chart.EmbeddedObject.Diagram
            for title in (diagram.XAxisTitle, diagram.YAxisTitle):
                if US_UNIT.search(title.String):
                    found.append(f"{sheet.Name} chart: {title.String}")
    assert said > 200, "headings say what they mean"
    assert not found, "\n".join(found)


PAPERS = {"Proposal", "Invoice", "Care", "Crew", "Cut list", "Record"}
# What stays English in Spanish sentences, and why: sheets, tables, headings and labels keep their names, so do the words that
# cells offer and the state of a bill's line, which formulas compare with.
WORDS = {"yes", "no", "Additions", "Codes", "Crew page", "not ordered", "billed twice", "surcharge", "unclear"}


def names_of(document):
    names = set(WORDS)
    for sheet in document.Sheets:
        names.add(sheet.Name)
        cursor = sheet.createCursor()
        cursor.gotoEndOfUsedArea(False)
        for style in ("Heading", "Field label"):
            formats = sheet.getCellRangeByPosition(0, 0, cursor.RangeAddress.EndColumn, cursor.RangeAddress.EndRow).UniqueCellFormatRanges
            for place in range(formats.Count):
                ranges = formats.getByIndex(place)
                if ranges.CellStyle == style:
                    for one in ranges:
                        names.update(value for row in one.getDataArray() for value in row if isinstance(value, str) and value)
    return re.compile(r"(?<!\w)(?:" + "|".join(re.escape(name) for name in sorted(names, key=len, reverse=True)) + r")(?!\w)")


def english_in(texts, typed, names):
    for place, text in texts:
        if ENGLISH.search(names.sub("", without(text, typed))):
            yield f"{place}: {text}"


def test_spanish_papers_hold_no_english(spanish):
    seen = Seen(spanish.document, sheets=PAPERS)
    assert len(seen.texts) > 200, "the papers are there"
    names = names_of(spanish.document)
    found = list(english_in(seen.texts, seen.typed, names))
    assert not found, "\n".join(found)


def test_spanish_checks_and_cautions_hold_no_english(spanish):
    seen = Seen(spanish.document, styles={"Verdict", "Verdict OK", "Verdict CHECK", "Verdict NO"})
    assert any("REVISE" in text for _, text in seen.texts)
    names = names_of(spanish.document)
    found = list(english_in(seen.texts, seen.typed, names))
    for name in ("job_missing", "job_cautions", "takeoff_says"):
        found += english_in([(name, str(spanish.value(name)))], seen.typed, names)
    assert not found, "\n".join(found)


def test_the_crew_may_speak_another_language_than_the_job(job):
    job.set("Job", "Language", "en")
    job.set("Crew page", "Language", "es")
    job.calculate()
    assert "Excave desde la salida" in job.document.Sheets.getByName("Crew").getCellByPosition(0, 1).String
    assert job.document.Sheets.getByName("Proposal").getCellByPosition(0, 3).String == "Proposal"
