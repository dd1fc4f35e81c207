// Digging and buying: soil and rock by volume and weight, sticks, whole packs.
#include <algorithm>

#include "catalog/arguments.h"
#include "catalog/families.h"
#include "trenchbook/ground/earthwork.h"
#include "trenchbook/takeoff/cut_list.h"
#include "trenchbook/takeoff/packs.h"
#include "trenchbook/takeoff/sticks.h"

namespace trenchbook::addin {
namespace {

Argument wasteArgument() {
    return {
        .name = "waste",
        .measure = Measure::Share,
        .says = {"share added for waste, 0.05 for 5 %", "parte que se añade por desperdicio, 0.05 para 5 %"},
        .fallback = "0",
        .optional = true,
        .limits = anyShare};
}
Argument piecesArgument() {
    return {.name = "pieces",
            .measure = Measure::Feet,
            .says = {"lengths to cut; one longer than a stick takes whole sticks and a remainder",
                     "largos por cortar; uno más largo que una barra toma barras enteras y un resto"},
            .column = true,
            .limits = aboveZero};
}
// A stick of 1 mm to 30 km: pieces are counted in micrometres.
constexpr Limits stickLimits = {.least = 0.0033, .greatest = 98425};

Argument stockArgument() {
    return {.name = "stock",
            .measure = Measure::Feet,
            .says = {"length of a stick", "largo de una barra"},
            .limits = stickLimits};
}
Argument kerfArgument() {
    return {.name = "kerf",
            .measure = Measure::Inches,
            .says = {"width of a cut", "ancho de un corte"},
            .fallback = "0.125 in",
            .optional = true,
            .limits = Limits{.also = {"less than the stick", "menos que la barra"}}};
}

CuttingPlan planOf(const Arguments& in) {
    const std::vector<Length> pieces = in.quantities<Length>(0);
    return cutSticks(pieces, in.quantity<Length>(1), in.quantity<Length>(2, Length::inches(0.125)));
}

constexpr const char* sticksSource =
    "Exact cutting stock by bin completion (Korf 2002) with the bound L2 of Martello and Toth (1990) and the "
    "linear programme over cutting patterns (Gilmore and Gomory 1961); proved fewest for up to 30 pieces and "
    "for nearly all lists of 120; the last column of STICKS.PLAN gives the gap";

// One row a piece or whole stick; the offcut stands on the stick's last row.
Numbers planRows(const Arguments& in) {
    const CuttingPlan plan = planOf(in);
    const double gap = static_cast<double>(plan.sticks.size() - plan.fewest);
    Numbers block{.columns = 4, .items = {}};
    for (std::size_t i = 0; i < plan.sticks.size(); ++i)
        for (const StickPart& part : plan.sticks[i].parts) {
            const bool last = &part == &plan.sticks[i].parts.back();
            block.items.insert(block.items.end(),
                               {static_cast<double>(i + 1), in.in(Measure::Feet, part.length),
                                last ? in.in(Measure::Feet, plan.sticks[i].offcut) : blankCell(), gap});
        }
    return block;
}

// One row a piece of a stick; the whole sticks of one long piece share a row.
Numbers cutListRows(const Arguments& in) {
    const std::vector<std::string> kinds = in.words(0);
    in.requireSameRows({0, 1, 2});
    const std::vector<Arguments::Entry> lengths = in.entries(1, kinds.size()),
                                        stocks = in.entries(2, kinds.size());
    std::vector<std::size_t> rows;  // of the pieces, among the cells
    std::vector<PieceToCut> pieces;
    for (std::size_t row = 0; row < kinds.size(); ++row) {
        if (lengths[row].state == Arguments::Entry::State::Empty) continue;
        rows.push_back(row);
        pieces.push_back({kinds[row], Length::fromSi(in.required(1, row, lengths[row])),
                          Length::fromSi(in.required(2, row, stocks[row]))});
    }
    Numbers block{.columns = 5, .items = {}};
    for (const CutRow& cut : cutList(pieces, in.quantity<Length>(3, Length::inches(0.125))).rows)
        block.items.insert(block.items.end(),
                           {static_cast<double>(rows[cut.piece] + 1), static_cast<double>(cut.stick),
                            static_cast<double>(cut.many), in.in(Measure::Feet, cut.length),
                            cut.leftOver ? in.in(Measure::Feet, *cut.leftOver) : blankCell()});
    // Calc repeats an answer of one row all over an array formula: a blank row ends the list.
    block.items.insert(block.items.end(), block.columns, blankCell());
    return block;
}

// The total over the rows of four columns; a single cell holds for every row, rows that are blank in all
// columns are skipped.
double trenchTotal(const Arguments& in) {
    constexpr std::size_t columns = 4;
    std::size_t rows = 1;
    for (std::size_t i = 0; i < columns; ++i)
        if (in.range(i) != nullptr) rows = std::max(rows, in.rows(i));
    std::vector<Arguments::Entry> entries[columns];
    for (std::size_t i = 0; i < columns; ++i) {
        if (in.range(i) == nullptr) {
            entries[i].assign(rows, {Arguments::Entry::State::Good, in.quantity<Length>(i).si(), {}, {}});
        } else {
            if (in.rows(i) != rows)
                in.refuse(i, rowCount(rows) + Text{" like the other columns, or a single cell",
                                                   " como las otras columnas, o una sola celda"});
            entries[i] = in.entries(i, rows);
        }
    }

    Volume total;
    for (std::size_t row = 0; row < rows; ++row) {
        using State = Arguments::Entry::State;
        bool blank = true;
        for (std::size_t i = 0; i < columns; ++i)
            blank &= in.range(i) == nullptr || entries[i][row].state == State::Empty;
        if (blank && rows > 1) continue;
        const auto at = [&](std::size_t i) { return Length::fromSi(in.required(i, row, entries[i][row])); };
        total += trenchVolume(at(0), at(1), at(2), at(3));
    }
    return total.si();
}

}  // namespace

std::vector<Function> buyingFunctions() {
    return {
        {.name = "TRENCH.VOLUME",
         .says = {"Soil in place that a trench takes out; of columns, the total",
                  "Suelo en banco que se excava en una zanja; de columnas, el total"},
         .arguments = {{.name = "length",
                        .measure = Measure::Feet,
                        .says = {"length of the trench", "largo de la zanja"},
                        .column = true,
                        .limits = aboveZero},
                       {.name = "width",
                        .measure = Measure::Feet,
                        .says = {"width of the trench", "ancho de la zanja"},
                        .column = true,
                        .limits = aboveZero},
                       {.name = "cut up",
                        .measure = Measure::Feet,
                        .says = {"depth at the upper end", "profundidad en el extremo alto"},
                        .column = true,
                        .limits = zeroOrMore},
                       {.name = "cut down",
                        .measure = Measure::Feet,
                        .says = {"depth at the lower end", "profundidad en el extremo bajo"},
                        .column = true,
                        .limits = zeroOrMore}},
         .measure = Measure::CubicYards,
         .source = "Average end areas: length x (area up + area down) / 2",
         .example = "TRENCH.VOLUME(50; 1; 1.5; 2.5)",
         .call = [](const Arguments& in) -> Result { return in.answer(trenchTotal(in)); }},
        {.name = "SPOIL.LOOSE",
         .says = {"Volume of dug soil", "Volumen de suelo excavado"},
         .arguments = {{.name = "bank",
                        .measure = Measure::CubicYards,
                        .says = {"volume in place", "volumen en banco"},
                        .limits = zeroOrMore},
                       {.name = "swell",
                        .measure = Measure::Share,
                        .says = {"growth when dug: common earth 0.25",
                                 "abundamiento al excavar: tierra común 0.25"},
                        .limits = anyShare}},
         .measure = Measure::CubicYards,
         .source = "bank x (1 + swell)",
         .example = "SPOIL.LOOSE(10; 0.25)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(looseVolume(in.quantity<Volume>(0), in.number(1)));
         }},
        {.name = "ROCK.TONS",
         .says = {"Weight of bulk rock or sand to order", "Peso de piedra o arena a granel por pedir"},
         .arguments = {{.name = "rock",
                        .measure = Measure::CubicYards,
                        .says = {"volume needed", "volumen necesario"},
                        .limits = zeroOrMore},
                       {.name = "density",
                        .measure = Measure::TonsPerYard,
                        .says = {"the product's own weight by volume, from the supplier",
                                 "peso por volumen del producto, según el proveedor"},
                        .limits = aboveZero},
                       wasteArgument()},
         .measure = Measure::ShortTons,
         .source = "volume x density x (1 + waste)",
         .example = "ROCK.TONS(3.5; 1.4; 0.1)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(
                 bulkWeight(in.quantity<Volume>(0), in.quantity<BulkDensity>(1), in.number(2, 0)));
         }},
        {.name = "STICKS.COUNT",
         .says = {"Fewest sticks that give all pieces", "Menor número de barras que da todas las piezas"},
         .arguments = {piecesArgument(), stockArgument(), kerfArgument()},
         .source = sticksSource,
         .example = "STICKS.COUNT({12|8|7|13|4.5}; 20)",
         .call = [](const Arguments& in) -> Result { return static_cast<double>(planOf(in).sticks.size()); }},
        {.name = "STICKS.PLAN",
         .says = {"Which piece to cut from which stick", "Qué pieza cortar de qué barra"},
         .arguments = {piecesArgument(), stockArgument(), kerfArgument()},
         .returns = Returns::NumberBlock,
         .columns =
             "stick, piece (ft), offcut left (ft, on the stick's last piece), sticks above the proved least",
         .source = sticksSource,
         .example = "STICKS.PLAN({12|8|7|13|4.5}; 20)",
         .call = [](const Arguments& in) -> Result { return planRows(in); }},
        {.name = "STICKS.LIST",
         .says = {"Cut list of several kinds of pipe", "Lista de cortes de varias clases de tubo"},
         .arguments = {{.name = "kind",
                        .measure = Measure::Words,
                        .says = {"what each piece is cut from; pieces of one kind share sticks",
                                 "de qué se corta cada pieza; las de una misma clase comparten barras"},
                        .column = true},
                       piecesArgument(),
                       {.name = "stock",
                        .measure = Measure::Feet,
                        .says = {"length of a stick, at each piece; the same for all of a kind",
                                 "largo de una barra, junto a cada pieza; el mismo para toda la clase"},
                        .column = true,
                        .limits = stickLimits},
                       kerfArgument()},
         .returns = Returns::NumberBlock,
         .columns =
             "row of the piece, stick (numbered by kind), how many (whole sticks of one piece share a row), "
             "length (ft), offcut left (ft, on the stick's last piece)",
         .source = sticksSource,
         .example = "STICKS.LIST({\"4\"|\"6\"|\"4\"}; {12|30|8}; {20|14|20})",
         .call = [](const Arguments& in) -> Result { return cutListRows(in); }},
        {.name = "BUY.COUNT",
         .says = {"Whole packs to order", "Paquetes enteros por pedir"},
         .arguments = {{.name = "net", .says = {"amount needed", "cantidad necesaria"}, .limits = zeroOrMore},
                       wasteArgument(),
                       {.name = "pack",
                        .says = {"amount in a pack, in the unit of the net amount",
                                 "cantidad por paquete, en la unidad de la cantidad necesaria"},
                        .fallback = "1",
                        .optional = true,
                        .limits = aboveZero}},
         .source = "net x (1 + waste) / pack, rounded up",
         .example = "BUY.COUNT(23; 0.05; 10)",
         .call = [](const Arguments& in) -> Result {
             return packsToOrder(in.number(0), in.number(1, 0), in.number(2, 1));
         }},
    };
}

}  // namespace trenchbook::addin
