// RAIN.* as Calc calls them: a pasted range of text and numbers, units, each fault of the table in words.
#include <fstream>
#include <sstream>

#include "catalog_harness.h"
#include "reference.h"
#include "trenchbook/core/units.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

// An exported table as it lands in the cells when it is pasted with commas as separators: numbers as numbers.
Range pasted(const std::string& file, double unit = 1) {
    std::ifstream in(std::string(TRENCHBOOK_REFERENCE_DIR) + "/rain_exports/" + file);
    EXPECT_TRUE(in.good()) << file;
    Range range;
    range.columns = 11;
    for (std::string line; std::getline(in, line); ++range.rows) {
        if (unit != 1 && line.find("inches") != line.npos) line = "converted";
        std::istringstream cells(line);
        for (std::size_t column = 0; column < range.columns; ++column) {
            std::string cell;
            std::getline(cells, cell, ',');
            char* end = nullptr;
            const double number = std::strtod(cell.c_str(), &end);
            if (cell.empty())
                range.cells.emplace_back(std::string());  // an empty cell of a range arrives as empty text
            else if (*end == '\0' && column > 0)
                range.cells.emplace_back(number >= 1 && line.find("years") != line.npos ? number
                                                                                        : number * unit);
            else
                range.cells.emplace_back(cell);
        }
    }
    return range;
}

Range small(std::vector<Cell> cells) {
    return {.rows = cells.size() / 3, .columns = 3, .cells = std::move(cells)};
}
const Range good = small({"", 2.0, 10.0, "5-min", 0.4, 0.6, "24-hr", 2.6, 4.0});

TEST(RainFunctions, TakeTheExportedTableWhole) {
    const Range table = pasted("ann_arbor.csv");
    reference::check("RAIN.DEPTH", "pasted whole into cells: 24 h, 100 years",
                     number("RAIN.DEPTH", {table, 1440.0, 100.0}), 5.11, 0.005,
                     "NOAA Atlas 14 Volume 8 Version 2, Ann Arbor", "read");
    reference::check("RAIN.INTENSITY", "pasted whole into cells: 5 min, 10 years, 0.553 in",
                     number("RAIN.INTENSITY", {table, 5.0, 10.0}), 0.553 * 12, 0.0005 * 12,
                     "NOAA Atlas 14 Volume 8 Version 2, Ann Arbor", "read");
    // The whole file in a single cell.
    EXPECT_NEAR(number("RAIN.DEPTH", {"by duration for ARI (years):, 1,2\n5-min:, 0.321,0.378\n", 5.0, 2.0}),
                0.378, 1e-12);
}

TEST(RainFunctions, UsAndMetricAgree) {
    const Range inches = pasted("pulaski.csv");
    const Range millimetres = pasted("pulaski.csv", 25.4);
    for (const auto& [minutes, years] : {std::pair{5.0, 10.0}, {17.0, 30.0}, {3.0, 2.0}, {4000.0, 1.0}}) {
        const double depth = number("RAIN.DEPTH", {inches, minutes, years});
        EXPECT_NEAR(number("RAIN.DEPTH", {millimetres, minutes, years, "metric"}) / 25.4, depth, 1e-9);
        const double rate = number("RAIN.INTENSITY", {inches, minutes, years});
        EXPECT_NEAR(number("RAIN.INTENSITY", {millimetres, minutes, years, "metric"}) / 25.4, rate, 1e-9);
    }
    const Numbers us = numbers("RAIN.STORM", {inches, 120.0, 10.0, 15.0});
    const Numbers metric = numbers("RAIN.STORM", {millimetres, 120.0, 10.0, 15.0, Nothing{}, "metric"});
    ASSERT_EQ(us.columns, 2u);
    ASSERT_EQ(us.rows(), 8u);
    ASSERT_EQ(metric.rows(), 8u);
    for (std::size_t row = 0; row < 8; ++row) {
        EXPECT_NEAR(us.items[2 * row], 15.0 * static_cast<double>(row + 1), 1e-9);
        EXPECT_NEAR(metric.items[2 * row], us.items[2 * row], 1e-9);
        EXPECT_NEAR(metric.items[2 * row + 1] / 25.4, us.items[2 * row + 1], 1e-9);
    }
    const Numbers day = numbers("RAIN.STORM", {inches, 1440.0, 10.0, 60.0, "type II"});
    ASSERT_EQ(day.rows(), 24u);
    EXPECT_NEAR(day.items[2 * 11 + 1], 3.49 * (0.663 - 0.235), 1e-9);
}

