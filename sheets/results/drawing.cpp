// The lot drawn true to scale: a chart over the strokes on Workings, as large on paper as its axes say in millimeters.
#include "kit/look.h"
#include "results/pen_chart.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

// What Letter and A4 both leave between their margins, in mm.
constexpr int paperWide = 252, paperHigh = 136;

Chart plan() {
    using Dash = Chart::Dash;
    return penChart("drawing_strokes", addin::drawingPens(),
                    {{colour::ink, 0.6},  // buildings
                     {colour::ink, 0.25, Dash::LongShort},
                     {colour::edge, 0.15},  // grounds
                     {colour::good, 0.2},
                     {colour::clay, 0.4},  // pipe, the thicker the larger
                     {colour::clay, 0.7},
                     {colour::clay, 1.1},
                     {colour::water, 0.3, Dash::Short},
                     {colour::ink, 0.2},  // signs
                     {colour::ink, 0.2}},
                    paperWide, paperHigh);
}

}  // namespace

std::string drawingPaper(bool north) {
    const auto size = [](int millimeters) {
        return "IF(units=\"metric\";" + std::to_string(millimeters) + ";" + std::to_string(millimeters) +
               "/25.4)";
    };
    return lotTables() + ";" + size(paperWide) + ";" + size(paperHigh) + ";crossings_in;" +
           (north ? "IF(lot_north=\"\";\"\";lot_north);" : "") + "units;laid_shown";
}

Sheet drawingSheet(const JobSize&) {
    Paragraphs says;
    says.span = 4;
    says.lines = {
        "=IF(ISNUMBER(<drawing_scale.Scale:1>);\"Scale \"&IF(units=\"metric\";\"1:\"&<drawing_scale.Scale:1>;\"1 in = \"&<drawing_scale.Scale:1>/12&\" ft\")&\" where it is printed at 100 %.\";IF(lot_there;\"NOTHING TO DRAW YET: type X and Y of two points on Layout.\";\"No drawing: nothing stands on Layout.\"))",
        "=IF(<drawing_missing.Says:1>=\"\";\"\";\"Not drawn: \"&<drawing_missing.Says:1>&\". What to tape next stands under Place on Nodes.\")",
        penLeftOut("drawing_strokes")};
    Sheet sheet;
    sheet.name = "Drawing";
    sheet.title = "=IF(drawing_shows=\"as built\";\"The lot as built\";\"Drawing of the lot\")";
    sheet.purpose =
        "The lot from above, true to scale: buildings, lot lines, pipe, the thicker the larger. Arrows point downstream.";
    sheet.parts = {plan(), says};
    sheet.widths = {63, 63, 63, 63};
    sheet.trueSize = sheet.paper = true;
    return sheet;
}

}  // namespace trenchbook::sheets
