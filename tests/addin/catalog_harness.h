// Calls functions as Calc does, by name and with values, without an office.
#pragma once

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "catalog/function.h"
#include "trenchbook/error.h"

namespace trenchbook::addin::harness {

inline Range column(std::vector<Cell> cells) {
    Range range;
    range.rows = cells.size();
    range.columns = 1;
    range.cells = std::move(cells);
    return range;
}

inline Result run(const std::string& name, const std::vector<Value>& values) {
    const Function* function = findFunction(name);
    if (function == nullptr) throw std::runtime_error("no function " + name);
    return call(*function, values);
}
inline double number(const std::string& name, const std::vector<Value>& values) {
    return std::get<double>(run(name, values));
}
inline std::string words(const std::string& name, const std::vector<Value>& values) {
    return std::get<std::string>(run(name, values));
}
inline Numbers numbers(const std::string& name, const std::vector<Value>& values) {
    return std::get<Numbers>(run(name, values));
}
inline Texts texts(const std::string& name, const std::vector<Value>& values) {
    return std::get<Texts>(run(name, values));
}
inline std::string whyNot(const std::string& name, const std::vector<Value>& values,
                          Language language = Language::English) {
    return why(*findFunction(name), values, language);
}

}  // namespace trenchbook::addin::harness
