#include "trenchbook/water/rain.h"
#include "sentence.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <fstream>
#include <map>
#include <sstream>

#include "reference.h"
#include "trenchbook/core/error.h"

using namespace trenchbook;
using namespace trenchbook::reference;

namespace {

const Length inch = Length::inches(1);

// A frequency table whole, as the national server exports it.
std::string exported(const std::string& name) {
    std::ifstream in(std::string(TRENCHBOOK_REFERENCE_DIR) + "/rain_exports/" + name);
    std::stringstream text;
    text << in.rdbuf();
    EXPECT_FALSE(text.str().empty()) << name;
    return text.str();
}

Duration durationOf(const Row& row) {
    const std::string text = row.word("duration");
    const double count = std::stod(text);
    return text.ends_with("-hr") ? Duration::hours(count) : Duration::minutes(count);
}

std::string refusal(const std::string& text) {
    return sentence([&] { RainTable::parse(text, inch); });
}

// Text cells of a row with as many columns as the widest.
std::vector<TableCell> cellsOf(const std::vector<std::vector<std::string>>& rowsOfText) {
    std::vector<TableCell> cells;
    for (const std::vector<std::string>& row : rowsOfText)
        for (const std::string& cell : row) cells.push_back(cell);
    return cells;
}

}  // namespace

TEST(Rain, ExportedTablesWhole) {
    const std::string annArbor = exported("ann_arbor.csv");
    const std::map<std::string, RainTable> tables = {
        {"Ann Arbor, Michigan: depth", RainTable::parse(annArbor, inch)},
        // The bounds stand below the estimates, each a table of its own.
        {"Ann Arbor, Michigan: depth, upper 90 per cent bound",
         RainTable::parse(annArbor.substr(annArbor.find("PRECIPITATION FREQUENCY ESTIMATES AT UPPER")),
                          inch)},
        {"Ann Arbor, Michigan: depth, lower 90 per cent bound",
         RainTable::parse(annArbor.substr(annArbor.find("PRECIPITATION FREQUENCY ESTIMATES AT LOWER")),
                          inch)},
        {"Pulaski, Virginia: depth", RainTable::parse(exported("pulaski.csv"), inch)},
        {"Champaign, Illinois: depth", RainTable::parse(exported("champaign.csv"), inch)}};
    for (const auto& [name, table] : tables) {
        EXPECT_EQ(table.durations().size(), 19u) << name;
        EXPECT_EQ(table.returnPeriods().size(), 10u) << name;
    }
    int checked = 0;
    for (const Row& row : rows("12h_noaa_atlas14_tables.csv")) {
        if (!row.has("ARI_yr")) continue;
        const RainTable& table = tables.at(row.item + ": " + row.output);
        check("RAIN.DEPTH", row, table.depth(durationOf(row), row.input("ARI_yr")).inches());
        ++checked;
    }
    EXPECT_EQ(checked, 500);
}

