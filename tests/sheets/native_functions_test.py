"""The native functions that workbooks may call, compared with the list of functions of the office itself."""

import re

from calls import CHECKOUT
from office import Office

# Calc's list counts a repeated argument once, and each of a repeated pair once.
REPEATED = 255


def listed():
    text = (CHECKOUT / "sheets" / "formula" / "native.cpp").read_text()
    return {name: (int(least), int(most)) for name, least, most in re.findall(r'\{"([A-Z0-9.]+)", (\d+), (\d+)\}', text)}


def test_calc_has_them_with_these_arguments():
    functions = listed()
    assert len(functions) > 80
    with Office() as office:
        known = office.service("com.sun.star.sheet.FunctionDescriptions")
        wrong = []
        for name, (least, most) in functions.items():
            if not known.hasByName(name):
                wrong.append(f"{name}: Calc has none")
                continue
            arguments = next(item.Value for item in known.getByName(name) if item.Name == "Arguments") or ()
            required = sum(not argument.IsOptional for argument in arguments)
            if most != REPEATED and (required, len(arguments)) != (least, most):
                wrong.append(f"{name}: listed {least} to {most}, Calc says {required} to {len(arguments)}")
            if most == REPEATED and required != least:
                wrong.append(f"{name}: listed at least {least}, Calc says {required}")
        assert not wrong, "\n".join(wrong)
