// The crew's page, in English and in Spanish: useful on paper in the trench, with any set-up of the instrument.
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

constexpr int cutRows = 240;
constexpr double belowWidth = 28;
const std::string inchesPerLevel = "IF(units=\"metric\";1000;12)";

std::string ofRun(const std::string& column) { return "INDEX([Runs." + column + "];[Row])"; }
std::string guarded(const std::string& formula) {
    return "IF([Row]=\"\";\"\";IFERROR(" + formula + ";\"\"))";
}
std::string quoted(const std::string& words) { return "\"" + words + "\""; }

// The kind of a node in the page's language; Nodes holds the English word.
std::string kindWord(const std::string& kind, bool spanish) {
    if (!spanish) return kind;
    return "SWITCH(" + kind +
           ";\"downspout\";\"bajante\";\"channel\";\"canal con rejilla\";\"basin\";\"caja de registro\";\"bend\";\"codo\";"
           "\"cleanout\";\"registro de limpieza\";\"wye\";\"ye\";\"crossing\";\"cruce\";\"tee\";\"te del pozo\";"
           "\"outlet\";\"salida\";\"cap\";\"tapa\";" +
           kind + ")";
}

Sheet crewPage(bool spanish) {
    const auto say = [&](const char* en, const char* es) { return std::string(spanish ? es : en); };
    const std::string name = spanish ? "Crew es" : "Crew";

    Paragraphs head;
    head.span = 12;
    head.verdict = true;
    head.lines = {
        "=IF(LEFT(ticket_state;2)=\"NO\";" +
            say("\"NOT READY TO DIG: \"&MID(ticket_state;5;99)&\". Call 811 and wait for every answer.\"",
                "\"NO EXCAVAR TODAVÍA: falta el aviso del 811 o está vencido. Llame al 811 y espere todas las respuestas.\"") +
            ";" + say("\"Ticket \"", "\"Aviso 811: \"") + "&ticket&" + say("\" until \"", "\" hasta \"") +
            "&TEXT(ticket_until;\"YYYY-MM-DD\"))",
        "=" + say("\"Benchmark: \"", "\"Banco de nivel: \"") + "&crew_mark&" +
            say("\", level \"", "\", nivel \"") + "&TEXT(crew_level;\"0.00\")&" +
            say("\".   Backsight today: __________\"", "\".   Lectura de hoy en el banco: __________\""),
        say("Rod reading = backsight today + the number in the column. A rod reading that is too small means dig deeper.",
            "Lectura de mira = lectura de hoy en el banco + el número de la columna. Si la lectura sale menor, falta excavar."),
        "=IF(N(deepest_cut)>=IF(units=\"metric\";1.52;5);" +
            quoted(say("Trench 5 ft or deeper: protective system unless stable rock (29 CFR 1926.652). ",
                       "Zanja de 5 ft o más: sistema de protección salvo roca estable (29 CFR 1926.652). ")) +
            ";\"\")&IF(N(deepest_cut)>=IF(units=\"metric\";1.22;4);" +
            quoted(say("4 ft or deeper: a safe way out within 25 ft of every person (29 CFR 1926.651). ",
                       "4 ft o más: salida segura a menos de 25 ft de cada persona (29 CFR 1926.651). ")) +
            ";\"\")&" +
            quoted(say(
                "A competent person looks at the trench every day and after rain. Spoil 2 ft back from the edge. Glue: fresh air, no flame.",
                "Una persona competente revisa la zanja cada día y después de la lluvia. Tierra a 2 ft del borde. Cemento: aire libre, sin llama.")),
    };

    Table crossings;
    crossings.name = name + " crossings";
    crossings.rows = 8;
    const auto listed = [](std::string heading, const char* column, Format format, Measure measure,
                           double width) {
        return Column{
            .heading = std::move(heading),
            .format = format,
            .measure = measure,
            .width = width,
            .formula = std::string("IFERROR(IF(INDEX([Crossings.What];[#])=\"\";\"\";INDEX([Crossings.") +
                       column + "];[#]));\"\")"};
    };
    crossings.columns = {
        listed(say("Crossing", "Cruce"), "What", show::text, Measure::Plain, 22),
        listed(say("Run from", "Tramo desde"), "From", show::text, Measure::Plain, 19),
        listed(say("Run to", "Tramo hasta"), "To", show::text, Measure::Plain, 17),
        listed(say("From upper node", "Desde el nodo superior"), "At", show::number(1), Measure::Feet, 18),
        listed(say("Its depth", "Su profundidad"), "Its depth", show::number(1), Measure::Inches, 23),
        listed(say("Clearance", "Espacio libre"), "Clearance", show::number(1), Measure::Inches, belowWidth),
        listed(say("Dig by hand", "Excavar a mano"), "Hand-dig", show::number(1), Measure::Feet, belowWidth),
    };

    const auto below = [&](std::string heading, const std::string& level, const char* note) {
        return Column{.heading = std::move(heading),
                      .format = show::number(2),
                      .measure = Measure::Feet,
                      .width = belowWidth,
                      .formula = guarded("crew_level-(" + level + ")"),
                      .note = note};
    };
    const auto pen = [](std::string heading, double width) {
        return Column{.heading = std::move(heading), .kind = Kind::Label, .width = width};
    };
    const auto helper = [](const char* heading, const std::string& formula) {
        return Column{
            .heading = heading, .format = show::number(2), .width = 12, .formula = formula, .helper = true};
    };
    Table table;
    table.name = name;
    table.rows = 240;
    table.columns = {
        {.heading = say("Line", "Línea"), .width = 22, .formula = guarded(ofRun("Line"))},
        {.heading = say("Station", "Estación"),
         .format = show::number(1),
         .measure = Measure::Feet,
         .width = 19,
         .formula = guarded("INDEX(stakes_block;[#]-1;2)"),
         .note = "Distance from the outlet along the pipe."},
        {.heading = say("Node", "Nodo"), .width = 17, .formula = guarded("[At node]"), .centred = true},
        {.heading = say("Run", "Tramo"),
         .width = 18,
         .formula = guarded(ofRun("From") + "&\"-\"&" + ofRun("To")),
         .centred = true},
        {.heading = say("Pipe", "Tubo"), .width = 23, .formula = guarded(ofRun("Pipe")), .centred = true},
        below(say("Trench bottom below benchmark", "Fondo de zanja bajo el banco"), "[Bottom]",
              "Add today's backsight: that is the rod reading on the trench bottom."),
        below(say("Top of pipe below benchmark", "Lomo del tubo bajo el banco"), "[Top]",
              "Add today's backsight: that is the rod reading on top of the laid pipe."),
        {.heading = say("Cut", "Corte"),
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 15,
         .formula = guarded("[Ground]-[Bottom]")},
        {.heading = say("Cut in feet and inches", "Corte en pies y pulgadas"),
         .width = 24,
         .formula = guarded("IF(units=\"metric\";\"\";TAPE.TEXT([Ground]-[Bottom];2))"),
         .centred = true},
        {.heading = say("Here", "Aquí"),
         .width = 52,
         .formula = guarded("IF([At node]=\"\";\"\";IFERROR(" +
                            kindWord("INDEX([Nodes.Kind];MATCH([At node];[Nodes.Node];0))", spanish) +
                            "&IF(INDEX([Nodes.Bend made of];MATCH([At node];[Nodes.Node];0))=\"\";\"\";" +
                            quoted(say(", turn with ", ", giro con ")) +
                            "&INDEX([Nodes.Bend made of];MATCH([At node];[Nodes.Node];0)));\"\"))")},
        pen(say("Rod", "Mira"), 17),
        pen(say("As laid", "Colocado"), 18),
        helper("Row", "IFERROR(1*INDEX(stakes_block;[#]-1;1);\"\")"),
        helper("Up", guarded("INDEX(stakes_block;[#]-1;3)")),
        helper("At node", guarded("IF([Up]<0.001;" + ofRun("To") + ";IF(ABS([Up]-TAPE.FEET(" +
                                  ofRun("Length") + ";units))<0.001;" + ofRun("From") + ";\"\"))")),
        helper("Ground", guarded(ofRun("Ground down") + "+(" + ofRun("Ground up") + "-" +
                                 ofRun("Ground down") + ")*[Up]/TAPE.FEET(" + ofRun("Length") + ";units)")),
        helper("Invert", guarded(ofRun("Invert down") + "+" + ofRun("Slope %") + "*[Up]")),
        helper("Top", guarded("[Invert]+" + ofRun("Ground down") + "-" + ofRun("Invert down") + "-" +
                              ofRun("Cover down") + "/" + inchesPerLevel)),
        helper("Bottom", guarded("[Invert]-(" + ofRun("Invert down") + "-" + ofRun("Ground down") + "+" +
                                 ofRun("Cut down") + ")")),
    };

    Table built;
    built.name = name + " as built";
    built.rows = 30;
    const auto ofNode = [](std::string heading, const char* column, double width) {
        return Column{.heading = std::move(heading),
                      .width = width,
                      .formula = std::string("IFERROR(IF(INDEX([Nodes.Node];[#])=\"\";\"\";INDEX([Nodes.") +
                                 column + "];[#])&\"\");\"\")"};
    };
    // The corners' names need the width of the wide columns.
    built.columns = {ofNode(say("Point", "Punto"), "Node", 22),
                     pen(say("As built 1", "Medida 1"), 19),
                     pen(say("As built 2", "Medida 2"), 17),
                     pen(say("Depth", "Hondo"), 18),
                     pen(say("Photo", "Foto"), 23),
                     ofNode(say("Corner 1", "Esquina 1"), "Tie 1", belowWidth),
                     ofNode(say("Corner 2", "Esquina 2"), "Tie 2", belowWidth)};

    // The cut list in the columns of the table above.
    const std::string cutting = name + " cutting";
    const auto ofCut = [](int column) { return "INDEX(cuts_block;[#]-1;" + std::to_string(column) + ")"; };
    const auto cutGuarded = [](const std::string& formula) {
        return "IF([Piece]=\"\";\"\";IFERROR(" + formula + ";\"\"))";
    };
    const auto ofPiece = [](const std::string& column) { return "INDEX([Cuts." + column + "];[Piece])"; };
    const auto feet = [&](std::string heading, double width, const std::string& formula,
                          const char* note = "") {
        return Column{.heading = std::move(heading),
                      .format = show::number(2),
                      .measure = Measure::Feet,
                      .width = width,
                      .formula = cutGuarded(formula),
                      .note = note};
    };
    const auto inInches = [&](std::string heading, double width, const std::string& length) {
        return Column{.heading = std::move(heading),
                      .width = width,
                      .formula = cutGuarded("IF(OR(units=\"metric\";" + length + "=\"\");\"\";TAPE.TEXT(" +
                                            length + ";8))"),
                      .centred = true};
    };
    Table cuts;
    cuts.name = cutting;
    cuts.rows = cutRows;
    cuts.columns = {
        {.heading = say("Pipe", "Tubo"), .width = 22, .formula = cutGuarded(ofPiece("Pipe of it"))},
        {.heading = say("Stick", "Barra"),
         .width = 19,
         .formula = cutGuarded("[First]&IF([How many]>1;" + quoted(say(" to ", " a ")) +
                               "&([First]+[How many]-1);\"\")"),
         .note = "Rows with one number come out of one stick.",
         .centred = true},
        {.heading = say("Pieces", "Piezas"),
         .format = show::number(0),
         .width = 17,
         .formula = cutGuarded("[How many]"),
         .centred = true},
        feet(say("Length", "Largo"), 18, "1*" + ofCut(4), "Of each piece."),
        inInches(say("In feet and inches", "En pies y pulgadas"), 23, "[" + say("Length", "Largo") + "]"),
        feet(say("Left over", "Sobra"), belowWidth, "IF(" + ofCut(5) + "=\"\";\"\";" + ofCut(5) + ")",
             "Of the stick, on its last row."),
        inInches(say("Left over in feet and inches", "Sobra en pies y pulgadas"), belowWidth,
                 "[" + say("Left over", "Sobra") + "]"),
        feet(say("Of a stick", "De barra"), 15, ofPiece("Stick")),
        feet(say("Whole piece", "Pieza entera"), 24, ofPiece("Cut length"),
             "Run or riser that the piece is for, all of it."),
        {.heading = say("For", "Para"),
         .width = 52,
         .formula =
             cutGuarded(spanish ? "IF(LEFT(" + ofPiece("Piece for") +
                                      ";9)=\"riser at \";\"tubo vertical en \"&MID(" + ofPiece("Piece for") +
                                      ";10;99);SUBSTITUTE(" + ofPiece("Piece for") + ";\" to \";\" a \"))"
                                : ofPiece("Piece for"))},
        pen(say("Sawn", "Cortado"), 17),
        pen(say("Laid", "Puesto"), 18),
        helper("Piece", "IFERROR(1*INDEX(cuts_block;[#]-1;1);\"\")"),
        helper("First", cutGuarded("1*" + ofCut(2))),
        helper("How many", cutGuarded("1*" + ofCut(3))),
        helper("In all", cutGuarded("[How many]*" + ofCut(4))),
    };
    const std::string missing = "(SUM([Cuts.Cut length])-SUM([" + cutting + ".In all]))";
    Paragraphs aboveCuts;
    aboveCuts.span = 12;
    aboveCuts.heading = say("Cut list", "Lista de cortes");
    aboveCuts.lines = {
        say("The fewest sticks: rows with one stick number come out of that stick, each saw cut counted as 1/8 in. Measure the trench again before you saw.",
            "Las menos barras posibles: las filas con un mismo número salen de esa barra; cada corte cuenta 1/8 in. Mida otra vez la zanja antes de cortar."),
        "=IF(ABS(" + missing + ")<0.05;\"\";" +
            say("\"NOT ALL IS ON THIS LIST: \"", "\"LISTA INCOMPLETA: faltan \"") + "&TEXT(" + missing +
            ";\"0.0\")&IF(units=\"metric\";\" m\";\" ft\")&" +
            say("\" of pipe is missing: a pipe without a stick length on Prices, or more pieces than rows here.\"",
                "\" de tubo: un tubo sin largo de barra en Prices, o más piezas que filas aquí.\"") +
            ")",
    };

    Paragraphs after;
    after.span = 12;
    after.heading = say("Before backfill", "Antes de rellenar");
    after.lines = {
        say("Flush test: each inlet with the hose.   Water at the outlet after ______ min.   Standing water at joints: ______   Date: __________   Name: ____________________",
            "Prueba de lavado: cada entrada con la manguera.   Agua en la salida a los ______ min.   Agua detenida en juntas: ______   Fecha: __________   Nombre: ____________________"),
        say("As laid within 0.02 ft of the column, every stick. Measure each point from its two corners before it is covered.",
            "Colocado a 0.02 ft de la columna, en cada tubo. Mida cada punto desde sus dos esquinas antes de cubrirlo."),
    };

    Sheet sheet;
    sheet.name = name;
    sheet.title = say("Crew sheet", "Hoja de la cuadrilla");
    sheet.purpose = say(
        "Dig from the outlet uphill. Every depth is measured down from the benchmark, so it holds for any set-up.",
        "Excave desde la salida hacia arriba. Cada profundidad se mide desde el banco de nivel: vale con cualquier estación del aparato.");
    sheet.parts = {head, crossings, table, Break{}, after, built, aboveCuts, cuts};
    sheet.landscape = false;
    return sheet;
}

}  // namespace

Sheet crewSheet(const JobSize&) { return crewPage(false); }
Sheet crewSpanishSheet(const JobSize&) { return crewPage(true); }

}  // namespace trenchbook::sheets
