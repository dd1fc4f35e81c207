"""Every command that writes, stopped at moments drawn by a fixed seed: jobbook and its office, and an office in which
the menu's commands work.

After each: every file that is written is the whole old one or the whole new one (it unpacks, the same cells); after
SIGINT, SIGTERM and after the death of the office no process, profile, lock or half-written file of ours is left; after
SIGKILL no process; and the same command, given again, works and clears up.

    /usr/bin/python3 tests/long/kills.py [--seed N] [--each N] [--fewer-each N] [--menu-each N] [--only COMMAND] [--report FILE] [--results FILE]
"""

import argparse
import csv
import hashlib
import io
import os
import random
import re
import shutil
import signal
import subprocess
import sys
import threading
import time
import xml.etree.ElementTree as xml
import zipfile
from pathlib import Path
from xml.sax.saxutils import quoteattr

CHECKOUT = Path(__file__).resolve().parents[2]
sys.path += [str(CHECKOUT / "tests/sheets"), str(CHECKOUT / "tests/addin/office")]
from calls import BUILD, DEMO, done, rows  # noqa: E402
from money_book import stored  # noqa: E402
from office import Office  # noqa: E402, before the menu: it teaches Python the office's names
from menu import Menu  # noqa: E402

JOBBOOK = BUILD / "jobbook"
LOT = CHECKOUT / "sheets/demo/clay-lot"
PATIENCE = 30  # seconds until all is gone after a SIGKILL


def cells(path):
    """What a workbook holds: each sheet's cells with formula, value and text, in order. Raises where it is not whole."""
    with zipfile.ZipFile(path) as packed:
        broken = packed.testzip()
        if broken:
            raise ValueError(f"{broken} is damaged")
        content = xml.fromstring(packed.read("content.xml"))
    office = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
    table = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"
    held = []
    for element in content.iter():
        if element.tag == table + "table":
            held.append(element.get(table + "name"))
        elif element.tag in (table + "table-cell", table + "table-row"):
            value = element.get(office + "value")
            # A file keeps fifteen digits: the last moves when it is computed anew.
            value = f"{float(value):.11e}" if value else element.get(office + "string-value")
            text = "\n".join("".join(line.itertext()) for line in element if line.tag.endswith("}p"))
            held.append((element.get(table + "formula"), value, text, element.get(table + "number-columns-repeated"),
                         element.get(table + "number-rows-repeated")))
    return hashlib.sha256(repr(held).encode()).hexdigest()


def pages(path):
    """A printed paper without what names its moment."""
    bytes_ = path.read_bytes()
    if not bytes_.startswith(b"%PDF") or b"%%EOF" not in bytes_[-16:]:
        raise ValueError("the paper is cut off")
    ran = subprocess.run(["pdftotext", "-layout", str(path), "-"], capture_output=True, check=True)
    return hashlib.sha256(ran.stdout).hexdigest()


def whole(path):
    """What tells two whole files apart, by kind."""
    if not path.exists():
        return None
    if path.suffix in (".ods", ".ots"):
        return cells(path)
    if path.suffix == ".xlsx":
        with zipfile.ZipFile(path) as packed:
            if packed.testzip():
                raise ValueError("damaged")
            return hashlib.sha256(b"".join(packed.read(name) for name in sorted(packed.namelist())
                                           if name.startswith("xl/worksheets/"))).hexdigest()
    if path.suffix == ".pdf":
        return pages(path)
    if path.suffix == ".csv":
        # The last digits of a number move when it is computed anew.
        rounded = [[f"{float(cell):.11e}" if re.fullmatch(r"-?\d+(\.\d+)?(e-?\d+)?", cell) else cell for cell in row]
                   for row in csv.reader(io.StringIO(path.read_text(encoding="utf-8")))]
        return hashlib.sha256(repr(rounded).encode()).hexdigest()
    return hashlib.sha256(path.read_bytes()).hexdigest()


