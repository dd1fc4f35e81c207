# The menu's commands: what each asks, hands to the library, carries out and says.
import re

NO_FUNCTION = 525


class Call:
    """One use of a command: where it was given, with which words, and how it talks to whoever gave it."""

    def __init__(self, context, frame, command, arguments, by_program):
        self.context, self.frame, self.command = context, frame, command
        self.arguments, self.by_program = arguments, by_program
        locale = setting(context, "/org.openoffice.Setup/L10N", "ooLocale") or ""
        asked_for = self.text("Language")
        self.language = asked_for if asked_for in ("en", "es") else "es" if locale.startswith("es") else "en"

    def service(self, name):
        return self.context.ServiceManager.createInstanceWithContext(name, self.context)

    def say(self, english, spanish):
        return spanish if self.language == "es" else english

    def title(self):
        return "Trenchbook: " + self.step_title()

    def step_title(self):
        for command, english, spanish in ENTRIES:
            if command == self.command:
                return self.say(english, spanish)
        return ""

    def text(self, name):
        given = self.arguments.get(name)
        if given is not None and not isinstance(given, str):
            raise Refusal(BAD_ARGUMENT, "The argument %s must be text" % name)
        return given or None

    def flag(self, name):
        given = self.arguments.get(name)
        if given is not None and not isinstance(given, bool):
            raise Refusal(BAD_ARGUMENT, "The argument %s must be true or false" % name)
        return bool(given)

    def document(self):
        view = self.frame.Controller if self.frame is not None else None
        document = view.Model if view is not None else None
        if document is None or not hasattr(document, "Sheets"):
            raise Refusal(BAD_ARGUMENT, self.say("There is no workbook in this window",
                                                 "No hay ningún libro en esta ventana"))
        return document

    def job(self):
        document = self.document()
        if named_cells(document, "table_Runs") is None:
            raise Refusal(BAD_ARGUMENT, self.say(
                "This is not a job workbook: open one, or take New job from this menu",
                "Este no es un libro de obra: abra uno, o elija Obra nueva en este menú"))
        require_resolved(Shell.library, document, self.say("This job", "Esta obra"))
        return document

    def ask(self, name, *values):
        """The library's answer to a command."""
        return json.loads(asked(Shell.library, name.encode("ascii"), values, "trenchbook_command"))


class Said:
    """What a command has to say when it is done, and whether a person is told in a box."""

    def __init__(self, says, box=True):
        self.says, self.box = says, box


@contextmanager
def quiet(document):
    """Nothing is drawn, and nothing is computed between."""
    automatic = document.isAutomaticCalculationEnabled()
    document.lockControllers()
    document.enableAutomaticCalculation(False)
    try:
        yield
    finally:
        document.enableAutomaticCalculation(automatic)
        document.calculate()
        document.unlockControllers()


def change(call, document, steps):
    """All that a command changes is one step to be undone."""
    if not steps:
        return
    document.UndoManager.enterUndoContext(call.step_title())
    try:
        with quiet(document):
            Hand(document, True).carry_out(steps)
    finally:
        document.UndoManager.leaveUndoContext()


def about(call):
    return Said(asked(Shell.library, b"TRENCHBOOK.SUPPORT", (call.language,)))


def new_job(call):
    target = call.text("To")
    file = NewFile(call, path_of(target), ()) if target is not None else None
    packages = call.context.getValueByName("/singletons/com.sun.star.deployment.PackageInformationProvider")
    template = packages.getPackageLocation("trenchbook") + "/templates/Trenchbook/job.ots"
    document = call.service("com.sun.star.frame.Desktop").loadComponentFromURL(template, "_blank", 0,
                                                                              properties(AsTemplate=True))
    document.DocumentProperties.TemplateURL = document.DocumentProperties.TemplateName = ""
    if file is not None:
        file.write(document)
        document.close(True)
    return Said(call.say("A new job.", "Una obra nueva."), False)


def next_missing(call):
    document = call.job()
    planned = call.ask("nextMissing", *workbook(document))
    Hand(document, True).carry_out(planned["steps"])
    # The cursor has moved to it, and the row says what is wrong.
    return Said(planned["says"][call.language], not planned["steps"])


def print_ranges(call):
    document = call.document()
    planned = call.ask("printRanges", *workbook(document))
    change(call, document, planned["steps"])
    return Said(planned["says"][call.language])


def show_sheets(call):
    document = call.job()
    planned = call.ask("sheets", *(workbook(document) + [call.flag("Every")]))
    change(call, document, planned["steps"])
    return Said(planned["says"][call.language])


