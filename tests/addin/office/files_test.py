"""What a file holds, and what happens to it without the extension."""

import zipfile

import pytest

from calc import NO_NAME, BAD_ARGUMENT, Error, Sheet
from office import Office, save

FORMULAS = {"A1": ("=PIT.STORAGE(10;3;2)", 24.0), "A2": ('=PIT.STORAGE("x";3;2)', Error(BAD_ARGUMENT)),
            "A3": ('=TRENCHBOOK.WHY("PIT.STORAGE";0;3;2)', "length is 0; allowed: above 0.")}


def filled(office):
    sheet = Sheet(office.new())
    for address, (formula, _) in FORMULAS.items():
        sheet.type(address, formula)
    sheet.array("C1:C2", '=LINES.FLOW({"A"|"B"};{"B"|"Out"};{"A"|"B"};{20|15})')
    return sheet


def assert_computed(sheet):
    for address, (_, shown) in FORMULAS.items():
        assert sheet.shows(address) == (pytest.approx(shown) if isinstance(shown, float) else shown), address
    assert [sheet.shows("C1"), sheet.shows("C2")] == [pytest.approx(20), pytest.approx(35)]


@pytest.mark.parametrize("kind, name", [("calc8", "job.ods"), ("Calc MS Excel 2007 XML", "job.xlsx")])
def test_saved_and_opened_again(office, tmp_path, kind, name):
    sheet = filled(office)
    assert_computed(sheet)
    save(sheet.document, tmp_path / name, kind)
    sheet.document.close(True)
    again = Sheet(office.open(tmp_path / name))
    again.document.calculateAll()
    assert_computed(again)
    again.document.close(True)


def test_file_carries_the_names_that_never_change(office, tmp_path):
    sheet = filled(office)
    save(sheet.document, tmp_path / "job.ods")
    sheet.document.close(True)
    content = zipfile.ZipFile(tmp_path / "job.ods").read("content.xml").decode("utf-8")
    assert "of:=TRENCHBOOK.FUNCTIONS.PITSTORAGE(10;3;2)" in content
    assert "TRENCHBOOK.FUNCTIONS.LINESFLOW(" in content


def test_without_the_extension_nothing_is_lost(office, tmp_path):
    sheet = filled(office)
    sheet.type("B1", "=1+1")
    save(sheet.document, tmp_path / "job.ods")
    sheet.document.close(True)
    with Office() as bare:
        opened = Sheet(bare.open(tmp_path / "job.ods"))
        assert opened.shows("A1") == Error(NO_NAME), "shows #NAME?"
        assert opened.shows("B1") == 2, "what needs no add-in calculates"
        opened.type("B1", "=2+2")
        save(opened.document, tmp_path / "kept.ods")
        opened.document.close(True)
    back = Sheet(office.open(tmp_path / "kept.ods"))
    assert_computed(back)
    assert back.shows("B1") == 4
    back.document.close(True)


def test_engine_is_loaded_when_first_used(extensions):
    with Office(extensions) as fresh:
        sheet = Sheet(fresh.new())
        assert sheet.formula("SUM(1;2)") == 3
        assert not loaded(fresh), "a document without our functions does not load us"
        assert sheet.formula("PIT.STORAGE(10;3;2)") == pytest.approx(24)
        assert loaded(fresh)
        sheet.document.close(True)


def loaded(office):
    """Whether the office's process has our engine mapped."""
    return any("libtrenchbook.so" in open(f"/proc/{process}/maps").read() for process in office.processes())
