#include "jobbook/folder.h"

#include <algorithm>
#include <cmath>
#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/container/XIndexAccess.hpp>
#include <com/sun/star/container/XNameAccess.hpp>
#include <com/sun/star/sheet/XCellRangeAddressable.hpp>
#include <com/sun/star/sheet/XPrintAreas.hpp>
#include <com/sun/star/style/XStyleFamiliesSupplier.hpp>
#include <com/sun/star/table/XColumnRowRange.hpp>
#include <com/sun/star/text/XTextRange.hpp>
#include <com/sun/star/util/XMergeable.hpp>
#include <com/sun/star/view/XRenderable.hpp>
#include <sstream>

#include "jobbook/held.h"
#include "jobbook/pages.h"
#include "jobbook/value_text.h"
#include "kit/look.h"
#include "trenchbook/core/text.h"

namespace trenchbook::sheets {
namespace {

using css::beans::XPropertySet;
using css::container::XIndexAccess;
using css::uno::Any;

struct Chapter {
    const char* sheet;
    Text says{};             // on the cover
    const char* needs = "";  // table or field without which this job has no such chapter
    const char* last = "";   // form or table that ends it, where the sheet goes on
    const char* first = "";  // form that begins it, where the sheet begins with help for typing
    // Of its widest table those that are read on paper, and how wide they are there, in mm; all as they are where none are
    // named.
    std::vector<std::pair<const char*, double>> columns{};
    bool upright = false;
    std::vector<double>
        widths{};            // of its columns on paper, where its forms are what is read; no others are shown
    const char* table = "";  // the widest one, where it is not the sheet's own
};
const std::vector<Chapter>& chapters() {
    static const std::vector<Chapter> all = {
        {.sheet = "Proposal",
         .says = {"What the owner was offered, and for how much.",
                  "Lo que se ofreció al propietario, y por cuánto."}},
        {.sheet = "Drawing",
         .says = {"The lot from above, true to scale.", "El lote visto desde arriba, a escala."},
         .needs = "Layout"},
        {.sheet = "Profile",
         .says = {"Each line from the side: ground, pipe, water, crossings.",
                  "Cada línea de lado: terreno, tubo, agua, cruces."},
         .needs = "Runs"},
        {.sheet = "Job",
         .says = {"What was asked: rain, soil, outlet, tickets; the job in numbers.",
                  "Lo que se preguntó: lluvia, suelo, salida, avisos; la obra en números."},
         .last = "Verdict",
         .first = "Job",
         .upright = true,
         .widths = {48, 74, 18, 46}},
        {.sheet = "Levels",
         .says = {"Rod readings and the levels that they give.", "Lecturas de mira y los niveles que dan."},
         .needs = "Levels",
         .columns = {{"Check", 62},
                     {"Point", 34},
                     {"Known level", 20},
                     {"Backsight", 20},
                     {"Rod", 20},
                     {"Note", 48},
                     {"Height of instrument", 24},
                     {"Level", 22},
                     {"Closing error", 21}}},
        {.sheet = "Runs",
         .says = {"Every pipe: levels, cover, cut, flow, and what was judged.",
                  "Cada tubo: niveles, tapada, corte, caudal y lo que se revisó."},
         .needs = "Runs",
         .columns = {{"Check", 96},
                     {"Line", 16},
                     {"From", 12},
                     {"To", 12},
                     {"Length", 15},
                     {"Pipe", 20},
                     {"Slope %", 14},
                     {"Invert up", 15},
                     {"Invert down", 15},
                     {"Cover up", 13},
                     {"Cover down", 13},
                     {"Cut up", 13},
                     {"Cut down", 13},
                     {"Flow", 14}}},
        {.sheet = "Pit",
         .says = {"What the pit holds and takes, and a storm through it.",
                  "Lo que el pozo guarda e infiltra, y una tormenta que pasa por él."},
         .needs = "pit_length",
         .last = "Pit storm",
         .upright = true,
         .widths = {46, 48, 22, 22, 22, 22}},
        {.sheet = "Pit drawing",
         .says = {"The pit cut open, and the storm through it.",
                  "El pozo cortado, y la tormenta que pasa por él."},
         .needs = "pit_length"},
        {.sheet = "Takeoff",
         .says = {"What is bought, with where each number comes from.",
                  "Lo que se compra, y de dónde sale cada número."},
         .needs = "Takeoff",
         .last = "Additions",
         .columns = {{"Code", 46},
                     {"Item", 62},
                     {"Check", 38},
                     {"Net", 16},
                     {"Unit", 14},
                     {"Order", 14},
                     {"Price", 18},
                     {"Amount", 20},
                     {"Where it comes from", 54}}},
        {.sheet = "Labor",
         .says = {"Hours by kind of work.", "Horas por clase de trabajo."},
         .needs = "Takeoff",
         .last = "Labor sums",
         .columns = {{"Work", 58},
                     {"Check", 26},
                     {"Quantity", 20},
                     {"Unit", 16},
                     {"Hours each", 20},
                     {"Soil factor", 16},
                     {"Access factor", 17},
                     {"Hours", 18}},
         .upright = true},
        {.sheet = "Quote",
         .says = {"From cost to price, what is earned and what may go wrong.",
                  "Del costo al precio, lo que se gana y lo que puede salir mal."},
         .needs = "Takeoff",
         .last = "Price",
         .upright = true,
         .widths = {66, 44, 26, 50}},
        {.sheet = "Purchase order",
         .says = {"The order as it was issued.", "El pedido como se envió."},
         .needs = "Order"},
        {.sheet = "Account",
         .says = {"Agreed price, changes, payments, what is due.",
                  "Precio acordado, cambios, pagos, lo que se debe."},
         .needs = "Payments",
         .last = "Account sums",
         .columns =
             {{"What", 60}, {"Check", 36}, {"Date", 26}, {"Signed", 20}, {"Labor", 24}, {"Amount", 26}},
         .upright = true,
         .table = "Changes"},
        {.sheet = "Care",
         .says = {"The page that stays with the owner.", "La hoja que queda con el propietario."},
         .needs = "Runs"}};
    return all;
}

bool isThere(const Document& document, const std::vector<FoundPart>& parts, const std::string& name) {
    if (name.empty()) return true;
    const FoundPart* table = findPart(parts, name, false);
    return table != nullptr ? !rowsOf(*table).empty() : !namedText(document, name).empty();
}

Reference<css::sheet::XSpreadsheet> sheetNamed(const Document& document, const std::string& name) {
    return {document->getSheets()->getByName(wide(name)), UNO_QUERY_THROW};
}

std::string textAt(const Reference<css::sheet::XSpreadsheet>& sheet, sal_Int32 column, sal_Int32 row) {
    return narrow(Reference<css::text::XTextRange>(sheet->getCellByPosition(column, row), UNO_QUERY_THROW)
                      ->getString());
}

Reference<XPropertySet> pageStyle(const Document& document,
                                  const Reference<css::sheet::XSpreadsheet>& sheet) {
    rtl::OUString name;
    Reference<XPropertySet>(sheet, UNO_QUERY_THROW)->getPropertyValue("PageStyle") >>= name;
    return {Reference<css::container::XNameAccess>(
                Reference<css::style::XStyleFamiliesSupplier>(document, UNO_QUERY_THROW)
                    ->getStyleFamilies()
                    ->getByName("PageStyles"),
                UNO_QUERY_THROW)
                ->getByName(name),
            UNO_QUERY_THROW};
}
sal_Int32 numberOf(const Reference<XPropertySet>& set, const char* property) {
    sal_Int32 number = 0;
    set->getPropertyValue(rtl::OUString::createFromAscii(property)) >>= number;
    return number;
}

sal_Int32 numberOf(const Reference<css::sheet::XSpreadsheet>& sheet) {
    return Reference<css::sheet::XCellRangeAddressable>(sheet, UNO_QUERY_THROW)->getRangeAddress().Sheet;
}
bool isTrueSize(const Document& document, const Reference<css::sheet::XSpreadsheet>& sheet) {
    const Reference<XPropertySet> page = pageStyle(document, sheet);
    return numberOf(page, "ScaleToPagesX") == 0 && numberOf(page, "ScaleToPagesY") == 0;
}

// Rows or columns of the print area that are shown, in hundredths of a millimeter.
sal_Int32 shown(const Reference<XIndexAccess>& lines, const char* size) {
    sal_Int32 all = 0;
    for (sal_Int32 n = 0; n < lines->getCount(); ++n) {
        const Reference<XPropertySet> line(lines->getByIndex(n), UNO_QUERY_THROW);
        if (isVisible(line)) all += numberOf(line, size);
    }
    return all;
}

// The area ends with the chapter's last part and begins with its first.
void setArea(const Reference<css::sheet::XSpreadsheet>& sheet, const Chapter& chapter,
             const std::vector<FoundPart>& parts) {
    const Reference<css::sheet::XPrintAreas> printed(sheet, UNO_QUERY_THROW);
    auto areas = printed->getPrintAreas();
    if (areas.getLength() != 1) return;
    css::table::CellRangeAddress& area = areas.getArray()[0];
    const auto part = [&](const char* name) -> const FoundPart* {
        if (*name == 0) return nullptr;
        const FoundPart* form = findPart(parts, name, true);
        return form != nullptr ? form : findPart(parts, name, false);
    };
    if (const FoundPart* found = part(chapter.last)) area.EndRow = found->area.at.EndRow;
    if (const FoundPart* found = part(chapter.first)) area.StartRow = found->area.at.StartRow - 1;
    printed->setPrintAreas(areas);
}

void keepColumns(const FoundPart& table, const std::vector<std::pair<const char*, double>>& kept) {
    const Reference<css::table::XColumnRowRange> area(table.area.range(), UNO_QUERY_THROW);
    const std::vector<std::string> headings = headingsOf(table);
    for (std::size_t c = 0; c < headings.size(); ++c) {
        const Reference<XPropertySet> column(area->getColumns()->getByIndex(static_cast<sal_Int32>(c)),
                                             UNO_QUERY_THROW);
        const auto found =
            std::find_if(kept.begin(), kept.end(), [&](const auto& one) { return headings[c] == one.first; });
        if (found == kept.end())
            column->setPropertyValue("IsVisible", Any(false));
        else
            column->setPropertyValue("Width", Any(static_cast<sal_Int32>(found->second * 100)));
    }
    Reference<css::sheet::XPrintAreas>(table.area.sheet, UNO_QUERY_THROW)->setPrintTitleColumns(false);
}

void keepFirstColumns(const Reference<css::sheet::XSpreadsheet>& sheet, const std::vector<double>& widths) {
    const auto areas = Reference<css::sheet::XPrintAreas>(sheet, UNO_QUERY_THROW)->getPrintAreas();
    const Reference<css::table::XColumnRowRange> all(sheet, UNO_QUERY_THROW);
    for (sal_Int32 c = 0; areas.getLength() == 1 && c <= areas[0].EndColumn; ++c) {
        const Reference<XPropertySet> column(all->getColumns()->getByIndex(c), UNO_QUERY_THROW);
        if (const auto at = static_cast<std::size_t>(c); at < widths.size())
            column->setPropertyValue("Width", Any(static_cast<sal_Int32>(widths[at] * 100)));
        else
            column->setPropertyValue("IsVisible", Any(false));
    }
}

void hideRows(const Reference<css::sheet::XSpreadsheet>& sheet, sal_Int32 first, sal_Int32 last) {
    const Reference<css::table::XColumnRowRange> rows(sheet->getCellRangeByPosition(0, first, 0, last),
                                                      UNO_QUERY_THROW);
    Reference<XPropertySet>(rows->getRows(), UNO_QUERY_THROW)->setPropertyValue("IsVisible", Any(false));
}

// What helps whoever types: what the sheet is for, the notes beside fields. Fields in which nothing stands are left out with them, and tables
// without a row.
void leaveOutHelp(const std::vector<FoundPart>& parts, const Reference<css::sheet::XSpreadsheet>& sheet,
                  sal_Int32 number) {
    const auto hide = [&](sal_Int32 first, sal_Int32 last) { hideRows(sheet, first, last); };
    hide(1, 2);
    for (const FoundPart& part : parts) {
        const css::table::CellRangeAddress& at = part.area.at;
        if (at.Sheet != number) continue;
        if (!part.isForm()) {
            if (rowsOf(part).empty()) hide(at.StartRow, at.EndRow);
            continue;
        }
        for (sal_Int32 row = at.StartRow; row <= at.EndRow; ++row) {
            if (textAt(sheet, 1, row).empty()) hide(row, row);
            Reference<css::text::XTextRange>(sheet->getCellByPosition(3, row), UNO_QUERY_THROW)
                ->setString({});
        }
    }
}

// Letters of 8 points would be too small on a page that is made a little smaller.
void enlargeUnits(const Document& document) {
    const HeightsKept kept(document);
    const Reference<css::container::XNameAccess> styles(
        Reference<css::style::XStyleFamiliesSupplier>(document, UNO_QUERY_THROW)
            ->getStyleFamilies()
            ->getByName("CellStyles"),
        UNO_QUERY_THROW);
    for (const char* small : {style::unit, style::fieldNote})
        if (styles->hasByName(wide(small)))
            Reference<XPropertySet>(styles->getByName(wide(small)), UNO_QUERY_THROW)
                ->setPropertyValue("CharHeight", Any(9.0f));
}

void turn(const Document& document, const Reference<css::sheet::XSpreadsheet>& sheet, bool upright) {
    const Reference<XPropertySet> page = pageStyle(document, sheet);
    const sal_Int32 width = numberOf(page, "Width"), height = numberOf(page, "Height");
    if ((width < height) == upright) return;
    page->setPropertyValue("IsLandscape", Any(!upright));
    page->setPropertyValue("Width", Any(height));
    page->setPropertyValue("Height", Any(width));
}

// One page wide, and never so small that its letters of 9 points go under 8. A last page that would be nearly empty goes
// onto those before it where that is enough, else it takes half of what is on the one before it.
void fitPages(const Document& document, const Reference<css::sheet::XSpreadsheet>& sheet) {
    constexpr int least = 89;  // percent
    const Reference<XPropertySet> page = pageStyle(document, sheet);
    const auto areas = Reference<css::sheet::XPrintAreas>(sheet, UNO_QUERY_THROW)->getPrintAreas();
    if (areas.getLength() != 1) return;
    const css::table::CellRangeAddress& at = areas[0];
    const Reference<css::table::XColumnRowRange> area(
        sheet->getCellRangeByPosition(at.StartColumn, at.StartRow, at.EndColumn, at.EndRow), UNO_QUERY_THROW);
    Reference<XPropertySet>(area->getRows(), UNO_QUERY_THROW)
        ->setPropertyValue("IsStartOfNewPage", Any(false));
    const double width = shown({area->getColumns(), UNO_QUERY_THROW}, "Width"),
                 height = shown({area->getRows(), UNO_QUERY_THROW}, "Height");
    const double across =
        numberOf(page, "Width") - numberOf(page, "LeftMargin") - numberOf(page, "RightMargin");
    const double down = numberOf(page, "Height") - numberOf(page, "TopMargin") -
                        numberOf(page, "BottomMargin") - numberOf(page, "HeaderHeight") -
                        numberOf(page, "FooterHeight");
    int percent = std::min(100, static_cast<int>(100 * across / width));
    const double pages = height * percent / 100 / down, whole = std::floor(pages);
    // Rows do not break where a page ends: some of each is lost.
    if (const int smaller = static_cast<int>(percent * whole * 0.97 / pages); whole >= 1 && smaller >= least)
        percent = smaller;
    page->setPropertyValue("PageScale", Any(static_cast<sal_Int16>(percent)));
    evenLastPages(document, at.Sheet);
}

sal_Int32 pagesOf(const Document& document, const Reference<css::sheet::XSpreadsheet>& sheet) {
    return Reference<css::view::XRenderable>(document, UNO_QUERY_THROW)
        ->getRendererCount(Any(Reference<css::uno::XInterface>(sheet, UNO_QUERY_THROW)), {});
}

// The notes on Job, which stand in one line there: their row is hidden, the cover has room for them.
std::string takeNotes(const std::vector<FoundPart>& parts) {
    const FoundPart* job = findPart(parts, "Job", true);
    if (job == nullptr) return "";
    const css::table::CellRangeAddress& at = job->area.at;
    for (sal_Int32 row = at.StartRow; row <= at.EndRow; ++row) {
        if (textAt(job->area.sheet, at.StartColumn, row) != "Notes") continue;
        const Reference<css::table::XColumnRowRange> line(job->area.range(0, row, 0, row), UNO_QUERY_THROW);
        Reference<XPropertySet>(line->getRows(), UNO_QUERY_THROW)->setPropertyValue("IsVisible", Any(false));
        return textAt(job->area.sheet, at.EndColumn, row);
    }
    return "";
}

}  // namespace

// The cover, on a sheet of its own in front of all others.
class Folder::Cover {
  public:
    explicit Cover(const Document& document)
        : document_(document),
          language_(namedText(document, "language") == "es" ? Language::Spanish : Language::English) {
        document->getSheets()->insertNewByName(wide(name()), 0);
        sheet_ = sheetNamed(document, name());
        const Reference<css::table::XColumnRowRange> columns(sheet_, UNO_QUERY_THROW);
        sal_Int32 column = 0;
        for (const sal_Int32 width : {3600, 12600, 2200})
            Reference<XPropertySet>(columns->getColumns()->getByIndex(column++), UNO_QUERY_THROW)
                ->setPropertyValue("Width", Any(width));
    }

