"""What Calc does with arguments and answers that we rely on or guard against: a newer office that changes a rule is
noticed here."""

import pytest

from calc import BAD_ARGUMENT, NOT_ONE_VALUE, TOO_FEW_OR_MANY, Error

STORAGE = "PIT.STORAGE"  # length ft; width; rock depth; [voids=0.4]; [units]


def test_text_in_place_of_a_number_reaches_us(sheet):
    assert sheet.formula('PIT.STORAGE("abc";3;2)') == Error(BAD_ARGUMENT)
    assert sheet.formula('TRENCHBOOK.WHY("PIT.STORAGE";"abc";3;2)').startswith('length is "abc"')


def test_blank_cell_arrives_as_zero_and_is_refused_where_zero_makes_no_sense(sheet):
    assert sheet.type("B1", "=PIT.STORAGE(A1;3;2)") == Error(BAD_ARGUMENT)
    assert sheet.type("B2", '=TRENCHBOOK.WHY("PIT.STORAGE";A1;3;2)') == "length is 0; allowed: above 0."


def test_error_in_a_feeding_cell_passes_through(sheet):
    sheet.type("A1", "=1/0")
    assert sheet.type("B1", "=PIT.STORAGE(A1;3;2)") == sheet.shows("A1")


def test_optional_argument_left_out_in_the_middle(sheet):
    assert sheet.formula('PIT.STORAGE(10;3;2;;"US")') == pytest.approx(24)
    assert sheet.formula('PIT.STORAGE(10;3;2;"";"US")') == pytest.approx(24)


def test_required_argument_left_out(sheet):
    assert sheet.formula("PIT.STORAGE(;3;2)") == Error(BAD_ARGUMENT)
    assert "length is blank" in sheet.formula('TRENCHBOOK.WHY("PIT.STORAGE";;3;2)')


def test_wrong_number_of_arguments(sheet):
    assert sheet.formula("PIT.STORAGE(1)") == Error(TOO_FEW_OR_MANY) or sheet.formula("PIT.STORAGE(1)") == Error(BAD_ARGUMENT)
    assert isinstance(sheet.formula("PIT.STORAGE(1;2;3;0.4;\"US\";6;7)"), Error)


def test_logical_value_counts_as_one(sheet):
    assert sheet.formula("PIT.STORAGE(TRUE();3;2)") == pytest.approx(2.4)


def test_range_in_place_of_a_single_cell_is_named(sheet):
    sheet.type("A1", 10)
    sheet.type("A2", 20)
    assert sheet.type("B1", "=PIT.STORAGE(A1:A2;3;2)") == Error(BAD_ARGUMENT)
    assert "single cell" in sheet.type("B2", '=TRENCHBOOK.WHY("PIT.STORAGE";A1:A2;3;2)')


def test_empty_cell_inside_a_range_is_no_value(sheet):
    sheet.type("A1", 6)
    sheet.type("A3", 4)
    assert sheet.type("B1", "=STICKS.COUNT(A1:A3;10;0)") == 1
    assert sheet.type("B2", "=STICKS.COUNT({6|0.5|4};10;0)") == 2


def test_text_inside_a_range_of_numbers_is_an_error_and_never_zero(sheet):
    sheet.type("A1", 6)
    sheet.type("A2", "x")
    sheet.type("A3", 4)
    assert sheet.type("B1", "=STICKS.COUNT(A1:A3;10;0)") == Error(BAD_ARGUMENT)
    reason = sheet.type("B2", '=TRENCHBOOK.WHY("STICKS.COUNT";A1:A3;10;0)')
    assert "pieces" in reason and '"x"' in reason and "row 2" in reason


def test_error_cell_inside_a_range_spoils_the_call_unless_wrapped(sheet):
    sheet.type("A1", 6)
    sheet.type("A2", "=1/0")
    sheet.type("A3", 4)
    assert sheet.type("B1", "=STICKS.COUNT(A1:A3;10;0)") == Error(TOO_FEW_OR_MANY)
    assert sheet.array("B2:B2", '=STICKS.COUNT(IFERROR(A1:A3;"");10;0)') == [[1.0]]


def test_units_from_a_cell(sheet):
    sheet.type("A1", "metric")
    assert sheet.type("B1", '=PIT.STORAGE(10;3;2;0.4;A1)') == pytest.approx(24)  # m3 from m
    assert sheet.type("B2", '=PIT.STORAGE(10;3;2;0.4;A2)') == pytest.approx(24)  # blank: US
    assert sheet.formula('PIT.STORAGE(10;3;2;0.4;"imperial")') == Error(BAD_ARGUMENT)


def test_slope_typed_into_a_text_cell_stays_what_it_is(sheet):
    sheet.cell("A1").NumberFormat = sheet.document.NumberFormats.queryKey("@", sheet.document.CharLocale, False)
    sheet.cell("A1").setString("1/8 in/ft")
    assert sheet.type("B1", "=SLOPE.READ(A1)") == pytest.approx(1 / 96)


def test_errors_are_seen_by_calc(sheet):
    bad = 'PIT.STORAGE("abc";3;2)'
    assert sheet.formula(f'IFERROR({bad};"caught")') == "caught"
    assert sheet.formula(f"ISERROR({bad})") == 1
    assert sheet.formula(f"ERRORTYPE({bad})") == BAD_ARGUMENT


def test_array_formula_runs_through_a_scalar_function(sheet):
    """A scalar `any` parameter takes the whole range: lists are passed one call a row, never as an array."""
    sheet.type("A1", 10)
    sheet.type("A2", 20)
    assert sheet.array("B1:B2", "=PIT.STORAGE(A1:A2;3;2)")[0][0] == Error(BAD_ARGUMENT)


def test_called_without_a_document(office):
    access = office.service("com.sun.star.sheet.FunctionAccess")
    assert access.callFunction("PIT.STORAGE", (10.0, 3.0, 2.0)) == pytest.approx(24)
    assert access.callFunction("PIT.STORAGE", (10, 3, 2)) == pytest.approx(24)
    assert access.callFunction("trenchbook.Functions.pitStorage", (10.0, 3.0, 2.0)) == pytest.approx(24)


def test_functions_newer_than_this_office_are_not_used_by_us(sheet):
    """FILTER and its like do not exist in 7.4; the templates must do without."""
    if "7.4." in sheet.formula("TRENCHBOOK.SUPPORT()"):
        assert isinstance(sheet.formula("LET(x;1;x)"), Error)
    assert sheet.formula('TEXTJOIN(",";1;"a";"b")') == "a,b"
