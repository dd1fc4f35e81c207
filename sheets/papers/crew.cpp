// The crew's page, in the language of its Language cell: useful on paper in the trench, with any set-up of the
// instrument. Stations and cuts are lists of the solved job, as long as the job is.
#include "kit/judged.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

constexpr double belowWidth = 27;

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

// A list whose block could not be worked out is blank, as one without rows is: where the job has runs, that is said.
std::string missing(const std::string& firstCell, const std::string& words) {
    return "IF(AND(SUMPRODUCT([Runs.From]<>\"\")>0;IFERROR(" + firstCell + ";\"\")=\"\");" + words + ";\"\")";
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
         {"IF(N(deepest_cut)>={cut.protect};" + say("Trench of ", "Zanja de ") + "&{cut.protect}&" + unit +
              "&" +
              say(" or deeper: protective system unless stable rock (29 CFR 1926.652). ",
                  " o más: sistema de protección salvo roca estable (29 CFR 1926.652). ") +
              ";\"\")",
          "IF(N(deepest_cut)>={cut.exit};{cut.exit}&" + unit + "&" +
              say(" or deeper: a safe way out within ", " o más: salida segura a menos de ") + "&crew_exit&" +
              say(" of every person (29 CFR 1926.651). ", " de cada persona (29 CFR 1926.651). ") + ";\"\")",
          say("A competent person looks at the trench every day and after rain. ",
              "Una persona competente revisa la zanja cada día y después de la lluvia. "),
          say("Spoil at least ", "Tierra a no menos de ") + "&{spoil.edge}&" + unit + "&" +
              say(" back from the edge. Glue: fresh air, no flame.",
                  " del borde. Cemento: aire libre, sin llama.")});
    return form;
}

Paragraphs head() {
    Paragraphs head;
    head.span = 12;
    head.verdict = true;
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
        // A list that ends with its last row may go on.
        "=IF(OR(IFERROR(INDEX(<crew_stations.Station:*>;ROWS(crew_stations));\"\")<>\"\";"
        "IFERROR(INDEX(<crew_cuts.Pipe:*>;ROWS(crew_cuts));\"\")<>\"\");" +
            say("THIS PAGE IS FULL: there is more than it shows.", "HOJA LLENA: hay más de lo que muestra.") +
            ";\"\")",
    };
    return head;
}

Table crossings(const JobSize& size) {
    const auto listed = [](const char* heading, const std::string& shown, Format format, Measure measure,
                           double width) {
        return Column{
            .heading = heading,
            .shown = "=" + shown,
            .format = format,
            .measure = measure,
            .width = width,
            .formula = std::string("IF(IFERROR(INDEX([Crossings.What];[#])=\"\";1);\"\";INDEX([Crossings.") +
                       heading + "];[#]))"};
    };
    Table table;
    table.name = "Crew crossings";
    table.rows = size.crossings;
    table.columns = {
        listed("What", say("Crossing", "Cruce"), show::text, Measure::Plain, 20),
        listed("From", say("Run from", "Tramo desde"), show::text, Measure::Plain, 17),
        listed("To", say("Run to", "Tramo hasta"), show::text, Measure::Plain, 15),
        listed("At", say("From upper node", "Desde el nodo superior"), show::number(1), Measure::Feet, 18),
        listed("Its depth", say("Its depth", "Su profundidad"), show::number(1), Measure::Inches, 23),
        listed("Clearance", say("Clearance", "Espacio libre"), show::number(1), Measure::Inches, belowWidth),
        listed("Hand-dig", say("Dig by hand", "Excavar a mano"), show::number(1), Measure::Feet, belowWidth),
    };
    return table;
}

BlockColumn of(const char* heading, const std::string& shown, double width, const char* note = "",
               bool feet = false, bool centred = true) {
    return {.heading = heading,
            .shown = "=" + shown,
            .measure = feet ? Measure::Feet : Measure::Plain,
            .width = width,
            .note = note,
            .centred = centred};
}

// What stands there in words: several lines where it needs them.
BlockColumn made(const char* heading, const std::string& shown) {
    return {.heading = heading, .shown = "=" + shown, .width = 70, .wrapped = true};
}
BlockColumn pen(const char* heading, const std::string& shown, double width) {
    return {.heading = heading, .shown = "=" + shown, .width = width, .pen = true};
}

// A list of words for paper; rows beyond its end stay blank.
Block list(const char* name, const char* function, int rows, std::vector<BlockColumn> columns) {
    return {
        .name = name,
        .formula = std::string(function) + "(" + takeoffTables() + ";units;paper_language;" + jobTail() + ")",
        .rows = rows,
        .columns = std::move(columns)};
}

