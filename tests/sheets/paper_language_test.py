"""One crew page, printed in each language that its language cell takes."""

import subprocess

from calls import done
from money_book import edited
from target_test import made  # noqa: F401


def test_the_crew_page_is_printed_in_both_languages(made, tmp_path):  # noqa: F811
    path = tmp_path / "job.ods"
    path.write_bytes((made / "job.ods").read_bytes())
    with edited(path) as book:
        document = book.document
        sheets = document.Sheets
        if sheets.hasByName("Crew es"):
            sheets.removeByName("Crew es")
        crew = sheets.getByName("Crew")
        crew.unprotect("")
        if not document.NamedRanges.hasByName("paper_language"):
            at = crew.getCellByPosition(0, 0).CellAddress
            document.NamedRanges.addNewByName("paper_language", "$Crew.$Z$1", at, 0)
        document.NamedRanges.getByName("paper_language").getReferredCells().getCellByPosition(0, 0).setString("en")
        crew.getCellByPosition(0, 1).setFormula('=IF(paper_language="es";"HOJA DE LA CUADRILLA";"THE CREW HAS IT")')
    before = path.read_bytes()
    said = done("paper", path, tmp_path / "paper")
    text = {name: subprocess.run(["pdftotext", "-layout", tmp_path / "paper" / f"{name}.pdf", "-"], capture_output=True,
                                 text=True, check=True).stdout for name in ("crew-en", "crew-es")}
    assert "HOJA DE LA CUADRILLA" in text["crew-es"] and "THE CREW HAS IT" not in text["crew-es"]
    assert "THE CREW HAS IT" in text["crew-en"] and "HOJA DE LA CUADRILLA" not in text["crew-en"]
    assert said.count("crew-es.pdf") == 1
    assert path.read_bytes() == before
