// The crew's page, in the language of its Language cell: useful on paper in the trench, with any set-up of the
// instrument. Stations and cuts are lists of the solved job, as long as the job is.
#include "kit/judged.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

constexpr int across = 10;  // columns of the crew's page

// Words in the page's language.
std::string say(const char* en, const char* es) {
    return std::string("IF(paper_language=\"es\";\"") + es + "\";\"" + en + "\")";
}

// The same length as the tape shows it.
std::string onTape(const std::string& en, const std::string& es) {
    return "IF(units=\"metric\";" + say((en + " in mm").c_str(), (es + " en mm").c_str()) + ";" +
           say((en + " in feet and inches").c_str(), (es + " en pies y pulgadas").c_str()) + ")";
}

const std::string unit = "crew_unit";  // of levels, behind a number

// A list that ends with its last row may go on.
std::string full(const std::string& block, const std::string& column) {
    return "IF(IFERROR(INDEX(" + column + ";ROWS(" + block + "));\"\")<>\"\";" +
           say("THIS PAGE IS FULL: there is more than it shows.", "HOJA LLENA: hay más de lo que muestra.") +
           ";\"\")";
}

// A list whose block could not be worked out is blank, as one without rows is: where the job has runs, that is said.
std::string missing(const std::string& firstCell, const std::string& words) {
    return "IF(AND(SUMPRODUCT([Runs.From]<>\"\")>0;IFERROR(" + firstCell + ";\"\")=\"\");" + words + ";\"\")";
}

// Words between the numbers of a longer sentence.
Field word(const char* label, const char* name, const std::string& formula) {
    return {.label = label,
            .name = name,
            .kind = Kind::Computed,
            .format = show::general,
            .value = "=" + formula,
            .helper = true};
}

Form language() {
    Form form;
    form.name = "Crew page";
    form.fields = {
        {.label = "Language",
         .name = "paper_language",
         .kind = Kind::Kept,
         .value = "=language",
         .validity = choice({"en", "es"}),
         .note = "en: English. es: español."},
        {.label = "Unit of levels",
         .name = "crew_unit",
         .kind = Kind::Computed,
         .format = show::general,
         .value = "=IF(units=\"metric\";\" m\";\" ft\")",
         .helper = true},
        {.label = "Distance to the way out",
         .name = "crew_exit",
         .kind = Kind::Computed,
         .format = show::general,
         .value = "=IF(units=\"metric\";\"7.6 m\";\"25 ft\")",
         .helper = true},
        word("Dig by hand", "crew_hand", say("DIG BY HAND ", "EXCAVE A MANO ")),
        word("At", "crew_each", "crew_unit&\": \""),
        word("Below", "crew_at", "crew_unit&" + say(" below ", " abajo de ")),
        word("Depth", "crew_deep", say(", it is at a depth of ", ", está a una profundidad de ")),
        word("Small unit", "crew_small", "IF(units=\"metric\";\" mm\";\" in\")"),
        word("Clear", "crew_clear", "crew_small&" + say(", clear of the pipe by ", ", libre del tubo ")),
        word("Bedding", "crew_bedding", "TEXT({bedding.depth};\"0.#\")&crew_small"),
        {.label = "Not ready",
         .name = "crew_not_ready",
         .kind = Kind::Computed,
         .format = show::general,
         .value = "=IF(LEFT(ticket_state;2)=\"NO\";" +
                  say("NOT READY TO DIG: no valid locate ticket. Call 811 and wait for every answer.",
                      "NO EXCAVAR TODAVÍA: falta el aviso del 811 o está vencido. Llame al 811.") +
                  ";\"\")",
         .helper = true},
        {.label = "Ticket line",
         .name = "crew_ticket",
         .kind = Kind::Computed,
         .format = show::general,
         .helper = true},
        {.label = "Depth line",
         .name = "crew_depth",
         .kind = Kind::Computed,
         .format = show::general,
         .helper = true}};
    judge(form, "crew_ticket", {{"LEFT(ticket_state;2)=\"NO\"", "crew_not_ready"}},
          say("Ticket ", "Aviso 811: ") + "&ticket&" + say(" until ", " hasta ") +
              "&TEXT(ticket_until;\"YYYY-MM-DD\")");
    join(form, "crew_depth", "\"\"",
         {"IF(N(deepest_cut)>={cut.protect};" + say("Trench of ", "Zanja de ") + "&ROUND({cut.protect};2)&" +
              unit + "&" +
              say(" or deeper: protective system unless stable rock (29 CFR 1926.652). ",
                  " o más: sistema de protección salvo roca estable (29 CFR 1926.652). ") +
              ";\"\")",
          "IF(N(deepest_cut)>={cut.exit};ROUND({cut.exit};2)&" + unit + "&" +
              say(" or deeper: a safe way out within ", " o más: salida segura a menos de ") + "&crew_exit&" +
              say(" of every person (29 CFR 1926.651). ", " de cada persona (29 CFR 1926.651). ") + ";\"\")",
          say("A competent person looks at the trench every day and after rain. ",
              "Una persona competente revisa la zanja cada día y después de la lluvia. "),
          say("Spoil at least ", "Tierra a no menos de ") + "&ROUND({spoil.edge};2)&" + unit + "&" +
              say(" back from the edge. Glue: fresh air, no flame.",
                  " del borde. Cemento: aire libre, sin llama.")});
    return form;
}

