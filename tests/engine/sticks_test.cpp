#include "trenchbook/takeoff/sticks.h"

#include <glpk.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>
#include <sstream>

#include "reference.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

using namespace reference;

// "20x100,5" is a hundred pieces of 20 and one of 5.
std::vector<Length> pieceList(const std::string& text) {
    std::vector<Length> pieces;
    std::istringstream in(text);
    for (std::string item; std::getline(in, item, ',');) {
        const std::size_t times = item.find('x');
        const int count = times == std::string::npos ? 1 : std::stoi(item.substr(times + 1));
        pieces.insert(pieces.end(), count, Length::metres(std::stod(item)));
    }
    return pieces;
}

std::string show(const std::vector<Length>& pieces, Length stock, Length kerf) {
    std::ostringstream out;
    out << "stock " << stock.metres() << " m, kerf " << kerf.metres() << " m, pieces";
    for (const Length piece : pieces) out << ' ' << piece.metres();
    return out.str();
}

// Empty when the plan is sound: every piece once, no stick overfull, offcuts right.
std::string faults(const CuttingPlan& plan, const std::vector<Length>& pieces, Length stock, Length kerf) {
    constexpr double hair = 1e-4;
    std::vector<double> covered(pieces.size(), 0);
    std::ostringstream out;
    for (const Stick& stick : plan.sticks) {
        double used = 0;
        for (const StickPart& part : stick.parts) {
            covered[part.piece] += part.length.metres();
            used += part.length.metres();
        }
        const double cuts = static_cast<double>(stick.parts.size()) - 1;
        if (stick.parts.empty()) out << "a stick without pieces; ";
        if (used + cuts * kerf.metres() > stock.metres() + hair)
            out << "a stick overfull by " << used + cuts * kerf.metres() - stock.metres();
        const double left = stock.metres() - used - (cuts + 1) * kerf.metres();
        if (std::fabs(stick.offcut.metres() - std::max(0.0, left)) > hair)
            out << "offcut " << stick.offcut.metres();
    }
    for (std::size_t i = 0; i < pieces.size(); ++i)
        if (std::fabs(covered[i] - pieces[i].metres()) > hair)
            out << "piece " << i << " of " << pieces[i].metres() << " covered by " << covered[i] << "; ";
    if (plan.fewest > plan.sticks.size()) out << "bound above the count";
    return out.str();
}

// Each as it is printed; those of 120 items are hard for the plain search.
TEST(Sticks, AgreeWithPublishedTriplets) {
    const std::vector<Row>& triplets = rows("20j_bin_packing_triplets.csv");
    ASSERT_EQ(triplets.size(), 4u);
    for (const Row& row : triplets) {
        const Length stock = Length::metres(row.input("capacity"));
        const std::vector<Length> pieces = pieceList(row.word("sizes"));
        ASSERT_EQ(pieces.size(), 120u) << row.item;
        const CuttingPlan plan = cutSticks(pieces, stock, Length{});
        EXPECT_EQ(faults(plan, pieces, stock, Length{}), "") << row.item;
        EXPECT_TRUE(plan.proved()) << row.item;
        check("STICKS.COUNT", row, static_cast<double>(plan.sticks.size()));
    }
}

// Falkenauer's recipe for triplets, from memory: of each bin the first item is 38 to 49 % of it, the second
// from a quarter to half of what is left, the third the rest. All bins are full, so their number is best.
TEST(Sticks, TripletsByTheRecipeAreProved) {
    std::mt19937 random(1996);
    const auto between = [&](int least, int most) {
        return std::uniform_int_distribution<int>(least, most)(random);
    };
    for (int trial = 0; trial < 12; ++trial) {
        std::vector<Length> pieces;
        while (pieces.size() < 120) {
            const int a = between(380, 490), b = between(250, (1000 - a) / 2 - 1);
            for (const int piece : {a, b, 1000 - a - b}) pieces.push_back(Length::millimetres(piece));
        }
        const Length stock = Length::metres(1);
        const CuttingPlan plan = cutSticks(pieces, stock, Length{});
        ASSERT_EQ(plan.sticks.size(), 40u) << show(pieces, stock, Length{});
        ASSERT_TRUE(plan.proved()) << show(pieces, stock, Length{});
        ASSERT_EQ(faults(plan, pieces, stock, Length{}), "") << show(pieces, stock, Length{});
    }
}

