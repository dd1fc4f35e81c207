// Any function of the catalog with any arguments: an answer of the promised kind, or an error of ours that
// names an argument and says something in both languages. Nothing else may come out.
#include <fuzzer/FuzzedDataProvider.h>

#include <cstdlib>

#include "catalog/function.h"
#include "trenchbook/core/error.h"

namespace {

using namespace trenchbook::addin;

void require(bool law) {
    if (!law) std::abort();
}

// Values that formulas really hold are tried more often than arbitrary ones.
Cell cell(FuzzedDataProvider& bytes) {
    static const char* const words[] = {"4 SDR35", "6 SCH40", "1%",  "1/8 in/ft", "metric", "es",
                                        "A",       "B",       "Out", "lawn",      "crown",  ""};
    switch (bytes.ConsumeIntegralInRange(0, 5)) {
        case 0:
            return Nothing{};
        case 1:
            return bytes.ConsumeFloatingPoint<double>();
        case 2:
            return bytes.ConsumeFloatingPointInRange(0.0, 100.0);
        case 3:
            return static_cast<double>(bytes.ConsumeIntegralInRange(-2, 60));
        case 4:
            return std::string(bytes.PickValueInArray(words));
        default:
            return bytes.ConsumeRandomLengthString(12);
    }
}

// A pasted page: a few bytes over and over.
std::string longText(FuzzedDataProvider& bytes) {
    const std::string piece = bytes.ConsumeRandomLengthString(8);
    std::string text;
    for (std::size_t i = bytes.ConsumeIntegralInRange<std::size_t>(0, 3000); i > 0; --i) text += piece;
    return text;
}

// A whole block of a sheet, as tall as a few cells repeated make it.
Range largeRange(FuzzedDataProvider& bytes) {
    Range range;
    range.rows = bytes.ConsumeIntegralInRange<std::size_t>(1, 400);
    range.columns = bytes.ConsumeIntegralInRange<std::size_t>(1, 20);
    std::vector<Cell> some(bytes.ConsumeIntegralInRange<std::size_t>(1, 24));
    for (Cell& one : some) one = cell(bytes);
    for (std::size_t i = 0; i < range.rows * range.columns; ++i) range.cells.push_back(some[i % some.size()]);
    return range;
}

Value value(FuzzedDataProvider& bytes) {
    switch (bytes.ConsumeIntegralInRange(0, 63)) {
        case 0:
            return longText(bytes);
        case 1:
            return largeRange(bytes);
        default:
            break;
    }
    if (bytes.ConsumeIntegralInRange(0, 3) > 0)
        return std::visit([](auto&& held) -> Value { return held; }, cell(bytes));
    Range range;
    range.rows = bytes.ConsumeIntegralInRange<std::size_t>(1, 4);
    range.columns = bytes.ConsumeIntegralInRange<std::size_t>(1, 3);
    for (std::size_t i = 0; i < range.rows * range.columns; ++i) range.cells.push_back(cell(bytes));
    return range;
}

bool isPromised(const Function& function, const Result& result) {
    switch (function.returns) {
        case Returns::Number:
            return std::holds_alternative<double>(result);
        case Returns::Words:
            return std::holds_alternative<std::string>(result);
        case Returns::NumberBlock:
            return std::holds_alternative<Numbers>(result);
        case Returns::WordBlock:
            return std::holds_alternative<Texts>(result);
    }
    return false;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    FuzzedDataProvider bytes(data, size);
    const Function& function = catalog()[bytes.ConsumeIntegralInRange<std::size_t>(0, catalog().size() - 1)];
    std::vector<Value> values(bytes.ConsumeIntegralInRange<std::size_t>(0, allArguments(function).size()));
    for (Value& given : values) given = value(bytes);
    try {
        require(isPromised(function, call(function, values)));
    } catch (const trenchbook::Error& error) {
        require(!error.argument().empty());
        for (const auto language : {trenchbook::Language::English, trenchbook::Language::Spanish})
            require(!why(function, values, language).empty());
    }
    return 0;
}
