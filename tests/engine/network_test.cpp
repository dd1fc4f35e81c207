// The tree of segments: faults named on their rows, flows added up, and the laws that hold for any job: the
// order of rows and inlets never matters, water is neither lost nor made, a bad row elsewhere changes
// nothing.
#include "trenchbook/lines/network.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <numeric>

#include "reference.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

using Kind = Fault::Kind;
using Names = std::vector<std::string>;
using Runs = std::vector<Run>;  // a test has a Run of its own

Run size(double nominal) {
    Run run;
    run.length = Length::feet(10);
    run.pipe = bareBore(Length::inches(nominal));
    return run;
}

std::vector<Fault> namesFaults(const Names& from, const Names& to) {
    return lineFaults(Network(from, to), std::vector(from.size(), size(4)));
}
std::vector<Kind> kinds(const std::vector<Fault>& faults) {
    std::vector<Kind> out;
    for (const Fault& fault : faults) out.push_back(fault.kind);
    return out;
}

// A random forest: segment i flows into a later one or ends at an outlet of its own.
struct Forest {
    Names from, to;
    std::vector<Inlet> inlets;
};
Forest anyForest() {
    Forest forest;
    const int count = *rc::gen::inRange(1, 40);
    for (int i = 0; i < count; ++i) {
        const int below = *rc::gen::inRange(i + 1, count + 2);
        forest.from.push_back("N" + std::to_string(i));
        forest.to.push_back(below < count ? "N" + std::to_string(below) : "Out" + std::to_string(i));
    }
    const int inletCount = *rc::gen::inRange(0, 60);
    for (int i = 0; i < inletCount; ++i)
        forest.inlets.push_back({"n" + std::to_string(*rc::gen::inRange(0, count)),
                                 Flow::gpm(*rc::gen::inRange(0, 100000) / 1000.0)});
    return forest;
}
std::vector<std::size_t> anyOrder(std::size_t count) {
    std::vector<std::size_t> order(count);
    std::iota(order.begin(), order.end(), 0);
    for (std::size_t i = count; i > 1; --i)
        std::swap(order[i - 1], order[*rc::gen::inRange<std::size_t>(0, i)]);
    return order;
}
template <class T>
std::vector<T> inOrder(const std::vector<T>& items, const std::vector<std::size_t>& order) {
    std::vector<T> out;
    for (std::size_t index : order) out.push_back(items[index]);
    return out;
}

TEST(Network, FindsTheWayDown) {
    const Network lines(Names{"A", " b ", "C", ""}, Names{"B", "Out", "B", ""});
    EXPECT_EQ(lines.downstream(0), 1u);
    EXPECT_EQ(lines.downstream(2), 1u);
    EXPECT_TRUE(lines.outlet(1));
    EXPECT_FALSE(lines.outlet(0));
    EXPECT_TRUE(lines.blank(3));
    EXPECT_EQ(lines.upstream(1).size(), 2u);
    EXPECT_EQ(lines.order().size(), 3u);
    EXPECT_EQ(lines.order().back(), 1u);
    EXPECT_EQ(lines.node("OUT"), lines.toNode(1));
    EXPECT_EQ(lines.node("nowhere"), Network::none);
}

TEST(Network, NamesAreMatchedWithoutCaseAndBlanks) {
    EXPECT_EQ(nameKey("  Patio Ñandú É "), "patio ñandú é");
    EXPECT_EQ(nameKey("2×3"), "2×3");
    EXPECT_EQ(nameKey(" \t"), "");
}

TEST(Network, EachFaultIsNamedOnItsRow) {
    EXPECT_EQ(kinds(namesFaults({"A", "B"}, {"B", ""})), (std::vector{Kind::Waiting, Kind::NowhereToGo}));
    EXPECT_EQ(kinds(namesFaults({"A", ""}, {"B", "B"})), (std::vector{Kind::None, Kind::FromNowhere}));
    EXPECT_EQ(kinds(namesFaults({"A", "A"}, {"a ", "B"})), (std::vector{Kind::JoinsItself, Kind::Waiting}));
    EXPECT_EQ(kinds(namesFaults({"A", "A", "B", "H"}, {"B", "C", "Out", "A"})),
              (std::vector{Kind::TwoWaysOut, Kind::TwoWaysOut, Kind::Waiting, Kind::Waiting}));
    EXPECT_EQ(kinds(namesFaults({"A", "B", "C", "H"}, {"B", "C", "A", "A"})),
              (std::vector{Kind::Loop, Kind::Loop, Kind::Loop, Kind::Waiting}));
    // A row being typed does not spoil the one that already leaves its node.
    EXPECT_EQ(kinds(namesFaults({"A", "A"}, {"B", ""})), (std::vector{Kind::None, Kind::NowhereToGo}));
}