// What is taped on a lot: 120 pieces to the eighth of an inch out of 20 ft sticks, and the same to the
// millimeter out of 6 m; few of either take more than the short search, and all must be proved.
TEST(Sticks, OfAHundredAndTwentyPiecesAreProved) {
    std::mt19937 random(120);
    const auto between = [&](int least, int most) {
        return std::uniform_int_distribution<int>(least, most)(random);
    };
    for (int trial = 0; trial < 40; ++trial) {
        const bool inches = trial % 2 == 0;
        const Length stock = inches ? Length::feet(20) : Length::metres(6);
        const Length kerf = inches ? Length::inches(0.125) : Length::millimetres(3);
        std::vector<Length> pieces;
        while (pieces.size() < 120)
            pieces.push_back(inches ? Length::inches(between(32, 1400) / 8.0)
                                    : Length::millimetres(between(100, 4500)));
        const CuttingPlan plan = cutSticks(pieces, stock, kerf);
        EXPECT_TRUE(plan.proved()) << show(pieces, stock, kerf);
        ASSERT_EQ(faults(plan, pieces, stock, kerf), "") << show(pieces, stock, kerf);
    }
}

TEST(Sticks, AgreeWithPublishedOptima) {
    for (const Row& row : rows("20h_cutting_stock.csv")) {
        const bool optimum = row.output == "fewest bins" || row.item == "Paper rolls: optimum" ||
                             row.item == "Paper rolls: lower bound" || row.item.starts_with("Logs") ||
                             row.item.starts_with("Rolls of 100") ||
                             row.item.find("also the optimum") != std::string::npos;
        const bool waste = row.item == "Paper rolls: waste at the optimum";
        if (!optimum && !waste) continue;
        const Length stock = Length::metres(row.input(row.has("stock") ? "stock" : "capacity"));
        std::string list;
        for (const char* name : {"demand", "sizes", "lengths", "pieces"})
            if (row.has(name)) list = row.word(name);
        const std::vector<Length> pieces = pieceList(list);
        const CuttingPlan plan = cutSticks(pieces, stock, Length{});
        EXPECT_EQ(faults(plan, pieces, stock, Length{}), "") << row.inputs;
        EXPECT_TRUE(plan.proved()) << row.inputs;
        const double sticks = static_cast<double>(plan.sticks.size());
        if (optimum) {
            check("STICKS.COUNT", row, sticks);
        } else {
            double offcuts = 0;
            for (const Stick& stick : plan.sticks) offcuts += stick.offcut / stock;
            check("STICKS.PLAN", row, 100 * offcuts / sticks);
        }
    }
}

// The same question as an integer programme, solved by GLPK: stick j is used or not, piece i comes from stick
// j.
int fewestByGlpk(const std::vector<int>& pieces, int stock, int kerf, int most) {
    glp_prob* problem = glp_create_prob();
    const int n = static_cast<int>(pieces.size());
    glp_set_obj_dir(problem, GLP_MIN);
    glp_add_rows(problem, n + most);
    glp_add_cols(problem, most + n * most);
    for (int j = 1; j <= most + n * most; ++j) {
        glp_set_col_kind(problem, j, GLP_BV);
        glp_set_obj_coef(problem, j, j <= most ? 1 : 0);
    }
    std::vector<int> row = {0}, column = {0};
    std::vector<double> value = {0};
    const auto put = [&](int r, int c, double v) {
        row.push_back(r);
        column.push_back(c);
        value.push_back(v);
    };
    const auto from = [&](int i, int j) { return most + i * most + j + 1; };
    for (int i = 0; i < n; ++i) {
        glp_set_row_bnds(problem, i + 1, GLP_FX, 1, 1);
        for (int j = 0; j < most; ++j) put(i + 1, from(i, j), 1);
    }
    for (int j = 0; j < most; ++j) {
        glp_set_row_bnds(problem, n + j + 1, GLP_UP, 0, 0);
        for (int i = 0; i < n; ++i) put(n + j + 1, from(i, j), pieces[i] + kerf);
        put(n + j + 1, j + 1, -(stock + kerf));
    }
    glp_load_matrix(problem, static_cast<int>(row.size()) - 1, row.data(), column.data(), value.data());
    glp_iocp options;
    glp_init_iocp(&options);
    options.presolve = GLP_ON;
    options.msg_lev = GLP_MSG_OFF;
    const int failed = glp_intopt(problem, &options);
    const int answer = failed ? -1 : static_cast<int>(std::lround(glp_mip_obj_val(problem)));
    glp_delete_prob(problem);
    return answer;
}

