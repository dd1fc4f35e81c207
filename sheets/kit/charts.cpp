#include "kit/charts.h"

#include <com/sun/star/awt/Rectangle.hpp>
#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/chart/ChartLegendPosition.hpp>
#include <com/sun/star/chart/MissingValueTreatment.hpp>
#include <com/sun/star/chart/X3DDisplay.hpp>
#include <com/sun/star/chart/XAxisXSupplier.hpp>
#include <com/sun/star/chart/XAxisYSupplier.hpp>
#include <com/sun/star/chart/XChartDocument.hpp>
#include <com/sun/star/chart/XDiagramPositioning.hpp>
#include <com/sun/star/chart2/AxisType.hpp>
#include <com/sun/star/chart2/Symbol.hpp>
#include <com/sun/star/chart2/XChartDocument.hpp>
#include <com/sun/star/chart2/XChartTypeContainer.hpp>
#include <com/sun/star/chart2/XCoordinateSystemContainer.hpp>
#include <com/sun/star/chart2/XDataSeriesContainer.hpp>
#include <com/sun/star/chart2/XDiagram.hpp>
#include <com/sun/star/chart2/XFormattedString.hpp>
#include <com/sun/star/chart2/XTitled.hpp>
#include <com/sun/star/chart2/data/XDataProvider.hpp>
#include <com/sun/star/chart2/data/XDataSink.hpp>
#include <com/sun/star/chart2/data/XLabeledDataSequence.hpp>
#include <com/sun/star/container/XIndexAccess.hpp>
#include <com/sun/star/container/XNameAccess.hpp>
#include <com/sun/star/container/XNameContainer.hpp>
#include <com/sun/star/container/XNamed.hpp>
#include <com/sun/star/document/XEmbeddedObjectSupplier.hpp>
#include <com/sun/star/drawing/FillStyle.hpp>
#include <com/sun/star/drawing/LineDash.hpp>
#include <com/sun/star/drawing/LineStyle.hpp>
#include <com/sun/star/drawing/XDrawPagesSupplier.hpp>
#include <com/sun/star/lang/XMultiServiceFactory.hpp>
#include <com/sun/star/sheet/XCellRangeAddressable.hpp>
#include <com/sun/star/table/XTableChartsSupplier.hpp>