TEST(Network, TwoWaysThroughALoopAreNotALoop) {
    // A leaves for B and for C, and B comes back to A: which way closes the loop depends on nothing but the
    // rows.
    const std::vector<Kind> there = kinds(namesFaults({"A", "A", "B"}, {"B", "C", "A"}));
    const std::vector<Kind> back = kinds(namesFaults({"A", "A", "B"}, {"C", "B", "A"}));
    EXPECT_EQ(there, back);
    EXPECT_EQ(there, (std::vector{Kind::TwoWaysOut, Kind::TwoWaysOut, Kind::Waiting}));
}

TEST(Network, FaultsInWords) {
    const Names from{"", "A", "B", "C", "D", "X", "Y", "L", "M", "S"},
        to{"", "B", "Out", "B", "B", "X", "", "M", "L", ""};
    Runs sizes(from.size(), size(4));
    sizes[0] = {};
    sizes[3].length.reset();
    sizes[4] = size(6);
    sizes[9] = {};
    sizes[9].unusable = {{"Length", "abc", {"length is \"abc\"", "length es \"abc\""}}};
    const Network lines(from, to);
    const std::vector<Fault> faults = lineFaults(lines, sizes);
    const auto said = [&](std::size_t row) { return faultText(lines, faults[row], row).en; };
    EXPECT_EQ(said(0), "");
    EXPECT_EQ(said(1), "");  // its level comes from row 3, which has one of its own
    EXPECT_EQ(said(2), "waiting on row 4 (C-B)");
    EXPECT_EQ(said(3), "length is missing");
    EXPECT_EQ(said(4), "");
    EXPECT_EQ(said(5), "joins itself: both nodes are the same");
    EXPECT_EQ(said(6), "nowhere to go: the lower node is missing");
    EXPECT_EQ(said(7), "loop: the water comes back to L-M");
    EXPECT_EQ(faultText(lines, faults[2], 2, 11).es, "en espera de la fila 14 (C-B)");

    sizes[3] = size(4);
    const Fault smaller = lineFaults(lines, sizes)[2];
    EXPECT_EQ(smaller.kind, Kind::GetsSmaller);
    EXPECT_FALSE(smaller.blocks());
    reference::checkWords(
        "LINES.FAULTS", "6 in that flows into 4 in: sizes may grow downstream, never shrink",
        faultText(lines, smaller, 2).en, "pipe gets smaller downstream: row 5 (D-B) is larger",
        "common practice, no source", "common practice");
}

TEST(Network, TheNearestRowAtFaultIsNamed) {
    const Names from{"A", "B", "C", "D", "E"}, to{"B", "C", "D", "E", "Out"};
    Runs sizes(5, size(4));
    sizes[0].length.reset();
    sizes[2].pipe.reset();
    const std::vector<Fault> faults = lineFaults(Network(from, to), sizes);
    EXPECT_EQ(kinds(faults),
              (std::vector{Kind::BadCell, Kind::Waiting, Kind::BadCell, Kind::Waiting, Kind::Waiting}));
    EXPECT_EQ(faults[1].other, 0u);
    EXPECT_EQ(faults[3].other, 2u);
    EXPECT_EQ(faults[4].other, 2u);
}

TEST(Network, ColumnsOfDifferentHeightAreRefused) {
    EXPECT_THROW(Network(Names{"A"}, Names{"B", "C"}), Error);
}

// Sum of a tree by hand: HDS and hydraulics texts all use this continuity; the figures are a printed sewer
// table's.
TEST(LineFlows, AreasOfThePrintedSewerTableAddUpAlongTheTree) {
    const auto& table = reference::rows("02c_mays_goodwin_storm_sewer.csv");
    const auto area = [&](const std::string& item) {
        double product = 1;
        int found = 0;
        for (const auto& row : table)
            if (row.item == "Goodwin Avenue catchment " + item &&
                (row.output == "area" || row.output == "runoff coefficient"))
                product *= row.number(), ++found;
        EXPECT_EQ(found, 2) << item;
        return product;
    };
    // The upper part of the table: 1.1 and the catchment of 2.1 meet in sewer 2.1 with 1.2.
    const Network lines(Names{"1.1", "1.2", "2.1"}, Names{"2.1", "2.1", "3.1"});
    const auto flows = lineFlows(lines, std::vector<Inlet>{{"1.1", Flow::cfs(area("1.1"))},
                                                           {"1.2", Flow::cfs(area("1.2"))},
                                                           {"2.1", Flow::cfs(area("2.1"))}});
    const char* source = "Mays, storm sewer example, Goodwin Avenue: sum of C A";
    reference::check("LINES.FLOW", "sum of C A, sewer 1.1", flows[0]->cfs(), 1.43, 0.005, source, "read");
    reference::check("LINES.FLOW", "sum of C A, sewer 1.2", flows[1]->cfs(), 0.96, 0.005, source, "read");
    reference::check("LINES.FLOW", "sum of C A, sewer 2.1", flows[2]->cfs(), 5.12, 0.005, source, "read");
}

