// What every generated method does: its arguments become values, the catalog answers, an error of the engine
// becomes one that Calc shows in the cell.
//
//     bad argument, outside validity, no solution  ->  IllegalArgumentException  ->  Err:502
//     no convergence                               ->  NoConvergenceException    ->  Err:523
//     anything else, a fault of ours               ->  RuntimeException          ->  #VALUE!
#pragma once

#include <array>
#include <span>
#include <vector>

#include "catalog/value.h"
#include "shell/convert.h"
#include "shell/uno.h"

namespace trenchbook::addin {

// `place` is the function's place in the catalog.
Result answer(std::size_t place, std::span<const Value> values);

// Calls with a fixed number of arguments, nearly all, need no memory for the list.
template <class... Given>
Result answerTo(std::size_t place, const Given&... given) {
    const std::array<Value, sizeof...(Given)> values = {value(given)...};
    return answer(place, values);
}
inline Result answerTo(std::size_t place, const Any& first, const Anys& more) {
    std::vector<Value> values;
    values.reserve(static_cast<std::size_t>(more.getLength()) + 1);
    values.push_back(value(first));
    for (const Any& given : more) values.push_back(value(given));
    return answer(place, values);
}

template <class... Given>
double number(std::size_t place, const Given&... given) {
    return std::get<double>(answerTo(place, given...));
}
template <class... Given>
rtl::OUString words(std::size_t place, const Given&... given) {
    return wide(std::get<std::string>(answerTo(place, given...)));
}
template <class... Given>
NumberCells numberBlock(std::size_t place, const Given&... given) {
    return cells(std::get<Numbers>(answerTo(place, given...)));
}
template <class... Given>
TextCells wordBlock(std::size_t place, const Given&... given) {
    return cells(std::get<Texts>(answerTo(place, given...)));
}

}  // namespace trenchbook::addin
