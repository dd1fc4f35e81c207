# The component that Calc makes when one of our functions is first used: a method for each function of the catalog.
import unohelper
from com.sun.star.lang import IllegalArgumentException
from com.sun.star.sheet import NoConvergenceException
from com.sun.star.uno import RuntimeException
from trenchbook import XFunctions

SERVICE = "trenchbook.Functions"


def without_library(why, method, given):
    """What can be answered all the same: which shell is at work and what is missing."""
    said = why.said("es" if given and given[-1] == "es" else "en")
    if method == "trenchbookSupport":
        return "%s; %s" % (shell_name(), said)
    if method == "trenchbookWhy":
        return said
    raise RuntimeException(why.english, None)


def method_of(name, variadic):
    function = name.encode("ascii")

    def method(self, *given):
        if variadic:
            given = given[:-1] + given[-1]
        if Shell.library is None:
            return without_library(Shell.unusable, name, given)
        try:
            return asked(Shell.library, function, given)
        except Refusal as refusal:
            if refusal.code == BAD_ARGUMENT:
                raise IllegalArgumentException(refusal.sentence, None, 0)
            if refusal.code == NO_CONVERGENCE:
                raise NoConvergenceException(refusal.sentence, None)
            raise RuntimeException(refusal.sentence, None)
        except Unknown as unknown:
            raise IllegalArgumentException(str(unknown), None, 0)

    return method


def begin(self, context):
    Shell.opened(context)


Functions = type("Functions", (unohelper.Base, XFunctions),
                 dict([(name, method_of(name, variadic)) for name, variadic in FUNCTIONS], __init__=begin))

g_ImplementationHelper = unohelper.ImplementationHelper()
g_ImplementationHelper.addImplementation(Functions, SERVICE + "Implementation", (SERVICE,))
