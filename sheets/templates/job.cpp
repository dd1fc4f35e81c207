#include "templates/job.h"

#include "buying/money.h"
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

}  // namespace

Workbook jobWorkbook(const JobSize& size) {
    Workbook workbook;
    workbook.title = "Drainage job";
    for (auto sheet :
         {jobSheet,     levelsSheet,   nodesSheet,    rainSheet,    waterSheet,     runsSheet,
          groundSheet,  peakSheet,     planSheet,     profileSheet, crossingsSheet, pitSheet,
          outletsSheet, pumpSheet,     stormsSheet,   takeoffSheet, laborSheet,     quoteSheet,
          orderSheet,   crewSheet,     proposalSheet, accountSheet, invoiceSheet,   careSheet,
          billsSheet,   closeOutSheet, pricesSheet,   rulesSheet,   tablesSheet,    functionsSheet,
          workingsSheet})
        workbook.sheets.push_back(sheet(size));
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
