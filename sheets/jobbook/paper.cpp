#include "jobbook/paper.h"

#include <algorithm>
#include <cctype>
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
#include "jobbook/logo.h"
#include "jobbook/pages.h"
#include "jobbook/value_text.h"

namespace trenchbook::sheets {
namespace {

namespace fs = std::filesystem;
using css::uno::Any;

struct PaperFile {
    const char* file;
    std::vector<const char*>
        sheets;                 // in the order of the folder: the paper's own first, then what goes with it
    const char* language = "";  // the job's where none is named
    const char* needs = "";     // table without whose rows there is no such paper
};
// The crew has all it needs in its language: on the back of its page the lot and the lines.
const std::vector<const char*> crewHas = {"Crew", "Cut list", "Record", "Drawing", "Profile"};
const PaperFile papers[] = {{"proposal.pdf", {"Proposal", "Drawing", "Cancellation"}},
                            {"drawing.pdf", {"Drawing"}, "", "Layout"},
                            {"crew-en.pdf", crewHas, "en"},
                            {"crew-es.pdf", crewHas, "es"},
                            {"crew-es.pdf", {"Crew es"}, "es"},
                            {"record.pdf", {"Record"}},
                            {"invoice.pdf", {"Invoice"}},
                            {"care.pdf", {"Care", "Drawing"}}};
// Made for each supplier.
constexpr const char* orderSheet = "Purchase order";
// Lists that may be longer than a page.
const std::set<std::string> lists = {"Crew", "Cut list", orderSheet};

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

// What stands on the sheet has changed: its rows as high as they must be, and those without text away.
void refit(const Document& document, sal_Int32 sheet) {
    fitRows(document, sheet);
    fitProse(document, ProseHeight::Exact, sheet);
    hideBlankRows(document, sheet);  // with a new height a row shows again
    if (lists.count(narrow(document->getSheets()->getElementNames()[sheet]))) evenLastPages(document, sheet);
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
            refit(document_, sheet);
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
    return sheet == orderSheet ||
           std::any_of(std::begin(papers), std::end(papers), [&](const PaperFile& paper) {
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

// A typed cell says something else while this lives.
class Typed {
  public:
    Typed(const Document& document, const char* name, const std::string& text) : document_(document) {
        const std::optional<Area> cell = namedArea(document, name);
        if (!cell) return;
        cell_.set(cell->sheet->getCellByPosition(cell->at.StartColumn, cell->at.StartRow), UNO_QUERY_THROW);
        before_ = cell_->getString();
        type(wide(text));
    }
    ~Typed() {
        if (cell_.is()) type(before_);
    }
    Typed(const Typed&) = delete;
    Typed& operator=(const Typed&) = delete;

  private:
    void type(const rtl::OUString& text) {
        cell_->setString(text);
        calculate(document_);
    }
    Document document_;
    Reference<css::text::XTextRange> cell_;
    rtl::OUString before_;
};

// Who sells the lines of the order, in their order; a line that does not say is the order's own supplier's.
std::vector<std::string> suppliers(const Document& document, const std::vector<FoundPart>& parts) {
    std::vector<std::string> all;
    const FoundPart* order = findPart(parts, "Order", false);
    if (order == nullptr) return all;
    for (const Row& line : rowsOf(*order)) {
        if (line.text("Code").empty()) continue;
        const std::string own = line.text("Supplier");
        const std::string name = own.empty() ? namedText(document, "order_supplier") : own;
        if (std::find(all.begin(), all.end(), name) == all.end()) all.push_back(name);
    }
    return all;
}

// "order-2-millrace-supply.pdf"
std::string orderFile(std::size_t number, const std::string& supplier) {
    constexpr std::size_t most = 40;
    std::string name;
    for (const char c : supplier.substr(0, supplier.find('('))) {
        const auto letter = static_cast<unsigned char>(c);
        if (letter < 0x80 && std::isalnum(letter) == 0) {
            if (!name.empty() && name.back() != '-') name += '-';
        } else {
            name += static_cast<char>(letter < 0x80 ? std::tolower(letter) : c);
        }
        if (name.size() >= most) break;
    }
    while (!name.empty() && name.back() == '-') name.pop_back();
    return "order-" + std::to_string(number) + (name.empty() ? "" : "-" + name) + ".pdf";
}

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
    letterheadLogos(document);
    const css::uno::Sequence<rtl::OUString> names = document->getSheets()->getElementNames();
    for (sal_Int32 sheet = 0; sheet < names.getLength(); ++sheet)
        if (lists.count(narrow(names[sheet]))) evenLastPages(document, sheet);
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
    const auto orders = [&] {
        if (!sheets->hasByName(wide(orderSheet))) return;
        const std::vector<std::string> from = suppliers(document, parts);
        const std::vector<std::string> one = {orderSheet};
        if (from.size() < 2 || !namedText(document, "order_for").empty()) return write("order.pdf", one);
        for (std::size_t s = 0; s < from.size(); ++s) {
            const Typed named(document, "order_for", from[s]);
            for (sal_Int32 sheet = 0; sheet < names.getLength(); ++sheet)
                if (narrow(names[sheet]) == orderSheet) refit(document, sheet);
            write(orderFile(s + 1, from[s]), one);
        }
        for (sal_Int32 sheet = 0; sheet < names.getLength(); ++sheet)
            if (narrow(names[sheet]) == orderSheet) refit(document, sheet);
    };
    const bool laid = hasRows(parts, "As built") && hasRows(parts, "Layout");
    // A change of the language takes a while: all that is in the job's own first.
    const std::string own = language.own();
    for (const std::string& now : {own, std::string(own == "en" ? "es" : "en")}) {
        if (!language.canSpeak(now)) continue;
        language.speak(now);
        for (const auto& [file, which, spoken, needs] : papers) {
            if ((*spoken == 0 ? own : spoken) != now || !sheets->hasByName(wide(which.front()))) continue;
            if (std::count(written.begin(), written.end(), folder / file)) continue;  // the other way to it
            if (*needs != 0 && !hasRows(parts, needs)) continue;
            std::vector<std::string> filled;
            for (const char* sheet : which)
                if ((!isIn(drawn, sheet) || isIn(jobFolder.sheets(), sheet)) &&
                    (sheet != std::string("Cancellation") || namedText(document, "home_sale") == "yes"))
                    filled.emplace_back(sheet);
            if (laid && file == std::string("care.pdf")) continue;
            write(file, filled);
        }
        if (now != own) continue;
        if (laid) {  // what was measured is for the owner and for whoever digs next
            const Typed shown(document, "drawing_shows", "as built");
            write("care.pdf", std::vector<std::string>{"Care", "Drawing"});
            write("as-built.pdf", std::vector<std::string>{"Drawing"});
        }
        orders();
        jobFolder.finish();
        write("whole.pdf", jobFolder.sheets());
    }
    return written;
}

}  // namespace trenchbook::sheets
