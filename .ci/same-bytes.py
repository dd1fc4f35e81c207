#!/usr/bin/python3
"""Writes a package anew so that two builds of one commit on one day are the same bytes:

    .ci/same-bytes.py PACKAGE.oxt… --time SECONDS

Entries stand in the order of their names, with the time given (of the commit: git log -1 --format=%ct) and plain rights;
in the workbooks inside, the office's own notes of when and how long it worked are that time too. What is in the cells
stays as it is: a workbook holds the day on which it was made, where a cell asks for today.
"""

import argparse
import io
import re
import time
import zipfile
from pathlib import Path

WORKBOOK = (".ots", ".ods")


def stamped(meta, seconds):
    """The office's notes on a document, with one time for all of them."""
    when = time.strftime("%Y-%m-%dT%H:%M:%SZ", time.gmtime(seconds)).encode()
    for name in (b"meta:creation-date", b"dc:date", b"meta:print-date"):
        meta = re.sub(b"<%s>[^<]*</%s>" % (name, name), b"<%s>%s</%s>" % (name, when, name), meta)
    return re.sub(rb"<meta:editing-duration>[^<]*<", b"<meta:editing-duration>PT0S<", meta)


def rewritten(content, seconds):
    """The bytes of a zip file, written anew; of workbooks in it too."""
    made = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(content)) as old, zipfile.ZipFile(made, "w") as new:
        names = [entry for entry in old.namelist() if not entry.endswith("/")]
        # A document says first, and uncompressed, what it is.
        for name in sorted(names, key=lambda name: (name != "mimetype", name)):
            data = old.read(name)
            if name.endswith(WORKBOOK):
                data = rewritten(data, seconds)
            elif name == "meta.xml":
                data = stamped(data, seconds)
            entry = zipfile.ZipInfo(name, time.gmtime(max(seconds, 315532800))[:6])  # a zip's time begins in 1980
            entry.create_system = 3
            entry.external_attr = 0o644 << 16
            entry.compress_type = zipfile.ZIP_STORED if name == "mimetype" else zipfile.ZIP_DEFLATED
            new.writestr(entry, data)
    return made.getvalue()


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("packages", nargs="+", type=Path)
    parser.add_argument("--time", type=int, required=True)
    given = parser.parse_args()
    for package in given.packages:
        package.write_bytes(rewritten(package.read_bytes(), given.time))


if __name__ == "__main__":
    main()
