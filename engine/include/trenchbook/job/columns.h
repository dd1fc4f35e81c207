// The input cells of a job's tables: one row a column or a label, with what its cell holds, its range and its
// note. The sheets take headings, ranges and notes from here, the reader (job/read.h) finds its columns by
// them.
//
//     for (const InputColumn& column : inputColumns(InputTable::Runs)) std::puts(column.heading);
//     inputColumn(InputTable::Runs, "Length")->kind;    // CellKind::Feet
//
// A heading is the sheet's, in English, and never changes once released; where a column stands does not
// matter.
#pragma once

#include <limits>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "trenchbook/core/text.h"
#include "trenchbook/core/unit.h"

namespace trenchbook {

// Facts, Pit, PitFacts and Peak are forms: label and value side by side, one a row. The others have a row of
// headings. Rules has the headings Key and Value; its keys are those of rules(). The rain table has a layout
// of its own (water/rain.h) and is not listed here.
enum class InputTable {
    Facts,
    Nodes,
    Water,
    Runs,
    Ground,
    Crossings,
    Outlets,
    Pump,
    Pit,
    PitFacts,
    Peak,
    Rules,
    Layout,
    Tapes,
    AsBuilt
};
const Text& tableWord(InputTable table);  // as the sheet or form is named: "Runs", "Pit facts"
bool isForm(InputTable table);

// What a cell holds. Measured kinds are named by their US unit; all of them read a number, a number typed as
// text ("1,200"), and one with a unit behind it ("6 in", "150 mm").
enum class CellKind {
    Name,         // text; a number is written out
    Choice,       // one of the column's words, or the beginning of one: "y"
    NodeKinds,    // lines/node_kind.h: "cleanout + downspout"
    OverPipe,     // lines/cover_surface.h: "front lawn"
    Pipe,         // a stock name, or a bare bore in in (mm)
    Pipes,        // several with bars between: 4 SDR35|6 SDR35
    Size,         // "3x4", "12x12", "9", in in (mm)
    Coefficient,  // a share, or a word of the table of runoff surfaces
    Curve,        // of a pump, flow:head in gpm and ft (L/s and m): "0:24; 20:21; 40:16"
    Number,
    Share,  // 0 to 1, or with its sign: 25 %
    Slope,  // a fraction, or the trade's spelling: 1/8 in/ft, 1%, 1:96
    Feet,   // m; also a tape reading: 12' 6-1/2"
    Inches,
    SquareFeet,
    CubicFeet,
    Pounds,
    Degrees,
    Minutes,
    Hours,
    Years,
    MinutesPerInch,
    Gpm,
    InchesPerHour,
    Date,  // a spreadsheet's number, or year-month-day
};

// The unit that a bare number counts in, of a pipe its bore's; Unit::Number where there is none.
Unit unitOf(CellKind kind);

struct ChoiceWord {
    Text name;                            // as the sheet offers it, and in Spanish
    std::vector<const char*> words = {};  // that mean it too
};

struct InputColumn {
    static constexpr double anything = std::numeric_limits<double>::infinity();

    const char* heading;
    CellKind kind = CellKind::Name;
    double least = -anything, greatest = anything;  // of a number, in US units, both of them allowed
    bool above = false;                             // the least itself is not allowed
    bool needed = false;                            // a table without this heading cannot be read
    // Of a Choice: what may stand there. Of a Name: what is offered, and other words are taken too. Of NodeKinds: those
    // that often stand together, offered below the kinds alone.
    std::vector<ChoiceWord> words = {};
    const char* note = "";  // on the sheet: what it is, and what its absence means
};

std::span<const InputColumn> inputColumns(InputTable table);
// By heading, case and blanks around it aside; null when there is none.
const InputColumn* inputColumn(InputTable table, std::string_view heading);

// What may stand in the cell, in words: "a length in ft such as 12.4, 5' 6-1/2\"; above 0 and at most 10000
// ft".
Text allowedText(const InputColumn& column, UnitSystem units);

}  // namespace trenchbook
