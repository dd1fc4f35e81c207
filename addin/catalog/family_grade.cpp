#include "catalog/common.h"
#include "catalog/grade_rows.h"
#include "catalog/line_rows.h"

namespace trenchbook::addin {
namespace {

Result gradePlan(const Arguments& a) {
    const std::shared_ptr<const Grades> grades = gradesOf(a);
    Numbers block{.columns = 7, .items = {}};
    block.items.reserve(grades->lines.rows() * block.columns);
    for (std::size_t row = 0; row < grades->lines.rows(); ++row)
        block.items.insert(block.items.end(), block.columns,
                           grades->lines.blank(row) ? blankCell() : errorCell(badArgumentCode));
    for (const GradeTree& tree : grades->trees) {
        if (!tree.plan.fits) continue;
        for (std::size_t i = 0; i < tree.rows.size(); ++i) {
            const GradedRun& run = tree.plan.runs[i];
            const double numbers[] = {a.in(Measure::Feet, run.invertUp),
                                      a.in(Measure::Feet, run.invertDown),
                                      run.slope.fraction(),
                                      a.in(Measure::Feet, run.cutUp),
                                      a.in(Measure::Feet, run.cutDown),
                                      static_cast<double>(tree.tableRows[run.pipe]),
                                      run.cost.dollars()};
            std::copy(std::begin(numbers), std::end(numbers),
                      block.items.begin() + tree.rows[i] * block.columns);
        }
    }
    return block;
}

Result gradeReason(const Arguments& a) {
    const std::shared_ptr<const Grades> grades = gradesOf(a);
    const std::size_t first = firstRow(a);
    Texts block;
    for (std::size_t row = 0; row < grades->lines.rows(); ++row)
        block.items.push_back(grades->stranded(row, first).in(a.language()));
    const UnitSystem units = a.units();
    for (const GradeTree& tree : grades->trees)
        block.items[tree.outletRow] = grades->reason(tree, units, first).in(a.language());
    return block;
}

Result confidence(const Arguments& a) {
    return gradeConfidence(a.quantity<Length>(0), a.quantity<Length>(1), a.quantity<Length>(2), a.slope(3),
                           a.quantity<Length>(4, Length::feet(0.01)));
}

// Two runs that join into one, with a choice of two sizes.
const char* const exampleArguments =
    "({\"A\"|\"B\"}; {\"B\"|\"Out\"}; {60|40}; {99.8|99.4}; {99.4|98.6}; {\"4 SDR35|6 SDR35\"|\"4 SDR35|6 "
    "SDR35\"}; {12|12}; {12|\"\"}; {\"\"|96.5}; {\"\"|97.5}; {\"4 SDR35\";2.1;\"1%\"|\"6 "
    "SDR35\";4.2;\"0.5%\"}; {30|60})";

const char* const method =
    "exact least cost over inverts on the grid and the pipes listed: dynamic programme along the tree "
    "(Bellman 1957, "
    "from memory); full-pipe capacity by Manning; docs/methods/grade.md";

}  // namespace

std::vector<Function> gradeFunctions() {
    return {
        {.name = "GRADE.PLAN",
         .says =
             {"inverts and pipes of least cost for pipe and digging, under cover, slope, share of capacity, "
              "cut, outlet, crossings and inverts set by hand; an error in the "
              "rows of a line where nothing fits",
              "cotas y tubos de menor costo de tubo y excavación, con tapado, pendiente, proporción de "
              "capacidad, profundidad, salida, cruces y cotas puestas a mano; error en las filas de una "
              "línea donde nada cabe"},
         .arguments = gradeArguments(),
         .later = {dropPriceArgument()},
         .returns = Returns::NumberBlock,
         .columns = "invert up (ft), invert down (ft), slope, cut up (ft), cut down (ft), row of the pipe "
                    "table, cost ($)",
         .source = method,
         .example = std::string("GRADE.PLAN") + exampleArguments,
         .call = gradePlan},
        {.name = "GRADE.REASON",
         .says = {"on each outlet row: what is to spare and where it is tightest; or which two places and "
                  "rules leave "
                  "too little fall, the missing feet, and each single change that would cure it",
                  "en cada fila de salida: cuánto sobra y dónde menos; o qué dos lugares y reglas dejan poca "
                  "caída, cuánto falta, y cada cambio que por sí solo lo arregla"},
         .arguments = gradeArguments(),
         .later = {firstRowArgument(), dropPriceArgument()},
         .returns = Returns::WordBlock,
         .columns = "reason",
         .source = method,
         .example = std::string("GRADE.REASON") + exampleArguments,
         .call = gradeReason},
        {.name = "GRADE.CONFIDENCE",
         .says =
             {"chance that the true slope is at least the one asked for, when both levels were read by rod",
              "probabilidad de que la pendiente real sea al menos la "
              "pedida, con ambas cotas leídas con estadal"},
         .arguments = {{.name = "length",
                        .measure = Measure::Feet,
                        .says = {"between the two levels", "entre las dos cotas"},
                        .limits = aboveZero},
                       {.name = "level up",
                        .measure = Measure::Feet,
                        .says = {"upper level as read", "cota de arriba leída"},
                        .limits = anyLevel},
                       {.name = "level down",
                        .measure = Measure::Feet,
                        .says = {"lower level as read", "cota de abajo leída"},
                        .limits = anyLevel},
                       {.name = "least slope",
                        .measure = Measure::Slope,
                        .says = {"slope that is needed: a fraction, or 1/8 in/ft, 1%, 1:96",
                                 "pendiente necesaria: fracción, o 1/8 in/ft, 1%, 1:96"},
                        .limits = levelOrSlope},
                       {.name = "rod error",
                        .measure = Measure::Feet,
                        .says = {"one standard deviation of a reading",
                                 "una desviación estándar de una lectura"},
                        .fallback = "0.01 ft",
                        .optional = true,
                        .limits = aboveZero}},
         .measure = Measure::Share,
         .source = "normal distribution of the fall, whose standard deviation is the rod error times the "
                   "square root of 2",
         .example = "GRADE.CONFIDENCE(40; 98; 97.58; \"1%\")",
         .call = confidence},
    };
}

}  // namespace trenchbook::addin
