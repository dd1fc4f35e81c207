"""A release written anew is the same bytes, whenever and in whatever order its parts were packed."""

import io
import os
import random
import subprocess
import sys
import zipfile
from pathlib import Path

CHECKOUT = Path(__file__).resolve().parents[2]
BUILD = Path(os.environ.get("TRENCHBOOK_BUILD", CHECKOUT / "build"))
COMMITTED = 1800000000


def packed_another_day(content, day, order):
    """The same parts as another build packs them: other times, other order, other notes of the office."""
    made = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(content)) as old, zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as new:
        names = old.namelist()
        if "mimetype" not in names:
            order.shuffle(names)
        for name in names:
            data = old.read(name)
            if name.endswith(".ots"):
                data = packed_another_day(data, day, order)
            if name == "meta.xml":
                assert b"<dc:date>2" in data and b"<meta:editing-duration>PT" in data
                data = data.replace(b"<dc:date>2", b"<dc:date>3").replace(b"duration>PT", b"duration>PT1H")
            new.writestr(zipfile.ZipInfo(name, (2026, 5, day, 10, day, 2)), data)
    return made.getvalue()


def anew(folder, name, content):
    path = folder / name
    path.write_bytes(content)
    subprocess.run([sys.executable, CHECKOUT / ".ci/same-bytes.py", path, "--time", str(COMMITTED)], check=True)
    return path.read_bytes()


def test_two_packings_are_the_same_bytes(tmp_path):
    shipped = (BUILD / "trenchbook.oxt").read_bytes()
    other = packed_another_day(shipped, 7, random.Random(1))
    assert shipped != other
    once = anew(tmp_path, "one.oxt", shipped)
    assert once == anew(tmp_path, "two.oxt", other)
    assert once == anew(tmp_path, "again.oxt", once)


def test_every_part_is_kept(tmp_path):
    shipped = (BUILD / "trenchbook.oxt").read_bytes()
    with zipfile.ZipFile(io.BytesIO(shipped)) as before, zipfile.ZipFile(io.BytesIO(anew(tmp_path, "p.oxt", shipped))) as after:
        assert after.testzip() is None
        assert after.namelist() == sorted(name for name in before.namelist() if not name.endswith("/"))
        for name in after.namelist():
            if not name.endswith(".ots"):
                assert before.read(name) == after.read(name), name
                continue
            with zipfile.ZipFile(io.BytesIO(before.read(name))) as old, zipfile.ZipFile(io.BytesIO(after.read(name))) as new:
                first = new.infolist()[0]
                assert (first.filename, first.compress_type) == ("mimetype", zipfile.ZIP_STORED)
                assert all(old.read(part) == new.read(part) for part in new.namelist() if part != "meta.xml")
                assert b"2027-01-15T08:00:00Z" in new.read("meta.xml")


def test_another_cell_is_another_package(tmp_path):
    shipped = (BUILD / "trenchbook.oxt").read_bytes()
    made = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(shipped)) as old, zipfile.ZipFile(made, "w") as new:
        for name in old.namelist():
            new.writestr(name, old.read(name) + (b"\n" if name == "LICENSE" else b""))
    assert anew(tmp_path, "one.oxt", shipped) != anew(tmp_path, "two.oxt", made.getvalue())
