#!/usr/bin/python3
"""Filled columns in a real Calc: what a function costs beside native formulas, all in one run.

    calc_bench.py [NAME…]     with the built package; TRENCHBOOK_BUILD names the build folder, else build/

A column of 20,000 filled rows is recalculated hard; the least of seven processor times counts. The bars:
    PIPE.CAPACITY                      at most 2 times the same native formula with its look-up of the bore
    any other one-line function        at most 15 times =A+2
    PIPE.FILL                          at least 100 times faster than the same bisection as a Basic macro
"""

import sys
import tempfile
import zipfile
from pathlib import Path

CHECKOUT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(CHECKOUT / "tests" / "addin" / "office"))

from built import BUILD, functions  # noqa: E402
from calc import arguments_of  # noqa: E402
from office import Office, properties  # noqa: E402
from com.sun.star.sheet.FillDirection import TO_BOTTOM  # noqa: E402

ROWS = 20_000
# Integrals: shown without this bar; performance.py holds them to others.
LONGER = {"CHANNEL.CAPACITY", "CHANNEL.DEPTH", "PIT.MOUND"}
PIPES = ["4 SDR35", "6 SDR35", "8 SDR35", "4 SCH40", "3 SCH40", "6 SCH40", "4 D2729", "3 D2729"]

# Manning for a full pipe: gpm from the bore in inches, by look-up, and the slope; n = 0.009.
NATIVE = ("=448.8312*1.48592*PI()/4^(5/3)/{n}*(INDEX($Z$1:$Z${count};MATCH({pipe};$Y$1:$Y${count};0))/12)^(8/3)"
          "*SQRT({slope})")

# The part-full depth by the bisection that a careful user would write; the same tolerance as ours is far out of reach.
BASIC = """
Function FillByBisection(bore As Double, slope As Double, flow As Double, n As Double) As Double
    Dim low As Double, high As Double, fill As Double, angle As Double, r As Double, area As Double, wet As Double
    Dim q As Double, i As Integer
    r = bore / 24
    low = 0
    high = 0.938
    For i = 1 To 40
        fill = (low + high) / 2
        angle = 2 * Acs(1 - 2 * fill)
        area = r * r / 2 * (angle - Sin(angle))
        wet = r * angle
        q = 448.8312 * 1.48592 / n * area * (area / wet) ^ (2 / 3) * Sqr(slope)
        If q < flow Then
            low = fill
        Else
            high = fill
        End If
    Next i
    FillByBisection = (low + high) / 2
End Function

Function Acs(x As Double) As Double
    If x <= -1 Then
        Acs = 4 * Atn(1)
    ElseIf x >= 1 Then
        Acs = 0
    Else
        Acs = 2 * Atn(1) - Atn(x / Sqr(1 - x * x))
    End If
End Function
"""


class Column:
    """One document with its inputs and one filled column, recalculated on demand."""

    def __init__(self, office, formula, inputs, rows=ROWS, basic=None):
        self.office = office
        self.rows = rows
        self.document = office.desktop.loadComponentFromURL(
            "private:factory/scalc", "_blank", 0, properties(Hidden=True, MacroExecutionMode=4))
        if basic:
            libraries = self.document.BasicLibraries
            if not libraries.hasByName("Standard"):
                libraries.createLibrary("Standard")
            libraries.getByName("Standard").insertByName("Bench", basic)
        sheet = self.document.Sheets[0]
        for row, name in enumerate(PIPES):
            sheet.getCellByPosition(24, row).setString(name)
            bore = office.service("com.sun.star.sheet.FunctionAccess").callFunction("PIPE.BORE", (name,))
            sheet.getCellByPosition(25, row).setValue(bore)
        for column, content in enumerate(inputs):
            self._fill(sheet, column, content)
        self.result = sheet.getCellRangeByPosition(20, 0, 20, rows - 1)
        self.result.getCellByPosition(0, 0).setFormula(formula)
        self.result.fillAuto(TO_BOTTOM, 1)

    def _fill(self, sheet, column, content):
        """A list is repeated down the column; a single value stands in every row."""
        cells = sheet.getCellRangeByPosition(column, 0, column, self.rows - 1)
        values = content if isinstance(content, list) else [content]
        cells.setDataArray(tuple((values[row % len(values)],) for row in range(self.rows)))

    def value(self, row=0):
        cell = self.result.getCellByPosition(0, row)
        if cell.getError():
            raise RuntimeError(f"{cell.getFormula()} shows {cell.String}")
        return cell.Value

    def microseconds(self, times=7):
        """Of the office's own processor time, so that other work on the machine does not count."""
        best = None
        for _ in range(times):
            start = self.office.processor_time()
            self.document.calculateAll()
            took = self.office.processor_time() - start
            best = took if best is None else min(best, took)
        return best / self.rows * 1e6

    def close(self):
        self.document.close(True)


