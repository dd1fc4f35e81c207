// The cheapest grade that keeps every rule, beside the levels typed: what it costs, and why it fits or does not.
#include "buying/money.h"
#include "templates/job.h"
#include "trenchbook/pipe/roughness.h"
#include "trenchbook/pipe/size_class.h"
#include "trenchbook/pipe/stock.h"

namespace trenchbook::sheets {
namespace {

constexpr int outletsShown = 6;

std::string ofRun(const std::string& column) { return "INDEX([Runs." + column + "];[#])"; }
std::string numberOf(const std::string& formula) { return "IFERROR(1*" + formula + ";\"\")"; }
std::string metricOr(const std::string& metric, const std::string& us) {
    return "IF(units=\"metric\";" + metric + ";" + us + ")";
}

// Runs whose lower node no run leaves, by their place on Runs.
std::string outletRow() {
    return "IFERROR(SUMPRODUCT(SMALL(IF(([Runs.From]<>\"\")*([Runs.To]<>\"\")*(COUNTIF([Runs.From];[Runs.To])=0);"
           "ROW([Runs.From])-MIN(ROW([Runs.From]))+1;\"\");[#]-1));\"\")";
}
std::string ofOutlet(const std::string& column) {
    return "IF([Row]=\"\";\"\";INDEX([Runs." + column + "];[Row]))";
}

Table outlets() {
    const auto level = [](const char* heading, std::string formula, const char* note) {
        return Column{.heading = heading,
                      .format = show::number(2),
                      .measure = Measure::Feet,
                      .width = 21,
                      .formula = std::move(formula),
                      .note = note};
    };
    Table table;
    table.name = "Planned outlets";
    table.rows = outletsShown;
    table.columns = {
        {.heading = "Line", .width = 36, .formula = ofOutlet("Line") + "&\"\""},
        {.heading = "From", .width = 24, .formula = ofOutlet("From") + "&\"\""},
        {.heading = "Ends at", .width = 24, .formula = ofOutlet("To") + "&\"\""},
        {.heading = "Fits",
         .width = 24,
         .formula =
             "IF(OR([Row]=\"\";NOT(engine_there));\"\";IF(ISNUMBER([Planned level]);\"fits\";\"NO\"))"},
        level("Lowest", numberOf(ofOutlet("Outlet level")), "Outlet level on Runs."),
        level("Highest",
              "IFERROR(IF(ISNUMBER(" + ofOutlet("Outlet highest") + ");" + ofOutlet("Outlet highest") +
                  ";\"\");\"\")",
              "Outlet highest on Runs."),
        level("As typed", numberOf(ofOutlet("Invert down")), "Invert at the outlet from the levels typed."),
        level("Planned level", numberOf("IF([Row]=\"\";\"\";INDEX(<plan_numbers.Plan down:*>;[Row]))"),
              "Invert at the outlet in the plan."),
        {.heading = "Row",
         .format = show::number(0),
         .width = 21,
         .formula = outletRow(),
         .note = "Place of the run on Runs, the thin row being 1."},
    };
    return table;
}

// A value of the plan, blank where there is none.
std::string ofPlan(const char* column) { return "IFERROR(<" + std::string(column) + ">;\"\")"; }

Table planned() {
    const auto feet = [](const char* heading, const char* column, const char* note) {
        return Column{.heading = heading,
                      .format = show::number(2),
                      .measure = Measure::Feet,
                      .width = 21,
                      .formula = ofPlan(column),
                      .note = note};
    };
    const auto dollars = [](const char* heading, const char* column, const char* note) {
        return Column{.heading = heading,
                      .format = show::money,
                      .measure = Measure::Dollars,
                      .width = 22,
                      .formula = ofPlan(column),
                      .note = note};
    };
    Table table;
    table.name = "Planned";
    table.columns = {
        {.heading = "Line", .width = 36, .formula = "IFERROR(" + ofRun("Line") + "&\"\";\"\")"},
        {.heading = "Run", .width = 24, .formula = "<runs_words.Run>"},
        {.heading = "Pipe",
         .width = 24,
         .formula = ofPlan("plan_words.Plan pipe"),
         .note = "Of those that Runs lists for this run."},
        feet("Invert up", "plan_numbers.Plan up", ""),
        feet("Invert down", "plan_numbers.Plan down", ""),
        {.heading = "Slope %",
         .format = show::percent(2),
         .width = 21,
         .formula = ofPlan("plan_numbers.Plan slope")},
        feet("Cut up", "plan_numbers.Plan cut up", "Ground to trench bottom."),
        feet("Cut down", "plan_numbers.Plan cut down", ""),
        feet(
            "Drop", "plan_numbers.Plan drop",
            "How far it falls at its lower node into the run that goes on: two bends and a piece of pipe upright."),
        dollars("Plan costs", "plan_numbers.Plan costs",
                "Pipe and digging, by the two tables above, and the drop at its lower node."),
        dollars(
            "More", "plan_numbers.More",
            "What the levels typed on Runs cost more than the plan's; one run may be cheaper where another is "
            "dearer."),
        {.heading = "Saving",
         .width = 90,
         .formula = ofPlan("plan_words.Plan saving"),
         .note =
             "What is wasted: a run deeper than the plan, or of a size where the next smaller passes every rule.",
         .wrapped = true},
    };
    return table;
}

Table gradePipes() {
    const std::string code = "\"PIPE-\"&SUBSTITUTE([Pipe];\" \";\"\")";
    Table table;
    table.name = "Grade pipes";
    table.columns = {
        {.heading = "Pipe", .kind = Kind::Kept, .width = 36, .note = "Stock name; Runs lists these names."},
        {.heading = "Price",
         .kind = Kind::Kept,
         .format = show::number(2),
         .measure = Measure::DollarsPerFoot,
         .width = 24,
         .formula = "IFERROR(ROUND(INDEX([Prices.Price];MATCH(" + code +
                    ";[Prices.Code];0))/INDEX([Prices.Pack];MATCH(" + code +
                    ";[Prices.Code];0));4);"
                    "IF(SUMPRODUCT(1*(LEFT([Prices.Code]&\"\";5)=\"PIPE-\"))=0;0;\"\"))",
         .note =
             "From Prices, code PIPE- and the name without blanks; or type it. While Prices has no pipe at all, the plan counts digging alone."},
        {.heading = "Least slope",
         .kind = Kind::Kept,
         .format = show::percent(2),
         .width = 24,
         .note = "From Rules by nominal size."},
        {.heading = "Extra cover",
         .kind = Kind::Kept,
         .format = show::number(1),
         .measure = Measure::Inches,
         .width = 24,
         .validity = between(0, 60),
         .note = "On top of what Rules ask for the surface."},
        {.heading = "n",
         .kind = Kind::Kept,
         .format = show::number(4),
         .width = 21,
         .validity = between(pipeRoughness.least, pipeRoughness.most),
         .note = "Manning roughness. Blank: as on Tables."},
        {.heading = "Largest share",
         .kind = Kind::Kept,
         .format = show::percent(0),
         .width = 21,
         .note = "Of the full pipe's flow."},
    };
    for (const StockPipe& row : stock())
        if (row.pipe.outside)
            table.content.push_back({row.pipe.name, "", std::string("={") + leastSlopeRule(row.pipe) + "}",
                                     "", "", "={share.max}"});
    table.rows = static_cast<int>(table.content.size());
    return table;
}

Table digCost() {
    Table table;
    table.name = "Dig cost";
    table.columns = {
        {.heading = "Cut",
         .kind = Kind::Kept,
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 36,
         .validity = between(0, 30),
         .note = "Ground to trench bottom, rising from row to row."},
        {.heading = "Price",
         .kind = Kind::Kept,
         .format = show::number(2),
         .measure = Measure::DollarsPerFoot,
         .width = 24,
         .formula = "IF(ISNUMBER([Cut]);IFERROR(ROUND(dig_upper*MIN([Cut];" + metricOr("1.524", "5") +
                    ")+dig_lower*MAX(0;[Cut]-" + metricOr("1.524", "5") +
                    ")+dig_fill*[Cut]+IF([Cut]>={cut.protect};dig_protect;0);2);\"\");\"\")",
         .note =
             "Digging, protecting and filling a foot (metric: a meter) of trench this deep, as Labor counts it, in a trench for 4 in pipe. Type your own."},
        {.heading = "Rise",
         .format = show::number(2),
         .width = 24,
         .formula =
             "IF(AND(ISNUMBER([^Cut]);ISNUMBER([^Price]);ISNUMBER([Cut]);ISNUMBER([Price]));ROUND(([Price]-[^Price])/([Cut]-[^Cut]);4);0)",
         .note = "For each foot (metric: each meter) deeper, from the row above.",
         .unit = "=IF(units=\"metric\";\"$/m per m\";\"$/ft per ft\")"},
    };
    for (const auto& [us, metric] : std::vector<std::pair<const char*, const char*>>{{"0", "0"},
                                                                                     {"1", "0.3"},
                                                                                     {"2", "0.6"},
                                                                                     {"3", "0.9"},
                                                                                     {"4", "1.2"},
                                                                                     {"5", "1.5"},
                                                                                     {"6", "1.8"},
                                                                                     {"8", "2.4"},
                                                                                     {"10", "3"}})
        table.content.push_back({"=" + metricOr(metric, us)});
    table.rows = static_cast<int>(table.content.size()) + 3;
    return table;
}

// What a foot of trench costs for each foot of its cut, by the hours and the rate on Labor.
std::vector<Field> digTerms() {
    const auto hours = [](const char* work) {
        return "SUMIF([Labor.Work];\"" + std::string(work) + "\";[Labor.Hours each])";
    };
    // Of a trench for 4 in pipe one foot long and one foot deep; in a metric job of a meter by a meter.
    const std::string volume = "{trench.width.4in}/" + metricOr("1000", "324");
    const std::string rate = "N(labor_rate)*N(labor_access)*";
    return {hidden("Digging, upper part", "dig_upper",
                   rate + "labor_soil*" + volume + "*" + hours("Dig trench by machine")),
            hidden("Digging, lower part", "dig_lower",
                   rate + "labor_soil*" + volume + "*" + hours("The same, under 5 ft (1.5 m)")),
            hidden("Filling", "dig_fill", rate + volume + "*" + hours("Backfill and tamp")),
            hidden("Protecting", "dig_protect",
                   "IF(trench_protection=\"stable rock\";0;N(labor_rate)*" +
                       hours("Shore or slope the trench") + ")")};
}

}  // namespace

Sheet planSheet(const JobSize& size) {
    Form form;
    form.name = "Plan";
    form.noteSpan = 8;
    const auto dollars = [](const char* label, const char* name, const char* column, const char* note) {
        return Field{.label = label,
                     .name = name,
                     .kind = Kind::Computed,
                     .format = show::money,
                     .measure = Measure::Dollars,
                     .value = "=" + withEngine("SUMPRODUCT(ISNUMBER(<plan_numbers.More:*>)*1;"
                                               "IFERROR(1*<plan_numbers." +
                                               std::string(column) + ":*>;0))"),
                     .note = note};
    };
    form.fields = {
        {.label = "Deepest cut",
         .name = "plan_deepest",
         .kind = Kind::Kept,
         .format = show::number(2),
         .measure = Measure::Feet,
         .value = "=" + metricOr("1.8", "6"),
         .validity = between(0.5, 30),
         .note = "Ground to trench bottom, nowhere deeper."},
        {.label = "Drop price",
         .name = "plan_drop",
         .kind = Kind::Kept,
         .format = show::number(2),
         .measure = Measure::DollarsPerFoot,
         .value = "=" + metricOr("100", "30"),
         .validity = between(0, 10000),
         .note =
             "Of a drop at a node, by the foot (metric: by the meter): two bends, a piece of pipe upright and their making. Common practice, no source."},
        dollars("Plan costs", "plan_cost", "Plan costs",
                "Pipe, digging and drops of all runs that have a plan."),
        dollars("Levels typed cost", "plan_typed", "Typed costs", "The same runs at the levels of Runs."),
        {.label = "Does it fit?",
         .name = "plan_fits",
         .kind = Kind::Verdict,
         .format = show::general,
         .value =
             "=IF(OR(COUNT([Planned outlets.Row])=0;NOT(engine_there));\"\";IF(COUNTIF([Planned outlets.Fits];\"NO\")=0;\"OK\";\"NO\"))",
         .note = "The reasons stand under Why."},
        dollars("More than the plan", "plan_more", "More",
                "An invert typed under Fixed level is kept by the plan too."),
    };
    for (const Field& term : digTerms()) form.fields.push_back(term);
    Paragraphs why;
    why.heading = "Why";
    why.span = 11;
    why.linesHigh = 2;
    for (int n = 1; n <= outletsShown; ++n) {
        const auto of = [n](const char* column) {
            return "INDEX([Planned outlets." + std::string(column) + "];" + std::to_string(n + 1) + ")";
        };
        const std::string reason = "INDEX(<plan_words.Plan reason:*>;" + of("Row") + ")";
        why.lines.push_back("=IF(OR(" + of("Row") + "=\"\";NOT(engine_there));\"\";" + of("Line") +
                            "&\", ends at \"&" + of("Ends at") + "&\": \"&" + reason + ")");
    }
    Table runs = planned();
    runs.rows = size.runs;
    Sheet sheet;
    sheet.name = "Plan";
    sheet.title = "Plan";
    sheet.purpose =
        "The cheapest inverts that keep cover, slope, flow, cut, outlets and crossings, worked out from Runs; to use one, type it there.";
    sheet.parts = {form, outlets(), why, gradePipes(), digCost(), Break{}, runs};
    return sheet;
}

}  // namespace trenchbook::sheets
