// The crew's page: useful on paper in the trench, with any set-up of the instrument.
#include "job/job.h"

namespace trenchbook::sheets {
namespace {

const std::string inchesPerLevel = "IF(units=\"metric\";1000;12)";

std::string ofRun(const std::string& column) { return "INDEX([Runs." + column + "];[Row])"; }
std::string guarded(const std::string& formula) { return "IF([Row]=\"\";\"\";IFERROR(" + formula + ";\"\"))"; }

}  // namespace

Sheet crewSheet(const JobSize&) {
    Form head;
    head.name = "Benchmark";
    head.fields = {
        {.label = "Benchmark", .name = "crew_mark", .kind = Kind::Computed, .format = show::general,
         .value = "=IFERROR(INDEX([Levels.Point];MATCH(TRUE();INDEX(ISNUMBER([Levels.Known level]);0);0));\"\")",
         .note = "Set the rod on it first."},
        {.label = "Its level", .name = "crew_level", .kind = Kind::Computed, .format = show::number(2),
         .measure = Measure::Feet,
         .value = "=IFERROR(INDEX([Levels.Known level];MATCH(TRUE();INDEX(ISNUMBER([Levels.Known level]);0);0));\"\")"},
        {.label = "Ticket", .name = "crew_ticket", .kind = Kind::Computed, .format = show::general, .value = "=ticket_state",
         .note = "No ticket, no digging: call 811 and wait for every answer."},
        {.label = "Rod reading", .kind = Kind::Label, .value = "today's backsight on the benchmark + the number in the column"},
    };
    const auto below = [](const char* heading, const std::string& level, const char* note) {
        return Column{.heading = heading, .format = show::number(2), .measure = Measure::Feet, .width = 25,
                      .formula = guarded("crew_level-(" + level + ")"), .note = note};
    };
    const auto pen = [](const char* heading, double width) {
        return Column{.heading = heading, .kind = Kind::Label, .width = width};
    };
    Table table;
    table.name = "Crew";
    table.rows = 240;
    table.columns = {
        {.heading = "Line", .width = 26, .formula = guarded(ofRun("Line"))},
        {.heading = "Station", .format = show::number(1), .measure = Measure::Feet, .width = 30,
         .formula = guarded("INDEX(stakes_block;[#]-1;2)"), .note = "Distance from the outlet along the pipe."},
        {.heading = "Node", .width = 22,
         .formula = guarded("IF([Up]<0.001;" + ofRun("To") + ";IF(ABS([Up]-TAPE.FEET(" + ofRun("Length") + ";units))<0.001;" + ofRun("From") + ";\"\"))")},
        {.heading = "Pipe", .width = 26, .formula = guarded(ofRun("Pipe"))},
        below("Trench bottom below benchmark", "[Bottom]", "Add today's backsight: that is the rod reading on the trench bottom."),
        below("Top of pipe below benchmark", "[Top]", "Add today's backsight: that is the rod reading on top of the laid pipe."),
        {.heading = "Cut", .format = show::number(2), .measure = Measure::Feet, .width = 18, .formula = guarded("[Ground]-[Bottom]")},
        {.heading = "Cut in feet and inches", .width = 26, .formula = guarded("IF(units=\"metric\";\"\";TAPE.TEXT([Cut];2))")},
        {.heading = "Here", .width = 62,
         .formula = guarded("IF([Node]=\"\";\"\";IFERROR(INDEX([Nodes.Kind];MATCH([Node];[Nodes.Node];0))&"
                            "IF(INDEX([Nodes.Bend made of];MATCH([Node];[Nodes.Node];0))=\"\";\"\";\", turn with \"&INDEX([Nodes.Bend made of];MATCH([Node];[Nodes.Node];0)));\"\"))")},
        pen("Rod", 18),
        pen("As laid", 18),
        {.heading = "Row", .format = show::number(0), .width = 12, .formula = "IFERROR(1*INDEX(stakes_block;[#]-1;1);\"\")", .helper = true},
        {.heading = "Up", .format = show::number(2), .width = 12, .formula = guarded("INDEX(stakes_block;[#]-1;3)"), .helper = true},
        {.heading = "Ground", .format = show::number(2), .width = 12,
         .formula = guarded(ofRun("Ground down") + "+(" + ofRun("Ground up") + "-" + ofRun("Ground down") + ")*[Up]/TAPE.FEET(" + ofRun("Length") + ";units)"), .helper = true},
        {.heading = "Invert", .format = show::number(2), .width = 12, .formula = guarded(ofRun("Invert down") + "+" + ofRun("Slope %") + "*[Up]"), .helper = true},
        {.heading = "Top", .format = show::number(2), .width = 12,
         .formula = guarded("[Invert]+" + ofRun("Ground down") + "-" + ofRun("Invert down") + "-" + ofRun("Cover down") + "/" + inchesPerLevel), .helper = true},
        {.heading = "Bottom", .format = show::number(2), .width = 12,
         .formula = guarded("[Invert]-(" + ofRun("Invert down") + "-" + ofRun("Ground down") + "+" + ofRun("Cut down") + ")"), .helper = true},
    };
    Table crossings;
    crossings.name = "Crew crossings";
    crossings.rows = 8;
    const auto listed = [](const char* heading, const char* column, Format format, Measure measure, double width) {
        return Column{.heading = heading, .format = format, .measure = measure, .width = width,
                      .formula = std::string("IFERROR(IF(INDEX([Crossings.What];[#])=\"\";\"\";INDEX([Crossings.") + column + "];[#]));\"\")"};
    };
    crossings.columns = {
        listed("Crossing", "What", show::text, Measure::Plain, 26),
        listed("Run from", "From", show::text, Measure::Plain, 30),
        listed("Run to", "To", show::text, Measure::Plain, 22),
        listed("From upper node", "At", show::number(1), Measure::Feet, 26),
        listed("Its depth", "Its depth", show::number(1), Measure::Inches, 25),
        listed("Clearance", "Clearance", show::number(1), Measure::Inches, 25),
        listed("Dig by hand", "Hand-dig", show::number(1), Measure::Feet, 18),
    };
    Sheet sheet;
    sheet.name = "Crew";
    sheet.title = "Crew sheet";
    sheet.purpose = "Dig from the outlet uphill. Every depth is measured down from the benchmark, so it holds for any set-up.";
    sheet.parts = {head, crossings, table};
    return sheet;
}

}  // namespace trenchbook::sheets
