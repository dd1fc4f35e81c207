"""The shell in Python gives what the one in C++ gives: every function with its example and with arguments spoilt, and
the demo job cell by cell, whichever of the two computed and stored it. No tolerance: it is the same engine."""

import re
import subprocess

import pytest

from conftest import BUILD, CHECKOUT

from built import functions
from calc import Sheet, arguments_of, call, why
from office import save
from shown import XLSX, shown

# A blank cell, a word, a number that nothing takes, a range in place of one cell.
STRANGE = ["XFC1", '"no such thing"', "-1e99", "{1;2|3;4}"]


def calls():
    for function in functions():
        given = arguments_of(function["example"])
        yield function["example"]
        yield call(function["name"], given[:-1])
        yield call(function["name"], given + ['"x"'] * 9)
        for at in range(len(given)):
            spoilt = given[:at] + [STRANGE[at % len(STRANGE)]] + given[at + 1:]
            yield call(function["name"], spoilt)
            yield why(function, spoilt, "es")


def own_words_out(value):
    """TRENCHBOOK.SUPPORT names its shell."""
    return re.sub(r"shell in [^;]+;", "shell;", value) if isinstance(value, str) else value


def test_one_cell_of_every_call(offices):
    asked = list(calls())
    assert len(asked) > 1500
    answers = {}
    for shell, office in offices.items():
        sheet = Sheet(office.new())
        answers[shell] = [own_words_out(value) for value in sheet.formulas(asked)]
        sheet.document.close(True)
    different = [(formula, one, other) for formula, one, other in zip(asked, answers["C++"], answers["Python"])
                 if one != other or type(one) is not type(other)]
    assert different == []
    assert sum(type(value) is float for value in answers["Python"]) > 150


def test_blocks_of_every_example(offices):
    blocks = {}
    for shell, office in offices.items():
        sheet = Sheet(office.new())
        blocks[shell] = {function["name"]: sheet.array("A1:F4", "=" + function["example"])
                         for function in functions() if function["gives"] in ("numbers", "texts")}
        sheet.document.close(True)
    assert len(blocks["C++"]) > 20
    assert blocks["Python"] == blocks["C++"]


def test_a_bad_row_of_a_block_is_an_error_of_its_own(offices):
    for office in offices.values():
        sheet = Sheet(office.new())
        rows = sheet.array("A1:B4", '=LINES.INVERTS({"A"|"B"|""};{"B"|"Out"|""};{"long"|60|""};'
                                    '{"4 SDR35"|"6 SDR35"|""};{"1%"|"1%"|""};{""|96.5|""})')
        sheet.document.close(True)
        assert repr(rows[0]) == "[Error(502), Error(502)]"
        assert rows[1] == [pytest.approx(97.1), 96.5]  # 60 ft at 1 %
        assert rows[2] == ["", ""]


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    """The demo job, made with the shell in C++."""
    job = tmp_path_factory.mktemp("made") / "job.ods"
    subprocess.run([BUILD / "jobbook", "make", CHECKOUT / "sheets/demo/corner-lot", job], check=True, capture_output=True)
    return job


def cells(office, file, folder):
    document = office.open(file)
    document.calculateAll()
    sheets = shown(document, folder)
    stored = [folder / "job.ods", folder / "job.xlsx"]
    save(document, stored[0])
    save(document, stored[1], XLSX)
    document.close(True)
    return sheets, stored


def values(sheets, what="values"):
    return {(name, row, column): own_words_out(value) for name, sheet in sheets.items()
            for row, line in enumerate(sheet[what]) for column, value in enumerate(line)}


def test_a_job_goes_from_one_to_the_other_and_back(offices, made, tmp_path):
    folders = {name: tmp_path / name for name in ("first", "second", "xlsx", "third")}
    for folder in folders.values():
        folder.mkdir()
    first, _ = cells(offices["C++"], made, folders["first"])
    second, (ods, xlsx) = cells(offices["Python"], made, folders["second"])
    assert sum(value != "" for value in values(first).values()) > 5000
    assert values(second) == values(first)
    assert values(second, "shown") == values(first, "shown")
    back, _ = cells(offices["C++"], ods, folders["third"])
    assert values(back) == values(first)
    read, _ = cells(offices["C++"], xlsx, folders["xlsx"])
    told = values(first)
    for cell, value in values(read).items():
        wanted = told.get(cell, "")
        assert value == (pytest.approx(wanted, rel=1e-9, abs=1e-12) if isinstance(wanted, float) else wanted), cell
