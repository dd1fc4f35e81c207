// What a cell may hold, read from text: by the format and the limits of its column.
#pragma once

#include <string>

#include "jobbook/notes.h"

namespace trenchbook::sheets {

struct CellSpec {
    const Format& format;
    const Validity& validity;
    Measure measure;
};

// Throws std::invalid_argument whose text completes the sentence `"abc" …`: "is not a number".
// Percents are written 10% or 0.1, dates 2026-05-31, numbers with a point and without commas.
Value readValue(const std::string& text, const CellSpec& cell, bool metric);

}  // namespace trenchbook::sheets
