#include "trenchbook/job/columns.h"

#include <array>
#include <cmath>

#include "trenchbook/core/date.h"
#include "trenchbook/core/units.h"
#include "trenchbook/ground/pit_check.h"
#include "trenchbook/layout/lot.h"
#include "trenchbook/lines/network.h"
#include "trenchbook/lines/node_kind.h"
#include "trenchbook/pipe/roughness.h"

namespace trenchbook {
namespace {

using Columns = std::vector<InputColumn>;
using Words = std::vector<ChoiceWord>;

// Levels of ground and pipe: from below the sea to the highest town.
constexpr double lowest = -1000, highest = 15000;

InputColumn name(const char* heading, const char* note, Words offered = {}) {
    return {.heading = heading, .words = std::move(offered), .note = note};
}
InputColumn choice(const char* heading, Words words, const char* note) {
    return {.heading = heading, .kind = CellKind::Choice, .words = std::move(words), .note = note};
}
InputColumn measured(const char* heading, CellKind kind, double least, double greatest, const char* note) {
    return {.heading = heading, .kind = kind, .least = least, .greatest = greatest, .note = note};
}
InputColumn positive(const char* heading, CellKind kind, double greatest, const char* note) {
    InputColumn column = measured(heading, kind, 0, greatest, note);
    column.above = true;
    return column;
}
InputColumn level(const char* heading, const char* note) {
    return measured(heading, CellKind::Feet, lowest, highest, note);
}
InputColumn read(const char* heading, CellKind kind, const char* note) {
    return {.heading = heading, .kind = kind, .note = note};
}
// Of a job that is worked on: a year typed as a number is no date.
InputColumn date(const char* heading, const char* note) {
    return measured(heading, CellKind::Date, Date::of(2000, 1, 1).days, Date::of(2099, 12, 31).days, note);
}
InputColumn pipe(const char* heading, CellKind kind, const char* note) {
    return positive(heading, kind, 120, note);  // of a bare bore
}
InputColumn slope(const char* heading, const char* note) {
    return positive(heading, CellKind::Slope, 1, note);
}
InputColumn needed(InputColumn column) {
    column.needed = true;
    return column;
}

Words answers() { return {{{"yes", "sí"}, {"si"}}, {{"no", "no"}}, {{"ask", "preguntar"}}}; }

Columns factColumns() {
    const auto asked = [](const char* heading, const char* note) { return choice(heading, answers(), note); };
    return {
        name("Job", "Short name; it stands on every page."),
        name("Owner", ""),
        name("Site", "Address or lot."),
        date("Quote date", "Year-month-day. Prices are judged by their age on this day."),
        date("Today", "The day that tickets are judged by."),
        date("Agreed", "From Account: a job that is sold has no offer that could lapse."),
        measured("Return period", CellKind::Years, 1, 1000, "How rare the design storm is, in years."),
        measured("Duration", CellKind::Minutes, 1, 1440, "Small lots run off within 5 minutes."),
        positive("Rain", CellKind::InchesPerHour, 60,
                 "Intensity, where an office gives it. Blank: from the table pasted on Rain."),
        name("Soil", "Sets the swell of the spoil and the digging hours.",
             {{{"sand", "arena"}}, {{"loam", "franco"}}, {{"clay", "arcilla"}}}),
        name("Outlet", "Where the water goes.",
             {{{"own swale", "zanja propia"}},
              {{"easement swale", "zanja de servidumbre"}},
              {{"roadside ditch", "cuneta"}},
              {{"curb", "bordillo"}},
              {{"public inlet", "sumidero público"}},
              {{"rock pit with overflow", "pozo de piedra con rebose"}}}),
        choice("Outlet permission",
               {{{"requested", "pedido"}, {"asked"}},
                {{"got", "obtenido"}},
                {{"needs none", "no hace falta"}, {"not needed"}}},
               "A ditch, curb or easement belongs to someone: ask before pricing."),
        name("Locate ticket", "Number of the one-call ticket."),
        date("Ticket called", "Day on which the one-call service was asked."),
        date("Ticket good from", ""),
        date("Ticket good until", ""),
        asked("Septic", "On this lot or near the line?"),
        asked("Well", ""),
        asked("Owners' association", ""),
        asked("Irrigation or pool lines", "Private lines are not marked by the one-call service."),
        choice(
            "Trench protection",
            {{{"sloping", "taludes"}, {"slope", "talud"}},
             {{"shoring", "entibado"}},
             {{"trench box", "cajón de zanja"}, {"box", "shield", "cajon"}},
             {{"stable rock", "roca estable"}, {"rock", "roca"}}},
            "How a trench as deep as cut.protect on Rules is made safe; stable rock needs nothing. Blank: none is that "
            "deep, or not decided."),
        asked("Rules fit this county",
              "Limits and tax rate on Rules and the rain above are general or came from another lot: yes, "
              "when this "
              "county's offices were asked."),
        measured("Shots with a level", CellKind::Number, 0, 1e6, "Counted on Levels."),
    };
}

// Kinds that often stand together, in both orders (common practice, no source). Others may, too.
Words kindsTogether() {
    using enum NodeKind;
    constexpr std::pair<NodeKind, NodeKind> pairs[] = {
        {Cleanout, Downspout}, {Cleanout, Bend},  {Cleanout, Wye},  {Cleanout, Channel},
        {Cleanout, Cap},       {Downspout, Bend}, {Downspout, Wye}, {Basin, Wye}};
    Words words;
    for (const auto& [one, other] : pairs)
        for (const auto& [first, second] : {std::pair(one, other), std::pair(other, one)})
            words.push_back({info(first).name + Text::same(" + ") + info(second).name, {}});
    return words;
}

Columns nodeColumns() {
    InputColumn kind = read(
        "Kind", CellKind::NodeKinds,
        "What stands here, several with + between: cleanout + downspout. cap: the capped head of a line. "
        "How a line ends: bank (daylight), ditch, curb, tee (turned up over a pit), riser (without a pit), "
        "pop-up, existing pipe, pump basin.");
    kind.words = kindsTogether();
    return {
        needed(name("Node", "Short name, used once: A1, patio.")),
        std::move(kind),
        name("Shot", "Point on Levels that gives the ground; blank when it has the node's own name."),
        level("Ground", "Only where no shot on Levels gives it."),
        level("Ground level", "Ground, or the level that Levels gives the shot."),
        level("Rim or grate",
              "Level where water would come out or go in: grate, cap, sill, rim of the tee. Blank: the "
              "ground."),
        measured("Turn", CellKind::Degrees, 0, 180,
                 "How far the line turns here, in degrees; straight on is 0."),
        measured("From house", CellKind::Feet, 0, 1000,
                 "Distance to the house's wall, where the ground has to fall away from it."),
        name("Device", "Code of the piece on Prices: basin, grate, adapter, cap. Blank: by kind."),
        measured("To footing", CellKind::Feet, 0, 1000,
                 "From a footing's outer edge to the near edge of the trench. Blank: no footing near."),
        measured("Footing depth", CellKind::Feet, 0, 50, "The footing's bottom below the ground there."),
        name("Engineer", "His word on a trench below the line that falls 1:1 from the footing: who, when."),
        measured("To tree", CellKind::Feet, 0, 1000, "To the nearest trunk. Blank: no tree near."),
        measured("To septic", CellKind::Feet, 0, 1000,
                 "To the septic tank or field. Blank: not near; asked where Job says that there is one."),
        measured("To well", CellKind::Feet, 0, 1000,
                 "To the well. Blank: not near; asked where Job says that there is one."),
        name("Tie 1", "Distance to a first house corner, for the as-built."),
        name("Tie 2", "Distance to a second house corner."),
        name("Photo", "File name of a photo."),
    };
}

Columns waterColumns() {
    const auto area = [](const char* heading, const char* note) {
        return measured(heading, CellKind::SquareFeet, 0, 200000, note);
    };
    const auto coefficient = [](const char* heading, const char* note) {
        return measured(heading, CellKind::Coefficient, 0, 1, note);
    };
    return {
        name("Inlet", "Name of the downspout, drain or grate."),
        needed(name("Node", "Node where its water enters the line.")),
        area("Roof area", "Roof that drains here, in plan."),
        coefficient(
            "Roof C",
            "Share of the rain that runs off the roof, 0 to 1: about 0.95. Or a word of the first list on "
            "Tables, such as roof: the high end of its range counts."),
        area("Paved area", "Patio, walk or drive that drains here."),
        coefficient(
            "Paved C",
            "Share that runs off paving, 0 to 1: about 0.90. Or a word of the list on Tables: concrete, "
            "pavers, gravel."),
        area("Yard area", "Lawn or beds that drain here."),
        coefficient(
            "Yard C",
            "Share that runs off the ground, 0 to 1: sandy lawn 0.10, heavy soil 0.20. Or the words of the "
            "list on Tables: lawn, heavy soil, average."),
        measured(
            "Minutes", CellKind::Minutes, 0, 1440,
            "Until water from the farthest corner is at the inlet; read only where Peak counts travel time. "
            "Blank: the Duration on Job."),
        choice("Enters by",
               {{{"downspout", "bajante"}, {"leader"}},
                {{"grate", "rejilla"}},
                {{"trench drain", "canal con rejilla"}, {"channel", "canal"}}},
               "What takes the water in. Blank: not compared."),
        read("Size", CellKind::Size,
             "In inches (mm in a metric job). Downspout: 2x3, 3x4, or a diameter. Grate: length x width, "
             "such as 12x12, "
             "or a diameter. Trench drain: inside width x depth, such as 4x4."),
        measured(
            "Open share", CellKind::Share, 0, 1,
            "Grate: clear opening over its outside area, from the maker's sheet; 0.3 to 0.5 is usual (common "
            "practice). Half of it is taken as blocked, see grate.blocked on Rules."),
        measured(
            "Ponding", CellKind::Inches, 0, 120,
            "Grate: how deep water may stand on it. Trench drain: water standing at its outlet, over the "
            "floor; "
            "blank when it falls away freely."),
        positive("Length", CellKind::Feet, 5000,
                 "Trench drain: length that drains to one outlet. A number or a tape reading."),
        measured("Floor slope", CellKind::Slope, 0, 1,
                 "Trench drain: fall of its floor, as the trade says it: 0.5%, 1/16 in/ft. Blank: level."),
        pipe("Outlet pipe", CellKind::Pipe,
             "Pipe that leaves the basin or the end of the trench drain. Blank: not compared."),
        measured("Outlet head", CellKind::Inches, 0, 120,
                 "Highest water in the basin over that pipe's inside bottom."),
    };
}

Columns runColumns() {
    return {
        name("Line", "Name of the line this run belongs to: street, garden."),
        needed(name("From", "Upper node.")),
        needed(name("To", "Lower node.")),
        needed(positive("Length", CellKind::Feet, 5000,
                        "Along the trench: a number, or a tape reading such as 12' 6\".")),
        needed(pipe("Pipe", CellKind::Pipe, "Stock name: 4 SDR35, 6 SCH40. Or a bare bore.")),
        measured(
            "Slope", CellKind::Slope, 0, 1,
            "As the trade says it: 1/8 in/ft, 1%, 1:96. Kept as typed. 0 only for perforated pipe. Blank where "
            "both inverts are known."),
        level("Fixed level", "Invert at the lower end, where something holds it down. Mostly blank."),
        level("Outlet level", "On the last run of a line only: invert where the pipe ends."),
        level("Outlet highest",
              "On the last run only: highest invert that the plan may give the outlet; Outlet level is its "
              "lowest. "
              "Blank: no limit."),
        level(
            "Outlet water",
            "On the last run only: level of the water that the pipe ends in, as seen or asked: of a ditch, the "
            "gutter, the existing pipe, the pump's start. What Outlets works out counts where it is higher."),
        pipe("Pipe choice", CellKind::Pipes,
             "Pipes that the plan may choose from, with bars between: 4 SDR35|6 SDR35. Blank: the pipe "
             "typed."),
        read("Surface up", CellKind::OverPipe,
             "What lies over the upper end: sets the least cover. daylight: the pipe ends in the open, no "
             "cover "
             "asked."),
        read("Surface down", CellKind::OverPipe, "What lies over the lower end."),
        measured("Trench width", CellKind::Inches, 4, 60, "Blank: the width on Rules for this pipe size."),
        choice("Existing", {{{"yes", "sí"}, {"si"}}, {{"no", "no"}}},
               "yes: the pipe lies there already. It is neither bought nor dug. Blank: it is laid."),
        level("Known invert up",
              "Measured at the upper end of a pipe that lies there. With the one below: no slope is asked."),
        level("Known invert down", "Measured at its lower end."),
        name(
            "Approval",
            "Who let this run be flatter than the least slope, or fuller than the share on Rules, and when: county, "
            "J. Doe, 2026-11-20. Say \"velocity\" where that is approved too. For this job alone."),
    };
}

Columns groundColumns() {
    return {
        needed(name("From", "Upper node of the run.")),
        needed(name("To", "Lower node of the run.")),
        needed(measured("At", CellKind::Feet, 0, 5000, "Distance from the upper node, along the trench.")),
        name("Shot", "Point on Levels that gives the ground here."),
        level("Ground", "Only where no shot on Levels gives it."),
        level("Ground level", "Ground, or the level that Levels gives the shot."),
        read(
            "Over it", CellKind::OverPipe,
            "What lies over the pipe here. Blank: as at the nearer end of the run; near daylight, end of lawn."),
    };
}

Columns crossingColumns() {
    return {
        name("What", "The other line: water, gas, electric, irrigation…",
             {{{"water", "agua"}},
              {{"gas", "gas"}},
              {{"electric", "eléctrico"}},
              {{"communication", "comunicación"}},
              {{"sewer", "drenaje sanitario"}},
              {{"irrigation", "riego"}},
              {{"drain", "drenaje"}},
              {{"other", "otro"}}}),
        needed(name("From", "Upper node of the run that is crossed.")),
        needed(name("To", "Lower node of the run that is crossed.")),
        measured("At", CellKind::Feet, 0, 5000, "Distance from the upper node."),
        measured("Its depth", CellKind::Inches, 0, 240,
                 "Ground to its top, found by hand digging or asked of its owner."),
        measured("Its diameter", CellKind::Inches, 0.1, 60, "Outside."),
        choice("Passes", {{{"above", "encima"}, {"over"}}, {{"below", "debajo"}, {"under"}}},
               "above: it passes over our pipe. below: under it."),
        choice("Marked", {{{"yes", "sí"}, {"si"}}, {{"no", "no"}}, {{"private", "privada"}}},
               "Marked on the ground by its owner? Private lines are not marked by the one-call service."),
        name("Ticket", "Number of the locate ticket that covers it."),
        date("Good from", "First day of the ticket; blank: as on Job."),
        date("Good until", "Last day of the ticket; blank: as on Job."),
    };
}

Columns outletColumns() {
    const auto away = [](const char* heading, const char* note) {
        return measured(heading, CellKind::Feet, 0, 1000, note);
    };
    return {
        needed(name("Outlet", "Node where the line ends.")),
        level(
            "Flow line",
            "Level of the bottom of the swale, ditch, gutter or existing pipe at the outlet; on a bank of the "
            "ground before the pipe."),
        away("To lot line", "Distance from the outlet to the lot line, the way the water goes."),
        away("To walk", "To the nearest walk or drive that the water would run over."),
        away("To foundation", "To the nearest foundation."),
        positive("Rim across", CellKind::Inches, 48,
                 "Where it bubbles over: inside diameter of riser or grate. Blank: the pipe's bore."),
        measured("Open share", CellKind::Share, 0.05, 1,
                 "Where it bubbles over: clear opening of the grate over its area, from the maker's sheet; 1 "
                 "without a grate. Part of it is taken as blocked, see grate.blocked on Rules."),
        measured("Weep hole", CellKind::Inches, 0, 4,
                 "Diameter of the hole in the riser's bottom that lets out what stays in the line; 0: none."),
        measured("Ground falls", CellKind::Slope, 0, 1,
                 "Where it bubbles over: fall of the ground beyond the rim, away from the house: 2%."),
        choice("Check valve", {{{"yes", "sí"}, {"si"}}, {{"no", "no"}}},
               "Keeps the water that it ends in out of the line."),
        positive(
            "Apron stone", CellKind::Inches, 24,
            "Where the pipe ends on a bank or in a ditch: middle size of the stone laid against scour. The apron is "
            "sized by the flow and counted on Takeoff. Blank: none."),
        measured("Other flow", CellKind::Gpm, 0, 1000000,
                 "Water that the swale brings already, from the ground above. Blank: none."),
        measured("Bottom", CellKind::Feet, 0, 50, "Width of the flat bottom; 0 is a V."),
        measured("Side slope", CellKind::Number, 0, 20,
                 "Run over rise of the sides: 3 is 3 across to 1 up. Mowers want 3 or more."),
        positive("Deep", CellKind::Feet, 20, "From the bottom to where it would run over."),
        slope("Slope", "Fall of the bottom, as the trade says it: 1%, 1:100, 1/8 in/ft."),
        measured("Roughness", CellKind::Number, groundRoughness.least, groundRoughness.most,
                 "Manning n: mown grass some 0.035 to 0.05, tall grass more, bare earth some 0.022, broken "
                 "stone some "
                 "0.04 (common practice)."),
    };
}

Columns pumpColumns() {
    return {
        needed(name("Basin", "Node of the pump basin.")),
        positive("Inside diameter", CellKind::Inches, 240, "Of the basin, round."),
        level("Floor", "Inside bottom of the basin."),
        level("Pump on", "Water at which the pump starts."),
        level("Pump off", "Water at which it stops."),
        read(
            "Pump curve", CellKind::Curve,
            "Flow and head of the maker's curve, from no flow on: 0:24; 20:21; 40:16; 60:8 is 24 ft at 0 gpm, 21 ft "
            "at 20 gpm and so on (metric: L/s and m)."),
        pipe("Discharge pipe", CellKind::Pipe, "Stock name: 2 SCH40."),
        positive("Discharge length", CellKind::Feet, 2000,
                 "From the pump to where the water leaves the pipe."),
        measured("Elbows", CellKind::Number, 0, 50, "90 degree elbows in it; two 45s count as one."),
        level("Discharge level",
              "Where the water leaves the discharge pipe, or its highest point where that is higher."),
        choice("Check valve", {{{"yes", "sí"}, {"si"}}, {{"no", "no"}}},
               "Keeps the water of the discharge pipe from running back."),
        choice(
            "Power out",
            {{{"nothing", "nada"}, {"none", "ninguno"}},
             {{"alarm", "alarma"}},
             {{"second pump", "segunda bomba"}},
             {{"battery", "batería"}, {"bateria"}},
             {{"generator", "generador"}},
             {{"overflow", "rebose"}}},
            "What there is when the power or the pump fails: an alarm, a second pump on the same power, a battery "
            "pump, a generator that starts by itself, an overflow by gravity, or nothing."),
        level(
            "Groundwater",
            "Highest level of the water in the ground, in the wet season. Where it stays under the basin: any "
            "level under Floor."),
        positive("Outside diameter", CellKind::Inches, 240,
                 "Of the basin; asked where groundwater reaches it."),
        measured("Empty weight", CellKind::Pounds, 0, 100000,
                 "Of the basin with its lid; asked where groundwater reaches it."),
        measured("Anchor concrete", CellKind::CubicFeet, 0, 2000,
                 "Cast to the basin so that it stays. Blank: none."),
    };
}

Columns pitColumns() {
    return {
        name("Tee at node", "The upturned tee in the pit. Blank: this job has no pit."),
        positive("Length", CellKind::Feet, 300, ""),
        positive("Width", CellKind::Feet, 50, ""),
        positive("Rock depth", CellKind::Feet, 20,
                 "From the pit's bottom up to where it bubbles over, without the soil above."),
        measured("Soil over it", CellKind::Feet, 0, 10,
                 "Between rock and ground: some 1 ft (0.3 m) of soil, in common practice."),
        positive("Voids", CellKind::Share, 1, "Share of the rock's volume that water can fill."),
        measured("Side share", CellKind::Share, 0, 1,
                 "Share of the wet walls that counts as soaking; 0 counts the bottom alone."),
        measured("Design soak rate", CellKind::InchesPerHour, 0, 100,
                 "Tested rate divided by the safety factor on Rules (soil.safety)."),
        choice("Soak test", {{{"settled", "concluida"}}, {{"open", "abierta"}}, {{"refused", "rechazada"}}},
               "refused: a reading is not usable. open: its last three readings do not agree yet."),
    };
}

// The kind of cell that is measured in this unit.
CellKind kindOf(Unit unit) {
    for (const CellKind kind : {CellKind::Slope, CellKind::Feet, CellKind::Inches, CellKind::InchesPerHour,
                                CellKind::MinutesPerInch, CellKind::SquareFeet, CellKind::Hours})
        if (unitOf(kind) == unit) return kind;
    return CellKind::Number;
}

// The facts that PIT.CHECK knows, by its keys.
Columns pitFactColumns() {
    Columns columns;
    for (const PitFactInfo& fact : pitFactTable()) {
        InputColumn column = measured(fact.key, kindOf(fact.unit), 0, 100000, fact.says.en.c_str());
        if (fact.fact == PitFact::SoilGroup)
            column = choice(fact.key,
                            {{Text::same("A")},
                             {Text::same("B")},
                             {Text::same("C")},
                             {Text::same("D")},
                             {Text::same("A/D")},
                             {Text::same("B/D")},
                             {Text::same("C/D")}},
                            fact.says.en.c_str());
        columns.push_back(std::move(column));
    }
    return columns;
}

Columns peakColumns() {
    return {
        choice("Count travel time", {{{"yes", "sí"}, {"si"}}, {{"no", "no"}}},
               "yes: Runs takes its flows from here. Blank, as on a small lot: all inlets come at once, at "
               "the rain on "
               "Job."),
        choice(
            "Travel at", {{Text::same("flow")}, {Text::same("area")}},
            "flow: the velocity at the depth of the water. area: flow / full area, as tables worked by hand "
            "count."),
        measured("Roughness", CellKind::Number, pipeRoughness.least, pipeRoughness.most,
                 "Manning n of all pipes here. Blank: each pipe's own."),
    };
}

Columns ruleColumns() {
    return {needed(name("Key", "Name of the rule; formulas look it up. Do not change it.")),
            needed(read("Value", CellKind::Number,
                        "In the unit beside it. Change it where a code or the owner says so."))};
}

Columns layoutColumns() {
    const auto tie = [](const char* heading, const char* note) { return name(heading, note); };
    const auto place = [](const char* heading, const char* note) {
        return measured(heading, CellKind::Feet, -100000, 100000, note);
    };
    const Words hands = {{{"left", "izquierda"}, {"l"}}, {{"right", "derecha"}, {"r"}}};
    Words things;
    for (std::size_t i = 1; i < lotThingCount; ++i)
        things.push_back({lotThingWord(static_cast<LotThing>(i)), {}});
    return {
        needed(name("Point",
                    "Name of a corner, a tree, a mark: house N. Or a node again, to give it more ties.")),
        choice("What", things,
               "What it is, or what it is a corner of. Blank: as the row above with the same Object."),
        name("Object",
             "What it is a corner of: house, shed, lot. Corners are joined in the order of the rows."),
        place(
            "X",
            "To the right on the drawing (east, where north is up). Two points need X and Y; a wall may lie along X."),
        place("Y", "Up on the drawing."),
        tie("Tie 1", "A point and the distance to it: house N 31.5, or house N 31' 6\"."),
        tie("Tie 2", "A second one, to another point."),
        tie("Tie 3", "One to spare shows a slip of the others."),
        choice(
            "Side", hands,
            "Two tapes meet in two places: left or right of the line from the first tie's point to the second's, "
            "looking that way."),
        choice("Line turns", hands,
               "In a row with a node's name: which way the line turns there, looking downstream."),
        measured("Longitude", CellKind::Degrees, -180, 180,
                 "Of two points at least, where the drawing goes on a map: degrees, west is negative."),
        measured("Latitude", CellKind::Degrees, -85, 85, "Degrees, south is negative."),
        name("Note", ""),
    };
}

Columns tapeColumns() {
    return {
        needed(name("From", "A point of Layout or a node; of an offset, one end of the wall.")),
        needed(name("To", "The other; of an offset, the point beside the wall.")),
        name("Wall to", "Only for an offset: the other end of the wall that it is measured square from."),
        needed(measured("Length", CellKind::Feet, 0, 5000,
                        "Level: a number, or a tape reading such as 12' 6\".")),
        name("Note", ""),
    };
}

Columns asBuiltColumns() {
    return {
        needed(name("Node", "A node of Nodes that was measured after the work.")),
        level("Invert", "As measured, of the pipe that leaves it; at an outlet of the pipe that ends there."),
        name("Tie 1", "A corner and the distance to it, as taped after the work: house N 31.5."),
        name("Tie 2", "A second one, to another corner. Without ties it stays where the plan has it."),
        name("Note", ""),
    };
}

std::string written(double us, const InputColumn& column, UnitSystem units) {
    const UnitInfo& unit = info(unitOf(column.kind));
    if (column.kind == CellKind::Share || column.kind == CellKind::Slope ||
        column.kind == CellKind::Coefficient)
        return plain(us, 4);
    return plain(us * unit.si(UnitSystem::US) / unit.si(units), 3);
}

Text rangeText(const InputColumn& column, UnitSystem units) {
    const bool low = std::isfinite(column.least), high = std::isfinite(column.greatest);
    if (!low && !high) return {};
    const std::string least = written(column.least, column, units),
                      greatest = written(column.greatest, column, units);
    if (!high) return {", at least " + least, ", al menos " + least};
    if (column.above)
        return {", above " + least + " and at most " + greatest,
                ", mayor que " + least + " y como máximo " + greatest};
    return {", " + least + " to " + greatest, ", de " + least + " a " + greatest};
}

Text list(const std::vector<ChoiceWord>& words) {
    Text all;
    for (const ChoiceWord& word : words) {
        if (!all.empty()) all += Text::same(", ");
        all += word.name;
    }
    return all;
}

}  // namespace

const Text& tableWord(InputTable table) {
    static const std::array<Text, 15> words = {
        Text{"Job", "Job"},   Text::same("Nodes"),     Text::same("Water"),   Text::same("Runs"),
        Text::same("Ground"), Text::same("Crossings"), Text::same("Outlets"), Text::same("Pump"),
        Text::same("Pit"),    Text::same("Pit facts"), Text::same("Peak"),    Text::same("Rules"),
        Text::same("Layout"), Text::same("Tapes"),     Text::same("As built")};
    return words[static_cast<std::size_t>(table)];
}

bool isForm(InputTable table) {
    return table == InputTable::Facts || table == InputTable::Pit || table == InputTable::PitFacts ||
           table == InputTable::Peak;
}

Unit unitOf(CellKind kind) {
    switch (kind) {
        case CellKind::Pipe:
        case CellKind::Pipes:
        case CellKind::Size:
        case CellKind::Inches:
            return Unit::Inches;
        case CellKind::Share:
        case CellKind::Coefficient:
            return Unit::Share;
        case CellKind::Slope:
            return Unit::Slope;
        case CellKind::Feet:
            return Unit::Feet;
        case CellKind::SquareFeet:
            return Unit::SquareFeet;
        case CellKind::CubicFeet:
            return Unit::CubicFeet;
        case CellKind::Pounds:
            return Unit::Pounds;
        case CellKind::Degrees:
            return Unit::Degrees;
        case CellKind::Minutes:
            return Unit::Minutes;
        case CellKind::Hours:
            return Unit::Hours;
        case CellKind::Years:
            return Unit::Years;
        case CellKind::MinutesPerInch:
            return Unit::MinutesPerInch;
        case CellKind::Gpm:
            return Unit::Gpm;
        case CellKind::InchesPerHour:
            return Unit::InchesPerHour;
        default:
            return Unit::Number;
    }
}

std::span<const InputColumn> inputColumns(InputTable table) {
    // By place in InputTable.
    static const std::array<Columns, 15> tables = {
        factColumns(),     nodeColumns(),   waterColumns(),  runColumns(),  groundColumns(),
        crossingColumns(), outletColumns(), pumpColumns(),   pitColumns(),  pitFactColumns(),
        peakColumns(),     ruleColumns(),   layoutColumns(), tapeColumns(), asBuiltColumns()};
    return tables[static_cast<std::size_t>(table)];
}

const InputColumn* inputColumn(InputTable table, std::string_view heading) {
    const std::string key = nameKey(heading);
    for (const InputColumn& column : inputColumns(table))
        if (nameKey(column.heading) == key) return &column;
    return nullptr;
}

Text allowedText(const InputColumn& column, UnitSystem units) {
    const bool metric = units == UnitSystem::Metric;
    const UnitInfo& unit = info(unitOf(column.kind));
    const Text range = rangeText(column, units);
    switch (column.kind) {
        case CellKind::Name:
            return {"text", "texto"};
        case CellKind::Choice:
            return list(column.words);
        case CellKind::NodeKinds:
            return {"kinds of node with + between", "clases de nodo con + entre ellas"};
        case CellKind::OverPipe:
            return {"what lies over the pipe", "lo que hay sobre el tubo"};
        case CellKind::Pipe:
        case CellKind::Pipes: {
            const Text bore = metric ? Text{"a bore in mm", "un diámetro interior en mm"}
                                     : Text{"a bore in in", "un diámetro interior en in"};
            const Text stock = {"a stock name such as 4 SDR35, or ", "un nombre como 4 SDR35, o "};
            const Text bars = {"; several with | between", "; varios con | entre ellos"};
            return column.kind == CellKind::Pipe ? stock + bore : stock + bore + bars;
        }
        case CellKind::Size:
            return metric ? Text{"a size in mm such as 100, 300x300", "una medida en mm como 100, 300x300"}
                          : Text{"a size in in such as 4, 12x12", "una medida en in como 4, 12x12"};
        case CellKind::Curve:
            return metric ? Text{"points flow:head in L/s and m, such as 0:7; 1:6; 2:4",
                                 "puntos caudal:carga en L/s y m, como 0:7; 1:6; 2:4"}
                          : Text{"points flow:head in gpm and ft, such as 0:24; 20:21; 40:16",
                                 "puntos caudal:carga en gpm y ft, como 0:24; 20:21; 40:16"};
        case CellKind::Coefficient:
            return {"a share from 0 to 1, or a word such as roof, lawn",
                    "una proporción de 0 a 1, o una palabra como roof, lawn"};
        case CellKind::Share:
            return Text{"a share such as 0.25 or 25 %", "una proporción como 0.25 o 25 %"} + range;
        case CellKind::Slope:
            return Text{"a slope such as 1/8 in/ft, 1%, 1:96, 0.01",
                        "una pendiente como 1/8 in/ft, 1%, 1:96, 0.01"} +
                   range;
        case CellKind::Feet:
            return (metric ? Text{"a length in m such as 3.5", "una longitud en m como 3.5"}
                           : Text{"a length in ft such as 12.4, 5' 6-1/2\"",
                                  "una longitud en ft como 12.4, 5' 6-1/2\""}) +
                   range;
        case CellKind::Date:
            return {"a date such as 2027-03-31", "una fecha como 2027-03-31"};
        default:
            break;
    }
    const Text& written = unit.written(units);
    return (written.empty() ? Text{"a number", "un número"}
                            : Text{"a number in ", "un número en "} + written) +
           range;
}

}  // namespace trenchbook