// The server's page, copied cell by cell: intensities with their bounds in brackets behind them, yearly
// chances for headings.
TEST(Rain, PrintedTableWithBoundsInBrackets) {
    struct Printed {
        std::string estimate, lower, upper;
    };
    std::map<std::pair<double, double>, Printed> entries;  // by minutes and return period
    std::vector<std::pair<std::string, double>> durations;
    const auto returnOf = [](const Row& row) { return std::stod(row.word("AEP").substr(2)); };
    for (const Row& row : rows("12h_noaa_atlas14_tables.csv")) {
        if (!row.has("AEP")) continue;
        const double minutes = durationOf(row).minutes();
        Printed& entry = entries[{minutes, returnOf(row)}];
        if (row.output == "intensity") entry.estimate = row.value;
        if (row.output.find("lower") != std::string::npos) entry.lower = row.value;
        if (row.output.find("upper") != std::string::npos) entry.upper = row.value;
        if (durations.empty() || durations.back().second < minutes)
            durations.emplace_back(row.word("duration"), minutes);
    }
    ASSERT_EQ(durations.size(), 10u);

    const std::vector<double> periods = {2, 5, 10, 25, 50, 100, 200, 500, 1000};
    const auto table = [&](auto cell) {
        std::vector<std::vector<std::string>> page = {{"AMS-based precipitation frequency estimates with 90% "
                                                       "confidence intervals (in inches/hour): intensity"},
                                                      {"Duration", "Annual exceedance probability (1/years)"},
                                                      {""}};
        for (double period : periods) page.back().push_back("1/" + plain(period));
        for (const auto& [name, minutes] : durations) {
            page.push_back({name});
            for (double period : periods) page.back().push_back(cell(entries.at({minutes, period})));
        }
        for (auto& line : page) line.resize(periods.size() + 1);
        return RainTable::parse(cellsOf(page), periods.size() + 1, inch);
    };
    const RainTable estimates =
        table([](const Printed& p) { return p.estimate + "\n(" + p.lower + "\u2011" + p.upper + ")"; });
    const RainTable lower = table([](const Printed& p) { return " " + p.lower; });
    const RainTable upper = table([](const Printed& p) { return p.upper + " [90%]"; });
    int checked = 0;
    for (const Row& row : rows("12h_noaa_atlas14_tables.csv")) {
        if (!row.has("AEP")) continue;
        const RainTable& asked = row.output == "intensity"                       ? estimates
                                 : row.output.find("lower") != std::string::npos ? lower
                                                                                 : upper;
        check("RAIN.INTENSITY", row, asked.intensity(durationOf(row), returnOf(row)).inchesPerHour());
        ++checked;
    }
    EXPECT_EQ(checked, 270);
}

// HDS-2 example 6.6 starts from a curve of intensities and makes depths of them.
TEST(Rain, IntensitiesBecomeDepths) {
    std::string text = "Rainfall intensity (inches/hour)\n,50\n";
    for (const Row& row : rows("10b_alternating_block_idf.csv"))
        if (row.item == "Baltimore intensity") text += row.word("D_h") + "-hr," + row.value + "\n";
    const RainTable table = RainTable::parse(text, inch);
    int checked = 0;
    for (const Row& row : rows("10b_alternating_block_idf.csv")) {
        if (!row.has("D_h")) continue;
        const Duration duration = Duration::hours(row.input("D_h"));
        if (row.output == "i")
            check("RAIN.INTENSITY", row, table.intensity(duration, 50).inchesPerHour());
        else
            check("RAIN.DEPTH", row, table.depth(duration, 50).inches());
        ++checked;
    }
    EXPECT_EQ(checked, 12);
    for (const Row& row : rows("10b_alternating_block_idf.csv")) {
        if (row.item != "Constant-intensity storm") continue;
        const RainTable one =
            RainTable::parse("intensity\n,10\n" + row.word("tc_min") + "-min," + row.word("i_inh"), inch);
        check("RAIN.DEPTH", row, one.depth(Duration::minutes(row.input("tc_min")), 10).inches());
    }
}

// Printed short-duration intensities, in inches and in millimetres.
TEST(Rain, ShortIntensities) {
    for (const char* item : {"Urbana, Illinois, 2-year intensity", "Baltimore 2-year intensity"}) {
        std::map<double, std::string> entries;
        bool metric = false;
        for (const Row& row : rows("10b_alternating_block_idf.csv")) {
            if (row.item != item) continue;
            entries[row.input("D_min")] = row.value;
            metric = row.unit == "mm/h";
        }
        std::string text = "Intensity\n,2\n";
        for (const auto& [minutes, value] : entries) text += plain(minutes) + "-min," + value + "\n";
        const RainTable table = RainTable::parse(text, metric ? Length::millimetres(1) : inch);
        int checked = 0;
        for (const Row& row : rows("10b_alternating_block_idf.csv")) {
            if (row.item != item) continue;
            const RainRate rate = table.intensity(Duration::minutes(row.input("D_min")), 2);
            check("RAIN.INTENSITY", row, metric ? rate.millimetresPerHour() : rate.inchesPerHour());
            ++checked;
        }
        EXPECT_GE(checked, 3) << item;
    }
}

