#include "jobbook/rows.h"

#include <algorithm>
#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/sheet/XArrayFormulaRange.hpp>
#include <com/sun/star/sheet/XCellRangeMovement.hpp>
#include <com/sun/star/sheet/XNamedRange.hpp>
#include <com/sun/star/sheet/XNamedRanges.hpp>
#include <com/sun/star/table/CellAddress.hpp>
#include <com/sun/star/table/XColumnRowRange.hpp>
#include <com/sun/star/util/XProtectable.hpp>

namespace trenchbook::sheets {
namespace {

// A protected sheet takes no rows.
class Unprotected {
  public:
    explicit Unprotected(const Reference<css::sheet::XSpreadsheet>& sheet)
        : sheet_(sheet, UNO_QUERY_THROW), was_(sheet_->isProtected()) {
        if (was_) sheet_->unprotect({});
    }
    ~Unprotected() {
        if (was_) sheet_->protect({});
    }
    Unprotected(const Unprotected&) = delete;
    Unprotected& operator=(const Unprotected&) = delete;

  private:
    Reference<css::util::XProtectable> sheet_;
    bool was_;
};

// Before the last ready row, so that every range over the table takes the new ones in.
void insertRows(const FoundPart& table, sal_Int32 count) {
    const Unprotected open(table.area.sheet);
    const sal_Int32 last = table.lastReady(), pattern = last - 1;
    Reference<css::table::XColumnRowRange>(table.area.sheet, UNO_QUERY_THROW)
        ->getRows()
        ->insertByIndex(last, count);
    const Reference<css::sheet::XCellRangeMovement> sheet(table.area.sheet, UNO_QUERY_THROW);
    css::table::CellRangeAddress source = table.area.at;
    source.StartRow = pattern;
    for (sal_Int32 done = 0; done < count;) {
        const sal_Int32 next = std::min(done + 1, count - done);  // what is there already is copied too
        source.EndRow = pattern + next - 1;
        sheet->copyRange(css::table::CellAddress(source.Sheet, source.StartColumn, last + done), source);
        done += next;
    }
}

// The block's one array formula over more rows, under its old name. Nothing stands below a block.
void makeTaller(const Document& document, const std::string& name, const Area& block, sal_Int32 rows) {
    const Unprotected open(block.sheet);
    const Reference<css::sheet::XArrayFormulaRange> before(block.range(), UNO_QUERY_THROW);
    std::string formula = narrow(before->getArrayFormula());
    if (formula.size() < 3 || formula.front() != '{') return;
    formula = formula.substr(1, formula.size() - 2);
    before->setArrayFormula({});
    css::table::CellRangeAddress at = block.at;
    at.EndRow = at.StartRow + rows - 1;
    const Area taller{block.sheet, at};
    Reference<css::sheet::XArrayFormulaRange>(taller.range(), UNO_QUERY_THROW)
        ->setArrayFormula(wide(formula));

    const Reference<css::sheet::XNamedRanges> names(
        Reference<css::beans::XPropertySet>(document, UNO_QUERY_THROW)->getPropertyValue("NamedRanges"),
        UNO_QUERY_THROW);
    const Reference<css::sheet::XNamedRange> named(names->getByName(wide(name)), UNO_QUERY_THROW);
    const std::string content = narrow(named->getContent());
    named->setContent(wide(content.substr(0, content.rfind('$') + 1) + std::to_string(at.EndRow + 1)));
}

}  // namespace

void makeRoom(const Document& document, const Workbook& description) {
    std::map<std::string, int> rows;
    for (const Sheet& sheet : description.sheets)
        for (const Part& part : sheet.parts)
            if (const Table* table = std::get_if<Table>(&part)) rows[table->name] = table->rows;
    for (const auto& [name, needed] : rows) {
        const std::vector<FoundPart> parts = partsOf(document);  // places move as rows come in
        const FoundPart* table = findPart(parts, name, false);
        if (table == nullptr) continue;
        const sal_Int32 ready = table->lastReady() - table->firstReady() + 1;
        if (needed > ready) insertRows(*table, needed - ready);
    }
    for (const Sheet& sheet : description.sheets) {
        for (const Part& part : sheet.parts) {
            const Block* block = std::get_if<Block>(&part);
            if (block == nullptr) continue;
            const std::optional<Area> area = namedArea(document, block->name);
            const int edges = 2;  // the thin row and the closing row
            const sal_Int32 needed = rows[block->table] + edges;
            if (area && area->at.EndRow - area->at.StartRow + 1 < needed)
                makeTaller(document, block->name, *area, needed + description.blockSpare);
        }
    }
}

}  // namespace trenchbook::sheets
