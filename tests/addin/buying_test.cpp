// Digging and buying as Calc calls it.
#include <algorithm>
#include <map>

#include "catalog_harness.h"
#include "reference.h"

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

// Planks and logs of two published lists in one call, row by row in turn.
TEST(BuyingFunctions, ACutListOfSeveralKindsIsAsShortAsEachAlone) {
    std::map<std::string, const reference::Row*> printed;
    Range kinds = column({}), pieces = column({}), stocks = column({});
    const auto add = [&](const char* kind, double piece, double stock) {
        for (Range* range : {&kinds, &pieces, &stocks}) ++range->rows;
        kinds.cells.emplace_back(kind);
        pieces.cells.emplace_back(piece);
        stocks.cells.emplace_back(stock);
    };
    for (const reference::Row& row : reference::rows("20h_cutting_stock.csv")) {
        if (row.item.find("also the optimum") != std::string::npos) printed["plank"] = &row;
        if (row.item.starts_with("Logs")) printed["log"] = &row;
    }
    ASSERT_EQ(printed.size(), 2u);
    ASSERT_EQ(printed["plank"]->word("lengths"), "2.5,0.9,3.1,1.4,1.5,2.0,1.9,1.2,0.3,0.4,3.9");
    ASSERT_EQ(printed["log"]->word("pieces"), "255x10,750x7,550x13");
    const std::vector<double> planks = {2.5, 0.9, 3.1, 1.4, 1.5, 2.0, 1.9, 1.2, 0.3, 0.4, 3.9};
    for (std::size_t i = 0; i < 30; ++i) {
        if (i < planks.size()) add("plank", planks[i], 5);
        add("log", i < 10 ? 255 : i < 17 ? 750 : 550, 2000);
    }
    const Numbers list = numbers("STICKS.LIST", {kinds, pieces, stocks, 0.0});
    ASSERT_EQ(list.columns, 5u);
    ASSERT_EQ(list.rows(), 41u + 1) << "no piece is longer than its stick: one row each, and a blank one";
    std::map<std::string, std::map<double, double>> used;
    std::vector<int> seen(kinds.rows, 0);
    for (std::size_t row = 0; row < 41; ++row) {
        const double* cells = &list.items[5 * row];
        const auto place = static_cast<std::size_t>(cells[0]) - 1;
        ++seen[place];
        EXPECT_EQ(cells[2], 1) << row;
        EXPECT_NEAR(cells[3], std::get<double>(pieces.cells[place]), 1e-6) << row;
        used[std::get<std::string>(kinds.cells[place])][cells[1]] +=
            cells[3] + (isBlankCell(cells[4]) ? 0 : cells[4]);
    }
    EXPECT_EQ(seen, std::vector<int>(kinds.rows, 1)) << "every piece once";
    for (const auto& [kind, row] : printed) {
        reference::check("STICKS.LIST", *row, static_cast<double>(used[kind].size()));
        const double stock = kind == "log" ? 2000 : 5;
        for (const auto& [stick, length] : used[kind])
            EXPECT_NEAR(length, stock, 1e-6) << kind << " " << stick << ": pieces and offcut make the stick";
    }
}

