// What a job is made of: goods, cuts, digging, work and the crew's stakes, from the same tables as the job.

#include <array>

#include "catalog/families.h"
#include "catalog/job_argument.h"
#include "catalog/printed.h"
#include "catalog/recent.h"
#include "trenchbook/core/tape.h"
#include "trenchbook/job/columns.h"
#include "trenchbook/job/read.h"
#include "trenchbook/lines/stations.h"
#include "trenchbook/takeoff/production.h"
#include "trenchbook/takeoff/takeoff.h"

namespace trenchbook::addin {
namespace {

// By place, behind the tables of the job.
constexpr std::size_t pricesArgument = 13, codesArgument = 14, termsArgument = 15;

struct TakenOff {
    std::shared_ptr<const SolvedTables> tables;
    Takeoff takeoff;
    Length step;                           // between stakes
    std::optional<Length> benchmark = {};  // level that the crew measures down from
};

// A table whose first row holds headings, read by two of them; rows below that one or the other cannot be read in
// are passed over: what then misses its stick or its code is found when it is counted.
template <class Take>
void readPairs(const Arguments& a, std::size_t index, const InputColumn& key, const InputColumn& value,
               const Take& take) {
    const Range* cells = a.range(index);
    if (cells == nullptr || cells->rows == 0) return;
    const auto place = [&](const InputColumn& column) {
        for (std::size_t i = 0; i < cells->columns; ++i)
            if (const auto* text = std::get_if<std::string>(&cells->at(0, i));
                text != nullptr && nameKey(*text) == nameKey(column.heading))
                return i;
        const std::string heading = column.heading;
        a.refuse(index, {"a table with the heading " + heading, "una tabla con el encabezado " + heading});
    };
    const std::size_t keys = place(key), values = place(value);
    for (std::size_t row = 1; row < cells->rows; ++row) {
        const CellReading name = readCell(key, cells->at(row, keys), a.units());
        const CellReading read = readCell(value, cells->at(row, values), a.units());
        if (!name.unusable && !name.text.empty() && !read.unusable && !read.blank) take(name.text, read);
    }
}

void readGoods(const Arguments& a, TakeoffTerms& terms) {
    const InputColumn pack{
        .heading = "Pack", .kind = CellKind::Feet, .least = 0, .greatest = 100000, .above = true};
    readPairs(a, pricesArgument, {.heading = "Code"}, pack,
              [&](const std::string& code, const CellReading& read) {
                  terms.sticks[code] = Length::fromSi(*read.number);
              });
    readPairs(a, codesArgument, {.heading = "Piece"}, {.heading = "Buy as"},
              [&](const std::string& piece, const CellReading& read) { terms.buyAs[piece] = read.text; });
}

struct Term {
    InputColumn label;
    void (*take)(double si, TakenOff& taken, TakeoffTerms& terms);
};
std::vector<Term> termTable() {
    return {
        {{.heading = "New sod", .kind = CellKind::Share, .least = 0, .greatest = 1},
         [](double share, TakenOff&, TakeoffTerms& terms) { terms.sodShare = share; }},
        {{.heading = "Buy cleanouts asked",
          .kind = CellKind::Choice,
          .words = {{{"no", "no"}}, {{"yes", "sí"}, {"si"}}}},
         [](double place, TakenOff&, TakeoffTerms& terms) { terms.buyAsked = place > 0; }},
        {{.heading = "Saw cut", .kind = CellKind::Inches, .least = 0, .greatest = 1},
         [](double kerf, TakenOff&, TakeoffTerms& terms) { terms.kerf = Length::fromSi(kerf); }},
        {{.heading = "More hand digging", .kind = CellKind::Feet, .least = 0, .greatest = 10000},
         [](double more, TakenOff&, TakeoffTerms& terms) { terms.handDigMore = Length::fromSi(more); }},
        {{.heading = "Stake every", .kind = CellKind::Feet, .least = 0, .greatest = 1000, .above = true},
         [](double step, TakenOff& taken, TakeoffTerms&) { taken.step = Length::fromSi(step); }},
        {{.heading = "Benchmark", .kind = CellKind::Feet},
         [](double level, TakenOff& taken, TakeoffTerms&) { taken.benchmark = Length::fromSi(level); }},
    };
}

void readTerms(const Arguments& a, TakenOff& taken, TakeoffTerms& terms) {
    const Range* cells = a.range(termsArgument);
    if (cells == nullptr) return;
    if (cells->columns < 2)
        a.refuse(termsArgument, {"two columns: label and value", "dos columnas: rótulo y valor"});
    const InputColumn label{.heading = "label"};
    for (std::size_t row = 0; row < cells->rows; ++row) {
        const std::string name = nameKey(readCell(label, cells->at(row, 0), a.units()).text);
        for (const Term& term : termTable()) {
            if (name != nameKey(term.label.heading)) continue;
            const CellReading read = readCell(term.label, cells->at(row, 1), a.units());
            if (read.unusable) throw Error(Error::Kind::BadArgument, "terms", read.unusable->why);
            if (read.number) term.take(*read.number, taken, terms);
        }
    }
}

std::shared_ptr<const TakenOff> takenOff(const Arguments& a) {
    static Recent<TakenOff> recent(4);
    const std::shared_ptr<const SolvedTables> tables = solvedTables(a);
    std::string question = tables->question;
    addToQuestion(question, a.raw(pricesArgument));
    addToQuestion(question, a.raw(codesArgument));
    addToQuestion(question, a.raw(termsArgument));
    return recent.get(question, [&] {
        TakenOff taken{tables, {}, a.units() == UnitSystem::Metric ? Length::metres(3) : Length::feet(10)};
        TakeoffTerms terms;
        readGoods(a, terms);
        readTerms(a, taken, terms);
        taken.takeoff = takeOff(tables->job, tables->solved, terms);
        return taken;
    });
}

double blankItem(double) { return blankCell(); }
std::string blankItem(const std::string&) { return {}; }

// Calc repeats an answer of one row over the whole area of an array formula: a blank row keeps it from that.
template <class Item>
void neverOneRow(Block<Item>& block) {
    while (block.items.size() < 2 * block.columns) block.items.push_back(blankItem(Item()));
}

// Rows of a block, each made by add(row, push).
template <class Item, class Push>
Block<Item> rowsOf(std::size_t rows, std::size_t columns, const Push& push) {
    Block<Item> block{.columns = columns, .items = {}};
    block.items.reserve(rows * columns);
    for (std::size_t row = 0; row < rows; ++row) push(row, block.items);
    neverOneRow(block);
    return block;
}

double orError(std::optional<double> number) { return number ? *number : errorCell(badArgumentCode); }
double orBlank(std::optional<double> number) { return number ? *number : blankCell(); }
template <class Kind>
double orError(const Arguments& a, Measure measure, const std::optional<Kind>& quantity) {
    return quantity ? a.in(measure, *quantity) : errorCell(badArgumentCode);
}

Result pieces(const Arguments& a) {
    const auto taken = takenOff(a);
    const std::vector<TakeoffLine>& lines = taken->takeoff.lines;
    return rowsOf<double>(lines.size(), 2, [&](std::size_t row, std::vector<double>& items) {
        const TakeoffLine& line = lines[row];
        items.push_back(orError(line.net ? std::optional(line.net->in(a.units())) : std::nullopt));
        items.push_back(line.fewestSticks > 0 ? static_cast<double>(line.fewestSticks) : blankCell());
    });
}
// "6 in SDR35 pipe" of a line that buys pipe.
Text pipeInWords(const TakenOff& taken, const TakeoffLine& line) {
    for (const PipeLength& length : taken.takeoff.lengths) {
        if (length.code != line.code) continue;
        const std::string size = sizeWithUnit(length.pipe) + " " + length.pipe.system;
        return {size + " pipe", "tubo " + size};
    }
    return {};
}

// What keeps the takeoff from being whole, and the cleanouts that the rules ask.
Result pieceFindings(const Arguments& a) {
    const auto taken = takenOff(a);
    const Job& job = taken->tables->job;
    Texts block{.columns = 5, .items = {}};
    const auto push = [&](const Text& severity, const Text& sheet, const std::string& name,
                          const Text& says) {
        const std::string said = says.in(a.language());
        for (const std::string& item : {severity.in(a.language()), sheet.in(a.language()), name, said,
                                        name.empty() ? said : name + ": " + said})
            block.items.push_back(item);
    };
    const auto segment = [&](std::size_t run) { return job.runs[run].from + "-" + job.runs[run].to; };
    for (const Finding& finding : taken->takeoff.findings) {
        std::string name;
        if (finding.row != Finding::whole && finding.part == Part::Runs) name = segment(finding.row);
        if (finding.row != Finding::whole && finding.part == Part::Nodes) name = job.nodes[finding.row].name;
        push(severityWord(finding.severity), partWord(finding.part), name, finding.says);
    }
    for (const AskedHere& asked : taken->takeoff.asked) {
        push(severityWord(Severity::Check), partWord(Part::Runs), segment(asked.run),
             Text{"the rules ask ", "las reglas piden "} +
                 counted(asked.count, {"more cleanout: ", "registro más: "},
                         {"more cleanouts: ", "registros más: "}) +
                 asked.where);
    }
    neverOneRow(block);
    return block;
}

Result pieceWords(const Arguments& a) {
    const auto taken = takenOff(a);
    const std::vector<TakeoffLine>& lines = taken->takeoff.lines;
    return rowsOf<std::string>(lines.size(), 4, [&](std::size_t row, std::vector<std::string>& items) {
        const TakeoffLine& line = lines[row];
        items.push_back(line.code);
        items.push_back(line.net ? line.net->unit(a.units()).in(a.language()) : "");
        items.push_back(line.from.in(a.language()));
        items.push_back(pipeInWords(*taken, line).in(a.language()));
    });
}

Result digging(const Arguments& a) {
    const auto taken = takenOff(a);
    const std::vector<Run>& runs = taken->tables->job.runs;
    return rowsOf<double>(runs.size(), 7, [&](std::size_t row, std::vector<double>& items) {
        if (runs[row].blank) {
            items.insert(items.end(), 7, blankCell());
            return;
        }
        const RunTakeoff& run = taken->takeoff.runs[row];
        items.push_back(orError(a, Measure::Inches, run.trenchWidth));
        items.push_back(orError(a, Measure::CubicYards, run.bank));
        items.push_back(orError(a, Measure::CubicYards, run.bedding));
        items.push_back(orError(a, Measure::CubicYards, run.pipeRoom));
        items.push_back(orError(a, Measure::SquareFeet, run.lawn));
        items.push_back(orError(run.bells ? std::optional(static_cast<double>(*run.bells)) : std::nullopt));
        items.push_back(orError(run.cementPints));
    });
}

Result cuts(const Arguments& a) {
    const auto taken = takenOff(a);
    const Takeoff& takeoff = taken->takeoff;
    return rowsOf<double>(takeoff.cuts.rows.size(), 5, [&](std::size_t row, std::vector<double>& items) {
        const CutRow& cut = takeoff.cuts.rows[row];
        const std::optional<std::size_t>& run = takeoff.lengths[cut.piece].run;
        items.push_back(static_cast<double>(cut.stick));
        items.push_back(static_cast<double>(cut.many));
        items.push_back(a.in(Measure::Feet, cut.length));
        items.push_back(cut.leftOver ? a.in(Measure::Feet, *cut.leftOver) : blankCell());
        items.push_back(orBlank(run ? std::optional(static_cast<double>(*run + 1)) : std::nullopt));
    });
}
// A length on paper: with two decimals, and as the tape shows it: in feet and inches, in a metric job in mm.
std::string onPaper(const Arguments& a, const std::optional<Length>& length) {
    return length ? twoDecimals(a.in(Measure::Feet, *length)) : "";
}
std::string inTape(const Arguments& a, const std::optional<Length>& length, int fraction) {
    if (!length) return "";
    return a.units() == UnitSystem::Metric ? plain(length->millimetres(), 0) + " mm"
                                           : tapeText(*length, fraction);
}

Result cutWords(const Arguments& a) {
    const auto taken = takenOff(a);
    const Takeoff& takeoff = taken->takeoff;
    const Text to{" to ", " a "};
    return rowsOf<std::string>(takeoff.cuts.rows.size(), 10,
                               [&](std::size_t row, std::vector<std::string>& items) {
                                   const CutRow& cut = takeoff.cuts.rows[row];
                                   const PipeLength& piece = takeoff.lengths[cut.piece];
                                   const std::string first = std::to_string(cut.stick),
                                                     last = std::to_string(cut.stick + cut.many - 1);
                                   items.push_back(piece.pipe.name);
                                   items.push_back(cut.many > 1 ? first + to.in(a.language()) + last : first);
                                   items.push_back(std::to_string(cut.many));
                                   items.push_back(onPaper(a, cut.length));
                                   items.push_back(inTape(a, cut.length, 8));
                                   items.push_back(onPaper(a, cut.leftOver));
                                   items.push_back(inTape(a, cut.leftOver, 8));
                                   items.push_back(onPaper(a, piece.stick));
                                   items.push_back(onPaper(a, piece.length));
                                   items.push_back(piece.piece.in(a.language()));
                               });
}

Result work(const Arguments& a) {
    const auto taken = takenOff(a);
    const std::vector<WorkAmount>& works = taken->takeoff.works;
    return rowsOf<double>(works.size(), 1, [&](std::size_t row, std::vector<double>& items) {
        const std::optional<NetAmount>& amount = works[row].amount;
        items.push_back(orError(amount ? std::optional(amount->in(a.units())) : std::nullopt));
    });
}
Result workWords(const Arguments& a) {
    const auto taken = takenOff(a);
    const std::vector<WorkAmount>& works = taken->takeoff.works;
    return rowsOf<std::string>(works.size(), 4, [&](std::size_t row, std::vector<std::string>& items) {
        const WorkAmount& one = works[row];
        items.push_back(one.name.in(a.language()));
        items.push_back(one.amount ? one.amount->unit(a.units()).in(a.language()) : "");
        items.push_back(one.from.in(a.language()));
        items.emplace_back(workKey(one.work));
    });
}

std::vector<Stake> stakesOf(const TakenOff& taken) {
    return stakes(taken.tables->solved.lines, taken.tables->job.runs, taken.step);
}
// Straight between the ends of a run.
std::optional<Length> along(const Run& run, const Stake& stake, const std::optional<Length>& down,
                            const std::optional<Length>& up) {
    if (!down || !up || !run.length) return std::nullopt;
    return *down + (*up - *down) * (stake.fromLowerEnd / *run.length);
}
// The row of Nodes at which the stake stands; none between the nodes.
std::optional<std::size_t> nodeAt(const SolvedTables& tables, const Stake& stake) {
    const SolvedRun& run = tables.solved.runs[stake.row];
    // Stations are sums: an end is met but for the last digits of them.
    const Length hair = Length::metres(1e-6);
    const bool lower = stake.fromLowerEnd < hair;
    const bool upper = tables.job.runs[stake.row].length &&
                       !(stake.fromLowerEnd + hair < *tables.job.runs[stake.row].length);
    const std::size_t row = lower ? run.lower : upper ? run.upper : Network::none;
    return row == Network::none ? std::nullopt : std::optional(row);
}

// What the crew measures at a stake.
struct StakeLevels {
    std::optional<Length> ground, invert, bottom, top, cut;
};
StakeLevels levelsAt(const SolvedTables& tables, const Stake& stake) {
    const Run& run = tables.job.runs[stake.row];
    const SolvedRun& solved = tables.solved.runs[stake.row];
    StakeLevels at;
    at.invert = along(run, stake, solved.invertDown, solved.invertUp);
    if (run.length) at.ground = groundOver(run, solved, std::max(Length(), *run.length - stake.fromLowerEnd));
    if (!at.invert || !run.pipe || !run.pipe->outside) return at;
    at.bottom = *at.invert - wallOf(*run.pipe) - tables.job.rules.length("bedding.depth");
    at.top = *at.invert + invertToOutsideTop(*run.pipe);
    if (at.ground) at.cut = *at.ground - *at.bottom;
    return at;
}
// The node's kinds and what is set there.
std::string builtAt(const Arguments& a, const TakenOff& taken, std::size_t node) {
    std::string here = taken.tables->job.nodes[node].kinds.text().in(a.language());
    const std::string& made = taken.takeoff.nodes[node].words.in(a.language());
    if (!made.empty()) here += (here.empty() ? "" : ": ") + made;
    return here;
}

Result stakeNumbers(const Arguments& a) {
    const auto taken = takenOff(a);
    const std::vector<Stake> all = stakesOf(*taken);
    return rowsOf<double>(all.size(), 7, [&](std::size_t i, std::vector<double>& items) {
        const Stake& stake = all[i];
        const StakeLevels at = levelsAt(*taken->tables, stake);
        items.push_back(static_cast<double>(stake.row + 1));
        items.push_back(a.in(Measure::Feet, stake.station));
        for (const std::optional<Length>& level : {at.ground, at.invert, at.bottom, at.top, at.cut})
            items.push_back(orError(a, Measure::Feet, level));
    });
}
Result stakeWords(const Arguments& a) {
    const auto taken = takenOff(a);
    const SolvedTables& tables = *taken->tables;
    const std::vector<Stake> all = stakesOf(*taken);
    return rowsOf<std::string>(all.size(), 5, [&](std::size_t i, std::vector<std::string>& items) {
        const Run& run = tables.job.runs[all[i].row];
        const std::optional<std::size_t> node = nodeAt(tables, all[i]);
        items.push_back(run.line);
        items.push_back(node ? tables.job.nodes[*node].name : "");
        items.push_back(run.from + "-" + run.to);
        items.push_back(run.pipe ? run.pipe->name : "");
        items.push_back(node ? builtAt(a, *taken, *node) : "");
    });
}
// The same for paper: levels as depths below the benchmark of the terms.
Result crewRows(const Arguments& a) {
    const auto taken = takenOff(a);
    const SolvedTables& tables = *taken->tables;
    const std::vector<Stake> all = stakesOf(*taken);
    const auto below = [&](const std::optional<Length>& level) {
        return onPaper(a,
                       level && taken->benchmark ? std::optional(*taken->benchmark - *level) : std::nullopt);
    };
    Texts block{.columns = 8, .items = {}};
    std::optional<std::size_t> before;
    std::array<std::string, 2> depthsBefore;
    for (const Stake& stake : all) {
        const Run& run = tables.job.runs[stake.row];
        const std::optional<std::size_t> node = nodeAt(tables, stake);
        const StakeLevels at = levelsAt(tables, stake);
        const std::array<std::string, 2> depths = {below(at.bottom), below(at.top)};
        // Two runs meet there: what is set is said once, or the crew sets it twice; where the pipe goes on at its level,
        // one row says all.
        const bool said = node && node == before;
        const bool goesOn = said && depths == depthsBefore;
        before = node;
        depthsBefore = depths;
        if (goesOn) continue;
        for (const std::string& item :
             {plain(a.in(Measure::Feet, stake.station), 1),
              node ? tables.job.nodes[*node].name : std::string(), run.from + "-" + run.to, depths[0],
              depths[1], onPaper(a, at.cut), inTape(a, at.cut, 2),
              node && !said ? builtAt(a, *taken, *node) : std::string()})
            block.items.push_back(item);
    }
    neverOneRow(block);
    return block;
}

std::vector<Argument> takeoffArguments() {
    std::vector<Argument> all = jobArguments();
    all.push_back({.name = "prices",
                   .measure = Measure::Table,
                   .says = {"price list with the headings Code and Pack, the length of a stick",
                            "lista de precios con los encabezados Code y Pack, el largo de una barra"},
                   .optional = true});
    all.push_back({.name = "codes",
                   .measure = Measure::Table,
                   .says = {"table with the headings Piece and Buy as: what is bought in its place",
                            "tabla con los encabezados Piece y Buy as: lo que se compra en su lugar"},
                   .optional = true});
    all.push_back(
        {.name = "terms",
         .measure = Measure::Table,
         .says = {"label and value: New sod, Buy cleanouts asked, Saw cut, More hand digging, Stake every, "
                  "Benchmark",
                  "rótulo y valor: New sod, Buy cleanouts asked, Saw cut, More hand digging, Stake every, "
                  "Benchmark"},
         .optional = true});
    return all;
}

}  // namespace

std::vector<Function> takeoffFunctions() {
    constexpr const char* source =
        "counted from the solved job; how a node is built is common practice, no source; docs/methods";
    const auto block = [&](std::string name, Text says, Returns returns, const char* columns,
                           Result (*call)(const Arguments&)) {
        std::string example = name + jobExample();
        return Function{.name = std::move(name),
                        .says = std::move(says),
                        .arguments = takeoffArguments(),
                        .later = jobLater(),
                        .returns = returns,
                        .measure = Measure::Feet,
                        .columns = columns,
                        .source = source,
                        .example = std::move(example),
                        .call = call};
    };
    return {
        block("JOB.PIECES",
              {"what goes into the ground, a row a code: net, without waste and packs",
               "lo que queda en la tierra, una fila por código: neto, sin merma ni paquetes"},
              Returns::NumberBlock, "Net, Fewest sticks", pieces),
        block("JOB.PIECES.TEXT",
              {"code, unit and origin of each row of JOB.PIECES",
               "código, unidad y origen de cada fila de JOB.PIECES"},
              Returns::WordBlock, "Code, Unit, From, Pipe", pieceWords),
        block("JOB.PIECES.FINDINGS",
              {"what cannot be counted, and cleanouts that the rules ask",
               "lo que no se puede contar, y registros que piden las reglas"},
              Returns::WordBlock, "Severity, Sheet, Name, Says, Listed", pieceFindings),
        block("JOB.DIG",
              {"of each run: trench, soil, bedding, lawn, joints; a row a row of runs",
               "de cada tramo: zanja, tierra, cama, césped, juntas; una fila por fila de tramos"},
              Returns::NumberBlock,
              "Trench width (in), Soil in place (cu yd), Bedding (cu yd), Pipe room (cu yd), Lawn (sq "
              "ft), Joints, "
              "Cement pints",
              digging),
        block("JOB.CUTS",
              {"cut list: which length comes out of which stick",
               "lista de cortes: qué largo sale de qué barra"},
              Returns::NumberBlock, "Stick, Pieces, Length (ft), Left over (ft), Row", cuts),
        block(
            "JOB.CUTS.TEXT",
            {"pipe and purpose of each row of JOB.CUTS",
             "tubo y destino de cada fila "
             "de JOB.CUTS"},
            Returns::WordBlock,
            "Pipe, Stick, Pieces, Length (ft), In feet and inches, Left over (ft), Left over in feet and inches, "
            "Of a stick (ft), Whole piece (ft), For",
            cutWords),
        block("JOB.WORK", {"how much of each kind of work", "cuánto de cada clase de trabajo"},
              Returns::NumberBlock, "Amount", work),
        block("JOB.WORK.TEXT",
              {"kind of work, unit, origin and lasting key of each row of JOB.WORK",
               "clase de trabajo, unidad, origen y clave que no cambia de cada fila de JOB.WORK"},
              Returns::WordBlock, "Work, Unit, From, Key", workWords),
        block("JOB.STAKES",
              {"points for the crew in the order of laying: levels of trench and pipe",
               "puntos para la cuadrilla en el orden de tendido: niveles de zanja y tubo"},
              Returns::NumberBlock,
              "Row, Station (ft), Ground (ft), Invert (ft), Trench bottom (ft), Top of pipe (ft), Cut (ft)",
              stakeNumbers),
        block("JOB.STAKES.TEXT",
              {"line, node, run, pipe and pieces of each row of JOB.STAKES",
               "línea, nodo, tramo, tubo y piezas de cada fila de JOB.STAKES"},
              Returns::WordBlock, "Line, Node, Run, Pipe, Here", stakeWords),
        block(
            "JOB.CREW",
            {"the crew's list for paper: each station once with its depths below the benchmark; twice where the trench steps",
             "la lista de la cuadrilla para papel: cada estación una vez con sus profundidades bajo el banco; dos veces "
             "donde la zanja hace escalón"},
            Returns::WordBlock,
            "Station (ft), Node, Run, Trench bottom below benchmark (ft), Top of pipe below benchmark (ft), "
            "Cut (ft), Cut in feet and inches, Here",
            crewRows),
    };
}

}  // namespace trenchbook::addin
