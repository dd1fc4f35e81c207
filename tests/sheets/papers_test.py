"""The papers of the demo job, as they lie on a table: pages, sizes of letters, titles, and what stands on which page."""

import csv
import functools
import re
import shutil
import subprocess

import pytest

from calls import DEMO, done


@pytest.fixture(scope="module")
def papers(tmp_path_factory):
    folder = tmp_path_factory.mktemp("papers")
    done("make", DEMO, folder / "job.ods", "--paper", folder / "paper")
    return folder / "paper"


def pages(pdf):
    text = subprocess.run(["pdftotext", "-layout", pdf, "-"], capture_output=True, text=True, check=True).stdout
    return text.split("\f")[:-1]


WORD = re.compile(r'<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">([^<]*)<')


def words(pdf):
    """Of each page: its height and its words as (left, top, right, bottom, text), in points."""
    boxes = subprocess.run(["pdftotext", "-bbox-layout", pdf, "-"], capture_output=True, text=True, check=True).stdout
    for page in boxes.split("<page ")[1:]:
        height = float(re.search(r'height="([\d.]+)"', page)[1])
        yield height, [(*map(float, word[:4]), word[4]) for word in WORD.findall(page)]


def inked(pdf):
    """Of each page: how far down the last ink stands above the footer, as a share of the page's height; drawings count."""
    shown = subprocess.run(["pdftoppm", "-r", "20", "-gray", pdf], capture_output=True, check=True).stdout
    while shown:
        size = re.match(rb"P5\s+(\d+)\s+(\d+)\s+255\s", shown)
        width, height = int(size[1]), int(size[2])
        page, shown = shown[size.end():size.end() + width * height], shown[size.end() + width * height:]
        lines = [min(page[row * width:(row + 1) * width]) for row in range(height)]
        body = [row for row, darkest in enumerate(lines) if darkest < 160 and height * 0.08 < row < height * 0.93]
        yield (max(body) if body else 0) / height


def test_the_folder_has_few_pages_and_none_is_nearly_empty(papers):
    ends = list(inked(papers / "whole.pdf"))
    assert len(ends) <= 20, "a folder that somebody reads"
    for number, end in enumerate(ends, 1):
        assert end > 0.25, f"page {number} ends at {end:.0%} of its height"


def test_the_cover_says_where_the_job_stands_and_what_follows(papers):
    sheets = pages(papers / "whole.pdf")
    cover = sheets[0]
    for said in ("Corner lot with workshop", "Job folder", "Lot 12 on the corner", "NO: still to measure or ask: 2",
                 "NO: no locate ticket", "What stands in this folder", "Still missing"):
        assert said in cover, said
    assert "Call 811 before digging" in cover + sheets[1]
    lines = re.findall(r"^ *([A-Z]\w+(?: \w+)?) {2,}.*\bpage (\d+)$", cover, re.MULTILINE)
    assert [name for name, _ in lines] == ["Proposal", "Drawing", "Profile", "Job", "Levels", "Runs", "Pit", "Pit drawing", "Takeoff", "Labor",
                                           "Quote", "Purchase order", "Account", "Care"]
    for name, page in lines:
        title = {"Care": "Caring for your drain"}.get(name, name)
        assert title in "\n".join(sheets[int(page) - 1].splitlines()[:12]), f"{name} begins on page {page}"
    assert f"1 / {len(sheets)}" in cover


@pytest.fixture(scope="module")
def a4(papers):
    done("paper", papers.parent / "job.ods", papers.parent / "a4", "--size", "A4")
    return papers.parent / "a4"


@pytest.fixture(scope="module")
def spanish(tmp_path_factory):
    """The same job in Spanish on A4, whose longest sentence names goods without a price."""
    folder = tmp_path_factory.mktemp("spanish")
    shutil.copytree(DEMO, folder / "lot")
    job, prices = folder / "lot/job.csv", folder / "lot/prices.csv"
    job.write_text(job.read_text(encoding="utf-8") + "Language,es\n", encoding="utf-8")
    kept = [line for line in prices.read_text(encoding="utf-8").splitlines() if not line.startswith(("DOWNSPOUT-", "BASIN-12"))]
    prices.write_text("\n".join(kept) + "\n", encoding="utf-8")
    done("make", folder / "lot", folder / "job.ods", "--paper", folder / "paper", "--size", "A4")
    return folder / "paper"


