// What jobbook itself wrote into the cells of a lot: kept in the workbook, so that a second fill may correct its own
// readings and still writes over nothing that a person typed.
#pragma once

#include <map>
#include <string>
#include <tuple>

#include "jobbook/parts.h"

namespace trenchbook::sheets {

// What belongs to the lot, and is typed nowhere but on it.
bool ofTheLot(Kind kind);

class Written {
  public:
    // As the workbook remembers it.
    explicit Written(const Document& document);

    // Whether this cell holds what was written there: a table's by heading and ready row, a form's by label and row 0.
    bool holds(const std::string& part, const std::string& heading, std::size_t row, const Value& now) const;
    // The notes take the place of what was remembered of their parts; stored in the workbook.
    void remember(const SiteNotes& notes, const Document& document);

  private:
    using Cell = std::tuple<std::string, std::string, std::size_t>;
    std::map<Cell, std::string> cells_;
};

}  // namespace trenchbook::sheets
