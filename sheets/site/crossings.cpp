// Other buried things that a run passes: clearance, hand digging, tickets.
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

const std::string inchesPerLevel =
    "IF(units=\"metric\";1000;12)";  // covers are in inches or mm, levels in ft or m

// A value of the crossed run.
std::string ofRun(const std::string& column) { return "INDEX([Runs." + column + "];[Row])"; }
std::string along(const std::string& up, const std::string& down) {
    return "(" + ofRun(up) + "+(" + ofRun(down) + "-" + ofRun(up) + ")*[At]/TAPE.FEET(" + ofRun("Length") +
           ";units))";
}

const std::string asked = "IF([What]=\"irrigation\";{crossing.clearance.irrigation};{crossing.clearance})";

}  // namespace

Sheet crossingsSheet(const JobSize& size) {
    const auto level = [](const char* heading, const std::string& formula, const char* note) {
        return Column{.heading = heading,
                      .format = show::number(2),
                      .measure = Measure::Feet,
                      .width = 19,
                      .formula = "IF([Row]=\"\";\"\";IFERROR(" + formula + ";\"\"))",
                      .note = note};
    };
    const auto planned = [](const char* heading, Format format, const std::string& formula) {
        return Column{.heading = heading,
                      .format = format,
                      .width = 16,
                      .formula = "IF([Stands];" + formula + ";\"\")",
                      .helper = true};
    };
    Table table;
    table.name = "Crossings";
    table.rows = size.crossings;
    table.columns = {
        {.heading = "What",
         .kind = Kind::Measured,
         .width = 34,
         .validity = choice(
             {"water", "gas", "electric", "communication", "sewer", "irrigation", "drain", "other"}, false),
         .note = "The other line: water, gas, electric, irrigation…"},
        {.heading = "From",
         .kind = Kind::Measured,
         .width = 16,
         .validity = chosenFrom("[Nodes.Node]"),
         .note = "Upper node of the run that is crossed."},
        {.heading = "To", .kind = Kind::Measured, .width = 16, .validity = chosenFrom("[Nodes.Node]")},
        {.heading = "At",
         .kind = Kind::Measured,
         .format = show::number(1),
         .measure = Measure::Feet,
         .width = 15,
         .validity = between(0, 300),
         .note = "Distance from the upper node."},
        {.heading = "Its depth",
         .kind = Kind::Measured,
         .format = show::number(1),
         .measure = Measure::Inches,
         .width = 16,
         .validity = between(0, 240),
         .note = "Ground to its top, found by hand digging or asked of its owner."},
        {.heading = "Its diameter",
         .kind = Kind::Measured,
         .format = show::number(2),
         .measure = Measure::Inches,
         .width = 17,
         .validity = between(0.1, 60),
         .note = "Outside."},
        {.heading = "Passes",
         .kind = Kind::Measured,
         .width = 17,
         .validity = choice({"above", "below"}),
         .note = "above: it passes over our pipe. below: under it."},
        {.heading = "Marked",
         .kind = Kind::Permit,
         .width = 17,
         .validity = choice({"yes", "no", "private"}),
         .note = "Marked on the ground by its owner? Private lines are not marked by the one-call service."},
        {.heading = "Ticket",
         .kind = Kind::Permit,
         .width = 28,
         .note = "Number of the locate ticket that covers it."},
        {.heading = "Good from",
         .kind = Kind::Permit,
         .format = show::date,
         .width = 21,
         .note = "First day of the ticket; blank: as on Job."},
        {.heading = "Good until",
         .kind = Kind::Permit,
         .format = show::date,
         .width = 21,
         .note = "Last day of the ticket; blank: as on Job."},
        {.heading = "Row",
         .format = show::number(0),
         .width = 12,
         .formula =
             "IF(AND([From]<>\"\";[To]<>\"\");IFERROR(1/(1/SUMPRODUCT(([Runs.From]=[From])*([Runs.To]=[To])*(ROW([Runs.From])-MIN(ROW([Runs.From]))+1)));\"\");\"\")",
         .note = "The run's row on Runs, the thin row being 1."},
        level("Ground", along("Ground up", "Ground down"),
              "Ground at the crossing, straight between the nodes."),
        level("Our invert", along("Invert up", "Invert down"), ""),
        level("Our top",
              "[Our invert]-[Ground]+[Ground]+(" + ofRun("Ground up") + "-" + ofRun("Invert up") + "-" +
                  ofRun("Cover up") + "/" + inchesPerLevel + ")",
              "Outside top of our pipe."),
        level("Our bottom",
              "[Our invert]-([Our top]-[Our invert]-PIPE.BORE(" + ofRun("Pipe") + ";units)/" +
                  inchesPerLevel + ")",
              "Outside bottom."),
        level("Its top", "[Ground]-[Its depth]/" + inchesPerLevel, ""),
        level("Its bottom", "[Its top]-[Its diameter]/" + inchesPerLevel, ""),
        {.heading = "Clearance",
         .format = show::number(1),
         .measure = Measure::Inches,
         .width = 18,
         .formula =
             "IF(AND(ISNUMBER([Our top]);ISNUMBER([Our bottom]);ISNUMBER([Its depth]);ISNUMBER([Its diameter]);[Passes]<>\"\");"
             "IF([Passes]=\"above\";[Its bottom]-[Our top];[Our bottom]-[Its top])*" +
             inchesPerLevel + ";\"\")",
         .note = "Free distance between the two outsides."},
        {.heading = "Hand-dig",
         .format = show::number(1),
         .measure = Measure::Feet,
         .width = 17,
         .formula = "IF(ISNUMBER([Its diameter]);([Its diameter]+2*{handdig.tolerance})/" + inchesPerLevel +
                    ";\"\")",
         .note = "Length dug by hand: the line's width and the tolerance on both sides."},
        // What the plan must keep, as GRADE.PLAN reads it; a row that does not stand asks nothing of it.
        planned("Plan from", show::text, "[From]"),
        planned("Plan to", show::text, "[To]"),
        planned("Plan at", show::number(2), "[At]"),
        planned("Plan side", show::text, "IF([Passes]=\"above\";\"below\";\"above\")"),
        {.heading = "Kept level",
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 19,
         .formula = "IF([Stands];IF([Passes]=\"above\";[Its bottom]-" + asked + "/" + inchesPerLevel +
                    ";[Its top]+" + asked + "/" + inchesPerLevel + ");\"\")",
         .note =
             "The other line's outside and the clearance: the plan keeps our pipe below it, or above it."},
        {.heading = "On line",
         .width = 16,
         .formula = "IF([Row]=\"\";\"\";IFERROR(" + ofRun("Line") + "&\"\";\"\"))",
         .helper = true},
        {.heading = "Stands",
         .format = show::general,
         .width = 12,
         .formula = "IFERROR(AND([Row]<>\"\";ISNUMBER([At]);N([At])>=0;N([At])<=TAPE.FEET(" +
                    ofRun("Length") +
                    ";units);ISNUMBER([Its top]);ISNUMBER([Its bottom]);"
                    "OR([Passes]=\"above\";[Passes]=\"below\"));FALSE())",
         .helper = true},
        {.heading = "First day",
         .format = show::date,
         .width = 20,
         .formula = "IFERROR(IF(ISNUMBER([Good from]);[Good from];IF([Ticket]=ticket;N(ticket_from);0));0)",
         .helper = true},
        {.heading = "Last day",
         .format = show::date,
         .width = 20,
         .formula =
             "IFERROR(IF(ISNUMBER([Good until]);[Good until];IF([Ticket]=ticket;N(ticket_until);0));0)",
         .helper = true},
        {.heading = "Check",
         .kind = Kind::Verdict,
         .width = 84,
         .formula =
             "IFERROR(IF([What]&[From]&[To]=\"\";\"\";"
             "IF([Row]=\"\";\"NO: no run goes from \"&[From]&\" to \"&[To]&\" on Runs\";"
             "IF(NOT(ISNUMBER([At]));\"NO: At is missing: how far from \"&[From];"
             "IF([At]>TAPE.FEET(" +
             ofRun("Length") +
             ";units);\"NO: At lies beyond the end of the run\";"
             "IF(NOT(ISNUMBER([Its depth]));\"NO: Its depth is missing: dig by hand and measure\";"
             "IF(NOT(ISNUMBER([Its diameter]));\"NO: Its diameter is missing\";"
             "IF([Passes]=\"\";\"NO: does it pass above or below?\";"
             "IF(NOT(ISNUMBER([Clearance]));\"NO: the run has no levels here yet\";"
             "IF([Clearance]<0;\"NO: they meet: short by \"&TEXT(-[Clearance];\"0.0\")&IF(units=\"metric\";\" mm\";\" in\");"
             "IF([Clearance]<" +
             asked + ";\"NO: \"&TEXT([Clearance];\"0.0\")&\" clear, rule asks \"&" + asked +
             "&IF(units=\"metric\";\" mm\";\" in\")&"
             "\"; our pipe's outside must stay \"&[Plan side]&\" \"&TEXT([Kept level];\"0.00\");"
             "IF(AND([Marked]<>\"yes\";[Marked]<>\"private\");\"CHECK: not marked yet\";"
             "IF(AND([Marked]=\"yes\";[Ticket]=\"\");\"CHECK: ticket number is missing\";"
             "IF(AND([Marked]=\"yes\";[Last day]>0;TODAY()>[Last day]);\"NO: the ticket ran out on \"&TEXT([Last day];\"YYYY-MM-DD\");"
             "IF(AND([Marked]=\"yes\";[First day]>0;TODAY()<[First day]);\"CHECK: the ticket is good from \"&TEXT([First day];\"YYYY-MM-DD\");"
             "IF(AND([Marked]=\"yes\";[Last day]>0;[Last day]-TODAY()<={ticket.warn});\"CHECK: the ticket runs out on \"&TEXT([Last day];\"YYYY-MM-DD\");\"OK\")))))))))))))));"
             "\"NO: a cell of this row holds an error\")"},
    };
    Sheet sheet;
    sheet.name = "Crossings";
    sheet.title = "Crossings";
    sheet.purpose =
        "One row for each buried line that a run passes. Call 811 first; inside the tolerance dig by hand until it is seen.";
    sheet.parts = {table};
    sheet.freezeColumns = 3;
    return sheet;
}

}  // namespace trenchbook::sheets
