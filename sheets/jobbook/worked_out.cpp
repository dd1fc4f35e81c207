#include "jobbook/worked_out.h"

#include <com/sun/star/container/XIndexAccess.hpp>
#include <com/sun/star/table/XColumnRowRange.hpp>

#include "jobbook/held.h"
#include "jobbook/rows.h"

namespace trenchbook::sheets {
namespace {

Reference<css::sheet::XSpreadsheet> sheetOf(const Document& document, int place) {
    return {
        Reference<css::container::XIndexAccess>(document->getSheets(), UNO_QUERY_THROW)->getByIndex(place),
        UNO_QUERY_THROW};
}

}  // namespace

std::vector<Value> workedOut(const Document& document, const Place& row,
                             const std::vector<std::string>& formulas) {
    const Reference<css::sheet::XSpreadsheet> sheet = sheetOf(document, row.sheet);
    const sal_Int32 last =
        Reference<css::table::XColumnRowRange>(sheet, UNO_QUERY_THROW)->getColumns()->getCount() - 1;
    const Area scratch{sheet, {static_cast<sal_Int16>(row.sheet), last, row.row, last, row.row}};
    const Unseen unseen(document);
    const Unprotected open(sheet);
    const Reference<css::table::XCell> cell = sheet->getCellByPosition(last, row.row);
    std::vector<Value> answers;
    for (const std::string& formula : formulas) {
        if (!formula.empty()) cell->setFormula(wide(formula));
        answers.push_back(formula.empty() ? Value() : valuesOf(scratch).at(0).at(0));
        cell->setFormula("");
    }
    return answers;
}

std::string formulaOf(const Document& document, const Place& at) {
    const std::string formula =
        narrow(sheetOf(document, at.sheet)->getCellByPosition(at.column, at.row)->getFormula());
    const bool block = formula.starts_with("{=") && formula.ends_with("}");
    return block ? formula.substr(1, formula.size() - 2) : formula;
}

}  // namespace trenchbook::sheets
