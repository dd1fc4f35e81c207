"""What every cell of a workbook shows and holds in the office of this machine, after all is calculated anew.

    python3 shown.py BUILD OUT FILE...     OUT/NAME.json of each workbook: {sheet: {"values": rows, "shown": rows}};
                                           and of each .ods OUT/NAME-OUT.xlsx, as this office writes it
"""

import csv
import json
import sys
import tempfile
from pathlib import Path

sys.path.append(str(Path(__file__).resolve().parents[1] / "addin" / "office"))
from office import Office, properties, save, url  # noqa: E402

# Comma, quoted, UTF-8, cells as they show, every sheet into a file of its own.
EVERY_SHEET = "44,34,UTF-8,1,,0,false,true,true,false,false,-1"
XLSX = "Calc MS Excel 2007 XML"


def shown(document, folder):
    document.storeToURL(url(folder / "cells.csv"), properties(FilterName="Text - txt - csv (StarCalc)",
                                                              FilterOptions=EVERY_SHEET))
    sheets = {}
    for sheet in document.Sheets:
        with open(folder / f"cells-{sheet.Name}.csv", encoding="utf-8", newline="") as file:
            rows = list(csv.reader(file))
        cursor = sheet.createCursor()
        cursor.gotoEndOfUsedArea(False)
        used = cursor.RangeAddress
        values = sheet.getCellRangeByPosition(0, 0, used.EndColumn, used.EndRow).getDataArray()
        sheets[sheet.Name] = {"values": values, "shown": rows}
    return sheets


def main(build, out, *files):
    out = Path(out)
    out.mkdir(parents=True, exist_ok=True)
    with Office(Path(build) / "extension") as office:
        for file in map(Path, files):
            document = office.open(file)
            document.calculateAll()
            with tempfile.TemporaryDirectory() as folder:
                cells = shown(document, Path(folder))
            (out / f"{file.name}.json").write_text(json.dumps(cells), encoding="utf-8")
            if file.suffix == ".ods":  # written by the office whose folder this is
                save(document, out / f"{file.stem}-{out.name}.xlsx", XLSX)
            document.close(True)


if __name__ == "__main__":
    main(*sys.argv[1:])
