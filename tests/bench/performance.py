#!/usr/bin/python3
"""Measures every bar of speed and writes docs/performance.md.

    performance.py [--write] [PART…]     parts: engine, columns, workbook, jobbook; all when none is named

Needs a build with TRENCHBOOK_BENCH; TRENCHBOOK_BUILD names its folder, else build/. Takes some ten minutes. Without
--write it only says what it measured; with it, rows of parts that were not measured stay as they are on the page.
"""

import datetime
import json
import math
import os
import subprocess
import sys
import tempfile
import zipfile
from pathlib import Path

import calc_bench
import job_bench
import jobbook_bench
from built import BUILD
from office import Office

PAGE = job_bench.CHECKOUT / "docs" / "performance.md"

# Why a bar is not met, by the words that the row begins with. A row that fails without an entry says so.
BECAUSE = {
    "whole workbook": "by perf engine and add-in take 1.2 % of it, Calc's own work on the sheets' formulas the rest; the blocks "
                      "of Crew and Cut list, all else being values, took 2.3 of 4.9 s in one run",
    "array functions": "not looked into yet",
    "solve of 10,000 runs": "a third of it is the judgement of the runs, a fifth memory for names and sentences",
    "solve and takeoff": "half of the takeoff are the pieces of the nodes and their words in both languages",
    "growth": "not proved; it is likely that 10,000 runs no longer fit the processor's cache",
    "demo job, opened": "Calc loads and styles the cells; limits.md has what was tried",
    "LAYOUT.SCALE": "the office hands over every cell of the lot's tables with each call, which takes most of the time",
    "CHANNEL.DEPTH, one call": "the number of its steps; wider ones answered a little less, and were taken back",
}

# Of the first measurement, on a quiet computer with two cores: what was to be halved, microseconds a call.
FIRST = {"CHANNEL.CAPACITY": 158, "PIT.MOUND": 65, "CHANNEL.DEPTH": 15.5}


class Rows:
    def __init__(self, load):
        self.rows = []
        self.load = load

    def add(self, part, what, value, unit, bar, met, beside=""):
        if bar is None:
            verdict = "no bar"
        elif met:
            verdict = "met"
        else:
            why = next((text for start, text in BECAUSE.items() if what.startswith(start)), "the cause was not looked for")
            verdict = f"not met, because: {why}" + ("; other work beside it slows it" if self.load > 2 else "")
        shown = f"{value:.0f}" if value >= 100 else f"{value:.3g}"
        self.rows.append((part, what, f"{shown} {unit}".strip(), beside, bar or "", verdict))


def engine(rows):
    words = [str(BUILD / "tests" / "benchmarks"), "--benchmark_format=json", "--benchmark_repetitions=3",
             "--benchmark_filter=solve|normal depth|trenchDrain|mound|placeLot|priceRange|gradeThatFits|^flows|^inverts|^levels|^peaks"]
    runs = json.loads(subprocess.run(words, check=True, capture_output=True, text=True).stdout)["benchmarks"]
    scale = {"ns": 1e-6, "us": 1e-3, "ms": 1}
    best = {}
    for run in runs:
        if run["run_type"] == "iteration":
            took = run["cpu_time"] * scale[run["time_unit"]]
            best[run["run_name"]] = min(took, best.get(run["run_name"], took))
    base = best["normal depth"]

    def row(what, name, bar, unit="ms", more=1.0):
        value = best[name] * more
        rows.add("engine", what, value, unit, f"{bar} {unit}", value <= bar, f"{best[name] / base:.3g} normal depths")

    row("normal depth, one call", "normal depth", 150, "ns", 1e6)
    row("solve of 10,000 runs with water and findings", "solveJob/10000", 100)
    row("solve and takeoff of 10,000 runs: water, findings, pieces", "solveAndTakeOff/10000", 100)
    row("points of a lot: 214, 600 tapes, adjusted", "placeLot/slips:0", 50)
    row("risk of a price, 12 parts", "priceRange/12", 30)
    row("CHANNEL.DEPTH, one call, level", "trenchDrainDepth/0", FIRST["CHANNEL.DEPTH"] / 2, "us", 1e3)
    row("CHANNEL.CAPACITY, one call, level", "trenchDrainCapacity/0", FIRST["CHANNEL.CAPACITY"] / 2, "us", 1e3)
    row("PIT.MOUND, one call", "mound", FIRST["PIT.MOUND"] / 2, "us", 1e3)
    for what, name in {"flows": "flows", "inverts": "inverts", "water levels": "levels", "peaks": "peaks",
                       "solve": "solveJob", "solve and takeoff": "solveAndTakeOff", "grade plan": "gradeThatFits"}.items():
        exponent = math.log10(best[f"{name}/10000"] / best[f"{name}/1000"])
        rows.add("engine", f"growth of {what}, 1,000 to 10,000 runs, as a power", exponent, "", 1.1, exponent <= 1.1)


