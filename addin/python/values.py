# Between what the office hands over and the flat pieces of the C interface.
from itertools import chain

LETTERS = {float: ord("n"), int: ord("n"), bool: ord("n"), str: ord("t"), type(None): ord("-")}
BLANK = ord("-")
TEXT_BLOCK, NUMBER_BLOCK, TEXT = ord("T"), ord("N"), ord("t")


class Unknown(Exception):
    """A value of a kind that no formula hands over."""


class Refusal(Exception):
    """What the library says in place of an answer."""

    def __init__(self, code, sentence):
        Exception.__init__(self, sentence)
        self.code, self.sentence = code, sentence


def flat(given):
    """Letters, numbers and texts of the arguments of one call."""
    letters, numbers, texts = [], [], []
    for value in given:
        kind = type(value)
        if kind is tuple:
            add_range(value, letters, numbers, texts)
        elif kind not in LETTERS:
            raise Unknown("cannot take a %s" % kind.__name__)
        else:
            letters.append(LETTERS[kind])
            if kind is str:
                texts.append(value)
            elif value is not None:
                numbers.append(value)
    return bytes(letters), struct.pack("%dd" % len(numbers), *numbers), len(numbers), joined(texts)


def add_range(rows, letters, numbers, texts):
    """Goes over the cells as a whole, never one by one: a job has thousands of them."""
    columns = len(rows[0]) if rows else 0
    if any(type(row) is not tuple or len(row) != columns for row in rows):
        raise Unknown("cannot take a range whose rows differ")
    cells = list(chain.from_iterable(rows))
    letters.append(ord("r"))
    numbers += (len(rows), columns)
    try:
        letters.extend(map(LETTERS.__getitem__, map(type, cells)))
    except KeyError as error:
        raise Unknown("cannot take a range that holds a %s" % error.args[0].__name__)
    texts.extend([cell for cell in cells if type(cell) is str])
    numbers.extend([cell for cell in cells if type(cell) is not str and cell is not None])


def joined(texts):
    if not texts:
        return b""
    whole = "\0".join(texts)
    if whole.count("\0") != len(texts) - 1:  # No sheet has a zero byte in a text; a program may.
        whole = "\0".join(text.replace("\0", " ") for text in texts)
    return whole.encode("utf-8", "replace") + b"\0"


def block(answer):
    """Rows of numbers; a row without a number keeps its error code inside a NaN, a blank one is empty text."""
    count, columns = answer.rows * answer.columns, answer.columns
    if count == 0:
        return (("",),)  # The office takes an empty array for an error.
    cells = struct.unpack("%dd" % count, ctypes.string_at(answer.cells, 8 * count))
    if answer.letters is not None:
        cells = tuple("" if letter == BLANK else cell for cell, letter in zip(cells, answer.letters))
    return tuple(cells[start:start + columns] for start in range(0, count, columns))


def texts_of(answer):
    return ctypes.string_at(answer.texts, answer.texts_size).decode("utf-8").split("\0")[:-1]


def text_block(answer):
    columns, texts = answer.columns, tuple(texts_of(answer))
    return tuple(texts[start:start + columns] for start in range(0, len(texts), columns)) or (("",),)


def asked(library, name, given, entry="trenchbook_call"):
    """The answer of a function, or of a command, named in bytes. Raises Refusal, and Unknown."""
    letters, numbers, count, texts = flat(given)
    answer = Answer()
    code = getattr(library, entry)(name, letters, len(letters), numbers, count, texts, len(texts), answer)
    if code == OK and not answer.held:
        return answer.number
    try:
        if code != OK:
            raise Refusal(code, answer.sentence.decode("utf-8"))
        if answer.kind == NUMBER_BLOCK:
            return block(answer)
        if answer.kind == TEXT_BLOCK:
            return text_block(answer)
        return texts_of(answer)[0]
    finally:
        library.trenchbook_free(answer)
