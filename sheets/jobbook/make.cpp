#include "jobbook/make.h"

#include <algorithm>
#include <com/sun/star/document/XDocumentPropertiesSupplier.hpp>
#include <com/sun/star/sheet/XFunctionAccess.hpp>
#include <com/sun/star/text/XTextRange.hpp>

#include "jobbook/again.h"
#include "jobbook/blocks.h"
#include "jobbook/carry_out.h"
#include "jobbook/fill.h"
#include "jobbook/held.h"
#include "jobbook/pages.h"
#include "jobbook/read_book.h"
#include "templates/job.h"
#include "trenchbook/core/version.h"

namespace trenchbook::sheets {
namespace {

// Tables whose ready rows other sheets count on; all others grow alone.
constexpr std::pair<const char*, int JobSize::*> growing[] = {
    {"Ground", &JobSize::ground},       {"Levels", &JobSize::levels},       {"Nodes", &JobSize::nodes},
    {"Water", &JobSize::water},         {"Rain", &JobSize::rain},           {"Runs", &JobSize::runs},
    {"Soak", &JobSize::soak},           {"Outlets", &JobSize::outlets},     {"Pump", &JobSize::pumps},
    {"Prices", &JobSize::prices},       {"Crossings", &JobSize::crossings}, {"Bills", &JobSize::bills},
    {"Additions", &JobSize::additions}, {"Order", &JobSize::orders},        {"Layout", &JobSize::points},
    {"Tapes", &JobSize::tapes},
};

bool fits(const TableNotes& notes) {
    return notes.rows.size() <= static_cast<std::size_t>(notes.table->rows);
}

// Whether the notes leave a quarter of the ready rows of what is measured on the lot to what comes up later.
bool leavesRoom(const TableNotes& notes) {
    const std::string& name = notes.table->name;
    const bool measured = name == "Levels" || name == "Nodes" || name == "Water" || name == "Runs";
    return !measured || 4 * notes.rows.size() <= 3 * static_cast<std::size_t>(notes.table->rows);
}

Workbook bigEnough(const SiteNotes& notes, JobSize size) {
    for (const TableNotes& table : notes.tables)
        for (const auto& [name, rows] : growing)
            if (table.table->name == name && !fits(table)) size.*rows = static_cast<int>(table.rows.size());
    Workbook workbook = jobWorkbook(size);
    for (const TableNotes& notesFor : notes.tables)
        for (Sheet& sheet : workbook.sheets)
            for (Part& part : sheet.parts)
                if (Table* table = std::get_if<Table>(&part);
                    table != nullptr && table->name == notesFor.table->name)
                    table->rows = std::max(table->rows, static_cast<int>(notesFor.rows.size()));
    return workbook;
}

Reference<css::document::XDocumentProperties> propertiesOf(const Document& document) {
    return Reference<css::document::XDocumentPropertiesSupplier>(document, UNO_QUERY_THROW)
        ->getDocumentProperties();
}

void stamp(const Document& document) {
    if (const std::optional<Area> made = namedArea(document, "engine_made"))
        Reference<css::text::XTextRange>(
            made->sheet->getCellByPosition(made->at.StartColumn, made->at.StartRow), UNO_QUERY_THROW)
            ->setString(wide(version()));
    nameDocument(document);
    forgetTemplate(document);
}

}  // namespace

Job::Job(const std::filesystem::path& folder)
    : Job([&](const Workbook& workbook) { return readNotes(folder, workbook); }, true) {}

Job::Job(const Book& old)
    : Job([&](const Workbook& workbook) { return carriedOver(old, workbook); }, false) {}

Job::Job(const std::function<SiteNotes(const Workbook&)>& read, bool mayStartLarge)
    : workbook_(jobWorkbook({})), notes_(read(workbook_)) {
    JobSize size;
    if (mayStartLarge && !std::all_of(notes_.tables.begin(), notes_.tables.end(), leavesRoom)) {
        startsFrom_ = "large-job";
        size = largeJob();
        workbook_ = jobWorkbook(size);
        notes_ = read(workbook_);
    }
    readyRowsDo_ = std::all_of(notes_.tables.begin(), notes_.tables.end(), fits);
    if (readyRowsDo_) return;
    workbook_ = bigEnough(notes_, size);
    notes_ = read(workbook_);
}

void Job::fill(const Document& document) const {
    const Unseen unseen(document);
    const CalculationHeld held(document);
    if (!readyRowsDo_) growJob(document, workbook_);
    sheets::fill(document, notes_);
    stamp(document);
    calculate(document);  // rows whose text wraps get their height whenever the workbook is opened
    fitProse(document, ProseHeight::AtLeast);
    fitLists(document);
    trimPrintAreas(document);
    arrangeSheets(document, SheetsShown::Needed);
}

void arrangeSheets(const Document& document, SheetsShown shown) {
    const Planned planned = showSheets(readBook(document, {{"Job"}, true, false, false}), shown);
    if (planned.steps.empty()) return;
    carryOut(document, planned.steps);
    calculate(document);
}

void nameDocument(const Document& document) {
    if (const std::string name = namedText(document, "job_name"); !name.empty())
        propertiesOf(document)->setTitle(wide(name));
}

void forgetTemplate(const Document& document) {
    const auto about = propertiesOf(document);
    about->setTemplateURL("");
    about->setTemplateName("");
}

void requireAddin(Office& office) {
    const Reference<css::sheet::XFunctionAccess> functions(
        office.service("com.sun.star.sheet.FunctionAccess"), UNO_QUERY_THROW);
    rtl::OUString answer;
    try {
        functions->callFunction("TRENCHBOOK.VERSION", {}) >>= answer;
    } catch (const css::uno::Exception&) {
        throw std::runtime_error("the office does not load the add-in");
    }
    if (narrow(answer) != version())
        throw std::runtime_error("the add-in's version is " + narrow(answer) + ", jobbook's " + version());
}

}  // namespace trenchbook::sheets