Paragraphs head() {
    Paragraphs head;
    head.span = across;
    head.outdoors = true;
    head.lines = {
        "=crew_ticket",
        "=" + say("Benchmark: ", "Banco de nivel: ") + "&crew_mark&" + say(", level ", ", nivel ") +
            "&TEXT(crew_level;\"0.00\")&" +
            say(".   Backsight today: __________", ".   Lectura de hoy en el banco: __________"),
        "=" +
            say("Rod reading = backsight today + the number in the column. A reading that is too small means dig deeper.",
                "Lectura de mira = lectura de hoy en el banco + el número de la columna. Si sale menor, falta excavar."),
        "=crew_depth",
        "=" + missing("<crew_stations.Station:1>",
                      say("NO STATIONS: they could not be worked out. See Check on Runs and Takeoff.",
                          "SIN ESTACIONES: no se pudieron calcular. Vea Check en Runs y Takeoff.")),
        "=" + full("crew_stations", "<crew_stations.Station:*>"),
    };
    return head;
}

// Other buried lines: a box for each.
Block crossings(const JobSize& size) {
    const std::string between = "&\", \"&";
    return {.name = "crew_crossings",
            .formula =
                "IF([Crossings.What]=\"\";\"\";crew_hand&TEXT([Crossings.Hand-dig];\"0.0\")&crew_each&"
                "[Crossings.What]" +
                between + "[Crossings.From]&\"-\"&[Crossings.To]" + between +
                "TEXT([Crossings.At];\"0.0\")&crew_at&[Crossings.From]&crew_it)",
            .rows = size.crossings + 2,
            .columns = {{.heading = "Crossing",
                         .shown = "=IF(COUNTA([Crossings.What])=0;\"\";" +
                                  say("Other lines in the ground", "Otras líneas en la tierra") + ")"}},
            .rowHeight = 8,
            .boxed = across};
}

// What is heard over a heading, in both languages.
std::string hover(const char* en, const char* es) { return std::string(en) + "\n" + es; }

BlockColumn of(const char* heading, const std::string& shown, double width, const std::string& note = "",
               bool feet = false) {
    return {.heading = heading,
            .shown = "=" + shown,
            .measure = feet ? Measure::Feet : Measure::Plain,
            .width = width,
            .note = note,
            .centred = true,
            .wrapped = true};
}
BlockColumn large(BlockColumn column) {
    column.standsOut = true;
    return column;
}
// What stands there in words: several lines where it needs them.
BlockColumn made(const char* heading, const std::string& shown, double width) {
    return {.heading = heading, .shown = "=" + shown, .width = width, .wrapped = true};
}
BlockColumn pen(const char* heading, const std::string& shown, double width) {
    return {.heading = heading, .shown = "=" + shown, .width = width, .pen = true};
}

// Every run once: what is laid, how steep, on what.
Block runs(const JobSize& size) {
    return {
        .name = "crew_runs",
        .formula =
            "IF([Runs.From]=\"\";\"\";CHOOSE({1;2;3;4;5;6;7};[Runs.Line]&\"\";[Runs.From]&\"-\"&[Runs.To];"
            "[Runs.Pipe]&\"\";TEXT([Runs.Slope %];\"0.00%\");[Runs.Slope as said]&\"\";[Runs.Length]&\"\";"
            "crew_bedding))",
        .rows = size.runs + 2,
        .columns = {of("Line", say("Line", "Línea"), 18), of("Run", say("Run", "Tramo"), 18),
                    of("Pipe", say("Pipe", "Tubo"), 20), of("Slope", say("Slope", "Pendiente"), 24),
                    of("Slope as said", say("Slope on the level", "Pendiente en el nivel"), 24),
                    of("Length", say("Length", "Largo"), 15, "", true),
                    of("Bedding", say("Bedding", "Cama"), 30),
                    pen("Checked", say("Checked", "Revisado"), 67)},
        .rowHeight = 5};
}

