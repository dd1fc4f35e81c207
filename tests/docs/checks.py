#!/usr/bin/python3
"""docs/checks.md from the checks that the tests recorded (TRENCHBOOK_CHECKS).

    checks.py RECORDED.csv functions.json docs/checks.md           compares: says what is missing or out of date, exit 1
    checks.py RECORDED.csv functions.json docs/checks.md --write   writes it
"""

import csv
import json
import sys
from collections import Counter, defaultdict
from pathlib import Path

HEAD = """# Checks

Made from the tests; do not edit (`bash tests/run.sh --write` brings it up to date). Every value here was printed or
computed by somebody else; ours must agree within the tolerance, or the test fails. `read` values were read in the
source, `memory` values are quoted from memory, `computed` values come from an independent computation, `library` from a
general-purpose library; `common practice` has no source.

"""

FIELDS = ("function", "id", "item", "printed", "ours", "tolerance", "provenance", "source", "note")


def recorded(path):
    """Each check once, however often the tests were run."""
    with open(path, newline="", encoding="utf-8") as lines:
        return sorted({tuple(line) for line in csv.reader(lines) if len(line) == len(FIELDS)})


def short(number):
    """Ours, to the digits that every machine agrees on."""
    try:
        return f"{float(number):.6g}"
    except ValueError:
        return number


def cell(text):
    return " ".join(text.split()).replace("|", "\\|")


def page(checks, functions):
    by_function = defaultdict(list)
    for check in checks:
        by_function[check[0]].append(check)
    kinds = Counter(check[FIELDS.index("provenance")] for check in checks)
    text = HEAD + f"{len(checks)} checks: " + ", ".join(f"{count} {kind}" for kind, count in sorted(kinds.items())) + ".\n\n"
    names = [function for function in functions if function in by_function]
    names += sorted(set(by_function) - set(functions))
    text += "| function | checks |\n|---|---|\n"
    text += "".join(f"| {name} | {len(by_function[name])} |\n" for name in names)
    for name in names:
        text += f"\n## {name}\n\n| what | printed | ours | tolerance | kind | source |\n|---|---|---|---|---|---|\n"
        rows = sorted({(cell(item), printed, short(ours), tolerance, kind, cell(source + (f" ({note})" if note else "")))
                       for _, _, item, printed, ours, tolerance, kind, source, note in by_function[name]})
        for row in rows:
            text += "| " + " | ".join(row) + " |\n"
    return text


def main(recorded_path, functions_path, document, *flags):
    functions = [function["name"] for function in json.loads(Path(functions_path).read_text(encoding="utf-8"))]
    checks = recorded(recorded_path)
    faults = []
    # Words that stand beside the numbers of the same job are checked as those numbers.
    beside = {name for name in functions if name.startswith("JOB.") and name.endswith((".TEXT", ".FINDINGS"))} - {"JOB.FINDINGS"}
    unchecked = sorted(set(functions) - beside - {check[0] for check in checks})
    if unchecked:
        faults.append("no check from outside the project: " + ", ".join(unchecked))
    made = page(checks, functions)
    if "--write" in flags:
        Path(document).write_text(made, encoding="utf-8")
    elif not Path(document).exists() or Path(document).read_text(encoding="utf-8") != made:
        faults.append(f"{document} is not what the tests recorded; bash tests/run.sh --write brings it up to date")
    for fault in faults:
        print(fault)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
