// Any text pasted as a rain table, whole or cell by cell: a table that answers everywhere inside its own
// bounds, or an error of ours that names the table. Nothing else may come out.
#include <fuzzer/FuzzedDataProvider.h>

#include <cmath>
#include <cstdlib>

#include "trenchbook/core/error.h"
#include "trenchbook/water/storm.h"

namespace {

using namespace trenchbook;

void require(bool law) {
    if (!law) std::abort();
}

void answers(const RainTable& table) {
    const Duration longest = table.durations().back();
    for (double years : {table.returnPeriods().front(), table.returnPeriods().back()}) {
        require(table.depth(longest, years) > Length{});
        require(table.intensity(Duration{}, years) >= RainRate{});
        const Storm storm = alternatingBlocks(table, longest, years, longest / 12);
        require(storm.size() == 12);
        Length total;
        for (const StormStep& step : storm) total += step.depth;
        require(std::fabs(total / table.depth(longest, years) - 1) < 1e-9);
    }
}

template <class Parse>
void attempt(Parse parse) {
    try {
        answers(parse());
    } catch (const Error& error) {
        require(error.argument() == "table");
        require(!error.sentence(Language::English).empty());
        require(!error.sentence(Language::Spanish).empty());
    }
}

TableCell cell(FuzzedDataProvider& bytes) {
    static const char* const words[] = {"5-min:", "2-hr",  "1-day",     "0.4 (0.3-0.5)",
                                        "1/10",   "10-yr", "intensity", ""};
    switch (bytes.ConsumeIntegralInRange(0, 4)) {
        case 0:
            return {};
        case 1:
            return bytes.ConsumeFloatingPoint<double>();
        case 2:
            return static_cast<double>(bytes.ConsumeIntegralInRange(-1, 100));
        case 3:
            return std::string(bytes.PickValueInArray(words));
        default:
            return bytes.ConsumeRandomLengthString(20);
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    FuzzedDataProvider bytes(data, size);
    if (bytes.ConsumeBool()) {
        const std::string text = bytes.ConsumeRemainingBytesAsString();
        attempt([&] { return RainTable::parse(text, Length::inches(1)); });
        return 0;
    }
    const auto columns = bytes.ConsumeIntegralInRange<std::size_t>(0, 6);
    std::vector<TableCell> cells;
    while (bytes.remaining_bytes() > 0) cells.push_back(cell(bytes));
    attempt([&] { return RainTable::parse(cells, columns, Length::inches(1)); });
    return 0;
}
