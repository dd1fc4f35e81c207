// A pump where gravity fails: basin, cycles, head, duty point.
#include "catalog/common.h"
#include "trenchbook/pipe/equivalent_length.h"
#include "trenchbook/pipe/hazen_williams.h"
#include "trenchbook/water/pump.h"

namespace trenchbook::addin {
namespace {

constexpr const char* hazenWilliams =
    "Hazen-Williams, 0.2083 (100/C)^1.85 Q^1.85 / d^4.87 ft in 100 ft (gpm, in), as printed friction tables of "
    "plastic pipe have it; C from 60 to 160";

constexpr double pressureSizes[] = {1.25, 1.5, 2, 2.5, 3, 4};

Argument pumpFlowArgument() {
    return {.name = "pump flow",
            .measure = Measure::Gpm,
            .says = {"flow of the pump", "caudal de la bomba"},
            .limits = aboveZero};
}
Argument dischargePipeArgument() {
    return {.name = "pipe",
            .measure = Measure::Pipe,
            .says = {"discharge pipe: a stock name such as 2 SCH40, or a bare bore",
                     "tubo de descarga: nombre comercial como 2 SCH40, o un diámetro interior"},
            .limits = stockOrBore};
}
Argument pumpedArgument() {
    return {.name = "flow",
            .measure = Measure::Gpm,
            .says = {"flow that is pumped", "caudal bombeado"},
            .limits = zeroOrMore};
}
Argument dischargeLengthArgument() {
    return {.name = "length",
            .measure = Measure::Feet,
            .says = {"length of the discharge pipe", "longitud del tubo de descarga"},
            .limits = zeroOrMore};
}
Argument liftArgument() {
    return {.name = "static lift",
            .measure = Measure::Feet,
            .says = {"from the level at which the pump stops up to the end of the pipe",
                     "desde el nivel en que la bomba se detiene hasta el final del tubo"},
            .limits = Limits{.least = -unlimited,
                             .also = {"any; below 0 the pipe ends lower",
                                      "cualquiera; menos de 0 el tubo termina más abajo"}}};
}
Argument fittingsLengthArgument() {
    return {.name = "fittings length",
            .measure = Measure::Feet,
            .says = {"fittings and valves as feet of straight pipe: PUMP.FITTING",
                     "accesorios y válvulas como longitud de tubo recto: PUMP.FITTING"},
            .fallback = "0",
            .optional = true,
            .limits = zeroOrMore};
}
Argument lossArgument() {
    return {.name = "K",
            .says = {"loss coefficients in velocity heads, the exit with 1",
                     "coeficientes de pérdida en cargas de velocidad, la salida con 1"},
            .fallback = "1",
            .optional = true,
            .limits = zeroOrMore};
}
Argument cArgument() {
    return {.name = "C",
            .says = {"Hazen-Williams coefficient: 150 new plastic, 140 the careful value",
                     "coeficiente de Hazen-Williams: 150 plástico nuevo, 140 el valor prudente"},
            .fallback = "140",
            .optional = true,
            .limits = Limits{.least = 60, .greatest = 160}};
}

// The pipe, and the arguments from `fittings` on: fittings length, K, C.
DischargePipe dischargePipe(const Arguments& in, std::size_t lift, std::size_t pipe, std::size_t length,
                            std::size_t fittings) {
    return {.bore = in.pipe(pipe).bore,
            .length = in.quantity<Length>(length),
            .fittings = in.quantity<Length>(fittings, Length{}),
            .k = in.number(fittings + 1, DischargePipe{}.k),
            .lift = in.quantity<Length>(lift),
            .c = in.number(fittings + 2, carefulPlasticC)};
}

// Rows that are blank in both columns are passed over, anything else must be numbers.
std::vector<PumpPoint> readCurve(const Arguments& in, std::size_t flow, std::size_t head) {
    using State = Arguments::Entry::State;
    in.requireSameRows({flow, head});
    const std::size_t rows = in.rows(flow);
    const std::vector<Arguments::Entry> flows = in.entries(flow, rows), heads = in.entries(head, rows);
    std::vector<PumpPoint> curve;
    for (std::size_t row = 0; row < rows; ++row) {
        if (flows[row].state == State::Empty && heads[row].state == State::Empty) continue;
        curve.push_back({Flow::fromSi(in.required(flow, row, flows[row])),
                         Length::fromSi(in.required(head, row, heads[row]))});
    }
    return curve;
}

}  // namespace

std::vector<Function> pumpFunctions() {
    return {
        {.name = "PUMP.BASIN",
         .says = {"Water between the floats of a pump basin that keeps starts far enough apart",
                  "Agua entre los flotadores de una cisterna de bombeo que separa bastante los arranques"},
         .arguments = {pumpFlowArgument(),
                       {.name = "cycle",
                        .measure = Measure::Minutes,
                        .says = {"least time from one start to the next; the pump's maker says",
                                 "tiempo mínimo de un arranque al siguiente; lo dice el fabricante"},
                        .limits = aboveZero}},
         .measure = Measure::Gallons,
         .source = "V = Q t / 4: a pump cycles fastest when half of its flow runs in; FHWA HEC-22, 3rd ed., "
                   "9.3.8, Eq. 9-2",
         .example = "PUMP.BASIN(30; 6)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(betweenStarts(in.quantity<Flow>(0), in.quantity<Duration>(1)));
         }},
        {.name = "PUMP.FLOATS",
         .says = {"Fall of the water between start and stop in a round basin",
                  "Descenso del agua entre arranque y paro en una cisterna redonda"},
         .arguments = {{.name = "volume",
                        .measure = Measure::Gallons,
                        .says = {"water between the floats", "agua entre los flotadores"},
                        .limits = aboveZero},
                       {.name = "diameter",
                        .measure = Measure::Inches,
                        .says = {"inside diameter of the basin", "diámetro interior de la cisterna"},
                        .limits = aboveZero}},
         .measure = Measure::Inches,
         .source = "volume / area of the basin",
         .example = "PUMP.FLOATS(45; 24)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(floatDistance(in.quantity<Volume>(0), in.quantity<Length>(1)));
         }},
        {.name = "PUMP.CYCLES",
         .says = {"Starts of the pump in an hour", "Arranques de la bomba en una hora"},
         .arguments = {pumpFlowArgument(),
                       {.name = "volume",
                        .measure = Measure::Gallons,
                        .says = {"water between the floats", "agua entre los flotadores"},
                        .limits = aboveZero},
                       {.name = "inflow",
                        .measure = Measure::Gpm,
                        .says = {"water that runs in", "agua que entra"},
                        .fallback = "half of the pump flow, the worst",
                        .optional = true,
                        .limits = Limits{.also = {"less than the pump", "menos que la bomba"}}}},
         .source = "One cycle is V/q + V/(Q - q); most at q = Q/2; FHWA HEC-22, 3rd ed., 9.3.8",
         .example = "PUMP.CYCLES(30; 45)",
         .call = [](const Arguments& in) -> Result {
             const Flow pump = in.quantity<Flow>(0);
             return cyclesPerHour(pump, in.quantity<Volume>(1), in.quantity<Flow>(2, pump / 2));
         }},
        {.name = "PUMP.FRICTION",
         .says = {"Head that the discharge pipe loses to friction",
                  "Carga que pierde el tubo de descarga por fricción"},
         .arguments = {dischargePipeArgument(), pumpedArgument(), dischargeLengthArgument(), cArgument()},
         .measure = Measure::Feet,
         .source = hazenWilliams,
         .example = "PUMP.FRICTION(\"2 SCH40\"; 40; 100; 150)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(hazenWilliamsLoss(in.pipe(0).bore, in.quantity<Flow>(1), in.quantity<Length>(2),
                                                in.number(3, carefulPlasticC)));
         }},
        {.name = "PUMP.FITTING",
         .says = {"Length of straight pipe that loses as much as a fitting of the discharge pipe",
                  "Longitud de tubo recto que pierde tanto como un accesorio del tubo de descarga"},
         .arguments = {{.name = "fitting",
                        .measure = Measure::Words,
                        .says = {"90 elbow, 45 elbow, tee, check valve, union, gate valve",
                                 "codo de 90, codo de 45, te, válvula de retención, unión, válvula de "
                                 "compuerta"}},
                       {.name = "size",
                        .says = {"nominal size of the pipe in inches", "tamaño nominal del tubo en pulgadas"},
                        .limits = Limits{.oneOf = pressureSizes, .toldByFunction = true}}},
         .measure = Measure::Feet,
         .source =
             "A pump maker's worksheet for plastic fittings; another maker prints about half for elbows",
         .example = "PUMP.FITTING(\"90 elbow\"; 2)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(equivalentLength(in.text(0), in.number(1)));
         }},
        {.name = "PUMP.HEAD",
         .says = {"Total head that a pump works against", "Carga total contra la que trabaja una bomba"},
         .arguments = {pumpedArgument(), liftArgument(), dischargePipeArgument(), dischargeLengthArgument(),
                       fittingsLengthArgument(), lossArgument(), cArgument()},
         .measure = Measure::Feet,
         .source = std::string("Static lift + friction + K V2/2g, FHWA HEC-22, 3rd ed., 9.3.3, Eq. 9-1; ") +
                   hazenWilliams,
         .example = "PUMP.HEAD(30; 10; \"2 SCH40\"; 100; 44)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(totalHead(dischargePipe(in, 1, 2, 3, 4), in.quantity<Flow>(0)));
         }},
        {.name = "PUMP.DUTY",
         .says = {"Where a pump works on its curve: flow, head, speed in the discharge pipe",
                  "Dónde trabaja una bomba en su curva: caudal, carga, velocidad en el tubo de descarga"},
         .arguments = {liftArgument(),
                       dischargePipeArgument(),
                       dischargeLengthArgument(),
                       {.name = "curve flow",
                        .measure = Measure::Gpm,
                        .says = {"flows of the pump's curve, rising, best from 0",
                                 "caudales de la curva de la bomba, de menor a mayor, mejor desde 0"},
                        .column = true,
                        .limits = Limits{.also = {"rising from row to row", "creciente de fila en fila"}}},
                       {.name = "curve head",
                        .measure = Measure::Feet,
                        .says = {"heads at those flows", "cargas a esos caudales"},
                        .column = true,
                        .limits =
                            Limits{.also = {"not rising from row to row", "sin subir de fila en fila"}}},
                       fittingsLengthArgument(),
                       lossArgument(),
                       cArgument()},
         .returns = Returns::NumberBlock,
         .columns = "flow (gpm), head (ft), speed (ft/s)",
         .source = "Where the curve, straight between its points, meets PUMP.HEAD",
         .example = "PUMP.DUTY(10; \"2 SCH40\"; 100; {0|20|40|60}; {24|21|16|8}; 44)",
         .call = [](const Arguments& in) -> Result {
             const DischargePipe pipe = dischargePipe(in, 0, 1, 2, 5);
             const PumpPoint duty = dutyPoint(pipe, readCurve(in, 3, 4));
             return Numbers{.columns = 3,
                            .items = {in.in(Measure::Gpm, duty.flow), in.in(Measure::Feet, duty.head),
                                      in.in(Measure::FeetPerSecond, dischargeSpeed(pipe.bore, duty.flow))}};
         }},
        {.name = "PUMP.SPEED",
         .says = {"Speed of the water in the discharge pipe", "Velocidad del agua en el tubo de descarga"},
         .arguments = {dischargePipeArgument(), pumpedArgument()},
         .measure = Measure::FeetPerSecond,
         .source = "flow / area of the bore",
         .example = "PUMP.SPEED(\"2 SCH40\"; 40)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(dischargeSpeed(in.pipe(0).bore, in.quantity<Flow>(1)));
         }},
    };
}

}  // namespace trenchbook::addin
