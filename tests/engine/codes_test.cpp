// Codes of pieces, their sockets and cement: for every row of the stock table, and by hand.
#include "trenchbook/takeoff/codes.h"

#include <gtest/gtest.h>

#include <functional>
#include <set>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

Pipe pipe(const char* name) { return stockPipe(name); }

TEST(Codes, AsPriceListsWriteThem) {
    const Pipe four = pipe("4 SDR35"), six = pipe("6 SDR35");
    EXPECT_EQ(pipeCode(four), "PIPE-4SDR35");
    EXPECT_EQ(wye(four, four).code, "WYE-4SDR35");
    EXPECT_EQ(wye(six, four).code, "WYE-6X4SDR35");
    EXPECT_EQ(wye(six, pipe("4 SCH40")).code, "WYE-6X4SDR35");
    EXPECT_EQ(reducer(six, four).code, "REDUCER-6X4SDR35");
    EXPECT_EQ(reducer(four, six).code, "REDUCER-6X4SDR35") << "larger first, whichever way it is read";
    EXPECT_EQ(bend(four, Angle::degrees(22.5)).code, "BEND22-4SDR35");
    EXPECT_EQ(bend(four, Angle::degrees(45)).code, "BEND45-4SDR35");
    EXPECT_EQ(riserBend(four).code, "BEND45-4SDR35");
    EXPECT_EQ(coupling(six).code, "COUPLING-6SDR35");
    EXPECT_EQ(adapter(six, pipe("6 SCH40")).code, "ADAPTER-6SDR35-SCH40");
    EXPECT_EQ(adapter(four, pipe("6 SCH40")).code, "ADAPTER-4SDR35-SCH40");
    EXPECT_EQ(body(NodeKind::Cleanout, four).code, "CLEANOUT-4SDR35");
    EXPECT_EQ(body(NodeKind::Basin, six).code, "HUB-6SDR35");
    EXPECT_EQ(body(NodeKind::Channel, six).code, "HUB-6SDR35");
    EXPECT_EQ(body(NodeKind::Tee, four).code, "TEE-4SDR35");
    EXPECT_EQ(device(NodeKind::Downspout, four).code, "DOWNSPOUT-4SDR35");
    EXPECT_EQ(device(NodeKind::Basin, six).code, "BASIN-12");
    EXPECT_EQ(device(NodeKind::Channel, six).code, "CHANNEL-6");
    EXPECT_EQ(leaderAdapter(sizeWord("3x4"), four).code, "DOWNSPOUT-3X4-4SDR35");
    EXPECT_EQ(basinRing("BASIN-12").code, "BASIN-12-RISER");
    EXPECT_EQ(checkValve(six).code, "CHECK-VALVE-6");
    EXPECT_EQ(sizeWord("12x12"), "12");
    EXPECT_EQ(sizeWord(" 12 x 18 "), "12X18");
    EXPECT_EQ(sizeWord("9"), "9");
    EXPECT_EQ(device(NodeKind::Tee, four).code, "TEEGRATE-4");
    EXPECT_EQ(device(NodeKind::Outlet, six).code, "GUARD-6");
    EXPECT_EQ(device(NodeKind::Cap, four).code, "CAP-4SDR35");
}

TEST(Codes, AHalfInchStaysAHalfInch) {
    const Pipe small = pipe("1-1/2 SCH40");
    EXPECT_EQ(small.nominal, 1.5);
    EXPECT_EQ(pipeCode(small), "PIPE-1.5SCH40");
    EXPECT_EQ(wye(pipe("2 SCH40"), small).code, "WYE-2X1.5SCH40");
    EXPECT_EQ(device(NodeKind::Outlet, small).code, "GUARD-1.5");
}

