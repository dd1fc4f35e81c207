// Where a line ends: what a rim that water bubbles over asks for, and stone under a free end.
#include "catalog/common.h"
#include "trenchbook/water/outlet_opening.h"
#include "trenchbook/water/stone_apron.h"

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
                      "diámetro del brocal o de su rejilla, o un lado si es rectangular"},
             .limits = aboveZero},
            {.name = "open share",
             .measure = Measure::Share,
             .says = {"clear opening of the grate over its outside area; 1 without a grate",
                      "abertura libre de la rejilla entre su área exterior; 1 sin rejilla"},
             .fallback = "1",
             .optional = true,
             .limits = ownWords(someShare)},
            {.name = "blocked share",
             .measure = Measure::Share,
             .says = {"part blocked by leaves and dirt, taken off opening and rim",
                      "parte tapada por hojas y tierra, se quita de la abertura y del brocal"},
             .fallback = "0",
             .optional = true,
             .limits = ownWords(levelOrSlope)},
            {.name = "water outside",
             .measure = Measure::Feet,
             .says = {"water standing over the rim from outside", "agua que cubre el brocal por fuera"},
             .fallback = "0",
             .optional = true,
             .limits = zeroOrMore},
            {.name = "width",
             .measure = Measure::Inches,
             .says = {"other side of a rectangular opening; blank for a round one",
                      "otro lado de una abertura rectangular; en blanco si es redonda"},
             .optional = true,
             .limits = zeroOrMore}};
}

Grate rim(const Arguments& in) {
    const Length opening = in.quantity<Length>(1);
    const double open = in.number(2, 1);
    const double blocked = in.number(3, 0);
    const Length width = in.quantity(5, Length{});  // blank arrives as 0
    return width == Length{} ? roundGrate(opening, open, blocked)
                             : rectangularGrate(opening, width, open, blocked);
}

constexpr const char* stoneSource =
    "Fletcher and Grace, FHWA HEC-14, 3rd edition (2006), Eq. 10.4, tailwater from 0.4 to 1 diameter";
constexpr const char* apronSource =
    "Stone by FHWA HEC-14, 3rd edition (2006), Eq. 10.4; length by Dane County, Wisconsin, "
    "stormwater manual; widths and thickness by HEC-14, table 10.1 (from memory)";

Argument apronPipe() {
    return within(pipeArgument(), {.greatest = 60, .above = true, .toldByFunction = true});
}
// What every apron asks: the pipe, its water, the water below.
std::vector<Argument> apronArguments() {
    return {apronPipe(),
            {.name = "flow",
             .measure = Measure::Gpm,
             .says = {"water at the end of the pipe", "agua al final del tubo"},
             .limits = aboveZero},
            {.name = "tailwater",
             .measure = Measure::Feet,
             .says = {"water standing below the outlet, over the pipe's invert",
                      "agua que hay aguas abajo de la salida, sobre el fondo del tubo"},
             .fallback = "0.4 of the bore",
             .optional = true,
             .limits = zeroOrMore},
            {.name = "shooting depth",
             .measure = Measure::Inches,
             .says = {"depth in the pipe where its water shoots (less than PIPE.CRITICAL)",
                      "profundidad en el tubo si el agua corre en régimen rápido (menos que PIPE.CRITICAL)"},
             .optional = true,
             .limits = Limits{.above = true,
                              .also = {"below the bore", "menor que el diámetro interior"},
                              .toldByFunction = true}}};
}
std::vector<Argument> apronOfStone() {
    std::vector<Argument> all = apronArguments();
    all.push_back(
        {.name = "stone",
         .measure = Measure::Inches,
         .says = {"middle size of the stone that is laid", "tamaño medio de la piedra que se coloca"},
         .fallback = "the next of 2, 4, 6, 8, 10, 12, 14, 20, 22 in",
         .optional = true,
         .limits = Limits{.above = true,
                          .also = {"from what the flow needs to 22 in (559 mm)",
                                   "de lo que pide el caudal a 22 in (559 mm)"}}});
    return all;
}

template <class Kind>
std::optional<Kind> ifGiven(const Arguments& in, std::size_t index) {
    return in.given(index) ? std::optional(in.quantity<Kind>(index)) : std::nullopt;
}