// Rain between the entries, and beyond the shortest.
TEST(Rain, BetweenTheEntries) {
    const RainTable table = RainTable::parse(exported("ann_arbor.csv"), inch);
    // Straight on log-log paper: the geometric middle of durations and of return periods.
    const double middle = table.depth(Duration::minutes(std::sqrt(30.0 * 60.0)), std::sqrt(250.0)).inches();
    check("RAIN.DEPTH", "midway on log-log paper between 30 and 60 min, 10 and 25 years", middle,
          std::pow(1.33 * 1.61 * 1.70 * 2.08, 0.25), 1e-12,
          "geometric mean of four printed entries, NOAA Atlas 14, Ann Arbor", "read");
    // The intensity of the shortest duration holds below it.
    EXPECT_NEAR(table.intensity(Duration::minutes(1), 10).inchesPerHour(), 0.553 * 12, 1e-12);
    EXPECT_NEAR(table.intensity(Duration{}, 10).inchesPerHour(), 0.553 * 12, 1e-12);
    EXPECT_NEAR(table.depth(Duration::minutes(2.5), 10).inches(), 0.553 / 2, 1e-12);

    EXPECT_TRUE(rc::check("longer and rarer is more rain, and between the entries around it", [&] {
        const double minutes = *rc::gen::inRange(1, 86000);
        const double years = *rc::gen::inRange(100, 99000) / 100.0;
        const Length depth = table.depth(Duration::minutes(minutes), years);
        RC_ASSERT(table.depth(Duration::minutes(minutes * 1.004), years) > depth);
        RC_ASSERT(table.depth(Duration::minutes(minutes), years * 1.01) >= depth);
        RC_ASSERT(table.intensity(Duration::minutes(minutes * 1.004), years) <=
                  table.intensity(Duration::minutes(minutes), years) * (1 + 1e-12));
    }));
}

TEST(Rain, ReadsTheSpellingsOfPeople) {
    const std::vector<TableCell> cells = {TableCell{},
                                          2.0,
                                          std::string("10-yr"),
                                          std::string("100 years"),
                                          5.0,
                                          0.4,
                                          0.6,
                                          0.9,
                                          std::string("1 h"),
                                          1.2,
                                          std::string(" 1.8 (1.6-2.1)"),
                                          2.7,
                                          TableCell{},
                                          TableCell{},
                                          TableCell{},
                                          TableCell{},
                                          std::string("1 day:"),
                                          2.6,
                                          4.0,
                                          6.5,
                                          std::string("Source: the county"),
                                          TableCell{},
                                          TableCell{},
                                          TableCell{}};
    const RainTable table = RainTable::parse(cells, 4, inch);
    EXPECT_EQ(table.durations().size(), 3u);
    EXPECT_NEAR(table.depth(Duration::hours(1), 10).inches(), 1.8, 1e-15);
    EXPECT_NEAR(table.depth(Duration::days(1), 100).inches(), 6.5, 1e-15);

    // Rows that were pasted into one cell each, Spanish units, tabs, a carriage return.
    const RainTable oneColumn =
        RainTable::parse({std::string("by duration for ARI (years):, 1,2"),
                          std::string("5-min:, 0.321,0.378"), std::string("1 d\u00EDa:, 2.10,2.35")},
                         1, inch);
    EXPECT_NEAR(oneColumn.depth(Duration::days(1), 2).inches(), 2.35, 1e-15);
    const RainTable tabs = RainTable::parse("\t2\t10\r\n15 minutos\t0.5\t0.8\r\n2 horas\t1\t1.5\r\n", inch);
    EXPECT_NEAR(tabs.depth(Duration::hours(2), 10).inches(), 1.5, 1e-15);

    // A title that names the unit wins over the caller's.
    const RainTable metric = RainTable::parse("Precipitation depth (millimeters)\n,2\n1-hr,25.4\n", inch);
    EXPECT_NEAR(metric.depth(Duration::hours(1), 2).inches(), 1, 1e-12);
    EXPECT_EQ(durationText(Duration::minutes(60)), "60-min");
    EXPECT_EQ(durationText(Duration::hours(24)), "24-hr");
    EXPECT_EQ(durationText(Duration::days(60)), "60-day");
}

