// Finding a row of a table by a name typed by people.
#pragma once

#include <algorithm>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "trenchbook/error.h"

namespace trenchbook::names {

// The words in a name: lower case, letters (of any language) and digits only, plurals as singulars,
// < and > as under and over.
std::vector<std::string> words(std::string_view text);

// How well `typed` fits a row with this name and these other words ("deck|patio"): 2 the very name, 1 all
// typed words are among its words (beginnings of three letters count), 0 not.
int fit(const std::vector<std::string>& typed, std::string_view name, std::string_view also);

// How many of the typed words a row shares, for suggestions.
std::size_t shared(const std::vector<std::string>& typed, std::string_view name, std::string_view also);

[[noreturn]] void refuse(const char* argument, std::string_view typed, const std::vector<std::string>& near);

// The one row that fits; rows have `name` and `also`. Errors: BadArgument of `argument`, with the rows that
// come near.
template <class Row>
const Row& find(std::span<const Row> rows, std::string_view typed, const char* argument) {
    const std::vector<std::string> wanted = words(typed);
    const Row* found = nullptr;
    std::vector<std::string> near;
    for (const Row& row : rows) {
        const int fits = fit(wanted, row.name, row.also);
        if (fits == 2) return row;
        if (fits == 1) {
            found = &row;
            near.emplace_back(row.name);
        }
    }
    if (near.size() == 1) return *found;
    if (near.empty()) {
        std::size_t most = 1;
        for (const Row& row : rows) {
            const std::size_t count = shared(wanted, row.name, row.also);
            if (count > most) near.clear();
            if (count >= most) near.emplace_back(row.name);
            most = std::max(most, count);
        }
    }
    if (near.empty())
        for (const Row& row : rows) near.emplace_back(row.name);
    refuse(argument, typed, near);
}

}  // namespace trenchbook::names
