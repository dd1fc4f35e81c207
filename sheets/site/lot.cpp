// The lot in plan: corners and other points with the tapes that lead to them, and tapes between any two.
#include "site/inputs.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

std::vector<Column> points() {
    const Format decimal = show::number(2);
    std::vector<Column> columns = inputs(InputTable::Layout, {{"Point", 24},
                                                              {"What", 20},
                                                              {"Object", 20},
                                                              {"X", 16, decimal},
                                                              {"Y", 16, decimal},
                                                              {"Tie 1", 27},
                                                              {"Tie 2", 27},
                                                              {"Tie 3", 27},
                                                              {"Side", 14},
                                                              {"Line turns", 19},
                                                              {"Longitude", 24, show::number(6)},
                                                              {"Latitude", 22, show::number(6)},
                                                              {"Note", 34}});
    return columns;
}

Column worked(const char* heading, const std::string& mark, Format format, const char* note = "") {
    return {.heading = heading,
            .format = format,
            .measure = Measure::Feet,
            .width = 20,
            .formula = answered(mark),
            .note = note};
}

}  // namespace

std::string lotTables() { return "layout_in;tapes_in;nodes_in;runs_in;pit_in;rules_in"; }

Sheet layoutSheet(const JobSize& size) {
    Form compass;
    compass.name = "Compass";
    compass.fields = {
        {.label = "North",
         .name = "lot_north",
         .kind = Kind::Measured,
         .format = show::number(0),
         .measure = Measure::Degrees,
         .validity = between(-360, 360),
         .note =
             "Clockwise from up on the drawing: 0 up, 90 to the right. Blank: by Longitude and Latitude."},
        {.label = "A lot is drawn",
         .name = "lot_there",
         .kind = Kind::Computed,
         .format = show::general,
         .value = "=COUNTA([Layout.Point])>0",
         .helper = true}};
    compass.noteSpan = 7;
    Table table;
    table.name = "Layout";
    table.rows = size.points;
    table.columns =
        verdictColumns(56) + points() +
        std::vector<Column>{worked("X drawn", "X", show::number(2), "Where it is drawn, all tapes together."),
                            worked("Y drawn", "Y", show::number(2), ""),
                            worked("Uncertain", "Uncertain", show::number(2),
                                   "Standard error the worse way, from the usual error of a tape on Rules.")};
    table.handedFrom = "Point";
    table.handedTo = "Note";
    Sheet sheet;
    sheet.name = "Layout";
    sheet.title = "Layout";
    sheet.purpose =
        "Corners, lot lines, trees and what else stands on the lot. Type X and Y of two points, tape the rest to them; "
        "nodes by their ties on Nodes. Blank: no drawing.";
    sheet.parts = {compass, table};
    sheet.freezeColumns = 3;
    return sheet;
}

Sheet tapesSheet(const JobSize& size) {
    Table table;
    table.name = "Tapes";
    table.rows = size.tapes;
    table.columns =
        verdictColumns(60) +
        inputs(InputTable::Tapes, {{"From", 24}, {"To", 24}, {"Wall to", 24}, {"Length", 20}, {"Note", 50}}) +
        std::vector<Column>{worked("Drawn", "Drawn", show::number(2)), worked("Off", "Off", show::number(2))};
    table.handedFrom = "From";
    table.handedTo = "Note";
    Sheet sheet;
    sheet.name = "Tapes";
    sheet.title = "Tapes";
    sheet.purpose =
        "Distances between any two points of Layout or nodes, and offsets square from a wall. One to spare finds a "
        "slip of the others.";
    sheet.parts = {table};
    sheet.freezeColumns = 4;
    return sheet;
}

}  // namespace trenchbook::sheets
