// The example of a function as values: what the catalog writes as a live call, read as Calc reads it.
//
//     exampleOf(*findFunction("PIPE.CAPACITY"));    // "4 SDR35", "1%"
#pragma once

#include <cstdlib>
#include <string>
#include <vector>

#include "catalog/function.h"

namespace trenchbook::addin::harness {

// Reads a live call as Calc does: {1;2|3;4} is a range of two rows, "" in a text is a quotation mark.
class Typed {
  public:
    explicit Typed(std::string text) : text_(std::move(text)) {}

    std::vector<Value> arguments() {
        at_ = text_.find('(') + 1;
        std::vector<Value> values;
        for (skip(); text_.at(at_) != ')'; skip()) {
            values.push_back(text_[at_] == '{' ? Value(range()) : value(cell()));
            skip();
            if (text_.at(at_) == ';') ++at_;
        }
        return values;
    }
    Cell cell() {
        skip();
        if (at_ < text_.size() && text_[at_] == '"') return words();
        const char* start = text_.c_str() + at_;
        char* end = nullptr;
        const double number = std::strtod(start, &end);
        if (end == start) return Nothing{};
        at_ += static_cast<std::size_t>(end - start);
        return number;
    }
    std::string rest() {
        skip();
        return text_.substr(at_);
    }
    static Value value(const Cell& cell) {
        if (const double* number = std::get_if<double>(&cell)) return *number;
        if (const std::string* text = std::get_if<std::string>(&cell)) return *text;
        return Nothing{};
    }

  private:
    void skip() {
        while (at_ < text_.size() && text_[at_] == ' ') ++at_;
    }
    std::string words() {
        std::string read;
        for (++at_; text_.at(at_) != '"' || (at_ + 1 < text_.size() && text_[at_ + 1] == '"'); ++at_) {
            if (text_[at_] == '"') ++at_;
            read += text_[at_];
        }
        ++at_;
        return read;
    }
    Range range() {
        Range read;
        read.rows = 1;
        std::size_t columns = 0;
        for (++at_;;) {
            read.cells.push_back(cell());
            if (read.rows == 1) ++columns;
            skip();
            const char mark = text_.at(at_++);
            if (mark == '}') break;
            if (mark == '|') ++read.rows;
        }
        read.columns = columns;
        return read;
    }

    std::string text_;
    std::size_t at_ = 0;
};

inline std::vector<Value> exampleOf(const Function& function) { return Typed(function.example).arguments(); }

}  // namespace trenchbook::addin::harness
