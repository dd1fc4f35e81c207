# What is asked of a person, and told. A program gave its answers with the command: it is never asked.
from com.sun.star.awt.MessageBoxResults import YES
from com.sun.star.awt.MessageBoxType import INFOBOX, QUERYBOX, WARNINGBOX

OK_ALONE, YES_OR_NO = 1, 3  # com.sun.star.awt.MessageBoxButtons
OPEN_FILE, SAVE_FILE = 0, 1  # com.sun.star.ui.dialogs.TemplateDescription


class Cancelled(Exception):
    """The person changed his mind."""


def box(call, kind, buttons, says, frame=None):
    """The button that was pressed; nothing where there is no window."""
    frame = frame or call.frame
    window = frame.ContainerWindow if frame is not None else None
    if window is None:
        return None
    made = call.service("com.sun.star.awt.Toolkit").createMessageBox(window, kind, buttons, call.title(), says)
    pressed = made.execute()
    made.dispose()
    return pressed


def show(call, done, says, frame=None):
    box(call, INFOBOX if done else WARNINGBOX, OK_ALONE, says, frame)


def agreed(call, question):
    return box(call, QUERYBOX, YES_OR_NO, question) == YES


def asked_file(call, argument, says, endings=(), suggested=""):
    """A file to read, or with a suggested name one to write."""
    given = call.text(argument)
    if given is not None:
        return path_of(given)
    if call.by_program:
        raise Refusal(BAD_ARGUMENT, "%s: the argument %s is missing: %s" % (call.command, argument, call.say(*says)))
    picker = call.service("com.sun.star.ui.dialogs.FilePicker")
    uno.invoke(picker, "initialize", ((uno.Any("short", SAVE_FILE if suggested else OPEN_FILE),),))
    picker.setTitle(call.say(*says))
    kinds = ";".join("*." + ending for ending in endings)
    if kinds:
        picker.appendFilter(kinds, kinds)
    if suggested:
        picker.setDefaultName(suggested)
    own = file_of(call.document())
    if own:
        picker.setDisplayDirectory(url_of(os.path.dirname(own)))
    if picker.execute() != 1 or not picker.getSelectedFiles():
        raise Cancelled()
    return path_of(picker.getSelectedFiles()[0])


def asked_folder(call, argument, says):
    """A folder to write into."""
    given = call.text(argument)
    if given is not None:
        return path_of(given)
    if call.by_program:
        raise Refusal(BAD_ARGUMENT, "%s: the argument %s is missing: %s" % (call.command, argument, call.say(*says)))
    picker = call.service("com.sun.star.ui.dialogs.FolderPicker")
    picker.setTitle(call.say(*says))
    own = file_of(call.document())
    if own:
        picker.setDisplayDirectory(url_of(os.path.dirname(own)))
    if picker.execute() != 1:
        raise Cancelled()
    return path_of(picker.getDirectory())


def filled_in(call, lines):
    """Answers by argument, of (argument, label, value) lines; a person sees them in a dialog and mends them."""
    answers = {argument: call.text(argument) for argument, _, _ in lines if call.text(argument) is not None}
    if call.by_program or call.frame is None:
        return answers
    dialog = dialog_of(call, [(label, answers.get(argument, value)) for argument, label, value in lines])
    try:
        if dialog.execute() != 1:
            raise Cancelled()
        for n, (argument, _, _) in enumerate(lines):
            typed = dialog.getControl("field%d" % n).getText().strip()
            if typed:
                answers[argument] = typed
        return answers
    finally:
        dialog.dispose()


def dialog_of(call, lines):
    """Label and field a line, OK and Cancel under them. Sizes are the office's dialog units."""
    width, height = 230, 17
    model = call.service("com.sun.star.awt.UnoControlDialogModel")
    model.Title, model.PositionX, model.PositionY = call.title(), 130, 90
    model.Width, model.Height = width, len(lines) * height + 36

    def add(kind, name, x, y, wideness, tallness):
        part = model.createInstance("com.sun.star.awt.UnoControl%sModel" % kind)
        part.PositionX, part.PositionY, part.Width, part.Height, part.Name = x, y, wideness, tallness, name
        model.insertByName(name, part)
        return part

    for n, (label, value) in enumerate(lines):
        add("FixedText", "label%d" % n, 6, 8 + n * height, 78, 12).Label = label
        add("Edit", "field%d" % n, 86, 6 + n * height, width - 92, 13).Text = value
    under = len(lines) * height + 14
    accept = add("Button", "ok", width - 112, under, 50, 15)
    accept.PushButtonType, accept.DefaultButton = 1, True
    add("Button", "cancel", width - 56, under, 50, 15).PushButtonType = 2
    dialog = call.service("com.sun.star.awt.UnoControlDialog")
    dialog.setModel(model)
    dialog.createPeer(call.service("com.sun.star.awt.Toolkit"), call.frame.ContainerWindow)
    return dialog
