#include "jobbook/logo.h"

#include <algorithm>
#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/container/XNamed.hpp>
#include <com/sun/star/drawing/XDrawPagesSupplier.hpp>
#include <com/sun/star/drawing/XShape.hpp>
#include <com/sun/star/graphic/XGraphic.hpp>
#include <com/sun/star/lang/XMultiServiceFactory.hpp>
#include <com/sun/star/lang/XServiceInfo.hpp>
#include <com/sun/star/sheet/XCellRangeAddressable.hpp>
#include <com/sun/star/sheet/XPrintAreas.hpp>
#include <com/sun/star/table/XColumnRowRange.hpp>
#include <fstream>

#include "jobbook/packed.h"
#include "jobbook/refused.h"
#include "jobbook/value_text.h"
#include "kit/names.h"

namespace trenchbook::sheets {
namespace {

namespace fs = std::filesystem;
using css::beans::XPropertySet;
using css::container::XIndexAccess;
using css::drawing::XShape;
using css::graphic::XGraphic;
using css::uno::Any;

constexpr const char* keptOn = "Account";
constexpr const char* name = "Logo";
constexpr sal_Int32 behindFields = 9;   // column of Account
constexpr sal_Int32 paperWide = 18600;  // what Letter and A4 both leave between their margins, upright
constexpr sal_Int32 mostWide = 5000, mostHigh = 1500;  // of a letterhead, in hundredths of a millimeter

Reference<css::sheet::XSpreadsheet> sheetNamed(const Document& document, const char* sheet) {
    const rtl::OUString wanted = rtl::OUString::createFromAscii(sheet);
    if (!document->getSheets()->hasByName(wanted)) return {};
    return {document->getSheets()->getByName(wanted), UNO_QUERY_THROW};
}
Reference<css::drawing::XDrawPage> pageOf(const Document& document,
                                          const Reference<css::sheet::XSpreadsheet>& sheet) {
    const auto number =
        Reference<css::sheet::XCellRangeAddressable>(sheet, UNO_QUERY_THROW)->getRangeAddress().Sheet;
    return {Reference<css::container::XIndexAccess>(
                Reference<css::drawing::XDrawPagesSupplier>(document, UNO_QUERY_THROW)->getDrawPages(),
                UNO_QUERY_THROW)
                ->getByIndex(number),
            UNO_QUERY_THROW};
}
bool isPicture(const Reference<XShape>& shape) {
    const Reference<css::lang::XServiceInfo> about(shape, UNO_QUERY);
    return about.is() && about->supportsService("com.sun.star.drawing.GraphicObjectShape");
}

std::vector<Reference<XShape>> pictures(const Document& document,
                                        const Reference<css::sheet::XSpreadsheet>& sheet) {
    std::vector<Reference<XShape>> found;
    const auto page = pageOf(document, sheet);
    for (sal_Int32 i = 0; i < page->getCount(); ++i)
        if (const Reference<XShape> shape(page->getByIndex(i), UNO_QUERY_THROW); isPicture(shape))
            found.push_back(shape);
    return found;
}

Reference<XGraphic> graphicOf(const Reference<XShape>& shape) {
    Reference<XGraphic> graphic;
    Reference<XPropertySet>(shape, UNO_QUERY_THROW)->getPropertyValue("Graphic") >>= graphic;
    return graphic;
}
Reference<XGraphic> logoOn(const Document& document) {
    const auto account = sheetNamed(document, keptOn);
    if (!account.is()) return {};
    const std::vector<Reference<XShape>> found = pictures(document, account);
    return found.empty() ? Reference<XGraphic>() : graphicOf(found.front());
}

// As large as fits, its sides in their ratio.
css::awt::Size fitted(const Reference<XGraphic>& graphic, sal_Int32 wide, sal_Int32 high) {
    const Reference<XPropertySet> about(graphic, UNO_QUERY_THROW);
    css::awt::Size size;
    about->getPropertyValue("Size100thMM") >>= size;
    if (size.Width <= 0 || size.Height <= 0) about->getPropertyValue("SizePixel") >>= size;
    if (size.Width <= 0 || size.Height <= 0) return {wide, high};
    const double scale =
        std::min(static_cast<double>(wide) / size.Width, static_cast<double>(high) / size.Height);
    return {static_cast<sal_Int32>(size.Width * scale), static_cast<sal_Int32>(size.Height * scale)};
}

Reference<XShape> put(const Document& document, const Reference<css::sheet::XSpreadsheet>& sheet) {
    const Reference<css::lang::XMultiServiceFactory> factory(document, UNO_QUERY_THROW);
    const Reference<XShape> shape(factory->createInstance("com.sun.star.drawing.GraphicObjectShape"),
                                  UNO_QUERY_THROW);
    pageOf(document, sheet)->add(shape);
    Reference<css::container::XNamed>(shape, UNO_QUERY_THROW)->setName(wide(name));
    Reference<XPropertySet>(shape, UNO_QUERY_THROW)->setPropertyValue("Title", Any(wide(name)));
    return shape;
}
void remove(const Document& document, const Reference<css::sheet::XSpreadsheet>& sheet) {
    for (const Reference<XShape>& shape : pictures(document, sheet))
        if (Reference<css::container::XNamed>(shape, UNO_QUERY_THROW)->getName() == wide(name))
            pageOf(document, sheet)->remove(shape);
}

sal_Int32 numberOf(const Reference<css::uno::XInterface>& of, const char* property) {
    sal_Int32 number = 0;
    Reference<XPropertySet>(of, UNO_QUERY_THROW)
        ->getPropertyValue(rtl::OUString::createFromAscii(property)) >>= number;
    return number;
}
Reference<css::uno::XInterface> columnOf(const Reference<css::sheet::XSpreadsheet>& sheet, sal_Int32 column) {
    return {Reference<css::table::XColumnRowRange>(sheet, UNO_QUERY_THROW)->getColumns()->getByIndex(column),
            UNO_QUERY_THROW};
}

// Beside the form that says who sends the papers.
void keep(const Document& document, const Reference<XShape>& shape) {
    const Reference<XGraphic> graphic = graphicOf(shape);
    shape->setSize(fitted(graphic, mostWide, 1000));
    const std::optional<Area> form = namedArea(document, formRangeName("Sender"));
    if (!form) return;
    css::awt::Point corner;
    Reference<XPropertySet>(form->sheet->getCellByPosition(behindFields, form->at.StartRow), UNO_QUERY_THROW)
        ->getPropertyValue("Position") >>= corner;
    shape->setPosition(corner);
}

void letterhead(const Document& document, const Reference<css::sheet::XSpreadsheet>& sheet,
                const Reference<XGraphic>& graphic) {
    const auto areas = Reference<css::sheet::XPrintAreas>(sheet, UNO_QUERY_THROW)->getPrintAreas();
    if (areas.getLength() == 0) return;
    sal_Int32 right = 0;
    for (sal_Int32 column = 0; column <= areas[0].EndColumn; ++column)
        if (isVisible(columnOf(sheet, column))) right += numberOf(columnOf(sheet, column), "Width");
    right = std::min(right, paperWide);
    const css::awt::Size size = fitted(graphic, mostWide, mostHigh);
    const Reference<css::uno::XInterface> row(
        Reference<css::table::XColumnRowRange>(sheet, UNO_QUERY_THROW)->getRows()->getByIndex(0),
        UNO_QUERY_THROW);
    Reference<XPropertySet>(row, UNO_QUERY_THROW)
        ->setPropertyValue("Height", Any(std::max(numberOf(row, "Height"), size.Height + 100)));
    const Reference<XShape> shape = put(document, sheet);
    Reference<XPropertySet>(shape, UNO_QUERY_THROW)->setPropertyValue("Graphic", Any(graphic));
    shape->setSize(size);
    shape->setPosition({right - size.Width, 50});
}

}  // namespace

std::optional<fs::path> logoFile(const fs::path& notes) {
    for (const char* file : {"logo.png", "logo.jpg", "logo.jpeg", "logo.gif", "logo.svg"})
        if (fs::is_regular_file(notes / file)) return notes / file;
    return std::nullopt;
}

void takeLogo(const Document& document, const fs::path& file) {
    const auto account = sheetNamed(document, keptOn);
    if (!account.is()) return;
    remove(document, account);
    const Reference<XShape> shape = put(document, account);
    Reference<XPropertySet>(shape, UNO_QUERY_THROW)->setPropertyValue("GraphicURL", Any(wide(fileUrl(file))));
    if (!graphicOf(shape).is()) {
        pageOf(document, account)->remove(shape);
        throw Refused(file.string() +
                      ": the office cannot read this picture; allowed are png, jpg, gif, svg");
    }
    keep(document, shape);
    letterheadLogos(document);
}

void takeLogo(const Document& document, const Document& from) {
    const Reference<XGraphic> graphic = logoOn(from);
    const auto account = sheetNamed(document, keptOn);
    if (!graphic.is() || !account.is()) return;
    remove(document, account);
    const Reference<XShape> shape = put(document, account);
    Reference<XPropertySet>(shape, UNO_QUERY_THROW)->setPropertyValue("Graphic", Any(graphic));
    keep(document, shape);
    letterheadLogos(document);
}

void takeStoredLogo(const Document& document, const fs::path& workbook) {
    const std::optional<std::string> content = unpacked(workbook, "content.xml");
    if (!content) return;
    const std::size_t from = content->find(std::string("<table:table table:name=\"") + keptOn + "\"");
    if (from == std::string::npos) return;
    const std::size_t to = content->find("</table:table>", from),
                      picture = content->find("<draw:image", from);
    const std::string link = "xlink:href=\"";
    const std::size_t at = content->find(link + "Pictures/", picture);
    if (picture >= to || at >= to) return;
    const std::size_t begins = at + link.size();
    const std::string inside = content->substr(begins, content->find('"', begins) - begins);
    const std::optional<std::string> bytes = unpacked(workbook, inside);
    if (!bytes) return;
    const fs::path file =
        fs::temp_directory_path() / ("trenchbook-" + std::to_string(std::hash<std::string>{}(*bytes)) +
                                     fs::path(inside).extension().string());
    std::ofstream(file, std::ios::binary) << *bytes;
    try {
        takeLogo(document, file);
    } catch (const Refused&) {  // a picture that the office wrote and cannot read: the new lot does without
    }
    std::error_code ignored;
    fs::remove(file, ignored);
}

void letterheadLogos(const Document& document) {
    const Reference<XGraphic> graphic = logoOn(document);
    for (const char* paper : {"Proposal", "Cancellation", "Invoice", "Care", "Purchase order"}) {
        const auto sheet = sheetNamed(document, paper);
        if (!sheet.is()) continue;
        remove(document, sheet);
        if (graphic.is()) letterhead(document, sheet, graphic);
    }
}

}  // namespace trenchbook::sheets
