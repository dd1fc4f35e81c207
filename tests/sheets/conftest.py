"""Tests of jobbook as people call it."""

import pytest

from calls import DEMO, done


@pytest.fixture(scope="session")
def demo(tmp_path_factory):
    """The demo job, made once: workbook, values, papers, what was printed."""
    folder = tmp_path_factory.mktemp("demo")
    said = done("make", DEMO, folder / "job.ods", "--values", folder / "values", "--paper", folder / "paper")
    (folder / "said.txt").write_text(said, encoding="utf-8")
    return folder
