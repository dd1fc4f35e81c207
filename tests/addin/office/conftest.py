"""Tests in a real, headless Calc with the built package. TRENCHBOOK_BUILD names the build folder, else build/."""

import json
import os
import zipfile
from pathlib import Path

import pytest

from calc import Sheet
from office import Office

CHECKOUT = Path(__file__).resolve().parents[3]
BUILD = Path(os.environ.get("TRENCHBOOK_BUILD", CHECKOUT / "build")).resolve()


@pytest.fixture(scope="session")
def package():
    return BUILD / "trenchbook.oxt"


@pytest.fixture(scope="session")
def extensions(package, tmp_path_factory):
    """The package unpacked: an office started with this folder has it without installing."""
    folder = tmp_path_factory.mktemp("extensions")
    with zipfile.ZipFile(package) as packed:
        packed.extractall(folder / "trenchbook")
    return folder


@pytest.fixture(scope="session")
def office(extensions):
    with Office(extensions) as started:
        yield started


@pytest.fixture
def sheet(office):
    document = office.new()
    yield Sheet(document)
    document.close(True)


def functions():
    """The catalog, as the build describes it."""
    return json.loads((BUILD / "made" / "functions.json").read_text(encoding="utf-8"))
