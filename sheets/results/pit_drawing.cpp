// The pit cut open, drawn to scale, with the storm of the sheet Pit going through it.
#include "results/pit_drawing.h"

#include "kit/look.h"
#include "results/pen_chart.h"

namespace trenchbook::sheets {
namespace {

// As large as JOB.PIT.SECTION draws where it is told no size: what Letter and A4 both leave between their margins, in mm.
constexpr int paperWide = 252, paperHigh = 130;

Chart section() {
    using Dash = Chart::Dash;
    return penChart("pit_strokes", addin::pitPens(),
                    {{colour::line, 0.1},
                     {colour::ground, 0.2},
                     {colour::ground, 0.7},
                     {colour::look, 0.35, Dash::Short},
                     {colour::clay, 0.5},
                     {colour::ink, 0.6},
                     {colour::edge, 0.2},
                     {colour::water, 0.5},
                     {colour::ground, 0.5},
                     {colour::clay, 0.5, Dash::LongShort},
                     {colour::ink, 0.2}},
                    paperWide, paperHigh);
}

}  // namespace

std::string pitSectionCall() {
    return "IF(pit_node=\"\";\"\";IFERROR(JOB.PIT.SECTION(" + jobTables() +
           ";pit_storm_typed;pit_storm_hours;pit_storm_shape;;;units;language;" + jobTail() + ");\"\"))";
}

Sheet pitDrawingSheet(const JobSize&) {
    Paragraphs says;
    says.span = 4;
    says.lines = {
        "=IF(COUNT(<pit_strokes.x1:*>)>1;\"\";\"NOTHING TO DRAW YET: the pit needs length, width, rock depth and the ground at its tee.\")",
        "=IF(OR(pit_node=\"\";ISNUMBER(pit_highest));\"\";\"No storm yet: what is missing for it stands on Pit.\")",
        penLeftOut("pit_strokes")};
    Sheet sheet;
    sheet.name = "Pit drawing";
    sheet.title = "Pit drawing";
    sheet.purpose =
        "The pit cut open: levels, rock, soil, the tee, the water at its highest and seasonal high water; beside it the storm.";
    sheet.parts = {section(), says};
    sheet.widths = {63, 63, 63, 63};
    sheet.trueSize = sheet.paper = true;
    return sheet;
}

}  // namespace trenchbook::sheets