def explain(call):
    document = call.document()
    cursor = cursor_of(document)
    if not cursor:
        raise Refusal(BAD_ARGUMENT, call.say("Select one cell first", "Seleccione primero una celda"))
    place, column, row = cursor[0]
    formula = formula_of(document, place, column, row)
    book = workbook(document)
    known = call.ask("explainAsked", *(book + [formula]))
    # The job's language goes before the office's: whoever reads the papers asks.
    language = call.language if call.text("Language") else known["language"]
    blocks = []
    for name in known["blocks"]:
        at = named_cells(document, name).RangeAddress
        blocks.append((name, formula_of(document, at.Sheet, at.StartColumn, at.StartRow)))
    cell = [cursor, formula, tuple(blocks)]
    questions = call.ask("explainQuestions", language, *cell)["formulas"]
    answers = worked_out(document, place, row, questions)
    return Said(call.ask("explain", language, *(book + cell + [answers]))["list"])


def other_book(call, job, file):
    """Another workbook's values."""
    own = file_of(job)
    if own and same_file(own, file):
        raise Refusal(BAD_ARGUMENT, file + call.say(" is this workbook itself", " es este mismo libro"))
    with opened_hidden(call, file) as other:
        other.calculateAll()
        require_resolved(Shell.library, other, file)
        return workbook(other)


def shortened(text, more):
    """As much of a list as a box can show."""
    lines = text.splitlines(True)
    return text if len(lines) <= 25 else "".join(lines[:25]) + "  … %d%s\n" % (len(lines) - 25, more)


def prices(call):
    job = call.job()
    file = asked_file(call, "Book", ("The price book", "El libro de precios"), ("ods", "xlsx"))
    book = other_book(call, job, file)
    news = call.ask("prices", *(workbook(job) + book))
    if news["rows"] == 0:
        return Said(news["list"])
    take = call.flag("Take") if call.by_program else agreed(
        call, shortened(news["list"], call.say(" more lines", " líneas más")) + news["asks"])
    if not take:
        return Said(news["list"] + news["left"], call.by_program)
    change(call, job, news["steps"])
    return Said(news["list"] + news["taken"], False)


def issue_order(call):
    job = call.job()
    book = workbook(job)
    known = call.ask("orderAsked", *book)
    given = filled_in(call, [("Number", call.say("Order number", "Número de pedido"), known["number"]),
                             ("Supplier", call.say("Supplier", "Proveedor"), known["supplier"]),
                             ("Issued", call.say("Issued on (2026-05-31)", "Fecha (2026-05-31)"), known["issued"]),
                             ("Deliver", call.say("Deliver on", "Entregar el"), known["deliver"]),
                             ("Place", call.say("Deliver to", "Entregar en"), known["place"]),
                             ("Only", call.say("Only from this supplier (blank: all)",
                                               "Solo de este proveedor (en blanco: todos)"), "")])
    replace = call.flag("Replace")
    if not replace and not call.by_program and known["stands"]:
        replace = agreed(call, call.say("An order stands on Order already. Issue it anew?",
                                        "Ya hay un pedido en Order. ¿Emitirlo de nuevo?"))
    head = [given.get(name) for name in ("Number", "Supplier", "Issued", "Deliver", "Place", "Only")]
    change(call, job, call.ask("order", *(book + head + [replace]))["steps"])
    return Said(call.ask("orderIssued", *workbook(job))["list"])


def buy(call):
    job = call.job()
    file = asked_file(call, "Book", ("The price book", "El libro de precios"), ("ods", "xlsx"))
    most = call.text("Most") or "12"
    if most != "12" and most not in tuple("123456789"):
        raise Refusal(BAD_ARGUMENT, call.say("Most is a number of suppliers from 1 to 9, not ",
                                             "Most es un número de proveedores de 1 a 9, no ") + most)
    book = other_book(call, job, file)
    found = call.ask("buy", *(workbook(job) + book + [float(most)]))
    if found["rows"] == 0:
        return Said(found["list"])
    take = call.flag("Take") if call.by_program else agreed(
        call, shortened(found["list"], call.say(" more lines", " líneas más")) + found["asks"])
    if not take:
        return Said(found["list"] + found["left"], call.by_program)
    change(call, job, found["steps"])
    return Said(found["list"] + found["taken"], False)


def note_change(call):
    job = call.job()
    file = asked_file(call, "Changed", ("The changed job, a workbook", "La obra cambiada, un libro"), ("ods",))
    changed = other_book(call, job, file)
    made = call.ask("change", *(workbook(job) + changed + [os.path.basename(file), call.text("What") or ""]))
    change(call, job, made["steps"])
    return Said(call.ask("changeNoted", *(workbook(job) + [made["what"]]))["list"])


def note_option(call):
    job = call.job()
    file = asked_file(call, "Other", ("The other way, a job workbook", "La otra manera, un libro de obra"), ("ods",))
    other = other_book(call, job, file)
    name = os.path.basename(file)
    called = call.text("Name") or ""
    change(call, job, call.ask("option", *(workbook(job) + other + [name, called]))["steps"])
    return Said(call.ask("optionNoted", *(workbook(job) + [name]))["list"])


