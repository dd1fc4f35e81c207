// From the cells of a job's sheets to the Job: one reader for every input cell.
//
//     JobTables tables;
//     tables.runs = Grid{3, 4, {"From", "To", "Length", "Pipe",
//                               "A", "B", "40' 6\"", "4 SDR35",
//                               "B", "Out", 60.0, "4 sdr-35"}};
//     Job job = readJob(tables, UnitSystem::US);
//     job.runs[0].length->feet();    // 40.5
//
// A table's first row holds the headings of job/columns.h, in any order; headings that are not listed there
// are passed over. A second row that holds nothing but units ("ft", "in") is one: it is no row of the job.
// Every row below, blank ones too, is one row of the job, in its place. Forms have no heading row: labels
// stand in their first column, values in the second.
//
// What is typed is read as people type it: blanks around it, upper and lower case, "1,200", "6 in", "25 %",
// tape and slope spellings. A cell that cannot be used is left out of its row's values and kept in the row's
// `unusable` with a sentence that names heading, content and what is allowed; so is one that holds
// `errorMark`. Nothing that stands in a listed column is passed over, and a bad cell changes no other cell's
// reading.
//
// Errors: BadArgument of the table ("runs") where a needed heading is missing, a listed heading or label
// stands twice, or a form has no second column. Linear in the number of cells.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "trenchbook/core/cell.h"
#include "trenchbook/job/columns.h"
#include "trenchbook/job/job.h"

namespace trenchbook {

// A table that a job does not have is left empty.
struct JobTables {
    Grid facts = {}, nodes = {}, water = {}, runs = {}, ground = {}, crossings = {}, outlets = {}, pump = {},
         pit = {}, pitFacts = {};
    Grid rules = {};  // Key and Value, over the defaults; without these headings the first two columns
    Grid rain = {};   // as pasted, see water/rain.h: gives the rain where none is typed, and the peak flows
    Grid peak = {};
    Grid layout = {}, tapes = {};    // points of the drawing, and tapes between them
    std::size_t runsHeadingRow = 1;  // the sheet's row of the runs' headings, for sentences that name rows
};

Job readJob(const JobTables& tables, UnitSystem units);

// One cell by itself: nothing in it, a value in the form of its column's kind, or why it cannot be used.
struct CellReading {
    bool blank = true;
    std::optional<double> number = {};  // of measured kinds, in SI; of a Choice, its place among the words
    std::string text = {};              // of a Name, a Size, a Choice (in English)
    std::vector<Pipe> pipes = {};       // of a Pipe, one
    std::vector<PumpPoint> curve = {};
    decltype(Run::surfaceUp) surface = {};
    NodeKinds kinds = {};
    std::optional<Unusable> unusable = {};
};
CellReading readCell(const InputColumn& column, const Cell& cell, UnitSystem units);

}  // namespace trenchbook
