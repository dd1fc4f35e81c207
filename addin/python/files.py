# Files that commands read and write. None is written over that is read or open elsewhere; a new one takes the place of one
# that is there only when that was said.
import shutil
import tempfile

import uno

FILTERS = {".ods": "calc8", ".xlsx": "Calc MS Excel 2007 XML"}


def properties(**values):
    made = []
    for name, value in values.items():
        one = PropertyValue()
        one.Name, one.Value = name, value
        made.append(one)
    return tuple(made)


def path_of(given):
    return uno.fileUrlToSystemPath(given) if given.startswith("file:") else given


def url_of(path):
    return uno.systemPathToFileUrl(os.path.abspath(path))


def file_of(document):
    return path_of(document.URL) if document.URL.startswith("file:") else None


def same_file(one, other):
    return os.path.exists(one) and os.path.exists(other) and os.path.samefile(one, other)


@contextmanager
def opened_hidden(call, file):
    """Another workbook, read and closed again. Its macros do not run."""
    if not os.path.isfile(file) or os.path.getsize(file) == 0:
        raise Refusal(BAD_ARGUMENT, "there is no workbook %s" % file)
    with tempfile.TemporaryDirectory(prefix="trenchbook-menu-") as folder:
        # A copy: the file itself may be open in another window.
        copy = os.path.join(folder, os.path.basename(file))
        shutil.copyfile(file, copy)
        document = call.service("com.sun.star.frame.Desktop").loadComponentFromURL(
            url_of(copy), "_blank", 0, properties(Hidden=True, MacroExecutionMode=0))
        if document is None or not hasattr(document, "Sheets"):
            raise Refusal(BAD_ARGUMENT, "%s is no workbook" % file)
        try:
            yield document
        finally:
            document.close(True)


@contextmanager
def copy_of(call, document):
    with tempfile.TemporaryDirectory(prefix="trenchbook-menu-") as folder:
        copy = os.path.join(folder, "copy.ods")
        document.storeToURL(url_of(copy), properties(FilterName="calc8"))
        with opened_hidden(call, copy) as opened:
            yield opened


class NewFile:
    """A file to be written: refused before anything is done where it may not be."""

    def __init__(self, call, file, reads):
        self.file, self.ending = file, os.path.splitext(file)[1]
        if self.ending not in FILTERS:
            raise Refusal(BAD_ARGUMENT, "%s must end in .ods or .xlsx" % file)
        for read in reads:
            if same_file(file, read):
                raise Refusal(BAD_ARGUMENT, "%s and %s are the same file: a command never writes over what it reads"
                              % (file, read))
        folder, name = os.path.split(os.path.abspath(file))
        if not os.path.isdir(folder):
            raise Refusal(BAD_ARGUMENT, "there is no folder %s" % folder)
        if os.path.isdir(file):
            raise Refusal(BAD_ARGUMENT, "%s is a folder, not a workbook" % file)
        lock = os.path.join(folder, ".~lock.%s#" % name)
        if os.path.exists(lock):
            raise Refusal(BAD_ARGUMENT, "%s is open in an office. Close it there first. Where no office has it open, delete %s"
                          % (file, lock))
        if os.path.exists(file) and not call.flag("Replace"):
            replace = not call.by_program and agreed(call, file + call.say(" is there already. Replace it?",
                                                                           " ya existe. ¿Reemplazarlo?"))
            if not replace:
                raise Refusal(BAD_ARGUMENT, file + call.say(" is there already; Replace puts the new one in its place",
                                                            " ya existe; Replace pone el nuevo en su lugar"))

    def write(self, document):
        """Whole under another name, then renamed: nobody sees half a file."""
        folder, name = os.path.split(os.path.abspath(self.file))
        part = os.path.join(folder, ".%s.part%s" % (name, self.ending))
        try:
            document.storeToURL(url_of(part), properties(FilterName=FILTERS[self.ending]))
            os.replace(part, self.file)
        finally:
            if os.path.exists(part):
                os.remove(part)
