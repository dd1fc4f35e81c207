"""The drawing of the demo lot, measured on its PDF as with a ruler: lengths of runs, the scale bar, the page."""
import csv
import math
import re
import subprocess

import pytest

from calls import DEMO

FEET_AN_INCH = 20


def feet(typed):
    """24' 0\" and 24 alike."""
    found = re.match(r"(\d+(?:\.\d+)?)'(?: (\d+(?:\.\d+)?)\")?$", typed)
    return float(found[1]) + float(found[2] or 0) / 12 if found else float(typed)


# The ink of new pipe, 9C4F2E, in hundredths as a drawing of vectors writes it.
PIPE = (61, 31, 18)


def segments(pdf, ink, page=1):
    """Every straight line that the page draws in this ink, its ends in points of 1/72 in."""
    svg = subprocess.run(["pdftocairo", "-svg", "-f", str(page), "-l", str(page), str(pdf), "-"], capture_output=True, text=True, check=True).stdout
    lines = []
    for path in re.findall(r"<path [^>]*>", svg):
        color = re.search(r'stroke(?:=|:)\s*"?rgb\(([\d.]+)%, ?([\d.]+)%, ?([\d.]+)%\)', path)
        if not color or any(abs(float(one) - wanted) > 1 for one, wanted in zip(color.groups(), ink)):
            continue
        found = re.search(r'transform="matrix\(([^)]*)\)"', path)
        a, b, c, d, e, f = (float(one) for one in re.split(r"[ ,]+", found[1])) if found else (1, 0, 0, 1, 0, 0)
        last = None
        for op, x, y in re.findall(r"([ML]) (-?[\d.]+) (-?[\d.]+)", re.search(r' d="([^"]*)"', path)[1]):
            here = (a * float(x) + c * float(y) + e, b * float(x) + d * float(y) + f)
            if op == "L" and last:
                lines.append((last, here))
            last = here
    return lines


def length(line):
    return math.dist(*line)


@pytest.fixture(scope="module")
def drawn(demo):
    return demo / "paper/drawing.pdf"


def runs():
    with open(DEMO / "runs.csv", encoding="utf-8") as file:
        return list(csv.DictReader(file))


def test_runs_are_as_long_as_typed(drawn):
    paper = sorted(length(line) for line in segments(drawn, PIPE))
    typed = sorted(feet(run["Length"]) / FEET_AN_INCH * 72 for run in runs())
    assert len(paper) == len(typed), paper
    for is_, asked in zip(paper, typed):
        assert abs(is_ - asked) < 0.01 * asked, (is_, asked)


def test_a_straight_line_is_as_long_as_all_its_runs(drawn):
    """S1 to S7, six runs in one line across the lot, 149 ft; its ends are the rightmost of the line along the top."""
    straight = sum(feet(run["Length"]) for run in runs() if run["Line"] == "street" and run["To"] != "S8")
    points = sorted({point for line in segments(drawn, PIPE) for point in line})
    top = min(y for _, y in points)
    along = [point for point in points if point[1] - top < 2]
    reach = straight / FEET_AN_INCH * 72
    assert len(along) == 7, along
    assert abs(math.dist(along[0], along[-1]) - reach) < 0.01 * reach


def test_the_page_says_its_scale(drawn):
    text = subprocess.run(["pdftotext", "-layout", str(drawn), "-"], capture_output=True, text=True, check=True).stdout
    assert f"Scale 1 in = {FEET_AN_INCH} ft" in text
    assert "Not drawn" not in text
    pages = subprocess.run(["pdfinfo", str(drawn)], capture_output=True, text=True, check=True).stdout
    assert re.search(r"Pages:\s+1\n", pages), pages


SLOPES = {"1/8 in/ft": 1 / 96, "1:90": 1 / 90, "1.2%": 0.012}


def profile_page(pdf, line):
    pages = subprocess.run(["pdftotext", "-layout", str(pdf), "-"], capture_output=True, text=True, check=True).stdout
    found = [number for number, text in enumerate(pages.split("\f"), 1) if re.search(rf"^\s*{line}, from \S+ uphill", text, re.M)]
    assert len(found) == 1, found
    return found[0]


@pytest.mark.parametrize("line", ["street", "patio", "garden"])
def test_the_profile_has_every_run_at_its_length_and_slope(demo, line):
    """Outside bottom, invert, crown and outside top of each run rise as typed, in both scales of the page."""
    pdf = demo / "paper/whole.pdf"
    drawn = [(abs(b[0] - a[0]), abs(b[1] - a[1])) for a, b in segments(pdf, PIPE, profile_page(pdf, line))]
    scale = {"street": (20, 2), "patio": (5, 1), "garden": (20, 2)}[line]
    for run in runs():
        if run["Line"] != line:
            continue
        far = feet(run["Length"])
        across, up = far / scale[0] * 72, far * SLOPES[run["Slope"]] / scale[1] * 72
        like = [one for one in drawn if abs(one[0] - across) < 0.01 * across and abs(one[1] - up) < 0.03 * up + 0.1]
        assert len(like) >= 4, (run, across, up, drawn)
