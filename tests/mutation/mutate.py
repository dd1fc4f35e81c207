#!/usr/bin/env python3
"""Small wrong changes to the sources, one at a time: do the tests notice?

    python3 tests/mutation/mutate.py                     80 changes, drawn by seed 1 from all that can be made
    python3 tests/mutation/mutate.py --only engine/src/pipe --count 200
    python3 tests/mutation/mutate.py --list              what could be changed, nothing is built

Works on a copy of the tree in build/mutation, where each change costs one object file and a link. A change is caught
when a test fails or runs out of time. One that does not compile is not counted, and the next is drawn for it; nor is
one that cannot be noticed: those are listed by hand in equivalent.txt, each with its reason. Ends with 1 when fewer
than 95 % are caught.
"""

import argparse
import collections
import dataclasses
import itertools
import pathlib
import random
import re
import resource
import shutil
import subprocess
import sys
import time

root = pathlib.Path(__file__).resolve().parents[2]
least_caught = 0.95

rule_key = re.compile(r'"([a-z]+(?:\.[a-z0-9]+)+)"')
number = re.compile(r"(?<![\w.\"'])(\d+\.?\d*(?:e-?\d+)?)(?![\w.\"'])")
string = re.compile(r'"(?:[^"\\]|\\.)*"')
# A unit and its neighbour, among the makers and readers of quantities and among the catalog's measures.
neighbours = {
    "feet(": "inches(", "inches(": "feet(", "gpm(": "cfs(", "minutes(": "hours(", "hours(": "minutes(",
    "percent(": "fraction(", "metres(": "feet(", "millimetres(": "inches(", "cubicFeet(": "cubicYards(",
    "Measure::Feet,": "Measure::Inches,", "Measure::Inches,": "Measure::Feet,",
    "Measure::Gpm,": "Measure::CubicFeet,", "Measure::Minutes,": "Measure::Hours,",
    "Measure::Hours,": "Measure::Minutes,", "Measure::CubicYards": "Measure::CubicFeet",
    "Unit::Feet": "Unit::Inches", "Unit::Inches": "Unit::Feet",
}
swaps = {
    "comparison": {" < ": " <= ", " <= ": " < ", " > ": " >= ", " >= ": " > "},
    "equality": {" == ": " != ", " != ": " == "},
    "arithmetic": {" + ": " - ", " - ": " + ", " * ": " / ", " / ": " * "},
    "extreme": {"std::min(": "std::max(", "std::max(": "std::min(", "min_element(": "max_element("},
    "logic": {" && ": " || ", " || ": " && "},
    "unit": neighbours,
}


@dataclasses.dataclass(frozen=True)
class Change:
    kind: str
    path: str
    line: int  # from 0
    before: str
    after: str

    def key(self):
        return self.path, self.before.strip(), self.after.strip()

    def __str__(self):
        return f"{self.path}:{self.line + 1} ({self.kind})\n  - {self.before.strip()}\n  + {self.after.strip()}"


def sources(only):
    listed = subprocess.run(["git", "ls-files", "engine/src", "addin/catalog"], cwd=root, check=True,
                            capture_output=True, text=True).stdout.split()
    return [path for path in listed if path.endswith(".cpp") and path.startswith(only)]


def replaced(line, start, end, text):
    return line[:start] + text + line[end:]


def nudged(text):
    if "." in text or "e" in text:
        return repr(float(text) * 1.02)
    return str(int(text) + 1)


def inside(spans, place):
    return any(start <= place < end for start, end in spans)


def code_part(line):
    """The line without its comment."""
    for match in re.finditer("//", line):
        if not inside([m.span() for m in string.finditer(line)], match.start()):
            return line[: match.start()]
    return line