def with_extension(work):
    with tempfile.TemporaryDirectory(prefix="trenchbook-bench-") as name:
        folder = Path(name)
        with zipfile.ZipFile(BUILD / "trenchbook.oxt") as packed:
            packed.extractall(folder / "extension" / "trenchbook")
        with Office(folder / "extension") as office:
            work(office, folder)


def columns(rows):
    calc_bench.figures.clear()

    def work(office, _):
        calc_bench.capacity(office)
        calc_bench.fill(office)
        calc_bench.one_liners(office, ())

    with_extension(work)
    short = [figure for figure in calc_bench.figures if figure[2] == 15]
    over = [figure for figure in short if not figure[4]]
    worst = max(short, key=lambda figure: figure[1])
    rows.add("columns", f"{len(short)} one-line functions, the dearest: {worst[0]}", worst[1], "times =A+2", 15, worst[1] <= 15)
    for name, ratio, bar, unit, good in calc_bench.figures:
        if bar != 15 and (bar is not None or name.startswith(("CHANNEL", "PIT.MOUND"))):
            limit = {"CHANNEL.DEPTH": 119.5, "CHANNEL.CAPACITY": 119.5, "PIT.MOUND": 40}.get(name, bar)
            rows.add("columns", name + " in a filled column", ratio, unit, limit, good if bar else ratio <= limit)
    for name, ratio, bar, unit, _ in over:
        rows.add("columns", name, ratio, unit, bar, False)


def workbook(rows):
    calc_bench.figures.clear()

    def work(office, folder):
        notes = job_bench.made(folder, 1000)
        job_bench.array_functions(office, folder, 1000)
        job_bench.against_native(office, *notes)

    with_extension(work)
    for name, value, bar, unit, good in calc_bench.figures:
        rows.add("workbook", name, value, unit, bar, good)


def jobbook(rows):
    _, figures = jobbook_bench.main()
    for name, value, bar in figures:
        what, unit = ("demo job, opened and computed", "s") if name == "opened" else (f"jobbook, demo: {name}", "times the bare office")
        rows.add("jobbook", what, value, unit, bar, value <= bar)


PARTS = {"engine": engine, "columns": columns, "workbook": workbook, "jobbook": jobbook}
TITLES = {
    "engine": ("The engine alone", "`build/tests/benchmarks`, the least of three; beside it, in calls of normal depth of the same run."),
    "columns": ("Filled columns in Calc", "20,000 rows, the least of seven recalculations, beside `=A+2` or a native formula in the same run."),
    "workbook": ("A job of 1,000 runs in Calc", "Made by `tests/bench/job_bench.py`; the least of a few recalculations."),
    "jobbook": ("jobbook and the demo", "Each beside an office started, the template loaded, computed and stored, in the same run."),
}
HEAD = """# How fast

Written by `tests/bench/performance.py --write`, which anyone can run again; LibreOffice 7.4, two cores. All times are processor
time of the process that works. On a computer that does other work beside it they grow, up to twice; ratios of one run do not.
The bars are those that the project set itself.
"""


def page(rows, load):
    """The page with these rows; of the other parts what it has."""
    old = PAGE.read_text(encoding="utf-8") if PAGE.exists() else ""
    text = HEAD
    for part, (title, words) in TITLES.items():
        mine = [row for row in rows if row[0] == part]
        if not mine:
            start = old.find(f"\n## {title}\n")
            end = old.find("\n## ", start + 1)
            text += old[start:end if end > 0 else len(old)].rstrip() + "\n" if start >= 0 else f"\n## {title}\n\nNot measured yet.\n"
            continue
        text += f"\n## {title}\n\n{words} Measured {datetime.date.today()}, load average {load:.1f}.\n\n"
        beside = any(row[3] for row in mine)
        text += ("| what | measured | beside | bar | |\n|---|---|---|---|---|\n" if beside else "| what | measured | bar | |\n|---|---|---|---|\n")
        for _, what, measured, near, bar, verdict in mine:
            text += f"| {what} | {measured} |" + (f" {near} |" if beside else "") + f" {bar} | {verdict} |\n"
    PAGE.write_text(text, encoding="utf-8")


def main(words):
    wanted = [word for word in words if word != "--write"] or list(PARTS)
    unknown = [word for word in wanted if word not in PARTS]
    if unknown:
        sys.exit(f"performance.py does not know {' '.join(unknown)}")
    load = os.getloadavg()[0]
    rows = Rows(load)
    for part in wanted:
        PARTS[part](rows)
    for row in rows.rows:
        print(" | ".join(map(str, row)))
    if "--write" in words:
        page(rows.rows, load)


if __name__ == "__main__":
    main(sys.argv[1:])
