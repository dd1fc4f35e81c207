#include "jobbook/paper.h"

#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/container/XIndexAccess.hpp>
#include <com/sun/star/frame/XStorable.hpp>
#include <com/sun/star/sheet/XPrintAreas.hpp>
#include <com/sun/star/table/XColumnRowRange.hpp>
#include <com/sun/star/text/XTextRange.hpp>
#include <set>

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
};
const PaperFile papers[] = {{"proposal.pdf", "Proposal"},
                            {"crew-en.pdf", "Crew"},
                            {"crew-es.pdf", "Crew", {}, "es"},
                            {"crew-es.pdf", "Crew es"},
                            {"order.pdf", "Order", {"Takeoff now", "Check"}},
                            {"invoice.pdf", "Invoice"},
                            {"care.pdf", "Care"}};

void exportPdf(const Document& document, const Reference<css::uno::XInterface>& selection,
               const fs::path& target) {
    // Cell notes are for typing; on paper they would be marks without words.
    std::vector<css::beans::PropertyValue> filter = {property("ExportBookmarks", Any(false)),
                                                     property("ExportNotes", Any(false))};
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

// The cell that says in which language the papers speak; a workbook without it has a sheet for each language.
class PaperLanguage {
  public:
    explicit PaperLanguage(const Document& document)
        : document_(document), cell_(namedArea(document, "paper_language")) {
        if (!cell_) return;
        before_ = now_ = namedText(document, "paper_language");
        showChoice(false);
    }
    ~PaperLanguage() {
        speak(before_);
        if (cell_) showChoice(true);
    }
    PaperLanguage(const PaperLanguage&) = delete;
    PaperLanguage& operator=(const PaperLanguage&) = delete;

    bool canSpeak(const std::string& language) const { return cell_ || language == "en"; }
    void speak(const std::string& language) {
        if (!cell_ || language == now_) return;
        Reference<css::text::XTextRange>(
            cell_->sheet->getCellByPosition(cell_->at.StartColumn, cell_->at.StartRow), UNO_QUERY_THROW)
            ->setString(wide(language));
        now_ = language;
        calculate(document_);
        fitRows(document_);
        fitProse(document_, ProseHeight::Exact);
        hideBlankRows(document_);  // with a new height a row shows again
    }

  private:
    // Whoever reads the paper has no choice any more.
    void showChoice(bool shown) {
        const Reference<css::table::XColumnRowRange> row(
            cell_->range(0, cell_->at.StartRow, 0, cell_->at.StartRow), UNO_QUERY_THROW);
        Reference<css::beans::XPropertySet>(row->getRows(), UNO_QUERY_THROW)
            ->setPropertyValue("IsVisible", Any(shown));
    }

    Document document_;
    std::optional<Area> cell_;
    std::string before_, now_;
};

// A hidden sheet with a print area would be printed with the whole workbook.
void leaveOutHidden(const Document& document) {
    for (const rtl::OUString& name : document->getSheets()->getElementNames()) {
        const Reference<css::sheet::XPrintAreas> sheet(document->getSheets()->getByName(name),
                                                       UNO_QUERY_THROW);
        if (!isVisible(sheet)) sheet->setPrintAreas({});
    }
}

}  // namespace

std::vector<fs::path> writePapers(const Document& document, const fs::path& folder,
                                  std::optional<Paper> size) {
    fs::create_directories(folder);
    if (size) setPaper(document, *size);
    wrapVerdicts(document);
    fitRows(document);
    fitProse(document, ProseHeight::Exact);
    trimPrintAreas(document);
    hideBlankRows(document);
    std::vector<fs::path> written;
    const auto sheets = document->getSheets();
    PaperLanguage language(document);
    for (const auto& [file, sheet, ours, spoken] : papers) {
        if (!sheets->hasByName(wide(sheet)) || !language.canSpeak(spoken)) continue;
        if (!written.empty() && written.back() == folder / file) continue;  // the other way to it
        language.speak(spoken);
        written.push_back(folder / file);
        showColumns(document, sheet, ours, false);
        exportPdf(document, Reference<css::uno::XInterface>(sheets->getByName(wide(sheet)), UNO_QUERY_THROW),
                  written.back());
        showColumns(document, sheet, ours, true);
    }
    language.speak("en");
    leaveOutHidden(document);
    written.push_back(folder / "whole.pdf");
    exportPdf(document, {}, written.back());
    return written;
}

}  // namespace trenchbook::sheets
