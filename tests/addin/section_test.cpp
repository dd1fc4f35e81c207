// JOB.PIT.SECTION: the block for the chart of the pit cut open.
#include <algorithm>
#include <utility>

#include "catalog/drawing_pens.h"
#include "job_tables.h"
#include "reference.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

// A roof whose line ends at a tee in a pit of 10 by 4 ft, 3 ft of rock under 1 ft of soil.
std::vector<Value> asked(double rain, const char* shape = "type II", const char* language = "en") {
    std::vector<Value> all = {
        table(2, {"Rain", 6.0, "Duration", 5.0, "Today", 46400.0}),
        table(3, {"Node", "Kind", "Ground", "A", "downspout", 99.0, "T", "tee", 97.0}),
        table(4, {"Inlet", "Node", "Roof area", "Roof C", "roof", "A", 800.0, 1.0}),
        table(8, {"Line", "From", "To", "Length", "Pipe", "Slope", "Outlet level", "Surface up", "main", "A",
                  "T", 40.0, "4 SDR35", "1%", 95.5, "lawn"})};
    all.resize(13);
    all[6] = table(2, {"Tee at node", "T", "Length", 10.0, "Width", 4.0, "Rock depth", 3.0, "Soil over it",
                       1.0, "Design soak rate", 1.0});
    for (Value value : std::vector<Value>{rain, 24.0, shape, 252 / 25.4, 130 / 25.4, "us", language})
        all.push_back(value);
    return all;
}

using Points = std::vector<std::pair<double, double>>;
Points pointsOf(const Numbers& block, const std::string& name) {
    Points all;
    for (const Pen& pen : pitPens().pens)
        for (const PenStrip& strip : pen.strips)
            for (std::size_t row = strip.first; pen.name == name && row < strip.first + strip.rows; ++row)
                if (!isBlankCell(cell(block, row, 2 * strip.pair)))
                    all.emplace_back(cell(block, row, 2 * strip.pair), cell(block, row, 2 * strip.pair + 1));
    return all;
}

TEST(JobPitSection, DrawsRockAndWaterToScale) {
    const Numbers block = numbers("JOB.PIT.SECTION", asked(4));
    ASSERT_EQ(block.rows(), pitPens().rows + 1);
    EXPECT_EQ(cell(block, pitPens().rows, 0), 0);  // all had room
    const Points rock = pointsOf(block, "Rock"), water = pointsOf(block, "Water");
    ASSERT_EQ(rock.size(), 5u);
    ASSERT_GE(water.size(), 2u);
    // Length and rock depth are drawn in two scales of the usual row; their ratio on paper follows.
    const double wide = rock[1].first - rock[0].first, high = rock[2].second - rock[1].second;
    reference::check("JOB.PIT.SECTION", "a pit of 10 ft at 5 ft to the inch, mm", wide, 10 / 5.0 * 25.4, 1e-9,
                     "the drawing scale, worked by hand", "computed");
    // A storm of 4 in on 800 sq ft brings 267 cu ft; the pit holds 48: it fills.
    reference::check("JOB.PIT.SECTION",
                     "highest water over the rock's height, where the storm is too much for it",
                     (water[0].second - rock[0].second) / high, 1, 1e-9,
                     "the balance of rain and storage, by hand", "computed");
    const Numbers little = numbers("JOB.PIT.SECTION", asked(0.5, "even"));
    EXPECT_LT((pointsOf(little, "Water")[0].second - pointsOf(little, "Rock")[0].second) / high, 1);
    EXPECT_NE(pointsOf(block, "Words"),
              pointsOf(numbers("JOB.PIT.SECTION", asked(4, "type II", "es")), "Words"));
}

TEST(JobPitSection, IsBlankWithoutAPit) {
    std::vector<Value> without = asked(4);
    without[6] = Value();
    const Numbers block = numbers("JOB.PIT.SECTION", without);
    EXPECT_TRUE(pointsOf(block, "Words").empty() && pointsOf(block, "Rock").empty());
}

TEST(JobPitSection, PensHaveRoomAndCellsOfTheirOwn) {
    std::vector<int> taken(pitPens().pairs * pitPens().rows);
    for (const Pen& pen : pitPens().pens)
        for (const PenStrip& strip : pen.strips) {
            ASSERT_LT(strip.pair, pitPens().pairs) << pen.name;
            ASSERT_LE(strip.first + strip.rows, pitPens().rows) << pen.name;
            for (std::size_t row = strip.first; row < strip.first + strip.rows; ++row)
                EXPECT_EQ(taken[strip.pair * pitPens().rows + row]++, 0) << pen.name << " " << row;
        }
}

}  // namespace
}  // namespace trenchbook::addin
