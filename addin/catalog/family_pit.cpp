// Rock pits: what they hold, how long they take to empty, what a storm does to them.
#include <cmath>

#include "catalog/arguments.h"
#include "catalog/families.h"
#include "catalog/rules_argument.h"
#include "trenchbook/ground/level_pool.h"
#include "trenchbook/ground/mound.h"
#include "trenchbook/ground/pit.h"
#include "trenchbook/ground/pit_check.h"
#include "trenchbook/ground/pit_storm.h"

namespace trenchbook::addin {
namespace {

Argument lengthArgument() {
    return {.name = "length",
            .measure = Measure::Feet,
            .says = {"length of the pit, or the diameter of a round one",
                     "largo del pozo de absorción, o diámetro si es redondo"},
            .limits = aboveZero};
}
Argument widthArgument() {
    return {.name = "width",
            .measure = Measure::Feet,
            .says = {"width of the pit, or \"round\"", "ancho del pozo de absorción, o \"round\" (redondo)"},
            .limits = aboveZero};
}
Argument rockDepthArgument() {
    return {
        .name = "rock depth",
        .measure = Measure::Feet,
        .says = {"rock from the bottom up to where it overflows", "piedra desde el fondo hasta donde rebosa"},
        .limits = aboveZero};
}
Argument voidsArgument() {
    return {.name = "voids",
            .measure = Measure::Share,
            .says = {"share of the rock's volume that takes water",
                     "parte del volumen de piedra que recibe agua"},
            .fallback = "0.4",
            .optional = true,
            .limits = someShare};
}
Argument rateArgument() {
    return {.name = "rate",
            .measure = Measure::InchesPerHour,
            .says = {"design infiltration rate of the soil", "tasa de infiltración de diseño del suelo"},
            .limits = aboveZero};
}
Argument sideShareArgument() {
    return {.name = "side share",
            .measure = Measure::Share,
            .says = {"share of the wetted walls that counts", "parte de las paredes mojadas que cuenta"},
            .fallback = "0",
            .optional = true,
            .limits = anyShare};
}
Argument areaTimesCArgument() {
    return {.name = "area x C",
            .measure = Measure::SquareFeet,
            .says = {"area that drains here times its runoff coefficient",
                     "área que drena aquí por su coeficiente de escorrentía"},
            .limits = aboveZero};
}

Argument stormArgument() {
    return {.name = "storm",
            .measure = Measure::Table,
            .says = {"two columns: minute at which a step ends, rain in the step; or a RAIN.STORM",
                     "dos columnas: minuto en que termina el paso, lluvia del paso; o un RAIN.STORM"}};
}
Argument startWaterArgument() {
    return {.name = "start water",
            .measure = Measure::Feet,
            .says = {"water in the pit when the storm begins", "agua en el pozo al comenzar la tormenta"},
            .fallback = "0",
            .optional = true,
            .limits = Limits{.also = {"at most the rock depth", "como máximo la altura de piedra"}}};
}

constexpr double defaultVoids = RockPit{}.voids;
constexpr double defaultSideShare = RockPit{}.sideShare;

// The word "round" in the place of a width.
void readWidth(const Arguments& in, std::size_t index, RockPit& pit) {
    const std::string* text = std::get_if<std::string>(&in.raw(index));
    const std::string key = text == nullptr ? "" : nameKey(*text);
    pit.round = key == "round" || key == "redondo";
    if (!pit.round) pit.width = in.quantity<Length>(index);
}

// Five arguments: length, width and rock depth from `first` on, voids and side share from `rest` on.
RockPit readPit(const Arguments& in, std::size_t first, std::size_t rest) {
    RockPit pit{.length = in.quantity<Length>(first)};
    readWidth(in, first + 1, pit);
    pit.rockDepth = in.quantity<Length>(first + 2);
    pit.voids = in.number(rest, defaultVoids);
    pit.sideShare = in.number(rest + 1, defaultSideShare);
    return pit;
}

// Steps of a storm as two columns. Blank rows are passed over, and a first row of nothing at minute 0.
std::vector<StormStep> readStorm(const Arguments& in, std::size_t index) {
    const Range* cells = in.range(index);
    if (cells == nullptr || cells->columns != 2)
        in.refuse(index,
                  {"two columns, minute and rain in the step", "dos columnas, minuto y lluvia del paso"});
    std::vector<StormStep> storm;
    for (std::size_t row = 0; row < cells->rows; ++row) {
        double numbers[2];
        std::size_t found = 0, blank = 0;
        for (std::size_t column = 0; column < 2; ++column) {
            const Cell& cell = cells->at(row, column);
            const double* number = std::get_if<double>(&cell);
            const std::string* text = std::get_if<std::string>(&cell);
            if (number != nullptr && std::isfinite(*number))
                numbers[found++] = *number;
            else if (number == nullptr &&
                     (text == nullptr || text->find_first_not_of(" \t") == std::string::npos))
                ++blank;
        }
        if (blank == 2) continue;
        const std::string where = std::to_string(row + 1);
        if (found != 2)
            throw Error(
                Error::Kind::BadArgument, "storm",
                {"storm: row " + where + " is not two numbers; allowed: minute and rain in the step.",
                 "tormenta: la fila " + where + " no son dos números; se admite: minuto y lluvia del paso."});
        const StormStep step{Duration::minutes(numbers[0]),
                             Length::fromSi(in.from(Measure::Inches, numbers[1]))};
        if (storm.empty() && step.end.si() == 0 && step.depth.si() == 0) continue;
        storm.push_back(step);
    }
    return storm;
}

// PIT.STORM and PIT.COURSE ask the same.
std::vector<Argument> stormArguments() {
    return {stormArgument(), areaTimesCArgument(), lengthArgument(),
            widthArgument(), rockDepthArgument(),  rateArgument(),
            voidsArgument(), sideShareArgument(),  startWaterArgument()};
}
PitStorm runStorm(const Arguments& in, std::vector<PitState>* course) {
    return runStorm(readStorm(in, 0), in.quantity<Area>(1), readPit(in, 2, 6), in.quantity<SoilRate>(5),
                    in.quantity<Length>(8, Length{}), course);
}
constexpr const char* stormSource =
    "Exact solution of n A dh/dt = q - f (A + s P h) in each step of even rain, with its moments of full, "
    "overflowing and empty; the model of PIT.DRAINTIME";

// The rating table: rows that are blank in all three columns are passed over, anything else must be numbers.
std::vector<PoolRating> readRating(const Arguments& in) {
    using State = Arguments::Entry::State;
    const std::size_t rows = in.rows(2);
    in.requireSameRows({2, 3, 4});
    const std::vector<Arguments::Entry> columns[] = {in.entries(2, rows), in.entries(3, rows),
                                                     in.entries(4, rows)};
    std::vector<PoolRating> table;
    for (std::size_t row = 0; row < rows; ++row) {
        std::size_t empty = 0;
        for (const auto& column : columns) empty += column[row].state == State::Empty;
        if (empty == 3) continue;
        const auto at = [&](std::size_t i) { return in.required(2 + i, row, columns[i][row]); };
        table.push_back({Length::fromSi(at(0)), Volume::fromSi(at(1)), Flow::fromSi(at(2))});
    }
    return table;
}

// A bad cell spoils its own row and, as the water there is not known, those after it; blank rows stay blank.
Numbers routeRows(const Arguments& in) {
    using State = Arguments::Entry::State;
    const std::vector<PoolRating> table = readRating(in);
    const std::size_t rows = in.rows(0);
    in.requireSameRows({0, 1});
    const std::vector<Arguments::Entry> minutes = in.entries(0, rows), flows = in.entries(1, rows);
    Numbers block{.columns = 3, .items = std::vector<double>(3 * rows, blankCell())};
    std::vector<PoolInflow> inflow;
    std::vector<std::size_t> rowOf;
    std::size_t bad = rows;
    for (std::size_t row = 0; row < rows && bad == rows; ++row) {
        if (minutes[row].state == State::Empty && flows[row].state == State::Empty) continue;
        if (minutes[row].state != State::Good || flows[row].state != State::Good) {
            bad = row;
        } else {
            inflow.push_back({Duration::fromSi(minutes[row].si), Flow::fromSi(flows[row].si)});
            rowOf.push_back(row);
        }
    }
    const std::vector<PoolStep> states = routePool(inflow, table);
    for (std::size_t i = 0; i < states.size(); ++i) {
        double* cells = &block.items[3 * rowOf[i]];
        cells[0] = in.in(Measure::Feet, states[i].depth);
        cells[1] = in.in(Measure::CubicFeet, states[i].storage);
        cells[2] = in.in(Measure::Gpm, states[i].outflow);
    }
    for (std::size_t row = bad; row < rows; ++row)
        if (minutes[row].state != State::Empty || flows[row].state != State::Empty)
            std::fill_n(&block.items[3 * row], 3, errorCell(badArgumentCode));
    return block;
}

Result checkPit(const Arguments& in) {
    const UnitSystem units = in.units();
    in.requireSameRows({1, 2});
    const std::vector<std::string> keys = in.words(1);
    PitFacts facts;
    for (std::size_t row = 0; row < keys.size(); ++row) {
        if (keys[row].empty()) continue;
        if (const Range* values = in.range(2)) {
            withValue(values->at(row, 0), [&](auto value) { facts.set(keys[row], value, units); });
        } else if (const double* number = std::get_if<double>(&in.raw(2))) {
            facts.set(keys[row], *number, units);
        } else {
            facts.set(keys[row], in.text(2, ""), units);
        }
    }
    return checkPit(facts, readRules(in, 0), units).text().in(in.language());
}

}  // namespace

std::vector<Function> pitFunctions() {
    return {
        {.name = "PIT.ROCK",
         .says = {"Rock that holds a volume of water", "Piedra que retiene un volumen de agua"},
         .arguments = {{.name = "hold",
                        .measure = Measure::CubicFeet,
                        .says = {"water to hold", "agua por retener"},
                        .limits = aboveZero},
                       voidsArgument(),
                       {.name = "pipe inside",
                        .measure = Measure::CubicFeet,
                        .says = {"water that the pipe in the rock holds itself",
                                 "agua que cabe en el tubo dentro de la piedra"},
                        .fallback = "0",
                        .optional = true,
                        .limits = zeroOrMore}},
         .measure = Measure::CubicYards,
         .source = "(hold - pipe inside) / voids",
         .example = "PIT.ROCK(140; 0.4)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(rockToHold(in.quantity<Volume>(0), in.number(1, defaultVoids),
                                         in.quantity<Volume>(2, Volume{})));
         }},
        {.name = "PIT.STORAGE",
         .says = {"Water that a pit holds when full", "Agua que retiene un pozo de absorción lleno"},
         .arguments = {lengthArgument(), widthArgument(), rockDepthArgument(), voidsArgument()},
         .measure = Measure::CubicFeet,
         .source = "length x width x depth x voids; round: pi/4 diameter^2 x depth x voids",
         .example = "PIT.STORAGE(20; 6; 3)",
         .call = [](const Arguments& in) -> Result {
             RockPit pit{.length = in.quantity<Length>(0)};
             readWidth(in, 1, pit);
             pit.rockDepth = in.quantity<Length>(2);
             pit.voids = in.number(3, defaultVoids);
             return in.answer(storage(pit));
         }},
        {.name = "PIT.DRAINTIME",
         .says = {"Hours from full to empty", "Horas de lleno a vacío"},
         .arguments = {lengthArgument(), widthArgument(), rockDepthArgument(), rateArgument(),
                       voidsArgument(), sideShareArgument()},
         .measure = Measure::Hours,
         .source = "t = n A / (f s P) x ln(1 + s P h / A): bottom, and walls while they are wet; drainage "
                   "time with "
                   "side flow, LID guide of the Sustainable Technologies Evaluation Program",
         .example = "PIT.DRAINTIME(20; 6; 3; 0.5)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(drainTime(readPit(in, 0, 4), in.quantity<SoilRate>(3)));
         }},
        {.name = "PIT.SIZE",
         .says =
             {"Length of the shortest pit that takes a storm without overflow; of a round one the diameter",
              "Largo del pozo de absorción más corto que recibe una tormenta sin rebosar; si es redondo, "
              "el diámetro"},
         .arguments = {stormArgument(), areaTimesCArgument(), widthArgument(), rockDepthArgument(),
                       rateArgument(), voidsArgument(), sideShareArgument()},
         .measure = Measure::Feet,
         .source = "PIT.STORM, solved for the length at which the water just reaches the top of the rock",
         .example = "PIT.SIZE({30;0.3|60;0.9|90;0.2}; 1000; 4; 3; 2)",
         .call = [](const Arguments& in) -> Result {
             RockPit pit;
             readWidth(in, 2, pit);
             pit.rockDepth = in.quantity<Length>(3);
             pit.voids = in.number(5, defaultVoids);
             pit.sideShare = in.number(6, defaultSideShare);
             return in.answer(
                 shortestPit(readStorm(in, 0), in.quantity<Area>(1), pit, in.quantity<SoilRate>(4)));
         }},
        {.name = "PIT.STORM",
         .says =
             {"What a storm does to a pit: how high, what overflows, when it is empty again",
              "Qué le hace una tormenta al pozo de absorción: qué tan alto, cuánto rebosa, cuándo se vacía"},
         .arguments = stormArguments(),
         .returns = Returns::NumberBlock,
         .columns = "highest water (ft), minute of it, first overflow (min), overflow (cu ft), soaked (cu "
                    "ft), from the "
                    "storm's end to empty (h), balance error (share of all water)",
         .source = stormSource,
         .example = "PIT.STORM({30;0.3|60;0.9|90;0.2}; 1000; 10; 4; 3; 2)",
         .call = [](const Arguments& in) -> Result {
             const PitStorm storm = runStorm(in, nullptr);
             return Numbers{
                 .columns = 7,
                 .items = {in.in(Measure::Feet, storm.highest), storm.highestAt.minutes(),
                           storm.firstOverflow ? storm.firstOverflow->minutes() : blankCell(),
                           in.in(Measure::CubicFeet, storm.overflow), in.in(Measure::CubicFeet, storm.soaked),
                           storm.toEmpty.hours(), storm.balanceError}};
         }},
        {.name = "PIT.COURSE",
         .says = {"A storm through a pit, step by step", "Una tormenta en el pozo de absorción, paso a paso"},
         .arguments = stormArguments(),
         .returns = Returns::NumberBlock,
         .columns = "minute, water (ft), soaked so far (cu ft), overflow so far (cu ft)",
         .source = stormSource,
         .example = "PIT.COURSE({30;0.3|60;0.9|90;0.2}; 1000; 10; 4; 3; 2)",
         .call = [](const Arguments& in) -> Result {
             std::vector<PitState> course;
             runStorm(in, &course);
             Numbers block{.columns = 4, .items = {}};
             for (const PitState& state : course)
                 block.items.insert(
                     block.items.end(),
                     {state.end.minutes(), in.in(Measure::Feet, state.water),
                      in.in(Measure::CubicFeet, state.soaked), in.in(Measure::CubicFeet, state.overflow)});
             return block;
         }},
        {.name = "PIT.ROUTE",
         .says = {"Any inflow through any storage and outflow (level-pool routing)",
                  "Cualquier caudal de entrada por cualquier volumen y salida (tránsito de nivel)"},
         .arguments =
             {{.name = "minute",
               .measure = Measure::Minutes,
               .says = {"moments of the inflow", "momentos del caudal de entrada"},
               .column = true,
               .limits =
                   Limits{.least = -unlimited,
                          .also = {"any, rising from row to row", "cualquiera, creciente de fila en fila"}}},
              {.name = "inflow",
               .measure = Measure::Gpm,
               .says = {"inflow at those moments", "caudal de entrada en esos momentos"},
               .column = true,
               .limits = Limits{.toldByFunction = true}},
              {.name = "depth",
               .measure = Measure::Feet,
               .says = {"depths of the table; the pool starts at the first",
                        "alturas de la tabla; se empieza en la primera"},
               .column = true,
               .limits =
                   Limits{.least = -unlimited,
                          .also = {"any, rising from row to row", "cualquiera, creciente de fila en fila"}}},
              {.name = "storage",
               .measure = Measure::CubicFeet,
               .says = {"water stored at those depths", "agua almacenada a esas alturas"},
               .column = true,
               .limits = Limits{.also = {"not falling from row to row", "sin bajar de fila en fila"}}},
              {.name = "outflow",
               .measure = Measure::Gpm,
               .says = {"outflow at those depths", "caudal de salida a esas alturas"},
               .column = true,
               .limits = Limits{.also = {"not falling from row to row", "sin bajar de fila en fila"}}}},
         .returns = Returns::NumberBlock,
         .columns = "depth (ft), storage (cu ft), outflow (gpm)",
         .source = "Storage indication, S2/dt + O2/2 = S1/dt - O1/2 + (I1 + I2)/2; FHWA HDS-2, section 8.4",
         .example = "PIT.ROUTE({0|10|20|30}; {0|50|20|0}; {0|1|2}; {0|60|140}; {0|10|60})",
         .call = [](const Arguments& in) -> Result { return routeRows(in); }},
        {.name = "PIT.RAINHELD",
         .says = {"Rain that fills a storage", "Lluvia que llena un almacenamiento"},
         .arguments = {{.name = "storage",
                        .measure = Measure::CubicFeet,
                        .says = {"water that the pit holds", "agua que retiene el pozo de absorción"},
                        .limits = zeroOrMore},
                       areaTimesCArgument()},
         .measure = Measure::Inches,
         .source = "storage / (area x C)",
         .example = "PIT.RAINHELD(144; 1300)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(rainHeld(in.quantity<Volume>(0), in.quantity<Area>(1)));
         }},
        {.name = "PIT.MOUND",
         .says = {"Rise of the water table under the middle of a pit",
                  "Ascenso del nivel freático bajo el centro del pozo de absorción"},
         .arguments =
             {{.name = "length",
               .measure = Measure::Feet,
               .says = {"length of the pit", "largo del pozo de absorción"},
               .limits = aboveZero},
              {.name = "width",
               .measure = Measure::Feet,
               .says = {"width of the pit", "ancho del pozo de absorción"},
               .limits = aboveZero},
              {.name = "rate",
               .measure = Measure::InchesPerHour,
               .says = {"water that soaks in, over the bottom", "agua que se infiltra, sobre el fondo"},
               .limits = aboveZero},
              {.name = "hours",
               .measure = Measure::Hours,
               .says = {"how long", "cuánto tiempo"},
               .limits = aboveZero},
              {.name = "conductivity",
               .measure = Measure::FeetPerDay,
               .says = {"of the aquifer, sideways", "del acuífero, horizontal"},
               .limits = aboveZero},
              {.name = "specific yield",
               .measure = Measure::Share,
               .says = {"share of the soil that water can fill", "parte del suelo que el agua puede llenar"},
               .limits = someShare},
              {.name = "saturated thickness",
               .measure = Measure::Feet,
               .says = {"water-bearing soil under the water table", "suelo saturado bajo el nivel freático"},
               .limits = aboveZero}},
         .measure = Measure::Feet,
         .source = "M. S. Hantush (1967), Growth and decay of groundwater mounds in response to uniform "
                   "percolation, Water Resources Research 3",
         .example = "PIT.MOUND(20; 6; 0.5; 48; 10; 0.2; 10)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(moundRise({.length = in.quantity<Length>(0),
                                         .width = in.quantity<Length>(1),
                                         .rate = in.quantity<SoilRate>(2),
                                         .time = in.quantity<Duration>(3),
                                         .conductivity = in.quantity<Velocity>(4),
                                         .specificYield = in.number(5),
                                         .saturatedThickness = in.quantity<Length>(6)}));
         }},
        {.name = "PIT.CHECK",
         .says = {"OK, or every reason why a pit will not do here; then cautions, one a line",
                  "OK, o cada razón por la que un pozo de absorción no sirve aquí; luego precauciones, una "
                  "por línea"},
         .arguments =
             {rulesArgument(false),
              {.name = "key",
               .measure = Measure::Words,
               .says =
                   {"rate, drain hours, high water, pit depth, widest, foundation, lot line, well, septic, "
                    "pool, ground slope, soil group, perc, roof area, rock depth",
                    "claves: rate, drain hours, high water, pit depth, widest, foundation, lot line, well, "
                    "septic, pool, ground slope, soil group, perc, roof area, rock depth"},
               .column = true},
              {.name = "value",
               .measure = Measure::ByKey,
               .says = {"in/hr, h, ft, sq ft, min/in; a soil group is a letter; blank where the lot has none",
                        "in/hr, h, ft, sq ft, min/in; el grupo de suelo es una letra; en blanco si no hay"},
               .column = true,
               .limits = Limits{.also = {"slopes and shares at most 1", "pendientes y partes como máximo 1"},
                                .toldByFunction = true}}},
         .returns = Returns::Words,
         .source =
             "the rules and their sources; 40 CFR 144.3 (deeper than wide), 29 CFR 1926.651 and 1926.652",
         .example = "PIT.CHECK({\"pit.rate.min\";0.3}; {\"rate\"|\"soil group\"}; {0.2|\"B\"})",
         .call = checkPit},
    };
}

}  // namespace trenchbook::addin
