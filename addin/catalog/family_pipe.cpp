// Round pipe: what stock pipe measures, what it carries, how it runs, what it loses, holds and takes up.
#include "catalog/common.h"
#include "trenchbook/pipe/circular.h"
#include "trenchbook/pipe/fittings.h"
#include "trenchbook/pipe/friction.h"
#include "trenchbook/pipe/manning.h"
#include "trenchbook/pipe/sizing.h"
#include "trenchbook/takeoff/bends.h"

namespace trenchbook::addin {
namespace {

constexpr const char* manningSource =
    "Manning's formula with the true bore, exact circular geometry; Chow, Open-Channel Hydraulics (1959)";
constexpr const char* stockSource =
    "ASTM D3034 (SDR 35), D1785 (schedule 40), D2729; corrugated from common practice; each row's source "
    "stands in the Tables sheet";
constexpr const char* geometrySource =
    "Exact circular geometry; Chow, Open-Channel Hydraulics (1959), table 2-1 (from memory)";
constexpr const char* lossSource =
    "K V2/2g; K from printed tables of special losses (civil and environmental engineering references; Mays, "
    "Water Resources Engineering, chapter 15)";

Argument fillArgument() {
    return {.name = "fill",
            .measure = Measure::Share,
            .says = {"depth of water over bore", "profundidad del agua entre diámetro interior"},
            .fallback = "1",
            .optional = true,
            .limits = someShare};
}
Argument lengthArgument() {
    return {.name = "length",
            .measure = Measure::Feet,
            .says = {"length of pipe", "longitud de tubo"},
            .limits = zeroOrMore};
}

// The pipe and the roughness that goes with it: given, or the stock row's own.
struct RoughPipe {
    Length bore;
    double roughness;
};
RoughPipe roughPipe(const Arguments& in, std::size_t pipe, std::size_t roughness) {
    const Pipe read = in.pipe(pipe);
    return {read.bore, in.roughness(roughness, read)};
}

// PIPE.AREA and PIPE.RADIUS: the water in a pipe at a fill.
Segment wetted(const Arguments& in) {
    const Length bore = in.pipe(0).bore;
    return segmentAt(bore, bore * in.number(1, 1));
}

Argument boreRoughnessArgument() {
    Argument roughness = roughnessArgument();
    roughness.fallback = "0.011";  // smooth plastic, as a bare bore has it
    return roughness;
}

// What stands in the candidates' place when they are left out.
std::vector<Pipe> sewerSizes() {
    std::vector<Pipe> sizes;
    for (const StockPipe& row : stock())
        if (row.pipe.name.ends_with("SDR35")) sizes.push_back(row.pipe);
    return sizes;
}

std::vector<Angle> angles(const std::vector<double>& degrees) {
    std::vector<Angle> read;
    for (double value : degrees) read.push_back(Angle::degrees(value));
    return read;
}

// A number, or a fitting's name; a name that is not known is a fault of this argument.
double lossCoefficient(const Arguments& in, std::size_t index) {
    const std::string* name = std::get_if<std::string>(&in.raw(index));
    if (name == nullptr) return in.number(index);
    try {
        return fitting(*name).k;
    } catch (const Error& error) {
        throw error.about(in.function().arguments[index].name);
    }
}

}  // namespace

std::vector<Function> pipeFunctions() {
    return {
        {.name = "PIPE.BORE",
         .says = {"Inside diameter", "Diámetro interior"},
         .arguments = {pipeArgument()},
         .measure = Measure::Inches,
         .source = stockSource,
         .example = "PIPE.BORE(\"4 SDR35\")",
         .call = [](const Arguments& in) -> Result { return in.answer(in.pipe(0).bore); }},
        {.name = "PIPE.OUTSIDE",
         .says = {"Outside diameter", "Diámetro exterior"},
         .arguments = {within(pipeArgument(), stockAlone)},
         .measure = Measure::Inches,
         .source = stockSource,
         .example = "PIPE.OUTSIDE(\"4 SDR35\")",
         .call = [](const Arguments& in) -> Result { return in.answer(outsideOf(in.pipe(0))); }},
        {.name = "PIPE.ROUGHNESS",
         .says = {"Manning n that goes with the pipe", "n de Manning que corresponde al tubo"},
         .arguments = {pipeArgument()},
         .source = "0.011 for smooth plastic in use, 0.020 for corrugated: working values within published "
                   "ranges; FHWA HEC-22 (from memory)",
         .example = "PIPE.ROUGHNESS(\"4 CORRUGATED\")",
         .call = [](const Arguments& in) -> Result { return in.pipe(0).roughness; }},
        {.name = "PIPE.CAPACITY",
         .says = {"Flow that the pipe carries at this slope, full or at a fill",
                  "Caudal que lleva el tubo con esta pendiente, lleno o a cierto llenado"},
         .arguments = {pipeArgument(), slopeArgument(), roughnessArgument(), fillArgument()},
         .measure = Measure::Gpm,
         .source = manningSource,
         .example = "PIPE.CAPACITY(\"4 SDR35\"; \"1%\")",
         .call = [](const Arguments& in) -> Result {
             const RoughPipe pipe = roughPipe(in, 0, 2);
             return in.answer(capacity(pipe.bore, in.slope(1), pipe.roughness, in.number(3, 1)));
         }},
        {.name = "PIPE.SLOPE",
         .says = {"Slope that carries this flow, full or at a fill",
                  "Pendiente que lleva este caudal, lleno o a cierto llenado"},
         .arguments = {pipeArgument(), within(flowArgument(), aboveZero), roughnessArgument(),
                       fillArgument()},
         .measure = Measure::Slope,
         .source = manningSource,
         .example = "PIPE.SLOPE(\"4 SDR35\"; 80)",
         .call = [](const Arguments& in) -> Result {
             const RoughPipe pipe = roughPipe(in, 0, 2);
             return in.answer(slopeNeeded(pipe.bore, in.quantity<Flow>(1), pipe.roughness, in.number(3, 1)));
         }},
        {.name = "PIPE.SELFCLEAN",
         .says = {"Slope that gives this velocity flowing full",
                  "Pendiente que da esta velocidad a tubo lleno"},
         .arguments = {pipeArgument(),
                       {.name = "velocity",
                        .measure = Measure::FeetPerSecond,
                        .says = {"velocity that keeps silt moving, 2 ft/s (0.61 m/s) by common rule",
                                 "velocidad que arrastra el sedimento, 2 ft/s (0.61 m/s) por regla común"},
                        .fallback = "2 ft/s",
                        .optional = true,
                        .limits = aboveZero},
                       roughnessArgument()},
         .measure = Measure::Slope,
         .source =
             "Manning's formula for the full pipe; 2 ft/s is the common least velocity of sewer practice",
         .example = "PIPE.SELFCLEAN(\"4 SDR35\")",
         .call = [](const Arguments& in) -> Result {
             const RoughPipe pipe = roughPipe(in, 0, 2);
             const Velocity velocity = in.quantity<Velocity>(1, Velocity::feetPerSecond(2));
             return in.answer(selfCleaningSlope(pipe.bore, velocity, pipe.roughness));
         }},
        {.name = "PIPE.FILL",
         .says = {"Depth of water over bore in uniform flow",
                  "Profundidad del agua entre diámetro interior, en flujo uniforme"},
         .arguments = {pipeArgument(), slopeArgument(), flowArgument(), roughnessArgument()},
         .measure = Measure::Share,
         .source = manningSource,
         .example = "PIPE.FILL(\"4 SDR35\"; \"1%\"; 60)",
         .call = [](const Arguments& in) -> Result {
             const RoughPipe pipe = roughPipe(in, 0, 3);
             return in.answer(normalFill(pipe.bore, in.slope(1), in.quantity<Flow>(2), pipe.roughness));
         }},
        {.name = "PIPE.VELOCITY",
         .says = {"Velocity in uniform flow; flow over the full area where the pipe runs full",
                  "Velocidad en flujo uniforme; caudal entre área llena si el tubo va lleno"},
         .arguments = {pipeArgument(), slopeArgument(), flowArgument(), roughnessArgument()},
         .measure = Measure::FeetPerSecond,
         .source = manningSource,
         .example = "PIPE.VELOCITY(\"4 SDR35\"; \"1%\"; 60)",
         .call = [](const Arguments& in) -> Result {
             const RoughPipe pipe = roughPipe(in, 0, 3);
             return in.answer(uniformVelocity(pipe.bore, in.slope(1), in.quantity<Flow>(2), pipe.roughness));
         }},
        {.name = "PIPE.VELOCITY.AT",
         .says = {"Velocity full or at a fill, at this slope",
                  "Velocidad a tubo lleno o a cierto llenado, con esta pendiente"},
         .arguments = {pipeArgument(), slopeArgument(), roughnessArgument(), fillArgument()},
         .measure = Measure::FeetPerSecond,
         .source = manningSource,
         .example = "PIPE.VELOCITY.AT(\"4 SDR35\"; \"1%\")",
         .call = [](const Arguments& in) -> Result {
             const RoughPipe pipe = roughPipe(in, 0, 2);
             return in.answer(velocityAtFill(pipe.bore, in.slope(1), pipe.roughness, in.number(3, 1)));
         }},
        {.name = "PIPE.AREA",
         .says = {"Area of the water, full or at a fill", "Área del agua, a tubo lleno o a cierto llenado"},
         .arguments = {pipeArgument(), fillArgument()},
         .measure = Measure::SquareFeet,
         .source = geometrySource,
         .example = "PIPE.AREA(\"4 SDR35\"; 0.5)",
         .call = [](const Arguments& in) -> Result { return in.answer(wetted(in).area); }},
        {.name = "PIPE.RADIUS",
         .says = {"Hydraulic radius, area over wetted wall, full or at a fill",
                  "Radio hidráulico, área entre perímetro mojado, a tubo lleno o a cierto llenado"},
         .arguments = {pipeArgument(), fillArgument()},
         .measure = Measure::Inches,
         .source = geometrySource,
         .example = "PIPE.RADIUS(\"4 SDR35\"; 0.5)",
         .call = [](const Arguments& in) -> Result { return in.answer(wetted(in).hydraulicRadius); }},
        {.name = "PIPE.BORE.FOR",
         .says = {"Bore that carries this flow at this slope, full or at a fill",
                  "Diámetro interior que lleva este caudal con esta pendiente, lleno o a cierto llenado"},
         .arguments = {within(flowArgument(), aboveZero), slopeArgument(), boreRoughnessArgument(),
                       fillArgument()},
         .measure = Measure::Inches,
         .source = manningSource,
         .example = "PIPE.BORE.FOR(120; \"1%\")",
         .call = [](const Arguments& in) -> Result {
             return in.answer(boreNeeded(in.quantity<Flow>(0), in.slope(1),
                                         in.roughness(2, bareBore(Length::inches(4))), in.number(3, 1)));
         }},
        {.name = "PIPE.CRITICAL",
         .says = {"Critical depth: shallower water shoots",
                  "Profundidad crítica: el agua más somera corre en régimen rápido"},
         .arguments = {pipeArgument(), flowArgument()},
         .measure = Measure::Inches,
         .source = "Least specific energy, Q2 T = g A3, exact circular geometry; Chow, Open-Channel "
                   "Hydraulics (1959), chapter 4",
         .example = "PIPE.CRITICAL(\"4 SDR35\"; 60)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(criticalDepth(in.pipe(0).bore, in.quantity<Flow>(1)));
         }},
        {.name = "PIPE.SHEAR",
         .says = {"Mean shear of the water on the wall", "Esfuerzo cortante medio del agua en la pared"},
         .arguments = {pipeArgument(), slopeArgument(), flowArgument(), roughnessArgument()},
         .measure = Measure::PoundsPerSquareFoot,
         .source = "Unit weight of water x hydraulic radius x slope at normal depth; with the friction slope "
                   "where the pipe runs full",
         .example = "PIPE.SHEAR(\"4 SDR35\"; \"1%\"; 60)",
         .call = [](const Arguments& in) -> Result {
             const RoughPipe pipe = roughPipe(in, 0, 3);
             return in.answer(wallShear(pipe.bore, in.slope(1), in.quantity<Flow>(2), pipe.roughness));
         }},
        {.name = "PIPE.SIZE",
         .says = {"The first of the candidates that carries the flow",
                  "El primero de los candidatos que lleva el caudal"},
         .arguments =
             {within(flowArgument(), aboveZero),
              slopeArgument(),
              {.name = "candidates",
               .measure = Measure::Pipe,
               .says = {"pipes in order of preference", "tubos en orden de preferencia"},
               .fallback = "4, 6, 8, 10, 12, 15 SDR35",
               .optional = true,
               .column = true,
               .limits = stockOrBore},
              {.name = "largest share",
               .measure = Measure::Share,
               .says = {"most of the full-pipe capacity to use", "parte máxima de la capacidad a tubo lleno"},
               .fallback = "0.8",
               .optional = true,
               .limits = someShare},
              roughnessArgument(),
              {.name = "least velocity",
               .measure = Measure::FeetPerSecond,
               .says = {"velocity that this flow must reach", "velocidad que este caudal debe alcanzar"},
               .fallback = "0",
               .optional = true,
               .limits = zeroOrMore}},
         .returns = Returns::Words,
         .source = manningSource,
         .example = "PIPE.SIZE(120; \"1%\")",
         .speaks = false,
         .call = [](const Arguments& in) -> Result {
             const std::vector<Pipe> candidates = in.given(2) ? in.pipes(2) : sewerSizes();
             SizingLimits limits;
             limits.largestShare = in.number(3, limits.largestShare);
             if (in.given(4)) limits.roughness = in.roughness(4, Pipe());
             limits.leastVelocity = in.quantity<Velocity>(5, Velocity());
             const Pipe pipe = firstThatCarries(in.quantity<Flow>(0), in.slope(1), candidates, limits);
             return pipe.name.empty() ? plain(in.in(Measure::Inches, pipe.bore)) : pipe.name;
         }},
        {.name = "PIPE.FRICTION",
         .says = {"Head lost to friction running full, by Manning",
                  "Carga perdida por fricción a tubo lleno, por Manning"},
         .arguments = {pipeArgument(), flowArgument(), lengthArgument(), roughnessArgument()},
         .measure = Measure::Feet,
         .source = "Manning's friction slope of the full pipe x length; Chow, Open-Channel Hydraulics (1959)",
         .example = "PIPE.FRICTION(\"4 SDR35\"; 100; 80)",
         .call = [](const Arguments& in) -> Result {
             const RoughPipe pipe = roughPipe(in, 0, 3);
             return in.answer(
                 manningLoss(pipe.bore, in.quantity<Flow>(1), in.quantity<Length>(2), pipe.roughness));
         }},
        {.name = "PIPE.FRICTION.WALL",
         .says = {"Head lost to friction running full, by Darcy-Weisbach",
                  "Carga perdida por fricción a tubo lleno, por Darcy-Weisbach"},
         .arguments =
             {pipeArgument(),
              flowArgument(),
              lengthArgument(),
              {.name = "wall roughness",
               .measure = Measure::Inches,
               .says = {"height of the wall's grains; 0 is smooth, plastic some 0.00006 in (0.0015 mm)",
                        "altura de los granos de la pared; 0 es lisa, plástico unas 0.00006 in (0.0015 mm)"},
               .limits =
                   Limits{.also = {"at most 0.05 of the bore", "como máximo 0.05 del diámetro interior"}}},
              {.name = "water",
               .measure = Measure::Fahrenheit,
               .says = {"water temperature", "temperatura del agua"},
               .fallback = "60 °F",
               .optional = true,
               .limits = Limits{.least = 32, .greatest = 212}}},
         .measure = Measure::Feet,
         .source = "Darcy-Weisbach with Colebrook's friction factor (1939), 64/Re when laminar; viscosity of "
                   "water IAPWS SR6-08, "
                   "density Kell (1975)",
         .example = "PIPE.FRICTION.WALL(\"4 SDR35\"; 100; 80; 0.00006)",
         .call = [](const Arguments& in) -> Result {
             const Temperature water = in.quantity<Temperature>(4, Temperature::fahrenheit(60));
             return in.answer(wallLoss(in.pipe(0).bore, in.quantity<Flow>(1), in.quantity<Length>(2),
                                       in.quantity<Length>(3), waterViscosity(water)));
         }},
        {.name = "PIPE.HOLDS",
         .says = {"Water that the pipe holds when full", "Agua que contiene el tubo lleno"},
         .arguments = {pipeArgument(), lengthArgument()},
         .measure = Measure::Gallons,
         .source = "Area of the bore x length",
         .example = "PIPE.HOLDS(\"4 SDR35\"; 100)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(insideVolume(in.pipe(0), in.quantity<Length>(1)));
         }},
        {.name = "PIPE.DISPLACES",
         .says = {"Room that the pipe takes up in the trench", "Lugar que ocupa el tubo en la zanja"},
         .arguments = {within(pipeArgument(), stockAlone), lengthArgument()},
         .measure = Measure::CubicFeet,
         .source = "Area of the outside x length",
         .example = "PIPE.DISPLACES(\"4 SDR35\"; 100)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(outsideVolume(in.pipe(0), in.quantity<Length>(1)));
         }},
        {.name = "FITTING.K",
         .says = {"Loss coefficient of a fitting, an entrance or an exit",
                  "Coeficiente de pérdida de un accesorio, una entrada o una salida"},
         .arguments = {{.name = "fitting",
                        .measure = Measure::Words,
                        .says = {"90 bend, 45 bend, 22.5 bend, tee branch, wye run, entrance, exit…",
                                 "90 codo, 45 codo, 22.5 codo, te ramal, yee paso, entrada, salida…"}}},
         .source = lossSource,
         .example = "FITTING.K(\"45 bend\")",
         .call = [](const Arguments& in) -> Result { return fitting(in.text(0)).k; }},
        {.name = "FITTING.LOSS",
         .says = {"Head lost in a fitting running full", "Carga perdida en un accesorio a tubo lleno"},
         .arguments = {pipeArgument(),
                       flowArgument(),
                       {.name = "K",
                        .measure = Measure::Plain,
                        .says = {"loss coefficient, or the fitting's name",
                                 "coeficiente de pérdida, o el nombre del accesorio"},
                        .limits = zeroOrMore}},
         .measure = Measure::Feet,
         .source = lossSource,
         .example = "FITTING.LOSS(\"4 SDR35\"; 100; 0.75)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(fittingLoss(in.pipe(0).bore, in.quantity<Flow>(1), lossCoefficient(in, 2)));
         }},
        {.name = "BEND.MAKEUP",
         .says = {"Elbows that make a turn: the fewest of the pieces allowed",
                  "Codos que hacen un giro: los menos posibles de las piezas permitidas"},
         .arguments = {{.name = "turn",
                        .measure = Measure::Degrees,
                        .says = {"angle of the turn, 0 is straight on", "ángulo del giro, 0 es recto"},
                        .limits = Limits{.greatest = 180, .above = true, .toldByFunction = true}},
                       {.name = "pieces",
                        .measure = Measure::Degrees,
                        .says = {"angles of the elbows in stock", "ángulos de los codos disponibles"},
                        .fallback = "22.5, 45",
                        .optional = true,
                        .column = true,
                        .limits = Limits{.least = 5, .greatest = 90, .toldByFunction = true}},
                       {.name = "tolerance",
                        .measure = Measure::Degrees,
                        .says = {"how far the sum may be off", "cuánto puede desviarse la suma"},
                        .fallback = "3",
                        .optional = true,
                        .limits = Limits{.greatest = 22.5, .toldByFunction = true}}},
         .returns = Returns::Words,
         .source = "Fewest pieces whose sum comes within the tolerance, by search of all sums",
         .example = "BEND.MAKEUP(67)",
         .speaks = false,
         .call = [](const Arguments& in) -> Result {
             const std::vector<Angle> pieces =
                 angles(in.given(1) ? in.numbers(1) : std::vector<double>{22.5, 45});
             return makeupText(
                 makeup(in.quantity<Angle>(0), pieces, in.quantity<Angle>(2, Angle::degrees(3))));
         }},
    };
}

}  // namespace trenchbook::addin