TEST(BuyingFunctions, ACutListCountsWholeSticksOfALongPiece) {
    // 47 ft of 20 ft sticks is two whole ones and 7 ft, which shares a stick with 12 ft; 14 ft fills its own.
    const Range kind = column({"6", "4", Nothing{}, "4"}), piece = column({14.0, 47.0, "", "12'"}),
                stock = column({14.0, 20.0, Nothing{}, 20.0});
    const std::vector<std::vector<double>> expected = {
        {1, 1, 1, 14, 0}, {2, 1, 2, 20, 0}, {4, 3, 1, 12, -1}, {2, 3, 1, 7, 20 - 12 - 7 - 2 * 0.125 / 12}};
    const Numbers list = numbers("STICKS.LIST", {kind, piece, stock});
    ASSERT_EQ(list.rows(), expected.size() + 1);
    EXPECT_TRUE(isBlankCell(list.items[5 * expected.size()]))
        << "Calc would repeat a single row over a whole block";
    for (std::size_t row = 0; row < expected.size(); ++row)
        for (std::size_t c = 0; c < 5; ++c) {
            const double cell = list.items[5 * row + c];
            if (expected[row][c] < 0)
                EXPECT_TRUE(isBlankCell(cell)) << row << "," << c;
            else
                EXPECT_NEAR(cell, expected[row][c], 1e-6) << row << "," << c;
        }
    const Numbers metric =
        numbers("STICKS.LIST", {column({"4"}), column({14.0}), column({6.0}), 0.0, "metric"});
    EXPECT_EQ(metric.rows(), 2u + 1);
    EXPECT_EQ(metric.items[2], 2);
    EXPECT_NEAR(metric.items[5 + 3], 2, 1e-9);
    EXPECT_TRUE(isBlankCell(numbers("STICKS.LIST", {column({""}), column({""}), column({""})}).items[0]));
    EXPECT_EQ(whyNot("STICKS.LIST", {column({"4", "4"}), column({5.0, 6.0}), column({20.0, 14.0})}),
              "stock is 14 ft (4.2672 m); allowed: one length for each kind: 20 ft (6.096 m).");
    EXPECT_EQ(whyNot("STICKS.LIST", {column({"4", "4"}), column({5.0}), column({20.0, 20.0})}),
              "pieces is 1 row; allowed: 2 rows, as many as kind.");
}

// A saw takes 1/8 in where nothing is said: two pieces of (20 ft - 1/8 in) / 2 and the cut between them are a stick.
TEST(BuyingFunctions, TheUsualSawCut) {
    const double half = (20 - 0.125 / 12) / 2;
    EXPECT_EQ(number("STICKS.COUNT", {column({half, half}), 20.0}), 1);
    EXPECT_EQ(number("STICKS.COUNT", {column({half, half + 0.001}), 20.0}), 2);
    EXPECT_EQ(number("STICKS.COUNT", {column({10.0, 10.0}), 20.0}), 2);
    EXPECT_EQ(number("STICKS.COUNT", {column({10.0, 10.0}), 20.0, 0.0}), 1);
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
              "length: -20 in row 2; allowed: above 0.");
    EXPECT_EQ(whyNot("TRENCH.VOLUME", {column({50.0, 20.0}), 1.0, column({1.5}), column({2.5, 1.0})}),
              "cut up is a range of 1 x 1; allowed: 2 rows like the other columns, or a single cell.");
    EXPECT_EQ(whyNot("SPOIL.LOOSE", {10.0, 25.0}),
              "swell is 25; allowed: from 0 to 1. If 25 percent is meant, write 0.25.");
    EXPECT_EQ(whyNot("ROCK.TONS", {3.0, 0.0}), "density is 0; allowed: above 0.");
    EXPECT_EQ(whyNot("ROCK.TONS", {3.0, 1.4, 10.0}),
              "waste is 10; allowed: from 0 to 1. If 10 percent is meant, write 0.1.");
    EXPECT_EQ(whyNot("STICKS.COUNT", {column({12.0, -8.0}), 20.0}), "pieces: -8 in row 2; allowed: above 0.");
    EXPECT_EQ(whyNot("STICKS.COUNT", {column({12.0, "long"}), 20.0}).substr(0, 31),
              "pieces: \"long\" in row 2; allowe");
    EXPECT_EQ(whyNot("STICKS.COUNT", {column({12.0}), 20.0, -0.1}), "kerf is -0.1; allowed: 0 or more.");
    EXPECT_EQ(whyNot("STICKS.COUNT", {column({12.0}), 0.0}),
              "stock is 0; allowed: from 0.0033 to 98425 ft (0.001006 to 30000 m).");
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
