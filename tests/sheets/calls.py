"""Calling jobbook and reading what it wrote. TRENCHBOOK_BUILD names the build folder, else build/."""

import csv
import os
import subprocess
import sys
from pathlib import Path

CHECKOUT = Path(__file__).resolve().parents[2]
BUILD = Path(os.environ.get("TRENCHBOOK_BUILD", CHECKOUT / "build")).resolve()
DEMO = CHECKOUT / "sheets" / "demo" / "corner-lot"
sys.path.append(str(CHECKOUT / "tests" / "addin" / "office"))


def jobbook(*words, program=BUILD / "jobbook", cwd=None):
    return subprocess.run([str(program), *map(str, words)], capture_output=True, text=True, cwd=cwd, timeout=300)


def done(*words, **more):
    """Runs jobbook, which must succeed; returns what it prints."""
    ran = jobbook(*words, **more)
    assert ran.returncode == 0, f"jobbook {' '.join(map(str, words))}\n{ran.stdout}{ran.stderr}"
    return ran.stdout


def give(folder, **files):
    """Writes site notes; names without .csv, underscores for dashes."""
    folder.mkdir(parents=True, exist_ok=True)
    for name, text in files.items():
        (folder / f"{name.replace('_', '-')}.csv").write_text(text, encoding="utf-8")
    return folder


def rows(path):
    """A values file as one dictionary a row."""
    with open(path, encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def fields(path):
    return {row["field"]: row["value"] for row in rows(path)}
