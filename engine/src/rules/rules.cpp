#include "trenchbook/rules/rules.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

#include "trenchbook/core/error.h"
#include "trenchbook/core/tape.h"

#define COMMON_PRACTICE "common practice, no source"

namespace trenchbook {
namespace {

namespace ask {
const Text estimator{"the estimator's own choice", "a criterio del estimador"};
const Text county{"county or city; owners' association", "condado o ciudad; asociación de colonos"};
const Text state{"state", "estado"};
const Text supplier{"supplier", "proveedor"};
const Text utility{"811 and the line's owner", "811 y el dueño de la línea"};
const Text safety{"safety office (OSHA or the state's plan)", "seguridad laboral (OSHA o el plan estatal)"};
const Text bookkeeper{"bookkeeper", "contador"};
const Text hauler{"hauler", "transportista"};
}  // namespace ask

const std::vector<Rule>& table() {
    // One rule, three or four lines: key, default, unit, range; what it says; source; whom to ask.
    // clang-format off
    static const std::vector<Rule> rows = {
        // Fall.
        {"slope.min.2in", 0.25 / 12, Unit::Slope, 0, 0.2,
         {"least slope, pipe under 3 in", "pendiente mínima, tubo de menos de 3 in"},
         "city plumbing code, minimum slopes (codelibrary.amlegal.com, Chicago 2691996)", ask::county},
        {"slope.min.3in", 0.125 / 12, Unit::Slope, 0, 0.2,
         {"least slope, 3 in pipe", "pendiente mínima, tubo de 3 in"},
         "city plumbing code, minimum slopes (codelibrary.amlegal.com, Chicago 2691996); 1 % is the "
         "yard-drain floor in common practice", ask::county},
        {"slope.min.4in", 0.125 / 12, Unit::Slope, 0, 0.2,
         {"least slope, 4 in pipe", "pendiente mínima, tubo de 4 in"},
         "city plumbing code, minimum slopes (codelibrary.amlegal.com, Chicago 2691996); 1 % is the "
         "yard-drain floor in common practice", ask::county},
        {"slope.min.6in", 0.125 / 12, Unit::Slope, 0, 0.2,
         {"least slope, 6 in pipe", "pendiente mínima, tubo de 6 in"},
         "city plumbing code, minimum slopes (codelibrary.amlegal.com, Chicago 2691996); 1 % is the "
         "yard-drain floor in common practice", ask::county},
        {"slope.min.8in", 0.0625 / 12, Unit::Slope, 0, 0.2,
         {"least slope, 8 in pipe and larger", "pendiente mínima, tubo de 8 in y mayores"},
         "city plumbing code, minimum slopes (codelibrary.amlegal.com, Chicago 2691996)", ask::county},
        {"slope.min.perforated", 0, Unit::Slope, 0, 0.2,
         {"least slope of perforated pipe, which may lie level",
          "pendiente mínima de tubo perforado, que puede ir a nivel"},
         "level or sloped; " COMMON_PRACTICE, ask::county},
        {"slope.tolerance", 0, Unit::Slope, 0, 0.005,
         {"how much under the least slope still passes",
          "cuánto por debajo de la pendiente mínima todavía pasa"},
         "0: at exactly 1 % a run fails a strict 1/8 in/ft (1.0417 %)", ask::county},
        {"slope.spare", 0.02, Unit::Feet, 0, 1,
         {"fall kept in hand at each sharp fitting when checking closely",
          "desnivel de reserva en cada accesorio brusco al revisar de cerca"},
         "0.02 to 0.05 ft; " COMMON_PRACTICE, ask::estimator},
        // Water in the pipe.
        {"share.max", 0.8, Unit::Share, 0.1, 1,
         {"largest share of the full pipe's flow", "mayor parte del caudal a tubo lleno"},
         COMMON_PRACTICE "; some use 0.75, some code tables allow full", ask::county},
        {"velocity.min", 2, Unit::FeetPerSecond, 0, 10,
         {"least velocity flowing full, to keep clean",
          "velocidad mínima a tubo lleno, para que se limpie"},
         "2 ft/s common (codelibrary.amlegal.com, Lakeside TX 26197); 2.5 ft/s Austin drainage "
         "manual 5.3.1; 3 ft/s North Baltimore OH", ask::county},
        {"velocity.max", 10, Unit::FeetPerSecond, 1, 50,
         {"greatest velocity in the pipe", "velocidad máxima en el tubo"},
         "town code (codelibrary.amlegal.com, Lakeside TX 26197); above 12 ft/s needs protection "
         "(North Baltimore OH)", ask::county},
        {"velocity.outlet.max", 5, Unit::FeetPerSecond, 1, 20,
         {"greatest velocity onto grass without a stone apron",
          "velocidad máxima sobre pasto sin zampeado"},
         "4 to 5 ft/s; " COMMON_PRACTICE, ask::county},
        {"freeboard.min", 0.5, Unit::Feet, 0, 5,
         {"least height of every grate, cap, sill and swale bank over the water",
          "altura mínima de cada rejilla, tapa, umbral y borde de cuneta sobre el agua"},
         COMMON_PRACTICE, ask::estimator},
        {"grate.blocked", 0.5, Unit::Share, 0, 0.95,
         {"share of a grate taken as blocked by leaves",
          "parte de la rejilla que se supone tapada por hojas"},
         "half the area: Texas DOT hydraulic design manual", ask::county},
        {"grate.over.max", 0.1, Unit::Feet, 0, 2,
         {"height of a grate over the ground around it from which water goes round it",
          "altura de una rejilla sobre el terreno desde la que el agua la rodea"},
         "flush or half an inch under; " COMMON_PRACTICE, ask::estimator},
        {"runoff.roof.min", 0.75, Unit::Share, 0, 1,
         {"share of the rain that runs off a roof below which it is looked at again",
          "parte de la lluvia que escurre de un techo debajo de la cual se revisa"},
         "roofs 0.75 to 0.95: FHWA HDS-2, table of runoff coefficients", ask::estimator},
        {"duration.least", 5, Unit::Minutes, 1, 60,
         {"shortest time on its way that water is taken to need",
          "menor tiempo de recorrido que se supone para el agua"},
         "least time of concentration 5 min, FHWA HEC-22, 3rd ed., chapter 3 (from memory)", ask::county},
        // Outlet.
        {"outlet.above.min", 0.17, Unit::Feet, 0, 3,
         {"least height of the outlet invert over the swale's flow line",
          "altura mínima de la salida sobre el fondo de la cuneta"},
         "2 to 3 in, so that it does not silt shut; " COMMON_PRACTICE, ask::county},
        {"outlet.above.max", 1.5, Unit::Feet, 0, 20,
         {"height of the outlet invert over the ground that its water falls on, from which stone is laid there",
          "altura de la salida sobre el suelo donde cae su agua, desde la que se pone piedra"},
         "a foot or two onto bare ground; " COMMON_PRACTICE, ask::estimator},
        {"outlet.rim.min", 0, Unit::Feet, -1, 1,
         {"least height of the rim that a line bubbles over, over the ground around it",
          "altura mínima del borde por donde brota la línea sobre el terreno que lo rodea"},
         "flush to 0.1 ft proud; " COMMON_PRACTICE, ask::estimator},
        {"outlet.rim.max", 0.1, Unit::Feet, 0, 2,
         {"height of that rim over the ground from which it is stumbled over",
          "altura de ese borde sobre el terreno desde la que estorba"},
         "flush to 0.1 ft proud; " COMMON_PRACTICE, ask::estimator},
        {"outlet.backwater.max", 1, Unit::Number, 0, 10,
         {"water that the outlet ends in, over its invert, in bores, above which a check valve is asked for",
          "agua en la que termina la salida, sobre su cota, en diámetros, desde la que se pide válvula de retención"},
         "the pipe's end under water; " COMMON_PRACTICE, ask::estimator},
        {"outlet.empty.max", 72, Unit::Hours, 1, 240,
         {"longest time that water stays in the line behind a rim",
          "tiempo más largo que queda agua en la línea tras el borde"},
         "mosquitoes: at most 72 h; " COMMON_PRACTICE, ask::county},
        {"outlet.line.min", 10, Unit::Feet, 0, 200,
         {"least distance from the outlet to the lot line",
          "distancia mínima de la salida al lindero"},
         "5 ft (Warrenville IL), 10 ft (O'Fallon IL 13501), 25 ft over your own ground (Perry Township)", ask::county},
        {"outlet.walk.min", 10, Unit::Feet, 0, 200,
         {"least distance from the outlet to a public sidewalk",
          "distancia mínima de la salida a la banqueta pública"},
         "codelibrary.amlegal.com, O'Fallon IL 13501", ask::county},
        {"outlet.foundation.min", 5, Unit::Feet, 0, 100,
         {"least distance of released roof water from foundation walls",
          "distancia mínima del agua de techo al cimiento"},
         "from memory: IRC R801.3, expansive or collapsible soil", ask::county},
        {"ground.away.min", 0.02, Unit::Slope, 0, 0.2,
         {"least fall of the ground away from the house, and of swales near it",
          "desnivel mínimo del terreno que se aleja de la casa, y de las cunetas junto a ella"},
         "IRC 2006 R401.3: swales within 10 ft of the house 2 %", ask::county},
        {"ground.away.within", 10, Unit::Feet, 0, 50,
         {"as far from the house the ground must fall away",
          "hasta esta distancia de la casa el terreno debe alejarse bajando"},
         "IRC 2006 R401.3: within 10 ft of the house", ask::county},
        // Pump.
        {"pump.share.max", 1, Unit::Share, 0.3, 1,
         {"largest share of the pump's flow that may come", "mayor parte del caudal de la bomba que puede llegar"},
         "what comes goes out; no reserve for a worn pump; " COMMON_PRACTICE, ask::supplier},
        {"pump.starts.max", 10, Unit::Number, 1, 60,
         {"most starts of the pump in an hour", "más arranques de la bomba por hora"},
         "a pump dealer's page, 6 to 10 (sumpdirect.com, short cycling); the pump's maker says", ask::supplier},
        {"pump.run.min", 1, Unit::Minutes, 0, 30,
         {"shortest time that the pump runs at a start", "menor tiempo que la bomba trabaja en un arranque"},
         "1 min: a pump dealer's page (sumpdirect.com, short cycling)", ask::supplier},
        {"pump.speed.min", 2, Unit::FeetPerSecond, 0, 10,
         {"least speed in the discharge pipe, to keep clean", "velocidad mínima en el tubo de descarga, para que se limpie"},
         "2 ft/s: UFC 3-240-06A, force mains", ask::supplier},
        {"pump.speed.max", 8, Unit::FeetPerSecond, 3, 20,
         {"greatest speed in the discharge pipe", "velocidad máxima en el tubo de descarga"},
         "8 to 10 ft/s, " COMMON_PRACTICE "; 10 ft/s: UFC 3-240-06A, force mains", ask::supplier},
        {"pump.off.min", 0.25, Unit::Feet, 0, 5,
         {"least height of the pump's stop over the basin's floor", "altura mínima del paro de la bomba sobre el fondo del cárcamo"},
         "3 in, so that the pump stays in water; " COMMON_PRACTICE "; the pump's maker says", ask::supplier},
        {"pump.below.min", 0, Unit::Feet, 0, 5,
         {"least depth of the pump's start under the line's invert", "profundidad mínima del arranque de la bomba bajo la cota de la línea"},
         "0: the line runs empty; " COMMON_PRACTICE, ask::estimator},
        {"pump.back.max", 0, Unit::Share, 0, 0.9,
         {"largest share of the water between the floats that may run back where there is no check valve",
          "mayor parte del agua entre los flotadores que puede regresar sin válvula de retención"},
         "needed where the discharge holds enough to start the pump again: FHWA HEC-22, 3rd ed., 9.2.11; 0, one in every "
         "discharge: " COMMON_PRACTICE, ask::supplier},
        {"pump.float.min", 1.5, Unit::Number, 1, 5,
         {"what holds the empty basin down over what lifts it, at least",
          "lo que sujeta el cárcamo vacío entre lo que lo levanta, al menos"},
         "1.5: Burnett County, Wisconsin, tank anchoring form; 2.0: American Concrete Pipe Association, Design Data 41",
         ask::supplier},
        // Cover over the pipe's outside.
        {"cover.lawn", 12, Unit::Inches, 0, 120,
         {"least cover under lawn", "cobertura mínima bajo césped"},
         COMMON_PRACTICE, ask::county},
        {"cover.end", 8, Unit::Inches, 0, 120,
         {"least cover under lawn in the last few feet before an outlet",
          "cobertura mínima bajo césped en los últimos pies antes de la salida"},
         "8 to 9 in; " COMMON_PRACTICE, ask::county},
        {"cover.daylight.within", 3, Unit::Feet, 0, 20,
         {"as far from an end in daylight no cover is asked; there it must meet cover.end",
          "hasta esta distancia de un extremo a cielo abierto no se pide cobertura; ahí debe cumplir cover.end"},
         "the last 3 ft at daylight exempt; " COMMON_PRACTICE, ask::county},
        {"cover.bed", 10, Unit::Inches, 0, 120,
         {"least cover under planting beds", "cobertura mínima bajo jardineras"},
         "8 to 12 in; " COMMON_PRACTICE, ask::county},
        {"cover.walk", 12, Unit::Inches, 0, 120,
         {"least cover under walks, patios and decks",
          "cobertura mínima bajo andadores, patios y terrazas"},
         COMMON_PRACTICE, ask::county},
        {"cover.drive", 24, Unit::Inches, 0, 120,
         {"least cover under a car drive", "cobertura mínima bajo entrada de autos"},
         "SDR 35; " COMMON_PRACTICE "; from memory: ASTM D2321, 24 in with best stone", ask::supplier},
        {"cover.drive.sch40", 18, Unit::Inches, 0, 120,
         {"least cover under a car drive, Schedule 40",
          "cobertura mínima bajo entrada de autos, cédula 40"},
         COMMON_PRACTICE, ask::supplier},
        {"cover.drive.corrugated", 24, Unit::Inches, 0, 120,
         {"least cover under a car drive, corrugated",
          "cobertura mínima bajo entrada de autos, corrugado"},
         "from memory: ASTM D2321, 24 in with best stone", ask::supplier},
        {"cover.street", 36, Unit::Inches, 0, 240,
         {"least cover under a street", "cobertura mínima bajo calle"},
         "from memory: ASTM D2321, 36 in with other soils", ask::county},
        {"wheels.d2729", 0, Unit::YesNo, 0, 1,
         {"thin-wall D2729 allowed under wheels (1 yes, 0 no)",
          "se permite D2729 de pared delgada bajo ruedas (1 sí, 0 no)"},
         COMMON_PRACTICE, ask::supplier},
        {"wheels.perforated", 0, Unit::YesNo, 0, 1,
         {"perforated pipe allowed under wheels (1 yes, 0 no)",
          "se permite tubo perforado bajo ruedas (1 sí, 0 no)"},
         COMMON_PRACTICE, ask::supplier},
        {"perforated.foundation.min", 10, Unit::Feet, 0, 200,
         {"least distance from the house of perforated pipe that carries roof water",
          "distancia mínima a la casa de tubo perforado con agua de techo"},
         "no perforated pipe within the foundation setback, " COMMON_PRACTICE "; 10 ft as for a pit (Minnesota "
         "stormwater manual)", ask::county},
        {"perforated.rock.over", 6, Unit::Inches, 0, 48,
         {"rock over the top of perforated pipe", "roca sobre el lomo de tubo perforado"},
         "4 to 6 in; " COMMON_PRACTICE, ask::estimator},
        {"size.least", 4, Unit::Inches, 1, 24,
         {"smallest pipe that a saving may name", "tubo más chico que un ahorro puede nombrar"},
         "4 in, so that a cable passes; " COMMON_PRACTICE, ask::estimator},
        // Near the trench.
        {"footing.clear.min", 0, Unit::Feet, 0, 5,
         {"least height of the trench bottom over the line that falls 1:1 from a footing's bottom outer edge",
          "altura mínima del fondo de zanja sobre la línea 1:1 desde el borde inferior de la zapata"},
         "0: 45 degrees, Uniform Plumbing Code 314.1; lateral support, IBC 1803.1 (2006)", ask::county},
        {"tree.roots", 10, Unit::Feet, 0, 200,
         {"as near to a tree the pipe is glued or Schedule 40, and never perforated",
          "hasta esta distancia de un árbol el tubo va pegado o es cédula 40, y nunca perforado"},
         "the drip line, some 10 ft; " COMMON_PRACTICE, ask::estimator},
        {"line.septic.min", 10, Unit::Feet, 0, 500,
         {"least distance of a line from the septic tank or field",
          "distancia mínima de una línea a la fosa o campo séptico"},
         "10 ft for solid pipe; " COMMON_PRACTICE "; the health department's own distance goes first", ask::county},
        {"line.well.min", 10, Unit::Feet, 0, 500,
         {"least distance of a line from a well", "distancia mínima de una línea a un pozo de agua"},
         "10 ft for solid pipe; " COMMON_PRACTICE "; the health department's own distance goes first", ask::county},
        {"footing.beyond.wall", 0.5, Unit::Feet, 0, 5,
         {"how far a footing is taken to reach beyond its wall, where a drawing gives the distance to the wall",
          "cuánto se supone que la zapata sobresale de su muro, donde el plano da la distancia al muro"},
         "6 in; " COMMON_PRACTICE, ask::estimator},
        // The drawing.
        {"tape.error", 0.1, Unit::Feet, 0.005, 3,
         {"usual error of a tape on a lot, one standard deviation: a slip is what misses by more than about three",
          "error usual de una cinta en un lote, una desviación estándar: un error grueso falla por más de unas tres"},
         "0.1 ft, from stake to corner over lawn; " COMMON_PRACTICE, ask::estimator},
        // Trench.
        {"length.max", 300, Unit::Feet, 10, 5000,
         {"longest single run", "tramo más largo"},
         "1 to 300 ft; " COMMON_PRACTICE, ask::estimator},
        {"bedding.depth", 3, Unit::Inches, 0, 24,
         {"bedding under the pipe in rock or wet ground",
          "cama bajo el tubo en roca o suelo mojado"},
         "3 to 4 in; " COMMON_PRACTICE "; from memory: ASTM D2321, 4 to 6 in", ask::estimator},
        {"trench.width.4in", 12, Unit::Inches, 3, 120,
         {"trench width, 4 in pipe and smaller", "ancho de zanja, tubo de 4 in y menores"},
         "8 to 12 in by hand; " COMMON_PRACTICE, ask::estimator},
        {"trench.width.6in", 15, Unit::Inches, 3, 120,
         {"trench width, 6 in pipe", "ancho de zanja, tubo de 6 in"},
         "12 to 18 in; " COMMON_PRACTICE, ask::estimator},
        {"trench.width.8in", 18, Unit::Inches, 3, 120,
         {"trench width, 8 in pipe and larger", "ancho de zanja, tubo de 8 in y mayores"},
         "12 to 18 in; " COMMON_PRACTICE, ask::estimator},
        {"cut.exit", 4, Unit::Feet, 1, 20,
         {"cut from which a safe way out within 25 ft is needed",
          "corte desde el que hace falta una salida segura a menos de 25 ft"},
         "29 CFR 1926.651(c)(2)", ask::safety},
        {"cut.protect", 5, Unit::Feet, 1, 20,
         {"cut from which a protective system is needed unless in stable rock",
          "corte desde el que hace falta protección, salvo en roca estable"},
         "29 CFR 1926.652(a)(1)", ask::safety},
        {"cut.air", 4, Unit::Feet, 1, 20,
         {"cut beyond which the air is tested where it may be bad",
          "corte desde el que se prueba el aire donde puede ser malo"},
         "29 CFR 1926.651(g)(1): deeper than 4 ft, where a hazard can be expected", ask::safety},
        {"cut.engineer", 20, Unit::Feet, 5, 100,
         {"cut above which an engineer designs the protection",
          "corte desde el que un ingeniero diseña la protección"},
         "29 CFR 1926.652, appendix F", ask::safety},
        {"spoil.edge", 2, Unit::Feet, 0, 20,
         {"least distance of spoil from the edge", "distancia mínima de la tierra al borde"},
         "29 CFR 1926.651(j)(2)", ask::safety},
        {"levels.close", 0.02, Unit::Feet, 0, 1,
         {"closing error of the levels that passes", "error de cierre de niveles que pasa"},
         COMMON_PRACTICE, ask::estimator},
        {"levels.close.max", 0.05, Unit::Feet, 0, 1,
         {"closing error above which the levels are shot again",
          "error de cierre desde el que se vuelve a nivelar"},
         COMMON_PRACTICE, ask::estimator},
        {"aslaid.tolerance", 0.02, Unit::Feet, 0, 1,
         {"as-laid rod reading against plan", "lectura de lo tendido contra el plan"},
         COMMON_PRACTICE, ask::estimator},
        // Crossings and marks.
        {"crossing.clearance", 12, Unit::Inches, 0, 120,
         {"least clearance to other buried lines",
          "separación mínima a otras líneas enterradas"},
         COMMON_PRACTICE "; the owner's own rule goes first", ask::utility},
        {"crossing.clearance.irrigation", 3, Unit::Inches, 0, 120,
         {"least clearance to sprinkler lines", "separación mínima a riego"},
         "3 to 6 in; " COMMON_PRACTICE, ask::estimator},
        {"handdig.tolerance", 24, Unit::Inches, 6, 120,
         {"hand digging each side of a mark", "excavación a mano a cada lado de la marca"},
         "24 in (sunshine811.com tolerance zone); 18 in elsewhere (ms811.org)", ask::utility},
        {"ticket.wait", 2, Unit::Days, 0, 30,
         {"working days from the request to the start",
          "días hábiles entre la solicitud y el inicio"},
         "al811.com/life-of-ticket; states differ", ask::utility},
        {"ticket.life", 20, Unit::Days, 1, 365,
         {"working days that a ticket lasts", "días hábiles que dura un folio"},
         "al811.com/life-of-ticket; states differ", ask::utility},
        {"ticket.warn", 3, Unit::Days, 0, 30,
         {"days before expiry that are warned of", "días de aviso antes de que venza"},
         COMMON_PRACTICE, ask::estimator},
        // Cleanouts and bends.
        {"cleanout.spacing.4in", 50, Unit::Feet, 10, 500,
         {"longest way between cleanouts, 4 in pipe and smaller",
          "mayor distancia entre registros, tubo de 4 in y menores"},
         "50 ft: city amendments (Philadelphia P-708, Chicago 2692130); model code 100 ft", ask::county},
        {"cleanout.spacing.6in", 100, Unit::Feet, 10, 500,
         {"longest way between cleanouts, larger pipe",
          "mayor distancia entre registros, tubo mayor"},
         "Philadelphia P-708, Chicago 2692130; from memory: IPC 708.1", ask::county},
        {"cleanout.turn", 135, Unit::Degrees, 45, 360,
         {"most turning between cleanouts", "mayor giro entre registros"},
         "two 90s' worth (180) at most, house rules often 135; " COMMON_PRACTICE, ask::county},
        {"cleanout.bend", 45, Unit::Degrees, 0, 90,
         {"a single turn above this wants a cleanout",
          "un giro mayor que este pide registro"},
         "Chicago 2692130; from memory: IPC 708.1.4", ask::county},
        {"cleanout.group", 40, Unit::Feet, 0, 200,
         {"turns within this way share the first cleanout",
          "los giros dentro de esta distancia comparten el primer registro"},
         "Chicago 2692130", ask::county},
        {"bend.sharp", 67.5, Unit::Degrees, 22.5, 180,
         {"a single turn above this is sharp", "un giro mayor que este es brusco"},
         "a 90 is, 45 + 22.5 is not; " COMMON_PRACTICE, ask::estimator},
        {"bend.sharp.most", 2, Unit::Number, 0, 10,
         {"sharp turns after which the next one is made gentler",
          "giros bruscos tras los que el siguiente se hace más suave"},
         "two 90s' worth between cleanouts at most; " COMMON_PRACTICE, ask::estimator},
        {"bend.tolerance", 3, Unit::Degrees, 0, 15,
         {"turn that fittings may miss by", "giro que los accesorios pueden errar"},
         COMMON_PRACTICE, ask::estimator},
        // Soil and pit.
        {"soil.safety", 2, Unit::Number, 1, 10,
         {"soak rate is divided by this", "la infiltración se divide entre esto"},
         "2 (New Jersey BMP manual 9.3), 2 to 3 (TRCA), 3 (Los Angeles LID)", ask::county},
        {"soil.presoak.min", 4, Unit::Hours, 0, 72,
         {"least hours of water in a soak hole before the first reading",
          "horas mínimas de agua en el hoyo antes de la primera lectura"},
         "4 h, in clay 12 h (Ontario building code, appendix B-8.2.1.2); 24 h (a county's procedure); sand that takes the "
         "second fill in 10 minutes needs none", ask::county},
        {"soil.agree.share", 0.1, Unit::Share, 0, 1,
         {"last three soak readings agree within this share",
          "las tres últimas lecturas coinciden dentro de esta parte"},
         "10 % (TRCA)", ask::county},
        {"soil.agree.drop", 0.2, Unit::Inches, 0, 5,
         {"or within this drop", "o dentro de este descenso"},
         "0.2 in, 5 mm (Ontario building code, appendix B-8.2.1.2)", ask::county},
        {"pit.rate.min", 0.5, Unit::InchesPerHour, 0, 100,
         {"least design soak rate", "infiltración de diseño mínima"},
         "0.5 in/hr (state coastal stormwater supplement; New Jersey BMP 9.3); 0.3 measured (Los Angeles)", ask::county},
        {"pit.rate.max", 10, Unit::InchesPerHour, 0.1, 1000,
         {"greatest design soak rate, to protect groundwater",
          "infiltración de diseño máxima, para proteger el agua subterránea"},
         "New Jersey BMP manual 9.3", ask::county},
        {"pit.drain.max", 48, Unit::Hours, 1, 240,
         {"longest time to empty", "mayor tiempo de vaciado"},
         "24 h (state coastal supplement), 48 h (district dry-well sheet), 72 h (New Jersey)", ask::county},
        {"pit.separation.min", 2, Unit::Feet, 0, 50,
         {"least height of the pit's bottom over high water",
          "altura mínima del fondo sobre el agua alta"},
         "1 ft (Everett WA), 2 ft (state coastal supplement, New Jersey), 3 ft (Minnesota)", ask::county},
        {"pit.setback.foundation.min", 10, Unit::Feet, 0, 1000,
         {"least distance of a pit from the foundation",
          "distancia mínima del pozo de absorción: cimiento"},
         "Minnesota stormwater manual", ask::county},
        {"pit.setback.line.min", 10, Unit::Feet, 0, 1000,
         {"least distance of a pit from the lot line",
          "distancia mínima del pozo de absorción: lindero"},
         "Minnesota stormwater manual", ask::county},
        {"pit.setback.well.min", 100, Unit::Feet, 0, 1000,
         {"least distance of a pit from a private well",
          "distancia mínima del pozo de absorción: pozo de agua"},
         "50 to 100 ft, Minnesota stormwater manual", ask::county},
        {"pit.setback.septic.min", 35, Unit::Feet, 0, 1000,
         {"least distance of a pit from the septic tank or field",
          "distancia mínima del pozo de absorción: fosa o campo séptico"},
         "35 ft Minnesota; 25 ft district dry-well sheet", ask::county},
        {"pit.setback.pool.min", 10, Unit::Feet, 0, 1000,
         {"least distance of a pit from the pool shell",
          "distancia mínima del pozo de absorción: alberca"},
         COMMON_PRACTICE, ask::county},
        {"pit.slope.max", 0.2, Unit::Slope, 0, 1,
         {"steepest ground for a pit", "terreno más inclinado para un pozo de absorción"},
         "district dry-well sheet", ask::county},
        {"pit.group.d", 0, Unit::YesNo, 0, 1,
         {"pit allowed in hydrologic soil group D (1 yes, 0 no)",
          "se permite pozo de absorción en suelo del grupo D (1 sí, 0 no)"},
         "district dry-well sheet", ask::county},
        {"pit.area.max", 1000, Unit::SquareFeet, 50, 100000,
         {"most roof and deck on one pit", "mayor superficie por pozo"},
         "1,000 sq ft (district dry-well sheet), 2,500 sq ft (state coastal supplement)", ask::county},
        {"pit.perc.max", 60, Unit::MinutesPerInch, 1, 1000,
         {"slowest percolation test that is usable",
          "prueba de percolación más lenta que sirve"},
         "codelibrary.amlegal.com, Vienna IL 1743", ask::county},
        {"pit.aspect.max", 1, Unit::Number, 0.1, 10,
         {"depth over widest dimension above which the injection-well office is asked",
          "profundidad entre mayor ancho desde la que se pregunta a la oficina de pozos"},
         "US EPA, stormwater drainage wells: deeper than its widest surface dimension", ask::state},
        {"pit.rock.depth.min", 18, Unit::Inches, 0, 240,
         {"least rock depth", "profundidad mínima de roca"},
         "18 to 48 in: Michigan low-impact manual", ask::county},
        {"pit.rock.depth.max", 48, Unit::Inches, 6, 360,
         {"greatest rock depth", "profundidad máxima de roca"},
         "18 to 48 in: Michigan low-impact manual", ask::county},
        {"pit.voids", 0.4, Unit::Share, 0.1, 0.99,
         {"voids of the rock", "vacíos de la roca"},
         "0.40 (Michigan), 0.35 (TRCA)", ask::supplier},
        {"pit.sideshare", 0, Unit::Share, 0, 1,
         {"share of the wet sides that soaks", "parte de las paredes mojadas que absorbe"},
         "bottom alone is the safe choice, half the sides in practice; " COMMON_PRACTICE, ask::county},
        {"fabric.overlap", 12, Unit::Inches, 0, 60,
         {"overlap of filter fabric", "traslape del geotextil"},
         "12 in, 18 in on loose soil; " COMMON_PRACTICE, ask::estimator},
        {"pump.basin.room", 12, Unit::Inches, 0, 60,
         {"room to work around a pump basin in its hole", "espacio de trabajo alrededor del cárcamo en su hoyo"},
         COMMON_PRACTICE, ask::estimator},
        // Boxes, channels, what goes over the pipe.
        {"basin.depth", 18, Unit::Inches, 1, 240,
         {"grate to the pipe's bottom in a basin without riser rings",
          "de la rejilla al fondo del tubo en una caja sin anillos"},
         "the maker's sheet; " COMMON_PRACTICE, ask::supplier},
        {"basin.riser", 6, Unit::Inches, 1, 120,
         {"height of a basin's riser ring", "alto de un anillo para caja"},
         "the maker's sheet; " COMMON_PRACTICE, ask::supplier},
        {"channel.concrete", 0.42, Unit::SquareFeet, 0, 10,
         {"concrete around a channel drain, in cross-section", "concreto alrededor de un canal, en sección"},
         "3 in beside and under a channel of 5 x 4-1/2 in; " COMMON_PRACTICE, ask::supplier},
        {"concrete.bag", 0.6, Unit::CubicFeet, 0.01, 1000,
         {"concrete that a bag makes", "concreto que rinde un saco"},
         "a bag of 80 lb; from memory: makers' sheets; read the bag", ask::supplier},
        {"tape.warning", 1, Unit::Number, 0, 10,
         {"warning tape for a length of pipe; 0: none", "cinta de aviso por largo de tubo; 0: ninguna"},
         COMMON_PRACTICE, ask::estimator},
        {"wire.locate", 0, Unit::Number, 0, 10,
         {"locating wire for a length of pipe; 0: none", "alambre de localización por largo de tubo; 0: ninguno"},
         "asked for by some cities; " COMMON_PRACTICE, ask::county},
        // Earth and rock.
        {"swell.sand", 0.12, Unit::Share, 0, 1,
         {"swell of sand, loose over bank", "abundamiento de arena, suelta sobre banco"},
         "10 to 15 %; " COMMON_PRACTICE, ask::estimator},
        {"swell.loam", 0.25, Unit::Share, 0, 1,
         {"swell of loam, loose over bank",
          "abundamiento de tierra franca, suelta sobre banco"},
         "20 to 25 %; from memory: FM 5-434, 1.25; " COMMON_PRACTICE, ask::estimator},
        {"swell.clay", 0.35, Unit::Share, 0, 1,
         {"swell of clay, loose over bank", "abundamiento de arcilla, suelta sobre banco"},
         "25 to 40 %; from memory: FM 5-434, 1.43; " COMMON_PRACTICE, ask::estimator},
        {"truck.load", 10, Unit::CubicYards, 0.5, 40,
         {"loose soil a truck takes", "tierra suelta por camión"},
         "tandem 10 to 14; " COMMON_PRACTICE, ask::hauler},
        {"rock.density", 1.4, Unit::TonsPerYard, 0.5, 2.5,
         {"drain rock as delivered", "roca de dren como se entrega"},
         "washed 1.3 to 1.4, crushed 1.35 to 1.5; " COMMON_PRACTICE, ask::supplier},
        {"sand.density", 1.3, Unit::TonsPerYard, 0.5, 2.5,
         {"bedding sand as delivered", "arena de cama como se entrega"},
         "dry 1.2 to 1.35, wet to 1.6; " COMMON_PRACTICE, ask::supplier},
        // Waste and counts.
        {"waste.pipe", 0.05, Unit::Share, 0, 1,
         {"waste of pipe", "desperdicio de tubo"},
         "5 %; " COMMON_PRACTICE, ask::estimator},
        {"waste.rock", 0.1, Unit::Share, 0, 1,
         {"waste of rock", "desperdicio de roca"},
         "10 %; " COMMON_PRACTICE, ask::estimator},
        {"waste.sand", 0.1, Unit::Share, 0, 1,
         {"waste of sand", "desperdicio de arena"},
         "10 %; " COMMON_PRACTICE, ask::estimator},
        {"waste.fabric", 0.15, Unit::Share, 0, 1,
         {"waste of fabric", "desperdicio de geotextil"},
         "10 to 15 %; " COMMON_PRACTICE, ask::estimator},
        {"waste.concrete", 0.1, Unit::Share, 0, 1,
         {"waste of concrete", "desperdicio de concreto"},
         "10 %; " COMMON_PRACTICE, ask::estimator},
        {"waste.sod", 0.08, Unit::Share, 0, 1,
         {"waste of sod", "desperdicio de pasto en rollo"},
         "5 to 8 %; " COMMON_PRACTICE, ask::estimator},
        {"waste.soil", 0.1, Unit::Share, 0, 1,
         {"waste of soil", "desperdicio de tierra"},
         "10 %; " COMMON_PRACTICE, ask::estimator},
        {"waste.glue", 0.25, Unit::Share, 0, 1,
         {"waste of cement and primer", "desperdicio de cemento y limpiador"},
         "+25 % in cold or heat; " COMMON_PRACTICE, ask::estimator},
        {"spare.fittings", 0.1, Unit::Share, 0, 1,
         {"spare fittings, share of the count", "accesorios de repuesto, parte de la cuenta"},
         "1 in 10; " COMMON_PRACTICE, ask::estimator},
        {"glue.joints.3in", 20, Unit::Number, 0.5, 100,
         {"sockets a pint of cement makes, 3 in", "campanas por pinta de cemento, 3 in"},
         "from memory: trade chart; read the can", ask::supplier},
        {"glue.joints.4in", 15, Unit::Number, 0.5, 100,
         {"sockets a pint of cement makes, 4 in", "campanas por pinta de cemento, 4 in"},
         "from memory: trade chart; read the can", ask::supplier},
        {"glue.joints.6in", 5, Unit::Number, 0.5, 100,
         {"sockets a pint of cement makes, 6 in", "campanas por pinta de cemento, 6 in"},
         "from memory: trade chart; read the can", ask::supplier},
        {"glue.joints.8in", 2.5, Unit::Number, 0.5, 100,
         {"sockets a pint of cement makes, 8 in", "campanas por pinta de cemento, 8 in"},
         "from memory: trade chart; read the can", ask::supplier},
        {"glue.primer", 0.5, Unit::Share, 0, 2,
         {"primer per volume of cement", "limpiador por volumen de cemento"},
         COMMON_PRACTICE, ask::supplier},
        // Prices, labor, quote.
        {"price.age.max", 30, Unit::Days, 1, 730,
         {"oldest price that is trusted", "precio más viejo en que se confía"},
         "30 to 60 days; " COMMON_PRACTICE, ask::supplier},
        {"labor.burden", 0.34, Unit::Share, 0, 1.5,
         {"burden on the wage", "cargas sobre el salario"},
         "25 to 45 %, 34 % a common plug; " COMMON_PRACTICE, ask::bookkeeper},
        {"labor.day", 8, Unit::Hours, 1, 24,
         {"hours of a working day", "horas de una jornada"},
         COMMON_PRACTICE, ask::estimator},
        {"labor.soil.clay", 1.5, Unit::Number, 0.5, 10,
         {"digging hours in clay, times loam",
          "horas de excavación en arcilla, veces tierra franca"},
         "1.5 to 2; " COMMON_PRACTICE, ask::estimator},
        {"labor.soil.roots", 2, Unit::Number, 0.5, 10,
         {"digging hours in roots or rock, times loam",
          "horas de excavación en raíces o roca, veces tierra franca"},
         "2 to 4; " COMMON_PRACTICE, ask::estimator},
        {"labor.soil.wet", 1.3, Unit::Number, 0.5, 10,
         {"digging hours in wet ground, times loam",
          "horas de excavación en suelo mojado, veces tierra franca"},
         COMMON_PRACTICE, ask::estimator},
        {"contingency", 0.05, Unit::Share, 0, 1,
         {"contingency on direct cost", "imprevistos sobre el costo directo"},
         "3 to 10 % by unknowns; " COMMON_PRACTICE, ask::estimator},
        {"overhead", 0.356, Unit::Share, 0, 2,
         {"overhead on direct cost, until the year's own stand on Quote",
          "indirectos sobre el costo directo, hasta tener los del año en Quote"},
         "remodelers, means of 2018: gross margin 30.1 % less net 5.2 % is 24.9 % of sales, over 69.9 % of direct cost "
         "(NAHB Cost of Doing Business Study, 2020 edition)", ask::bookkeeper},
        {"profit", 0.15, Unit::Share, 0, 1,
         {"profit on direct cost and overhead", "utilidad sobre costo directo e indirectos"},
         "10 to 20 %; " COMMON_PRACTICE, ask::estimator},
        {"tax.material", 0, Unit::Share, 0, 0.2,
         {"sales tax on materials", "impuesto de venta sobre materiales"},
         "the place of delivery sets it; a contractor usually pays "
         "it (Minnesota revenue guide for contractors)", ask::bookkeeper},
        {"tax.contract", 0, Unit::Share, 0, 0.2,
         {"sales tax on the contract, where a state taxes it",
          "impuesto de venta sobre el contrato, donde se cobra"},
         "usually none on real-property work; states differ", ask::bookkeeper},
        {"deposit.max.share", 0.1, Unit::Share, 0, 1,
         {"largest deposit, share of the price", "mayor anticipo, parte del precio"},
         "10 % or $1,000, whichever is less (davis-stirling.com, Contractor Deposit Limitation); "
         "one third in several states", ask::state},
        {"deposit.max.amount", 1000, Unit::Dollars, 0, 1000000,
         {"largest deposit", "mayor anticipo"},
         "10 % or $1,000, whichever is less (davis-stirling.com, Contractor Deposit Limitation)", ask::state},
        {"cancel.days", 3, Unit::Days, 0, 30,
         {"business days in which the owner may cancel",
          "días hábiles en que el dueño puede cancelar"},
         "dca.ca.gov legal guide K-10", ask::state},
        {"quote.days", 30, Unit::Days, 1, 365,
         {"days that the price holds", "días que se sostiene el precio"},
         "30, 15 when pipe prices move; " COMMON_PRACTICE, ask::estimator},
        {"retain.callback", 365, Unit::Days, 0, 3650,
         {"days of workmanship warranty", "días de garantía de mano de obra"},
         COMMON_PRACTICE, ask::estimator},
        // Bills.
        {"bill.price.share", 0.01, Unit::Share, 0, 0.5,
         {"price difference that passes, share", "diferencia de precio que pasa, parte"},
         COMMON_PRACTICE, ask::bookkeeper},
        {"bill.price.amount", 0.05, Unit::Dollars, 0, 100,
         {"price difference that passes, a unit",
          "diferencia de precio que pasa, por unidad"},
         COMMON_PRACTICE, ask::bookkeeper},
        {"bill.quantity.bulk", 0.02, Unit::Share, 0, 0.5,
         {"difference of bulk goods by weigh ticket that passes",
          "diferencia de material a granel por boleta de báscula que pasa"},
         COMMON_PRACTICE "; counted pieces must agree", ask::bookkeeper},
        {"bill.tax.amount", 0.02, Unit::Dollars, 0, 100,
         {"tax difference that passes", "diferencia de impuesto que pasa"},
         COMMON_PRACTICE, ask::bookkeeper},
    };
    // clang-format on
    return rows;
}

// Where each key stands. Every judgement of every row asks for rules by their keys, some hundred thousand times in a large
// job: a short hash, open places, and no memory of its own beyond them.
class KeyTable {
  public:
    explicit KeyTable(std::span<const Rule> rules) {
        for (const Rule& rule : rules) {
            std::size_t at = place(rule.key);
            while (rules_[at] != nullptr) at = (at + 1) % places;
            keys_[at] = rule.key;
            rules_[at] = &rule;
        }
    }
    const Rule* find(std::string_view key) const {
        for (std::size_t at = place(key); rules_[at] != nullptr; at = (at + 1) % places)
            if (keys_[at] == key) return rules_[at];
        return nullptr;
    }

