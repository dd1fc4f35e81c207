"""Every function of the catalog through Calc: its example, and each argument spoilt in turn."""

import pytest

from built import functions
from calc import BAD_ARGUMENT, Error, arguments_of, call, why

FUNCTIONS = functions()


def by_name(function):
    return function["name"]


@pytest.mark.parametrize("function", FUNCTIONS, ids=by_name)
def test_example_gives_what_is_promised(sheet, function):
    gives = function["gives"]
    if gives in ("number", "words"):
        shown = sheet.type("A1", "=" + function["example"])
        assert isinstance(shown, float if gives == "number" else str), (function["example"], shown)
        assert not isinstance(shown, Error), function["example"]
    else:
        rows = sheet.array("A1:C4", "=" + function["example"])
        first = rows[0][0]
        assert isinstance(first, str if gives == "texts" else (float, str)), (function["example"], rows)
        assert not isinstance(first, Error), (function["example"], rows)


def spoilt(function):
    """(argument, arguments with that one spoilt): text for a number, a name nobody knows for a name."""
    given = arguments_of(function["example"])
    for at, argument in enumerate(function["arguments"]):
        if argument.get("variadic") or argument.get("column") or argument["kind"] == "table":
            continue
        if argument["kind"] == "words" and argument["name"] not in ("units", "language"):
            continue
        bad = given + ['""'] * (at + 1 - len(given))
        bad[at] = '"no such thing"'
        yield argument["name"], bad


SPOILT = [(function, argument, bad) for function in FUNCTIONS for argument, bad in spoilt(function)]


@pytest.mark.parametrize("name", [by_name(function) for function in FUNCTIONS])
def test_bad_argument_is_an_error_that_why_explains(sheet, name):
    cases = [(argument, bad) for function, argument, bad in SPOILT if function["name"] == name]
    if not cases:
        # Names and ranges only: their own tests spoil them. Too many arguments is always an error.
        function = next(function for function in FUNCTIONS if function["name"] == name)
        cases = []
        many = arguments_of(function["example"]) + ['"x"'] * 20
        if not function["arguments"] or not function["arguments"][-1].get("variadic"):
            assert isinstance(sheet.formula(call(name, many)), Error), name
        else:
            assert "no such thing" in sheet.formula(call(name, ['"no such thing"']))
    for argument, bad in cases:
        shown = sheet.formula(call(name, bad))
        assert shown == Error(BAD_ARGUMENT), (call(name, bad), shown)
        reason = sheet.formula(why(name, bad))
        assert isinstance(reason, str) and argument in reason and '"no such thing"' in reason, (call(name, bad), reason)
        spanish = sheet.formula(why(name, bad, "es"))
        assert spanish != reason and argument in spanish, (call(name, bad), spanish)


def beyond(function):
    """(argument, arguments with that one just outside the limits that the function reference tells)."""
    given = arguments_of(function["example"])
    for at, argument in enumerate(function["arguments"]):
        if argument.get("column"):
            continue
        for value in argument.get("refused", ()):
            bad = given + [""] * (at + 1 - len(given))
            bad[at] = str(value)
            yield argument["name"], bad


LIMITED = [function for function in FUNCTIONS if any(True for _ in beyond(function))]


@pytest.mark.parametrize("function", LIMITED, ids=by_name)
def test_limits_that_are_told_are_kept(sheet, function):
    for argument, bad in beyond(function):
        shown = sheet.formula(call(function["name"], bad))
        assert shown == Error(BAD_ARGUMENT), (call(function["name"], bad), shown)
        reason = sheet.formula(why(function["name"], bad))
        assert isinstance(reason, str) and argument in reason, (call(function["name"], bad), reason)


@pytest.mark.parametrize("function", FUNCTIONS, ids=by_name)
def test_known_to_calc_with_help_in_both_languages(office, function):
    described = None
    for place in range(descriptions(office).getCount()):
        entry = {item.Name: item.Value for item in descriptions(office).getByIndex(place)}
        if entry["Name"] == function["name"]:
            described = entry
            break
    assert described, f"{function['name']} is not in Calc's list of functions"
    assert described["Description"].startswith(function["says"]["en"])
    assert [argument.Name for argument in described["Arguments"] or ()] == [item["name"] for item in function["arguments"]]
    assert all(argument.Description for argument in described["Arguments"] or ())


_descriptions = {}


def descriptions(office):
    if office not in _descriptions:
        _descriptions[office] = office.service("com.sun.star.sheet.FunctionDescriptions")
    return _descriptions[office]
