#!/usr/bin/python3
"""Takes the pictures of README and the guides anew, from the demo lot as it is built now.

    /usr/bin/python3 tests/docs/pictures.py     writes docs/pictures

Sheets are taken from a real window of 1400 by 900, papers from their PDFs. TRENCHBOOK_BUILD names the build folder,
else build/.
"""

import os
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path

CHECKOUT = Path(__file__).resolve().parents[2]
BUILD = Path(os.environ.get("TRENCHBOOK_BUILD", CHECKOUT / "build")).resolve()
sys.path.append(str(CHECKOUT / "tests" / "addin" / "office"))
from office import url  # noqa: E402
from window import Screen, WindowOffice, wait  # noqa: E402

PICTURES = CHECKOUT / "docs" / "pictures"
SHEETS = {"runs": "Runs", "job": "Job", "storms": "Storms"}
PAPERS = {"crew": "crew-en.pdf", "proposal": "proposal.pdf"}


def run(*words, **more):
    subprocess.run([str(word) for word in words], check=True, stdout=subprocess.DEVNULL, **more)


def take_sheets(job, folder):
    screen = Screen()
    office = WindowOffice(screen, BUILD / "extension", folder / "profile")
    try:
        document = office.desktop.loadComponentFromURL(url(job), "_blank", 0, ())
        wait(lambda: screen.windows("Calc"), "no window")
        document.CurrentController.Frame.ContainerWindow.setPosSize(0, 0, 1400, 900, 15)
        for name, sheet in SHEETS.items():
            document.CurrentController.setActiveSheet(document.Sheets.getByName(sheet))
            time.sleep(4)  # drawn by then
            run("import", "-window", "root", "+dither", "-colors", 64, PICTURES / f"{name}.png", env=screen.environment)
    finally:
        os.killpg(office.process.pid, signal.SIGKILL)  # it would ask whether to save
        office.process.wait()
        screen.end()


def page_of(pdf, words):
    """The first page on which all of these stand."""
    text = subprocess.run(["pdftotext", "-layout", str(pdf), "-"], capture_output=True, text=True, check=True).stdout
    return next(number for number, page in enumerate(text.split("\f"), 1) if all(word in page for word in words))


def take_drawing(papers, folder):
    """The lot from above, and its first line from the side below it, without the margins of their pages."""
    pages = {"drawing": (papers / "drawing.pdf", 1), "profile": (papers / "whole.pdf", page_of(papers / "whole.pdf", ["street, from S8 uphill"]))}
    for name, (pdf, page) in pages.items():
        run("pdftoppm", "-png", "-r", 100, "-f", page, "-l", page, "-singlefile", pdf, folder / name)
    top, side = (folder / f"{name}.png" for name in pages)
    # Between the head of the page and the note at its foot.
    run("convert", top, "-crop", "1100x600+0+140", "+repage", "-trim", "+repage", top)
    run("convert", side, "-crop", "1100x520+0+225", "+repage", "-trim", "+repage", side)
    run("convert", top, side, "-bordercolor", "white", "-border", "12x12", "-append", "+dither", "-colors", 64, PICTURES / "drawing.png")


def main():
    with tempfile.TemporaryDirectory(prefix="trenchbook-pictures-") as made:
        folder = Path(made)
        job, papers = folder / "job.ods", folder / "papers"
        run(BUILD / "jobbook", "make", CHECKOUT / "sheets/demo/corner-lot", job, "--paper", papers)
        take_sheets(job, folder)
        take_drawing(papers, folder)
        for name, paper in PAPERS.items():
            run("pdftoppm", "-png", "-r", 80, "-singlefile", papers / paper, PICTURES / name)
    print(*sorted(path.name for path in PICTURES.glob("*.png")))


if __name__ == "__main__":
    main()
