#include "catalog/recent.h"

namespace trenchbook::addin {
namespace {

void addBytes(std::string& question, const void* data, std::size_t size) {
    question.append(static_cast<const char*>(data), size);
}

template <class Single>
void addSingle(std::string& question, const Single& value) {
    if (const double* number = std::get_if<double>(&value)) {
        addBytes(question, number, sizeof *number);
    } else if (const std::string* text = std::get_if<std::string>(&value)) {
        const std::size_t size = text->size();
        addBytes(question, &size, sizeof size);
        question += *text;
    }
}

}  // namespace

void addToQuestion(std::string& question, const Value& value) {
    question += static_cast<char>(value.index());
    const Range* range = std::get_if<Range>(&value);
    if (range == nullptr) return addSingle(question, value);
    addBytes(question, &range->rows, sizeof range->rows);
    addBytes(question, &range->columns, sizeof range->columns);
    for (const Cell& cell : range->cells) {
        question += static_cast<char>(cell.index());
        addSingle(question, cell);
    }
}

std::string questionOf(const Arguments& arguments, std::size_t first, std::size_t end) {
    std::string question = arguments.units() == UnitSystem::Metric ? "m" : "u";
    for (std::size_t i = first; i < end; ++i) addToQuestion(question, arguments.raw(i));
    return question;
}

}  // namespace trenchbook::addin
