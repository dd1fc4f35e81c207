// The one reader of input cells, and the readers of words behind it: any text or number in any input column is
// blank, a value within the column's range, or refused with a sentence in both languages; never two of these.
#include <fuzzer/FuzzedDataProvider.h>

#include <cmath>
#include <cstdlib>

#include "trenchbook/core/error.h"
#include "trenchbook/job/read.h"

namespace {

using namespace trenchbook;

void require(bool law) {
    if (!law) std::abort();
}

constexpr std::size_t tables = 14;

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    FuzzedDataProvider bytes(data, size);
    const auto columns =
        inputColumns(static_cast<InputTable>(bytes.ConsumeIntegralInRange<std::size_t>(0, tables - 1)));
    const InputColumn& column = columns[bytes.ConsumeIntegralInRange<std::size_t>(0, columns.size() - 1)];
    const UnitSystem units = bytes.ConsumeBool() ? UnitSystem::Metric : UnitSystem::US;
    const bool number = bytes.ConsumeIntegralInRange(0, 3) == 0;
    const Cell cell =
        number ? Cell(bytes.ConsumeFloatingPoint<double>()) : Cell(bytes.ConsumeRemainingBytesAsString());
    const CellReading reading = readCell(column, cell, units);
    const bool value = reading.number || !reading.text.empty() || !reading.pipes.empty() ||
                       !reading.curve.empty() || !reading.kinds.empty() || reading.surface.has_value();
    if (reading.blank) {
        require(!value && !reading.unusable && !number);
        return 0;
    }
    require(value != reading.unusable.has_value());
    if (reading.unusable) {
        require(reading.unusable->heading == column.heading);
        require(!reading.unusable->why.en.empty() && !reading.unusable->why.es.empty());
        return 0;
    }
    if (!reading.number) return 0;
    require(std::isfinite(*reading.number));
    if (column.kind == CellKind::Choice) {
        require(*reading.number >= 0 && *reading.number < static_cast<double>(column.words.size()));
        return 0;
    }
    const double unit = info(unitOf(column.kind)).si(UnitSystem::US);
    const double hair = 1e-8;
    require(*reading.number >= column.least * unit - hair * (std::fabs(column.least) + 1) * unit);
    require(*reading.number <= column.greatest * unit + hair * (std::fabs(column.greatest) + 1) * unit);
    return 0;
}