// A list of words for paper; rows beyond its end stay blank.
Block list(const char* name, const char* function, int rows, double rowHeight,
           std::vector<BlockColumn> columns) {
    return {
        .name = name,
        .formula = std::string(function) + "(" + takeoffTables() + ";units;paper_language;" + jobTail() + ")",
        .rows = rows,
        .columns = std::move(columns),
        .rowHeight = rowHeight};
}

Block stations(const JobSize& size) {
    return list(
        "crew_stations", "JOB.CREW", stationRows(size), 8.5,
        {of("Station", say("Station", "Estación"), 18,
            hover("Distance from the outlet along the pipe.", "Distancia desde la salida por el tubo."),
            true),
         of("Node", say("Node", "Nodo"), 18), of("Run", say("Run", "Tramo"), 20),
         of("Trench bottom below benchmark",
            say("Trench bottom below benchmark", "Fondo de zanja bajo el banco"), 24,
            hover("Add today's backsight: that is the rod reading on the trench bottom.",
                  "Sume la lectura de hoy en el banco: da la lectura de mira en el fondo de la zanja."),
            true),
         of("Top of pipe below benchmark", say("Top of pipe below benchmark", "Lomo del tubo bajo el banco"),
            24,
            hover("Add today's backsight: that is the rod reading on top of the laid pipe.",
                  "Sume la lectura de hoy en el banco: da la lectura de mira sobre el lomo del tubo."),
            true),
         of("Cut", say("Cut", "Corte"), 15, "", true),
         large(of("Cut in feet and inches", onTape("Cut", "Corte"), 30)),
         made("Here", say("Here", "Aquí"), 67), pen("Rod", say("Rod", "Mira"), 18),
         pen("As laid", say("As laid", "Colocado"), 18)});
}

Block cuts(const JobSize& size) {
    return list(
        "crew_cuts", "JOB.CUTS.TEXT", cutRows(size), 7,
        {of("Pipe", say("Pipe", "Tubo"), 20),
         of("Stick", say("Stick", "Barra"), 18,
            hover("Rows with one number come out of one stick.",
                  "Las filas con un mismo número salen de una barra.")),
         of("Pieces", say("Pieces", "Piezas"), 16),
         of("Length", say("Length", "Largo"), 18, hover("Of each piece.", "De cada pieza."), true),
         large(of("In feet and inches", onTape("Length", "Largo"), 34)),
         of("Left over", say("Left over", "Sobra"), 18,
            hover("Of the stick, on its last row.", "De la barra, en su última fila."), true),
         of("Left over in feet and inches", onTape("Left over", "Sobra"), 26),
         of("Of a stick", say("Of a stick", "De barra"), 17, "", true),
         of("Whole piece", say("Whole piece", "Pieza entera"), 18,
            hover("Run or riser that the piece is for.", "Tramo o tubo vertical para el que es la pieza."),
            true),
         made("For", say("For", "Para"), 37), pen("Sawn", say("Sawn", "Cortado"), 15),
         pen("Laid", say("Laid", "Puesto"), 15)});
}

Paragraphs aboveCuts() {
    Paragraphs text;
    text.span = 12;
    text.outdoors = true;
    text.lines = {
        "=" +
            say("The fewest sticks: rows with one stick number come out of that stick, each saw cut counted as ",
                "Las menos barras posibles: las filas con un mismo número salen de esa barra; cada corte cuenta ") +
            "&IF(units=\"metric\";\"3.2 mm.\";\"1/8 in.\")",
        "=" + say("Measure the trench again before you saw.", "Mida otra vez la zanja antes de cortar.") +
            "&IF(COUNTIF(<taken_words.Severity:*>;\"N*\")+COUNTIF(<taken_words.Severity:*>;\"SIN*\")=0;\"\";" +
            say(" NOT ALL IS ON THIS LIST: see Takeoff.", " LISTA INCOMPLETA: vea Takeoff.") + ")",
        "=" + missing("<crew_cuts.Pipe:1>", say("NO CUTS: the list could not be worked out. See Takeoff.",
                                                "SIN CORTES: no se pudo calcular la lista. Vea Takeoff.")),
        "=" + full("crew_cuts", "<crew_cuts.Pipe:*>"),
    };
    return text;
}

