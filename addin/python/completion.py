# While a word is typed Calc offers one from the same column that begins with it, and Return takes the offer: in a column
# of lengths a typed 4 becomes the 42 above it, in one of names N1 the N10. No attribute of a cell prevents it. So this is
# off while a workbook of ours is in front, and on again when another one is. The office calls this job (Jobs.xcu).
# What the user has chosen is never lost: Held stands in his profile before the switch is turned, so that an office that was
# killed turns it on again at the first workbook of another kind; whoever turns it himself is left alone.
from com.sun.star.task import XJob

TYPING = "trenchbook.Typing"


class Switch:
    """One switch of the office's settings."""

    def __init__(self, context, node, name):
        provider = context.getValueByName("/singletons/com.sun.star.configuration.theDefaultProvider")
        self.settings = provider.createInstanceWithArguments("com.sun.star.configuration.ConfigurationUpdateAccess",
                                                             properties(nodepath=node))
        self.name = name

    def on(self):
        return self.settings.getByName(self.name)

    def turn(self, on):
        self.settings.replaceByName(self.name, on)
        self.settings.commitChanges()


class Typing(unohelper.Base, XJob, XServiceInfo):
    def __init__(self, context):
        self.context = context

    def execute(self, arguments):
        told = {one.Name: one.Value for argument in arguments if argument.Name == "Environment" for one in argument.Value}
        document = told.get("Model")
        if document is None:
            return
        ours = self.is_ours(document)
        if told.get("EventName") == "OnFocus":
            (self.comes_in_front if ours else self.goes_back)(*self.switches())
        elif ours and not self.another_in_front(document):
            self.goes_back(*self.switches())

    def switches(self):
        return (Switch(self.context, "/org.openoffice.Office.Calc/Input", "AutoInput"),
                Switch(self.context, "/" + TYPING, "Held"), Switch(self.context, "/" + TYPING, "Wanted"))

    @staticmethod
    def keep(held, wanted):
        """Somebody turned it on in one of our workbooks, and keeps it there."""
        wanted.turn(True)
        held.turn(False)

    def comes_in_front(self, completes, held, wanted):
        if held.on():
            if completes.on():
                self.keep(held, wanted)
        elif not completes.on():
            if wanted.on():
                wanted.turn(False)  # turned off since by the user himself
        elif not wanted.on():
            held.turn(True)
            completes.turn(False)

    def goes_back(self, completes, held, wanted):
        if not held.on():
            return
        if completes.on():
            self.keep(held, wanted)
            return
        completes.turn(True)
        held.turn(False)

    def another_in_front(self, document):
        """The events of two windows may come in either order."""
        desktop = self.context.ServiceManager.createInstanceWithContext("com.sun.star.frame.Desktop", self.context)
        front = desktop.CurrentComponent
        return hasattr(front, "NamedRanges") and front != document and self.is_ours(front)

    @staticmethod
    def is_ours(document):
        """A workbook whose cells take measured text and names."""
        return any(named_cells(document, table) is not None for table in ("table_Runs", "table_Prices", "table_Hours"))

    def getImplementationName(self):
        return TYPING + "Implementation"

    def supportsService(self, name):
        return name == TYPING

    def getSupportedServiceNames(self):
        return (TYPING,)


g_ImplementationHelper.addImplementation(Typing, TYPING + "Implementation", (TYPING,))