Block stations(const JobSize& size) {
    return list(
        "crew_stations", "JOB.CREW", stationRows(size),
        {of("Line", say("Line", "Línea"), 20, "", false, false),
         of("Station", say("Station", "Estación"), 17, "Distance from the outlet along the pipe.", true),
         of("Node", say("Node", "Nodo"), 15), of("Run", say("Run", "Tramo"), 18),
         of("Pipe", say("Pipe", "Tubo"), 23),
         of("Trench bottom below benchmark",
            say("Trench bottom below benchmark", "Fondo de zanja bajo el banco"), belowWidth,
            "Add today's backsight: that is the rod reading on the trench bottom.", true),
         of("Top of pipe below benchmark", say("Top of pipe below benchmark", "Lomo del tubo bajo el banco"),
            belowWidth, "Add today's backsight: that is the rod reading on top of the laid pipe.", true),
         of("Cut", say("Cut", "Corte"), 15, "", true),
         of("Cut in feet and inches", onTape("Cut", "Corte"), 20), made("Here", say("Here", "Aquí")),
         pen("Rod", say("Rod", "Mira"), 17), pen("As laid", say("As laid", "Colocado"), 18)});
}

Block cuts(const JobSize& size) {
    return list(
        "crew_cuts", "JOB.CUTS.TEXT", cutRows(size),
        {of("Pipe", say("Pipe", "Tubo"), 20, "", false, false),
         of("Stick", say("Stick", "Barra"), 17, "Rows with one number come out of one stick."),
         of("Pieces", say("Pieces", "Piezas"), 15),
         of("Length", say("Length", "Largo"), 18, "Of each piece.", true),
         of("In feet and inches", onTape("Length", "Largo"), 23),
         of("Left over", say("Left over", "Sobra"), belowWidth, "Of the stick, on its last row.", true),
         of("Left over in feet and inches", onTape("Left over", "Sobra"), belowWidth),
         of("Of a stick", say("Of a stick", "De barra"), 15, "", true),
         of("Whole piece", say("Whole piece", "Pieza entera"), 20, "Run or riser that the piece is for.",
            true),
         made("For", say("For", "Para")), pen("Sawn", say("Sawn", "Cortado"), 17),
         pen("Laid", say("Laid", "Puesto"), 18)});
}

Paragraphs aboveCuts() {
    Paragraphs text;
    text.span = 12;
    text.heading = "=" + say("Cut list", "Lista de cortes");
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
    };
    return text;
}

Paragraphs after() {
    Paragraphs text;
    text.span = 12;
    text.heading = "=" + say("Before backfill", "Antes de rellenar");
    text.lines = {
        "=" +
            say("Flush test: each inlet with the hose.   Water at the outlet after ______ min.   Standing water at joints: "
                "______",
                "Prueba de lavado: cada entrada con la manguera.   Agua en la salida a los ______ min.   Agua detenida en "
                "juntas: ______"),
        "=" + say("Date: __________   Name: ____________________",
                  "Fecha: __________   Nombre: ____________________"),
        "=" + say("As laid within ", "Colocado a ") + "&{aslaid.tolerance}&" + unit + "&" +
            say(" of the column, every stick. Measure each point from its two corners before it is covered.",
                " de la columna, en cada tubo. Mida cada punto desde sus dos esquinas antes de cubrirlo."),
    };
    return text;
}

// The corners' names need the width of the wide columns.
Table asBuilt(const JobSize& size) {
    const auto ofNode = [](const char* heading, const std::string& shown, const char* column, double width) {
        return Column{
            .heading = heading,
            .shown = "=" + shown,
            .width = width,
            .formula = std::string("IF(IFERROR(INDEX([Nodes.Node];[#])=\"\";1);\"\";INDEX([Nodes.") + column +
                       "];[#])&\"\")"};
    };
    const auto pen = [](const char* heading, const std::string& shown, double width) {
        return Column{.heading = heading, .shown = "=" + shown, .kind = Kind::Label, .width = width};
    };
    Table table;
    table.name = "Crew as built";
    table.rows = size.nodes;
    table.columns = {ofNode("Point", say("Point", "Punto"), "Node", 20),
                     pen("As built 1", say("As built 1", "Medida 1"), 17),
                     pen("As built 2", say("As built 2", "Medida 2"), 15),
                     pen("Depth", say("Depth", "Hondo"), 18),
                     pen("Photo", say("Photo", "Foto"), 23),
                     ofNode("Corner 1", say("Corner 1", "Esquina 1"), "Tie 1", belowWidth),
                     ofNode("Corner 2", say("Corner 2", "Esquina 2"), "Tie 2", belowWidth)};
    return table;
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
    sheet.parts = {language(), head(),        crossings(size), stations(size), Break{},
                   after(),    asBuilt(size), aboveCuts(),     cuts(size)};
    sheet.landscape = true;  // at three quarters of the size nobody reads it in a trench
    return sheet;
}

}  // namespace trenchbook::sheets
