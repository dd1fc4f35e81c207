#!/usr/bin/env python3
"""examples.py COMPILER INCLUDE: every example in the public headers compiles as it is written, with its header alone.

An example is what stands indented in a comment, `//     Length bore = ...;`. Each becomes the body of a function of its
own, in a file that includes the header that it stands in. A header without an example is named too.
"""

import pathlib
import re
import subprocess
import sys
import tempfile

compiler, include = sys.argv[1], pathlib.Path(sys.argv[2])
example_line = re.compile(r"^ *// {5,}(.*)$")
# What they leave out is what a reader knows: the namespace, and a result that is only looked at.
start = '#include "{header}"\nusing namespace trenchbook;\n'


def examples(text):
    """Runs of indented comment lines that hold code: text and number of the first line."""
    found, lines, first = [], [], 0
    for at, line in enumerate(text.split("\n"), 1):
        match = example_line.match(line)
        if match:
            if not lines:
                first = at
            lines.append(match.group(1))
        elif lines:
            found.append((first, lines))
            lines = []
    return [(first, lines) for first, lines in found if any(re.search(r"[;{]\s*(//.*)?$", line) for line in lines)]


def main():
    failed = []
    with tempfile.TemporaryDirectory() as folder:
        for path in sorted(include.rglob("*.h")):
            header = path.relative_to(include)
            found = examples(path.read_text())
            if not found:
                failed.append(f"{header}: no example")
                continue
            body = start.format(header=header)
            for count, (first, lines) in enumerate(found):
                code = "\n".join(lines)
                body += f'void example{count}() {{\n#line {first} "{path}"\n{code}\n}}\n'
            source = pathlib.Path(folder) / (str(header).replace("/", "_") + ".cpp")
            source.write_text(body)
            run = subprocess.run([compiler, "-std=c++20", "-fsyntax-only", "-w", f"-I{include}", source],
                                 capture_output=True, text=True)
            if run.returncode:
                failed.append("\n".join(line for line in run.stderr.splitlines() if "error" in line))
    print(*failed, sep="\n")
    print(f"{len(failed)} headers fail")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
