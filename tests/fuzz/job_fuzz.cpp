// Bytes to tables to a job to its answers: only the engine's own error may come out, and findings name rows that
// exist.
#include <fuzzer/FuzzedDataProvider.h>

#include "lawful.h"
#include "trenchbook/core/error.h"
#include "trenchbook/job/read.h"
#include "trenchbook/job/solve.h"
#include "trenchbook/job/views.h"

namespace {

using namespace trenchbook;
using fuzz::lawful, fuzz::require;

Cell cell(FuzzedDataProvider& bytes) {
    static const char* const words[] = {
        "4 SDR35", "6 SCH40", "1%",   "1/8 in/ft", "5' 6\"", "A",     "B",
        "C",       "Out",     "lawn", "drive",     "yes",    "basin", "cleanout + downspout"};
    switch (bytes.ConsumeIntegralInRange(0, 7)) {
        case 0:
            return Nothing{};
        case 1:
            return bytes.ConsumeFloatingPoint<double>();
        case 2:
            return bytes.ConsumeFloatingPointInRange(0.0, 120.0);
        case 3:
            return std::string(errorMark);
        case 4:
            return bytes.ConsumeRandomLengthString(10);
        default:
            return std::string(bytes.PickValueInArray(words));
    }
}

// Headed by listed headings, mostly all of them.
Grid headed(FuzzedDataProvider& bytes, InputTable table) {
    Grid grid;
    for (const InputColumn& column : inputColumns(table))
        if (column.needed || bytes.ConsumeBool()) grid.cells.emplace_back(column.heading);
    grid.columns = grid.cells.size();
    grid.rows = 1 + bytes.ConsumeIntegralInRange<std::size_t>(0, 5);
    for (std::size_t i = grid.columns; i < grid.rows * grid.columns; ++i) grid.cells.push_back(cell(bytes));
    return grid;
}
Grid form(FuzzedDataProvider& bytes, InputTable table) {
    Grid grid{0, 2, {}};
    for (const InputColumn& column : inputColumns(table)) {
        if (!bytes.ConsumeBool()) continue;
        grid.cells.emplace_back(column.heading);
        grid.cells.push_back(cell(bytes));
        ++grid.rows;
    }
    return grid;
}
Grid anything(FuzzedDataProvider& bytes) {
    Grid grid{
        bytes.ConsumeIntegralInRange<std::size_t>(0, 4), bytes.ConsumeIntegralInRange<std::size_t>(1, 4), {}};
    for (std::size_t i = 0; i < grid.rows * grid.columns; ++i) grid.cells.push_back(cell(bytes));
    return grid;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    FuzzedDataProvider bytes(data, size);
    const UnitSystem units = bytes.ConsumeBool() ? UnitSystem::Metric : UnitSystem::US;
    JobTables tables;
    tables.runs = headed(bytes, InputTable::Runs);
    tables.nodes = headed(bytes, InputTable::Nodes);
    tables.water = headed(bytes, InputTable::Water);
    tables.ground = headed(bytes, InputTable::Ground);
    tables.crossings = headed(bytes, InputTable::Crossings);
    tables.outlets = headed(bytes, InputTable::Outlets);
    tables.pump = headed(bytes, InputTable::Pump);
    tables.facts = form(bytes, InputTable::Facts);
    tables.pit = form(bytes, InputTable::Pit);
    tables.pitFacts = form(bytes, InputTable::PitFacts);
    tables.peak = form(bytes, InputTable::Peak);
    tables.rules = anything(bytes);
    tables.rain = anything(bytes);
    try {
        const Job job = readJob(tables, units);
        const SolvedJob solved = solve(job);
        require(solved.runs.size() == job.runs.size() && solved.nodes.size() == job.nodes.size());
        lawful(job, solved.findings);
        for (std::size_t viewed = 0; viewed < viewedCount; ++viewed) {
            const NumberView& view = numberView(static_cast<Viewed>(viewed));
            for (std::size_t row = 0; row < view.rows(job, solved); ++row)
                for (const NumberColumn& column : view.columns)
                    if (!view.blank(job, solved, row)) column.of(job, solved, row);
        }
    } catch (const Error& error) {
        require(!error.argument().empty());
    }
    return 0;
}