class Ground:
    """What the commands work on, made once: a finished job, others like it, a ledger, a price book, notes."""

    def __init__(self, folder):
        self.folder = folder
        if (folder / "ready").exists():
            return
        shutil.rmtree(folder, ignore_errors=True)
        folder.mkdir(parents=True)
        shutil.copytree(DEMO, folder / "notes")
        done("make", "notes", "job.ods", cwd=folder)
        # The same job, the machine a day longer.
        longer = "EXCAVATOR,1,a day longer\n"
        shutil.copytree(DEMO, folder / "longer-notes")
        with open(folder / "longer-notes/additions.csv", "a", encoding="utf-8") as file:
            file.write(longer)
        done("make", "longer-notes", "longer.ods", cwd=folder)
        (folder / "ways/longer").mkdir(parents=True)
        shutil.copy(folder / "longer-notes/additions.csv", folder / "ways/longer")
        (folder / "more").mkdir()
        (folder / "more/rules.csv").write_text("Key,Value\ncover.lawn,14\n", encoding="utf-8")
        (folder / "shots.csv").write_text("Point,Level\nN1,99.25\nN2,98.75\n", encoding="utf-8")
        done("ledger", CHECKOUT / "sheets/demo/ledger", "ledger.ods", cwd=folder)
        shutil.copytree(CHECKOUT / "sheets/demo/ledger", folder / "closed-jobs")
        own = [row for row in rows(DEMO / "prices.csv") if row["Supplier"]]

        def fill(book):
            book.fill("Prices", [{"Code": row["Code"], "Item": row["Item"], "Group": row["Group"], "Unit": row["Unit"],
                                  "Pack": float(row["Pack"]) if row["Pack"] else "", "Price": float(row["Price"]) + 1,
                                  "Supplier": row["Supplier"], "Priced on": 46400, "Taxable": row["Taxable"]} for row in own])
            book.fill("Suppliers", [{"Supplier": "Otter Supply (invented)", "Delivery": 40}])
            book.fill("Offers", [{"Code": row["Code"], "Supplier": "Otter Supply (invented)", "Unit": row["Unit"],
                                  "Pack": float(row["Pack"]) if row["Pack"] else "", "Price": round(0.5 * float(row["Price"]), 2),
                                  "Priced on": 46336} for row in own if row["Group"] in ("pipe", "rock")])

        stored("price-book", folder / "book.ods", fill)
        # The job on another day: what stands where a new file is to go.
        done("order", shutil.copy(folder / "job.ods", folder / "other.ods"), "--number", "OTHER-1", "--replace")
        for name, command in (("papers", "paper"), ("values", "values"), ("drawing", "drawing")):
            done(command, "other.ods", name, cwd=folder)
        done("blank", "blank", cwd=folder)
        shutil.copy(folder / "job.ods", folder / "sold.ods")
        done("estimate", "sold.ods", "--replace", cwd=folder)
        (folder / "ready").touch()

    def laid(self, folder, files):
        """Copies of what a command needs; `files` gives a name to each: ("job.ods", "other.ods") lays other.ods as job.ods."""
        folder.mkdir(parents=True)
        for name, from_ in files:
            source = self.folder / from_
            (shutil.copytree if source.is_dir() else shutil.copy)(source, folder / name)

    def set_back(self, folder, finds, writes):
        """The old files again; what was left beside them stays: the next one has to live with it."""
        for name in writes:
            if any(place == name for place, _ in finds):
                continue
            if (folder / name).is_dir():
                shutil.rmtree(folder / name)
            (folder / name).unlink(missing_ok=True)
        for place, from_ in finds:
            source = self.folder / from_
            shutil.copytree(source, folder / place, dirs_exist_ok=True) if source.is_dir() else shutil.copy(source, folder / place)


# A command's words, what it finds, and what it writes (files, or folders with all in them).
def same(*names):
    return [(name, name) for name in names]