    void write(const std::vector<std::string>& sheets, const std::string& notes, Paper paper) {
        put(0,
            namedText(document_, "job_name").empty() ? say("A job without a name", "Una obra sin nombre")
                                                     : namedText(document_, "job_name"),
            style::title, 2);
        put(0, say("Job folder", "Carpeta de la obra"), style::purpose, 2);
        ++row_;
        fact(say("Site", "Sitio"), namedText(document_, "job_site"));
        fact(say("Owner", "Propietario"), namedText(document_, "owner"));
        fact(say("Quote date", "Fecha de la oferta"), shownText("quote_date"));
        fact(say("Outlet", "Salida"), namedText(document_, "outlet"));
        fact(say("Price", "Precio"), shownText("price_total"));
        fact(say("Computed with", "Calculado con"), namedText(document_, "engine_here"));
        fact(say("Notes", "Notas"), notes);
        heading(say("Where the job stands", "Cómo está la obra"));
        put(0, namedText(document_, "job_check"), verdictStyle(namedText(document_, "job_check")), 2);
        put(0,
            say("Rows judged: ", "Filas revisadas: ") + shownText("count_ok") + " OK, " +
                shownText("count_check") + " CHECK, " + shownText("count_no") + " NO. " +
                say("Not judged: ", "Sin juzgar: ") + shownText("count_open") + ".",
            style::prose, 2);
        if (const std::string ticket = namedText(document_, "ticket_state"); !ticket.empty())
            put(0, ticket, verdictStyle(ticket), 2);
        heading(say("What stands in this folder", "Lo que hay en esta carpeta"));
        first_ = row_;
        for (const std::string& sheet : sheets) {
            put(0, sheet, style::fieldLabel, 0);
            --row_;
            const auto chapter = std::find_if(chapters().begin(), chapters().end(),
                                              [&](const Chapter& one) { return sheet == one.sheet; });
            put(1, chapter->says.in(language_), style::prose, 1);
        }
        heading(say("Still missing", "Todavía falta"));
        const std::string missing = namedText(document_, "job_missing");
        put(0,
            missing.empty()
                ? say("Nothing: every question is answered.", "Nada: todas las preguntas tienen respuesta.")
                : missing,
            style::prose, 2);
        heading(say("Cautions for this job", "Advertencias para esta obra"));
        list(namedText(document_, "job_cautions"));
        makePageStyle(document_, "Folder", false, 1, paper);
        Reference<XPropertySet>(sheet_, UNO_QUERY_THROW)->setPropertyValue("PageStyle", Any(wide("Folder")));
        css::uno::Sequence<css::table::CellRangeAddress> area(1);
        area.getArray()[0] = {0, 0, 0, 2, row_ - 1};
        Reference<css::sheet::XPrintAreas>(sheet_, UNO_QUERY_THROW)->setPrintAreas(area);
        fitLines();
    }
    std::string name() const { return say("Folder", "Carpeta"); }
    const Reference<css::sheet::XSpreadsheet>& sheet() const { return sheet_; }
    // Behind each line of the contents, when all is as it will be printed.
    void number(const std::vector<std::string>& sheets) {
        sal_Int32 page = 1 + pagesOf(document_, sheet_);
        for (std::size_t s = 0; s < sheets.size(); ++s) {
            const sal_Int32 row = first_ + static_cast<sal_Int32>(s);
            Reference<css::text::XTextRange>(sheet_->getCellByPosition(2, row), UNO_QUERY_THROW)
                ->setString(wide(say("page ", "página ") + std::to_string(page)));
            style(2, row, 2, style::prose);
            page += pagesOf(document_, sheetNamed(document_, sheets[s]));
        }
    }

