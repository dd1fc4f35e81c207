"""Every function of the catalog through Calc: its example, and each argument spoilt in turn."""

import pytest

from built import functions
from calc import BAD_ARGUMENT, Error, arguments_of, call, why
from office import properties

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
    function = next(function for function in FUNCTIONS if function["name"] == name)
    cases = [(argument, bad) for one, argument, bad in SPOILT if one is function]
    if not cases:
        # Names and ranges only: their own tests spoil them. Too many arguments is always an error.
        many = arguments_of(function["example"]) + ['"x"'] * 20
        if not function["arguments"] or not function["arguments"][-1].get("variadic"):
            assert isinstance(sheet.formula(call(name, many)), Error), name
        else:
            assert "no such thing" in sheet.formula(call(name, ['"no such thing"']))
    for argument, bad in cases:
        shown = sheet.formula(call(name, bad))
        assert shown == Error(BAD_ARGUMENT), (call(name, bad), shown)
        reason = sheet.formula(why(function, bad))
        assert isinstance(reason, str) and argument in reason and '"no such thing"' in reason, (call(name, bad), reason)
        if argument == "language":  # the one that is wrong says in which language it is answered
            continue
        spanish = sheet.formula(why(function, bad, "es"))
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
        reason = sheet.formula(why(function, bad))
        assert isinstance(reason, str) and argument in reason, (call(function["name"], bad), reason)


# Calc says "optional" of every argument: the words must not leave it at that.
WORDS = {"en": ("Required: ", "Left out: ", "May be left out", "Example: ="),
         "es": ("Obligatorio: ", "Si se omite: ", "Puede omitirse", "Ejemplo: =")}


def helps(function, language, description, arguments):
    """`arguments`: (name, text) in the function's order."""
    required, fallback, may, example = WORDS[language]
    assert description.startswith(function["says"][language])
    assert description.endswith(example + function["example"])
    assert [name for name, _ in arguments] == [item["name"] for item in function["arguments"]]
    for item, (name, text) in zip(function["arguments"], arguments):
        left_out = fallback in text or may in text
        assert left_out == item.get("optional", False) and text.startswith(required) != left_out, (name, text)
        assert len(text) > len(required) + 3, (name, text)


@pytest.mark.parametrize("function", FUNCTIONS, ids=by_name)
def test_known_to_calc_with_help(office, function):
    found = office.service("com.sun.star.sheet.FunctionDescriptions").getByName(function["name"])
    described = {item.Name: item.Value for item in found}
    assert described["Name"] == function["name"]
    helps(function, "en", described["Description"],
          [(argument.Name, argument.Description) for argument in described["Arguments"] or ()])


@pytest.fixture(scope="module")
def spanish(office):
    """What the office's settings hold for a Spanish Calc."""
    settings = office.service("com.sun.star.configuration.ConfigurationProvider")
    return settings.createInstanceWithArguments(
        "com.sun.star.configuration.ConfigurationAccess",
        properties(nodepath="/org.openoffice.Office.CalcAddIns/AddInInfo/trenchbook.Functions/AddInFunctions",
                   Locale="es"))


@pytest.mark.parametrize("function", FUNCTIONS, ids=by_name)
def test_help_in_spanish(spanish, function):
    described = spanish.getByName(function["method"])
    held = described.getByName("Parameters")
    shown = {held.getByName(name).DisplayName: held.getByName(name).Description for name in held.getElementNames()}
    names = [item["name"] for item in function["arguments"]]
    assert set(shown) == set(names)
    helps(function, "es", described.Description, [(name, shown[name]) for name in names])
