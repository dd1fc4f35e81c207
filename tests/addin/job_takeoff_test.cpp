// JOB.PIECES, JOB.CUTS, JOB.CREW and JOB.PIECES.FINDINGS: prices, codes and terms found by heading or label, words
// beside numbers, and one bad cell that spoils nothing else.
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>

#include "job_tables.h"
#include "trenchbook/core/cell.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

struct Goods : Tables {
    Range prices = table(4, {"Item", "Code", "Unit", "Pack",     //
                             "pipe", "PIPE-4SDR35", "ft", 10.0,  //
                             "wye", "WYE-4SDR35", "piece", 1.0,  //
                             "cement", "CEMENT", "pint", 1.0});
    Range codes = table(2, {"Piece", "Buy as", "", ""});
    Range terms = table(2, {"New sod", 0.25});

    std::vector<Value> taken(const std::string& units = "US", const std::string& language = "") const {
        std::vector<Value> all = values();
        all.resize(13);
        for (const Range& more : {prices, codes, terms}) all.emplace_back(more);
        all.emplace_back(units);
        if (!language.empty()) all.emplace_back(language);
        return all;
    }
};

// Net amount and fewest sticks by code.
std::map<std::string, std::pair<double, double>> goods(const std::vector<Value>& values) {
    const Numbers counted = numbers("JOB.PIECES", values);
    const Texts words = texts("JOB.PIECES.TEXT", values);
    EXPECT_EQ(counted.rows(), words.rows());
    std::map<std::string, std::pair<double, double>> found;
    for (std::size_t row = 0; row < words.rows(); ++row)
        found[word(words, row, 0)] = {cell(counted, row, 0), cell(counted, row, 1)};
    return found;
}
bool same(double one, double other) { return one == other || (std::isnan(one) && std::isnan(other)); }
std::string decimals(double number) {
    char text[32];
    std::snprintf(text, sizeof text, "%.2f", number);
    return text;
}

// Pipe cut from 10 ft sticks and from 25 ft sticks: 40, 60 and 25 ft of it.
TEST(JobTakeoff, AStickIsAsLongAsItsPackIsFoundByHeading) {
    Goods job;
    const auto tens = goods(job.taken());
    ASSERT_EQ(tens.count("PIPE-4SDR35"), 1u);
    EXPECT_GE(tens.at("PIPE-4SDR35").second, std::ceil(tens.at("PIPE-4SDR35").first / 10));
    job.prices.cells[1 * 4 + 3] = 25.0;
    const auto longer = goods(job.taken());
    EXPECT_LT(longer.at("PIPE-4SDR35").second, tens.at("PIPE-4SDR35").second);
    EXPECT_EQ(longer.at("PIPE-4SDR35").first, tens.at("PIPE-4SDR35").first);
    // The same columns in another order.
    for (std::size_t row = 0; row < job.prices.rows; ++row)
        std::reverse(job.prices.cells.begin() + static_cast<std::ptrdiff_t>(row * 4),
                     job.prices.cells.begin() + static_cast<std::ptrdiff_t>(row * 4 + 4));
    EXPECT_EQ(goods(job.taken()).at("PIPE-4SDR35"), longer.at("PIPE-4SDR35"));
}

TEST(JobTakeoff, ACodeIsBoughtAsAnother) {
    Goods job;
    const auto before = goods(job.taken());
    ASSERT_EQ(before.count("WYE-4SDR35"), 1u);
    job.codes = table(2, {"Buy as", "Piece", "Y4", "WYE-4SDR35"});
    const auto after = goods(job.taken());
    EXPECT_EQ(after.count("WYE-4SDR35"), 0u);
    ASSERT_EQ(after.count("Y4"), 1u);
    EXPECT_EQ(after.at("Y4").first, before.at("WYE-4SDR35").first);
    EXPECT_EQ(after.size(), before.size());
}

TEST(JobTakeoff, ABadPriceCellSpoilsItsCodeAlone) {
    const Goods good;
    const auto before = goods(good.taken());
    for (const std::size_t row : {2u, 3u}) {
        Goods bad = good;
        bad.prices.cells[row * 4 + 3] = std::string(errorMark);
        const auto after = goods(bad.taken());
        ASSERT_EQ(after.size(), before.size());
        for (const auto& [code, numbers] : before)
            EXPECT_TRUE(same(after.at(code).first, numbers.first) &&
                        same(after.at(code).second, numbers.second))
                << code;
    }
    Goods bad = good;
    bad.prices.cells[1 * 4 + 3] = "ten";
    const auto after = goods(bad.taken());
    ASSERT_EQ(after.size(), before.size());
    for (const auto& [code, numbers] : before)
        if (code != "PIPE-4SDR35" && code != "CEMENT" && code != "PRIMER") {
            EXPECT_TRUE(same(after.at(code).first, numbers.first)) << code;
        }
    EXPECT_TRUE(isBlankCell(after.at("PIPE-4SDR35").second)) << "no stick, no count of sticks";
    for (const char* glue : {"CEMENT", "PRIMER"})
        EXPECT_TRUE(std::isnan(after.at(glue).first)) << glue << " of the joints between its sticks";
}

