#include "trenchbook/lines/node_kind.h"

#include <gtest/gtest.h>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

TEST(NodeKind, TheTableStandsInTheOrderOfTheKinds) {
    ASSERT_EQ(nodeKindTable().size(), nodeKindCount);
    for (std::size_t i = 0; i < nodeKindCount; ++i) {
        const NodeKindInfo& row = nodeKindTable()[i];
        EXPECT_EQ(static_cast<std::size_t>(row.kind), i) << row.name.en;
        EXPECT_EQ(&info(row.kind), &row);
        EXPECT_TRUE(nodeKinds(row.name.en).has(row.kind)) << row.name.en;
        EXPECT_TRUE(nodeKinds(row.name.es).has(row.kind)) << row.name.es;
    }
}

// What a kind is, by the list that people choose from.
TEST(NodeKind, KnowsWhatEachIs) {
    const auto names = [](auto property) {
        std::string said;
        for (const NodeKindInfo& row : nodeKindTable())
            if (row.*property) said += row.name.en + " ";
        return said;
    };
    EXPECT_EQ(names(&NodeKindInfo::open), "downspout channel basin cleanout cap ");
    EXPECT_EQ(names(&NodeKindInfo::takesCable), "channel basin cleanout ");
    EXPECT_EQ(names(&NodeKindInfo::stillsWater), "channel basin ");
    EXPECT_EQ(names(&NodeKindInfo::upright), "downspout cleanout ");
    EXPECT_EQ(names(&NodeKindInfo::endsLine),
              "tee riser pop-up bank ditch curb existing pipe pump basin outlet ");
    EXPECT_EQ(names(&NodeKindInfo::bubbles), "tee riser pop-up ");
    EXPECT_EQ(names(&NodeKindInfo::takesWater), "downspout channel basin ");
}

TEST(NodeKind, ANodeMayBeSeveralThings) {
    const NodeKinds both = nodeKinds(" Cleanout + Downspout ");
    EXPECT_TRUE(both.has(NodeKind::Cleanout));
    EXPECT_TRUE(both.has(NodeKind::Downspout));
    EXPECT_FALSE(both.has(NodeKind::Basin));
    EXPECT_TRUE(both.takesCable() && both.takesWater() && both.open() && both.upright());
    EXPECT_FALSE(both.stillsWater() || both.endsLine());
    EXPECT_EQ(both.text().en, "downspout + cleanout");
    EXPECT_EQ(both.text().es, "bajante + registro de limpieza");
    for (const char* typed : {"downspout,cleanout", "downspout/cleanout", "bajante & registro de limpieza"})
        EXPECT_EQ(nodeKinds(typed), both) << typed;
}

TEST(NodeKind, RefusesWhatItDoesNotKnow) {
    for (const char* typed : {"", "well", "basin +", "+ basin", "basin wye"}) {
        try {
            nodeKinds(typed);
            ADD_FAILURE() << typed;
        } catch (const Error& error) {
            EXPECT_EQ(error.argument(), "kind") << typed;
            EXPECT_NE(error.sentence(Language::English).find("cleanout"), std::string::npos) << typed;
            EXPECT_NE(error.sentence(Language::Spanish).find("caja de registro"), std::string::npos) << typed;
        }
    }
}

}  // namespace
}  // namespace trenchbook
