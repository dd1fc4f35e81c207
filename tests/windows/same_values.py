"""Two files of tests/windows/values.cpp, of two systems: texts alike, numbers within 1e-12 relative.

    same_values.py ONE OTHER RESULT.xml
"""

import re
import sys
import xml.etree.ElementTree as xml

ALLOWED = 1e-12

# What may differ more, relative and absolute, and why.
NAMED = {
    # Both integrate a water surface to 1e-10 in steps that they choose as they go: the last digit of the system's powers
    # and logarithms decides where a step ends.
    "CHANNEL.CAPACITY": (1e-9, 0.0),
    "CHANNEL.DEPTH": (1e-9, 0.0),
    # Places are adjusted until none moves by more than 1e-9 m, and what a tape is off is the difference of two lengths:
    # of places in feet or meters the ninth decimal is open, whatever is left after subtracting.
    "LAYOUT.NODES": (ALLOWED, 4e-9),
    "LAYOUT.NODES.TEXT": (ALLOWED, 4e-9),
    "LAYOUT.RUNS": (ALLOWED, 4e-9),
    "LAYOUT.DRAWING": (ALLOWED, 4e-9),  # millimeters on paper
}
# A corner's tape 1.9 or 17.3 times as long: the adjusted tapes of a node lie in one line, and its place along the other
# is known to some 50,000 to 100,000 ft only (which the answer says, and asks for another tape). Where on that line the
# adjustment stops hangs on the last digit. The sentences must be the same but for their numbers.
FLAT = {(name, how) for name in ("LAYOUT.NODES", "LAYOUT.NODES.TEXT", "LAYOUT.RUNS", "LAYOUT.DRAWING")
        for how in ("0 by 1.8999999999999999", "0 by 17.300000000000001")}
OPEN = (1e-3, 4e-9)

NUMBER = re.compile(r"-?\d+(?:\.\d+)?(?:e[-+]?\d+)?")


def allowed(line):
    return OPEN if tuple(line[:2]) in FLAT else NAMED.get(line[0], (ALLOWED, 0.0))


def same(one, other, within):
    """The same words between the same numbers, numbers within what is allowed."""
    if one == other:
        return True
    if NUMBER.split(one) != NUMBER.split(other):
        return False
    relative, absolute = within
    return all(
        abs(a - b) <= absolute + relative * max(abs(a), abs(b))
        for a, b in zip(map(float, NUMBER.findall(one)), map(float, NUMBER.findall(other)))
    )


def lines(path):
    read = [line.rstrip("\r\n").split("\t") for line in open(path, encoding="utf-8", newline="\n")]
    assert len(read) > 3000, f"{path}: every function with numbers around its example"
    return read


def main(one, other, result):
    first, second = lines(one), lines(other)
    wrong = [] if len(first) == len(second) else [f"{len(first)} and {len(second)} lines"]
    exact = 0
    for ours, theirs in zip(first, second):
        exact += ours == theirs
        within = allowed(ours)
        if len(ours) != len(theirs) or not all(same(a, b, within) for a, b in zip(ours, theirs)):
            wrong.append("\t".join(ours) + "\n    " + "\t".join(theirs))
    suite = xml.Element("testsuite", name="values")
    case = xml.SubElement(suite, "testcase", classname="values", name="as on this machine")
    if wrong:
        xml.SubElement(case, "failure", message=f"{len(wrong)} lines differ").text = "\n".join(wrong)
    xml.ElementTree(suite).write(result)
    print(f"{len(first)} answers compared, {exact} to the last digit, {len(wrong)} differ")
    print("\n".join(wrong[:20]))
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
