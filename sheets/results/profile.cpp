// Long section of each line, from its lower end uphill: a drawing to scale, and below it a table of its points.
#include "kit/look.h"
#include "results/pen_chart.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

// As large as JOB.PROFILE draws where it is told no size: what Letter and A4 both leave between their margins, in mm.
constexpr int paperWide = 252, paperHigh = 118;
constexpr int crossingsShown = 6;
constexpr int points = 48;  // two a run: lower and upper end

std::string lineField(int nth) { return "profile_line_" + std::to_string(nth); }

// The n-th line name that stands on Runs; SUMPRODUCT looks at the whole column at once.
std::string lineName(int nth) {
    std::string taken;
    for (int before = 1; before < nth; ++before) taken += "*([Runs.Line]<>" + lineField(before) + ")";
    return "=IFERROR(INDEX([Runs.Line];SUMPRODUCT(MIN(IF(([Runs.Line]<>\"\")" + taken +
           ";ROW([Runs.Line])-MIN(ROW([Runs.Line]))+1;99999))));\"\")";
}

// What stands under the headings of the first line holds for the others.
void explainOnce(Table& table, int nth) {
    if (nth > 1)
        for (Column& column : table.columns) column.note.clear();
}

Table pointsOf(int nth) {
    const std::string line = lineField(nth);
    const std::string upper = "ISODD([#])";  // rows 2, 3 are the lower and the upper end of the first run
    const auto level = [](const char* heading, std::string formula, const char* note) {
        return Column{.heading = heading,
                      .format = show::number(2),
                      .measure = Measure::Feet,
                      .width = 27,
                      .formula = std::move(formula),
                      .note = note};
    };
    const auto ofRun = [&](const std::string& up, const std::string& down) {
        return "IF([Row]=\"\";\"\";IFERROR(1*INDEX(IF(" + upper + ";" + up + ";" + down + ");[Row]);\"\"))";
    };
    Table table;
    table.name = "Profile " + std::to_string(nth);
    table.rows = points;
    table.columns = {
        {.heading = "Row",
         .format = show::number(0),
         .width = 36,
         .formula =
             "IF(" + line + "=\"\";\"\";IFERROR(1/(1/SUMPRODUCT(([Runs.Line]=" + line +
             ")*(IFERROR(1*[Runs.Run no.];0)=INT([#]/2))*(ROW([Runs.Line])-MIN(ROW([Runs.Line]))+1)));\"\"))",
         .note = "Row of the run on Runs, the thin row being 1."},
        {.heading = "Node",
         .width = 27,
         .formula = "IF([Row]=\"\";\"\";INDEX(IF(" + upper + ";[Runs.From];[Runs.To]);[Row]))"},
        level("Station",
              "IF([Row]=\"\";\"\";IFERROR(INDEX([Runs.Station];[Row])+IF(" + upper +
                  ";TAPE.FEET(INDEX([Runs.Length];[Row]);units);0);\"\"))",
              "Distance from the outlet along the pipe."),
        level("Ground", ofRun("[Runs.Ground up]", "[Runs.Ground down]"), "From Nodes."),
        level("Top of pipe",
              "IF(ISNUMBER([Ground]);IFERROR(ROUND([Ground]-INDEX(IF(" + upper +
                  ";[Runs.Cover up];[Runs.Cover down]);[Row])/IF(units=\"metric\";1000;12);4);\"\");\"\")",
              "Outside top: ground - cover."),
        level("Invert", ofRun("[Runs.Invert up]", "[Runs.Invert down]"), "Inside bottom."),
        level(
            "Top allowed",
            "IF(ISNUMBER([Ground]);IFERROR(ROUND([Ground]-1*INDEX(IF(" + upper +
                ";<runs_numbers.Cover asked up:*>;<runs_numbers.Cover asked down:*>);[Row])/IF(units=\"metric\";1000;12);4);\"\");\"\")",
            "Where the outside top would have just the cover that Rules ask for the surface there."),
        level("Water", ofRun("[Runs.Water up]", "[Runs.Water down]"),
              "Level of the water, or of the pressure where the pipe runs full."),
        level("Planned invert", ofRun("<plan_numbers.Plan up:*>", "<plan_numbers.Plan down:*>"),
              "Of the cheapest plan that keeps every rule; see Plan."),
    };
    explainOnce(table, nth);
    return table;
}