TEST(RainFunctions, FaultsInWords) {
    const auto depth = [](const Range& table, Value minutes, Value years,
                          Language language = Language::English) {
        return whyNot("RAIN.DEPTH", {table, std::move(minutes), std::move(years)}, language);
    };
    EXPECT_EQ(depth(good, 60.0, 10.0), "OK");
    EXPECT_EQ(depth(small({"", 2.0, 10.0, "5-min", 0.4, "", "24-hr", 2.6, 4.0}), 60.0, 10.0),
              "table: a hole: there is no rain for 5-min at 10 years.");
    EXPECT_EQ(depth(small({"", 2.0, 10.0, "24-hr", 2.6, 4.0, "5-min", 0.4, 0.6}), 60.0, 10.0),
              "table: out of order: 5-min stands below 24-hr; durations must grow from top to bottom.");
    EXPECT_EQ(depth(good, 2880.0, 10.0),
              "duration is 2880 minutes, beyond the rain table, which ends at 24-hr (1440 min).");
    EXPECT_EQ(depth(good, 60.0, 50.0),
              "return is 50 years, outside the rain table, which holds 2 to 10 years.");
    // A quarter of an hour typed in hours.
    EXPECT_EQ(
        depth(good, 0.25, 10.0),
        "duration is 0.25 minutes, under one minute: durations are in minutes; for 0.25 hours type 15.");
    EXPECT_EQ(depth(good, 0.25, 10.0, Language::Spanish),
              "duration es 0.25 minutos, menos de un minuto: las duraciones van en minutos; para 0.25 horas "
              "escriba 15.");
    EXPECT_EQ(depth(good, 0.0, 10.0), "duration is 0; allowed: 1 or more.");
    EXPECT_EQ(depth(good, "soon", 10.0), "duration is \"soon\"; allowed: a number in min.");
    EXPECT_EQ(whyNot("RAIN.STORM", {good, 60.0, 10.0, 7.0}),
              "step is 7 min, which does not divide the storm's 60 min into equal steps.");
    EXPECT_EQ(whyNot("RAIN.STORM", {good, 60.0, 10.0, 10.0, "type II"}),
              "duration is 60 minutes; the NRCS storm types are 24 hours long, 1440 minutes.");
    EXPECT_EQ(whyNot("RAIN.DEPTH", {0.0, 60.0, 10.0}).substr(0, 6), "table:");
}

TEST(RainFunctions, Formula) {
    for (const reference::Row& row : reference::rows("12g_storm_sewer_rational_design.csv"))
        if (row.has("tc_min") && row.inputs.find("i=56.6/(tc+8.6)^0.823") != std::string::npos)
            reference::check("RAIN.FORMULA", row,
                             number("RAIN.FORMULA", {row.input("tc_min"), 56.6, 8.6, 0.823}));
    // The same constants for millimeters: 56.6 x 25.4.
    EXPECT_NEAR(number("RAIN.FORMULA", {17.0, 56.6 * 25.4, 8.6, 0.823, "metric"}) / 25.4,
                number("RAIN.FORMULA", {17.0, 56.6, 8.6, 0.823}), 1e-9);
    EXPECT_EQ(whyNot("RAIN.FORMULA", {17.0, 0.0, 8.6, 0.823}), "a is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("RAIN.FORMULA", {17.0, 56.6, -8.6, 0.823}), "b is -8.6; allowed: 0 or more.");
    EXPECT_EQ(whyNot("RAIN.FORMULA", {17.0, 56.6, 8.6, 3.0}), "c is 3; allowed: from 0 to 2.");
    EXPECT_EQ(whyNot("RAIN.FORMULA", {0.0, 56.6, 8.6, 0.823}), "duration is 0; allowed: 1 or more.");
    EXPECT_EQ(
        whyNot("RAIN.FORMULA", {0.25, 56.6, 8.6, 0.823}),
        "duration is 0.25 minutes, under one minute: durations are in minutes; for 0.25 hours type 15.");
}

}  // namespace
}  // namespace trenchbook::addin
