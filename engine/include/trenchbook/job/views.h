// What a solved job shows, as blocks: one of numbers and one of words a table, each a list of columns with a
// getter.
//
//     const Job job;  // as readJob() fills it
//     const SolvedJob solved = solve(job);
//     const NumberView& runs = numberView(Viewed::Runs);
//     std::vector<double> shown;
//     for (std::size_t row = 0; row < runs.rows(job, solved); ++row)
//         for (const NumberColumn& column : runs.columns)
//             if (std::optional<double> si = column.of(job, solved, row))
//                 shown.push_back(*si / info(column.unit).si(job.units));
//
// One row a row of the job's table, so that a sheet's n-th row looks up the block's n-th; columns keep their
// headings, new ones are added at the end. Rows of a block are counted from 0, rows that a cell names from 1.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "trenchbook/core/unit.h"
#include "trenchbook/job/job.h"
#include "trenchbook/job/solve.h"

namespace trenchbook {

// Pit has one row. Findings has one for each finding, in the order of SolvedJob::findings. Counts has one for
// each sheet in the order of Part and a last one for all of them.
enum class Viewed { Runs, Nodes, Water, Ground, Crossings, Outlets, Pump, Pit, Findings, Counts };
inline constexpr std::size_t viewedCount = 10;

struct NumberColumn {
    const char* heading;
    Unit unit;
    // In SI; none where there is nothing to say.
    std::optional<double> (*of)(const Job& job, const SolvedJob& solved, std::size_t row);
    // A row that is not blank should have this number: without it the cell is an error, else it stays blank.
    bool expected = true;
    bool ownUnit = false;  // measured in the row's own unit, View::unitOf
};

struct WordColumn {
    const char* heading;
    Text (*of)(const Job& job, const SolvedJob& solved, std::size_t row);
};

template <class Column>
struct View {
    std::vector<Column> columns;
    std::size_t (*rows)(const Job& job, const SolvedJob& solved);
    bool (*blank)(const Job& job, const SolvedJob& solved, std::size_t row);
    // For columns of own units; null where there are none.
    Unit (*unitOf)(const Job& job, const SolvedJob& solved, std::size_t row) = nullptr;

    // The place of a column from 0; none when there is no such heading.
    std::optional<std::size_t> place(std::string_view heading) const {
        for (std::size_t i = 0; i < columns.size(); ++i)
            if (columns[i].heading == heading) return i;
        return std::nullopt;
    }
};
using NumberView = View<NumberColumn>;
using WordView = View<WordColumn>;

const NumberView& numberView(Viewed viewed);
// Counts has no words.
const WordView& wordView(Viewed viewed);

}  // namespace trenchbook
