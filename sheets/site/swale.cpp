// The open swale or ditch below an outlet: does it carry what the line brings, and does the grass hold?
#include "buying/money.h"

namespace trenchbook::sheets {
namespace {

const std::string metric = "units=\"metric\"";

std::string length(const std::string& value) {
    return "TEXT(" + value + ";\"0.00\")&IF(" + metric + ";\" m\";\" ft\")";
}
std::string speed(const std::string& value) {
    return "TEXT(" + value + ";\"0.0\")&IF(" + metric + ";\" m/s\";\" ft/s\")";
}
std::string whenWet(const std::string& formula) { return "IF(N([Flow])>0;" + formula + ";\"\")"; }

}  // namespace

Sheet swaleSheet(const JobSize& size) {
    const auto feet = [](const char* heading, Kind kind, std::string formula, Validity validity,
                         const char* note) {
        return Column{.heading = heading,
                      .kind = kind,
                      .format = show::number(2),
                      .measure = Measure::Feet,
                      .width = 19,
                      .formula = std::move(formula),
                      .validity = std::move(validity),
                      .note = note};
    };
    const std::string section = "[Bottom];[Side slope]";
    const std::string ground = section + ";[Slope];[Roughness];units";
    const std::vector<std::string> inputs = {"Outlet", "Other flow", "Bottom",   "Side slope",
                                             "Deep",   "Slope",      "Roughness"};

    std::vector<std::pair<std::string, std::string>> cases = ownErrors(inputs);
    cases =
        cases +
        std::vector<std::pair<std::string, std::string>>{
            {"ISBLANK([Outlet])",
             "IF(AND(ISBLANK([Bottom]);ISBLANK([Deep]));\"\";\"NO: Outlet is missing: which node empties here?\")"},
            {"COUNTIF([Runs.To];[Outlet])=0", "\"NO: no run ends at \"&[Outlet]"},
            {"COUNTIF([Runs.From];[Outlet])>0",
             "\"NO: a run leaves \"&[Outlet]&\": the water goes on in the pipe\""},
            {"NOT(OR(ISBLANK([Other flow]);ISNUMBER([Other flow])))",
             "\"NO: Other flow is not a number: \"&[Other flow]"},
            {"NOT(ISNUMBER([Flow]))",
             "\"NO: no flow at \"&[Outlet]&\": an inlet upstream has a fault (see Water)\""},
            {"[Flow]<=0", "\"NO: no water comes to \"&[Outlet]&\": see Water\""},
            {"NOT(ISNUMBER([Velocity]))",
             "\"NO: \"&TRENCHBOOK.WHY(\"SWALE.VELOCITY\";[Flow];" + ground + ")"},
            {"ISBLANK([Deep])", "\"NO: Deep is missing: how deep is the swale?\""},
            {"NOT(ISNUMBER([Spare depth]))", "\"NO: Deep is not a number above 0: \"&[Deep]"},
            {"[Spare depth]<0", "\"NO: runs over: the water is \"&" + length("[Water depth]") +
                                    "&\" deep, the swale \"&" + length("[Deep]")},
            {"[Velocity]>{velocity.outlet.max}", "\"NO: too fast for grass: \"&" + speed("[Velocity]") +
                                                     "&\", rule allows \"&" + speed("{velocity.outlet.max}") +
                                                     "&\"; stone, or a flatter and wider swale\""},
            {"[Spare depth]<{freeboard.min}", "\"CHECK: \"&" + length("[Spare depth]") +
                                                  "&\" of freeboard, rule asks \"&" +
                                                  length("{freeboard.min}")},
            {"[Water depth]<[Critical depth]",
             "\"CHECK: the water shoots: shallower than its critical depth of \"&" +
                 length("[Critical depth]")},
        };

    Table table;
    table.name = "Swale";
    table.rows = size.swales;
    table.columns = {
        {.heading = "Outlet",
         .kind = Kind::Measured,
         .width = 22,
         .validity = chosenFrom("[Nodes.Node]"),
         .note = "Node where the line empties into the swale."},
        {.heading = "Line's flow",
         .format = show::number(1),
         .measure = Measure::Gpm,
         .width = 22,
         .formula =
             "IF(IFERROR([Outlet]=\"\";1);\"\";IF(SUMPRODUCT(([Runs.To]=[Outlet])*ISNUMBER([Runs.Flow]))<COUNTIF([Runs.To];[Outlet]);\"\";"
             "SUMIFS([Runs.Flow];[Runs.To];[Outlet])))",
         .note = "All runs that end at this node, from Runs."},
        {.heading = "Other flow",
         .kind = Kind::Measured,
         .format = show::number(1),
         .measure = Measure::Gpm,
         .width = 22,
         .validity = between(0, 100000),
         .note = "Water that the swale brings already, from the ground above. Blank: none."},
        {.heading = "Flow",
         .format = show::number(1),
         .measure = Measure::Gpm,
         .width = 20,
         .formula =
             "IF(AND(ISNUMBER([Line's flow]);OR(ISBLANK([Other flow]);ISNUMBER([Other flow])));[Line's flow]+N([Other flow]);\"\")"},
        feet("Bottom", Kind::Measured, "", between(0, 50), "Width of the flat bottom; 0 is a V."),
        {.heading = "Side slope",
         .kind = Kind::Measured,
         .format = show::number(1),
         .width = 19,
         .validity = between(0, 20),
         .note = "Run over rise of the sides: 3 is 3 across to 1 up. Mowers want 3 or more."},
        feet("Deep", Kind::Measured, "", between(0, 20), "From the bottom to where it would run over."),
        {.heading = "Slope",
         .kind = Kind::Measured,
         .measure = Measure::Slope,
         .width = 20,
         .note = "Fall of the bottom, as the trade says it: 1%, 1:100, 1/8 in/ft."},
        {.heading = "Roughness",
         .kind = Kind::Measured,
         .format = show::number(3),
         .width = 20,
         .validity = between(0.01, 0.5),
         .note =
             "Manning n: mown grass some 0.035 to 0.05, tall grass more, bare earth some 0.022, broken stone some 0.04 (common practice)."},
        feet("Water depth", Kind::Computed, whenWet("IFERROR(SWALE.DEPTH([Flow];" + ground + ");\"\")"), {},
             "Uniform flow, Manning's formula."),
        {.heading = "Velocity",
         .format = show::number(1),
         .measure = Measure::FeetPerSecond,
         .width = 19,
         .formula = whenWet("IFERROR(SWALE.VELOCITY([Flow];" + ground + ");\"\")")},
        feet("Critical depth", Kind::Computed,
             whenWet("IFERROR(SWALE.CRITICAL([Flow];" + section + ";units);\"\")"), {},
             "Shallower water shoots and scours."),
        feet("Spare depth", Kind::Computed,
             "IF(AND(ISNUMBER([Water depth]);N([Deep])>0);[Deep]-[Water depth];\"\")", {},
             "Depth of the swale above the water."),
        {.heading = "Check", .kind = Kind::Verdict, .width = 86, .formula = firstOf(cases, "\"OK\"")},
    };
    Sheet sheet;
    sheet.name = "Swale";
    sheet.title = "Swale";
    sheet.purpose =
        "One row for each outlet that empties into a swale or ditch: how deep and how fast the line's water runs there.";
    sheet.parts = {table};
    sheet.freezeColumns = 1;
    return sheet;
}

}  // namespace trenchbook::sheets
