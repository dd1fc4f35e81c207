#include "kit/links.h"

#include <com/sun/star/awt/Point.hpp>
#include <com/sun/star/awt/Size.hpp>
#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/drawing/FillStyle.hpp>
#include <com/sun/star/drawing/LineStyle.hpp>
#include <com/sun/star/drawing/XDrawPagesSupplier.hpp>
#include <com/sun/star/drawing/XShape.hpp>
#include <com/sun/star/lang/XMultiServiceFactory.hpp>
#include <com/sun/star/sheet/XCellRangeAddressable.hpp>

namespace trenchbook::sheets {

using css::beans::XPropertySet;
using css::uno::Any;

void addLink(const Reference<css::sheet::XSpreadsheetDocument>& workbook,
             const Reference<css::sheet::XSpreadsheet>& sheet, CellPlace at, const std::string& target) {
    const Reference<css::uno::XInterface> cell(sheet->getCellByPosition(at.column, at.row), UNO_QUERY_THROW);
    const Reference<XPropertySet> place(cell, UNO_QUERY_THROW);
    css::awt::Point corner;
    css::awt::Size size;
    place->getPropertyValue("Position") >>= corner;
    place->getPropertyValue("Size") >>= size;

    const Reference<css::drawing::XShape> shape(
        Reference<css::lang::XMultiServiceFactory>(workbook, UNO_QUERY_THROW)
            ->createInstance("com.sun.star.drawing.RectangleShape"),
        UNO_QUERY_THROW);
    const sal_Int32 number =
        Reference<css::sheet::XCellRangeAddressable>(sheet, UNO_QUERY_THROW)->getRangeAddress().Sheet;
    Reference<css::drawing::XDrawPage>(Reference<css::drawing::XDrawPagesSupplier>(workbook, UNO_QUERY_THROW)
                                           ->getDrawPages()
                                           ->getByIndex(number),
                                       UNO_QUERY_THROW)
        ->add(shape);
    shape->setPosition(corner);
    shape->setSize(size);
    const Reference<XPropertySet> made(shape, UNO_QUERY_THROW);
    made->setPropertyValue("Anchor", Any(cell));
    made->setPropertyValue("ResizeWithCell", Any(true));
    made->setPropertyValue("LineStyle", Any(css::drawing::LineStyle_NONE));
    // Filled, so that the whole of it can be clicked, and yet clear: one that is wholly transparent takes no clicks.
    made->setPropertyValue("FillStyle", Any(css::drawing::FillStyle_SOLID));
    made->setPropertyValue("FillTransparence", Any(sal_Int16(99)));
    made->setPropertyValue("FillColor", Any(sal_Int32(0xffffff)));
    made->setPropertyValue("Printable", Any(false));
    made->setPropertyValue("Hyperlink", Any(wide("#" + target)));
    made->setPropertyValue("Title", Any(wide(target)));
    made->setPropertyValue("Description", Any(wide("Leads to the sheet " + target)));
}

}  // namespace trenchbook::sheets
