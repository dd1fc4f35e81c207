// What a job is made of: goods, cuts, digging, work and the crew's stakes, from the same tables as the job.
#include "catalog/families.h"
#include "catalog/job_argument.h"
#include "catalog/recent.h"
#include "trenchbook/job/columns.h"
#include "trenchbook/job/read.h"
#include "trenchbook/lines/stations.h"
#include "trenchbook/takeoff/takeoff.h"

namespace trenchbook::addin {
namespace {

// By place, behind the tables of the job.
constexpr std::size_t goodsArgument = 11, termsArgument = 12;

struct TakenOff {
    std::shared_ptr<const SolvedTables> tables;
    Takeoff takeoff;
    Length step;  // between stakes
};

// A cell of the two tables here, read as the job's own cells are. Errors: in the cell's own words.
CellReading strictly(const InputColumn& column, const Cell& cell, UnitSystem units, const char* argument) {
    CellReading reading = readCell(column, cell, units);
    if (reading.unusable) throw Error(Error::Kind::BadArgument, argument, reading.unusable->why);
    return reading;
}

void readGoods(const Arguments& a, TakeoffTerms& terms) {
    const Range* cells = a.range(goodsArgument);
    if (cells == nullptr) return;
    if (cells->columns != 3)
        a.refuse(goodsArgument,
                 {"three columns: code, stick, buy as", "tres columnas: código, barra, comprar como"});
    const InputColumn code{.heading = "code"}, buyAs{.heading = "buy as"};
    const InputColumn stick{
        .heading = "stick", .kind = CellKind::Feet, .least = 0, .greatest = 1000, .above = true};
    for (std::size_t row = 0; row < cells->rows; ++row) {
        const std::string name = strictly(code, cells->at(row, 0), a.units(), "goods").text;
        if (name.empty()) continue;
        if (const auto length = strictly(stick, cells->at(row, 1), a.units(), "goods").number)
            terms.sticks[name] = Length::fromSi(*length);
        if (const std::string other = strictly(buyAs, cells->at(row, 2), a.units(), "goods").text;
            !other.empty())
            terms.buyAs[name] = other;
    }
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
    };
}

void readTerms(const Arguments& a, TakenOff& taken, TakeoffTerms& terms) {
    const Range* cells = a.range(termsArgument);
    if (cells == nullptr) return;
    if (cells->columns < 2)
        a.refuse(termsArgument, {"two columns: label and value", "dos columnas: rótulo y valor"});
    const InputColumn label{.heading = "label"};
    for (std::size_t row = 0; row < cells->rows; ++row) {
        const std::string name = nameKey(strictly(label, cells->at(row, 0), a.units(), "terms").text);
        for (const Term& term : termTable()) {
            if (name != nameKey(term.label.heading)) continue;
            const auto number = strictly(term.label, cells->at(row, 1), a.units(), "terms").number;
            if (number) term.take(*number, taken, terms);
        }
    }
}

std::shared_ptr<const TakenOff> takenOff(const Arguments& a) {
    static Recent<TakenOff> recent(4);
    const std::shared_ptr<const SolvedTables> tables = solvedTables(a);
    // The same solved job is the same question: it is kept alive by the answer.
    std::string question = std::to_string(reinterpret_cast<std::uintptr_t>(tables.get()));
    addToQuestion(question, a.raw(goodsArgument));
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

// Rows of a block, each made by add(row, push).
template <class Item, class Push>
Block<Item> rowsOf(std::size_t rows, std::size_t columns, const Push& push) {
    Block<Item> block{.columns = columns, .items = {}};
    block.items.reserve(rows * columns);
    for (std::size_t row = 0; row < rows; ++row) push(row, block.items);
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
Result pieceWords(const Arguments& a) {
    const auto taken = takenOff(a);
    const std::vector<TakeoffLine>& lines = taken->takeoff.lines;
    return rowsOf<std::string>(lines.size(), 3, [&](std::size_t row, std::vector<std::string>& items) {
        const TakeoffLine& line = lines[row];
        items.push_back(line.code);
        items.push_back(line.net ? line.net->unit(a.units()).in(a.language()) : "");
        items.push_back(line.from.in(a.language()));
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
Result cutWords(const Arguments& a) {
    const auto taken = takenOff(a);
    const Takeoff& takeoff = taken->takeoff;
    return rowsOf<std::string>(takeoff.cuts.rows.size(), 2,
                               [&](std::size_t row, std::vector<std::string>& items) {
                                   const PipeLength& piece = takeoff.lengths[takeoff.cuts.rows[row].piece];
                                   items.push_back(piece.code);
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
    return rowsOf<std::string>(works.size(), 3, [&](std::size_t row, std::vector<std::string>& items) {
        const WorkAmount& one = works[row];
        items.push_back(one.name.in(a.language()));
        items.push_back(one.amount ? one.amount->unit(a.units()).in(a.language()) : "");
        items.push_back(one.from.in(a.language()));
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
    const bool lower = stake.fromLowerEnd.si() <= 0;
    const bool upper =
        tables.job.runs[stake.row].length && !(stake.fromLowerEnd < *tables.job.runs[stake.row].length);
    const std::size_t row = lower ? run.lower : upper ? run.upper : Network::none;
    return row == Network::none ? std::nullopt : std::optional(row);
}

Result stakeNumbers(const Arguments& a) {
    const auto taken = takenOff(a);
    const SolvedTables& tables = *taken->tables;
    const std::vector<Stake> all = stakesOf(*taken);
    const Length bedding = tables.job.rules.length("bedding.depth");
    return rowsOf<double>(all.size(), 7, [&](std::size_t i, std::vector<double>& items) {
        const Stake& stake = all[i];
        const Run& run = tables.job.runs[stake.row];
        const SolvedRun& solved = tables.solved.runs[stake.row];
        const std::optional<Length> invert = along(run, stake, solved.invertDown, solved.invertUp);
        const std::optional<Length> ground = along(run, stake, solved.groundDown, solved.groundUp);
        std::optional<Length> bottom, top, cut;
        if (invert && run.pipe && run.pipe->outside) {
            bottom = *invert - wallOf(*run.pipe) - bedding;
            top = *invert + invertToOutsideTop(*run.pipe);
            if (ground) cut = *ground - *bottom;
        }
        items.push_back(static_cast<double>(stake.row + 1));
        items.push_back(a.in(Measure::Feet, stake.station));
        items.push_back(orError(a, Measure::Feet, ground));
        items.push_back(orError(a, Measure::Feet, invert));
        items.push_back(orError(a, Measure::Feet, bottom));
        items.push_back(orError(a, Measure::Feet, top));
        items.push_back(orError(a, Measure::Feet, cut));
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
        std::string here;
        if (node) {
            here = tables.job.nodes[*node].kinds.text().in(a.language());
            const std::string& made = taken->takeoff.nodes[*node].words.in(a.language());
            if (!made.empty()) here += (here.empty() ? "" : ": ") + made;
        }
        items.push_back(here);
    });
}

std::vector<Argument> takeoffArguments() {
    std::vector<Argument> all = jobArguments();
    all.push_back({.name = "goods",
                   .measure = Measure::Table,
                   .says = {"code, length of a stick, code to buy in its place",
                            "código, largo de una barra, código que se compra en su lugar"},
                   .optional = true});
    all.push_back({.name = "terms",
                   .measure = Measure::Table,
                   .says = {"label and value: New sod, Buy cleanouts asked, Saw cut, More hand digging, "
                            "Stake every",
                            "rótulo y valor: New sod, Buy cleanouts asked, Saw cut, More hand digging, "
                            "Stake every"},
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
              Returns::WordBlock, "Code, Unit, From", pieceWords),
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
        block("JOB.CUTS.TEXT",
              {"pipe and purpose of each row of JOB.CUTS",
               "tubo y destino de cada fila "
               "de JOB.CUTS"},
              Returns::WordBlock, "Code, For", cutWords),
        block("JOB.WORK", {"how much of each kind of work", "cuánto de cada clase de trabajo"},
              Returns::NumberBlock, "Amount", work),
        block("JOB.WORK.TEXT",
              {"kind of work, unit and origin of each row of JOB.WORK",
               "clase de trabajo, unidad y origen de cada fila de JOB.WORK"},
              Returns::WordBlock, "Work, Unit, From", workWords),
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
    };
}

}  // namespace trenchbook::addin
