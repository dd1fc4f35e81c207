// Where a line ends: what a rim that water bubbles over asks for.
#include "catalog/common.h"
#include "trenchbook/water/outlet_opening.h"

namespace trenchbook::addin {
namespace {

constexpr const char* rimSource =
    "Rim as a sharp-crested weir (3.33 P H^1.5), then as an orifice (0.6 A (2 g H)^0.5), the larger head "
    "controls: FHWA HEC-22, 3rd edition, 8.4.4.2; bars and blocking as in 4.4.5, grates in sags";

// OUTLET.HEAD and OUTLET.FLOW: what is known, then the opening.
std::vector<Argument> rimArguments(Argument known) {
    return {std::move(known),
            {.name = "opening",
             .measure = Measure::Inches,
             .says = {"diameter of the rim or of its grate, or one side of a rectangular one",
                      "diámetro del brocal o de su rejilla, o un lado si es rectangular"}},
            {.name = "open share",
             .measure = Measure::Share,
             .says = {"clear opening of the grate over its outside area; 1 without a grate",
                      "abertura libre de la rejilla entre su área exterior; 1 sin rejilla"},
             .fallback = "1",
             .optional = true},
            {.name = "blocked share",
             .measure = Measure::Share,
             .says = {"part blocked by leaves and dirt, taken off opening and rim",
                      "parte tapada por hojas y tierra, se quita de la abertura y del brocal"},
             .fallback = "0",
             .optional = true},
            {.name = "water outside",
             .measure = Measure::Feet,
             .says = {"water standing over the rim from outside", "agua que cubre el brocal por fuera"},
             .fallback = "0",
             .optional = true},
            {.name = "width",
             .measure = Measure::Inches,
             .says = {"other side of a rectangular opening; blank for a round one",
                      "otro lado de una abertura rectangular; en blanco si es redonda"},
             .optional = true}};
}

Grate rim(const Arguments& in) {
    const Length opening = in.quantity<Length>(1);
    requirePositive(opening, "opening");
    const double open = in.number(2, 1);
    const double blocked = in.number(3, 0);
    const Length width = in.quantity(5, Length{});  // blank arrives as 0
    return width == Length{} ? roundGrate(opening, open, blocked)
                             : rectangularGrate(opening, width, open, blocked);
}

}  // namespace

std::vector<Function> outletFunctions() {
    return {
        {.name = "OUTLET.HEAD",
         .says = {"How high water stands over the rim of an upturned tee or riser to push this flow out",
                  "Qué tan alta queda el agua sobre el brocal de una te vertical o tubo vertical para que "
                  "salga este caudal"},
         .arguments = rimArguments(
             {.name = "flow", .measure = Measure::Gpm, .says = {"water that comes out", "agua que sale"}}),
         .measure = Measure::Feet,
         .source = rimSource,
         .example = "OUTLET.HEAD(60; 4; 0.5; 0.5)",
         .call = [](const Arguments& in) -> Result {
             const Flow flow = in.quantity<Flow>(0);
             requirePositive(flow, "flow");
             return in.answer(outletHead(rim(in), flow, in.quantity(4, Length{})));
         }},
        {.name = "OUTLET.FLOW",
         .says = {"Flow that comes out over the rim of an upturned tee or riser under this head",
                  "Caudal que sale por el brocal de una te vertical o tubo vertical con esta carga"},
         .arguments = rimArguments(
             {.name = "head",
              .measure = Measure::Feet,
              .says = {"water in the riser over its rim", "agua en el tubo vertical sobre su brocal"}}),
         .measure = Measure::Gpm,
         .source = rimSource,
         .example = "OUTLET.FLOW(0.5; 4; 0.5)",
         .call = [](const Arguments& in) -> Result {
             const Length head = in.quantity<Length>(0);
             requirePositive(head, "head");
             return in.answer(outletFlow(rim(in), head, in.quantity(4, Length{})));
         }},
    };
}

}  // namespace trenchbook::addin
