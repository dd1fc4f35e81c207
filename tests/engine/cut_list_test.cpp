// Cut lists of several kinds of pipe: whole sticks in one row, kinds apart, refusals.
#include "trenchbook/takeoff/cut_list.h"

#include <gtest/gtest.h>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

PieceToCut piece(const char* kind, double feet, double stock) {
    return {kind, Length::feet(feet), Length::feet(stock)};
}

TEST(CutList, WholeSticksShareARow) {
    // 21 ft from 10 ft sticks: two whole ones and 1 ft. With the cut, 9 + 1 ft do not come out of one stick.
    const std::vector<PieceToCut> pieces = {piece("4", 21, 10), piece("4", 9, 10)};
    const CutList list = cutList(pieces, Length::inches(0.125));
    ASSERT_EQ(list.rows.size(), 3u);
    EXPECT_EQ(list.rows[0].piece, 0u);
    EXPECT_EQ(list.rows[0].stick, 1u);
    EXPECT_EQ(list.rows[0].many, 2u);
    EXPECT_NEAR(list.rows[0].leftOver->feet(), 0, 1e-6);
    EXPECT_EQ(list.rows[1].stick, 3u);
    ASSERT_EQ(list.sticks.size(), 1u);
    EXPECT_EQ(list.sticks[0].count, 4u);
    EXPECT_EQ(list.sticks[0].fewest, 4u);
    // Without a kerf the last two do.
    EXPECT_EQ(cutList(pieces, Length()).sticks[0].count, 3u);
}

TEST(CutList, KindsAreApart) {
    const std::vector<PieceToCut> pieces = {piece("6", 7, 14), piece("4", 5, 10), piece("6", 7, 14)};
    const CutList list = cutList(pieces, Length());
    ASSERT_EQ(list.sticks.size(), 2u);
    EXPECT_EQ(list.sticks[0].kind, "6");
    EXPECT_EQ(list.sticks[0].count, 1u);
    ASSERT_EQ(list.rows.size(), 3u);
    EXPECT_FALSE(list.rows[0].leftOver) << "told on the stick's last row";
    EXPECT_NEAR(list.rows[1].leftOver->feet(), 0, 1e-6);
    EXPECT_EQ(list.rows[2].piece, 1u);
    EXPECT_EQ(list.rows[2].stick, 1u) << "each kind counts its own sticks";
    EXPECT_NEAR(list.rows[2].leftOver->feet(), 5, 1e-6);
    EXPECT_TRUE(cutList({}, Length()).rows.empty());
}

TEST(CutList, OneStickLengthAKind) {
    const std::vector<PieceToCut> pieces = {piece("4", 5, 10), piece("4", 5, 20)};
    try {
        cutList(pieces);
        ADD_FAILURE() << "two lengths were taken";
    } catch (const Error& error) {
        EXPECT_EQ(error.argument(), "stock");
        EXPECT_NE(error.sentence(Language::Spanish).find("un solo largo por clase"), std::string::npos);
    }
    const std::vector<PieceToCut> none = {piece("4", 0, 10)};
    EXPECT_THROW(cutList(none), Error);
}

}  // namespace
}  // namespace trenchbook
