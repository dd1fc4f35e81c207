"""Tests in a real, headless Calc with the built package."""

import zipfile

import pytest

from built import BUILD
from calc import Sheet
from office import Office


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
