#include "job/job.h"
#include "job/money.h"

namespace trenchbook::sheets {

Workbook jobWorkbook(const JobSize& size) {
    Workbook workbook;
    workbook.title = "Drainage job";
    for (auto sheet : {jobSheet, levelsSheet, nodesSheet, waterSheet, runsSheet, profileSheet, crossingsSheet, pitSheet,
                       piecesSheet, takeoffSheet, laborSheet, quoteSheet, orderSheet, crewSheet, proposalSheet, accountSheet,
                       careSheet, billsSheet, closeOutSheet, pricesSheet, rulesSheet, tablesSheet, functionsSheet,
                       workingsSheet, billWorkingsSheet})
        workbook.sheets.push_back(sheet(size));
    return workbook;
}

const std::vector<Shipped>& shippedWorkbooks() {
    static const std::vector<Shipped> all = {{"job", [] { return jobWorkbook({}); }}};
    return all;
}

}  // namespace trenchbook::sheets