COMMANDS = {
    "make": (["make", "notes", "new.ods", "--replace"], [*same("notes"), ("new.ods", "other.ods")], ["new.ods"]),
    "make, nothing there": (["make", "notes", "new.ods"], same("notes"), ["new.ods"]),
    "again": (["again", "job.ods", "new.ods", "--replace"], [*same("job.ods"), ("new.ods", "other.ods")], ["new.ods"]),
    "fill": (["fill", "more", "job.ods"], same("more", "job.ods"), ["job.ods"]),
    "prices": (["prices", "job.ods", "book.ods", "--take"], same("job.ods", "book.ods"), ["job.ods"]),
    "buy": (["buy", "job.ods", "book.ods", "--take"], same("job.ods", "book.ods"), ["job.ods"]),
    "option": (["option", "job.ods", "longer.ods"], same("job.ods", "longer.ods"), ["job.ods"]),
    "options": (["options", "notes", "job.ods", "ways", "--replace"], [*same("notes", "job.ods", "ways"), ("longer.ods", "other.ods")],
                ["job.ods", "longer.ods"]),
    "change": (["change", "job.ods", "longer.ods"], same("job.ods", "longer.ods"), ["job.ods"]),
    "order": (["order", "job.ods", "--number", "7", "--replace"], same("job.ods"), ["job.ods"]),
    "ledger": (["ledger", "closed-jobs", "new.ods", "--replace"], [*same("closed-jobs"), ("new.ods", "book.ods")], ["new.ods"]),
    "estimate": (["estimate", "job.ods", "--replace"], same("job.ods"), ["job.ods"]),
    "actual": (["actual", "job.ods"], [("job.ods", "sold.ods")], ["job.ods"]),
    "close": (["close", "job.ods", "ledger.ods", "--finished", "2026-12-18"], same("job.ods", "ledger.ods"), ["ledger.ods"]),
    "learn": (["learn", "ledger.ods", "job.ods"], same("ledger.ods", "job.ods"), ["job.ods"]),
    "paper": (["paper", "job.ods", "papers"], same("job.ods", "papers"), ["papers"]),
    "values": (["values", "job.ods", "values"], same("job.ods", "values"), ["values"]),
    "drawing": (["drawing", "job.ods", "drawing"], same("job.ods", "drawing"), ["drawing"]),
    # Where some of its files are there it refuses: a killed one's folder has to be taken away by hand.
    "blank": (["blank", "blank"], [], ["blank"]),
}
QUICK = {"make", "make, nothing there", "again", "ledger", "paper", "values", "drawing", "blank"}
# The menu's: arguments, what it finds, what it writes; those that change the workbook in the window are stored then.
MENU = {
    "NewJob": ({"To": "new.ods", "Replace": True}, [*same("job.ods"), ("new.ods", "other.ods")], ["new.ods"]),
    "NewLot": ({"To": "new.ods", "Replace": True}, [*same("job.ods"), ("new.ods", "other.ods")], ["new.ods"]),
    "CopyValues": ({"To": "copy", "Replace": True}, [*same("job.ods"), ("copy.ods", "other.ods")], ["copy.ods", "copy.xlsx"]),
    "Papers": ({"Folder": "papers"}, same("job.ods", "papers"), ["papers"]),
    "DrawingFiles": ({"Folder": "drawing"}, same("job.ods", "drawing"), ["drawing"]),
    "Shots": ({"File": "shots.csv"}, same("job.ods", "shots.csv"), ["job.ods"]),
    "PrintRanges": ({}, same("job.ods"), ["job.ods"]),
    "Sheets": ({"Every": True}, same("job.ods"), ["job.ods"]),
    "Prices": ({"Book": "book.ods", "Take": True}, same("job.ods", "book.ods"), ["job.ods"]),
    "Buy": ({"Book": "book.ods", "Take": True}, same("job.ods", "book.ods"), ["job.ods"]),
    "Change": ({"Changed": "longer.ods"}, same("job.ods", "longer.ods"), ["job.ods"]),
    "Option": ({"Other": "longer.ods", "Name": "longer"}, same("job.ods", "longer.ods"), ["job.ods"]),
    "Order": ({"Number": "7", "Replace": True}, same("job.ods"), ["job.ods"]),
    "Estimate": ({"Replace": True}, same("job.ods"), ["job.ods"]),
    "Actual": ({}, [("job.ods", "sold.ods")], ["job.ods"]),
    "Learn": ({"Ledger": "ledger.ods"}, same("job.ods", "ledger.ods"), ["job.ods"]),
    "Close": ({"Job": "closed.ods", "Finished": "2026-12-18"}, [("job.ods", "ledger.ods"), ("closed.ods", "job.ods")], ["job.ods"]),
}
PATHS = {"To", "Folder", "File", "Book", "Changed", "Other", "Ledger", "Job"}


