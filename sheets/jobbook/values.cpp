#include "jobbook/values.h"

#include <algorithm>
#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/table/XColumnRowRange.hpp>
#include <com/sun/star/util/NumberFormat.hpp>
#include <com/sun/star/util/XNumberFormatsSupplier.hpp>
#include <fstream>
#include <map>

#include "jobbook/csv.h"
#include "jobbook/files.h"
#include "jobbook/refused.h"
#include "jobbook/value_text.h"

namespace trenchbook::sheets {
namespace {

using css::beans::XPropertySet;

// Text for numbers as their cells are formatted.
class Formatter {
  public:
    explicit Formatter(const Document& document)
        : formats_(
              Reference<css::util::XNumberFormatsSupplier>(document, UNO_QUERY_THROW)->getNumberFormats()) {}

    bool isDate(const Area& area, sal_Int32 column, sal_Int32 row) {
        const Reference<XPropertySet> cell(area.sheet->getCellByPosition(column, row), UNO_QUERY_THROW);
        sal_Int32 key = 0;
        cell->getPropertyValue("NumberFormat") >>= key;
        const auto [known, isNew] = dates_.emplace(key, false);
        if (isNew) {
            sal_Int16 type = 0;
            formats_->getByKey(key)->getPropertyValue("Type") >>= type;
            known->second = (type & css::util::NumberFormat::DATE) != 0;
        }
        return known->second;
    }
    static std::string text(const Value& value, bool asDate) {
        const double* number = std::get_if<double>(&value);
        return number != nullptr && asDate ? dateText(*number) : textOf(value);
    }

  private:
    Reference<css::util::XNumberFormats> formats_;
    std::map<sal_Int32, bool> dates_;  // by key of a format
};

using Lines = std::vector<std::vector<std::string>>;

Lines formLines(const FoundPart& part, Formatter& formatter) {
    Lines lines = {{"field", "value"}};
    const css::table::CellRangeAddress& at = part.area.at;
    const auto rows = Reference<css::table::XColumnRowRange>(part.area.sheet, UNO_QUERY_THROW)->getRows();
    sal_Int32 row = at.StartRow;
    for (const auto& cells :
         valuesOf(part.area, at.StartColumn, at.StartRow, at.StartColumn + 1, at.EndRow)) {
        const bool asDate =
            std::holds_alternative<double>(cells[1]) && formatter.isDate(part.area, at.StartColumn + 1, row);
        const bool shown = isVisible({rows->getByIndex(row), UNO_QUERY_THROW});
        if (shown && !isBlank(cells[0]))
            lines.push_back({textOf(cells[0]), Formatter::text(cells[1], asDate)});
        ++row;
    }
    return lines;
}

Lines tableLines(const FoundPart& part, Formatter& formatter) {
    const TableView view = viewOf(part);
    std::vector<bool> dates;
    for (const sal_Int32 column : view.columns)
        dates.push_back(formatter.isDate(part.area, column, part.firstReady()));
    Lines lines = {view.headings};
    for (const auto& cells : view.rows) {
        if (isBlankRow(cells)) continue;
        auto& line = lines.emplace_back();
        for (std::size_t c = 0; c < cells.size(); ++c) line.push_back(Formatter::text(cells[c], dates[c]));
    }
    return lines;
}

// Site notes have the same file names and lack the computed columns: values never take their place.
void refuseForeign(const std::filesystem::path& file, const std::string& headings) {
    std::ifstream there(file, std::ios::binary);
    if (!there) return;
    std::string start(headings.size(), '\0');
    there.read(start.data(), static_cast<std::streamsize>(start.size()));
    if (start != headings)
        throw Refused(file.string() +
                      " is there already and holds other columns, as site notes do: give another folder");
}

}  // namespace

std::vector<std::filesystem::path> writeValues(const Document& document,
                                               const std::filesystem::path& folder) {
    Formatter formatter(document);
    std::vector<std::pair<std::filesystem::path, std::string>> files;
    for (const FoundPart& part : shownPartsOf(document)) {
        const Lines lines = part.isForm() ? formLines(part, formatter) : tableLines(part, formatter);
        if (part.isForm() && lines.size() == 1) continue;  // all of its rows are hidden
        files.emplace_back(folder / notesFile(part.name), csv::write(lines));
        refuseForeign(files.back().first, csv::write({lines.front()}));
    }
    std::vector<std::filesystem::path> written;
    for (const auto& [file, text] : files) {
        writeFile(file, text);
        written.push_back(file);
    }
    return written;
}

}  // namespace trenchbook::sheets
