#include "jobbook/paper.h"

#include <com/sun/star/frame/XStorable.hpp>
#include <com/sun/star/sheet/XPrintAreas.hpp>

#include "jobbook/pages.h"

namespace trenchbook::sheets {
namespace {

namespace fs = std::filesystem;
using css::uno::Any;

struct PaperFile {
    const char* file;
    const char* sheet;
};
constexpr PaperFile papers[] = {{"proposal.pdf", "Proposal"},
                                {"crew-en.pdf", "Crew"},
                                {"crew-es.pdf", "Crew es"},
                                {"order.pdf", "Order"},
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
    for (const auto& [file, sheet] : papers) {
        if (!sheets->hasByName(wide(sheet))) continue;
        written.push_back(folder / file);
        exportPdf(document, Reference<css::uno::XInterface>(sheets->getByName(wide(sheet)), UNO_QUERY_THROW),
                  written.back());
    }
    leaveOutHidden(document);
    written.push_back(folder / "whole.pdf");
    exportPdf(document, {}, written.back());
    return written;
}

}  // namespace trenchbook::sheets