StoneApron apron(const Arguments& in) {
    return stoneApron(in.pipe(0).bore, in.quantity<Flow>(1), ifGiven<Length>(in, 2), ifGiven<Length>(in, 3),
                      ifGiven<Length>(in, 4));
}

}  // namespace

std::vector<Function> outletFunctions() {
    return {
        {.name = "OUTLET.HEAD",
         .says = {"How high water stands over the rim of an upturned tee or riser to push this flow out",
                  "Qué tan alta queda el agua sobre el brocal de una te vertical o tubo vertical para que "
                  "salga este caudal"},
         .arguments = rimArguments({.name = "flow",
                                    .measure = Measure::Gpm,
                                    .says = {"water that comes out", "agua que sale"},
                                    .limits = aboveZero}),
         .measure = Measure::Feet,
         .source = rimSource,
         .example = "OUTLET.HEAD(60; 4; 0.5; 0.5)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(outletHead(rim(in), in.quantity<Flow>(0), in.quantity(4, Length{})));
         }},
        {.name = "OUTLET.FLOW",
         .says = {"Flow that comes out over the rim of an upturned tee or riser under this head",
                  "Caudal que sale por el brocal de una te vertical o tubo vertical con esta carga"},
         .arguments = rimArguments(
             {.name = "head",
              .measure = Measure::Feet,
              .says = {"water in the riser over its rim", "agua en el tubo vertical sobre su brocal"},
              .limits = aboveZero}),
         .measure = Measure::Gpm,
         .source = rimSource,
         .example = "OUTLET.FLOW(0.5; 4; 0.5)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(outletFlow(rim(in), in.quantity<Length>(0), in.quantity(4, Length{})));
         }},
        {.name = "APRON.STONE",
         .says = {"Middle size of stone that the water at a pipe's end does not carry away",
                  "Tamaño medio de piedra que el agua al final de un tubo no arrastra"},
         .arguments = apronArguments(),
         .measure = Measure::Inches,
         .source = stoneSource,
         .example = "APRON.STONE(\"6 SDR35\"; 300)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(stoneNeeded(in.pipe(0).bore, in.quantity<Flow>(1), ifGiven<Length>(in, 2),
                                          ifGiven<Length>(in, 3)));
         }},
        {.name = "APRON.LENGTH",
         .says = {"Length of the stone below a pipe's end",
                  "Largo del zampeado después del final de un tubo"},
         .arguments = {apronPipe(), apronArguments()[1]},
         .measure = Measure::Feet,
         .source = "1.7 Q/D^1.5 + 8 D (ft, cfs), Dane County, Wisconsin, stormwater manual",
         .example = "APRON.LENGTH(\"6 SDR35\"; 300)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(apronLength(in.pipe(0).bore, in.quantity<Flow>(1)));
         }},
        {.name = "APRON.VOLUME",
         .says = {"Stone that an apron takes", "Piedra que lleva un zampeado"},
         .arguments = apronOfStone(),
         .measure = Measure::CubicYards,
         .source = apronSource,
         .example = "APRON.VOLUME(\"6 SDR35\"; 300)",
         .call = [](const Arguments& in) -> Result { return in.answer(apron(in).volume); }},
        {.name = "APRON.SIZE",
         .says = {"All measures of the stone below a pipe's end",
                  "Todas las medidas del zampeado al final de un tubo"},
         .arguments = apronOfStone(),
         .returns = Returns::NumberBlock,
         .columns = "stone needed (in, mm), stone laid (in, mm), length (ft, m), width at the pipe (ft, m), "
                    "width at the end (ft, m), thickness (in, mm), volume (cu yd, m³)",
         .source = apronSource,
         .example = "APRON.SIZE(\"6 SDR35\"; 300)",
         .call = [](const Arguments& in) -> Result {
             const StoneApron made = apron(in);
             return Numbers{
                 .columns = 7,
                 .items = {in.in(Measure::Inches, made.needed), in.in(Measure::Inches, made.laid),
                           in.in(Measure::Feet, made.length), in.in(Measure::Feet, made.widthAtPipe),
                           in.in(Measure::Feet, made.widthAtEnd), in.in(Measure::Inches, made.thickness),
                           in.in(Measure::CubicYards, made.volume)}};
         }},
    };
}

}  // namespace trenchbook::addin