def written(folder, names):
    """Each file under these names, whole; `None` where there is none."""
    held = {}
    for name in names:
        place = folder / name
        for path in sorted(place.rglob("*")) if place.is_dir() else [place]:
            if path.name.startswith("."):
                continue  # a part is looked for by itself
            held[str(path.relative_to(folder))] = whole(path)
    return held


def between(now, old, new):
    """Where a file is neither the old nor the new one, its name."""
    return [name for name in now.keys() | old.keys() | new.keys() if now.get(name) not in (old.get(name), new.get(name))]


def session(leader):
    """Processes that a program and its children are, by the session that it was started in."""
    found = {}
    for process in os.listdir("/proc"):
        if not process.isdigit():
            continue
        try:
            with open(f"/proc/{process}/stat", encoding="utf-8", errors="replace") as file:
                text = file.read()
        except OSError:
            continue
        name, rest = text[text.index("(") + 1:text.rindex(")")], text[text.rindex(")") + 2:].split()
        if rest[3] == str(leader) and rest[0] not in "ZX":
            found[int(process)] = name
    return found


def until(condition, seconds):
    end = time.monotonic() + seconds
    while not condition():
        if time.monotonic() > end:
            return False
        time.sleep(0.05)
    return True


def ours(folder):
    """Locks and half-written files."""
    return [str(path.relative_to(folder)) for path in folder.rglob(".*")]


class Trials:
    def __init__(self, seed, report):
        self.random = random.Random(seed)
        self.report = report
        self.faults = {}
        self.count = {}
        self.expected = {}  # seconds, and when the office is there, of quick commands and of others

    def fault(self, command, what):
        self.faults.setdefault(command, []).append(what)
        self.say(f"    DID NOT HOLD: {what}")

    def say(self, line):
        print(line, file=self.report, flush=True)
        print(line, flush=True)

    def counted(self, command, what):
        self.count.setdefault(command, {}).setdefault(what, 0)
        self.count[command][what] += 1


def run_jobbook(words, folder, temporary):
    return subprocess.Popen([str(JOBBOOK), *words], cwd=folder, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True,
                            start_new_session=True, env={**os.environ, "TMPDIR": str(temporary)})


def office_of(leader):
    return next((process for process, name in session(leader).items() if name == "soffice.bin"), None)