def measure(office, *words, **more):
    column = Column(office, *words, **more)
    try:
        return column.microseconds(), column.value()
    finally:
        column.close()


def literal(text):
    """An argument of an example as a cell's content; None when it cannot stand in one cell."""
    if text.startswith('"'):
        return text[1:-1].replace('""', '"')
    try:
        return float(text)
    except ValueError:
        return None


def one_line(function):
    """Formula over cells, and the cells' contents, from a function's example."""
    arguments, inputs = [], []
    for text in arguments_of(function["example"]):
        content = literal(text)
        if content is None:
            arguments.append(text)
        else:
            arguments.append(f"{chr(ord('A') + len(inputs))}1")
            inputs.append(content)
    return f"={function['name']}({';'.join(arguments)})", inputs


figures = []  # all that report() said, for performance.py


def report(name, ratio, bar, unit, good):
    figures.append((name, ratio, bar, unit, good))
    print(f"{name:<28}{ratio:9.2f} {unit:<34} bar {bar:<6} {'ok' if good else 'OVER'}", flush=True)


def capacity(office):
    slopes = [0.005, 0.01, 0.0104, 0.02]
    native, theirs = measure(office, NATIVE.format(pipe="A1", slope="B1", n="C1", count=len(PIPES)), [PIPES, slopes, 0.009])
    add_in, ours = measure(office, "=PIPE.CAPACITY(A1;B1;C1)", [PIPES, slopes, 0.009])
    shorter, _ = measure(office, "=PIPE.CAPACITY(A1;B1)", [PIPES, slopes])
    assert abs(ours / theirs - 1) < 2e-3, (ours, theirs)
    print(f"PIPE.CAPACITY {add_in:.2f} us a cell, native {native:.2f} us")
    report("PIPE.CAPACITY", add_in / native, 2, "times the native formula", add_in <= 2 * native)
    report("PIPE.CAPACITY, own n", shorter / native, 2, "times the native formula", shorter <= 2 * native)


def one_liners(office, wanted):
    base, _ = measure(office, "=A1+2", [1.0])
    print(f"=A+2 {base:.2f} us a cell")
    for function in functions():
        if function["gives"] not in ("number", "words") or (wanted and function["name"] not in wanted):
            continue
        if function["name"] == "PIPE.CAPACITY" and not wanted:
            continue
        formula, inputs = one_line(function)
        took, _ = measure(office, formula, inputs)
        unit = f"times =A+2 ({took:.2f} us)"
        if function["name"] in LONGER:
            figures.append((function["name"], took / base, None, unit, True))
            print(f"{function['name']:<28}{took / base:9.2f} {unit}", flush=True)
        else:
            report(function["name"], took / base, 15, unit, took <= 15 * base)


def fill(office):
    names = ["4 SDR35"]
    flows = [20.0, 35.0, 50.0, 65.0]
    ours = Column(office, "=PIPE.FILL(A1;B1;C1;D1)", [names, 0.01, flows, 0.009])
    basic = Column(office, "=FILLBYBISECTION(A1;B1;C1;D1)", [3.975, 0.01, flows, 0.009], rows=1000, basic=BASIC)
    assert abs(ours.value() - basic.value()) < 2e-3, (ours.value(), basic.value())
    fast, slow = ours.microseconds(), basic.microseconds(3)
    print(f"PIPE.FILL {fast:.2f} us a cell, Basic bisection {slow:.0f} us")
    report("PIPE.FILL", slow / fast, 100, "times faster than Basic", slow >= 100 * fast)
    ours.close()
    basic.close()


def main(*wanted):
    with tempfile.TemporaryDirectory(prefix="trenchbook-bench-") as folder:
        with zipfile.ZipFile(BUILD / "trenchbook.oxt") as packed:
            packed.extractall(Path(folder) / "trenchbook")
        with Office(folder) as office:
            if not wanted:
                capacity(office)
                fill(office)
            one_liners(office, wanted)


if __name__ == "__main__":
    main(*sys.argv[1:])