TEST(Sticks, AreAsFewAsTheIntegerProgrammes) {
    std::mt19937 random(20240611);
    glp_term_out(GLP_OFF);
    const auto between = [&](int least, int most) {
        return std::uniform_int_distribution<int>(least, most)(random);
    };
    for (int trial = 0; trial < 300; ++trial) {
        const int stock = between(60, 240);
        const int kerf = between(0, 3);
        std::vector<int> sizes(between(1, 8));
        for (int& size : sizes) size = between(stock / 8, stock * 3 / 4);
        std::vector<Length> pieces;
        for (const int size : sizes) pieces.push_back(Length::millimetres(10.0 * size));
        const Length stick = Length::millimetres(10.0 * stock), cut = Length::millimetres(10.0 * kerf);
        const CuttingPlan plan = cutSticks(pieces, stick, cut);
        const std::string inputs = show(pieces, stick, cut);
        ASSERT_TRUE(plan.proved()) << inputs;
        ASSERT_EQ(faults(plan, pieces, stick, cut), "") << inputs;
        const int theirs = fewestByGlpk(sizes, stock, kerf, static_cast<int>(plan.sticks.size()));
        ASSERT_EQ(static_cast<int>(plan.sticks.size()), theirs) << inputs;
    }
}

TEST(Sticks, AreProvedUpToTheStatedNumberOfPieces) {
    std::mt19937 random(7);
    for (int trial = 0; trial < 400; ++trial) {
        // Three families: anything, a third of a stick or so, and triplets that fill their stick exactly.
        std::vector<Length> pieces;
        const auto between = [&](int least, int most) {
            return std::uniform_int_distribution<int>(least, most)(random);
        };
        while (pieces.size() + 3 <= provedPieces) {
            int a = between(100, 5000), b = between(100, 5000), c = between(100, 5000);
            if (trial % 3 == 1) a = 1800 + a / 3, b = 1800 + b / 3, c = 1800 + c / 3;
            if (trial % 3 == 2) a = between(2300, 2900), b = between(1500, (6000 - a) / 2), c = 6000 - a - b;
            for (const int piece : {a, b, c}) pieces.push_back(Length::millimetres(piece));
        }
        const Length stock = Length::metres(6);
        const CuttingPlan plan = cutSticks(pieces, stock, Length{});
        ASSERT_TRUE(plan.proved()) << show(pieces, stock, Length{});
        ASSERT_EQ(faults(plan, pieces, stock, Length{}), "") << show(pieces, stock, Length{});
        if (trial % 3 == 2) {
            ASSERT_EQ(plan.sticks.size(), pieces.size() / 3) << show(pieces, stock, Length{});
        }
    }
}

std::size_t firstFitDecreasing(std::vector<Length> pieces, Length stock, Length kerf) {
    std::sort(pieces.begin(), pieces.end(), std::greater<>());
    std::vector<Length> room;
    for (const Length piece : pieces) {
        const auto fits = std::find_if(room.begin(), room.end(), [&](Length r) { return piece + kerf <= r; });
        if (fits != room.end())
            *fits = *fits - piece - kerf;
        else
            room.push_back(stock - piece);
    }
    return room.size();
}