def bring_estimate(call):
    job = call.job()
    book = workbook(job)
    replace = call.flag("Replace")
    if not replace and not call.by_program and call.ask("closeOutStands", *book)["stands"]:
        replace = agreed(call, call.say("Rows stand on Close-out already. Take the estimate anew? What is typed there goes.",
                                        "Ya hay filas en Close-out. ¿Tomar lo estimado de nuevo? Lo escrito allí se borra."))
    change(call, job, call.ask("estimate", *(book + [replace]))["steps"])
    return Said(call.ask("estimateTaken", *workbook(job))["list"])


def bring_actual(call):
    job = call.job()
    taken = call.ask("actual", *workbook(job))
    change(call, job, taken["steps"])
    return Said(call.ask("actualTaken", *(workbook(job) + [taken["list"], taken["rows"]]))["list"])


def learn(call):
    job = call.job()
    ledger = other_book(call, job, asked_file(call, "Ledger", ("The ledger", "El libro de obras"), ("ods",)))
    learned = call.ask("learn", *(workbook(job) + ledger))
    change(call, job, learned["steps"])
    return Said(learned["list"])


def close(call):
    ledger = call.document()
    job = other_book(call, ledger, asked_file(call, "Job", ("The finished job", "La obra terminada"), ("ods",)))
    closed = call.ask("close", *(workbook(ledger) + job + [call.text("Finished")]))
    change(call, ledger, closed["steps"])
    return Said(closed["list"])


def bring_shots(call):
    job = call.job()
    file = asked_file(call, "File", ("Shots as CSV", "Lecturas en CSV"), ("csv", "txt"))
    try:
        with open(file, "rb") as stream:
            csv = stream.read().decode("utf-8", "replace")
    except OSError:
        raise Refusal(BAD_ARGUMENT, "cannot read " + file)
    book = workbook(job)
    given = tuple((name, text) for name, text in call.arguments.items() if name in SHOT_FIELDS and text)
    fields = call.ask("shotColumns", *(book + [csv, given]))["fields"]
    columns = {field["argument"]: field["column"] for field in fields if field["column"]}
    if not call.by_program:
        # The person sees which column is taken for what, and mends it.
        columns = filled_in(call, [(field["argument"], field["label"][call.language] + call.say(": column", ": columna"),
                                    field["column"]) for field in fields])
    planned = call.ask("shots", *(book + [csv, tuple(columns.items()), os.path.basename(file)]))
    change(call, job, planned["steps"])
    return Said(planned["says"][call.language])


SHOT_FIELDS = ("Point", "Level", "Rod", "Backsight", "Note")


def copy_values(call):
    job = call.job()
    own = file_of(job)
    name = os.path.splitext(os.path.basename(own))[0] if own else named_cells(job, "job_name").String.replace("/", "-")
    file = asked_file(call, "To", ("Where the copy goes", "Dónde guardar la copia"),
                      suggested=(name or "job") + call.say(" values", " valores"))
    base, ending = os.path.splitext(file)
    targets = [NewFile(call, (base if ending in FILTERS else file) + kind, [own] if own else []) for kind in FILTERS]
    # What the window shows, not what a computation of the copy could make of it.
    steps = call.ask("valuesCopy", call.language, *workbook(job))["steps"]
    with copy_of(call, job) as copy:
        Hand(copy, False).carry_out(steps)
        for target in targets:
            target.write(copy)
    return Said("\n".join(target.file for target in targets))


def drawing_files(call):
    made = call.ask("drawingFiles", *workbook(call.job()))
    folder = asked_folder(call, "Folder", ("Folder for the drawing", "Carpeta para el plano"))
    os.makedirs(folder, exist_ok=True)
    written = []
    for file in made["files"]:
        written.append(os.path.join(folder, file["name"]))
        part = os.path.join(folder, "." + file["name"] + ".part")
        with open(part, "w", encoding="utf-8", newline="") as stream:
            stream.write(file["text"])
        os.replace(part, written[-1])
    return Said("\n".join(written + [made["says"][call.language]]))


COMMANDS = {"NewJob": new_job, "NextMissing": next_missing, "PrintRanges": print_ranges, "Sheets": show_sheets, "Explain": explain,
            "Prices": prices, "Buy": buy, "Change": note_change, "Option": note_option, "Order": issue_order, "Estimate": bring_estimate,
            "Actual": bring_actual, "Learn": learn, "Close": close, "Shots": bring_shots,
            "DrawingFiles": drawing_files, "CopyValues": copy_values, "About": about}


def run(call):
    if call.command not in COMMANDS:
        if call.step_title():
            raise Refusal(BAD_ARGUMENT, call.say("%s is done by the package for Linux only", "%s lo hace solo el paquete para Linux")
                          % call.step_title())
        raise Refusal(BAD_ARGUMENT, "There is no command %s" % call.command)
    return COMMANDS[call.command](call)