TEST(Rain, EachFaultHasItsSentence) {
    EXPECT_EQ(refusal(",2,10\n5-min,0.4,\n1-hr,1.2,1.8\n"),
              "table: a hole: there is no rain for 5-min at 10 years.");
    EXPECT_EQ(refusal(",2,10\n5-min,0.4,0.6\n,0.9,1.1\n1-hr,1.2,1.8\n"),
              "table: a hole: a duration is missing in the row below 5-min.");
    EXPECT_EQ(refusal(",2,,25\n5-min,0.4,0.5,0.6\n"),
              "table: a hole: a return period is missing above column 3.");
    EXPECT_EQ(refusal(",2,10\n1-hr,1.2,1.8\n5-min,0.4,0.6\n"),
              "table: out of order: 5-min stands below 60-min; durations must grow from top to bottom.");
    EXPECT_EQ(
        refusal(",10,2\n5-min,0.6,0.4\n"),
        "table: out of order: 2 years stands after 10 years; return periods must grow from left to right.");
    EXPECT_EQ(refusal(",2,10\n5-min,0.4,lots\n"),
              "table: the rain for 5-min at 10 years is \"lots\", which is not a depth above 0.");
    EXPECT_EQ(refusal(",2,10\n5-min,0.4,0\n"),
              "table: the rain for 5-min at 10 years is \"0\", which is not a depth above 0.");
    EXPECT_EQ(refusal(",2,10\n5-min,0.4,0.6\n10 mn,0.5,0.7\n"),
              "table: \"10 mn\" below 5-min is not a duration such as 5-min, 2-hr or 1-day.");
    EXPECT_EQ(refusal(",2,10\n5-min,0.6,0.4\n"),
              "table: the rain for 5-min at 10 years is less than for the shorter return period beside it.");
    EXPECT_EQ(refusal("5-min,0.6,0.4\n").substr(0, 32), "table: no return periods were fo");
    EXPECT_EQ(refusal(",2,10\n").substr(0, 30), "table: no durations were found");
    EXPECT_EQ(refusal("").substr(0, 30), "table: no durations were found");
    EXPECT_EQ(sentence([] { RainTable::parse({}, 0, inch); }).substr(0, 30),
              "table: no durations were found");
    // Intensities without the title that says so.
    EXPECT_NE(refusal(",2,10\n5-min,4.8,7.2\n1-hr,1.2,1.8\n").find("Is this a table of intensities?"),
              std::string::npos);

    const RainTable table = RainTable::parse(",2,10\n5-min,0.4,0.6\n24-hr,2.6,4\n", inch);
    EXPECT_EQ(sentence([&] { table.depth(Duration::hours(48), 10); }),
              "duration is 2880 minutes, beyond the rain table, which ends at 24-hr (1440 min).");
    EXPECT_EQ(sentence([&] { table.depth(Duration::hours(1), 100); }),
              "return is 100 years, outside the rain table, which holds 2 to 10 years.");
    EXPECT_EQ(sentence([&] { table.depth(Duration::hours(1), 1); }, Language::Spanish),
              "return es 1 a\u00F1o, fuera de la tabla de lluvia, que tiene de 2 a 10 a\u00F1os.");
    EXPECT_EQ(sentence([&] { table.depth(Duration{}, 10); }), "duration is 0; allowed: above 0.");
    EXPECT_EQ(sentence([&] { table.intensity(Duration::minutes(-1), 10); }),
              "duration is -1; allowed: 0 or more.");
}
