"""Published values by their row in tests/reference."""

import csv

from calls import CHECKOUT


def published(name):
    """id -> row of a reference table, `value` as a number where it is one."""
    with open(CHECKOUT / "tests" / "reference" / f"{name}.csv", encoding="utf-8", newline="") as file:
        return {row["id"].rsplit("-", 1)[1]: row for row in csv.DictReader(file)}


def value(row):
    return float(row["value"]), float(row["tol_abs"])
