// LINES.* as Calc calls them: one answer a row, blanks for blank rows, an error code in the cells of a bad
// row alone.
#include <bit>
#include <cmath>

#include "catalog_harness.h"
#include "trenchbook/units.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

constexpr double m = metresPerFoot;

// The error code that a cell would show; 0 for a number.
std::uint32_t code(double cell) {
    return std::isnan(cell) ? static_cast<std::uint32_t>(std::bit_cast<std::uint64_t>(cell)) : 0;
}

// Two lines and a blank row between them: A and C join in B; X has a line of its own.
const Range from = column({"A", "B", Nothing{}, "C", "X"});
const Range to = column({"B", "Out", "", "b ", "Ditch"});
const Range length = column({40.0, "60'", Nothing{}, 20.0, 30.0});
const Range pipe = column({"4 SDR35", "6 sdr-35", Nothing{}, 3.068, "4 SCH40"});

TEST(LinesFaults, OneTextARow) {
    EXPECT_EQ(texts("LINES.FAULTS", {from, to, length, pipe}).items,
              (std::vector<std::string>{"", "", "", "", ""}));
    const Range badLength = column({40.0, 60.0, Nothing{}, "soon", 30.0});
    EXPECT_EQ(texts("LINES.FAULTS", {from, to, badLength, pipe}).items,
              (std::vector<std::string>{"", "waiting on row 4 (C-b)", "",
                                        "length is \"soon\", allowed: above 0", ""}));
    const Range negative = column({40.0, 60.0, Nothing{}, -20.0, 30.0});
    EXPECT_EQ(texts("LINES.FAULTS", {from, to, negative, pipe}).items[3], "length is -20, allowed: above 0");
    const Range badPipe = column({"4 SDR35", "4 SDR35", Nothing{}, "rubber", Nothing{}});
    const Texts said = texts("LINES.FAULTS", {from, to, length, badPipe, "US", "es"});
    EXPECT_EQ(said.items[1], "en espera de la fila 4 (C-b)");
    EXPECT_EQ(said.items[3].substr(0, 16), "pipe es \"rubber\"");
    EXPECT_EQ(said.items[4], "falta el tubo");
    const Range shrinking = column({"6 SDR35", "4 SDR35", Nothing{}, 3.068, "4 SCH40"});
    EXPECT_EQ(texts("LINES.FAULTS", {from, to, length, shrinking}).items[1],
              "pipe gets smaller downstream: row 1 (A-B) is larger");
    EXPECT_EQ(
        texts("LINES.FAULTS", {column({Nothing{}}), column({Nothing{}}), column({12.0}), column({Nothing{}})})
            .items[0],
        "nowhere to go: both nodes are missing");
    EXPECT_EQ(whyNot("LINES.FAULTS", {from, column({"B"}), length, pipe}),
              "to is 1 rows; allowed: 5 rows, as many as from.");
}

TEST(LinesFlow, AddsUpDownstream) {
    const Range node = column({"A", "C", Nothing{}, "x", "B", "A"});
    const Range flow = column({10.0, 5.0, Nothing{}, 7.0, 2.5, 0.25});
    const Numbers got = numbers("LINES.FLOW", {from, to, node, flow});
    ASSERT_EQ(got.items.size(), 5u);
    EXPECT_NEAR(got.items[0], 10.25, 1e-12);
    EXPECT_NEAR(got.items[1], 17.75, 1e-12);
    EXPECT_TRUE(isBlankCell(got.items[2]));
    EXPECT_NEAR(got.items[3], 5, 1e-12);
    EXPECT_NEAR(got.items[4], 7, 1e-12);
    const Range litres = column(
        {10 * 0.0630901964, 5 * 0.0630901964, "", 7 * 0.0630901964, 2.5 * 0.0630901964, 0.25 * 0.0630901964});
    EXPECT_NEAR(numbers("LINES.FLOW", {from, to, node, litres, "metric"}).items[1], 17.75 * 0.0630901964,
                1e-9);

    // An unreadable, a negative and a missing flow spoil what lies downstream of their own node, nothing
    // else.
    for (const Cell& bad : {Cell("much"), Cell(-1.0), Cell(Nothing{})}) {
        const Numbers spoiled =
            numbers("LINES.FLOW", {from, to, node, column({10.0, bad, Nothing{}, 7.0, 2.5, 0.25})});
        EXPECT_NEAR(spoiled.items[0], 10.25, 1e-12);
        EXPECT_EQ(code(spoiled.items[1]), badArgumentCode);
        EXPECT_EQ(code(spoiled.items[3]), badArgumentCode);
        EXPECT_EQ(spoiled.items[4], got.items[4]);
    }
    EXPECT_EQ(whyNot("LINES.FLOW", {from, to, node, column({1.0})}),
              "inlet flow is 1 rows; allowed: 6 rows, as many as inlet node.");
}

