// Digging and buying as Calc calls it.
#include <algorithm>

#include "catalog_harness.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

TEST(BuyingFunctions, TrenchesAddUp) {
    EXPECT_NEAR(number("TRENCH.VOLUME", {50.0, 1.0, 1.5, 2.5}), 100.0 / 27, 1e-12);
    EXPECT_NEAR(number("TRENCH.VOLUME", {"50'", "12 in", "18 in", "2' 6\""}), 100.0 / 27, 1e-12);
    // Columns: blank rows are passed over, a single width holds for every row.
    const Range length = column({50.0, Nothing{}, 30.0}), up = column({1.5, "", 2.0}),
                down = column({2.5, Nothing{}, 0.0});
    EXPECT_NEAR(number("TRENCH.VOLUME", {length, 1.0, up, down}), (100 + 30) / 27.0, 1e-12);
    EXPECT_NEAR(number("TRENCH.VOLUME", {length, column({1.0, Nothing{}, 2.0}), up, down}), (100 + 60) / 27.0,
                1e-12);
    EXPECT_EQ(
        number("TRENCH.VOLUME", {column({Nothing{}, Nothing{}}), 1.0, column({"", ""}), column({"", ""})}),
        0);
}

TEST(BuyingFunctions, UsAndMetricAgree) {
    expectUnitsAgree("TRENCH.VOLUME", {50.0, 1.0, 1.5, 2.5});
    expectUnitsAgree("TRENCH.VOLUME", {column({50.0, 20.0}), 1.0, column({1.5, 1.0}), column({2.5, 1.25})});
    expectUnitsAgree("SPOIL.LOOSE", {10.0, 0.25});
    expectUnitsAgree("ROCK.TONS", {3.5, 1.4, 0.1});
    expectUnitsAgree("STICKS.COUNT", {column({12.0, 8.0, 7.0, 13.0, 4.5}), 20.0});
    expectUnitsAgree("STICKS.COUNT", {column({12.0, 8.0, 7.0, 13.0, 4.5}), 20.0, 0.0});
}

TEST(BuyingFunctions, PlansCoverThePiecesOnce) {
    const Range pieces = column({12.0, 8.0, Nothing{}, 7.0, 47.0, 4.5, "3' 6\""});
    const double sticks = number("STICKS.COUNT", {pieces, 20.0, 0.0});
    EXPECT_EQ(sticks, 5);  // 82 ft: 47 is two sticks and 7; 12 + 8, 7 + 7 + 4.5, and 3.5 alone
    const Numbers plan = numbers("STICKS.PLAN", {pieces, 20.0, 0.0});
    ASSERT_EQ(plan.columns, 4u);
    std::vector<double> cut;
    double offcuts = 0, last = 0;
    for (std::size_t row = 0; row < plan.rows(); ++row) {
        const double* cells = &plan.items[4 * row];
        EXPECT_TRUE(cells[0] == last || cells[0] == last + 1) << row;
        last = cells[0];
        cut.push_back(cells[1]);
        if (!isBlankCell(cells[2])) offcuts += cells[2];
        EXPECT_EQ(cells[3], 0) << "proved";
    }
    EXPECT_EQ(last, sticks);
    std::sort(cut.begin(), cut.end());
    const std::vector<double> expected = {3.5, 4.5, 7, 7, 8, 12, 20, 20};
    ASSERT_EQ(cut.size(), expected.size());
    for (std::size_t i = 0; i < cut.size(); ++i) EXPECT_NEAR(cut[i], expected[i], 1e-5) << i;
    EXPECT_NEAR(offcuts, 5 * 20 - 82, 1e-5);
    // In metres.
    const Numbers metric =
        numbers("STICKS.PLAN", inMetric("STICKS.PLAN", {column({12.0, 8.0, 7.0}), 20.0, 0.0}));
    EXPECT_NEAR(metric.items[1], 12 * 0.3048, 1e-9);
}

TEST(BuyingFunctions, PacksRoundUpOnce) {
    EXPECT_EQ(number("BUY.COUNT", {3.0000000001}), 3);
    EXPECT_EQ(number("BUY.COUNT", {23.0, 0.05, 10.0}), 3);
    EXPECT_EQ(number("BUY.COUNT", {100.0, 0.1}), 110);
    EXPECT_EQ(number("BUY.COUNT", {0.0}), 0);
}

TEST(BuyingFunctions, BadArgumentsAreNamed) {
    EXPECT_EQ(whyNot("TRENCH.VOLUME", {0.0, 1.0, 1.5, 2.5}), "length is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("TRENCH.VOLUME", {50.0, 1.0, -1.5, 2.5}), "cut up is -1.5; allowed: 0 or more.");
    EXPECT_EQ(whyNot("TRENCH.VOLUME", {column({50.0, 20.0}), 1.0, column({1.5, "deep"}), column({2.5, 1.0})}),
              "cut up: \"deep\" in row 2; allowed: a length in ft, such as 12.4, 5' 6-1/2\", 66 1/2 in.");
    EXPECT_EQ(
        whyNot("TRENCH.VOLUME", {column({50.0, 20.0}), 1.0, column({1.5, 1.0}), column({2.5, Nothing{}})}),
        "cut down: blank in row 2; allowed: a length in ft, such as 12.4, 5' 6-1/2\", 66 1/2 in.");
    EXPECT_EQ(whyNot("TRENCH.VOLUME", {column({50.0, -20.0}), 1.0, column({1.5, 1.0}), column({2.5, 1.0})}),
              "row 2: length is -20; allowed: above 0.");
    EXPECT_EQ(whyNot("TRENCH.VOLUME", {column({50.0, 20.0}), 1.0, column({1.5}), column({2.5, 1.0})}),
              "cut up is a range of 1 x 1; allowed: 2 rows like the other columns, or a single cell.");
    EXPECT_EQ(whyNot("SPOIL.LOOSE", {10.0, 25.0}),
              "swell is 25; allowed: from 0 to 1. If 25 percent is meant, write 0.25.");
    EXPECT_EQ(whyNot("ROCK.TONS", {3.0, 0.0}), "density is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("ROCK.TONS", {3.0, 1.4, 10.0}),
              "waste is 10; allowed: from 0 to 1. If 10 percent is meant, write 0.1.");
    EXPECT_EQ(whyNot("STICKS.COUNT", {column({12.0, -8.0}), 20.0}),
              "one of the pieces is -8 ft (-2.4384 m); allowed: lengths above 0.");
    EXPECT_EQ(whyNot("STICKS.COUNT", {column({12.0, "long"}), 20.0}).substr(0, 31),
              "pieces: \"long\" in row 2; allowe");
    EXPECT_EQ(whyNot("STICKS.COUNT", {column({12.0}), 20.0, -0.1}), "kerf is -0.1; allowed: 0 or more.");
    EXPECT_EQ(whyNot("STICKS.COUNT", {column({12.0}), 0.0}), "stock is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("STICKS.PLAN", {column({Nothing{}}), 20.0}),
              "pieces is an empty list; allowed: at least one length.");
    EXPECT_EQ(whyNot("BUY.COUNT", {-1.0}), "net is -1; allowed: 0 or more.");
    EXPECT_EQ(whyNot("BUY.COUNT", {1.0, 5.0}),
              "waste is 5; allowed: from 0 to 1. If 5 percent is meant, write 0.05.");
    EXPECT_EQ(whyNot("BUY.COUNT", {1.0, 0.0, 0.0}), "pack is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("BUY.COUNT", {"many"}), "net is \"many\"; allowed: a number.");
}

}  // namespace
}  // namespace trenchbook::addin