namespace trenchbook::sheets {
namespace {

using css::beans::XPropertySet;
using css::uno::Any;
using css::uno::Sequence;

void set(const Reference<css::uno::XInterface>& target, const char* name, const Any& value) {
    Reference<XPropertySet>(target, UNO_QUERY_THROW)
        ->setPropertyValue(rtl::OUString::createFromAscii(name), value);
}

// The plot takes the whole chart and its axes count millimeters: as long on paper as the columns say.
void drawToScale(const Reference<css::chart::XChartDocument>& plain, const Chart& chart) {
    set(plain, "HasLegend", Any(false));
    const auto diagram = plain->getDiagram();
    const auto axis = [&](const Reference<XPropertySet>& of, double most) {
        set(of, "Min", Any(0.0));
        set(of, "Max", Any(most));
        set(of, "AutoMin", Any(false));
        set(of, "AutoMax", Any(false));
    };
    axis(Reference<css::chart::XAxisXSupplier>(diagram, UNO_QUERY_THROW)->getXAxis(), chart.width);
    axis(Reference<css::chart::XAxisYSupplier>(diagram, UNO_QUERY_THROW)->getYAxis(), chart.height);
    for (const char* part : {"HasXAxis", "HasYAxis", "HasXAxisGrid", "HasYAxisGrid"})
        set(diagram, part, Any(false));
    const auto wall = Reference<css::chart::X3DDisplay>(diagram, UNO_QUERY_THROW)->getWall();
    set(wall, "FillStyle", Any(css::drawing::FillStyle_NONE));
    set(wall, "LineStyle", Any(css::drawing::LineStyle_NONE));
    set(plain->getArea(), "LineStyle", Any(css::drawing::LineStyle_NONE));
    Reference<css::chart::XDiagramPositioning>(diagram, UNO_QUERY_THROW)
        ->setDiagramPositionExcludingAxes(
            {0, 0, static_cast<sal_Int32>(chart.width * 100), static_cast<sal_Int32>(chart.height * 100)});
}

// A dot, then a dash, in hundredths of a millimeter.
css::drawing::LineDash dashOf(Chart::Dash dash) {
    const bool longShort = dash == Chart::Dash::LongShort;
    return {css::drawing::DashStyle_RECT, sal_Int16(longShort ? 1 : 0),
            longShort ? 60 : 0,           1,
            longShort ? 500 : 200,        150};
}

// For whoever hears the workbook instead of seeing it: "Pipe invert, Ground (Elevation, ft) by Station, ft".
std::string described(const Chart& chart) {
    std::string lines, last;
    for (const Chart::Series& series : chart.series) {
        const std::string& name = series.name.empty() ? series.y : series.name;
        if (name != last)
            lines += (lines.empty() ? "" : ", ") + name;  // one line may be drawn in several series
        last = name;
    }
    if (chart.toScale) return "Drawing to scale: " + lines;
    return lines + " (" + chart.yTitle + ") by " + chart.xTitle;
}

}  // namespace

void addChart(const Office& office, const Reference<css::sheet::XSpreadsheetDocument>& workbook,
              const Reference<css::sheet::XSpreadsheet>& sheet, const Chart& chart, const Layout& layout,
              CellPlace at, int number) {
    // The corner of the cell, in hundredths of a millimetre.
    css::awt::Point corner;
    Reference<XPropertySet>(sheet->getCellByPosition(at.column, at.row), UNO_QUERY_THROW)
        ->getPropertyValue("Position") >>= corner;
    const css::awt::Rectangle frame(corner.X, corner.Y, static_cast<sal_Int32>(chart.width * 100),
                                    static_cast<sal_Int32>(chart.height * 100));
    const auto charts = Reference<css::table::XTableChartsSupplier>(sheet, UNO_QUERY_THROW)->getCharts();
    // One of its name in the whole document.
    const rtl::OUString name = Reference<css::container::XNamed>(sheet, UNO_QUERY_THROW)->getName() +
                               " chart " + rtl::OUString::number(number);
    // With a range to start from the chart reads the sheet's cells; the series replace it below.
    const auto start =
        Reference<css::sheet::XCellRangeAddressable>(
            sheet->getCellRangeByPosition(at.column, at.row, at.column, at.row), UNO_QUERY_THROW)
            ->getRangeAddress();
    charts->addNewByName(name, frame, Sequence<css::table::CellRangeAddress>(&start, 1), false, false);
    const Reference<css::container::XIndexAccess> drawn(
        Reference<css::drawing::XDrawPagesSupplier>(workbook, UNO_QUERY_THROW)
            ->getDrawPages()
            ->getByIndex(start.Sheet),
        UNO_QUERY_THROW);
    const Reference<css::uno::XInterface> shape(drawn->getByIndex(drawn->getCount() - 1), UNO_QUERY_THROW);
    set(shape, "Title", Any(chart.title.empty() ? name : wide(chart.title)));
    set(shape, "Description", Any(wide(described(chart))));
    const Reference<css::document::XEmbeddedObjectSupplier> holder(charts->getByName(name), UNO_QUERY_THROW);
    const Reference<css::chart::XChartDocument> plain(holder->getEmbeddedObject(), UNO_QUERY_THROW);
    const Reference<css::lang::XMultiServiceFactory> diagrams(plain, UNO_QUERY_THROW);
    plain->setDiagram(Reference<css::chart::XDiagram>(
        diagrams->createInstance("com.sun.star.chart.XYDiagram"), UNO_QUERY_THROW));
    set(plain, "HasLegend", Any(true));
    set(plain, "HasMainTitle", Any(!chart.title.empty()));
    if (!chart.title.empty()) {
        set(plain->getTitle(), "String", Any(wide(chart.title)));
        set(plain->getTitle(), "CharHeight", Any(11.0f));
    }
    const auto legend = plain->getLegend();
    set(legend, "Alignment", Any(css::chart::ChartLegendPosition_BOTTOM));
    set(legend, "FillStyle", Any(css::drawing::FillStyle_NONE));
    set(legend, "LineStyle", Any(css::drawing::LineStyle_NONE));
    set(legend, "CharHeight", Any(9.0f));
    const auto diagram = plain->getDiagram();
    set(diagram, "HasXAxisTitle", Any(!chart.toScale));
    set(diagram, "HasYAxisTitle", Any(!chart.toScale));
    if (!chart.toScale) {
        set(Reference<css::chart::XAxisXSupplier>(diagram, UNO_QUERY_THROW)->getXAxisTitle(), "String",
            Any(wide(chart.xTitle)));
        set(Reference<css::chart::XAxisYSupplier>(diagram, UNO_QUERY_THROW)->getYAxisTitle(), "String",
            Any(wide(chart.yTitle)));
    }
    // Marks at round numbers: the columns' two decimals say nothing there.
    for (const auto& axis : {Reference<css::chart::XAxisXSupplier>(diagram, UNO_QUERY_THROW)->getXAxis(),
                             Reference<css::chart::XAxisYSupplier>(diagram, UNO_QUERY_THROW)->getYAxis()}) {
        set(axis, "LinkNumberFormatToSource", Any(false));
        set(axis, "NumberFormat", Any(sal_Int32(0)));
        set(axis, "CharHeight", Any(9.0f));
    }
    if (chart.dated)
        set(Reference<css::chart::XAxisXSupplier>(diagram, UNO_QUERY_THROW)->getXAxis(),
            "LinkNumberFormatToSource", Any(true));
    // The office's own wall is gray, which eats ink and hides thin lines in print.
    set(Reference<css::chart::X3DDisplay>(diagram, UNO_QUERY_THROW)->getWall(), "FillColor",
        Any(sal_Int32(0xFFFFFF)));
    set(diagram, "Lines", Any(true));
    set(diagram, "SymbolType", Any(sal_Int32(-3)));
    set(diagram, "MissingValueTreatment", Any(sal_Int32(css::chart::MissingValueTreatment::LEAVE_GAP)));
    set(diagram, "HasXAxisGrid", Any(true));

    const Reference<css::chart2::XChartDocument> document(plain, UNO_QUERY_THROW);
    const auto provider = document->getDataProvider();
    const Reference<css::chart2::XCoordinateSystemContainer> systems(document->getFirstDiagram(),
                                                                     UNO_QUERY_THROW);
    const Reference<css::chart2::XChartTypeContainer> types(systems->getCoordinateSystems()[0],
                                                            UNO_QUERY_THROW);
    const Reference<css::chart2::XDataSeriesContainer> series(types->getChartTypes()[0], UNO_QUERY_THROW);
    for (const auto& stale : series->getDataSeries()) series->removeDataSeries(stale);

    const auto make = [&](const char* service) {
        return office.context()->getServiceManager()->createInstanceWithContext(
            rtl::OUString::createFromAscii(service), office.context());
    };
    // Values with their role and, where given, the cell that names them in the legend.
    const auto labelled = [&](const std::string& values, const char* role, const std::string& label) {
        const Reference<css::chart2::data::XLabeledDataSequence> pair(
            make("com.sun.star.chart2.data.LabeledDataSequence"), UNO_QUERY_THROW);
        const auto numbers = provider->createDataSequenceByRangeRepresentation(wide(values));
        set(numbers, "Role", Any(rtl::OUString::createFromAscii(role)));
        pair->setValues(numbers);
        if (!label.empty()) pair->setLabel(provider->createDataSequenceByRangeRepresentation(wide(label)));
        return pair;
    };
    for (const Chart::Series& spec : chart.series) {
        const Reference<css::chart2::XDataSeries> made(make("com.sun.star.chart2.DataSeries"),
                                                       UNO_QUERY_THROW);
        Sequence<Reference<css::chart2::data::XLabeledDataSequence>> data(2);
        data.getArray()[0] = labelled(layout.chartRange(spec, spec.x), "values-x", "");
        data.getArray()[1] = labelled(layout.chartRange(spec, spec.y), "values-y", layout.chartHeading(spec));
        Reference<css::chart2::data::XDataSink>(made, UNO_QUERY_THROW)->setData(data);
        set(made, "Color", Any(static_cast<sal_Int32>(spec.colour)));
        set(made, "LineWidth", Any(static_cast<sal_Int32>(spec.width * 100)));
        css::chart2::Symbol mark;
        mark.Style = chart.dated ? css::chart2::SymbolStyle_STANDARD : css::chart2::SymbolStyle_NONE;
        if (chart.dated) {
            mark.StandardSymbol = 8;  // a disc
            mark.Size = css::awt::Size(220, 220);
            mark.FillColor = mark.BorderColor = static_cast<sal_Int32>(spec.colour);
        }
        set(made, "Symbol", Any(mark));
        if (spec.dash != Chart::Dash::None) {
            // Files keep a dash by its name in the chart's own table; without one they keep the office's dots.
            const rtl::OUString dash = wide(spec.dash == Chart::Dash::LongShort ? "Long short" : "Short");
            const Reference<css::container::XNameContainer> dashes(
                diagrams->createInstance("com.sun.star.drawing.DashTable"), UNO_QUERY_THROW);
            if (!dashes->hasByName(dash)) dashes->insertByName(dash, Any(dashOf(spec.dash)));
            set(made, "LineStyle", Any(css::drawing::LineStyle_DASH));
            set(made, "LineDash", Any(dashOf(spec.dash)));
            set(made, "LineDashName", Any(dash));
        }
        series->addDataSeries(made);
    }
    if (chart.toScale) drawToScale(plain, chart);
}

}  // namespace trenchbook::sheets