  private:
    std::string say(const char* english, const char* spanish) const {
        return language_ == Language::Spanish ? spanish : english;
    }
    std::string shownText(const char* name) const {
        const std::optional<Area> area = namedArea(document_, name);
        return area ? textAt(area->sheet, area->at.StartColumn, area->at.StartRow) : "";
    }
    static const char* verdictStyle(const std::string& verdict) {
        return verdict.starts_with("OK")                                       ? style::verdictOk
               : verdict.starts_with("CHECK") || verdict.starts_with("REVISE") ? style::verdictLook
                                                                               : style::verdictNo;
    }
    void style(sal_Int32 column, sal_Int32 row, sal_Int32 last, const char* name) {
        Reference<XPropertySet>(sheet_->getCellRangeByPosition(column, row, last, row), UNO_QUERY_THROW)
            ->setPropertyValue("CellStyle", Any(wide(name)));
    }
    void put(sal_Int32 column, const std::string& text, const char* look, sal_Int32 last) {
        Reference<css::text::XTextRange>(sheet_->getCellByPosition(column, row_), UNO_QUERY_THROW)
            ->setString(wide(text));
        style(column, row_, last, look);
        lines_.push_back({row_, text, column, last});
        ++row_;
    }
    // A row for each line, so that a page may end between them.
    void list(const std::string& text) {
        std::istringstream lines(text);
        for (std::string line; std::getline(lines, line);) put(0, line, style::prose, 2);
    }
    void heading(const std::string& text) {
        ++row_;
        put(0, text, style::section, 0);
    }
    void fact(const std::string& label, const std::string& text) {
        if (text.empty()) return;
        put(0, label, style::fieldLabel, 0);
        --row_;
        put(1, text, style::prose, 2);
    }
    // Merged cells are not measured by the office: each line stands for that in a column as wide as all of its cells.
    void fitLines() {
        const Reference<css::table::XColumnRowRange> all(sheet_, UNO_QUERY_THROW);
        const Reference<XPropertySet> measured(all->getColumns()->getByIndex(4), UNO_QUERY_THROW);
        for (const Line& line : lines_) {
            sal_Int32 width = 0;
            for (sal_Int32 c = line.column; c <= line.last; ++c)
                width += numberOf({all->getColumns()->getByIndex(c), UNO_QUERY_THROW}, "Width");
            if (line.last == line.column && line.column == 0) continue;
            if (line.last > line.column)
                Reference<css::util::XMergeable>(
                    sheet_->getCellRangeByPosition(line.column, line.row, line.last, line.row),
                    UNO_QUERY_THROW)
                    ->merge(true);
            measured->setPropertyValue("Width", Any(static_cast<sal_Int32>(width * 0.96)));
            const auto cell = sheet_->getCellByPosition(4, line.row);
            style(4, line.row, 4, style::prose);
            Reference<css::text::XTextRange>(cell, UNO_QUERY_THROW)->setString(wide(line.text));
            Reference<XPropertySet>(all->getRows()->getByIndex(line.row), UNO_QUERY_THROW)
                ->setPropertyValue("OptimalHeight", Any(true));
            const sal_Int32 height =
                numberOf({all->getRows()->getByIndex(line.row), UNO_QUERY_THROW}, "Height");
            Reference<css::text::XTextRange>(cell, UNO_QUERY_THROW)->setString({});
            Reference<XPropertySet>(all->getRows()->getByIndex(line.row), UNO_QUERY_THROW)
                ->setPropertyValue("Height", Any(std::max<sal_Int32>(height, line.row == 0 ? 850 : 0)));
        }
    }

