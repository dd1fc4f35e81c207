"""Installed as people do it: unopkg as an ordinary user; then the functions are there and so are the templates."""

import os
import shutil
import subprocess
import tempfile
from pathlib import Path
from urllib.parse import unquote

import pytest
import uno

from calc import Sheet
from office import Office, url

ORDINARY = "nobody"


@pytest.fixture
def home():
    """A folder that an ordinary user may write into. unopkg refuses to install for root."""
    folder = Path(tempfile.mkdtemp(prefix="trenchbook-home-"))
    shutil.chown(folder, ORDINARY) if os.geteuid() == 0 else None
    yield folder
    shutil.rmtree(folder, ignore_errors=True)


def as_user(home):
    environment = ["env", f"HOME={home}"]
    return ["runuser", "-u", ORDINARY, "--", *environment] if os.geteuid() == 0 else environment


def unopkg(home, *words):
    return subprocess.run([*as_user(home), "/usr/bin/unopkg", *words, f"-env:UserInstallation={url(home / 'profile')}"],
                          capture_output=True, text=True, timeout=120, stdin=subprocess.DEVNULL)


def test_added_by_a_user_used_and_removed(package, home):
    shutil.copy(package, home / "trenchbook.oxt")
    os.chmod(home / "trenchbook.oxt", 0o644)
    added = unopkg(home, "add", "-s", str(home / "trenchbook.oxt"))
    assert added.returncode == 0, added.stderr
    listed = unopkg(home, "list")
    assert "Identifier: trenchbook" in listed.stdout and "is registered: yes" in listed.stdout, listed.stdout

    with Office(profile=home / "profile", command=as_user(home)) as office:
        sheet = Sheet(office.new())
        assert sheet.formula("PIT.STORAGE(10;3;2)") == pytest.approx(24)
        assert "printed values right" in sheet.formula("TRENCHBOOK.SUPPORT()")
        sheet.document.close(True)
        paths = office.service("com.sun.star.util.PathSettings").getPropertyValue("Template_internal")
        ours = [path for path in paths if "trenchbook.oxt" in path]
        assert len(ours) == 1, paths
        packed = list((path_of(office, ours[0]) / "Trenchbook").glob("*.ots"))
        assert packed, "the package brings its templates"
        assert shown_templates(office, "Trenchbook") == len(packed)

    again = unopkg(home, "add", "-f", "-s", str(home / "trenchbook.oxt"))
    assert again.returncode == 0, again.stderr
    removed = unopkg(home, "remove", "trenchbook")
    assert removed.returncode == 0, removed.stderr
    assert "trenchbook" not in unopkg(home, "list").stdout


def shown_templates(office, group):
    """How many templates File > New > Templates shows in a group."""
    root = office.service("com.sun.star.frame.DocumentTemplates").getContent().getIdentifier().getContentIdentifier()
    files = office.service("com.sun.star.ucb.SimpleFileAccess")
    return len(files.getFolderContents(f"{root}/{group}", False))


def path_of(office, address):
    expander = office.context.getByName("/singletons/com.sun.star.util.theMacroExpander")
    if address.startswith("vnd.sun.star.expand:"):
        address = expander.expandMacros(unquote(address[len("vnd.sun.star.expand:"):]))
    return Path(uno.fileUrlToSystemPath(address))