TEST(JobTakeoff, RefusalsNameTheHeading) {
    Goods job;
    job.prices.cells[3] = "Packs";
    EXPECT_NE(whyNot("JOB.PIECES", job.taken()).find("Pack"), std::string::npos);
    Goods swapped;
    swapped.codes.cells[1] = "Buy";
    EXPECT_NE(whyNot("JOB.PIECES", swapped.taken()).find("Buy as"), std::string::npos);
}

TEST(JobTakeoff, FindingsTellWhatIsNotCounted) {
    Goods job;
    job.runs.cells[4 * job.runs.columns + 3] = "soon";  // side, C-B
    const Texts findings = texts("JOB.PIECES.FINDINGS", job.taken());
    bool told = false;
    for (std::size_t row = 0; row < findings.rows(); ++row) {
        EXPECT_NE(word(findings, row, 3), "");
        told = told || (word(findings, row, 1) == "Runs" && word(findings, row, 2) == "C-B" &&
                        word(findings, row, 0) != "");
    }
    EXPECT_TRUE(told);
    EXPECT_NE(texts("JOB.PIECES.FINDINGS", job.taken("US", "es")).items, findings.items);
}

TEST(JobTakeoff, CutsInWordsAreTheCuts) {
    const Goods job;
    const Numbers cuts = numbers("JOB.CUTS", job.taken());
    const Texts words = texts("JOB.CUTS.TEXT", job.taken()),
                metric = texts("JOB.CUTS.TEXT", job.taken("metric"));
    ASSERT_EQ(words.rows(), cuts.rows());
    ASSERT_GT(words.rows(), 0u);
    double feet = 0;
    for (std::size_t row = 0; row < words.rows(); ++row) {
        const double first = cell(cuts, row, 0), many = cell(cuts, row, 1);
        EXPECT_EQ(word(words, row, 0), "4 SDR35");
        EXPECT_EQ(word(words, row, 1), many > 1
                                           ? decimals(first).substr(0, decimals(first).find('.')) + " to " +
                                                 std::to_string(static_cast<int>(first + many) - 1)
                                           : std::to_string(static_cast<int>(first)));
        EXPECT_EQ(word(words, row, 2), std::to_string(static_cast<int>(many)));
        EXPECT_EQ(word(words, row, 3), decimals(cell(cuts, row, 2)));
        EXPECT_NE(word(words, row, 4).find_first_of("'\""), std::string::npos) << "feet and inches";
        EXPECT_EQ(word(words, row, 5), isBlankCell(cell(cuts, row, 3)) ? "" : decimals(cell(cuts, row, 3)));
        EXPECT_EQ(word(words, row, 7), "10.00");
        feet += cell(cuts, row, 2) * many;
    }
    EXPECT_NEAR(feet, goods(job.taken()).at("PIPE-4SDR35").first, 1e-6) << "every foot is cut once";
    // The tape of a metric job shows millimeters.
    for (std::size_t row = 0; row < metric.rows(); ++row) {
        EXPECT_NE(word(metric, row, 4).find(" mm"), std::string::npos) << word(metric, row, 4);
        EXPECT_NEAR(std::stod(word(metric, row, 4)) / 1000, std::stod(word(metric, row, 3)), 0.0056);
    }
}

// Bench mark at 101.25; bottom and top by hand at the outlet: invert 96.9, 0.120 in wall and 4.215 in outside of
// ASTM D3034, 3 in bedding.
TEST(JobTakeoff, TheCrewMeasuresDownFromTheBenchmark) {
    Goods job;
    job.terms = table(2, {"Stake every", 20.0, "Benchmark", 101.25});
    const Numbers stakes = numbers("JOB.STAKES", job.taken());
    const Texts crew = texts("JOB.CREW", job.taken());
    // A row a stake; where the pipe goes on at its level into the next run, one row for both.
    std::size_t row = 0;
    bool outlet = false;
    for (std::size_t stake = 0; stake < stakes.rows(); ++stake) {
        const std::string bottom = decimals(101.25 - cell(stakes, stake, 4)),
                          top = decimals(101.25 - cell(stakes, stake, 5));
        if (stake > 0 && cell(stakes, stake, 1) == cell(stakes, stake - 1, 1) &&
            word(crew, row - 1, 3) == bottom && word(crew, row - 1, 4) == top)
            continue;
        ASSERT_LT(row, crew.rows());
        EXPECT_EQ(word(crew, row, 3), bottom);
        EXPECT_EQ(word(crew, row, 4), top);
        EXPECT_EQ(word(crew, row, 5), decimals(cell(stakes, stake, 6)));
        if (word(crew, row, 1) == "Out") {
            outlet = true;
            EXPECT_EQ(word(crew, row, 0), "0");
            EXPECT_EQ(word(crew, row, 2), "B-Out");
            EXPECT_EQ(word(crew, row, 3), decimals(101.25 - (96.9 - (0.120 + 3) / 12)));
            EXPECT_EQ(word(crew, row, 4), decimals(101.25 - (96.9 + (4.215 - 0.120) / 12)));
        }
        ++row;
    }
    EXPECT_EQ(row, crew.rows());
    EXPECT_TRUE(outlet);
    job.terms = table(2, {"Stake every", 20.0});
    const Texts without = texts("JOB.CREW", job.taken());
    for (row = 0; row < without.rows(); ++row) EXPECT_EQ(word(without, row, 3) + word(without, row, 4), "");
}

}  // namespace
}  // namespace trenchbook::addin