    struct Line {
        sal_Int32 row;
        std::string text;
        sal_Int32 column, last;
    };
    Document document_;
    Language language_;
    Reference<css::sheet::XSpreadsheet> sheet_;
    std::vector<Line> lines_;
    sal_Int32 row_ = 0, first_ = 0;
};

std::vector<std::string> folderSheets(const Document& document) {
    const std::vector<FoundPart> parts = partsOf(document);
    std::vector<std::string> sheets;
    for (const Chapter& chapter : chapters())
        if (document->getSheets()->hasByName(wide(chapter.sheet)) &&
            isVisible(sheetNamed(document, chapter.sheet)) && isThere(document, parts, chapter.needs))
            sheets.emplace_back(chapter.sheet);
    return sheets;
}

Folder::Folder(const Document& document) : document_(document), sheets_(folderSheets(document)) {
    if (sheets_.empty()) {  // no job: all that it has
        for (const rtl::OUString& name : document->getSheets()->getElementNames())
            sheets_.push_back(narrow(name));
        return;
    }
    cover_ = std::make_unique<Cover>(document);
    sal_Int16 place = 1;
    const auto next = [&](const std::string& sheet) {
        if (document->getSheets()->hasByName(wide(sheet)))
            document->getSheets()->moveByName(wide(sheet), place++);
    };
    for (const char* sheet : {"Crew", "Cut list", "Record"}) next(sheet);
    const auto isHere = [&](const char* sheet) {
        return std::find(sheets_.begin(), sheets_.end(), sheet) != sheets_.end();
    };
    careInFront_ = isHere("Care") && isHere("Drawing");
    for (const std::string& sheet : sheets_) {
        if (careInFront_ && sheet == "Drawing") next("Care");
        if (!careInFront_ || sheet != "Care") next(sheet);
    }
    next("Cancellation");
    sheets_.insert(sheets_.begin(), cover_->name());
    calculate(document);  // what names refer to has moved
    parts_ = partsOf(document);
}
Folder::~Folder() = default;

void Folder::trim(const std::string& sheet) {
    const auto chapter = std::find_if(chapters().begin(), chapters().end(),
                                      [&](const Chapter& one) { return sheet == one.sheet; });
    if (chapter == chapters().end() || std::find(sheets_.begin(), sheets_.end(), sheet) == sheets_.end())
        return;
    const auto found = sheetNamed(document_, sheet);
    setArea(found, *chapter, parts_);
    if (isTrueSize(document_, found)) return;
    if (const FoundPart* table = findPart(parts_, *chapter->table != 0 ? chapter->table : sheet, false);
        table != nullptr && !chapter->columns.empty())
        keepColumns(*table, chapter->columns);
    if (!chapter->widths.empty()) keepFirstColumns(found, chapter->widths);
    turn(document_, found, chapter->upright);
}

void Folder::finish() {
    if (!cover_) return;
    const std::vector<std::string> chaptersHere(sheets_.begin() + 1, sheets_.end());
    if (careInFront_) {  // behind the last of the other chapters
        const auto names = document_->getSheets()->getElementNames();
        sal_Int16 behind = 0;
        for (sal_Int32 n = 0; n < names.getLength(); ++n)
            if (const std::string name = narrow(names[n]);
                name != "Care" &&
                std::find(chaptersHere.begin(), chaptersHere.end(), name) != chaptersHere.end())
                behind = static_cast<sal_Int16>(n + 1);
        document_->getSheets()->moveByName("Care", behind);
        careInFront_ = false;
        calculate(document_);
        parts_ = partsOf(document_);
    }
    for (const std::string& sheet : chaptersHere) trim(sheet);
    enlargeUnits(document_);
    std::vector<Reference<css::sheet::XSpreadsheet>> scaled;
    for (const std::string& name : chaptersHere) {
        const auto sheet = sheetNamed(document_, name);
        if (name == "Purchase order") scaled.push_back(sheet);  // here it may be a little smaller
        if (isTrueSize(document_, sheet)) continue;
        const sal_Int32 number = numberOf(sheet);
        fitRows(document_, number);  // its columns have other widths now
        hideBlankRows(document_, number);
        leaveOutHelp(parts_, sheet, number);
        scaled.push_back(sheet);
    }
    fitForms(document_);
    for (const auto& sheet : scaled) fitPages(document_, sheet);
    const Reference<XPropertySet> page = pageStyle(document_, sheetNamed(document_, chaptersHere.front()));
    // The nearer one: the office keeps sizes to some hundredths.
    const double side = std::min(numberOf(page, "Width"), numberOf(page, "Height"));
    const auto off = [&](Paper paper) { return std::abs(side - paperSize(paper, false).width); };
    cover_->write(chaptersHere, takeNotes(parts_),
                  off(Paper::A4) < off(Paper::Letter) ? Paper::A4 : Paper::Letter);
    fitPages(document_, cover_->sheet());
    cover_->number(chaptersHere);
}

}  // namespace trenchbook::sheets
