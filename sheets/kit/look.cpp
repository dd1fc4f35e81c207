#include "kit/look.h"

#include <com/sun/star/awt/FontUnderline.hpp>
#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/container/XNameContainer.hpp>
#include <com/sun/star/lang/XMultiServiceFactory.hpp>
#include <com/sun/star/sheet/XHeaderFooterContent.hpp>
#include <com/sun/star/style/XStyle.hpp>
#include <com/sun/star/style/XStyleFamiliesSupplier.hpp>
#include <com/sun/star/table/BorderLine2.hpp>
#include <com/sun/star/table/BorderLineStyle.hpp>
#include <com/sun/star/table/CellHoriJustify.hpp>
#include <com/sun/star/table/CellVertJustify2.hpp>
#include <com/sun/star/text/XText.hpp>
#include <com/sun/star/text/XTextContent.hpp>
#include <com/sun/star/text/XTextCursor.hpp>
#include <com/sun/star/util/CellProtection.hpp>

namespace trenchbook::sheets {
namespace {

using css::beans::XPropertySet;
using css::uno::Any;

constexpr const char* font = "Liberation Sans";

struct StyleSpec {
    const char* name;
    const char* parent;
    double size;  // points, 0 = the parent's
    bool bold;
    unsigned text;
    long fill;           // -1 = none
    short border;        // BorderLineStyle, -1 = none
    double borderWidth;  // points
    bool locked;
    bool wrap;
};

Reference<css::container::XNameContainer> family(const Reference<css::sheet::XSpreadsheetDocument>& document,
                                                 const char* name) {
    const Reference<css::style::XStyleFamiliesSupplier> supplier(document, UNO_QUERY_THROW);
    return Reference<css::container::XNameContainer>(
        supplier->getStyleFamilies()->getByName(rtl::OUString::createFromAscii(name)), UNO_QUERY_THROW);
}

Reference<XPropertySet> styleNamed(const Reference<css::sheet::XSpreadsheetDocument>& document,
                                   const char* familyName, const char* service, const std::string& name) {
    const auto styles = family(document, familyName);
    if (!styles->hasByName(wide(name))) {
        const Reference<css::lang::XMultiServiceFactory> factory(document, UNO_QUERY_THROW);
        styles->insertByName(wide(name),
                             Any(factory->createInstance(rtl::OUString::createFromAscii(service))));
    }
    return Reference<XPropertySet>(styles->getByName(wide(name)), UNO_QUERY_THROW);
}

void set(const Reference<XPropertySet>& target, const char* name, const Any& value) {
    target->setPropertyValue(rtl::OUString::createFromAscii(name), value);
}

void borders(const Reference<XPropertySet>& target, short lineStyle, double points, unsigned ink) {
    css::table::BorderLine2 line;
    line.LineStyle = lineStyle;
    line.LineWidth = static_cast<sal_uInt32>(points * 35.28);
    line.OuterLineWidth = static_cast<sal_Int16>(line.LineWidth);
    line.Color = static_cast<sal_Int32>(ink);
    for (const char* side : {"TopBorder", "BottomBorder", "LeftBorder", "RightBorder"})
        set(target, side, Any(line));
}

}  // namespace

void makeCellStyles(const Reference<css::sheet::XSpreadsheetDocument>& document) {
    namespace line = css::table::BorderLineStyle;
    using namespace colour;
    const Reference<XPropertySet> base =
        styleNamed(document, "CellStyles", "com.sun.star.style.CellStyle", "Default");
    set(base, "CharFontName", Any(wide(font)));
    set(base, "CharHeight", Any(9.0f));
    set(base, "CharColor", Any(static_cast<sal_Int32>(ink)));
    // Room between a number and the text beside it.
    for (const char* side : {"ParaLeftMargin", "ParaRightMargin"}) set(base, side, Any(sal_Int32(90)));
    set(base, "VertJustify", Any(static_cast<sal_Int32>(css::table::CellVertJustify2::CENTER)));

    const char* root = "Default";
    const StyleSpec specs[] = {
        {styleName(Kind::Measured), root, 0, false, ink, measured, line::SOLID, 1.0, false, false},
        {styleName(Kind::Kept), root, 0, false, ink, kept, line::DASHED, 0.75, false, false},
        {styleName(Kind::Price), root, 0, false, ink, price, line::DOTTED, 0.75, false, false},
        {styleName(Kind::Permit), root, 0, false, ink, permit, line::DOUBLE, 2.0, false, false},
        {styleName(Kind::Computed), root, 0, false, ink, -1, line::SOLID, 0.25, true, false},
        // One line: the office does not make a row higher when a formula's text grows, but lets it run over blank cells.
        {styleName(Kind::Verdict), root, 0, false, ink, -1, line::SOLID, 0.25, true, false},
        {styleName(Kind::Label), root, 0, false, ink, -1, line::SOLID, 0.25, true, true},
        {style::title, root, 15, true, clay, -1, -1, 0, true, false},
        {style::purpose, root, 9, false, 0x5A6268, -1, -1, 0, true, false},
        {style::section, root, 11, true, clay, -1, -1, 0, true, false},
        {style::heading, root, 9, true, 0xFFFFFF, ink, line::SOLID, 0.25, true, true},
        {style::unit, root, 8, false, 0x5A6268, sand, line::SOLID, 0.25, true, false},
        {style::edge, root, 6, false, ink, sand, -1, 0, true, false},
        {style::fieldLabel, root, 0, false, ink, -1, -1, 0, true, true},
        {style::fieldNote, root, 8, false, 0x5A6268, -1, -1, 0, true, true},
        {style::prose, root, 0, false, ink, -1, -1, 0, true, true},
        {style::large, root, 20, true, ink, -1, -1, 0, true, true},
        {style::notice, root, 10.5, true, 0x000000, -1, -1, 0, true, true},
        {style::link, root, 0, true, water, -1, -1, 0, true, true},
        {style::total, root, 0, true, ink, sand, line::SOLID, 0.75, true, false},
        {style::outdoorsText, root, 10.5, false, 0x000000, -1, -1, 0, true, true},
        {style::outdoors, styleName(Kind::Computed), 10, false, 0x000000, -1, line::SOLID, 0.5, true, false},
        {style::standsOut, style::outdoors, 14, true, 0x000000, -1, line::SOLID, 0.5, true, false},
        {style::boxed, root, 11, true, 0x000000, -1, line::SOLID, 2.0, true, true},
        {style::typedOver, styleName(Kind::Computed), 0, true, bad, -1, line::DASHED, 1.5, false, false},
        {style::verdictOk, styleName(Kind::Verdict), 0, false, good, -1, -1, 0, true, false},
        {style::verdictLook, styleName(Kind::Verdict), 0, true, look, -1, -1, 0, true, false},
        {style::verdictNo, styleName(Kind::Verdict), 0, true, bad, -1, -1, 0, true, false},
    };
    for (const StyleSpec& spec : specs) {
        const Reference<XPropertySet> made =
            styleNamed(document, "CellStyles", "com.sun.star.style.CellStyle", spec.name);
        Reference<css::style::XStyle>(made, UNO_QUERY_THROW)->setParentStyle(wide(spec.parent));
        if (spec.size > 0) set(made, "CharHeight", Any(static_cast<float>(spec.size)));
        if (spec.bold) set(made, "CharWeight", Any(150.0f));
        set(made, "CharColor", Any(static_cast<sal_Int32>(spec.text)));
        if (spec.fill >= 0) set(made, "CellBackColor", Any(static_cast<sal_Int32>(spec.fill)));
        if (spec.border >= 0)
            borders(made, spec.border, spec.borderWidth,
                    spec.text == 0x000000 ? 0x000000
                    : spec.locked         ? colour::line
                                          : colour::edge);
        if (spec.wrap) set(made, "IsTextWrapped", Any(true));
        css::util::CellProtection protection;
        protection.IsLocked = spec.locked;
        set(made, "CellProtection", Any(protection));
    }
    // The office counts pages on only while no sheet between asks for a number of its own, printed or not.
    set(styleNamed(document, "PageStyles", "com.sun.star.style.PageStyle", "Default"), "FirstPageNumber",
        Any(sal_Int16(0)));
    const auto styled = [&](const char* name) {
        return styleNamed(document, "CellStyles", "com.sun.star.style.CellStyle", name);
    };
    set(styled(style::prose), "VertJustify", Any(static_cast<sal_Int32>(css::table::CellVertJustify2::TOP)));
    set(styled(style::fieldNote), "ParaIndent", Any(sal_Int16(150)));
    set(styled(style::link), "VertJustify", Any(static_cast<sal_Int32>(css::table::CellVertJustify2::TOP)));
    set(styled(style::link), "CharUnderline", Any(css::awt::FontUnderline::SINGLE));
    set(styled(style::typedOver), "CharUnderline", Any(css::awt::FontUnderline::WAVE));
    for (const char* text : {style::outdoorsText, style::notice})
        set(styled(text), "VertJustify", Any(static_cast<sal_Int32>(css::table::CellVertJustify2::TOP)));
    for (const char* centred : {style::heading, style::unit})
        set(styled(centred), "HoriJustify", Any(css::table::CellHoriJustify_CENTER));
}

std::optional<Paper> paperNamed(const std::string& name) {
    if (name == "Letter") return Paper::Letter;
    if (name == "A4") return Paper::A4;
    return std::nullopt;
}

PaperSize paperSize(Paper paper, bool landscape) {
    const PaperSize upright = paper == Paper::Letter ? PaperSize{21590, 27940} : PaperSize{21000, 29700};
    return landscape ? PaperSize{upright.height, upright.width} : upright;
}

void makePageStyle(const Reference<css::sheet::XSpreadsheetDocument>& document, const std::string& name,
                   bool landscape, int pagesWide, Paper paper, bool trueSize, bool forOthers) {
    const Reference<XPropertySet> page =
        styleNamed(document, "PageStyles", "com.sun.star.style.PageStyle", name);
    const auto [width, height] = paperSize(paper, landscape);
    set(page, "IsLandscape", Any(landscape));
    set(page, "Width", Any(width));
    set(page, "Height", Any(height));
    for (const char* margin : {"LeftMargin", "RightMargin", "TopMargin", "BottomMargin"})
        set(page, margin, Any(sal_Int32(1200)));
    if (trueSize)
        set(page, "PageScale", Any(sal_Int16(100)));
    else
        set(page, "ScaleToPagesX", Any(static_cast<sal_Int16>(pagesWide)));
    set(page, "FirstPageNumber", Any(sal_Int16(0)));  // counts on through the workbook
    if (!trueSize) set(page, "ScaleToPagesY", Any(sal_Int16(0)));
    set(page, "PrintGrid", Any(false));
    set(page, "CenterHorizontally", Any(true));
    set(page, "HeaderIsOn", Any(true));
    set(page, "FooterIsOn", Any(true));

    const Reference<css::lang::XMultiServiceFactory> factory(document, UNO_QUERY_THROW);
    const auto append = [&](const Reference<css::text::XText>& text, const std::vector<const char*>& parts) {
        text->setString(rtl::OUString());
        for (const char* part : parts) {
            const Reference<css::text::XTextCursor> cursor = text->createTextCursor();
            cursor->gotoEnd(false);
            const Reference<css::text::XTextRange> end(cursor, UNO_QUERY_THROW);
            if (part[0] == '@') {
                const Reference<css::text::XTextContent> field(
                    factory->createInstance("com.sun.star.text.TextField." +
                                            rtl::OUString::createFromAscii(part + 1)),
                    UNO_QUERY_THROW);
                text->insertTextContent(end, field, false);
            } else {
                text->insertString(end, rtl::OUString::fromUtf8(part), false);
            }
        }
    };
    const auto content = [&](const char* which, const std::vector<const char*>& left,
                             const std::vector<const char*>& centre, const std::vector<const char*>& right) {
        Reference<css::sheet::XHeaderFooterContent> band(
            page->getPropertyValue(rtl::OUString::createFromAscii(which)), UNO_QUERY_THROW);
        append(band->getLeftText(), left);
        append(band->getCenterText(), centre);
        append(band->getRightText(), right);
        set(page, which, Any(band));
    };
    if (forOthers) {
        content("RightPageHeaderContent", {"@DocInfo.Title"}, {}, {});
        return content("RightPageFooterContent", {}, {}, {"@PageNumber", " / ", "@PageCount"});
    }
    content("RightPageHeaderContent", {"@DocInfo.Title"}, {}, {"@SheetName"});
    content("RightPageFooterContent",
            {"Local codes and licensed practice decide. Deciden el código local y la práctica con licencia."},
            {}, {"@PageNumber", " / ", "@PageCount"});
}

}  // namespace trenchbook::sheets
