"""Giving commands of the menu as a program does: by their address, with arguments, waiting for the answer."""

from com.sun.star.frame.DispatchResultState import SUCCESS

from office import properties


class Refused(Exception):
    """What the command answered where it could not be done."""


class Menu:
    def __init__(self, office):
        self.office = office
        self.helper = office.service("com.sun.star.frame.DispatchHelper")

    def give(self, document, command, **arguments):
        """Returns what the command says; raises Refused with its sentence."""
        frame = document.CurrentController.Frame
        event = self.helper.executeDispatch(frame, f"trenchbook.menu:{command}", "_self", 0, properties(**arguments))
        if event.State != SUCCESS:
            raise Refused(event.Result)
        return event.Result


def undo_titles(document):
    return list(document.UndoManager.AllUndoActionTitles)
