// Values as people write them: read from text by the format and the limits of their column, and written for
// reading.
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

std::string dateText(double days);      // "2026-05-31"
std::string moneyText(double dollars);  // "1,234.50"
double today();                         // as the office counts days, by the clock of this place

}  // namespace trenchbook::sheets