def jobbook_trials(trials, ground, work, command, each):
    words, finds, writes = COMMANDS[command]
    folder, temporary = work / "at", work / "tmp"

    def lay():
        shutil.rmtree(folder, ignore_errors=True)
        shutil.rmtree(temporary, ignore_errors=True)
        ground.laid(folder, finds)
        temporary.mkdir()

    def whole_run():
        """Runs to its end; seconds, and when its office was first seen."""
        start = time.monotonic()
        running = run_jobbook(words, folder, temporary)
        seen = None
        while running.poll() is None:
            if seen is None and office_of(running.pid):
                seen = time.monotonic() - start
                time.sleep(0.1)
        said = running.stdout.read()
        return running.returncode, said, time.monotonic() - start, seen

    lay()
    old = written(folder, writes)
    seconds, seen = trials.expected.get(command in QUICK, (None, None))
    if seconds is None:  # the first of its kind tells how long they take
        code, said, seconds, seen = whole_run()
        trials.say(f"({command} takes {seconds:.1f} s here)")
        lay()
    if command == "blank":
        seconds, seen = 0.3, None
    kinds = [("jobbook", signal.SIGKILL), ("jobbook", signal.SIGTERM), ("jobbook", signal.SIGINT)]
    if seen is not None:
        kinds += [("office", signal.SIGKILL), ("office", signal.SIGTERM)]

    def beside():
        return {*ours(folder), *(str(path.relative_to(temporary)) for path in temporary.iterdir())}

    # A file is put in place near the end: every third moment is drawn from the last fifth.
    became = []
    for number in range(each):
        whom, how = kinds[number % len(kinds)]
        first = (seen if whom == "office" else 0) if number % 3 else 0.8 * seconds
        moment = trials.random.uniform(first, seconds)
        before = beside()
        running = run_jobbook(words, folder, temporary)
        time.sleep(moment)
        target = running.pid if whom == "jobbook" else office_of(running.pid)
        name = f"{how.name} to {whom} at {moment:.2f} s"
        ended = running.poll() is not None or target is None
        if ended and running.poll() not in (0, None):
            trials.fault(command, f"before {name}, after the last stop: it ends with {running.returncode}: {running.stdout.read()}")
        if not ended:
            try:
                os.kill(target, how)
            except ProcessLookupError:
                ended = True
        try:
            said, _ = running.communicate(timeout=120)
        except subprocess.TimeoutExpired:
            trials.fault(command, f"{name}: it does not end")
            for process in session(running.pid):
                os.kill(process, signal.SIGKILL)
            running.wait()
            ground.set_back(folder, finds, writes)
            continue
        trials.counted(command, "after its end" if ended else f"{how.name} to {whom}")
        killed = how == signal.SIGKILL and whom == "jobbook" and not ended
        if not ended and whom == "jobbook" and running.returncode not in (-how, 0):
            trials.fault(command, f"{name}: ends with {running.returncode}: {said}")
        if whom == "office" and not ended and running.returncode not in (0, 1):
            trials.fault(command, f"{name}: ends with {running.returncode}: {said}")
        if whom == "office" and running.returncode == 1 and not said.strip():
            trials.fault(command, f"{name}: no sentence")
        if not until(lambda: not session(running.pid), PATIENCE if killed else 0):
            trials.fault(command, f"{name}: still there {session(running.pid)}")
        left = beside() - before
        if left and not killed:
            trials.fault(command, f"{name}: left behind {sorted(left)}")
        try:
            became.append((name, written(folder, writes)))
        except (ValueError, zipfile.BadZipFile, xml.ParseError, subprocess.CalledProcessError) as damaged:
            trials.fault(command, f"{name}: not whole: {damaged!r}")
        trials.say(f"    {command}, {name}: {'it had ended' if ended else f'ended {running.returncode}'}{f', left {sorted(left)}' if left else ''}")
        ground.set_back(folder, finds, writes)
    # Not stopped: it works with all that was left, clears up, and gives what is new.
    code, said, seconds, seen = whole_run()
    if code != 0:
        trials.fault(command, f"after all: ends with {code}: {said}")
    if ours(folder):
        trials.fault(command, f"after all: {ours(folder)}")
    if command != "blank":
        trials.expected[command in QUICK] = (seconds, seen)
    new = written(folder, writes)
    for name, now in became:
        became_of(trials, command, name, now, old, new)


def became_of(trials, command, name, now, old, new):
    """Whether the files are the old ones or the new ones; a fault where one is neither."""
    wrong = between(now, old, new)
    if wrong:
        trials.fault(command, f"{name}: neither old nor new: {wrong}")
    became = "neither" if wrong else "new" if now == new else "old" if now == old else "some new, some old"
    trials.counted(command, became)
    if became != "old":
        trials.say(f"    {command}, {name}: {became}")


