#!/usr/bin/env python3
"""Small wrong changes to the sources, one at a time: do the tests notice?

    python3 tests/mutation/mutate.py                     80 changes, drawn by seed 1 from all that can be made
    python3 tests/mutation/mutate.py --only engine/src/pipe --count 200
    python3 tests/mutation/mutate.py --survivors         once more those that the last run did not catch
    python3 tests/mutation/mutate.py --list              what could be changed, nothing is built

Needs engine_tests and catalog_tests built as the sources are. The sources stay as they are: each change is made in a
copy under build/mutation, compiled without optimization and linked to a library of its own, which the test programs
load in place of the built one. A change is caught when a test fails or runs out of time. One that does not compile is
not counted, and the next is drawn for it; nor is one that cannot be noticed: those are listed by hand in
equivalent.txt, each with its reason. Writes build/mutation/report.txt, or again.txt for the survivors, and ends with 1 when fewer than 95 % are caught.
"""

import argparse
import collections
import concurrent.futures
import dataclasses
import itertools
import json
import os
import pathlib
import random
import re
import resource
import shutil
import subprocess
import sys
import tempfile
import time

root = pathlib.Path(__file__).resolve().parents[2]
least_caught = 0.95
seconds_a_run = 60
# Tests of seconds, run when all others have passed and the change is where they look; and one of minutes, never run here.
never = "GradeMilp.*"
slow = {
    "engine/src/core": ["Tape.AnyTextIsReadOrRefused"],
    "engine/src/water": ["Channel.FineIndependentIntegration", "Channel.Laws", "Channel.RobustEverywhere"],
    "engine/src/lines": ["ReachWater.AgreesWithAFineStepIntegration"],
    "engine/src/takeoff": [
        "Sticks.AreAsFewAsTheIntegerProgrammes", "Sticks.LieBetweenTheMaterialAndFirstFitDecreasing",
    ],
    "engine/src/grade": [
        "GradeBrute.*", "GradeReason.WhatIsToSpareCanBeUsedUpAndNoMore", "GradeReason.EachCureIsEnoughAndLessIsNot",
        "GradeReason.TheSumAlongTheWayExceedsWhatThereIs",
    ],
}

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
    # A number in a table may be found as a constant, too: one change all the same.
    return list({(change.path, change.line, change.after): change for change in found}.values())


def drawn(changes, seed):
    """All of them in a drawn order, one kind after the other, so that rare kinds have their turn.

    Each has its own lot, so that the order of the others stays when a line comes in.
    """
    by_kind = collections.defaultdict(collections.deque)
    for change in sorted(changes, key=lambda change: (random.Random(f"{seed} {change.key()}").random(), change.line)):
        by_kind[change.kind].append(change)
    while any(by_kind.values()):
        for kind in sorted(by_kind):
            if by_kind[kind]:
                yield by_kind[kind].popleft()


def blocks(text):
    """The fourth line of each block of path, before, after and reason or verdict; a blank line between blocks."""
    known = {}
    for block in re.split(r"\n\s*\n", text):
        lines = [line for line in block.splitlines() if line and not line.startswith("#")]
        if lines:
            path, before, after, reason = lines[0], lines[1][2:], lines[2][2:], " ".join(lines[3:]).strip()
            assert reason, f"no reason: {block}"
            known[path, before.strip(), after.strip()] = reason
    return known


