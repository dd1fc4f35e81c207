// Calls functions as Calc does, by name and with values, without an office.
#pragma once

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

#include "catalog/function.h"
#include "trenchbook/core/error.h"

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

// The same call in metric: numbers and columns of numbers converted by the unit of their argument, optional
// arguments left out up to the tail. Ranges with a layout of their own are the caller's to convert.
inline std::vector<Value> inMetric(const std::string& name, std::vector<Value> values) {
    const Function& function = *findFunction(name);
    for (std::size_t i = 0; i < values.size() && i < function.arguments.size(); ++i) {
        const UnitInfo& measure = info(function.arguments[i].measure);
        const double factor = measure.siPerUs / measure.siPerMetric;
        if (double* number = std::get_if<double>(&values[i])) *number *= factor;
        if (Range* range = std::get_if<Range>(&values[i]))
            for (Cell& cell : range->cells)
                if (double* number = std::get_if<double>(&cell)) *number *= factor;
    }
    values.resize(function.arguments.size());
    values.push_back("metric");
    return values;
}

// A number answer is the same water, soil or pipe in either system, to 1e-9.
inline void expectUnitsAgree(const std::string& name, const std::vector<Value>& us) {
    const UnitInfo& measure = info(findFunction(name)->measure);
    const double answer = number(name, us);
    const double metric = number(name, inMetric(name, us)) * measure.siPerMetric / measure.siPerUs;
    EXPECT_NEAR(metric, answer, 1e-9 * (1 + std::fabs(answer))) << name;
}

}  // namespace trenchbook::addin::harness
