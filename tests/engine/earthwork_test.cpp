#include "trenchbook/ground/earthwork.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <sstream>

#include "reference.h"
#include "trenchbook/core/error.h"
#include "trenchbook/takeoff/packs.h"

namespace trenchbook {
namespace {

using namespace reference;

std::vector<double> list(const std::string& text) {
    std::vector<double> numbers;
    std::istringstream in(text);
    for (std::string item; std::getline(in, item, ',');) numbers.push_back(std::stod(item));
    return numbers;
}

// With a width of one unit the cuts are the end areas.
double betweenAreas(double length, double first, double second) {
    return trenchVolume(Length::metres(length), Length::metres(1), Length::metres(first),
                        Length::metres(second))
        .cubicMetres();
}

TEST(TrenchVolume, AgreesWithPublishedAverageEndAreas) {
    for (const Row& row : rows("20e_earthwork.csv")) {
        if (row.has("A_m2") && row.output == "volume" && row.item.find("prismoidal") == std::string::npos) {
            const std::vector<double> areas = list(row.word("A_m2"));
            double total = 0;
            for (std::size_t i = 1; i < areas.size(); ++i)
                total += betweenAreas(row.input("L_m"), areas[i - 1], areas[i]);
            check("TRENCH.VOLUME", row, total);
        }
        if (row.item == "Sloped pit, average of top and bottom")
            check("TRENCH.VOLUME", row, betweenAreas(row.input("depth_ft"), 20 * 15, 40 * 35));
    }
}

TEST(TrenchVolume, AgreesWithAStageStorageTable) {
    // Each printed storage is the one half a foot below plus the slice between, where both rows are in the
    // table.
    const Row* below = nullptr;
    for (const Row& row : rows("09a_hds2_detention_routing.csv")) {
        if (row.item != "Stage-storage by average end area") continue;
        if (below != nullptr && std::fabs(row.input("h_ft") - below->input("h_ft") - 0.5) < 1e-9)
            check("TRENCH.VOLUME", row,
                  below->number() + betweenAreas(0.5, below->input("area_ft2"), row.input("area_ft2")));
        below = &row;
    }
}

TEST(Loose, AgreesWithPublishedSwell) {
    for (const Row& row : rows("20e_earthwork.csv")) {
        if (row.item == "Bank to loose")
            check("SPOIL.LOOSE", row,
                  looseVolume(Volume::cubicYards(row.input("bcy")), row.input("swell")).cubicYards());
        if (row.item == "Truck loads")
            check("BUY.COUNT", row, packsToOrder(row.input("lcy"), 0, row.input("truck_lcy")));
    }
    for (const Row& row : rows("11b_earthwork_constants.csv"))
        if (row.item == "Swell example") {
            const Volume bank = Volume::cubicYards(row.input("bank_yd3"));
            const Volume loose = looseVolume(bank, row.number() / 100);
            check("SPOIL.LOOSE", "10 cu yd in place that swell by 30 %, loose cu yd", loose.cubicYards(),
                  row.input("loose_yd3"), 0.05, row.source.c_str(), "read");
        }
}

TEST(Rock, WeighsWhatTheTablesSay) {
    // Pounds a cubic yard and tons a cubic metre, both through the legal pound and yard.
    for (const Row& row : rows("20e_earthwork.csv"))
        if (row.output == "weight" && row.has("lb_per_yd3") && row.unit == "ton/yd3") {
            const double kilograms = row.input("lb_per_yd3") * 0.45359237;
            const BulkDensity density =
                BulkDensity::tonnesPerCubicMetre(kilograms / 1000 / (0.9144 * 0.9144 * 0.9144));
            check("ROCK.TONS", row, bulkWeight(Volume::cubicYards(1), density).shortTons());
        }
    EXPECT_NEAR(bulkWeight(Volume::cubicYards(10), BulkDensity::shortTonsPerCubicYard(1.4), 0.1).shortTons(),
                15.4, 1e-12);
}

RC_GTEST_PROP(TrenchVolume, SplitsAndScales, ()) {
    const Length length = Length::feet(*rc::gen::inRange(1, 3000) / 10.0);
    const Length width = Length::feet(*rc::gen::inRange(1, 60) / 10.0);
    const Length up = Length::feet(*rc::gen::inRange(0, 800) / 100.0);
    const Length down = Length::feet(*rc::gen::inRange(0, 800) / 100.0);
    const Volume whole = trenchVolume(length, width, up, down);
    const double tiny = 1e-12 * (1 + whole.si());
    RC_ASSERT(std::fabs((whole - trenchVolume(length, width, down, up)).si()) <= tiny);
    const double share = *rc::gen::inRange(1, 100) / 100.0;
    const Length middle = up + (down - up) * share;
    const Volume parts = trenchVolume(length * share, width, up, middle) +
                         trenchVolume(length * (1 - share), width, middle, down);
    RC_ASSERT(std::fabs((whole - parts).si()) <= tiny);
    RC_ASSERT(std::fabs((trenchVolume(length, 2 * width, up, down) - 2 * whole).si()) <= tiny);
}

TEST(Packs, AreRobustAgainstTheNoiseOfArithmetic) {
    EXPECT_EQ(packsToOrder(0), 0);
    EXPECT_EQ(packsToOrder(3), 3);
    EXPECT_EQ(packsToOrder(3.0000000001), 3);
    EXPECT_EQ(packsToOrder(2.9999999999), 3);
    EXPECT_EQ(packsToOrder(3.00001), 4);
    EXPECT_EQ(packsToOrder(1e-6), 1);
    EXPECT_EQ(packsToOrder(0.1 + 0.2, 0, 0.3), 1);
    EXPECT_EQ(packsToOrder(100, 0.1), 110);  // 110.00000000000001
    EXPECT_EQ(packsToOrder(23, 0.05, 10), 3);
}

RC_GTEST_PROP(Packs, HoldTheNetAndNotAPackMore, ()) {
    const int net = *rc::gen::inRange(0, 100000);
    const int pack = *rc::gen::inRange(1, 500);
    const int percent = *rc::gen::inRange(0, 101);
    // In whole hundredths the count is exact.
    const long long needed = static_cast<long long>(net) * (100 + percent);
    const long long each = 100LL * pack;
    const long long exact = (needed + each - 1) / each;
    RC_ASSERT(packsToOrder(net, percent / 100.0, pack) == static_cast<double>(exact));
    // The same in tenths of a unit, where neither amount is a round binary number.
    RC_ASSERT(packsToOrder(net * 0.1, percent / 100.0, pack * 0.1) == static_cast<double>(exact));
}

template <class Call>
std::string refusal(const Call& call) {
    try {
        call();
        return "accepted";
    } catch (const Error& error) {
        return error.sentence(Language::English);
    }
}

TEST(Earthwork, SaysWhatIsAllowed) {
    const Length foot = Length::feet(1);
    EXPECT_EQ(refusal([&] { trenchVolume(Length{}, foot, foot, foot); }), "length is 0; allowed: above 0.");
    EXPECT_EQ(refusal([&] { trenchVolume(foot, Length{}, foot, foot); }), "width is 0; allowed: above 0.");
    EXPECT_EQ(refusal([&] { trenchVolume(foot, foot, Length::metres(-1), foot); }),
              "cut up is -1; allowed: 0 or more.");
    EXPECT_EQ(refusal([&] { trenchVolume(foot, foot, foot, Length::metres(-2)); }),
              "cut down is -2; allowed: 0 or more.");
    EXPECT_EQ(refusal([&] { looseVolume(Volume::cubicYards(1), 25); }),
              "swell is 25; allowed: from 0 to 1. If 25 percent is meant, write 0.25.");
    EXPECT_EQ(refusal([&] { looseVolume(Volume::cubicMetres(-1), 0.2); }), "bank is -1; allowed: 0 or more.");
    EXPECT_EQ(refusal([&] { bulkWeight(Volume::cubicYards(1), BulkDensity{}); }),
              "density is 0; allowed: above 0.");
    EXPECT_EQ(refusal([&] { packsToOrder(-1); }), "net is -1; allowed: 0 or more.");
    EXPECT_EQ(refusal([&] { packsToOrder(1, 0, 0); }), "pack is 0; allowed: above 0.");
    EXPECT_EQ(refusal([&] { packsToOrder(1e12); }), "net is 1e+12; allowed: at most 100,000,000 packs.");
}

}  // namespace
}  // namespace trenchbook
