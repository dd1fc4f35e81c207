// A rain frequency table, read as a national server prints it, and the rain between its entries.
//
//     const RainTable table = RainTable::parse("duration,2,10\n5-min,0.4,0.6\n60-min,1.2,1.8", Length::inches(1));
//     table.depth(Duration::minutes(20), 10).inches();
//     table.intensity(Duration::minutes(5), 10).inchesPerHour();
//
// Layout: a row of return periods in years, below it one row a duration, its name in the first column.
// Durations are read as printed ("5-min:", "2-hr", "24 h", "1-day", a bare number as minutes), return periods
// as "10", "10-yr" or a chance "1/10"; bounds in brackets behind a value are ignored. What stands above the
// return periods and below the last duration (title, station, date) is passed over, and where the return
// periods come again (tables of bounds) the table ends. A heading that says inches, millimeters or intensity
// is believed: intensities become depths.
//
// Between entries the depth is a power of the duration and of the return period (straight lines on log-log
// paper), the form in which such curves are published (FHWA HDS-2, section 2.2; NOAA Atlas 14). Entries
// themselves come back as printed. Below the shortest duration its intensity holds; beyond the longest, and
// outside the return periods, there is no answer. Accuracy is the table's: bounds of 90 % are often 15 % and
// more either way.
//
// Errors: BadArgument of the table's argument with a sentence each for no return periods, no durations, a
// hole, a word that is no depth, entries out of order, rain that shrinks as the duration grows;
// OutsideValidity "duration" and "return".
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "trenchbook/core/units.h"

namespace trenchbook {

// A cell as pasted: empty, a number, or text.
using TableCell = std::variant<std::monostate, double, std::string>;

class RainTable {
  public:
    // Cells row by row. `unit` is what 1 in a cell stands for (Length::inches(1); with intensities, in an
    // hour), unless the heading names it. A row pasted into one cell is split at its commas or tabs.
    static RainTable parse(const std::vector<TableCell>& cells, std::size_t columns, Length unit,
                           const char* argument = "table");
    // The whole table as one text, lines and commas (or tabs) as exported.
    static RainTable parse(std::string_view text, Length unit, const char* argument = "table");

    Length depth(Duration duration, double returnYears) const;
    RainRate intensity(Duration duration, double returnYears) const;

    const std::vector<Duration>& durations() const { return durations_; }
    const std::vector<double>& returnPeriods() const { return returns_; }  // years

  private:
    friend class RainTableReader;
    RainTable() = default;
    Length entry(std::size_t duration, std::size_t returnPeriod) const {
        return depths_[duration * returns_.size() + returnPeriod];
    }

    std::vector<Duration> durations_;  // ascending
    std::vector<double> returns_;      // ascending
    std::vector<Length> depths_;       // a row a duration
};

// Intensity by a formula a/(t + b)^c as counties and states print it, t in minutes; `a` is the intensity unit's figure as
// printed. RainRate formulaIntensity(RainRate::inchesPerHour(56.6), 8.6, 0.823, Duration::minutes(17)) is 3.92 in/hr.
// Exact. The source of the constants says for which return period, place and durations they hold. Errors: BadArgument
// "duration", "a" not above 0; "b" below 0; "c" outside 0 to 2.
RainRate formulaIntensity(RainRate a, double b, double c, Duration duration);

// How a duration is written: "5-min", "2-hr", "2-day".
std::string durationText(Duration duration);

}  // namespace trenchbook
