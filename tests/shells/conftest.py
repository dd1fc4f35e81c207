"""Both shells beside each other: the one in C++ and the one in Python, each in an office of its own."""

import os
import sys
from pathlib import Path

import pytest

CHECKOUT = Path(__file__).resolve().parents[2]
BUILD = Path(os.environ.get("TRENCHBOOK_BUILD", CHECKOUT / "build")).resolve()
sys.path += [str(CHECKOUT / "tests" / "addin" / "office"), str(CHECKOUT / "tests" / "offices")]

EXTENSIONS = {"C++": BUILD / "extension", "Python": BUILD / "extension-python"}


@pytest.fixture(scope="session")
def offices():
    from office import Office

    with Office(EXTENSIONS["C++"]) as one, Office(EXTENSIONS["Python"]) as other:
        yield {"C++": one, "Python": other}
