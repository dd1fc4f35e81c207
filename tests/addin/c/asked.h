// The C interface as a caller uses it: values of the catalog written as letters, numbers and texts, and the answer read
// back.
#pragma once

#include <string>
#include <vector>

#include "catalog/function.h"
#include "trenchbook_c.h"

namespace trenchbook::addin::harness {

struct Flat {
    std::string letters = {};
    std::vector<double> numbers = {};
    std::string texts = {};

    explicit Flat(const std::vector<Value>& values) {
        for (const Value& value : values) std::visit([this](const auto& held) { add(held); }, value);
    }

  private:
    void add(const Nothing&) { letters += '-'; }
    void add(double number) {
        letters += 'n';
        numbers.push_back(number);
    }
    void add(const std::string& text) {
        letters += 't';
        texts.append(text.c_str()) += '\0';
    }
    void add(const Range& range) {
        letters += 'r';
        numbers.push_back(static_cast<double>(range.rows));
        numbers.push_back(static_cast<double>(range.columns));
        for (const Cell& cell : range.cells) std::visit([this](const auto& held) { add(held); }, cell);
    }
};

// Frees its answer.
class Asked {
  public:
    Asked(const std::string& function, const std::vector<Value>& values)
        : Asked(function.c_str(), Flat(values)) {}
    Asked(const char* function, const Flat& flat) {
        trenchbook_call(function, flat.letters.data(), flat.letters.size(), flat.numbers.data(),
                        flat.numbers.size(), flat.texts.data(), flat.texts.size(), &answer_);
    }
    ~Asked() { trenchbook_free(&answer_); }
    Asked(const Asked&) = delete;
    Asked& operator=(const Asked&) = delete;

    const trenchbook_answer& operator*() const { return answer_; }
    const trenchbook_answer* operator->() const { return &answer_; }
    std::vector<std::string> texts() const {
        std::vector<std::string> read;
        for (const char* at = answer_.texts; at < answer_.texts + answer_.texts_size;
             at += read.back().size() + 1)
            read.emplace_back(at);
        return read;
    }

  private:
    trenchbook_answer answer_;
};

}  // namespace trenchbook::addin::harness