Paragraphs testLines() {
    Paragraphs text;
    text.span = 7;
    text.outdoors = true;
    text.heading = "=" + say("Flush test, before backfill", "Prueba de lavado, antes de rellenar");
    text.linesHigh = 2;
    text.lines = {
        "=" + say("Each inlet with the hose.   Inlets tried: ____________________________________________",
                  "Cada entrada con la manguera.   Entradas probadas: __________________________________"),
        "=" +
            say("Water at the outlet after ______ min.   Standing water at joints: ____________________________",
                "Agua en la salida a los ______ min.   Agua detenida en juntas: ____________________________"),
        "=" +
            say("Grit flushed out: ______   Grates, caps and screens on: ______   Photos taken: ______",
                "Arena lavada: ______   Rejillas, tapas y coladeras puestas: ______   Fotos tomadas: ______"),
        "=" + say("Weather: ______________   Date: ______________   Name: ______________________________",
                  "Tiempo: ______________   Fecha: ______________   Nombre: ____________________________"),
        "=" + say("Owner or inspector: ______________________________   Date: ______________",
                  "Propietario o inspector: ____________________________   Fecha: ______________"),
    };
    return text;
}
Paragraphs asBuiltLines() {
    Paragraphs text;
    text.span = 7;
    text.outdoors = true;
    text.heading = "=" + say("As built", "Como quedó");
    text.lines = {"=" + say("As laid within ", "Colocado a ") + "&{aslaid.tolerance}&" + unit + "&" +
                      say(" of the crew page, every stick.", " de la hoja de la cuadrilla, en cada tubo."),
                  "=" + say("Measure each point from its two corners before it is covered.",
                            "Mida cada punto desde sus dos esquinas antes de cubrirlo.")};
    return text;
}

// Every point with the corners that it is taped from, and room for what was found.
Block asBuilt(const JobSize& size) {
    return {
        .name = "record_points",
        .formula =
            "IF([Nodes.Node]=\"\";\"\";CHOOSE({1;2;3};[Nodes.Node]&\"\";[Nodes.Tie 1]&\"\";[Nodes.Tie 2]&\"\"))",
        .rows = size.nodes + 2,
        .columns = {of("Point", say("Point", "Punto"), 24),
                    made("Corner 1", say("Corner 1, as planned", "Esquina 1, según plano"), 35),
                    made("Corner 2", say("Corner 2, as planned", "Esquina 2, según plano"), 35),
                    pen("As built 1", say("To corner 1", "A la esquina 1"), 24),
                    pen("As built 2", say("To corner 2", "A la esquina 2"), 24),
                    pen("Depth", say("Depth", "Hondo"), 21), pen("Photo", say("Photo", "Foto"), 21)},
        .rowHeight = 9};
}

}  // namespace

Sheet crewSheet(const JobSize& size) {
    Sheet sheet;
    sheet.name = "Crew";
    sheet.title = "=" + say("Crew sheet", "Hoja de la cuadrilla");
    sheet.purpose =
        "=" +
        say("Dig from the outlet uphill. Every depth is measured down from the benchmark, so it holds for any set-up.",
            "Excave desde la salida hacia arriba. Cada profundidad se mide desde el banco de nivel y vale para "
            "cualquier estación del nivel.");
    sheet.parts = {language(), head(), crossings(size), runs(size), stations(size)};
    sheet.paper = sheet.trueSize = true;  // smaller, nobody reads it in a trench
    return sheet;
}

Sheet cutListSheet(const JobSize& size) {
    Sheet sheet;
    sheet.name = "Cut list";
    sheet.title = "=" + say("Cut list", "Lista de cortes");
    sheet.purpose = "=" + say("Which length comes out of which stick.", "Qué largo sale de qué barra.");
    sheet.parts = {aboveCuts(), cuts(size)};
    sheet.paper = sheet.trueSize = true;
    return sheet;
}

Sheet recordSheet(const JobSize& size) {
    Sheet sheet;
    sheet.name = "Record";
    sheet.title = "=" + say("Flush test and as-built record", "Prueba de lavado y registro de obra");
    sheet.purpose = "=" + say("Filled in by hand on the lot, before the trench is closed.",
                              "Se llena a mano en el lote, antes de cerrar la zanja.");
    sheet.parts = {testLines(), asBuiltLines(), asBuilt(size)};
    sheet.landscape = false;
    sheet.paper = sheet.trueSize = true;
    return sheet;
}

}  // namespace trenchbook::sheets
