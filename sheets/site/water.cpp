// What each inlet brings to its node, and whether what it enters by can take it.
#include "buying/money.h"

namespace trenchbook::sheets {
namespace {

using Cases = std::vector<std::pair<std::string, std::string>>;

// A C cell holds a number or a word of the table of surfaces.
std::string coefficient(const std::string& share) {
    return "IF(ISTEXT([" + share + "]);SURFACE.COEFFICIENT([" + share + "];\"high\");[" + share + "])";
}
// One area of an inlet in gpm; a blank area brings nothing.
std::string part(const std::string& area, const std::string& share) {
    return "IF(ISBLANK([" + area + "]);0;RUNOFF.FLOW([" + area + "];" + coefficient(share) +
           ";rain_rate;units))";
}
// Its area x coefficient: what a foot (a metre) of rain would bring.
std::string counted(const std::string& area, const std::string& share) {
    return "IF(ISBLANK([" + area + "]);0;RUNOFF.VOLUME([" + area + "];" + coefficient(share) +
           ";IF(units=\"metric\";1000;12);units))";
}
// Why a part has no flow, for Check.
Cases faults(const std::string& area, const std::string& share) {
    const std::string word = "TRENCHBOOK.WHY(\"SURFACE.COEFFICIENT\";[" + share + "];\"high\")";
    const std::string flow =
        "TRENCHBOOK.WHY(\"RUNOFF.FLOW\";[" + area + "];" + coefficient(share) + ";rain_rate;units)";
    return {
        {"AND(NOT(ISBLANK([" + area + "]));ISBLANK([" + share + "]))", "\"NO: " + share + " is missing\""},
        {"AND(NOT(ISBLANK([" + area + "]));ISTEXT([" + share + "]);ISERROR(" + coefficient(share) + "))",
         "\"NO: " + share + ": \"&" + word},
        {"IF(ISBLANK([" + area + "]);FALSE();ISERROR(" + part(area, share) + "))",
         "\"NO: " + area + ": \"&" + flow}};
}

// A size as it is said: "12x12", "9", with or without inch marks.
const std::string size = "LOWER(SUBSTITUTE(SUBSTITUTE([Size];\" \";\"\");CHAR(34);\"\"))";
std::string numberOr(const std::string& text, const std::string& otherwise) {
    return "IFERROR(NUMBERVALUE(" + text + ";\".\");" + otherwise + ")";
}

struct Inlet {
    const char* word;
    std::string function, arguments;
    std::string call() const { return function + "(" + arguments + ")"; }
    std::string why() const { return "TRENCHBOOK.WHY(\"" + function + "\";" + arguments + ")"; }
    std::string chosen() const { return std::string("[Enters by]=\"") + word + "\""; }
};
const Inlet inlets[] = {
    {"downspout", "DOWNSPOUT.CAPACITY", "[Size];;units"},
    {"grate", "GRATE.CAPACITY", "[First size];[Second size];[Open share];[Ponding];{grate.blocked};;units"},
    {"trench drain", "CHANNEL.CAPACITY",
     "[First size];[Second size];[Length];[Floor slope];;;[Ponding];units"},
};
const Inlet outlet = {"outlet pipe", "BASIN.OUTLET", "[Outlet pipe];[Outlet head];units"};

const std::string noArea = "AND(ISBLANK([Roof area]);ISBLANK([Paved area]);ISBLANK([Yard area]))";

std::string flowText(const std::string& value) {
    return "TEXT(" + value + ";IF(units=\"metric\";\"0.00\";\"0.0\"))";
}

std::string check() {
    const std::vector<std::string> inputs = {
        "Inlet",     "Node",   "Roof area",   "Roof C",      "Paved area", "Paved C",
        "Yard area", "Yard C", "Minutes",     "Enters by",   "Size",       "Open share",
        "Ponding",   "Length", "Floor slope", "Outlet pipe", "Outlet head"};
    Cases cases = ownErrors(inputs) +
                  Cases{{"ISBLANK([Node])", "IF(AND(ISBLANK([Inlet]);" + noArea +
                                                ");\"\";\"NO: Node is missing: where does the water go?\")"},
                        {"NOT(ISNUMBER(rain_rate))", "\"NO: the rain on Job is missing\""},
                        {"COUNTIF([Runs.From];[Node])=0",
                         "\"NO: no run leaves node \"&[Node]&\"; its water goes nowhere\""},
                        {noArea, "\"NO: no area\""}};
    for (const auto& [area, share] :
         {std::pair{"Roof area", "Roof C"}, {"Paved area", "Paved C"}, {"Yard area", "Yard C"}})
        cases = cases + faults(area, share);
    cases = cases + Cases{{"NOT(OR(ISBLANK([Minutes]);ISNUMBER([Minutes])))",
                           "\"NO: Minutes is not a number: \"&[Minutes]"}};
    std::string known;
    for (const Inlet& inlet : inlets) known += (known.empty() ? "" : ";") + inlet.chosen();
    cases = cases + Cases{{"AND(ISBLANK([Enters by]);ISBLANK([Outlet pipe]))",
                           "\"OK; not compared: Enters by is blank\""},
                          {"NOT(OR(ISBLANK([Enters by]);" + known + "))",
                           "\"NO: Enters by is downspout, grate or trench drain, not \"&[Enters by]"},
                          {"AND(NOT(ISBLANK([Enters by]));ISBLANK([Size]))",
                           "\"NO: Size of the \"&[Enters by]&\" is missing\""}};
    for (const Inlet& inlet : inlets)
        cases = cases + Cases{{"AND(" + inlet.chosen() + ";NOT(ISNUMBER([Inlet takes])))",
                               std::string("\"NO: ") + inlet.word + ": \"&" + inlet.why()}};
    const std::string tight = "IF(N([Inlet takes])=[Takes];[Enters by];\"outlet pipe\")";
    const std::string said = "&" + tight + "&\" takes \"&" + flowText("[Takes]") + "&\", \"&" +
                             flowText("[Flow]") + "&\" arrive\"";
    cases = cases + Cases{{"AND(NOT(ISBLANK([Outlet pipe]));NOT(ISNUMBER([Outlet takes])))",
                           "\"NO: outlet pipe: \"&" + outlet.why()},
                          {"[Share]>1", "\"NO: \"" + said},
                          {"[Share]>{share.max}", "\"CHECK: \"" + said}};
    return firstOf(cases, "\"OK\"");
}

}  // namespace

Sheet waterSheet(const JobSize& jobSize) {
    const auto area = [](const char* heading, const char* note) {
        return Column{.heading = heading,
                      .kind = Kind::Measured,
                      .format = show::number(0),
                      .measure = Measure::SquareFeet,
                      .width = 20,
                      .validity = between(1, 200000),
                      .note = note};
    };
    const auto share = [](const char* heading, const char* note) {
        return Column{
            .heading = heading, .kind = Kind::Measured, .format = show::general, .width = 26, .note = note};
    };
    const auto inches = [](const char* heading, double greatest, const char* note) {
        return Column{.heading = heading,
                      .kind = Kind::Measured,
                      .format = show::number(1),
                      .measure = Measure::Inches,
                      .width = 19,
                      .validity = between(0, greatest),
                      .note = note};
    };
    const auto helper = [](const char* heading, std::string formula) {
        return Column{.heading = heading,
                      .format = show::general,
                      .width = 18,
                      .formula = std::move(formula),
                      .helper = true};
    };
    std::string taken = "\"\"";
    for (auto inlet = std::rbegin(inlets); inlet != std::rend(inlets); ++inlet)
        taken = "IF(" + inlet->chosen() + ";IFERROR(" + inlet->call() + ";\"\");" + taken + ")";

    Table table;
    table.name = "Water";
    table.rows = jobSize.water;
    table.columns = {
        {.heading = "Inlet",
         .kind = Kind::Measured,
         .width = 42,
         .note = "Name of the downspout, drain or grate."},
        {.heading = "Node",
         .kind = Kind::Measured,
         .width = 18,
         .validity = chosenFrom("[Nodes.Node]"),
         .note = "Node where its water enters the line."},
        area("Roof area", "Roof that drains here, in plan."),
        share(
            "Roof C",
            "Share of the rain that runs off the roof, 0 to 1: about 0.95. Or a word of the first list on Tables, "
            "such as roof: the high end of its range counts."),
        area("Paved area", "Patio, walk or drive that drains here."),
        share(
            "Paved C",
            "Share that runs off paving, 0 to 1: about 0.90. Or a word of the list on Tables: concrete, pavers, gravel."),
        area("Yard area", "Lawn or beds that drain here."),
        share(
            "Yard C",
            "Share that runs off the ground, 0 to 1: sandy lawn 0.10, heavy soil 0.20. Or the words of the list on "
            "Tables: lawn, heavy soil, average."),
        {.heading = "Minutes",
         .kind = Kind::Measured,
         .format = show::general,
         .measure = Measure::Minutes,
         .width = 17,
         .validity = between(0, 1440),
         .note =
             "Until water from the farthest corner is at the inlet; read only where Peak counts travel time. Blank: the Duration on Job."},
        {.heading = "Flow",
         .format = show::number(1),
         .measure = Measure::Gpm,
         .width = 18,
         .formula = "IF(OR(ISBLANK([Node]);NOT(ISNUMBER(rain_rate)));\"\";" + part("Roof area", "Roof C") +
                    "+" + part("Paved area", "Paved C") + "+" + part("Yard area", "Yard C") + ")",
         .note = "Rational method at the rain on Job."},
        {.heading = "Enters by",
         .kind = Kind::Measured,
         .width = 26,
         .validity = choice({inlets[0].word, inlets[1].word, inlets[2].word}),
         .note = "What takes the water in. Blank: not compared."},
        {.heading = "Size",
         .kind = Kind::Measured,
         .width = 20,
         .note =
             "In inches (mm in a metric job). Downspout: 2x3, 3x4, or a diameter. Grate: length x width, such as 12x12, or a "
             "diameter. Trench drain: inside width x depth, such as 4x4.",
         .unit = "=IF(units=\"metric\";\"mm\";\"in\")"},
        {.heading = "Open share",
         .kind = Kind::Measured,
         .format = show::number(2),
         .width = 18,
         .validity = between(0, 1),
         .note =
             "Grate: clear opening over its outside area, from the maker's sheet; 0.3 to 0.5 is usual (common practice). "
             "Half of it is taken as blocked, see grate.blocked on Rules."},
        inches(
            "Ponding", 120,
            "Grate: how deep water may stand on it. Trench drain: water standing at its outlet, over the floor; "
            "blank when it falls away freely."),
        {.heading = "Length",
         .kind = Kind::Measured,
         .format = show::general,
         .measure = Measure::Feet,
         .width = 18,
         .note = "Trench drain: length that drains to one outlet. A number or a tape reading."},
        {.heading = "Floor slope",
         .kind = Kind::Measured,
         .measure = Measure::Slope,
         .width = 20,
         .note = "Trench drain: fall of its floor, as the trade says it: 0.5%, 1/16 in/ft. Blank: level."},
        {.heading = "Outlet pipe",
         .kind = Kind::Measured,
         .width = 22,
         .validity = chosenFrom("[Stock.Pipe]"),
         .note = "Pipe that leaves the basin or the end of the trench drain. Blank: not compared."},
        inches("Outlet head", 120, "Highest water in the basin over that pipe's inside bottom."),
        // Read by LINES.PEAK.
        helper("Area x C", "IF(ISBLANK([Node]);\"\";" + counted("Roof area", "Roof C") + "+" +
                               counted("Paved area", "Paved C") + "+" + counted("Yard area", "Yard C") + ")"),
        helper("Inlet minutes", "IF(ISBLANK([Node]);\"\";IF(ISBLANK([Minutes]);rain_minutes;[Minutes]))"),
        helper("First size",
               "IF(ISBLANK([Size]);\"\";" +
                   numberOr("LEFT(" + size + ";FIND(\"x\";" + size + ")-1)", numberOr(size, "[Size]")) + ")"),
        // A round grate has no second size: 0 is blank to the function.
        helper("Second size", "IF(ISBLANK([Size]);\"\";IF(ISERROR(FIND(\"x\";" + size + "));0;" +
                                  numberOr("MID(" + size + ";FIND(\"x\";" + size + ")+1;20)", "[Size]") +
                                  "))"),
        helper("Inlet takes", "IF(ISBLANK([Size]);\"\";" + taken + ")"),
        helper("Outlet takes", "IF(ISBLANK([Outlet pipe]);\"\";IFERROR(" + outlet.call() + ";\"\"))"),
        {.heading = "Takes",
         .format = show::number(1),
         .measure = Measure::Gpm,
         .width = 18,
         .formula = "IF(COUNT([Inlet takes];[Outlet takes])=0;\"\";MIN([Inlet takes];[Outlet takes]))",
         .note =
             "The lesser of the downspout, grate or trench drain and its outlet pipe. The pipe's own slope is judged on Runs."},
        {.heading = "Share",
         .format = show::percent(0),
         .width = 15,
         .formula = "IF(AND(ISNUMBER([Flow]);N([Takes])>0);[Flow]/[Takes];\"\")",
         .note = "Flow / what it takes."},
        {.heading = "Check", .kind = Kind::Verdict, .width = 92, .formula = check()},
    };
    Sheet sheet;
    sheet.name = "Water";
    sheet.title = "Water";
    sheet.purpose =
        "One row for each inlet: the areas that drain to it, the share of the rain that runs off, and what it enters by.";
    sheet.parts = {table};
    sheet.freezeColumns = 2;
    sheet.pagesWide = 2;
    return sheet;
}

}  // namespace trenchbook::sheets