// Each crossing as an upright from its bottom to its top: two points and a row without numbers, which parts the lines.
Table crossingsOf(int nth) {
    const std::string line = lineField(nth);
    const auto of = [](const std::string& column) { return "INDEX([Crossings." + column + "];[Row])"; };
    const std::string run = of("Row");
    const auto level = [](const char* heading, std::string formula, const char* note) {
        return Column{.heading = heading,
                      .format = show::number(2),
                      .measure = Measure::Feet,
                      .width = 27,
                      .formula = std::move(formula),
                      .note = note};
    };
    const std::string end = "MOD([#]-2;3)";  // 0 its bottom, 1 its top, 2 the gap
    Table table;
    table.name = "Profile " + std::to_string(nth) + " crossings";
    table.rows = 3 * crossingsShown;
    table.columns = {
        {.heading = "Row",
         .format = show::number(0),
         .width = 36,
         .formula =
             "IF(OR(" + line + "=\"\";" + end +
             "=2);\"\";IFERROR(SUMPRODUCT(SMALL(IF([Crossings.On line]=" + line +
             ";ROW([Crossings.On line])-MIN(ROW([Crossings.On line]))+1;\"\");INT(([#]-2)/3)+1));\"\"))",
         .note = "Row on Crossings, the thin row being 1."},
        {.heading = "What", .width = 27, .formula = "IF([Row]=\"\";\"\";" + of("What") + "&\"\")"},
        level("Station",
              "IF([Row]=\"\";\"\";IFERROR(INDEX([Runs.Station];" + run + ")+TAPE.FEET(INDEX([Runs.Length];" +
                  run + ");units)-" + of("At") + ";\"\"))",
              ""),
        level("Crossing",
              "IF([Row]=\"\";\"\";IFERROR(1*IF(" + end + "=0;" + of("Its bottom") + ";" + of("Its top") +
                  ");\"\"))",
              "Bottom and top of the other line."),
    };
    explainOnce(table, nth);
    return table;
}

// The title follows the line; what found no room is said under it.
Paragraphs named(int nth) {
    const std::string line = lineField(nth), node = "INDEX([Profile " + std::to_string(nth) + ".Node];2)";
    Paragraphs title;
    title.heading = "=IF(" + line + "=\"\";\"\";" + line + "&\", from \"&" + node + "&\" uphill\")";
    return title;
}
Paragraphs leftOut(int nth) {
    Paragraphs says;
    says.lines = {penLeftOut(profileStrokes(nth))};
    return says;
}

Chart chartOf(int nth) {
    using Dash = Chart::Dash;
    // Told apart in gray by dashes and weight: the ground heavy, the pipe a band.
    return penChart(profileStrokes(nth), addin::profilePens(),
                    {{colour::line, 0.1},
                     {colour::ground, 0.7},
                     {colour::look, 0.3, Dash::Short},
                     {colour::edge, 0.3, Dash::Short},
                     {colour::water, 0.25},
                     {colour::good, 0.35, Dash::LongShort},
                     {colour::clay, 0.35},
                     {colour::ink, 0.5},
                     {colour::bad, 0.35},
                     {colour::edge, 0.15},
                     {colour::ink, 0.2}},
                    paperWide, paperHigh);
}

}  // namespace

std::string profileStrokes(int nth) { return "profile_" + std::to_string(nth) + "_strokes"; }
std::string profileCall(int nth) {
    return "IF(" + lineField(nth) + "=\"\";\"\";IFERROR(JOB.PROFILE(" + jobTables() +
           ";grade_pipes_in;dig_cost_in;plan_deepest;plan_drop;" + lineField(nth) + ";;;units;language;" +
           jobTail() + ");\"\"))";
}

Sheet profileSheet(const JobSize&) {
    Form lines;
    lines.name = "Profile";
    lines.heading = "Lines shown";
    for (int nth = 1; nth <= linesShown; ++nth)
        lines.fields.push_back({.label = "Line " + std::to_string(nth),
                                .name = lineField(nth),
                                .kind = Kind::Computed,
                                .format = show::general,
                                .value = lineName(nth)});
    Sheet sheet;
    sheet.name = "Profile";
    sheet.title = "Profile";
    sheet.purpose =
        "Each line seen from the side, outlet on the left. Straight between nodes: shoot every grade break.";
    sheet.parts = {lines};
    for (int nth = 1; nth <= linesShown; ++nth) {
        if (nth > 1) sheet.parts.push_back(Break{});
        sheet.parts.push_back(named(nth));
        sheet.parts.push_back(chartOf(nth));
        sheet.parts.push_back(leftOut(nth));
    }
    for (int nth = 1; nth <= linesShown; ++nth) {
        sheet.parts.push_back(Break{});
        sheet.parts.push_back(pointsOf(nth));
        sheet.parts.push_back(crossingsOf(nth));
    }
    sheet.trueSize = true;
    return sheet;
}

}  // namespace trenchbook::sheets