def touching(pdf):
    """Words that lie on each other, by page."""
    found = []
    for number, (_, here) in enumerate(words(pdf), 1):
        for n, (left, top, right, bottom, one) in enumerate(here):
            for left2, top2, right2, bottom2, other in here[n + 1:]:
                shared = min(bottom, bottom2) - max(top, top2)
                if min(right, right2) - max(left, left2) > 1 and shared > 0.3 * min(bottom - top, bottom2 - top2):
                    found.append(f"page {number}: {one} and {other}")
    return found


def test_no_word_lies_on_another(papers, spanish):
    for folder in (papers, spanish):
        files = sorted(folder.glob("*.pdf"))
        assert [file.stem for file in files] == ["as-built", "care", "crew-en", "crew-es", "drawing", "invoice", "order-1-millrace-supply",
                                                 "order-2-stonebrook-yard", "order-3-greenfield-turf", "proposal", "record", "whole"]
        for file in files:
            assert touching(file) == [], file
    assert "no hay precio de DOWNSPOUT-" in "".join(pages(spanish / "whole.pdf"))


@functools.cache
def box_of_letters(paper):
    """Height of a word's box over the size of its letters, in the workbook's font: 9 points make 11.72 points as LibreOffice
    7.4 describes the font in its PDF, 10.05 as 25.2 does."""
    about = subprocess.run(["pdfinfo", paper], capture_output=True, text=True, check=True).stdout
    return 1.302 if int(re.search(r"^Producer: +LibreOffice (\d+)", about, re.MULTILINE)[1]) < 25 else 1.117


def test_no_paper_has_letters_under_8_points_and_the_crews_lines_have_10(papers):
    for paper in sorted(papers.glob("*.pdf")):
        for number, (_, found) in enumerate(words(paper), 1):
            small = {text for _, top, _, bottom, text in found if (bottom - top) / box_of_letters(paper) < 7.9}
            assert not small, f"{paper.name}, page {number}: {small}"
    page = next(found for _, found in list(words(papers / "crew-en.pdf"))[1:] if any(word[4] == "S7" for word in found))
    for text, least in (("S7", 9.9), ("S7-S8", 9.9)):
        assert all((word[3] - word[1]) / box_of_letters(papers / "crew-en.pdf") > least for word in page if word[4] == text), text


def test_papers_are_tagged_and_have_a_title(papers):
    for paper in papers.glob("*.pdf"):
        about = subprocess.run(["pdfinfo", paper], capture_output=True, text=True, check=True).stdout
        assert re.search(r"^Tagged: +yes$", about, re.MULTILINE), paper.name
        assert re.search(r"^Title: +Corner lot", about, re.MULTILINE), paper.name


def test_the_crew_has_a_row_a_station_and_what_is_near_in_boxes(papers):
    for paper, dig, step in (("crew-en", "DIG BY HAND 4.1 ft: water, S6-S7, 12.0 ft below S6", "Rod reading = "),
                             ("crew-es", "EXCAVE A MANO 4.1 ft: water, S6-S7, 12.0 ft abajo de S6", "Lectura de mira = ")):
        sheets = pages(papers / f"{paper}.pdf")
        text = "\n".join(sheets)
        assert dig in text and step in text, paper
        stations = re.findall(r"^ *(\d+(?:\.\d)?) +(?:\w+ +)?(?:[SPG]\d-[SPG]\d) +-?[\d.]+ +-?[\d.]+ +[\d.]+ +\d+' ", text, re.MULTILINE)
        assert len(stations) > 30, stations
        street = stations[:stations.index("173") + 1]
        assert street[0] == "0" and sorted(street, key=float) == street and len(set(street)) >= len(street) - 2, "twice where the trench steps"
        assert any("100" in sheet and "Escala" in sheet or "Scale" in sheet for sheet in sheets), "the drawing is with it"
    assert "Local codes" not in "\n".join(pages(papers / "crew-es.pdf")), "no English in the margins"


def test_the_owner_reads_the_note_before_the_drawing(papers):
    sheets = pages(papers / "care.pdf")
    assert len(sheets) == 2 and "Caring for your drain" in sheets[0] and "Caring for your drain" not in sheets[1]
    assert "Scale" in sheets[1] and "The lot as built" in sheets[1]
    assert "Caring for your drain" in pages(papers / "whole.pdf")[-1], "the last chapter of the folder"


