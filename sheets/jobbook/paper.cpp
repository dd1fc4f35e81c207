#include "jobbook/paper.h"

#include <algorithm>
#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/container/XIndexAccess.hpp>
#include <com/sun/star/container/XNameAccess.hpp>
#include <com/sun/star/frame/XStorable.hpp>
#include <com/sun/star/sheet/XPrintAreas.hpp>
#include <com/sun/star/style/XStyleFamiliesSupplier.hpp>
#include <com/sun/star/table/XColumnRowRange.hpp>
#include <com/sun/star/text/XTextRange.hpp>
#include <set>

#include "jobbook/folder.h"
#include "jobbook/held.h"
#include "jobbook/pages.h"

namespace trenchbook::sheets {
namespace {

namespace fs = std::filesystem;
using css::uno::Any;

struct PaperFile {
    const char* file;
    const char* sheet;
    std::set<std::string> ours{};  // headings of columns that its reader has no use for
    const char* language = "en";   // where the workbook has a cell for it
    const char* needs = "";        // table without whose rows there is no such paper
};
const PaperFile papers[] = {{"proposal.pdf", "Proposal"}, {"drawing.pdf", "Drawing", {}, "en", "Layout"},
                            {"crew-en.pdf", "Crew"},      {"crew-es.pdf", "Crew", {}, "es"},
                            {"crew-es.pdf", "Crew es"},   {"order.pdf", "Order", {"Takeoff now", "Check"}},
                            {"invoice.pdf", "Invoice"},   {"care.pdf", "Care"}};

void exportPdf(const Document& document, const Reference<css::uno::XInterface>& selection,
               const fs::path& target) {
    // Cell notes are for typing; on paper they would be marks without words.
    std::vector<css::beans::PropertyValue> filter = {
        property("ExportBookmarks", Any(false)), property("ExportNotes", Any(false)),
        property("UseTaggedPDF", Any(true)), property("DisplayPDFDocumentTitle", Any(true))};
    if (selection.is()) filter.push_back(property("Selection", Any(selection)));
    fs::path part = target;
    part.replace_filename("." + target.filename().string() + ".part");
    try {
        Reference<css::frame::XStorable>(document, UNO_QUERY_THROW)
            ->storeToURL(wide(fileUrl(part)),
                         properties({property("FilterName", Any(wide("calc_pdf_Export"))),
                                     property("FilterData", Any(properties(filter)))}));
    } catch (const css::uno::Exception& error) {
        std::error_code ignored;
        fs::remove(part, ignored);
        throw std::runtime_error("cannot write " + target.string() + ": " + narrow(error.Message));
    }
    fs::rename(part, target);
}

void showColumns(const Document& document, const std::string& table, const std::set<std::string>& headings,
                 bool shown) {
    if (headings.empty()) return;
    const std::vector<FoundPart> parts = partsOf(document);
    const FoundPart* part = findPart(parts, table, false);
    if (part == nullptr) return;
    const Reference<css::table::XColumnRowRange> area(part->area.range(), UNO_QUERY_THROW);
    const std::vector<std::string> all = headingsOf(*part);
    for (std::size_t c = 0; c < all.size(); ++c)
        if (headings.count(all[c]))
            Reference<css::beans::XPropertySet>(area->getColumns()->getByIndex(static_cast<sal_Int32>(c)),
                                                UNO_QUERY_THROW)
                ->setPropertyValue("IsVisible", Any(shown));
}

// The cell that says in which language the crew's page speaks; a workbook without it has a sheet for each language.
class PaperLanguage {
  public:
    explicit PaperLanguage(const Document& document)
        : document_(document), cell_(namedArea(document, "paper_language")) {
        if (!cell_) return;
        now_ = namedText(document, "paper_language");
        // Whoever reads the paper has no choice any more.
        const Reference<css::table::XColumnRowRange> row(
            cell_->range(0, cell_->at.StartRow, 0, cell_->at.StartRow), UNO_QUERY_THROW);
        Reference<css::beans::XPropertySet>(row->getRows(), UNO_QUERY_THROW)
            ->setPropertyValue("IsVisible", Any(false));
    }

    bool canSpeak(const std::string& language) const { return cell_ || language == "en"; }
    // Its own sheet alone reads the cell and follows it.
    void speak(const std::string& language) {
        if (!cell_ || language == now_) return;
        Reference<css::text::XTextRange>(
            cell_->sheet->getCellByPosition(cell_->at.StartColumn, cell_->at.StartRow), UNO_QUERY_THROW)
            ->setString(wide(language));
        now_ = language;
        calculate(document_);
        fitRows(document_, cell_->at.Sheet);
        fitProse(document_, ProseHeight::Exact, cell_->at.Sheet);
        hideBlankRows(document_, cell_->at.Sheet);  // with a new height a row shows again
    }

