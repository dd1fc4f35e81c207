// What a command is given through the C interface, one value after the other: words, numbers, whole workbooks.
#pragma once

#include <optional>
#include <span>
#include <string>

#include "c/given.h"
#include "commands/book.h"

namespace trenchbook::addin {

// Each throws Malformed where the next value is of another kind, or none is left.
class GivenValues {
  public:
    explicit GivenValues(std::span<const Value> values) : values_(values) {}

    std::string text();
    std::optional<std::string> textIfAny();  // nothing where it is left out
    double number();
    bool flag() { return number() != 0; }
    sheets::Value cell();
    Range range();
    sheets::Place place();  // a range of sheet, column, row
    sheets::Book book();    // as trenchbook_c.h describes it
    void end() const;       // throws where values are left

  private:
    const Value& next();
    sheets::BookSheet sheet();

    std::span<const Value> values_;
};

}  // namespace trenchbook::addin