RC_GTEST_PROP(Sticks, LieBetweenTheMaterialAndFirstFitDecreasing, ()) {
    const Length stock = Length::feet(*rc::gen::element(10, 14, 20));
    const Length kerf = Length::inches(*rc::gen::element(0.0, 0.125, 0.25));
    std::vector<Length> pieces;
    // Tape readings in eighths of an inch, shorter than the stick.
    for (const int eighths : *rc::gen::container<std::vector<int>>(rc::gen::inRange(8, 959)))
        pieces.push_back(Length::inches(eighths / 8.0));
    RC_PRE(!pieces.empty());
    const CuttingPlan plan = cutSticks(pieces, stock, kerf);
    RC_ASSERT(faults(plan, pieces, stock, kerf) == "");
    Length total;
    for (const Length piece : pieces) total += piece + kerf;
    RC_ASSERT(static_cast<double>(plan.sticks.size()) >= total / (stock + kerf) - 1e-4);
    RC_ASSERT(plan.sticks.size() <= firstFitDecreasing(pieces, stock, kerf));
    // One more piece never needs fewer sticks, nor more than one more.
    std::vector<Length> more = pieces;
    more.push_back(Length::inches(*rc::gen::inRange(8, 959) / 8.0));
    const CuttingPlan larger = cutSticks(more, stock, kerf);
    RC_ASSERT(larger.sticks.size() >= plan.fewest && larger.fewest <= plan.sticks.size() + 1);
}

TEST(Sticks, LongPiecesAreWholeSticksAndARemainder) {
    const std::vector<Length> pieces = {Length::feet(47), Length::feet(13), Length::feet(40)};
    const Length stock = Length::feet(20);
    const CuttingPlan plan = cutSticks(pieces, stock, Length{});
    EXPECT_EQ(plan.sticks.size(), 5u);  // 2 + 2 whole ones; 7 and 13 share the fifth
    EXPECT_EQ(faults(plan, pieces, stock, Length{}), "");
    // With a saw cut the 7 and the 13 no longer fit in one stick.
    EXPECT_EQ(cutSticks(pieces, stock, Length::inches(0.125)).sticks.size(), 6u);
    // A piece as long as the stick is not cut at all.
    EXPECT_EQ(cutSticks(std::vector<Length>{stock, stock}, stock).sticks.size(), 2u);
}

TEST(Sticks, ForgiveDecimalsTypedForFractions) {
    const std::vector<Length> thirds(3, Length::feet(6.666667));
    EXPECT_EQ(cutSticks(thirds, Length::feet(20), Length{}).sticks.size(), 1u);
    EXPECT_EQ(cutSticks(thirds, Length::feet(20), Length::inches(0.125)).sticks.size(), 2u);
    const std::vector<Length> tooLong(3, Length::feet(6.67));
    EXPECT_EQ(cutSticks(tooLong, Length::feet(20), Length{}).sticks.size(), 2u);
}

std::string refusal(const std::vector<Length>& pieces, Length stock, Length kerf) {
    try {
        cutSticks(pieces, stock, kerf);
        return "accepted";
    } catch (const Error& error) {
        return error.argument() + ": " + error.sentence(Language::English);
    }
}

TEST(Sticks, SayWhatIsAllowed) {
    const Length stock = Length::feet(20), foot = Length::feet(1), kerf = Length::inches(0.125);
    EXPECT_EQ(refusal({foot, Length::feet(-3)}, stock, kerf),
              "pieces: one of the pieces is -3 ft (-0.9144 m); allowed: lengths above 0.");
    EXPECT_EQ(refusal({}, stock, kerf), "pieces: pieces is an empty list; allowed: at least one length.");
    EXPECT_EQ(refusal({foot}, Length{}, kerf), "stock: stock is 0; allowed: above 0.");
    EXPECT_EQ(refusal({foot}, stock, Length::metres(-0.003)), "kerf: kerf is -0.003; allowed: 0 or more.");
    EXPECT_TRUE(refusal({foot}, stock, Length::feet(21)).starts_with("kerf: "))
        << "a cut longer than the stick";
    EXPECT_TRUE(refusal({Length::feet(1e9)}, stock, kerf).starts_with("pieces: "))
        << "more sticks than anyone buys";
}

}  // namespace
}  // namespace trenchbook
