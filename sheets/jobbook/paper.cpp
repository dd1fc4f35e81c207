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
    std::vector<const char*>
        sheets;  // in the order of the folder: the paper's own first, then what goes with it
    std::set<std::string> ours{};  // headings of columns that its reader has no use for
    const char* language = "";     // the job's where none is named
    const char* needs = "";        // table without whose rows there is no such paper
};
// The crew has all it needs in its language: on the back of its page the lot and the lines.
const std::vector<const char*> crewHas = {"Crew", "Cut list", "Record", "Drawing", "Profile"};
const PaperFile papers[] = {
    {"proposal.pdf", {"Proposal", "Drawing", "Cancellation"}},
    {"drawing.pdf", {"Drawing"}, {}, "", "Layout"},
    {"crew-en.pdf", crewHas, {}, "en"},
    {"crew-es.pdf", crewHas, {}, "es"},
    {"crew-es.pdf", {"Crew es"}, {}, "es"},
    {"record.pdf", {"Record"}},
    {"order.pdf", {"Order"}, {"Takeoff now", "Check", "Sort", "Supplier", "Tons a yard"}},
    {"invoice.pdf", {"Invoice"}},
    {"care.pdf", {"Care", "Drawing"}}};

// All that has a print area.
void exportPdf(const Document& document, const fs::path& target) {
    // Cell notes are for typing; on paper they would be marks without words.
    std::vector<css::beans::PropertyValue> filter = {
        property("ExportBookmarks", Any(false)), property("ExportNotes", Any(false)),
        property("UseTaggedPDF", Any(true)), property("DisplayPDFDocumentTitle", Any(true))};
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

// The cells that say in which language job and crew's page speak; a workbook without the second has a sheet for each
// language.
class PaperLanguage {
  public:
    explicit PaperLanguage(const Document& document)
        : document_(document),
          crew_(namedArea(document, "paper_language")),
          job_(namedArea(document, "language")) {
        own_ = namedText(document, "language") == "es" ? "es" : "en";
        if (!crew_) return;
        // Whoever reads the paper has no choice any more.
        const Reference<css::table::XColumnRowRange> row(
            crew_->range(0, crew_->at.StartRow, 0, crew_->at.StartRow), UNO_QUERY_THROW);
        Reference<css::beans::XPropertySet>(row->getRows(), UNO_QUERY_THROW)
            ->setPropertyValue("IsVisible", Any(false));
    }

    const std::string& own() const { return own_; }
    bool canSpeak(const std::string& language) const { return crew_ || language == "en"; }
    void speak(const std::string& language) {
        bool changed = false;
        for (const std::optional<Area>& cell : {job_, crew_}) {
            if (!cell) continue;
            const Reference<css::text::XTextRange> text(
                cell->sheet->getCellByPosition(cell->at.StartColumn, cell->at.StartRow), UNO_QUERY_THROW);
            if (narrow(text->getString()) == language) continue;
            text->setString(wide(language));
            changed = true;
        }
        if (!changed) return;
        calculate(document_);
        const css::uno::Sequence<rtl::OUString> sheets = document_->getSheets()->getElementNames();
        for (sal_Int32 sheet = 0; sheet < sheets.getLength(); ++sheet) {
            if (std::find(crewHas.begin(), crewHas.end(), narrow(sheets[sheet])) == crewHas.end()) continue;
            fitRows(document_, sheet);
            fitProse(document_, ProseHeight::Exact, sheet);
            hideBlankRows(document_, sheet);  // with a new height a row shows again
        }
    }

  private:
    Document document_;
    std::optional<Area> crew_, job_;
    std::string own_;
};

bool hasRows(const std::vector<FoundPart>& parts, const char* table) {
    const FoundPart* found = findPart(parts, table, false);
    return found != nullptr && !rowsOf(*found).empty();
}

bool isPaper(const std::string& sheet) {
    return std::any_of(std::begin(papers), std::end(papers), [&](const PaperFile& paper) {
        return std::find(paper.sheets.begin(), paper.sheets.end(), sheet) != paper.sheets.end();
    });
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

// The drawing with what was measured after the work, while this lives.
class AsBuiltShown {
  public:
    explicit AsBuiltShown(const Document& document) : document_(document) {
        const std::optional<Area> cell = namedArea(document, "drawing_shows");
        if (!cell) return;
        shows_.set(cell->sheet->getCellByPosition(cell->at.StartColumn, cell->at.StartRow), UNO_QUERY_THROW);
        before_ = shows_->getString();
        show("as built");
    }
    ~AsBuiltShown() {
        if (shows_.is()) show(before_);
    }
    AsBuiltShown(const AsBuiltShown&) = delete;
    AsBuiltShown& operator=(const AsBuiltShown&) = delete;

  private:
    void show(const rtl::OUString& what) {
        shows_->setString(what);
        calculate(document_);
    }
    Document document_;
    Reference<css::text::XTextRange> shows_;
    rtl::OUString before_;
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
    Folder jobFolder(document);
    const std::vector<FoundPart> parts = partsOf(document);
    const auto isIn = [](const auto& sheets, const std::string& sheet) {
        return std::find(sheets.begin(), sheets.end(), sheet) != sheets.end();
    };
    const LeftOut unread(document, [&](const std::string& sheet) {
        return !isPaper(sheet) && !isIn(jobFolder.sheets(), sheet);
    });
    wrapVerdicts(document);
    fitRows(document);
    fitProse(document, ProseHeight::Exact);
    trimPrintAreas(document);
    hideBlankRows(document);
    const std::vector<const char*> drawn = {"Drawing", "Profile"};
    for (const char* sheet : drawn) jobFolder.trim(sheet);
    std::vector<fs::path> written;
    const auto sheets = document->getSheets();
    PaperLanguage language(document);
    const auto write = [&](const std::string& file, const auto& which) {
        written.push_back(folder / file);
        const LeftOut others(document, [&](const std::string& sheet) { return !isIn(which, sheet); });
        const WithoutInputs plain(document);
        exportPdf(document, written.back());
        tell();
    };
    // A change of the language takes a while: all that is in the job's own first.
    const std::string own = language.own();
    for (const std::string& now : {own, std::string(own == "en" ? "es" : "en")}) {
        if (!language.canSpeak(now)) continue;
        language.speak(now);
        for (const auto& [file, which, ours, spoken, needs] : papers) {
            if ((*spoken == 0 ? own : spoken) != now || !sheets->hasByName(wide(which.front()))) continue;
            if (std::count(written.begin(), written.end(), folder / file)) continue;  // the other way to it
            if (*needs != 0 && !hasRows(parts, needs)) continue;
            std::vector<std::string> filled;
            for (const char* sheet : which)
                if ((!isIn(drawn, sheet) || isIn(jobFolder.sheets(), sheet)) &&
                    (sheet != std::string("Cancellation") || namedText(document, "home_sale") == "yes"))
                    filled.emplace_back(sheet);
            showColumns(document, which.front(), ours, false);
            write(file, filled);
            showColumns(document, which.front(), ours, true);
        }
        if (now != own) continue;
        if (hasRows(parts, "As built") && hasRows(parts, "Layout")) {
            const AsBuiltShown shown(document);
            write("as-built.pdf", std::vector<std::string>{"Drawing"});
        }
        jobFolder.finish();
        fitForms(document);
        write("whole.pdf", jobFolder.sheets());
    }
    return written;
}

}  // namespace trenchbook::sheets
