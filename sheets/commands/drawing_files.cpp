#include "commands/drawing_files.h"

#include <algorithm>
#include <optional>

#include "jobbook/refused.h"
#include "trenchbook/core/error.h"
#include "trenchbook/job/as_built.h"
#include "trenchbook/job/plan_drawing.h"
#include "trenchbook/job/read.h"
#include "trenchbook/layout/dxf.h"
#include "trenchbook/layout/geojson.h"

namespace trenchbook::sheets {
namespace {

// Paper whose usual scale gives arrows and letters their size.
constexpr Length paperWide = Length::millimetres(252), paperHigh = Length::millimetres(136),
                 letterHigh = Length::millimetres(2);

Cell cellOf(const Value& value) {
    if (const double* number = std::get_if<double>(&value)) return *number;
    if (const std::string* text = std::get_if<std::string>(&value)) return *text;
    return Nothing();
}

// The input columns of a table, headings and units first, as the functions of the sheets are handed them.
Grid tableOf(const Book& book, const char* name, InputTable input) {
    const BookPart* table = book.table(name);
    if (table == nullptr) return {};
    std::vector<int> columns;
    const std::vector<std::string> headings = book.headings(*table);
    for (std::size_t i = 0; i < headings.size(); ++i)
        if (inputColumn(input, headings[i]) != nullptr)
            columns.push_back(table->at.column + static_cast<int>(i));
    Grid grid;
    grid.columns = columns.size();
    for (int row = table->at.row; row <= table->at.lastRow; ++row, ++grid.rows)
        for (const int column : columns)
            grid.cells.push_back(cellOf(book.cell({table->at.sheet, column, row})));
    return grid;
}
Grid formOf(const Book& book, const char* name) {
    const BookPart* form = book.form(name);
    Grid grid;
    if (form == nullptr) return grid;
    grid.columns = 2;
    for (int row = form->at.row; row <= form->at.lastRow; ++row, ++grid.rows)
        for (const int column : {form->at.column, form->at.column + 1})
            grid.cells.push_back(cellOf(book.cell({form->at.sheet, column, row})));
    return grid;
}

std::vector<GeoPoint> knownPlaces(const Job& job) {
    std::vector<GeoPoint> known;
    for (std::size_t row = 0; row < job.lotPoints.size() && row < job.drawn.points.size(); ++row) {
        const LotPoint& point = job.lotPoints[row];
        if (!point.blank && point.longitude && point.latitude && job.drawn.points[row].place.placed())
            known.push_back({*job.drawn.points[row].place.at, *point.longitude, *point.latitude});
    }
    return known;
}

}  // namespace

DrawingFiles drawingFiles(const Book& book) {
    const UnitSystem units = book.text("units") == "metric" ? UnitSystem::Metric : UnitSystem::US;
    JobTables tables;
    tables.nodes = tableOf(book, "Nodes", InputTable::Nodes);
    tables.runs = tableOf(book, "Runs", InputTable::Runs);
    tables.crossings = tableOf(book, "Crossings", InputTable::Crossings);
    tables.layout = tableOf(book, "Layout", InputTable::Layout);
    tables.tapes = tableOf(book, "Tapes", InputTable::Tapes);
    tables.rules = tableOf(book, "Rules", InputTable::Rules);
    tables.pit = formOf(book, "Pit");
    const Job plan = readJob(tables, units);
    if (!plan.drawn.any()) throw Refused("nothing is drawn: type X and Y of two points on Layout");
    const Grid measured = tableOf(book, "As built", InputTable::AsBuilt);
    const std::vector<LaidNode> laid =
        measured.rows > 0 ? readLaid(measured, units) : std::vector<LaidNode>();
    DrawingFiles made;
    const std::vector<GeoPoint> known = knownPlaces(plan);
    std::optional<GeoFit> fit;
    try {
        fit = geoFit(known);
        made.says = Text{"places typed and drawing disagree by up to ",
                         "los lugares escritos y el plano difieren hasta "} +
                    (units == UnitSystem::Metric ? Text::same(plain(fit->worst.metres(), 1) + " m")
                                                 : Text::same(plain(fit->worst.feet(), 1) + " ft"));
    } catch (const Error&) {
        made.says = {"no GeoJSON: type Longitude and Latitude of two points on Layout",
                     "sin GeoJSON: escriba Longitude y Latitude de dos puntos en Layout"};
    }
    const auto add = [&](const std::string& name, const Job& job, const std::vector<std::string>& tags) {
        const ScaledDrawing drawn = drawingFor(job, paperWide, paperHigh, tags);
        made.files.push_back({name + ".dxf", dxfText(drawn.drawing, units, letterHigh * drawn.paper.scale)});
        if (fit) made.files.push_back({name + ".geojson", geoJson(drawn.drawing, *fit)});
    };
    add("drawing", plan, {});
    const bool any = std::any_of(laid.begin(), laid.end(), [](const LaidNode& one) { return !one.blank; });
    if (any) {
        const AsBuilt built = asBuilt(plan, laid);
        add("as-built", built.job, built.tags);
    }
    return made;
}

}  // namespace trenchbook::sheets
