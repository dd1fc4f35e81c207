// Verdict and Check of the rows of Layout and Tapes.
#include "trenchbook/job/lot_verdict.h"

#include <gtest/gtest.h>

#include "trenchbook/job/read.h"

namespace trenchbook {
namespace {

// A wall 40 ft long along X, and one more point.
Job lot(std::vector<Cell> row, std::vector<Cell> tapes = {}) {
    JobTables tables;
    std::vector<Cell> cells = {"Point", "X",  "Y", "Tie 1", "Tie 2", "Tie 3", "Side",  //
                               "SW",    0.0,  0.0, "",      "",      "",      "",      //
                               "SE",    40.0, 0.0, "",      "",      "",      ""};
    cells.insert(cells.end(), row.begin(), row.end());
    tables.layout = {cells.size() / 7, 7, cells};
    if (!tapes.empty()) {
        std::vector<Cell> all = {"From", "To", "Length"};
        all.insert(all.end(), tapes.begin(), tapes.end());
        tables.tapes = {all.size() / 3, 3, all};
    }
    return readJob(tables, UnitSystem::US);
}
LotVerdict third(std::vector<Cell> row) { return lotPointVerdict(lot(std::move(row)), 2); }

TEST(LotVerdict, SaysHowAPlaceIsKnown) {
    EXPECT_EQ(lotPointVerdict(lot({"", "", "", "", "", "", ""}), 0).check.en, "OK: typed");
    EXPECT_TRUE(third({"", "", "", "", "", "", ""}).verdict.en.empty());
    const LotVerdict good = third({"shed", "", "", "SW 25", "SE 25", "", "left"});
    EXPECT_EQ(good.verdict.en, "OK");
    EXPECT_EQ(good.check.en.rfind("OK: 2 tapes", 0), 0u) << good.check.en;
}

TEST(LotVerdict, AsksForWhatIsMissing) {
    const LotVerdict one = third({"shed", "", "", "SW 25", "", "", ""});
    EXPECT_EQ(one.verdict.en, "NOT JUDGED");
    EXPECT_EQ(one.verdict.es, "SIN JUZGAR");
    EXPECT_NE(one.check.en.find("tape it to another corner"), std::string::npos) << one.check.en;
    const LotVerdict mirror = third({"shed", "", "", "SW 25", "SE 25", "", ""});
    EXPECT_EQ(mirror.verdict.en, "NOT JUDGED");
    EXPECT_NE(mirror.check.en.find("two places"), std::string::npos) << mirror.check.en;
}

TEST(LotVerdict, ChecksWhatDoesNotFit) {
    const LotVerdict unknown = third({"shed", "", "", "SW 25", "SE 25", "barn 3", "left"});
    EXPECT_EQ(unknown.verdict.en, "CHECK");
    EXPECT_NE(unknown.check.en.find("Tie 3: no point of Layout or Nodes"), std::string::npos)
        << unknown.check.en;
    // 20.5 and 20.5 to corners 40 apart meet 4.5 off the wall, at an angle of 25 degrees.
    const LotVerdict flat = third({"shed", "", "", "SW 20.03", "SE 20.03", "", "left"});
    EXPECT_NE(flat.verdict.en, "OK") << flat.check.en;
}

TEST(LotVerdict, RefusesWhatCannotBeRead) {
    const LotVerdict bad = third({"shed", "far", "", "SW 25", "SE 25", "", "left"});
    EXPECT_EQ(bad.verdict.en, "NO");
    EXPECT_NE(bad.check.en.find("X"), std::string::npos) << bad.check.en;
}

TEST(LotVerdict, OfTapes) {
    const std::vector<Cell> shed = {"shed", "", "", "SW 25", "SE 25", "", "left"};
    const Job good = lot(shed, {"SW", "SE", 40.0, "shed", "nowhere", 3.0, "shed", "SE", ""});
    EXPECT_EQ(lotTapeVerdict(good, 0).verdict.en, "OK");
    EXPECT_EQ(lotTapeVerdict(good, 1).verdict.en, "CHECK");
    EXPECT_NE(lotTapeVerdict(good, 2).verdict.en, "OK");
    const Job apart = lot({"shed", "", "", "SW 25", "", "", ""}, {"shed", "SE", 25.0});
    // Two tapes, two places: the tape cannot be judged.
    EXPECT_EQ(lotTapeVerdict(apart, 0).verdict.en, "NOT JUDGED") << lotTapeVerdict(apart, 0).check.en;
}

}  // namespace
}  // namespace trenchbook
