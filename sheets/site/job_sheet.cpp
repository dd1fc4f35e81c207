// The first sheet: who and where, the rain, the verdicts counted, what is missing, the cautions, the price.
#include "buying/money.h"
#include "site/inputs.h"
#include "templates/job.h"
#include "trenchbook/core/version.h"

namespace trenchbook::sheets {
namespace {

// The last row of the counts: all tables together.
std::string counted(const char* verdict) { return std::string("<counts_numbers.") + verdict + ":10>"; }
// Rows of the sheets that are judged without the engine.
std::string alsoOn(const char* word) {
    return countOf("Levels.Check", word) + "+" + countOf("Soak.Check", word);
}

// The rain's intensity. Reading the pasted table takes its time: one cell asks, all others look here.
const std::string rainCall = "[Rain.*];rain_minutes;rain_years;units";
const std::string designRain =
    "=IF(NOT(ISBLANK(rain_typed));IF(N(rain_typed)>0;N(rain_typed);\"\");"
    "IF(COUNTA([Rain.*])=0;\"\";IFERROR(RAIN.INTENSITY(" +
    rainCall + ");\"\")))";
// The sentence is asked for only where there is no number.
const std::string rainRefused = "\"NO: \"&IFERROR(TRENCHBOOK.WHY(\"RAIN.INTENSITY\";" + rainCall +
                                ";language);\"a cell of it holds an error\")";
const Cases rainCases = {
    {"AND(ISBLANK(rain_typed);COUNTA([Rain.*])=0)", "\"NO: type it, or paste the table on Rain\""},
    {"AND(ISBLANK(rain_typed);rain_rate<>\"\")",
     "\"OK: \"&" + saidCount("rain_years", "year", "years") + "&\", \"&" +
         saidCount("rain_minutes", "minute", "minutes") + "&\" in the table on Rain\""},
    {"ISBLANK(rain_typed)", rainRefused},
    {"rain_rate=\"\"", "\"NO: Rain must be a number above 0\""},
    // What a short rain brings in the United States; more or less is most often the other system's unit.
    {"OR(rain_rate<IF(units=\"metric\";12.7;0.5);rain_rate>IF(units=\"metric\";381;15))",
     "\"CHECK: usual are 0.5 to 15 in/hr (13 to 380 mm/h): in the job's unit?\""}};

Form jobForm() {
    const auto fact = [](const char* heading, const char* name, Format format = show::text,
                         Kind kind = Kind::Measured, const char* value = "") {
        return input(InputTable::Facts, {heading, 0, format, "", kind}, name, value);
    };
    const auto permit = [&](const char* heading, const char* name, Format format = show::text) {
        return fact(heading, name, format, Kind::Permit);
    };
    Form job;
    job.name = "Job";
    job.heading = "The job";
    job.fields = {
        {.label = "Units",
         .name = "units",
         .kind = Kind::Kept,
         .value = "US",
         .validity = choice({"US", "metric"}),
         .note = "Choose before the first measured cell is filled; it does not convert what was typed."},
        languageField(
            "Of checks, cautions and papers. en: English. es: español. Crew has a choice of its own."),
        permit("Job", "job_name"),
        permit("Owner", "owner"),
        permit("Site", "job_site"),
        permit("Quote date", "quote_date", show::date),
        {.label = "Rain station",
         .kind = Kind::Kept,
         .note = "Where the rain figure or the table on Rain comes from."},
        fact("Return period", "rain_years", show::number(0), Kind::Kept, "10"),
        fact("Duration", "rain_minutes", show::number(0), Kind::Kept, "5"),
        fact("Rain", "rain_typed", show::number(2), Kind::Kept),
        {.label = "Design rain",
         .name = "rain_rate",
         .kind = Kind::Computed,
         .format = show::number(2),
         .measure = Measure::InchesPerHour,
         .value = designRain,
         .note = "What all flows are worked out with."},
        {.label = "Rain check", .name = "rain_verdict", .kind = Kind::Verdict, .format = show::general},
        fact("Soil", "soil"),
        fact("Outlet", "outlet"),
        permit("Outlet permission", "outlet_permission"),
        permit("Locate ticket", "ticket"),
        permit("Ticket called", "ticket_called", show::date),
        permit("Ticket good from", "ticket_from", show::date),
        permit("Ticket good until", "ticket_until", show::date),
        fact("Trench protection", "trench_protection"),
        fact("Septic", "has_septic"),
        fact("Well", "has_well"),
        fact("Owners' association", "has_hoa"),
        fact("Irrigation or pool lines", "has_irrigation"),
        fact("Rules fit this county", "rules_asked"),
        fact("Today", "today", show::date, Kind::Computed, "=TODAY()"),
        fact("Agreed", "agreed_told", show::date, Kind::Computed,
             "=IF(ISNUMBER(agreed_date);agreed_date;\"\")"),
        fact("Shots with a level", "shots_leveled", show::number(0), Kind::Computed,
             "=COUNT([Levels.Level])"),
        {.label = "Notes", .kind = Kind::Measured, .wide = true},
    };
    for (Field& field : job.fields)
        if (field.kind == Kind::Computed) field.validity = {};
    judge(job, "rain_verdict", rainCases, "\"OK: as typed\"");
    return job;
}

Form verdictForm() {
    Form verdicts;
    verdicts.name = "Verdict";
    verdicts.heading = "Where the job stands";
    const auto count = [](const char* label, const char* name, const std::string& formula) {
        return Field{.label = label,
                     .name = name,
                     .kind = Kind::Computed,
                     .format = show::number(0),
                     .value = "=" + withEngine(formula)};
    };
    const auto length = [](const char* label, const char* name, int decimals, const char* formula,
                           const char* note = "") {
        return Field{.label = label,
                     .name = name,
                     .kind = Kind::Computed,
                     .format = show::number(decimals),
                     .measure = Measure::Feet,
                     .value = "=" + withEngine(formula),
                     .note = note};
    };
    verdicts.fields = {
        {.label = "Ready?", .name = "job_check", .kind = Kind::Verdict, .format = show::general},
        {.label = "Prices",
         .name = "job_prices",
         .kind = Kind::Verdict,
         .format = show::general,
         .value =
             "=IF(takeoff_gaps<>\"\";takeoff_gaps;IF(COUNT([Takeoff.Price];[Additions.Price])=0;\"\";\"OK: every "
             "line of Takeoff has its price\"))"},
        count("Rows with OK", "count_ok", counted("OK") + "+" + alsoOn("OK")),
        count("Rows to CHECK", "count_check", counted("CHECK") + "+" + alsoOn("CHECK")),
        count("Rows with NO", "count_no", counted("NO") + "+" + alsoOn("NO")),
        count("Not judged", "count_open",
              "IF(job_missing=\"\";0;LEN(job_missing)-LEN(SUBSTITUTE(job_missing;CHAR(10);\"\"))+1)"),
        hidden("Typed over", "typed_over", "TEXTJOIN(\", \";1;INDEX(form_Typed_over;0;2))"),
        hidden("Fields unread", "fields_unread",
               "TEXTJOIN(\"; \";1;INDEX(form_Fields_read;0;2);columns_unread)"),
        // Those that are numbers show them behind =.
        hidden("Fields without a number", "fields_words",
               "IF(fields_unread=\"\";0;(LEN(fields_unread)-LEN(SUBSTITUTE(fields_unread;\"; \";\"\")))/2+1-"
               "LEN(fields_unread)+LEN(SUBSTITUTE(fields_unread;\"=\";\"\")))"),
        hidden("First NO found", "first_no_found", "IFERROR(MATCH(\"NO\";<findings_words.Severity:*>;0);0)"),
        hidden("Needed and hidden", "sheets_lost",
               "SUMPRODUCT((INDEX(form_Sheets_needed;0;2)=\"\")*"
               "ISNUMBER(FIND(\"|\"&INDEX(form_Sheets_needed;0;1)&\"|\";sheets_aside)))"),
        {.label = "Fields", .name = "fields_check", .kind = Kind::Verdict, .format = show::general},
        {.label = "First NO", .name = "first_no", .kind = Kind::Verdict, .format = show::general},
        length("Least extra fall", "least_spare", 2,
               "IF(COUNT([Runs.Extra fall])=0;\"\";AGGREGATE(5;6;[Runs.Extra fall]))",
               "Tightest run: drop beyond what the least slope asks."),
        length("Pipe in all", "pipe_total", 0, "IFERROR(AGGREGATE(9;6;<runs_numbers.Length:*>);\"\")"),
        length(
            "Deepest cut", "deepest_cut", 2,
            "MAX(AGGREGATE(4;6;[Runs.Cut up]);AGGREGATE(4;6;[Runs.Cut down]);AGGREGATE(4;6;[Ground.Cut]))"),
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
         // Asked anew whenever the file is opened: what was stored would go on saying that the engine is there.
         .value = "=IFERROR(TRENCHBOOK.VERSION();\"no add-in\")&IF(NOW()<0;\"\";\"\")"},
        hidden("Does the engine answer?", "engine_there", "ISNUMBER(FIND(\".\";engine_here))"),
        {.label = "Engine", .name = "engine_state", .kind = Kind::Verdict, .format = show::general},
        {.label = "Ticket", .name = "ticket_state", .kind = Kind::Verdict, .format = show::general},
    };
    judge(
        verdicts, "job_check",
        {{"NOT(engine_there)", "engine_state"},
         {"count_open>0", "\"NO: still to measure or ask: \"&count_open&\", listed below\""},
         {"typed_over<>\"\"",
          "\"NO: a value stands where a formula belongs: \"&LEFT(typed_over;120)&\"; the marked cell takes the formula "
          "of the cell above or below it\""},
         {"count_no>0", "\"NO: \"&" + saidCount("count_no", "row has a NO", "rows have a NO")},
         {startsWith("fields_check", "NO"), "fields_check"},
         {"LEFT(quote_check;2)=\"NO\"", "\"NO: Quote: \"&MID(quote_check;5;200)"},
         {"N(sheets_lost)>0",
          "\"CHECK: hidden, but needed: see the list of sheets below; Sheets needed in the menu brings them back\""},
         {startsWith("fields_check", "CHECK"), "fields_check"},
         {"count_check>0", "\"CHECK: look at \"&" + saidCount("count_check", "row", "rows")}},
        "\"OK\"");
    judge(verdicts, "fields_check",
          {{"fields_words>0", fieldsUnread}, {"fields_unread<>\"\"", fieldsUnusual}},
          "\"OK: what stands in the fields can be used\"");
    const auto firstFound = [](const char* column) {
        return "INDEX(<findings_words." + std::string(column) + ":*>;first_no_found)";
    };
    judge(
        verdicts, "first_no",
        {{"NOT(engine_there)", "\"NO: nothing is judged without the add-in\""},
         {countOf("Levels.Check", "NO") + ">0", "\"NO on Levels\""},
         // What is said of the whole job has no name.
         {"first_no_found>0", "SUBSTITUTE(\"NO on \"&" + firstFound("Sheet") + "&\": \"&" +
                                  firstFound("Name") + "&\": \"&" + firstFound("Says") + ";\": : \";\": \")"},
         {countOf("Soak.Check", "NO") + ">0", "\"NO on Pit: the soak test\""}},
        "\"OK: none\"");
    judge(
        verdicts, "engine_state",
        {{"NOT(engine_there)",
          "\"NO: no add-in (#NAME?), or it does not load (Err:504): no price, nothing judged. Install it, open "
          "the file again\""},
         {"engine_here<>engine_made",
          "\"CHECK: made with \"&engine_made&\", computed here by \"&engine_here&"
          "\"; Ctrl+Shift+F9 computes all anew; see the list of changes\""}},
        "\"OK: the engine that this file was made with\"");
    const std::string until = "\" until \"&TEXT(ticket_until;\"YYYY-MM-DD\")";
    judge(
        verdicts, "ticket_state",
        {{"ticket=\"\"", "\"NO: no locate ticket\""},
         {"COUNT(ticket_from;ticket_until)<2", "\"NO: the ticket's dates are missing\""},
         {"today>ticket_until", "\"NO: ticket \"&ticket&\" ran out on \"&TEXT(ticket_until;\"YYYY-MM-DD\")"},
         {"today<ticket_from",
          "\"CHECK: ticket \"&ticket&\" is good from \"&TEXT(ticket_from;\"YYYY-MM-DD\")"},
         {"ticket_until-today<={ticket.warn}", "\"CHECK: ticket \"&ticket&\" is good only\"&" + until}},
        "\"OK: \"&ticket&" + until);
    return verdicts;
}

}  // namespace

