#!/usr/bin/python3
"""What the shell in Python costs beside the one in C++, both in one run: filled columns, the array functions of a job of
1,000 runs, the demo job opened.

    shells_bench.py [RUNS]     TRENCHBOOK_BUILD names the build folder, else build/

Bars: one-line functions at most 5 times, array functions together at most 1.5 times. Processor time of the office; the
least of several rounds counts, and the rounds of both go by turns. Ends with 1 when a bar is not met.
"""

import shutil
import subprocess
import sys
import tempfile
from contextlib import ExitStack
from pathlib import Path

from job_bench import CHECKOUT, made
from calc_bench import Column

from built import BUILD  # noqa: E402
from office import Office  # noqa: E402

EXTENSIONS = {"C++": BUILD / "extension", "Python": BUILD / "extension-python"}
COLUMNS = {
    "PIPE.CAPACITY": ("=PIPE.CAPACITY(A1;B1)", [["4 SDR35", "6 SDR35", "8 SDR35"], 0.01]),
    "PIPE.FILL": ("=PIPE.FILL(A1;B1;C1;D1)", ["4 SDR35", 0.01, [20.0, 35.0, 50.0], 0.009]),
    "RUN.SLOPE": ("=RUN.SLOPE(A1;B1;C1)", [[40.0, 60.0], 98.0, 97.0]),
    "SLOPE.TEXT": ("=SLOPE.TEXT(A1)", [[0.01, 0.02]]),
}
failed = []


def report(what, took, unit, bar=None):
    ratio = took["Python"] / took["C++"]
    verdict = "" if bar is None else f"   bar {bar} times: {'met' if ratio <= bar else 'NOT MET'}"
    print(f"{what:<28}C++ {took['C++']:9.2f} {unit}   Python {took['Python']:9.2f} {unit}   {ratio:5.2f} times{verdict}", flush=True)
    if bar is not None and ratio > bar:
        failed.append(what)


def by_turns(offices, measure, rounds=3):
    best = {}
    for _ in range(rounds):
        for shell, office in offices.items():
            best[shell] = min(measure(shell, office), best.get(shell, float("inf")))
    return best


def columns(offices):
    for name, (formula, inputs) in COLUMNS.items():
        filled = {shell: Column(office, formula, inputs, rows=5000) for shell, office in offices.items()}
        assert len({column.result.getCellByPosition(0, 0).String for column in filled.values()}) == 1, name
        report(name, by_turns(offices, lambda shell, _: filled[shell].microseconds(3)), "us a cell", 5)
        for column in filled.values():
            column.close()


def arrays(offices, job):
    """The blocks of Workings are set anew: they are computed, and what looks them up."""
    documents = {}
    for shell, office in offices.items():  # each its own: an office locks what it has open
        documents[shell] = office.open(shutil.copy(job, job.with_name(f"{shell}.ods")))
    for document in documents.values():
        document.enableAutomaticCalculation(False)
        document.Sheets.getByName("Workings").unprotect("")

    def once(shell, office):
        found = [range.getReferredCells() for range in documents[shell].NamedRanges]
        blocks = [cells for cells in found if cells is not None and cells.Spreadsheet.Name == "Workings"
                  and cells.getArrayFormula()]
        assert len(blocks) > 5
        for cells in blocks:
            cells.setArrayTokens(cells.getArrayTokens())
        before = office.processor_time()
        documents[shell].calculate()
        return (office.processor_time() - before) * 1e3

    took = by_turns(offices, once)
    for document in documents.values():
        document.close(True)
    report("array functions", took, "ms", 1.5)


def opening(offices, job, what):
    def once(_, office):
        before = office.processor_time()
        document = office.open(job)
        took = office.processor_time() - before
        document.close(True)
        return took

    report(what, by_turns(offices, once), "s")


def main(runs=1000):
    with tempfile.TemporaryDirectory(prefix="trenchbook-bench-") as name, ExitStack() as started:
        folder = Path(name)
        made(folder, int(runs))
        subprocess.run([BUILD / "jobbook", "make", CHECKOUT / "sheets/demo/corner-lot", folder / "demo.ods"], check=True,
                       stdout=subprocess.DEVNULL)
        offices = {shell: started.enter_context(Office(extensions)) for shell, extensions in EXTENSIONS.items()}
        columns(offices)
        opening(offices, folder / "demo.ods", "demo job opened")
        arrays(offices, folder / "job.ods")
        opening(offices, folder / "job.ods", f"job of {runs} runs opened")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