  private:
    Document document_;
    std::optional<Area> cell_;
    std::string now_;
};

bool hasRows(const std::vector<FoundPart>& parts, const char* table) {
    const FoundPart* found = findPart(parts, table, false);
    return found != nullptr && !rowsOf(*found).empty();
}

bool isPaper(const std::string& sheet) {
    return std::any_of(std::begin(papers), std::end(papers),
                       [&](const PaperFile& paper) { return sheet == paper.sheet; });
}

// Sheets without a print area are not printed with the whole workbook, and nothing of them is fitted; hidden ones that
// have one would be.
class LeftOut {
  public:
    LeftOut(const Document& document, const std::function<bool(const std::string&)>& isLeftOut) {
        for (const rtl::OUString& name : document->getSheets()->getElementNames()) {
            const Reference<css::sheet::XPrintAreas> sheet(document->getSheets()->getByName(name),
                                                           UNO_QUERY_THROW);
            if (isVisible(sheet) && !isLeftOut(narrow(name))) continue;
            before_.emplace_back(sheet, sheet->getPrintAreas());
            sheet->setPrintAreas({});
        }
    }
    ~LeftOut() {
        for (const auto& [sheet, areas] : before_) sheet->setPrintAreas(areas);
    }
    LeftOut(const LeftOut&) = delete;
    LeftOut& operator=(const LeftOut&) = delete;

  private:
    std::vector<
        std::pair<Reference<css::sheet::XPrintAreas>, css::uno::Sequence<css::table::CellRangeAddress>>>
        before_;
};

// Whoever reads a paper types nothing into it: while this lives, the cells of inputs look like worked-out ones.
class WithoutInputs {
  public:
    explicit WithoutInputs(const Document& document) : document_(document) {
        const Reference<css::container::XNameAccess> styles(
            Reference<css::style::XStyleFamiliesSupplier>(document, UNO_QUERY_THROW)
                ->getStyleFamilies()
                ->getByName("CellStyles"),
            UNO_QUERY_THROW);
        const auto named = [&](Kind kind) {
            return Reference<css::beans::XPropertySet>(styles->getByName(wide(styleName(kind))),
                                                       UNO_QUERY_THROW);
        };
        if (!styles->hasByName(wide(styleName(Kind::Computed)))) return;
        const HeightsKept kept(document_);
        const auto plain = named(Kind::Computed);
        for (const Kind kind : {Kind::Measured, Kind::Kept, Kind::Price, Kind::Permit}) {
            const auto style = named(kind);
            for (const char* look :
                 {"CellBackColor", "TopBorder", "BottomBorder", "LeftBorder", "RightBorder"}) {
                const rtl::OUString property = rtl::OUString::createFromAscii(look);
                before_.push_back({style, property, style->getPropertyValue(property)});
                style->setPropertyValue(property, plain->getPropertyValue(property));
            }
        }
    }
    ~WithoutInputs() {
        const HeightsKept kept(document_);
        for (const auto& [style, property, value] : before_) style->setPropertyValue(property, value);
    }
    WithoutInputs(const WithoutInputs&) = delete;
    WithoutInputs& operator=(const WithoutInputs&) = delete;

  private:
    struct Look {
        Reference<css::beans::XPropertySet> style;
        rtl::OUString property;
        Any value;
    };
    Document document_;
    std::vector<Look> before_;
};

}  // namespace

std::vector<fs::path> writePapers(const Document& document, const fs::path& folder, std::optional<Paper> size,
                                  const std::function<void(int, int)>& told) {
    // One of them the other way to a page, and the whole.
    const auto all = static_cast<int>(std::size(papers));
    int done = 0;
    const auto tell = [&] {
        if (told) told(std::min(++done, all), all);
    };
    fs::create_directories(folder);
    const CalculationHeld held(document);
    if (size) setPaper(document, *size);
    const std::vector<FoundPart> parts = partsOf(document);
    const std::vector<std::string> folderHas = folderSheets(document);
    const LeftOut unread(document, [&](const std::string& sheet) {
        return !isPaper(sheet) && std::find(folderHas.begin(), folderHas.end(), sheet) == folderHas.end();
    });
    wrapVerdicts(document);
    fitRows(document);
    fitProse(document, ProseHeight::Exact);
    trimPrintAreas(document);
    hideBlankRows(document);
    std::vector<fs::path> written;
    const auto sheets = document->getSheets();
    PaperLanguage language(document);
    // Each change of the language takes a while: all that is English first.
    for (const std::string now : {"en", "es"}) {
        if (!language.canSpeak(now)) continue;
        language.speak(now);
        for (const auto& [file, sheet, ours, spoken, needs] : papers) {
            if (spoken != now || !sheets->hasByName(wide(sheet))) continue;
            if (std::count(written.begin(), written.end(), folder / file)) continue;  // the other way to it
            if (*needs != 0 && !hasRows(parts, needs)) continue;
            written.push_back(folder / file);
            showColumns(document, sheet, ours, false);
            const WithoutInputs plain(document);
            exportPdf(document,
                      Reference<css::uno::XInterface>(sheets->getByName(wide(sheet)), UNO_QUERY_THROW),
                      written.back());
            showColumns(document, sheet, ours, true);
            tell();
        }
    }
    // Last, for it changes what sheets print.
    makeFolder(document);
    fitForms(document);
    const WithoutInputs plain(document);
    written.push_back(folder / "whole.pdf");
    exportPdf(document, {}, written.back());
    tell();
    return written;
}

}  // namespace trenchbook::sheets
