// Finding a row of a table by a name typed by people.
#pragma once

#include <algorithm>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "trenchbook/core/error.h"

#pragma GCC visibility push(hidden)
namespace trenchbook::names {

// The words in a name: lower case, letters (of any language) and digits only, plurals as singulars,
// < and > as under and over.
std::vector<std::string> words(std::string_view text);

// A row's name and its other words ("deck|patio"), each split into words.
using Phrases = std::vector<std::vector<std::string>>;
Phrases phrases(std::string_view name, std::string_view also);

// The words in one order, as one text: what two spellings of one name have in common.
std::string key(std::vector<std::string> words);

// All typed words are among the row's words (beginnings of three letters count).
bool fits(const std::vector<std::string>& typed, const Phrases& row);

// How many of the typed words a row shares, for suggestions.
std::size_t shared(const std::vector<std::string>& typed, const Phrases& row);

[[noreturn]] void refuse(const char* argument, std::string_view typed, const std::vector<std::string>& near);

// A table searched by name; its rows have `name` and `also`. Its names are split into words once, when it is
// made.
template <class Row>
class Table {
  public:
    explicit Table(std::span<const Row> rows) : rows_(rows) {
        for (std::size_t row = 0; row < rows.size(); ++row) {
            phrases_.push_back(phrases(rows[row].name, rows[row].also));
            for (const auto& phrase : phrases_.back()) exact_.emplace(key(phrase), row);
        }
    }

    // The one row that fits. Errors: BadArgument of `argument`, with the rows that come near.
    const Row& find(std::string_view typed, const char* argument) const {
        const std::vector<std::string> wanted = words(typed);
        if (const auto exact = exact_.find(key(wanted)); exact != exact_.end() && !wanted.empty())
            return rows_[exact->second];
        std::vector<std::size_t> near;
        for (std::size_t row = 0; row < rows_.size(); ++row)
            if (fits(wanted, phrases_[row])) near.push_back(row);
        if (near.size() == 1) return rows_[near.front()];
        if (near.empty()) near = nearest(wanted);
        std::vector<std::string> suggested;
        for (const std::size_t row : near) suggested.emplace_back(rows_[row].name);
        refuse(argument, typed, suggested);
    }

  private:
    // The rows that share most words; all of them when none shares any.
    std::vector<std::size_t> nearest(const std::vector<std::string>& wanted) const {
        std::vector<std::size_t> near;
        std::size_t most = 0;
        for (std::size_t row = 0; row < rows_.size(); ++row) {
            const std::size_t count = shared(wanted, phrases_[row]);
            if (count > most) near.clear();
            if (count >= most) near.push_back(row);
            most = std::max(most, count);
        }
        return near;
    }

    std::span<const Row> rows_;
    std::vector<Phrases> phrases_;
    std::unordered_map<std::string, std::size_t> exact_;  // the first row of that name
};

}  // namespace trenchbook::names
#pragma GCC visibility pop