  private:
    static constexpr std::size_t places = 1024;  // some seven for each rule

    static std::size_t place(std::string_view key) {
        std::size_t hash = 0;
        for (const char letter : key) hash = hash * 31 + static_cast<unsigned char>(letter);
        return hash % places;
    }

    std::array<std::string_view, places> keys_ = {};
    std::array<const Rule*, places> rules_ = {};
};

Error refusal(const std::string& about, const Text& sentence) {
    return Error(Error::Kind::BadArgument, "rules",
                 Text::same("rules: " + about + " ") + sentence + Text::same("."));
}

// "from 0 to 120 in" in the system's unit.
Text allowed(const Rule& rule, UnitSystem units) {
    const UnitInfo& unit = info(rule.unit);
    const double scale = unit.siPerUs / unit.si(units);
    const Text& name = unit.written(units);
    const std::string least = plain(rule.least * scale), greatest = plain(rule.greatest * scale);
    return Text{"from " + least + " to " + greatest, "de " + least + " a " + greatest} +
           (name.empty() ? Text() : Text::same(" ") + name);
}

}  // namespace

double Rule::in(UnitSystem units) const {
    return units == UnitSystem::US ? value : value * info(unit).siPerUs / info(unit).siPerMetric;
}

std::span<const Rule> rules() { return table(); }

const Rule* findRule(std::string_view key) {
    static const KeyTable known(table());
    if (const Rule* found = known.find(key)) return found;
    // Judgements ask for keys that may not be there, too: only what is not written as a key is written so.
    const auto small = [](char letter) {
        return (letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9') || letter == '.';
    };
    return std::all_of(key.begin(), key.end(), small) ? nullptr : known.find(nameKey(key));
}

namespace {

const Rule& asked(std::string_view key) {
    const Rule* rule = findRule(key);
    if (rule == nullptr) throw std::logic_error("no rule " + std::string(key));
    return *rule;
}
const Rule& asked(std::string_view key, std::initializer_list<Unit> kinds) {
    const Rule* rule = findRule(key);
    if (rule != nullptr)
        for (Unit kind : kinds)
            if (rule->unit == kind) return *rule;
    throw std::logic_error("no such rule of this kind: " + std::string(key));
}
std::size_t row(const Rule& rule) { return static_cast<std::size_t>(&rule - rules().data()); }

}  // namespace

Ruleset::Ruleset() {
    si_.reserve(rules().size());
    for (const Rule& rule : rules()) si_.push_back(rule.value * info(rule.unit).siPerUs);
}

void Ruleset::set(std::string_view key, double value, UnitSystem units) {
    const Rule* rule = findRule(key);
    if (rule == nullptr)
        throw refusal("\"" + std::string(key) + "\"",
                      {"is not the key of a rule", "no es la clave de una regla"});
    const UnitInfo& unit = info(rule->unit);
    const double si = value * unit.si(units);
    // A limit written in the other system comes back a hair off: that is no reason to refuse it.
    const double hair = 1e-9 * (rule->greatest - rule->least) * unit.siPerUs;
    if (!(si >= rule->least * unit.siPerUs - hair && si <= rule->greatest * unit.siPerUs + hair))
        throw refusal(rule->key,
                      Text{"is " + plain(value) + "; allowed: ", "es " + plain(value) + "; se admite: "} +
                          allowed(*rule, units));
    if (rule->unit == Unit::YesNo && value != 0 && value != 1)
        throw refusal(rule->key, {"is " + plain(value) + "; allowed: 1 or 0",
                                  "es " + plain(value) + "; se admite: 1 o 0"});
    si_[static_cast<std::size_t>(rule - rules().data())] = si;
}

void Ruleset::set(std::string_view key, std::string_view typed, UnitSystem units) {
    const Rule* rule = findRule(key);
    if (rule != nullptr && rule->unit == Unit::Slope) {
        try {
            return set(key, readSlope(typed).fraction(), units);
        } catch (const Error& error) {
            if (error.argument() == "rules") throw;
        }
    } else if (rule == nullptr) {
        return set(key, 0, units);
    }
    const Text words = nameKey(typed).empty()
                           ? Text{"is blank", "está vacío"}
                           : Text{"is ", "es "} + Text::same("\"" + std::string(typed) + "\"");
    throw refusal(rule->key,
                  words + Text{"; allowed: a number ", "; se admite: un número "} + allowed(*rule, units));
}

double Ruleset::in(std::string_view key, UnitSystem units) const {
    const Rule& rule = asked(key);
    return si_[row(rule)] / info(rule.unit).si(units);
}

double Ruleset::si(std::string_view key) const { return si_[row(asked(key))]; }

double Ruleset::read(std::string_view key, std::initializer_list<Unit> kinds) const {
    return si_[row(asked(key, kinds))];
}

double Ruleset::number(std::string_view key) const {
    const Rule& rule = asked(key, {Unit::Number, Unit::Share, Unit::YesNo, Unit::Degrees, Unit::Minutes,
                                   Unit::Hours, Unit::Days, Unit::Years, Unit::Dollars});
    return si_[row(rule)] / info(rule.unit).siPerUs;
}
Length Ruleset::length(std::string_view key) const {
    return Length::fromSi(read(key, {Unit::Feet, Unit::Inches}));
}
Slope Ruleset::slope(std::string_view key) const { return Slope::fromSi(read(key, {Unit::Slope})); }
Velocity Ruleset::velocity(std::string_view key) const {
    return Velocity::fromSi(read(key, {Unit::FeetPerSecond, Unit::InchesPerHour}));
}
Duration Ruleset::duration(std::string_view key) const {
    return Duration::fromSi(read(key, {Unit::Minutes, Unit::Hours}));
}
Area Ruleset::area(std::string_view key) const { return Area::fromSi(read(key, {Unit::SquareFeet})); }

}  // namespace trenchbook
