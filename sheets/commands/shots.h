// Shots from a phone or a data collector into Levels: one CSV line a point, with its level or its rod reading and a
// note. Which of the file's columns holds what is told once and kept with the workbook.
#pragma once

#include <array>
#include <string_view>

#include "commands/steps.h"

namespace trenchbook::sheets {

// What a shot may hold, and the column of Levels that it goes to.
struct ShotField {
    const char* argument;  // as a program names it
    const char* heading;   // of Levels
    Text label;
};
const std::vector<ShotField>& shotFields();

// By argument: the heading of the file's column, or its number from 1 where the file has no headings.
using ShotColumns = std::map<std::string, std::string>;

// What was given, else what the workbook remembers, else headings that are usual; fields that the file lacks are left
// out.
ShotColumns shotColumns(const Book& book, std::string_view csv, const ShotColumns& given);

// The file's shots below what stands on Levels, rows added where there are too few. A line that stands there already,
// the same point with the same numbers, is not brought in twice; a point with other numbers is a second shot of it, and
// closes on the first. Throws Refused naming every line that cannot be read, or where the columns do not give a point
// and a level or rod. `file` is named in these sentences.
Planned bringShots(const Book& book, std::string_view csv, const ShotColumns& columns,
                   const std::string& file);

}  // namespace trenchbook::sheets
