# The shell in Python: the functions of Trenchbook in an office whose components in C++ cannot be built here. It hands
# each call to the library beside this file, through the C interface that addin/c/trenchbook_c.h describes.
#
# Put together from the parts in addin/python and from the catalog. It runs in Python 3.8, and says so in an older one:
# nothing here is newer than that, and nothing in the parts of the shell is beyond what Python 3.5 can read.
import ctypes
import hashlib
import os
import struct
import sys

OLDEST = (3, 8)
INTERFACE = 1

OK = 0
BAD_ARGUMENT = 502
NO_CONVERGENCE = 523


class Unusable(Exception):
    """Why there is no library, for people: in English and Spanish."""

    def __init__(self, english, spanish):
        Exception.__init__(self, english)
        self.english, self.spanish = english, spanish

    def said(self, language):
        return self.spanish if language == "es" else self.english


class Answer(ctypes.Structure):
    _fields_ = [
        ("code", ctypes.c_int32),
        ("kind", ctypes.c_int32),
        ("number", ctypes.c_double),
        ("rows", ctypes.c_size_t),
        ("columns", ctypes.c_size_t),
        ("cells", ctypes.c_void_p),
        ("letters", ctypes.c_char_p),
        ("texts", ctypes.c_void_p),
        ("texts_size", ctypes.c_size_t),
        ("sentence", ctypes.c_char_p),
        ("sentence_es", ctypes.c_char_p),
        ("held", ctypes.c_void_p),
    ]


def require_whole(path, size, digest):
    """The file is there as it was packed: a damaged library would end the office when it is loaded."""
    name, folder = os.path.basename(path), os.path.dirname(path)
    try:
        with open(path, "rb") as file:
            content = file.read()
    except OSError:
        raise Unusable("%s is missing from %s: install Trenchbook again" % (name, folder),
                       "Falta %s en %s: instale Trenchbook de nuevo" % (name, folder))
    if len(content) != size or hashlib.sha256(content).hexdigest() != digest:
        raise Unusable("%s in %s is damaged: install Trenchbook again" % (name, folder),
                       "%s en %s está dañado: instale Trenchbook de nuevo" % (name, folder))


def require_python():
    if sys.version_info[:2] < OLDEST:
        raise Unusable("this office brings Python %d.%d; %d.%d or newer is needed" % (sys.version_info[:2] + OLDEST),
                       "esta oficina trae Python %d.%d; se necesita %d.%d o posterior" % (sys.version_info[:2] + OLDEST))
    if struct.calcsize("P") != 8:
        raise Unusable("this office is a 32-bit one; Trenchbook needs a 64-bit one",
                       "esta oficina es de 32 bits; Trenchbook necesita una de 64 bits")


def loaded(folder, libraries, version, functions):
    """The library in the folder, ready to be called; the last of `libraries` is called, the others it finds itself."""
    require_python()
    for name, size, digest in libraries:
        require_whole(os.path.join(folder, name), size, digest)
    path = os.path.join(folder, libraries[-1][0])
    try:
        library = ctypes.CDLL(path)
        library.trenchbook_version.restype = ctypes.c_char_p
        library.trenchbook_functions.restype = ctypes.c_size_t
        found = (library.trenchbook_interface(), library.trenchbook_version().decode("utf-8"),
                 library.trenchbook_functions())
    except (OSError, AttributeError) as error:
        raise Unusable("%s cannot be loaded: %s" % (path, error), "No se puede cargar %s: %s" % (path, error))
    if found != (INTERFACE, version, functions):
        told = (path, found, (INTERFACE, version, functions))
        raise Unusable("%s is of another build than this shell: %s in place of %s; install Trenchbook again" % told,
                       "%s es de otra compilación que este complemento: %s en lugar de %s; instale Trenchbook de nuevo"
                       % told)
    for call in (library.trenchbook_call, library.trenchbook_command):
        call.restype = ctypes.c_int32
        call.argtypes = [ctypes.c_char_p, ctypes.c_char_p, ctypes.c_size_t, ctypes.c_char_p, ctypes.c_size_t,
                         ctypes.c_char_p, ctypes.c_size_t, ctypes.POINTER(Answer)]
    library.trenchbook_free.restype = None
    library.trenchbook_free.argtypes = [ctypes.POINTER(Answer)]
    library.trenchbook_set_host.restype = None
    library.trenchbook_set_host.argtypes = [ctypes.c_char_p]
    return library
