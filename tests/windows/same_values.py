"""Two files of tests/windows/values.cpp, of two systems: texts alike, numbers within 1e-12 relative.

    same_values.py ONE OTHER RESULT.xml
"""

import sys
import xml.etree.ElementTree as xml

ALLOWED = 1e-12

# What may differ more, and why.
NAMED = {
    "CHANNEL.CAPACITY": 1e-9,  # integrates a water surface to 1e-10 in steps that it chooses as it goes: the last digit
    "CHANNEL.DEPTH": 1e-9,  # of the system's powers and logarithms decides where a step ends
}


def same(one, other, allowed):
    if one == other:
        return True
    try:
        a, b = float(one), float(other)
    except ValueError:
        return False
    return abs(a - b) <= allowed * max(abs(a), abs(b))


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
        allowed = NAMED.get(ours[0], ALLOWED)
        if len(ours) != len(theirs) or not all(same(a, b, allowed) for a, b in zip(ours, theirs)):
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
