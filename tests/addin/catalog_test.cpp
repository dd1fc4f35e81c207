// What holds for every function of the catalog.
#include <map>
#include <set>

#include "catalog/listing.h"
#include "catalog_harness.h"

namespace trenchbook::addin {
namespace {

bool isBlock(const Function& function) {
    return function.returns == Returns::NumberBlock || function.returns == Returns::WordBlock;
}

TEST(Catalog, EveryFunctionIsToldInBothLanguages) {
    for (const Function& function : catalog()) {
        SCOPED_TRACE(function.name);
        EXPECT_FALSE(function.says.en.empty());
        EXPECT_FALSE(function.says.es.empty());
        EXPECT_NE(function.says.en, function.says.es);
        EXPECT_FALSE(function.source.empty());
        EXPECT_EQ(function.example.find(function.name + "("), 0u) << function.example;
        EXPECT_NE(function.call, nullptr);
        EXPECT_EQ(isBlock(function), !function.columns.empty()) << "blocks tell what their columns hold";
        for (const Argument& argument : allArguments(function)) {
            EXPECT_FALSE(argument.says.en.empty()) << argument.name;
            EXPECT_FALSE(argument.says.es.empty()) << argument.name;
            EXPECT_TRUE(argument.fallback.empty() || argument.optional) << argument.name;
        }
    }
}

// Calc hands over missing arguments as nothing only at the end, so what must be given comes first.
TEST(Catalog, RequiredArgumentsComeFirst) {
    for (const Function& function : catalog()) {
        bool optional = false;
        for (const Argument& argument : allArguments(function)) {
            EXPECT_FALSE(optional && !argument.optional) << function.name << ": " << argument.name;
            optional = optional || argument.optional;
        }
    }
}

TEST(Catalog, NamesAreUnique) {
    std::set<std::string> names;
    for (const Function& function : catalog())
        EXPECT_TRUE(names.insert(function.name).second) << function.name;
    EXPECT_GT(names.size(), 60u);
}

TEST(Catalog, FamiliesHoldEveryFunctionOnce) {
    std::size_t held = 0;
    for (const Family& family : families()) {
        EXPECT_FALSE(family.functions.empty()) << family.title.en;
        EXPECT_NE(family.title.en, family.title.es);
        held += family.functions.size();
    }
    EXPECT_EQ(held, catalog().size());
}

// A function called with nothing at all refuses in words that name an argument, unless it needs none.
TEST(Catalog, MissingArgumentsAreNamed) {
    for (const Function& function : catalog()) {
        if (function.arguments.empty() || function.arguments.front().optional) continue;
        const std::string english = why(function, {}, Language::English);
        const std::string spanish = why(function, {}, Language::Spanish);
        EXPECT_NE(english, "OK") << function.name;
        EXPECT_NE(english, spanish) << function.name << ": " << english;
    }
}

TEST(Catalog, ListingShowsTheCallAsItIsTyped) {
    std::map<std::string, ListedFunction> listed;
    for (const ListedFunction& row : listing()) listed[row.name] = row;
    EXPECT_EQ(listed.size(), catalog().size());
    EXPECT_EQ(listed.at("PIT.STORAGE").call,
              "PIT.STORAGE(length; width; rock depth; [voids=0.4]; [units=\"US\"])");
    EXPECT_EQ(listed.at("TRENCHBOOK.WHY").call, "TRENCHBOOK.WHY(function; arguments; ...)");
    EXPECT_EQ(listed.at("PIT.STORAGE").unit.en, "cu ft (metric: m³)");
    EXPECT_EQ(listed.at("PIT.STORAGE").unit.es, "cu ft (métrico: m³)");
    EXPECT_TRUE(listed.at("LINES.FLOW").block);
    EXPECT_FALSE(listed.at("PIT.STORAGE").block);
}

}  // namespace
}  // namespace trenchbook::addin
