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
# In passing words that hold a US unit for a reason.
NAMES_WITH_UNITS = re.compile(r"\b\d[\d/-]* ?(?:in )?(?:SDR|SCH|D2729|CORRUGATED|DUALWALL)|usual are 0\.5 to 15 in/hr")


def test_a_metric_job_shows_no_us_units(metric):
    found = []
    for place, text in Seen(metric.document).texts:
        if place.split(" ")[0] in KEPT_US:
            continue
        if US_UNIT.search(NAMES_WITH_UNITS.sub("", text)):
            found.append(f"{place}: {text}")
    assert not found, "\n".join(found)


def test_notes_and_charts_name_both_units(metric):
    found = []
    for sheet in metric.document.Sheets:
        for note in sheet.Annotations:
            if US_UNIT.search(note.String) and not METRIC_UNIT.search(note.String):
                found.append(f"{sheet.Name} note: {note.String}")
        for chart in sheet.Charts:
            diagram = chart.EmbeddedObject.Diagram
            for title in (diagram.XAxisTitle, diagram.YAxisTitle):
                if US_UNIT.search(title.String):
                    found.append(f"{sheet.Name} chart: {title.String}")
    assert not found, "\n".join(found)


PAPERS = {"Proposal", "Invoice", "Care", "Crew"}
# What stays English on Spanish papers and in Spanish checks, and why.
NAMES = re.compile(r"\b(?:Job|Levels|Nodes|Rain|Water|Runs|Ground|Crossings|Outlets|Pit|Pump|Rules|Tables|Peak|Plan|Storms|Takeoff|Labor|Quote|"
                   r"Order|Prices|Bills|Account|Close-out|Additions|Codes|Check|"  # sheets and tables keep their names
                   r"Trench protection|Outlet permission|Rules fit this county|Owners' association|Hours each|Takeoff now|"  # so do labels
                   r"Pipe|From|To|Length|Slope|Size|Taxable|Pack|Waste|yes|no|not needed)\b")


def english_in(texts, typed):
    longest_first = sorted(typed, key=len, reverse=True)
    for place, text in texts:
        rest = text
        for own in longest_first:
            rest = rest.replace(own, "")
        if ENGLISH.search(NAMES.sub("", rest)):
            yield f"{place}: {text}"


def test_spanish_papers_hold_no_english(spanish):
    seen = Seen(spanish.document, sheets=PAPERS)
    assert len(seen.texts) > 200, "the papers are there"
    found = list(english_in(seen.texts, seen.typed))
    assert not found, "\n".join(found)


def test_spanish_checks_and_cautions_hold_no_english(spanish):
    seen = Seen(spanish.document, styles={"Verdict", "Verdict OK", "Verdict CHECK", "Verdict NO"})
    assert any("REVISE" in text for _, text in seen.texts)
    found = list(english_in(seen.texts, seen.typed))
    for name in ("job_missing", "job_cautions", "takeoff_says"):
        found += english_in([(name, str(spanish.value(name)))], seen.typed)
    assert not found, "\n".join(found)


def test_the_crew_may_speak_another_language_than_the_job(job):
    job.set("Crew page", "Language", "es")
    job.calculate()
    assert "Excave desde la salida" in job.document.Sheets.getByName("Crew").getCellByPosition(0, 1).String
    assert job.document.Sheets.getByName("Proposal").getCellByPosition(0, 1).String == "Drainage work, as described here."
