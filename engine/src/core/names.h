// Finding a row of a table by a name typed by people.
#pragma once

#include <algorithm>
#include <array>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "trenchbook/core/error.h"

#pragma GCC visibility push(hidden)
namespace trenchbook::names {

// The words in a name: lower case, letters (of any language) and digits only, plurals as singulars,
// < and > as under and over. The characters of `within` stay between two of a word's own: "22.5", "1/4".
std::vector<std::string> words(std::string_view text, std::string_view within = {});

// Other words for the words of a table. An empty one says nothing: "pvc", "de".
struct Synonym {
    std::string_view said, plain;
};
// The words of a name in the table's own vocabulary, each once.
class Vocabulary {
  public:
    explicit Vocabulary(std::span<const Synonym> synonyms, std::string_view within = {});
    std::vector<std::string> words(std::string_view text) const;

  private:
    std::unordered_map<std::string, std::string> plain_;
    std::string_view within_;
};

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

// A name run together, as the makers print it: its letters and digits in capitals, without the blanks, dots, dashes and
// number signs that people put between them. Empty where it holds anything else or more than 24. Allocates nothing.
class RunTogether {
  public:
    explicit RunTogether(std::string_view text);
    std::string_view view() const { return {buffer_.data(), size_}; }

  private:
    std::array<char, 24> buffer_;
    std::size_t size_ = 0;
};

// A table searched by name; its rows have `name` and `also`. Its names are split into words once, when it is
// made.
template <class Row>
class Table {
  public:
    explicit Table(std::span<const Row> rows) : rows_(rows) {
        for (const Row& row : rows) add(phrases(row.name, row.also));
    }
    // Names in a vocabulary of their own, found by exact() alone.
    Table(std::span<const Row> rows, const Vocabulary& vocabulary) : rows_(rows) {
        for (const Row& row : rows) add({vocabulary.words(row.name)});
    }

    // The row whose name has these words, in any order; null when there is none.
    const Row* exact(const std::vector<std::string>& wanted) const {
        const auto found = exact_.find(key(wanted));
        return found == exact_.end() || wanted.empty() ? nullptr : &rows_[found->second];
    }

    // The one row that fits. Errors: BadArgument of `argument`, with the rows that come near.
    const Row& find(std::string_view typed, const char* argument) const {
        const std::vector<std::string> wanted = words(typed);
        if (const Row* same = exact(wanted)) return *same;
        std::vector<std::size_t> near;
        for (std::size_t row = 0; row < rows_.size(); ++row)
            if (fits(wanted, phrases_[row])) near.push_back(row);
        if (near.size() == 1) return rows_[near.front()];
        refuseWith(near.empty() ? nearest(wanted) : near, argument, typed);
    }
    // Refuses what was typed, with the rows that come near.
    [[noreturn]] void refuse(const std::vector<std::string>& wanted, const char* argument,
                             std::string_view typed) const {
        refuseWith(nearest(wanted), argument, typed);
    }

  private:
    void add(Phrases row) {
        for (const auto& phrase : row) exact_.emplace(key(phrase), phrases_.size());
        phrases_.push_back(std::move(row));
    }
    [[noreturn]] void refuseWith(const std::vector<std::size_t>& near, const char* argument,
                                 std::string_view typed) const {
        std::vector<std::string> suggested;
        for (const std::size_t row : near) suggested.emplace_back(rows_[row].name);
        names::refuse(argument, typed, suggested);
    }
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