def changes_of_line(line, next_key):
    """Pairs of kind and changed line."""
    code = code_part(line)
    stripped = code.strip()
    if not stripped or stripped.startswith(("#", "//", "*", "static_assert", "template", "using", "case ", "namespace")):
        return
    texts = [m.span() for m in string.finditer(code)]
    for kind, pairs in swaps.items():
        for old, new in pairs.items():
            start = code.find(old)
            while start >= 0:
                if not inside(texts, start) and "operator" not in code and "template" not in code:
                    yield kind, replaced(line, start, start + len(old), new)
                start = code.find(old, start + 1)
    for match in number.finditer(code):
        if inside(texts, match.start()) or re.search(r"(std::size_t|int|<)\s*$", code[: match.start()]):
            continue
        if re.search(r"e-?\d+$", match.group()) and float(match.group()) < 1e-4:
            continue  # tolerances of a search
        kind = "table cell" if re.match(r"^\{", stripped) else "constant"
        yield kind, replaced(line, *match.span(), nudged(match.group()))
    for match in rule_key.finditer(code):
        if match.group(1) in next_key and not stripped.startswith("{\"" + match.group(1)):
            yield "rule key", replaced(line, *match.span(1), next_key[match.group(1)])
    error = "require" in code or "refuse(" in code or "Error(" in code or "Error::Kind" in code
    for start, end in texts:
        if error and end - start > 4:
            yield "error text", replaced(line, end - 2, end - 2, "x")
    for match in re.finditer(r"\b(?:later|number|quantity<\w+>|text)\(\d+, (?:\w+::\w+\()?([\d.]+)\)", code):
        yield "default", replaced(line, *match.span(1), nudged(match.group(1)))


def all_changes(only):
    keys = re.findall(r'^\s*\{"([a-z0-9.]+)",', (root / "engine/src/rules/rules.cpp").read_text(), re.M)
    next_key = {key: other for key, other in zip(keys, keys[1:] + keys[:1])}
    found = []
    for path in sources(only):
        commented = False
        for at, line in enumerate((root / path).read_text().splitlines()):
            if commented or line.lstrip().startswith("/*"):
                commented = "*/" not in line
                continue
            for kind, after in changes_of_line(line, next_key):
                if after != line:
                    found.append(Change(kind, path, at, line, after))
    return list(dict.fromkeys(found))


def drawn(changes, seed):
    """All of them in a drawn order, one kind after the other, so that rare kinds have their turn."""
    shuffled = sorted(changes, key=lambda change: (change.path, change.line, change.kind, change.after))
    random.Random(seed).shuffle(shuffled)
    by_kind = collections.defaultdict(collections.deque)
    for change in shuffled:
        by_kind[change.kind].append(change)
    while any(by_kind.values()):
        for kind in sorted(by_kind):
            if by_kind[kind]:
                yield by_kind[kind].popleft()


def equivalent():
    """Changes that cannot be noticed: blocks of path, before, after and reason, a blank line between them."""
    text = (pathlib.Path(__file__).parent / "equivalent.txt").read_text()
    known = {}
    for block in re.split(r"\n\s*\n", text):
        lines = [line for line in block.splitlines() if line and not line.startswith("#")]
        if lines:
            path, before, after, reason = lines[0], lines[1][2:], lines[2][2:], " ".join(lines[3:]).strip()
            assert reason, f"no reason: {block}"
            known[path, before.strip(), after.strip()] = reason
    return known


