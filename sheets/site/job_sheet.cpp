// The first sheet: who and where, the rain, the verdicts counted, what is missing, the cautions, the price.
#include "templates/job.h"
#include "trenchbook/core/version.h"

namespace trenchbook::sheets {
namespace {

std::string countOf(const std::string& word) {
    std::string sum;
    for (const char* table : {"Levels", "Nodes", "Water", "Runs", "Crossings", "Soak", "Swale"})
        sum += (sum.empty() ? "" : "+") + ("SUMPRODUCT(1*(LEFT([" + std::string(table) + ".Check];" +
                                           std::to_string(word.size()) + ")=\"" + word + "\"))");
    for (const char* form : {"rain_verdict", "pit_verdict"})
        sum += "+(LEFT(" + std::string(form) + ";" + std::to_string(word.size()) + ")=\"" + word + "\")";
    return sum;
}
// A line of a list: the words when the condition holds.
std::string when(const std::string& condition, const std::string& words) {
    return "IF(" + condition + ";\"" + words + "\";\"\")";
}
std::string list(const std::vector<std::string>& lines) {
    std::string joined;
    for (const std::string& line : lines) joined += ";" + line;
    return "TEXTJOIN(CHAR(10);1" + joined + ")";
}

// The rain's intensity. Reading the pasted table takes its time: one cell asks, all others look here.
const std::string rainCall = "[Rain.*];rain_minutes;rain_years;units";
const std::string designRain =
    "=IF(ISERROR(rain_typed);\"\";IF(NOT(ISBLANK(rain_typed));IF(N(rain_typed)>0;N(rain_typed);\"\");"
    "IF(COUNTA([Rain.*])=0;\"\";IFERROR(RAIN.INTENSITY(" +
    rainCall + ");\"\"))))";
// The sentence is asked for only where there is no number.
const std::string rainVerdict =
    "=IF(ISERROR(rain_typed);\"NO: Rain holds an error\";IF(NOT(ISBLANK(rain_typed));"
    "IF(NOT(ISNUMBER(rain_typed));\"NO: Rain is not a number: \"&rain_typed;IF(rain_typed<=0;\"NO: Rain must be above 0\";"
    "IF(OR(rain_typed<0.5*IF(units=\"metric\";25.4;1);rain_typed>15*IF(units=\"metric\";25.4;1));"
    "\"CHECK: usual are 0.5 to 15 inches (13 to 380 mm) an hour; in the job's unit?\";\"OK: as typed\")));"
    "IF(COUNTA([Rain.*])=0;\"NO: type it, or paste the table on Rain\";"
    "IF(ISNUMBER(rain_rate);\"OK: \"&rain_years&\" years, \"&rain_minutes&\" minutes in the table on Rain\";"
    "IF(SUMPRODUCT(1*ISERROR([Rain.*]))>0;\"NO: a cell of the table on Rain holds an error\";"
    "\"NO: \"&TRENCHBOOK.WHY(\"RAIN.INTENSITY\";" +
    rainCall + "))))))";

}  // namespace

// A line for each question that is still open; nothing when all are answered.
std::string jobMissing() {
    return list(
        {when("job_name=\"\"", "Job: name"), when("owner=\"\"", "Job: owner"),
         when("job_site=\"\"", "Job: site"), when("NOT(ISNUMBER(quote_date))", "Job: date of the quote"),
         when("NOT(ISNUMBER(rain_rate))", "Job: rain"),
         when("rules_asked<>\"yes\"", "Job: do rules, tax rate and rain fit this county?"),
         when("soil=\"\"", "Job: soil"), when("outlet=\"\"", "Job: where the water goes"),
         when("OR(outlet_permission=\"\";outlet_permission=\"asked\")", "Job: permission for the outlet"),
         when("OR(has_septic=\"\";has_septic=\"ask\";has_well=\"\";has_well=\"ask\")",
              "Job: ask about septic and well"),
         when("OR(has_irrigation=\"\";has_irrigation=\"ask\")", "Job: ask about irrigation and pool lines"),
         when("OR(has_hoa=\"\";has_hoa=\"ask\")", "Job: ask about an owners' association"),
         when("ticket=\"\"", "Job: locate ticket (call 811)"),
         when("COUNT([Levels.Level])=0", "Levels: rod readings"),
         when("COUNTA([Water.Inlet])=0", "Water: roofs and paving"),
         when("COUNTA([Runs.From])=0", "Runs: the lines")});
}

Sheet jobSheet(const JobSize&) {
    const Validity yesNo = choice({"yes", "no", "ask"});
    const auto permit = [](const char* label, const char* name, const char* note) {
        return Field{.label = label, .name = name, .kind = Kind::Permit, .note = note};
    };
    const auto asked = [&](const char* label, const char* name, const char* note) {
        return Field{.label = label, .name = name, .kind = Kind::Measured, .validity = yesNo, .note = note};
    };
    Paragraphs start;
    start.heading = "Start here";
    start.lines = {
        "1. Fill the boxed cells below, units first.   2. Levels: rod readings.   3. Nodes: the points of the lines.   "
        "4. Water: roofs and paving.",
        "5. Runs: one row a pipe, read the Check column.   6. Crossings, Pit and Swale where there are any.   7. Takeoff and Quote "
        "follow. Cells with a thin border are worked out.",
    };

    Form job;
    job.name = "Job";
    job.heading = "The job";
    job.fields = {
        permit("Job", "job_name", "Short name; it stands on every page."),
        permit("Owner", "owner", ""),
        permit("Site", "job_site", "Address or lot."),
        {.label = "Quote date",
         .name = "quote_date",
         .kind = Kind::Permit,
         .format = show::date,
         .note = "Year-month-day. Prices are judged by their age on this day."},
        {.label = "Units",
         .name = "units",
         .kind = Kind::Kept,
         .value = "US",
         .validity = choice({"US", "metric"}),
         .note = "Choose before the first measured cell is filled; it does not convert what was typed."},
        {.label = "Rain station",
         .kind = Kind::Kept,
         .note = "Where the rain figure or the table on Rain comes from."},
        {.label = "Return period",
         .name = "rain_years",
         .kind = Kind::Kept,
         .format = show::number(0),
         .measure = Measure::Years,
         .value = "10",
         .validity = between(1, 1000)},
        {.label = "Duration",
         .name = "rain_minutes",
         .kind = Kind::Kept,
         .format = show::number(0),
         .measure = Measure::Minutes,
         .value = "5",
         .validity = between(1, 1440),
         .note = "Small lots run off within 5 minutes."},
        {.label = "Rain",
         .name = "rain_typed",
         .kind = Kind::Kept,
         .format = show::number(2),
         .measure = Measure::InchesPerHour,
         .validity = between(0.5, 15),
         .note = "Intensity, where an office gives it. Blank: from the table pasted on Rain."},
        {.label = "Design rain",
         .name = "rain_rate",
         .kind = Kind::Computed,
         .format = show::number(2),
         .measure = Measure::InchesPerHour,
         .value = designRain,
         .note = "What all flows are worked out with."},
        {.label = "Rain check",
         .name = "rain_verdict",
         .kind = Kind::Verdict,
         .format = show::general,
         .value = rainVerdict},
        {.label = "Soil",
         .name = "soil",
         .kind = Kind::Measured,
         .validity = choice({"sand", "loam", "clay"}, false),
         .note = "Sets the swell of the spoil and the digging hours."},
        {.label = "Outlet",
         .name = "outlet",
         .kind = Kind::Measured,
         .validity = choice({"own swale", "easement swale", "roadside ditch", "curb", "public inlet",
                             "rock pit with overflow"},
                            false)},
        {.label = "Outlet permission",
         .name = "outlet_permission",
         .kind = Kind::Permit,
         .validity = choice({"asked", "got", "not needed"}),
         .note = "A ditch, curb or easement belongs to someone: ask before pricing."},
        permit("Locate ticket", "ticket", "Number of the one-call ticket."),
        {.label = "Ticket good from", .name = "ticket_from", .kind = Kind::Permit, .format = show::date},
        {.label = "Ticket good until", .name = "ticket_until", .kind = Kind::Permit, .format = show::date},
        asked("Septic", "has_septic", "On this lot or near the line?"),
        asked("Well", "has_well", ""),
        asked("Owners' association", "has_hoa", ""),
        asked("Irrigation or pool lines", "has_irrigation",
              "Private lines are not marked by the one-call service."),
        asked(
            "Rules fit this county", "rules_asked",
            "Limits and tax rate on Rules and the rain above are general or came from another lot: yes, when this county's offices were asked."),
        {.label = "Notes", .kind = Kind::Measured, .wide = true},
    };

    Form verdicts;
    verdicts.name = "Verdict";
    verdicts.heading = "Where the job stands";
    const auto counted = [](const char* label, const char* name, std::string formula) {
        return Field{.label = label,
                     .name = name,
                     .kind = Kind::Computed,
                     .format = show::number(0),
                     .value = "=" + std::move(formula)};
    };
    verdicts.fields = {
        {.label = "Ready?",
         .name = "job_check",
         .kind = Kind::Verdict,
         .format = show::general,
         .value =
             "=IF(job_missing<>\"\";\"NO: still to measure or ask: \"&(LEN(job_missing)-LEN(SUBSTITUTE(job_missing;CHAR(10);\"\"))+1)&\", listed below\";"
             "IF(count_no>0;\"NO: \"&count_no&IF(count_no=1;\" row has\";\" rows have\")&\" a NO\";"
             "IF(LEFT(quote_check;2)=\"NO\";\"NO: Quote: \"&MID(quote_check;5;200);"
             "IF(count_check>0;\"CHECK: look at \"&count_check&IF(count_check=1;\" row\";\" rows\");\"OK\"))))"},
        counted("Rows with OK", "count_ok", countOf("OK")),
        counted("Rows to CHECK", "count_check", countOf("CHECK")),
        counted("Rows with NO", "count_no", countOf("NO")),
        {.label = "First NO",
         .kind = Kind::Verdict,
         .format = show::general,
         .value =
             "=IF(LEFT(rain_verdict;2)=\"NO\";\"NO on Job: the rain\";IFERROR(\"NO on Levels: \"&INDEX([Levels.Point];MATCH(\"NO\";INDEX(LEFT([Levels.Check];2);0);0));"
             "IFERROR(\"NO on Nodes: \"&INDEX([Nodes.Node];MATCH(\"NO\";INDEX(LEFT([Nodes.Check];2);0);0));"
             "IFERROR(\"NO on Water: \"&INDEX([Water.Inlet];MATCH(\"NO\";INDEX(LEFT([Water.Check];2);0);0));"
             "IFERROR(\"NO on Runs: \"&INDEX([Runs.From];MATCH(\"NO\";INDEX(LEFT([Runs.Check];2);0);0))&\"-\"&INDEX([Runs.To];MATCH(\"NO\";INDEX(LEFT([Runs.Check];2);0);0));"
             "IFERROR(\"NO on Crossings: \"&INDEX([Crossings.What];MATCH(\"NO\";INDEX(LEFT([Crossings.Check];2);0);0));"
             "IFERROR(\"NO on Swale: \"&INDEX([Swale.Outlet];MATCH(\"NO\";INDEX(LEFT([Swale.Check];2);0);0));"
             "IF(LEFT(pit_verdict;2)=\"NO\";\"NO on Pit\";\"OK: none\"))))))))"},
        {.label = "Least spare fall",
         .name = "least_spare",
         .kind = Kind::Computed,
         .format = show::number(2),
         .measure = Measure::Feet,
         .value = "=IF(COUNT([Runs.Spare fall])=0;\"\";AGGREGATE(5;6;[Runs.Spare fall]))",
         .note = "Tightest run: drop beyond what the least slope asks."},
        {.label = "Pipe in all",
         .name = "pipe_total",
         .kind = Kind::Computed,
         .format = show::number(0),
         .measure = Measure::Feet,
         .value = "=SUM([Trench.Length])"},
        {.label = "Deepest cut",
         .name = "deepest_cut",
         .kind = Kind::Computed,
         .format = show::number(2),
         .measure = Measure::Feet,
         .value = "=MAX(AGGREGATE(4;6;[Runs.Cut up]);AGGREGATE(4;6;[Runs.Cut down]))"},
        {.label = "Price",
         .kind = Kind::Computed,
         .format = show::money,
         .measure = Measure::Dollars,
         .value = "=IFERROR(price_total;\"\")"},
        {.label = "Made with engine",
         .name = "engine_made",
         .kind = Kind::Kept,
         .value = version(),
         .note = "Version that this file was made with."},
        {.label = "Engine here",
         .name = "engine_here",
         .kind = Kind::Computed,
         .format = show::general,
         .value = "=IFERROR(TRENCHBOOK.VERSION();\"the add-in is not installed\")"},
        {.label = "Engine",
         .kind = Kind::Verdict,
         .format = show::general,
         .value =
             "=IF(engine_here=engine_made;\"OK: the engine that this file was made with\";IF(ISERROR(FIND(\".\";engine_here));\"NO: the add-in is not installed; numbers stay as they were last computed\";"
             "\"CHECK: made with \"&engine_made&\", computed here by \"&engine_here&\"; Ctrl+Shift+F9 computes all anew; the list of changes says which results moved\"))"},
        {.label = "Ticket",
         .name = "ticket_state",
         .kind = Kind::Verdict,
         .format = show::general,
         .value =
             "=IF(ticket=\"\";\"NO: no locate ticket\";IF(NOT(AND(ISNUMBER(ticket_from);ISNUMBER(ticket_until)));\"NO: the ticket's dates are missing\";"
             "IF(TODAY()>ticket_until;\"NO: ticket \"&ticket&\" ran out on \"&TEXT(ticket_until;\"YYYY-MM-DD\");"
             "IF(TODAY()<ticket_from;\"CHECK: ticket \"&ticket&\" is good from \"&TEXT(ticket_from;\"YYYY-MM-DD\");"
             "IF(ticket_until-TODAY()<={ticket.warn};\"CHECK: ticket \"&ticket&\" runs out on \"&TEXT(ticket_until;\"YYYY-MM-DD\");"
             "\"OK: \"&ticket&\" until \"&TEXT(ticket_until;\"YYYY-MM-DD\"))))))"},
    };

    Paragraphs missing;
    missing.heading = "Still missing";
    missing.linesHigh = 7;
    missing.lines = {"=IF(job_missing=\"\";\"Nothing: every question is answered.\";job_missing)"};

    Paragraphs cautions;
    cautions.heading = "Cautions for this job";
    cautions.linesHigh = 12;
    cautions.lines = {
        "=" +
        list(
            {"\"Call 811 before digging and wait for every answer. Inside the tolerance dig by hand.\"",
             when("N(deepest_cut)>=IF(units=\\\"metric\\\";1.22;4)",
                  "Trench 4 ft or deeper: a safe way out within 25 ft of anyone in it (29 CFR 1926.651)."),
             when("N(deepest_cut)>=IF(units=\\\"metric\\\";1.52;5)",
                  "Trench 5 ft or deeper: protective system unless stable rock (29 CFR 1926.652)."),
             "\"A competent person looks at the trench every day and after rain. Spoil stays 2 ft back from the edge.\"",
             when("has_irrigation<>\\\"no\\\"",
                  "Irrigation and pool lines are private and not marked: run each zone and probe."),
             when(
                 "pit_node<>\\\"\\\"",
                 "A soak test is no guarantee: groundwater moves with the season. Storms beyond the design overflow at the tee."),
             when("pit_node<>\\\"\\\"",
                  "A pit can count as a drainage well: ask the state's injection-well office."),
             when(
                 "AND(pit_node<>\\\"\\\";has_septic<>\\\"no\\\")",
                 "Keep the pit away from septic tank and field: ask the health department for the distance."),
             when(
                 "outlet_permission<>\\\"got\\\"",
                 "Sending water onto a neighbor, a sidewalk or into a public ditch needs permission: ask first."),
             "\"Not for sanitary waste, sump, pool backwash or septic. Local codes and licensed practice decide.\""})};
    for (std::string& line : cautions.lines)
        for (std::size_t at; (at = line.find("\\\"")) != std::string::npos;) line.erase(at, 1);

    Sheet sheet;
    sheet.name = "Job";
    sheet.title = "Drainage job";
    sheet.purpose = "Small buried drain lines: from rod readings to levels, flows, materials and a price.";
    sheet.parts = {start, job, verdicts, missing, cautions};
    sheet.widths = {48, 74, 18, 110};
    sheet.landscape = false;
    sheet.tab = 0x26323A;
    return sheet;
}

}  // namespace trenchbook::sheets