TEST(LineFlows, AnUnreadableInletSpoilsWhatLiesDownstreamOnly) {
    const Network lines(Names{"A", "B", "C", "D"}, Names{"B", "Out", "B", "Other"});
    const auto flows =
        lineFlows(lines, std::vector<Inlet>{{"A", std::nullopt}, {"C", Flow::gpm(3)}, {"D", Flow::gpm(4)}});
    EXPECT_FALSE(flows[0]);
    EXPECT_FALSE(flows[1]);
    EXPECT_EQ(flows[2], Flow::gpm(3));
    EXPECT_EQ(flows[3], Flow::gpm(4));
}

TEST(LineFlows, StrayInletsAreListed) {
    const Network lines(Names{"A"}, Names{"Out"});
    const std::vector<Inlet> inlets{
        {"A", Flow::gpm(1)}, {"Q", Flow::gpm(1)}, {"out", Flow::gpm(1)}, {"", {}}};
    EXPECT_EQ(strayInlets(lines, inlets), std::vector<std::size_t>{1});
}

TEST(LineFlows, LawsHoldOnAnyForest) {
    EXPECT_TRUE(rc::check("what flows in flows out at the outlets", [] {
        const Forest forest = anyForest();
        const Network lines(forest.from, forest.to);
        const auto flows = lineFlows(lines, forest.inlets);
        double in = 0, out = 0;
        for (const Inlet& inlet : forest.inlets) in += inlet.flow->gpm();
        for (std::size_t row = 0; row < lines.rows(); ++row)
            if (lines.outlet(row)) out += flows[row]->gpm();
        RC_ASSERT(std::abs(in - out) <= 1e-9 * (1 + in));
    }));
    EXPECT_TRUE(rc::check("neither the order of rows nor of inlets matters, to the last digit", [] {
        const Forest forest = anyForest();
        const auto rowOrder = anyOrder(forest.from.size());
        const auto inletOrder = anyOrder(forest.inlets.size());
        const auto flows = lineFlows(Network(forest.from, forest.to), forest.inlets);
        const auto mixed = lineFlows(Network(inOrder(forest.from, rowOrder), inOrder(forest.to, rowOrder)),
                                     inOrder(forest.inlets, inletOrder));
        RC_ASSERT(mixed == inOrder(flows, rowOrder));
    }));
    EXPECT_TRUE(rc::check("bad rows elsewhere change nothing", [] {
        Forest forest = anyForest();
        const auto before = lineFlows(Network(forest.from, forest.to), forest.inlets);
        const Names badFrom{"loop1", "loop2", "self", "twice", "twice", "", "half"};
        const Names badTo{"loop2", "loop1", "self", "x", "y", "z", ""};
        forest.from.insert(forest.from.end(), badFrom.begin(), badFrom.end());
        forest.to.insert(forest.to.end(), badTo.begin(), badTo.end());
        forest.inlets.push_back({"twice", std::nullopt});
        const Network lines(forest.from, forest.to);
        auto after = lineFlows(lines, forest.inlets);
        for (std::size_t row = before.size(); row < after.size(); ++row) RC_ASSERT(lines.fault(row).blocks());
        after.resize(before.size());
        RC_ASSERT(after == before);
    }));
}

TEST(LineFaults, TheOrderOfRowsNeverMatters) {
    EXPECT_TRUE(rc::check("the kind of fault goes with the row", [] {
        // Few names, so that loops, double exits and half rows are frequent.
        const int count = *rc::gen::inRange(1, 12);
        Names from, to;
        Runs sizes;
        for (int i = 0; i < count; ++i) {
            const auto name = [] {
                return std::string(*rc::gen::element("A", "B", "C", "D", "E", "F", "G", "H", ""));
            };
            from.push_back(name());
            to.push_back(name());
            sizes.push_back(size(*rc::gen::element(3, 4, 6)));
            if (*rc::gen::inRange(0, 8) == 0) sizes.back().length.reset();
        }
        const auto order = anyOrder(from.size());
        const auto straight = kinds(lineFaults(Network(from, to), sizes));
        const auto mixed =
            kinds(lineFaults(Network(inOrder(from, order), inOrder(to, order)), inOrder(sizes, order)));
        RC_LOG() << "from " << rc::toString(from) << " to " << rc::toString(to) << " order "
                 << rc::toString(order);
        RC_ASSERT(mixed == inOrder(straight, order));
    }));
}

}  // namespace
}  // namespace trenchbook
