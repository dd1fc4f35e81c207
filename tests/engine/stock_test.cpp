#include "trenchbook/pipe/stock.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "reference.h"
#include "trenchbook/core/error.h"
#include "trenchbook/pipe/size_class.h"
#include "trenchbook/takeoff/codes.h"

using namespace trenchbook;
using namespace trenchbook::reference;

namespace {

const StockPipe& rowOf(std::string_view name) {
    for (const StockPipe& row : stock())
        if (row.pipe.name == name) return row;
    ADD_FAILURE() << "no stock row " << name;
    return stock().front();
}

}  // namespace

TEST(Stock, DimensionsPrinted) {
    int checked = 0;
    for (const Row& row : rows("11a_pipe_dimensions.csv")) {
        std::string name;
        const std::size_t nominal = row.item.find("nominal ");
        if (nominal != std::string::npos) {
            name = row.item.substr(nominal + 8, row.item.find(" in", nominal) - nominal - 8);
            name += row.item.starts_with("SDR 35") ? " SDR35" : " SCH40";
        } else if (row.item.starts_with("D2729 ")) {
            name = row.item.substr(6, 1) + " D2729";
        } else {
            continue;
        }
        const StockPipe& ours = rowOf(name);
        ++checked;
        if (row.output == "outside diameter" || row.item.ends_with("in OD"))
            check("PIPE.OUTSIDE", row, ours.pipe.outside->inches());
        else if (row.output == "inside diameter")
            check("PIPE.BORE", row, ours.pipe.bore.inches());
        else if (row.output == "minimum wall" || row.item.ends_with("minimum wall"))
            check("PIPE.BORE", row, ours.wall.inches());
        else
            --checked;
    }
    EXPECT_EQ(checked, 48);
}

TEST(Stock, EveryRowIsWhole) {
    std::set<std::string> names;
    for (const StockPipe& row : stock()) {
        EXPECT_TRUE(names.insert(row.pipe.name).second) << row.pipe.name << " stands twice";
        ASSERT_TRUE(row.pipe.outside) << row.pipe.name;
        EXPECT_GT(row.pipe.bore.si(), 0) << row.pipe.name;
        // What a make's size means by itself is the solid pipe, and perforated pipe has its measures.
        const Pipe* solid = stockSize(row.pipe.system, row.pipe.nominal);
        ASSERT_TRUE(solid != nullptr && !solid->perforated) << row.pipe.name;
        EXPECT_EQ(solid->outside->si(), row.pipe.outside->si()) << row.pipe.name;
        EXPECT_EQ(solid->bore.si(), row.pipe.bore.si()) << row.pipe.name;
        EXPECT_NEAR((row.pipe.bore + row.wall * 2) / *row.pipe.outside, 1, 1e-12) << row.pipe.name;
        if (!row.pipe.soldByOutside) {  // named by inches of its bore
            EXPECT_NEAR(row.pipe.bore.inches(), row.pipe.nominal, 0.06 * row.pipe.nominal + 0.1)
                << row.pipe.name;
        }
        EXPECT_GE(row.pipe.roughness, 0.009) << row.pipe.name;
        EXPECT_LE(row.pipe.roughness, 0.025) << row.pipe.name;
        EXPECT_GT(std::string(row.source).size(), 10u) << row.pipe.name;
        EXPECT_GT(std::string(row.roughnessSource).size(), 10u) << row.pipe.name;
        // Every row is found by its own name.
        EXPECT_EQ(stockPipe(row.pipe.name).name, row.pipe.name);
        EXPECT_NEAR(wallOf(row.pipe) / row.wall, 1, 1e-12) << row.pipe.name;
        EXPECT_NEAR((invertToOutsideTop(row.pipe) + row.wall) / *row.pipe.outside, 1, 1e-12) << row.pipe.name;
    }
    EXPECT_EQ(names.size(), 47u);
}

TEST(Stock, ForgivingNames) {
    struct Spelling {
        const char* typed;
        const char* name;
    };
    for (const Spelling& spelling : {Spelling{"4 SDR35", "4 SDR35"},
                                     {"4 sdr-35", "4 SDR35"},
                                     {"4in SDR 35", "4 SDR35"},
                                     {"4\" SDR-35", "4 SDR35"},
                                     {" 4 sdr 35 ", "4 SDR35"},
                                     {"4sdr35", "4 SDR35"},
                                     {"4 inch PVC SDR35", "4 SDR35"},
                                     {"4 SDR35 pipe", "4 SDR35"},
                                     {"4.0 SDR35", "4 SDR35"},
                                     {"4 D3034", "4 SDR35"},
                                     {"4\" Sch. 40", "4 SCH40"},
                                     {"4 schedule 40", "4 SCH40"},
                                     {"4 SCH-40 PVC", "4 SCH40"},
                                     {"4 S40", "4 SCH40"},
                                     {"4 cedula 40", "4 SCH40"},
                                     {"1-1/2 SCH40", "1-1/2 SCH40"},
                                     {"1 1/2 sch 40", "1-1/2 SCH40"},
                                     {"1.5\" sch40", "1-1/2 SCH40"},
                                     {"2-1/2 in. SCH40", "2-1/2 SCH40"},
                                     {"4 D2729", "4 D2729"},
                                     {"4 d-2729", "4 D2729"},
                                     {"4 ASTM D2729", "4 D2729"},
                                     {"4 D2729 perf", "4 D2729 PERF"},
                                     {"4 perforated D2729", "4 D2729 PERF"},
                                     {"4 corrugado perforado", "4 CORRUGATED PERF"},
                                     {"4 corr perf.", "4 CORRUGATED PERF"},
                                     {"6 corr", "6 CORRUGATED"},
                                     {"6 Corrugated", "6 CORRUGATED"},
                                     {"6 HDPE corrugated pipe", "6 CORRUGATED"},
                                     {"6 dual wall", "6 DUALWALL"},
                                     {"6 double-wall HDPE", "6 DUALWALL"}})
        try {
            EXPECT_EQ(stockPipe(spelling.typed).name, spelling.name) << spelling.typed;
        } catch (const Error& error) {
            ADD_FAILURE() << spelling.typed << ": " << error.what();
        }
}

