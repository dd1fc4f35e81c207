"""Finished workbooks as they were kept, opened with today's engine and computed anew, give what they gave.

A folder of tests/golden is a workbook (job.ods), the day on which it is looked at (day), what it gave then (values/), and,
once a newer engine gives something else, what moved (moved.csv: file, row, column, was, now, changes). The last is a
sentence of "Results that change" in docs/changes.md, and Job says that another engine made the workbook.
"""

import csv
import subprocess

import pytest

from calls import BUILD, CHECKOUT, fields

GOLDEN = sorted(path.parent for path in (CHECKOUT / "tests/golden").glob("*/job.ods"))


def lines(path):
    with open(path, encoding="utf-8", newline="") as file:
        return list(csv.reader(file))


def same(was, now):
    if was == now:
        return True
    try:
        return abs(float(was) - float(now)) <= 1e-9 * max(1, abs(float(was)))
    except ValueError:
        return False


def differences(before, after):
    """(file, row, column): (was, now) of every cell that differs; a file or line that is gone or new counts whole."""
    found = {}
    for name in sorted({path.name for folder in (before, after) for path in folder.glob("*.csv")}):
        was, now = (lines(folder / name) if (folder / name).exists() else [] for folder in (before, after))
        for row in range(max(len(was), len(now))):
            old, new = was[row] if row < len(was) else [], now[row] if row < len(now) else []
            for column in range(max(len(old), len(new))):
                if name == "job.csv" and old[:1] == new[:1] == ["Engine"]:
                    continue  # says which engine made it, which computes
                pair = old[column] if column < len(old) else "", new[column] if column < len(new) else ""
                if not same(*pair):
                    found[name, str(row + 1), str(column + 1)] = pair
    return found


@pytest.mark.parametrize("kept", GOLDEN, ids=lambda kept: kept.name)
def test_a_kept_workbook_gives_what_it_gave(kept, tmp_path):
    day = (kept / "day").read_text(encoding="utf-8").strip()
    ran = subprocess.run(["faketime", day, str(BUILD / "jobbook"), "values", str(kept / "job.ods"), str(tmp_path / "values")],
                         capture_output=True, text=True, timeout=300)
    assert ran.returncode == 0, ran.stdout + ran.stderr
    assert len(list((tmp_path / "values").glob("*.csv"))) > 50

    listed = {}
    if (kept / "moved.csv").exists():
        changes = " ".join((CHECKOUT / "docs/changes.md").read_text(encoding="utf-8").split())
        for file, row, column, was, now, why in lines(kept / "moved.csv")[1:]:
            assert len(why) > 20 and why in changes, f"no such sentence in docs/changes.md: {why}"
            listed[file, row, column] = was, now
        assert "made with" in fields(tmp_path / "values/job.csv")["Engine"]
    assert differences(kept / "values", tmp_path / "values") == listed


def test_there_is_a_kept_workbook():
    assert GOLDEN and all(len(list((kept / "values").glob("*.csv"))) > 50 for kept in GOLDEN)


def test_a_cell_that_moved_is_seen(tmp_path):
    """The comparison itself: a number, a word, a line and a file more or less."""
    for side, number in (("was", "1.25"), ("now", "1.26")):
        (tmp_path / side).mkdir()
        (tmp_path / side / "runs.csv").write_text(f"From,Fall\nS1,{number}\nS2,3\n" + ("S3,4\n" if side == "now" else ""), encoding="utf-8")
    (tmp_path / "was/pit.csv").write_text("Pit\n", encoding="utf-8")
    assert differences(tmp_path / "was", tmp_path / "now") == {
        ("runs.csv", "2", "2"): ("1.25", "1.26"), ("runs.csv", "4", "1"): ("", "S3"), ("runs.csv", "4", "2"): ("", "4"),
        ("pit.csv", "1", "1"): ("Pit", "")}
    assert same("0.30000000001", "0.30000000002") and not same("0.3001", "0.3002") and not same("OK", "NO")