class Tree:
    """A copy of the tree with its own build."""

    def __init__(self, folder, jobs):
        self.folder, self.build, self.jobs = folder / "tree", folder / "build", jobs
        self.folder.mkdir(parents=True, exist_ok=True)
        tracked = subprocess.run(["git", "ls-files", "-z"], cwd=root, check=True, capture_output=True).stdout
        for path in filter(None, tracked.decode().split("\0")):
            here, there = root / path, self.folder / path
            if here.is_file() and not (there.exists() and there.read_bytes() == here.read_bytes()):
                there.parent.mkdir(parents=True, exist_ok=True)
                shutil.copy(here, there)
        subprocess.run(["cmake", "-S", self.folder, "-B", self.build, "-G", "Ninja", "-D", "TRENCHBOOK_WERROR=ON"],
                       check=True, stdout=subprocess.DEVNULL)
        if self.made(3600) != 0:
            sys.exit("the tree does not build as it is")

    def made(self, limit):
        try:
            return subprocess.run(["cmake", "--build", self.build, "-j", str(self.jobs), "--target", "engine_tests",
                                   "catalog_tests"], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                                  timeout=limit).returncode
        except subprocess.TimeoutExpired:
            return -1

    def passes(self, program, chosen, limit):
        """Whether the tests chosen by a filter pass within the limit of seconds."""
        def bounded():
            resource.setrlimit(resource.RLIMIT_AS, (6 << 30, 6 << 30))
        try:
            run = subprocess.run([self.build / "tests" / program, f"--gtest_filter={chosen}", "--gtest_fail_fast",
                                  "--gtest_brief=1"], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, timeout=limit,
                                 preexec_fn=bounded, cwd=self.build)
        except subprocess.TimeoutExpired:
            return False
        return run.returncode == 0

    def write(self, path, text):
        (self.folder / path).write_text(text)


def suites(stem):
    """The test suites of the file that goes with a source."""
    path = root / "tests" / "engine" / f"{stem}_test.cpp"
    if not path.exists():
        return []
    return sorted(set(re.findall(r"^(?:TEST|TEST_F|RC_GTEST_PROP)\((\w+),", path.read_text(), re.M)))


def caught_by(tree, change):
    """What notices the change: the tests' name, "compiler" where it is no program, or nothing."""
    original = (root / change.path).read_text()
    lines = original.split("\n")
    assert lines[change.line] == change.before
    lines[change.line] = change.after
    tree.write(change.path, "\n".join(lines))
    try:
        if tree.made(900) != 0:
            return "compiler"
        engine = change.path.startswith("engine/")
        own = suites(pathlib.Path(change.path).stem) if engine else []
        if own and not tree.passes("engine_tests", ":".join(f"{suite}.*" for suite in own), 300):
            return "its own tests"
        if engine and not tree.passes("engine_tests", "-GradeMilp.*", 600):
            return "engine tests"
        if not tree.passes("catalog_tests", "*", 600):
            return "catalog tests"
        return ""
    finally:
        tree.write(change.path, original)


def main():
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--count", type=int, default=80)
    options.add_argument("--seed", type=int, default=1)
    options.add_argument("--only", default="", help="beginning of the paths to change")
    options.add_argument("--jobs", type=int, default=2)
    options.add_argument("--list", action="store_true")
    asked = options.parse_args()

    changes = all_changes(asked.only)
    chosen = drawn(changes, asked.seed)
    kinds = collections.Counter(change.kind for change in changes)
    print(f"{len(changes)} changes can be made: " + ", ".join(f"{n} {kind}" for kind, n in sorted(kinds.items())))
    if asked.list:
        print(*itertools.islice(chosen, asked.count), sep="\n")
        return 0
    known = equivalent()
    tree = Tree(root / "build" / "mutation", asked.jobs)
    caught, survived, unnoticed, broken = 0, [], 0, 0
    for change in chosen:
        counted = caught + len(survived)
        if counted == asked.count:
            break
        if change.key() in known:
            unnoticed += 1
            continue
        start = time.monotonic()
        by = caught_by(tree, change)
        if by == "compiler":
            broken += 1
            continue
        caught += bool(by)
        if not by:
            survived.append(change)
        print(f"{counted + 1}/{asked.count} {'caught by ' + by if by else 'SURVIVED'}, "
              f"{time.monotonic() - start:.0f} s: {change}", flush=True)
    counted = caught + len(survived)
    print(f"{caught} of {counted} caught; {unnoticed} cannot be noticed, {broken} do not compile")
    for change in survived:
        print(f"survived: {change}")
    return 0 if counted and caught >= least_caught * counted else 1


if __name__ == "__main__":
    sys.exit(main())
