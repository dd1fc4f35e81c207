#include "c/given.h"

#include <string>

namespace trenchbook::addin {
namespace {

class Given {
  public:
    Given(std::string_view letters, std::span<const double> numbers, std::string_view texts)
        : letters_(letters), numbers_(numbers), texts_(texts) {}

    std::vector<Value> values() {
        std::vector<Value> all;
        while (!letters_.empty()) all.push_back(value());
        if (!numbers_.empty()) throw Malformed("there are more numbers than letters ask for");
        if (!texts_.empty()) throw Malformed("there are more texts than letters ask for");
        return all;
    }

  private:
    char letter() {
        const char next = letters_.front();
        letters_.remove_prefix(1);
        return next;
    }

    double number() {
        if (numbers_.empty()) throw Malformed("a number is missing");
        const double next = numbers_.front();
        numbers_ = numbers_.subspan(1);
        return next;
    }

    std::string text() {
        const std::size_t end = texts_.find('\0');
        if (end == std::string_view::npos)
            throw Malformed("a text is missing, or has no zero byte at its end");
        std::string next(texts_.substr(0, end));
        texts_.remove_prefix(end + 1);
        return next;
    }

    // No range has more cells than there are letters left, so no size is too large to be counted with.
    std::size_t size() {
        const double asked = number();
        const double most = static_cast<double>(letters_.size());
        if (!(asked >= 0 && asked <= most) || asked != static_cast<double>(static_cast<std::size_t>(asked)))
            throw Malformed("a range is larger than its cells, or has no whole number of rows and columns");
        return static_cast<std::size_t>(asked);
    }

    Cell cell() {
        switch (letter()) {
            case 'n':
                return number();
            case 't': {
                std::string words = text();
                if (words.empty()) return Nothing{};
                return words;
            }
            case '-':
                return Nothing{};
            default:
                throw Malformed("a cell of a range is n, t or -");
        }
    }

    Range range() {
        Range made;
        made.rows = size();
        made.columns = size();
        if (made.columns != 0 && made.rows > letters_.size() / made.columns)
            throw Malformed("a range is larger than its cells");
        made.cells.reserve(made.rows * made.columns);
        for (std::size_t i = 0; i < made.rows * made.columns; ++i) made.cells.push_back(cell());
        return made;
    }

    Value value() {
        switch (letter()) {
            case 'n':
                return number();
            case 't':
                return text();
            case '-':
                return Nothing{};
            case 'r':
                return range();
            default:
                throw Malformed("a value is n, t, r or -");
        }
    }

    std::string_view letters_;
    std::span<const double> numbers_;
    std::string_view texts_;
};

}  // namespace

std::vector<Value> valuesOf(std::string_view letters, std::span<const double> numbers,
                            std::string_view texts) {
    return Given(letters, numbers, texts).values();
}

}  // namespace trenchbook::addin
