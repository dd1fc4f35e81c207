#include "jobbook/resolved.h"

#include <algorithm>
#include <cctype>
#include <com/sun/star/container/XIndexAccess.hpp>
#include <com/sun/star/container/XNamed.hpp>
#include <com/sun/star/sheet/FormulaResult.hpp>
#include <com/sun/star/sheet/XCellRangeFormula.hpp>
#include <com/sun/star/sheet/XCellRangesQuery.hpp>
#include <com/sun/star/sheet/XSheetCellRanges.hpp>
#include <optional>

#include "catalog/function.h"
#include "jobbook/refused.h"
#include "kit/layout.h"

namespace trenchbook::sheets {
namespace {

// What stands in a formula for a function of ours in front of its method, where the office knows no better name.
constexpr std::string_view service = "trenchbook.functions.";

bool isOurs(std::string_view name) {
    return name.substr(0, service.size()) == service || addin::findFunction(name) != nullptr;
}

// The first name before a bracket, outside of texts, that is one.
template <class Test>
std::optional<std::string> firstCalled(const std::string& formula, const Test& isOne) {
    bool quoted = false;
    std::string name;
    for (const char c : formula) {
        if (c == '"') quoted = !quoted;
        const auto letter = static_cast<unsigned char>(c);
        if (!quoted && (std::isalnum(letter) || c == '.' || c == '_')) {
            name += c;
            continue;
        }
        if (!quoted && c == '(' && !name.empty() && isOne(name)) return name;
        name.clear();
    }
    return std::nullopt;
}

std::string lowered(std::string name) {
    for (char& c : name) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return name;
}

// The first function of ours that the office did not know when it read this formula: those stand in lower case, all
// others in capitals.
std::optional<std::string> unknownIn(const std::string& formula) {
    return firstCalled(formula,
                       [](const std::string& name) { return name == lowered(name) && isOurs(name); });
}

// Refuses the file for the first such function in these cells.
void look(const std::filesystem::path& file, const Area& cells) {
    sal_Int32 row = cells.at.StartRow;
    for (const auto& line :
         Reference<css::sheet::XCellRangeFormula>(cells.range(), UNO_QUERY_THROW)->getFormulaArray()) {
        sal_Int32 column = cells.at.StartColumn;
        for (const rtl::OUString& formula : line) {
            if (const auto function = unknownIn(narrow(formula)))
                refuseUnknown(
                    file, narrow(Reference<css::container::XNamed>(cells.sheet, UNO_QUERY_THROW)->getName()),
                    column, row, *function);
            ++column;
        }
        ++row;
    }
}

}  // namespace

void requireResolved(const Document& document, const std::filesystem::path& file) {
    // One cell that says so even where all others hide their errors.
    if (const auto engine = namedArea(document, "engine_here")) look(file, *engine);
    const Reference<css::container::XIndexAccess> sheets(document->getSheets(), UNO_QUERY_THROW);
    for (sal_Int32 n = 0; n < sheets->getCount(); ++n) {
        const Reference<css::sheet::XSpreadsheet> sheet(sheets->getByIndex(n), UNO_QUERY_THROW);
        const Reference<css::sheet::XCellRangesQuery> cells(sheet, UNO_QUERY_THROW);
        for (const css::table::CellRangeAddress& wrong :
             cells->queryFormulaCells(css::sheet::FormulaResult::ERROR)->getRangeAddresses())
            look(file, {sheet, wrong});
    }
}

std::optional<std::string> unknownInFile(const std::string& formula) {
    // Of known ones the file has service and method, in capitals or not.
    const auto name = firstCalled(formula, [](const std::string& called) {
        const std::string low = lowered(called);
        return low.starts_with(service) ? addin::findFunction(low.substr(service.size())) == nullptr
                                        : addin::findFunction(low) != nullptr;
    });
    return name ? std::optional(lowered(*name)) : std::nullopt;
}

void refuseUnknown(const std::filesystem::path& file, const std::string& sheet, int column, int row,
                   const std::string& function) {
    throw Refused(
        file.string() + ": " + sheet + "!" + columnName(column) + std::to_string(row + 1) +
        " asks for the function " + function +
        ", which is not there: the file was written by another version, or by an office that does not "
        "keep its names; its sums would be wrong");
}

}  // namespace trenchbook::sheets
