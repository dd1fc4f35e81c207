"""Installed as people do it: unopkg as an ordinary user; then the functions are there and so are the templates."""

import os
import re
import shutil
import subprocess
import tempfile
import zipfile
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
        assert shown_templates(office, "Trenchbook") == {"Drainage job", "Large drainage job (200 runs)", "Ledger", "Price book", "Corner lot with workshop (invented demo)"}
        assert len(packed) == 5

    again = unopkg(home, "add", "-f", "-s", str(home / "trenchbook.oxt"))
    assert again.returncode == 0, again.stderr
    later = built_later(package, home / "later" / "trenchbook.oxt")
    rebuilt = unopkg(home, "add", "-s", str(home / "later" / "trenchbook.oxt"))
    assert rebuilt.returncode == 0, rebuilt.stderr
    assert re.findall("Version: (.*)", unopkg(home, "list").stdout) == [later]
    removed = unopkg(home, "remove", "trenchbook")
    assert removed.returncode == 0, removed.stderr
    assert "trenchbook" not in unopkg(home, "list").stdout


def built_later(package, target):
    """The package as the next build makes it; returns its version."""
    target.parent.mkdir()
    with zipfile.ZipFile(package) as built, zipfile.ZipFile(target, "w") as made:
        for item in built.infolist():
            content = built.read(item)
            if item.filename == "description.xml":
                version = re.search(rb'<version value="([0-9.]+)"/>', content)[1]
                assert re.fullmatch(rb"\d+\.\d+\.\d+\.20\d{12}", version), version
                later = version[:-14] + str(int(version[-14:]) + 1).encode()
                content = content.replace(version, later)
            made.writestr(item, content)
    for path in (target, target.parent):
        os.chmod(path, 0o755)
    return later.decode()


def shown_templates(office, group):
    """The templates of a group as File > New > Templates shows them."""
    root = office.service("com.sun.star.frame.DocumentTemplates").getContent().getIdentifier().getContentIdentifier()
    files = office.service("com.sun.star.ucb.SimpleFileAccess")
    return {unquote(path.rsplit("/", 1)[1]) for path in files.getFolderContents(f"{root}/{group}", False)}


def path_of(office, address):
    expander = office.context.getByName("/singletons/com.sun.star.util.theMacroExpander")
    if address.startswith("vnd.sun.star.expand:"):
        address = expander.expandMacros(unquote(address[len("vnd.sun.star.expand:"):]))
    return Path(uno.fileUrlToSystemPath(address))
