// Long section of each line, from its lower end uphill, drawn to scale.
#include "kit/look.h"
#include "results/pen_chart.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

// As large as JOB.PROFILE draws where it is told no size: what Letter and A4 both leave between their margins, in mm.
constexpr int paperWide = 252, paperHigh = 118;

std::string lineField(int nth) { return "seen_" + std::to_string(nth); }

// The n-th line name that stands on Runs; SUMPRODUCT looks at the whole column at once.
std::string lineName(int nth) {
    std::string taken;
    for (int before = 1; before < nth; ++before) taken += "*([Runs.Line]<>" + lineField(before) + ")";
    return "=IFERROR(INDEX([Runs.Line];SUMPRODUCT(MIN(IF(([Runs.Line]<>\"\")" + taken +
           ";ROW([Runs.Line])-MIN(ROW([Runs.Line]))+1;99999))));\"\")";
}

// The title follows the line; what found no room is said under its drawing.
Paragraphs named(int nth) {
    const std::string line = lineField(nth);
    Paragraphs title;
    title.heading =
        "=IF(" + line + "=\"\";\"\";" + line +
        "&IFERROR(\", from \"&INDEX([Runs.To];SUMPRODUCT(([Runs.Line]=" + line +
        ")*(IFERROR(1*[Runs.Run no.];0)=1)*(ROW([Runs.Line])-MIN(ROW([Runs.Line]))+1)))&\" uphill\";\"\"))";
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
           jobTail() + ";laid_in);\"\"))";
}

Sheet profileSheet(const JobSize&) {
    Form lines;
    lines.name = "Profile";
    for (int nth = 1; nth <= linesShown; ++nth)
        lines.fields.push_back({.label = std::to_string(nth),
                                .name = lineField(nth),
                                .kind = Kind::Computed,
                                .format = show::general,
                                .value = lineName(nth),
                                .helper = true});
    Sheet sheet;
    sheet.name = "Profile";
    sheet.title = "Profile of the lines";
    sheet.purpose =
        "Each line seen from the side, outlet on the left. Straight between nodes: shoot every grade break.";
    sheet.parts = {lines};
    for (int nth = 1; nth <= linesShown; ++nth) {
        if (nth > 1) sheet.parts.push_back(Break{});
        sheet.parts.push_back(named(nth));
        sheet.parts.push_back(chartOf(nth));
        sheet.parts.push_back(leftOut(nth));
    }
    sheet.widths = {63, 63, 63, 63};
    sheet.trueSize = sheet.paper = true;
    return sheet;
}

}  // namespace trenchbook::sheets
