# While a word is typed Calc offers one from the same column that begins with it, and Return takes the offer: in a column
# of lengths a typed 4 becomes the 42 above it, in one of names N1 the N10. No attribute of a cell prevents it. So this is
# off while a workbook of ours is in front, and on again when another one is. The office calls this job (Jobs.xcu).
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
        completes = Switch(self.context, "/org.openoffice.Office.Calc/Input", "AutoInput")
        held = Switch(self.context, "/" + TYPING, "Held")
        if told.get("EventName") == "OnFocus" and document is not None and self.is_ours(document):
            # On though it was held: somebody turned it on in one of our workbooks, and keeps it.
            if completes.on() and not held.on():
                held.turn(True)
                completes.turn(False)
        elif held.on() and not completes.on():
            completes.turn(True)
            held.turn(False)

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