def test_the_offer_adds_up_and_tells_of_the_right_to_cancel(papers):
    sheets = pages(papers / "proposal.pdf")
    text = " ".join(" ".join(sheets).split())
    total, said = re.search(r"Buried drain lines, (\d+) ft of pipe in all: (.*?) \(risers included\)", text).groups()
    assert sum(int(length) for length in re.findall(r"(\d+) ft of", said)) == int(total)
    signature = next(sheet for sheet in sheets if "Accepted, owner" in sheet)
    assert "You, the buyer, may cancel this transaction" in signature and "For Fernbank Drainage (invented): ____" in signature
    notices = [sheet for sheet in sheets if "NOTICE OF CANCELLATION" in sheet]
    assert len(notices) == 2 and "First copy" in notices[0] and "Second copy" in notices[1]
    # Agreed on Tuesday, 24 November 2026: Wednesday counts, Thursday is Thanksgiving Day, Friday and Saturday count.
    for notice in notices:
        assert "2026-11-24" in notice and "NOT LATER THAN MIDNIGHT OF 2026-11-28" in " ".join(notice.split())
    for number, (_, found) in enumerate(words(papers / "proposal.pdf")):
        law = [bottom - top for _, top, _, bottom, text in found if text in ("CANCEL", "CANCELLATION", "cancellation", "BUSINESS")]
        assert all(height / box_of_letters(papers / "proposal.pdf") >= 10 for height in law), f"page {number + 1}: 16 CFR 429.1 asks 10 points"


def test_each_supplier_has_a_paper_of_his_own_lines(papers):
    """Sender, where it goes, his numbers, his lines and no other's, sums that add up; nothing of the workbook's own."""
    typed = list(csv.DictReader((DEMO / "order.csv").read_text(encoding="utf-8").splitlines()))
    for number, file, supplier in ((1, "millrace-supply", "Millrace Supply"), (2, "stonebrook-yard", "Stonebrook Yard"),
                                   (3, "greenfield-turf", "Greenfield Turf")):
        text = " ".join("\n".join(pages(papers / f"order-{number}-{file}.pdf")).split())
        for said in ("Fernbank Drainage (invented)", "7 Sample Lane", "Purchase order PO-118", f"To: {supplier}",
                     "Deliver to: Lot 12 on the corner", "rock on the apron", "Deliver on 2026-12-0"):
            assert said in text, (file, said)
        for own in ("Frames of cells", "Takeoff", "Taxable", "CHECK", "Sort", "Sum"):
            assert own not in text, (file, own)
        his = [row for row in typed if row["Supplier"].startswith(supplier)]
        assert his and all(row["Code"] in text and row["Their number"] in text for row in his)
        assert not any(f" {row['Code']} " in text for row in typed if row not in his)
        cents = [round(100 * float(row["Quantity"]) * float(row["Price"]) + 1e-6) for row in his]
        tax = round(sum(c for c, row in zip(cents, his) if row["Taxable"] == "yes") * 0.0725 + 1e-6)
        assert f"in all $ {(sum(cents) + tax) / 100:,.2f}." in text, (file, sum(cents), tax)


def test_letterheads_show_the_logo(papers):
    for paper, on in (("proposal", 1), ("invoice", 1), ("care", 1), ("order-1-millrace-supply", 1), ("whole", 2), ("crew-en", None)):
        listed = subprocess.run(["pdfimages", "-list", papers / f"{paper}.pdf"], capture_output=True, text=True, check=True).stdout
        shown = {int(line.split()[0]) for line in listed.splitlines()[2:]}
        assert on in shown if on else not shown, (paper, listed)


def test_the_owners_note_has_the_drawing_as_built(papers):
    text = "\n".join(pages(papers / "care.pdf"))
    assert "Caring for your drain" in text and "The lot as built" in text
    assert "The lot as built" not in "\n".join(pages(papers / "proposal.pdf"))


@pytest.mark.parametrize("size", ["Letter", "A4"])
def test_no_page_is_nearly_empty(papers, a4, size):
    folder = papers if size == "Letter" else a4
    for paper in sorted(folder.glob("*.pdf")):
        ends = list(inked(paper))
        assert paper.stem != "whole" or len(ends) <= 20, "a folder that somebody reads"
        for number, end in enumerate(ends, 1):
            assert end > 0.25, f"{paper.name}, page {number} ends at {end:.0%} of its height"
