// LAYOUT.LAID: where nodes lie by the tapes taken after the work.
#include <cmath>

#include "job_tables.h"
#include "reference.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

// Corners 40 ft apart; A left of them, planned 30 ft from both.
std::vector<Value> lot() {
    return {table(4, {"Point", "X", "Y", "Side", "W", 0.0, 0.0, "", "E", 40.0, 0.0, "", "A", "", "", "left"}),
            Nothing(),
            table(3, {"Node", "Tie 1", "Tie 2", "A", "W 30", "E 30"}),
            Nothing(),
            Nothing(),
            Nothing()};
}

TEST(LayoutLaid, IsWhereTheNewTapesMeet) {
    std::vector<Value> values = lot();
    values.emplace_back(
        table(4, {"Node", "Invert", "Tie 1", "Tie 2", "A", 96.4, "W 31", "E 30", "B", 96.0, "", ""}));
    const Numbers laid = numbers("LAYOUT.LAID", values);
    ASSERT_EQ(laid.rows(), 2u);
    const double x = (31.0 * 31 - 30.0 * 30 + 40.0 * 40) / 80, y = std::sqrt(31.0 * 31 - x * x);
    const char* hand = "two circles, worked by hand";
    reference::check("LAYOUT.LAID", "x of a node 31 and 30 ft from corners 40 ft apart", cell(laid, 0, 0), x,
                     1e-6, hand, "computed");
    reference::check("LAYOUT.LAID", "how far from 30 and 30 ft", cell(laid, 0, 2),
                     std::hypot(x - 20, y - std::sqrt(500.0)), 1e-6, hand, "computed");
    for (std::size_t column = 0; column < 3; ++column)
        EXPECT_TRUE(isBlankCell(cell(laid, 1, column))) << column;
    EXPECT_NE(whyNot("LAYOUT.LAID", lot()), "OK");  // nothing measured
}

}  // namespace
}  // namespace trenchbook::addin