// The sentences of one severity, a line each, from the list on Workings.
std::string jobSays(const char* severity, const char* condition, const std::string& line) {
    return "TEXTJOIN(CHAR(10);1;IFERROR(IF((<findings_words.Severity:*>=\"" + std::string(severity) + "\")" +
           condition + ";" + line + ";\"\");\"\"))";
}
std::string jobMissing() { return jobSays("NOT JUDGED", "", "<findings_words.Listed:*>"); }
std::string jobCautions() {
    return jobSays("caution", "*(<findings_words.Sheet:*>=\"Job\")", "<findings_words.Says:*>");
}

Sheet jobSheet(const JobSize&) {
    Paragraphs start;
    start.heading = "Start here";
    start.lines = {
        "1. Choose Units and Language right below, before anything is measured, and fill this sheet.",
        "2. Levels: rod readings.   3. Nodes: the points of the lines.   4. Water: roofs and paving.   5. Runs: one row a pipe. "
        "  Then Ground, Crossings, Outlets, Pit and Pump where there are any.",
        "6. Prices: type prices beside the usual codes, or bring them in from your price book. Takeoff and Quote follow, and "
        "so do the papers: Crew, Proposal, Order, Invoice, Care.",
        "Read Verdict and Check at the left of each row: OK, CHECK, NO or NOT JUDGED, and what to mend. A filled job to look "
        "at, all of it invented: File > New > Templates, folder Trenchbook, Corner lot.",
    };
    // On top, where it is seen on opening.
    Paragraphs engine;
    engine.verdict = true;
    engine.lines = {"=engine_state"};
    Paragraphs missing;
    missing.heading = "Still missing";
    missing.linesHigh = 7;
    missing.lines = {
        "=IF(NOT(engine_there);\"Not known without the add-in.\";"
        "IF(job_missing=\"\";\"Nothing: every question is answered.\";job_missing))"};

    Paragraphs cautions;
    cautions.heading = "Cautions for this job";
    cautions.linesHigh = 12;
    cautions.lines = {"=job_cautions"};

    Sheet sheet;
    sheet.name = "Job";
    sheet.title = "Drainage job";
    sheet.purpose = "Small buried drain lines: from rod readings to levels, flows, materials and a price.";
    sheet.parts = {engine, start, jobForm(), verdictForm(), missing, cautions};
    sheet.widths = {48, 74, 18, 110};
    sheet.landscape = false;
    return sheet;
}

}  // namespace trenchbook::sheets