def menu_trials(trials, ground, work, command, each):
    arguments, finds, writes = MENU[command]
    folder, profile = work / "at", work / "profile"
    given = {key: str(folder / value) if key in PATHS else value for key, value in arguments.items()}
    in_place = writes == ["job.ods"]

    def lay():
        shutil.rmtree(folder, ignore_errors=True)
        ground.laid(folder, finds)

    def carry_out(office):
        """The command on the job, stored where it changed it; seconds until the storing, and all."""
        document = office.open(folder / "job.ods")
        start = time.monotonic()
        Menu(office).give(document, command, **given)
        before = time.monotonic() - start
        if in_place:
            document.store()
        seconds = time.monotonic() - start
        document.close(True)
        return before, seconds

    profile.mkdir(parents=True, exist_ok=True)
    lay()
    old = written(folder, writes)
    became = []
    before, seconds = trials.expected.get("menu", (3, 6))
    for number in range(each):
        how = signal.SIGKILL if number % 2 == 0 else signal.SIGTERM
        # While it stores, and while it works.
        moment = trials.random.uniform(before if in_place and number % 3 else 0, seconds)
        office = Office(BUILD / "extension", profile=profile)
        name = f"{how.name} to the office at {moment:.2f} s"
        stopped = "after its end"
        try:
            try:
                document = office.open(folder / "job.ods")
            except Exception as broken:
                trials.fault("menu " + command, f"before {name}, after the last stop: {broken}")
                continue
            process = int(office.processes()[0])
            timer = threading.Timer(moment, lambda: os.kill(process, how))
            timer.start()
            try:
                Menu(office).give(document, command, **given)
                if in_place:
                    document.store()
            except Exception as broken:  # whatever the broken connection is told as
                stopped = f"{type(broken).__name__} {str(broken)[:60]}"
            timer.join()
            until(lambda: not office.processes(), 30)
        finally:
            office.end()
        if stopped.startswith("Refused") and "disposed" not in stopped and "bridge" not in stopped:
            trials.fault("menu " + command, f"{name}: {stopped}")
        trials.counted("menu " + command, "after its end" if stopped == "after its end" else f"{how.name} to the menu's office")
        trials.say(f"    menu {command}, {name}: {stopped}")
        try:
            became.append((name, written(folder, writes)))
        except (ValueError, zipfile.BadZipFile, xml.ParseError, subprocess.CalledProcessError) as damaged:
            trials.fault("menu " + command, f"{name}: not whole: {damaged!r}")
        ground.set_back(folder, finds, writes)
    office = Office(BUILD / "extension", profile=profile)
    try:
        trials.expected["menu"] = carry_out(office)
    except Exception as wrong:
        trials.fault("menu " + command, f"after all it says {wrong}")
        return
    finally:
        office.end()
    new = written(folder, writes)
    if ours(folder):
        trials.fault("menu " + command, f"after all: {ours(folder)}")
    for name, now in became:
        became_of(trials, "menu " + command, name, now, old, new)


def main():
    asked = argparse.ArgumentParser()
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--each", type=int, default=10, help="stops of each command of jobbook")
    asked.add_argument("--fewer-each", type=int, default=6, help="stops of those that take longest")
    asked.add_argument("--menu-each", type=int, default=3, help="stops of each command of the menu")
    asked.add_argument("--only", help="one command; of the menu, with 'menu ' before it")
    asked.add_argument("--part", choices=("jobbook", "menu"), help="one of the two alone")
    asked.add_argument("--report", default=str(BUILD / "kills.txt"))
    asked.add_argument("--results")
    asked = asked.parse_args()
    work = BUILD / "kills"
    work.mkdir(exist_ok=True)
    ground = Ground(work / "ground")
    with open(asked.report, "w", encoding="utf-8") as report:
        trials = Trials(asked.seed, report)
        for command in COMMANDS:
            if asked.only in (None, command) and asked.part != "menu":
                jobbook_trials(trials, ground, work / "jobbook", command, asked.each if command in QUICK else asked.fewer_each)
        for command in MENU:
            if asked.only in (None, "menu " + command) and asked.part != "jobbook":
                menu_trials(trials, ground, work / "menu", command, asked.menu_each)
        sums = {}
        for kinds in trials.count.values():
            for kind, count in kinds.items():
                sums[kind] = sums.get(kind, 0) + count
        trials.say(f"{len(trials.count)} commands: " + ", ".join(f"{kind}: {count}" for kind, count in sorted(sums.items())))
        trials.say(f"did not hold: {sum(map(len, trials.faults.values()))}")
    if asked.results:
        with open(asked.results, "w", encoding="utf-8") as file:
            file.write('<testsuite name="kills">\n')
            for command in {**trials.count, **trials.faults}:
                file.write(f'<testcase classname="kills" name={quoteattr(command)}>')
                for fault in trials.faults.get(command, ()):
                    file.write(f"<failure message={quoteattr(fault)}/>")
                file.write("</testcase>\n")
            file.write("</testsuite>\n")
    return 1 if trials.faults else 0


if __name__ == "__main__":
    sys.exit(main())
