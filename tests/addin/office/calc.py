"""Typing into cells and reading them."""

import uno  # noqa: F401, lets com.sun.star be imported
from com.sun.star.sheet.FormulaResult import STRING
from com.sun.star.table.CellContentType import EMPTY, FORMULA, TEXT

BAD_ARGUMENT = 502  # Err:502
TOO_FEW_OR_MANY = 504  # Err:504
NOT_ONE_VALUE = 519  # #VALUE!
NO_CONVERGENCE = 523  # Err:523
NO_NAME = 525  # #NAME?


class Sheet:
    """The first sheet of a document, cells by their address."""

    def __init__(self, document):
        self.document = document
        self.cells = document.Sheets[0]

    def cell(self, address):
        return self.cells.getCellRangeByName(address).getCellByPosition(0, 0)

    def type(self, address, content):
        """A formula, a number or text, as typed into one cell; returns what it then shows."""
        cell = self.cell(address)
        if isinstance(content, str):
            cell.setFormula(content)
        else:
            cell.setValue(content)
        return self.shows(address)

    def array(self, area, formula):
        """An array formula over an area; returns its rows as they show."""
        cells = self.cells.getCellRangeByName(area)
        cells.setArrayFormula(formula)
        where = cells.RangeAddress
        return [[shown(cells.getCellByPosition(column, row)) for column in range(where.EndColumn - where.StartColumn + 1)]
                for row in range(where.EndRow - where.StartRow + 1)]

    def formula(self, text):
        """What one formula gives, in a cell of its own."""
        return self.type("XFD1", "=" + text)

    def formulas(self, texts):
        """Many formulas at once, one a row; returns what each shows."""
        area = self.cells.getCellRangeByPosition(0, 0, 0, len(texts) - 1)
        area.setFormulaArray(tuple(("=" + text,) for text in texts))
        return [shown(area.getCellByPosition(0, row)) for row in range(len(texts))]

    def shows(self, address):
        return shown(self.cell(address))


class Error(int):
    """An error code in a cell: never equal to a number that is one."""

    def __eq__(self, other):
        return isinstance(other, Error) and int(self) == int(other)

    __hash__ = int.__hash__

    def __repr__(self):
        return f"Error({int(self)})"


def shown(cell):
    """Error, text, number, or None for an empty cell."""
    if cell.getError():
        return Error(cell.getError())
    kind = cell.Type
    if kind == EMPTY:
        return None
    if kind == TEXT or (kind == FORMULA and cell.FormulaResultType2 == STRING):
        return cell.String
    return cell.Value


def arguments_of(example):
    """The arguments of a call, as written: PIPE.BORE("4 SDR35") -> ['"4 SDR35"']."""
    inside = example[example.index("(") + 1:example.rindex(")")]
    parts, depth, quoted, start = [], 0, False, 0
    for at, letter in enumerate(inside):
        if letter == '"':
            quoted = not quoted
        elif not quoted and letter in "({":
            depth += 1
        elif not quoted and letter in ")}":
            depth -= 1
        elif not quoted and depth == 0 and letter == ";":
            parts.append(inside[start:at].strip())
            start = at + 1
    last = inside[start:].strip()
    return parts + [last] if parts or last else []


def call(name, arguments):
    return f"{name}({'; '.join(arguments)})"


def why(function, arguments, language="en"):
    """The question for the reason; a function that speaks has a place of its own for the language."""
    asked = list(arguments)
    if language != "en":
        names = [argument["name"] for argument in function["arguments"]]
        place = names.index("language") if "language" in names else len(asked)
        asked += [""] * (place + 1 - len(asked))
        asked[place] = f'"{language}"'
    return call("TRENCHBOOK.WHY", [f'"{function["name"]}"', *asked])
