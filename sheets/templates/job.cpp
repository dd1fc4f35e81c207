#include "templates/job.h"
#include "buying/money.h"
#include "templates/books.h"

namespace trenchbook::sheets {

Workbook jobWorkbook(const JobSize& size) {
    Workbook workbook;
    workbook.title = "Drainage job";
    for (auto sheet :
         {jobSheet,         levelsSheet,   nodesSheet,   rainSheet,      waterSheet,     runsSheet,
          peakSheet,        planSheet,     profileSheet, crossingsSheet, pitSheet,       swaleSheet,
          piecesSheet,      takeoffSheet,  laborSheet,   quoteSheet,     orderSheet,     crewSheet,
          crewSpanishSheet, proposalSheet, accountSheet, invoiceSheet,   careSheet,      billsSheet,
          closeOutSheet,    pricesSheet,   rulesSheet,   tablesSheet,    functionsSheet, workingsSheet})
        workbook.sheets.push_back(sheet(size));
    workbook.names["plan_reason"] = planReason();
    workbook.names["job_missing"] = jobMissing();
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