class Bench:
    """What a change is tried with: the built test programs, and beside them one changed object and its library."""

    def __init__(self, build, scratch, without, paths):
        self.build, self.scratch = build, scratch
        self.sources = {path: (root / path).read_text() for path in paths}
        self.most = "*-" + ":".join(without)
        self.quick = "*-" + ":".join([never, *itertools.chain(*slow.values()), *without])
        listed = json.loads((build / "compile_commands.json").read_text())
        self.compiling = {str(pathlib.Path(entry["file"]).relative_to(root)): entry["command"] for entry in listed
                          if pathlib.Path(entry["file"]).is_relative_to(root)}
        self.linking = {name: self.link_line(name) for name in ("trenchbook_engine", "catalog_tests")}
        self.library = re.search(r"-soname,(\S+)", self.linking["trenchbook_engine"]).group(1)
        # Copies, so that the build folder may be built again meanwhile.
        shutil.rmtree(scratch / "programs", ignore_errors=True)
        (scratch / "programs").mkdir(parents=True)
        for program in ("engine_tests", "catalog_tests"):
            shutil.copy(build / "tests" / program, scratch / "programs")
        shutil.copy(build / "engine" / self.library, scratch / "programs")
        programs = scratch / "programs"
        for program in ("engine_tests", "catalog_tests"):
            if not self.passes(programs, programs / program, self.quick):
                sys.exit(f"{program} fails before anything is changed")

    def link_line(self, target):
        lines = subprocess.run(["ninja", "-C", self.build, "-t", "commands", target], check=True, capture_output=True,
                               text=True).stdout.splitlines()
        return [line for line in lines if " -c " not in line and " -o " in line][-1]

    def passes(self, libraries, program, chosen):
        """Whether the tests chosen by a filter pass within the limit of seconds, which are the processor's own."""
        def bounded():
            resource.setrlimit(resource.RLIMIT_AS, (6 << 30, 6 << 30))
            resource.setrlimit(resource.RLIMIT_CPU, (seconds_a_run, seconds_a_run))
        environment = dict(os.environ, LD_LIBRARY_PATH=str(libraries), RC_PARAMS="seed=1")
        environment.pop("TRENCHBOOK_CHECKS", None)
        try:
            return subprocess.run([program, f"--gtest_filter={chosen}", "--gtest_fail_fast", "--gtest_brief=1"],
                                  stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, env=environment,
                                  timeout=20 * seconds_a_run, preexec_fn=bounded, cwd=self.scratch).returncode == 0
        except subprocess.TimeoutExpired:
            return False

    def built(self, change, folder):
        """Compiles the changed source without optimization and links it; says whether it is a program at all."""
        lines = self.sources[change.path].split("\n")
        assert lines[change.line] == change.before
        lines[change.line] = change.after
        source = folder / pathlib.Path(change.path).name
        source.write_text("\n".join(lines))
        engine = change.path.startswith("engine/")
        compiling = self.compiling[change.path]
        made = re.search(r" -o (\S+)", compiling).group(1)
        changed = folder / "changed.o"
        compiling = compiling.replace(f" -o {made} ", f" -o {changed} ").replace(
            f" -c {root / change.path}", f" -w -O0 -iquote {(root / change.path).parent} -c {source}")
        if engine:
            linking = self.linking["trenchbook_engine"].replace(f" {made} ", f" {changed} ")
            result = folder / self.library
        else:
            # What the object defines is not taken from the archive any more.
            linking = re.sub(r" (\S+catalog\.a)", rf" {changed} \1", self.linking["catalog_tests"], count=1)
            result = folder / "catalog_tests"
        linking = re.sub(r" -o \S+", f" -o {result}", linking)
        assert str(changed) in linking and str(source) in compiling
        # Each starts in the build folder, like there.
        return all(subprocess.run(command, shell=True, cwd=self.build, stdout=subprocess.DEVNULL,
                                  stderr=subprocess.DEVNULL).returncode == 0 for command in (compiling, linking))

    def caught_by(self, change):
        """What notices the change: the tests' name, "compiler" where it is no program, or nothing."""
        with tempfile.TemporaryDirectory(dir=self.scratch) as name:
            folder = pathlib.Path(name)
            if not self.built(change, folder):
                return "compiler"
            programs = self.scratch / "programs"
            if change.path.startswith("addin/"):
                return "" if self.passes(programs, folder / "catalog_tests", self.most) else "catalog tests"
            own = ":".join(f"{suite}.*" for suite in suites(pathlib.Path(change.path).stem))
            tries = [("its own tests", "engine_tests", own + self.quick[1:])] if own else []
            tries += [("engine tests", "engine_tests", self.quick), ("catalog tests", "catalog_tests", self.most)]
            tries += [("slow tests", "engine_tests", ":".join(tests)) for folder, tests in slow.items()
                      if change.path.startswith(folder)]
            for what, program, chosen in tries:
                if not self.passes(folder, programs / program, chosen):
                    return what
            return ""


def suites(stem):
    """The test suites of the file that goes with a source."""
    path = root / "tests" / "engine" / f"{stem}_test.cpp"
    if not path.exists():
        return []
    return sorted(set(re.findall(r"^(?:TEST|TEST_F|RC_GTEST_PROP)\((\w+),", path.read_text(), re.M)))


def main():
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--count", type=int, default=80)
    options.add_argument("--seed", type=int, default=1)
    options.add_argument("--only", default="", help="beginning of the paths to change")
    options.add_argument("--jobs", type=int, default=2, help="changes tried at once")
    options.add_argument("--build", type=pathlib.Path, default=root / "build")
    options.add_argument("--without", nargs="*", default=[], help="tests that do not count")
    options.add_argument("--survivors", action="store_true", help="only those that survived by the last report")
    options.add_argument("--list", action="store_true")
    asked = options.parse_args()

    changes = all_changes(asked.only)
    scratch = asked.build.resolve() / "mutation"
    report = scratch / "report.txt"
    if asked.survivors:
        last = blocks(report.read_text())
        changes = [change for change in changes if last.get(change.key(), "").startswith("SURVIVED")]
        report = scratch / "again.txt"
    kinds = collections.Counter(change.kind for change in changes)
    print(f"{len(changes)} changes can be made: " + ", ".join(f"{n} {kind}" for kind, n in sorted(kinds.items())))
    known = blocks((pathlib.Path(__file__).parent / "equivalent.txt").read_text())
    chosen = drawn(changes, asked.seed)
    if asked.list:
        print(*itertools.islice(chosen, asked.count), sep="\n")
        return 0

    bench = Bench(asked.build.resolve(), scratch, asked.without, {change.path for change in changes})
    caught, counted, unnoticed, broken = 0, 0, 0, 0
    found = []
    with concurrent.futures.ThreadPoolExecutor(asked.jobs) as pool:
        while drawn_now := list(itertools.islice(chosen, asked.count - counted)):
            tried = [change for change in drawn_now if change.key() not in known]
            unnoticed += len(drawn_now) - len(tried)
            for change, by in zip(tried, pool.map(bench.caught_by, tried)):
                if by == "compiler":
                    broken += 1
                    continue
                counted += 1
                caught += bool(by)
                verdict = f"caught by {by}" if by else "SURVIVED"
                found.append(f"{change.path}\n- {change.before.strip()}\n+ {change.after.strip()}\n"
                             f"{verdict}: {change.kind}, line {change.line + 1}\n")
                print(f"{counted}/{asked.count} {verdict}: {change}", flush=True)
                figures = (f"{caught} of {counted} caught; {unnoticed} drawn that cannot be noticed, "
                           f"{broken} that do not compile")
                report.write_text(f"# {time.strftime('%Y-%m-%d')}, seed {asked.seed}: {figures}\n\n" +
                                  "\n".join(found))
    print(figures if counted else "nothing to change")
    return 0 if counted and caught >= least_caught * counted else 1


if __name__ == "__main__":
    sys.exit(main())