TEST(Codes, NoTwoStockPipesShareAPiece) {
    std::set<std::string> codes;
    for (const StockPipe& row : stock()) {
        const Pipe& one = row.pipe;
        EXPECT_TRUE(codes.insert(pipeCode(one)).second) << one.name;
        // Perforated pipe takes the pieces of its make.
        if (one.perforated) {
            EXPECT_EQ(wye(one, one).code, wye(*stockSize(one.system, one.nominal), one).code);
            continue;
        }
        EXPECT_EQ(pipeWord(one).find_first_of(" -/"), std::string::npos) << one.name;
        EXPECT_NE(pipeWord(one).find(one.system), std::string::npos) << one.name;
        for (const Piece& piece :
             {wye(one, one), bend(one, Angle::degrees(22.5)), bend(one, Angle::degrees(45)), coupling(one),
              body(NodeKind::Cleanout, one), body(NodeKind::Basin, one), body(NodeKind::Tee, one),
              device(NodeKind::Downspout, one), device(NodeKind::Cap, one)})
            EXPECT_TRUE(codes.insert(piece.code).second) << piece.code;
        for (const StockPipe& other : stock()) {
            if (!other.pipe.perforated && other.pipe.nominal < one.nominal &&
                other.pipe.system == one.system) {
                EXPECT_TRUE(codes.insert(wye(one, other.pipe).code).second) << one.name << other.pipe.name;
            }
        }
    }
    EXPECT_GT(codes.size(), 8 * stock().size());
}

TEST(Codes, ABareBoreHasNone) {
    const Pipe bore = bareBore(Length::inches(4)), four = pipe("4 SDR35");
    for (const auto& make : std::initializer_list<std::function<void()>>{
             [&] { pipeCode(bore); }, [&] { wye(bore, four); }, [&] { wye(four, bore); },
             [&] { reducer(four, bore); }, [&] { coupling(bore); }, [&] { adapter(bore, four); },
             [&] { adapter(four, bore); }, [&] { body(NodeKind::Tee, bore); },
             [&] { device(NodeKind::Outlet, bore); }, [&] { bend(bore, Angle::degrees(45)); }}) {
        try {
            make();
            ADD_FAILURE() << "a bare bore was given a code";
        } catch (const Error& error) {
            EXPECT_EQ(error.argument(), "pipe");
        }
    }
}

TEST(Codes, OnlyKindsWithAPieceHaveOne) {
    const Pipe four = pipe("4 SDR35");
    for (const NodeKindInfo& row : nodeKindTable()) {
        if (row.body == nullptr)
            EXPECT_THROW(body(row.kind, four), Error) << row.name.en;
        else
            EXPECT_TRUE(body(row.kind, four).code.starts_with(row.body)) << row.name.en;
        if (row.device == nullptr)
            EXPECT_THROW(device(row.kind, four), Error) << row.name.en;
        else
            EXPECT_TRUE(device(row.kind, four).code.starts_with(row.device)) << row.name.en;
    }
}

TEST(Joints, AdapterWhereOutsideOrJointDiffers) {
    // ASTM D3034 and D2729 share 4.215 in; schedule 40 is 4.500 in. Corrugated pipe has no size for a socket.
    EXPECT_TRUE(fitsInto(pipe("4 SDR35"), "D2729"));
    EXPECT_TRUE(fitsInto(pipe("4 D2729"), "SDR35"));
    EXPECT_FALSE(fitsInto(pipe("4 SDR35"), "SCH40"));
    EXPECT_FALSE(fitsInto(pipe("4 CORRUGATED"), "SDR35"));
    EXPECT_FALSE(fitsInto(pipe("3 D2729"), "SDR35")) << "SDR 35 begins at 4 in";
    // 6.9 in both, but one is snapped and the other pushed into a bell.
    EXPECT_EQ(pipe("6 CORRUGATED").outside, pipe("6 DUALWALL").outside);
    EXPECT_FALSE(fitsInto(pipe("6 CORRUGATED"), "DUALWALL"));
    EXPECT_FALSE(fitsInto(bareBore(Length::inches(4)), "SDR35"));
    for (const StockPipe& row : stock()) EXPECT_TRUE(fitsInto(row.pipe, row.pipe.system)) << row.pipe.name;
}