// Plain wall PVC-U pipe to EN 1401-1: Plast Mec, drainage pipes, "Dimensions and weights", SN 4 (SDR 41) and SN 8 (SDR 34).
TEST(Stock, PipeSoldByItsOutsideDiameter) {
    const double printed[][3] = {{110, 3.2, 3.2}, {125, 3.2, 3.7}, {160, 4.0, 4.7}, {200, 4.9, 5.9},
                                 {250, 6.2, 7.3}, {315, 7.7, 9.2}, {400, 9.8, 11.7}};
    for (const auto& [outside, wall4, wall8] : printed)
        for (const auto& [make, wall] : {std::pair{"SN4", wall4}, std::pair{"SN8", wall8}}) {
            const StockPipe& ours = rowOf(plain(outside) + " " + make);
            const std::string what = plain(outside) + " mm, EN 1401-1 " + make;
            check("PIPE.OUTSIDE", what.c_str(), ours.pipe.outside->millimetres(), outside, 1e-9,
                  "Plast Mec, drainage pipes", "read");
            check("PIPE.BORE", (what + ", least wall").c_str(), ours.wall.millimetres(), wall, 1e-9,
                  "Plast Mec, drainage pipes", "read");
            EXPECT_EQ(ours.pipe.joint, Joint::Gasket) << what;
        }
    for (const char* typed :
         {"110 SN4", "110 mm SN4", "DN110 SN4", "DN 110 sn-4", "110 PVC SN4", "110 EN 1401 SN4"})
        EXPECT_EQ(stockPipe(typed).name, "110 SN4") << typed;
    EXPECT_EQ(sizeWithUnit(stockPipe("160 SN8")), "160 mm");
    EXPECT_EQ(sizeWithUnit(stockPipe("6 SDR35")), "6 in");
    EXPECT_THROW(stockPipe("4 SN4"), Error);  // a size in inches is none of theirs
    EXPECT_STREQ(leastSlopeRule(stockPipe("110 SN4")), "slope.min.4in");
    EXPECT_EQ(pipeCode(stockPipe("160 SN4")), "PIPE-160SN4");
    EXPECT_EQ(wye(stockPipe("160 SN4"), stockPipe("110 SN8")).code, "WYE-160X110SN4");
    EXPECT_EQ(wye(stockPipe("160 SN4"), stockPipe("4 SDR35")).code, "WYE-160X110SN4");
}

TEST(Stock, BareBores) {
    for (const char* typed : {"4", "4.0", "4\"", "4 in", " 4 "}) {
        const Pipe pipe = stockPipe(typed);
        EXPECT_EQ(pipe.name, "") << typed;
        EXPECT_DOUBLE_EQ(pipe.bore.inches(), 4) << typed;
        EXPECT_DOUBLE_EQ(pipe.nominal, 4) << typed;
        EXPECT_EQ(pipe.roughness, 0.011) << typed;
        EXPECT_FALSE(pipe.outside) << typed;
    }
    EXPECT_THROW(outsideOf(stockPipe("4")), Error);
    EXPECT_THROW(bareBore(Length()), Error);
    EXPECT_THROW(bareBore(Length::inches(-4)), Error);
    EXPECT_THROW(bareBore(Length::fromSi(std::nan(""))), Error);
}

TEST(Stock, UnknownNamesAreAnsweredWithTheNearest) {
    const auto sentence = [](const char* typed) {
        try {
            stockPipe(typed);
        } catch (const Error& error) {
            EXPECT_EQ(error.argument(), "pipe");
            return error.sentence(Language::English);
        }
        return std::string("no error");
    };
    // A make that does not come in this size: its sizes. A size of an unknown make: the makes of that size.
    EXPECT_EQ(
        sentence("5 SDR35"),
        "pipe is \"5 SDR35\"; allowed: 4 SDR35, 6 SDR35, 8 SDR35, 10 SDR35, 12 SDR35, 15 SDR35, or a bore.");
    EXPECT_EQ(
        sentence("4 SRD35"),
        "pipe is \"4 SRD35\"; allowed: 4 SDR35, 4 SCH40, 4 D2729, 4 CORRUGATED, 4 DUALWALL, or a bore.");
    for (const char* typed : {"", "SDR35", "-4 SDR35", "0", "4 SDR 3 5 6", "4 SDR35 extra", "four",
                              "4/2 SDR35", "1e2", "4 SDR35\n", "4 ΣDR35"})
        EXPECT_NE(sentence(typed), "no error") << typed;
    EXPECT_NE(sentence(std::string(5000, '4').c_str()), "no error");
}
