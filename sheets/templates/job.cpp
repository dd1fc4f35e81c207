#include "templates/job.h"

#include "buying/money.h"
#include "kit/look.h"
#include "kit/names.h"
#include "templates/books.h"

namespace trenchbook::sheets {
namespace {

// Ranges that functions take whole: a cell with an error of its own is handed over as a mark that spoils its row alone.
void nameHandedRanges(Workbook& workbook) {
    const auto handed = [&](const char* name, const std::string& range) {
        workbook.names[name] = handedCells(range);
    };
    handed("facts_in", formRangeName("Job"));
    handed("pit_in", formRangeName("Pit"));
    handed("pit_facts_in", formRangeName("Pit facts"));
    handed("peak_in", formRangeName("Peak"));
    handed("terms_in", formRangeName("Takeoff choices"));
    handed("rules_in", "[Rules.Key:Value]");
    handed("rain_in", "[Rain.*]");
    handed("grade_pipes_in", "[Grade pipes.Pipe:Largest share]");
    handed("dig_cost_in", "[Dig cost.Cut:Price]");
    // Sentences name rows as the sheet counts them: from the row of headings.
    workbook.names["runs_first"] = "MIN(ROW([Runs.From]))-2";
}

// In the order of the work; the tabs of a group have one color.
struct Group {
    unsigned tab;
    std::vector<Sheet (*)(const JobSize&)> sheets;
};
const std::vector<Group>& groups() {
    static const std::vector<Group> all = {
        // What is measured on the lot.
        {colour::clay,
         {jobSheet, levelsSheet, nodesSheet, rainSheet, waterSheet, runsSheet, groundSheet, crossingsSheet,
          outletsSheet, pitSheet, pumpSheet}},
        // What follows from it.
        {colour::water, {profileSheet, planSheet, peakSheet, stormsSheet}},
        // What it costs.
        {colour::good,
         {takeoffSheet, laborSheet, quoteSheet, orderSheet, billsSheet, accountSheet, closeOutSheet,
          pricesSheet}},
        // What is handed out.
        {colour::ink, {crewSheet, proposalSheet, invoiceSheet, careSheet}},
        // What all of it stands on.
        {colour::line, {rulesSheet, tablesSheet, functionsSheet, workingsSheet}},
    };
    return all;
}

// What tells whether anything is typed into a sheet: the first input column of its first table.
std::string firstInputColumn(const Sheet& sheet) {
    for (const Part& part : sheet.parts)
        if (const Table* table = std::get_if<Table>(&part))
            for (const Column& column : table->columns)
                if (isInput(column.kind) && column.formula.empty() && table->content.empty())
                    return "[" + table->name + "." + column.heading + "]";
    return "";
}

// A line for each sheet that follows. No links: with one, the office refuses to print a workbook that was never saved.
Paragraphs contents(const std::vector<Sheet>& sheets) {
    Paragraphs list;
    list.heading = "What stands on which sheet";
    list.printed = false;
    for (const Sheet& sheet : sheets) {
        if (&sheet == &sheets.front() || sheet.workings) continue;
        const std::string line = sheet.purpose.starts_with('=')  // a paper's, in the language of the paper
                                     ? "\"" + sheet.name + ": \"&" + sheet.purpose.substr(1)
                                     : "\"" + sheet.name + ": " + sheet.purpose + "\"";
        const std::string typed = sheet.tab == sheets.front().tab ? firstInputColumn(sheet) : "";
        list.lines.push_back("=" + line +
                             (typed.empty() ? "" : "&IF(COUNTA(" + typed + ")=0;\" (nothing typed)\";\"\")"));
    }
    return list;
}

}  // namespace

Workbook jobWorkbook(const JobSize& size) {
    Workbook workbook;
    workbook.title = "Drainage job";
    for (const Group& group : groups())
        for (const auto& sheet : group.sheets) {
            workbook.sheets.push_back(sheet(size));
            workbook.sheets.back().tab = group.tab;
        }
    workbook.sheets.front().parts.push_back(contents(workbook.sheets));
    nameHandedRanges(workbook);
    // The benchmark from which the crew measures down: the first known level of the level book.
    const std::string first = ";MATCH(TRUE();INDEX(ISNUMBER([Levels.Known level]);0);0));\"\")";
    workbook.names["crew_mark"] = "IFERROR(INDEX([Levels.Point]" + first;
    workbook.names["crew_level"] = "IFERROR(INDEX([Levels.Known level]" + first;
    return workbook;
}

const std::vector<Shipped>& shippedWorkbooks() {
    static const std::vector<Shipped> all = {
        {"job", [] { return jobWorkbook({}); }}, {"price-book", priceBook}, {"ledger", ledgerBook}};
    return all;
}

}  // namespace trenchbook::sheets