TEST(Joints, RisersAreFourInchesAtMost) {
    for (const StockPipe& row : stock()) {
        const Pipe riser = riserFor(row.pipe);
        EXPECT_EQ(riser.system, row.pipe.system);
        EXPECT_EQ(riser.nominal, std::min(row.pipe.nominal, 4.0)) << row.pipe.name;
    }
}

TEST(Joints, EachSocketTakesTheCementOfItsSize) {
    const Ruleset rules;  // 20 sockets a pint at 3 in, 15 at 4, 5 at 6, 2.5 at 8
    const auto pints = [&](const Piece& piece) { return cementPints(piece, rules); };
    EXPECT_DOUBLE_EQ(pints(coupling(pipe("3 SCH40"))), 2 / 20.0);
    EXPECT_DOUBLE_EQ(pints(coupling(pipe("4 SDR35"))), 2 / 15.0);
    EXPECT_DOUBLE_EQ(pints(coupling(pipe("5 SCH40"))), 2 / 15.0);
    EXPECT_DOUBLE_EQ(pints(coupling(pipe("6 SDR35"))), 2 / 5.0);
    EXPECT_DOUBLE_EQ(pints(coupling(pipe("8 SDR35"))), 2 / 2.5);
    EXPECT_DOUBLE_EQ(pints(wye(pipe("6 SDR35"), pipe("4 SDR35"))), 2 / 5.0 + 1 / 15.0);
    EXPECT_DOUBLE_EQ(pints(reducer(pipe("6 SDR35"), pipe("4 SDR35"))), 1 / 5.0 + 1 / 15.0);
    EXPECT_DOUBLE_EQ(pints(body(NodeKind::Tee, pipe("4 SDR35"))), 3 / 15.0);
    EXPECT_DOUBLE_EQ(pints(device(NodeKind::Downspout, pipe("4 SDR35"))), 1 / 15.0);
    EXPECT_DOUBLE_EQ(pints(device(NodeKind::Basin, pipe("4 SDR35"))), 0);
    Piece two = wye(pipe("4 SDR35"), pipe("4 SDR35"));
    two.count = 2;
    EXPECT_EQ(socketCount(two), 6u);
    EXPECT_DOUBLE_EQ(pints(two), 6 / 15.0);
}

TEST(Joints, OnlySolventWeldTakesCement) {
    const Ruleset rules;
    for (const StockPipe& row : stock()) {
        const double pints = cementPints(wye(row.pipe, row.pipe), rules);
        EXPECT_EQ(pints > 0, row.pipe.joint == Joint::SolventWeld) << row.pipe.name;
        EXPECT_EQ(socketCount(wye(row.pipe, row.pipe)), 3u);
    }
    EXPECT_EQ(pipe("4 CORRUGATED").joint, Joint::Coupling);
    EXPECT_EQ(pipe("4 DUALWALL").joint, Joint::Gasket);
    EXPECT_EQ(pipe("4 D2729").joint, Joint::SolventWeld);
    // An adapter is cemented on its cemented side alone.
    EXPECT_DOUBLE_EQ(cementPints(adapter(pipe("4 CORRUGATED"), pipe("4 SDR35")), rules), 1 / 15.0);
    EXPECT_DOUBLE_EQ(cementPints(adapter(pipe("4 SDR35"), pipe("6 SCH40")), rules), 2 / 15.0);
}

TEST(Joints, NamesInBothLanguages) {
    EXPECT_EQ(wye(pipe("6 SDR35"), pipe("4 SDR35")).name.en, "wye 6 x 4 SDR35");
    EXPECT_EQ(wye(pipe("6 SDR35"), pipe("4 SDR35")).name.es, "ye 6 x 4 SDR35");
    EXPECT_EQ(riserBend(pipe("4 SDR35")).name.en, "45 bend 4 SDR35 for the riser");
    EXPECT_EQ(riserBend(pipe("4 SDR35")).name.es, "codo de 45, 4 SDR35, para el tubo vertical");
    EXPECT_EQ(adapter(pipe("4 SDR35"), pipe("4 SCH40")).name.es, "adaptador 4 SDR35 a SCH40");
}

}  // namespace
}  // namespace trenchbook
