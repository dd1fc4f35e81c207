"""The papers of the demo job, as they lie on a table: pages, sizes of letters, titles, and what stands on which page."""

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


def test_the_folder_has_few_pages_and_none_is_nearly_empty(papers):
    all_pages = list(words(papers / "whole.pdf"))
    assert len(all_pages) <= 20, "a folder that somebody reads"
    for number, (height, found) in enumerate(all_pages, 1):
        body = [bottom for _, top, _, bottom, _ in found if top > 45 and bottom < height - 45]
        assert len(body) >= 30, f"page {number}: {len(body)} words"  # the drawing has the fewest
        assert max(body) > height / 4, f"page {number} ends at {max(body):.0f} of {height:.0f} points"


def test_the_cover_says_where_the_job_stands_and_what_follows(papers):
    sheets = pages(papers / "whole.pdf")
    cover = sheets[0]
    for said in ("Corner lot with workshop", "Job folder", "Lot 12 on the corner", "NO: still to measure or ask: 2",
                 "NO: no locate ticket", "What stands in this folder", "Still missing"):
        assert said in cover, said
    assert "Call 811 before digging" in cover + sheets[1]
    lines = re.findall(r"^ *([A-Z]\w+) {2,}.*\bpage (\d+)$", cover, re.MULTILINE)
    assert [name for name, _ in lines] == ["Proposal", "Drawing", "Profile", "Job", "Levels", "Runs", "Pit", "Takeoff", "Labor",
                                           "Quote", "Order", "Account", "Care"]
    for name, page in lines:
        assert sheets[int(page) - 1].splitlines()[0].endswith(name), f"{name} begins on page {page}"
    assert f"Page 1 of {len(sheets)}" in cover


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
        assert len(files) == 8
        for file in files:
            assert touching(file) == [], file
    assert "no hay precio de DOWNSPOUT-" in "".join(pages(spanish / "whole.pdf"))
