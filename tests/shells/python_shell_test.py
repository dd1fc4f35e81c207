"""The shell in Python where something is not as it should be: a folder with an odd name, a library that is missing,
damaged or of another build, a Python that is too old. A sentence, and an office that goes on."""

import ast
import shutil
import sys

import pytest

from conftest import EXTENSIONS

from calc import NOT_ONE_VALUE, Error, Sheet
from office import Office

SHELL = "trenchbook/trenchbook_shell.py"
COMPONENTS = [SHELL, "trenchbook/trenchbook_menu.py"]
LIBRARY = "trenchbook/libtrenchbook_c.so"


@pytest.fixture
def extensions(tmp_path):
    """A copy of the package, for a test to spoil."""
    folder = tmp_path / "extensions"
    shutil.copytree(EXTENSIONS["Python"], folder)
    return folder


def replaced(file, old, new):
    text = file.read_text(encoding="utf-8")
    assert text.count(old) == 1
    file.write_text(text.replace(old, new), encoding="utf-8")


def asked(extensions, *formulas):
    with Office(extensions) as office:
        sheet = Sheet(office.new())
        answers = [sheet.formula(text) for text in formulas]
        assert sheet.formula("1+1") == 2
        sheet.document.close(True)
    return answers


def test_support_says_which_shell_is_at_work(offices):
    for shell, office in offices.items():
        sheet = Sheet(office.new())
        said = sheet.formula("TRENCHBOOK.SUPPORT()")
        sheet.document.close(True)
        assert f"; shell in {shell}" in said and "self-test: 8 of 8" in said, said


def test_folder_with_blanks_and_umlauts(tmp_path):
    folder = tmp_path / "Größe und Maß ñ 寸" / "extensions"
    shutil.copytree(EXTENSIONS["Python"], folder)
    assert asked(folder, "PIT.STORAGE(10;3;2)") == [pytest.approx(24)]


def missing(folder):
    (folder / LIBRARY).unlink()


def cut_short(folder):
    content = (folder / LIBRARY).read_bytes()
    (folder / LIBRARY).write_bytes(content[:len(content) // 2])


def one_byte_off(folder):
    content = bytearray((folder / LIBRARY).read_bytes())
    content[len(content) // 2] ^= 1
    (folder / LIBRARY).write_bytes(content)


def engine_missing(folder):
    (folder / "trenchbook/libtrenchbook.so.0").unlink()


def another_build(folder):
    replaced(folder / SHELL, 'VERSION = "', 'VERSION = "9.')


def old_python(folder):
    replaced(folder / SHELL, "OLDEST = (3, 8)", "OLDEST = (9, 0)")


@pytest.mark.parametrize("spoil, english, spanish", [
    (missing, "libtrenchbook_c.so is missing from ", "Falta libtrenchbook_c.so en "),
    (cut_short, "libtrenchbook_c.so in ", " está dañado"),
    (one_byte_off, " is damaged: install Trenchbook again", " está dañado: instale Trenchbook de nuevo"),
    (engine_missing, "libtrenchbook.so.0 is missing from ", "Falta libtrenchbook.so.0 en "),
    (another_build, "is of another build than this shell", "es de otra compilación que este complemento"),
    (old_python, "9.0 or newer is needed", "se necesita 9.0 o posterior"),
], ids=lambda value: getattr(value, "__name__", ""))
def test_what_is_missing_is_said(extensions, spoil, english, spanish):
    spoil(extensions)
    support, soporte, why, porque, version, number = asked(
        extensions, "TRENCHBOOK.SUPPORT()", 'TRENCHBOOK.SUPPORT("es")', 'TRENCHBOOK.WHY("PIT.STORAGE";10;3;2)',
        'TRENCHBOOK.WHY("PIT.STORAGE";10;3;2;"es")', "TRENCHBOOK.VERSION()", "PIT.STORAGE(10;3;2)")
    assert support.startswith("shell in Python ") and english in support
    assert spanish in soporte and spanish in porque
    assert english in why
    assert version == Error(NOT_ONE_VALUE) and number == Error(NOT_ONE_VALUE)


def component(name, version=(3, 8)):
    return ast.parse((EXTENSIONS["Python"] / name).read_text(encoding="utf-8"), feature_version=version)


@pytest.mark.parametrize("version", [(3, 5), (3, 8)])
@pytest.mark.parametrize("name", COMPONENTS)
def test_an_old_python_can_read_it(name, version):
    component(name, version)


@pytest.mark.parametrize("name", COMPONENTS)
def test_no_part_takes_the_name_of_another(name):
    """The parts are put together into one file: what one defines, no other may."""
    defined = [node.name for node in component(name).body if isinstance(node, (ast.FunctionDef, ast.ClassDef))]
    assert len(defined) > 10 and len(defined) == len(set(defined)), sorted(defined)


@pytest.mark.parametrize("name", COMPONENTS)
def test_nothing_is_taken_from_elsewhere(name):
    """What a component imports comes with Python or with the office."""
    tree = component(name)
    names = {alias.name.split(".")[0] for node in ast.walk(tree) if isinstance(node, ast.Import) for alias in node.names}
    names |= {node.module.split(".")[0] for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)}
    assert names - set(sys.stdlib_module_names) <= {"com", "uno", "unohelper", "trenchbook"}