TEST(LinesInverts, FromTheOutletUphill) {
    const Range slope = column({"1/4 in/ft", "1%", Nothing{}, 0.02, "1:96"});
    const Range outlet = column({Nothing{}, 96.5, Nothing{}, Nothing{}, 90.0});
    const Numbers got = numbers("LINES.INVERTS", {from, to, length, pipe, slope, outlet});
    ASSERT_EQ(got.columns, 2u);
    ASSERT_EQ(got.rows(), 5u);
    const double join = 97.1 + (5.915 - 3.975) / 12;
    EXPECT_NEAR(got.items[2], 97.1, 1e-9);
    EXPECT_NEAR(got.items[3], 96.5, 1e-9);
    EXPECT_NEAR(got.items[1], join, 1e-9);
    EXPECT_NEAR(got.items[0], join + 40.0 / 48, 1e-9);
    EXPECT_TRUE(isBlankCell(got.items[4]));
    EXPECT_NEAR(got.items[7], 97.1 + (5.915 - 3.068) / 12, 1e-9);
    EXPECT_NEAR(got.items[8], 90.3125, 1e-9);

    const Range metricLength = column({40 * m, 60 * m, "", 20 * m, 30 * m});
    const Range metricPipe = column({"4 SDR35", "6 SDR35", "", 3.068 * 25.4, "4 SCH40"});
    const Range metricOutlet = column({"", 96.5 * m, "", "", 90 * m});
    const Numbers metric = numbers("LINES.INVERTS", {from, to, metricLength, metricPipe, slope, metricOutlet,
                                                     Nothing{}, Nothing{}, "metric"});
    for (std::size_t i = 0; i < got.items.size(); ++i) {
        EXPECT_EQ(isBlankCell(metric.items[i]), isBlankCell(got.items[i]));
        if (!isBlankCell(got.items[i])) EXPECT_NEAR(metric.items[i], got.items[i] * m, 1e-9);
    }

    const Numbers fixed =
        numbers("LINES.INVERTS", {from, to, length, pipe, slope, outlet,
                                  column({98.0, Nothing{}, Nothing{}, Nothing{}, Nothing{}}), "invert"});
    EXPECT_NEAR(fixed.items[1], 98, 1e-9);
    EXPECT_NEAR(fixed.items[7], 97.1, 1e-9);
}

TEST(LinesInverts, ABadRowSpoilsItselfAndWhatHangsOnIt) {
    const Range slope = column({"1%", "flat", Nothing{}, 0.02, "1:96"});
    const Range outlet = column({Nothing{}, 96.5, Nothing{}, Nothing{}, Nothing{}});
    const Numbers got = numbers("LINES.INVERTS", {from, to, length, pipe, slope, outlet});
    for (std::size_t row : {0, 1, 3, 4}) EXPECT_EQ(code(got.items[2 * row]), badArgumentCode) << row;
    EXPECT_EQ(texts("LINES.INVERTS.WHY", {from, to, length, pipe, slope, outlet}).items,
              (std::vector<std::string>{"waiting on row 2 (B-Out)", "slope is \"flat\", allowed: above 0", "",
                                        "waiting on row 2 (B-Out)",
                                        "outlet invert is missing: no row goes on from here"}));
    EXPECT_EQ(whyNot("LINES.INVERTS", {from, to, length, pipe, slope, outlet, Nothing{}, "soffit"}),
              "join is \"soffit\"; allowed: \"crown\", \"invert\".");
}

}  // namespace
}  // namespace trenchbook::addin
