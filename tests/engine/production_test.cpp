#include "trenchbook/takeoff/production.h"

#include <gtest/gtest.h>

#include <cctype>
#include <set>

#include "reference.h"
#include "trenchbook/core/error.h"
#include "trenchbook/takeoff/hand_output.h"

namespace trenchbook {
namespace {

constexpr double cubicMetresOfAYard = 0.764554857984;

// The start of Labor is what print says, for what print has.
TEST(Production, HandDiggingAndFillingArePrinted) {
    struct Printed {
        const char *item, *inputs;
        Work work;
    };
    const Printed taken[] = {
        {"Hand trench digging, sand or soil, firm", "depth=to 1.5 m", Work::DigByHand},
        {"Hand trench digging, sand or soil, firm", "depth=1.5 to 3.0 m", Work::DigByHandDeep},
        {"Hand fill from the side with compaction, loose sand or soil", "layer=100 to 200 mm",
         Work::Backfill}};
    std::size_t seen = 0;
    for (const auto& row : reference::rows("30f_production.csv"))
        for (const Printed& one : taken) {
            if (row.item != one.item || row.inputs != one.inputs) continue;
            reference::check("LABOR", row, cubicMetresOfAYard / workRate(one.work).manHours);
            EXPECT_TRUE(workRate(one.work).printed);
            ++seen;
        }
    EXPECT_EQ(seen, std::size(taken));
}

// Every row of digging, filling and carrying, in the middle of its size and at its far end.
TEST(HandOutput, IsPrinted) {
    std::size_t seen = 0;
    for (const auto& row : reference::rows("30f_production.csv")) {
        const bool trench = row.item.starts_with("Hand trench digging, "),
                   pit = row.item.starts_with("Hand pit digging"),
                   fill = row.item.starts_with("Hand fill from the side"),
                   carry = row.item.starts_with("Hand transport");
        if (row.kind != "table" || !(trench || pit || fill || carry)) continue;
        // "depth=1.5 to 3.0 m", "layer=to 100 mm", "layer=over 300 mm", "distance=0 to 10 m"
        const std::string range = row.inputs.substr(row.inputs.find('=') + 1);
        const double unit = range.ends_with("mm") ? 0.001 : 1;
        const std::size_t to = range.find("to ");
        const double least = std::isdigit(static_cast<unsigned char>(range[0])) ? std::stod(range) : 0;
        const double most = to == std::string::npos ? 1000 : std::stod(range.substr(to + 3));
        const double over = to == std::string::npos ? std::stod(range.substr(5)) : least;
        std::string soil;
        for (const char* word : {"loose", "firm", "boulder clay", "clay", "gravel", "hoggin", "hardcore"})
            if (soil.empty() && row.item.find(word) != std::string::npos) soil = word;
        const HandWork work = trench ? HandWork::Trench
                              : pit  ? HandWork::Pit
                              : fill ? HandWork::Fill
                                     : HandWork::Carry;
        for (const double size : {(over + most) / 2, most})
            EXPECT_NEAR(1 / handHours(handOutput(work, Length::metres(size * unit), soil)).perCubicMetre,
                        row.number(), 1e-12)
                << row.id;
        reference::check(
            "HAND.HOURS", row,
            handOutput(work, Length::metres((over + most) / 2 * unit), soil).perHour.cubicMetres());
        ++seen;
    }
    EXPECT_EQ(seen, handOutputs().size());
}

TEST(HandOutput, ACubicYardIsTheCollectionsCubicYard) {
    std::size_t seen = 0;
    for (const auto& row : reference::rows("30f_production.csv")) {
        if (!row.item.starts_with("Hand trench digging to 1.5 m, ")) continue;
        const HandHours hours = handHours(
            handOutput(HandWork::Trench, Length::feet(4), row.item.substr(row.item.find(", ") + 2)));
        reference::check("HAND.HOURS", row, 1 / hours.perCubicYard);
        ++seen;
    }
    EXPECT_EQ(seen, 4U);
}

TEST(HandOutput, WhatWasNotReadIsASentence) {
    const auto says = [](auto ask) {
        try {
            ask();
            return std::string("nothing");
        } catch (const Error& error) {
            return error.sentence(Language::English);
        }
    };
    EXPECT_EQ(says([] { handOutput(HandWork::Pit, Length::metres(2), "clay"); }),
              "No output was read for clay of this size.");
    EXPECT_EQ(says([] { handOutput(HandWork::Trench, Length::feet(20), ""); }),
              "size is 20 ft; allowed: 14.8 ft (4.5 m) at most.");
    EXPECT_EQ(says([] { handOutput(HandWork::Trench, Length::feet(3), "hardcore"); }),
              "soil is hardcore; allowed: loose, firm, clay, boulder clay.");
    EXPECT_EQ(says([] { handWorkNamed("dance"); }), "work is dance; allowed: trench, pit, fill, carry.");
    EXPECT_NE(says([] { handOutput(HandWork::Trench, Length(), ""); }), "nothing");
    EXPECT_EQ(&handOutput(handWorkNamed("Zanja"), Length::metres(1), "Arcilla"),
              &handOutput(HandWork::Trench, Length::feet(3), "clay"));
    EXPECT_EQ(&handOutput(HandWork::Carry, Length::feet(15), "whatever"), &handOutputs()[35]);
}

// A shovel throws as far up as print says, to the foot that crews count by.
TEST(HandOutput, AShovelsThrowIsPrinted) {
    for (const auto& row : reference::rows("30f_production.csv"))
        if (row.item == "Depth a man can throw from with a shovel")
            reference::check("LABOR", row.item.c_str(), shovelThrow.metres(), row.number(), 0.03,
                             row.source.c_str(), row.provenance.c_str());
}

TEST(Production, EveryKindOfWorkHasItsHours) {
    for (std::size_t kind = 0; kind <= static_cast<std::size_t>(Work::FlushTest); ++kind) {
        const WorkRate& rate = workRates()[kind];
        EXPECT_EQ(static_cast<std::size_t>(rate.work), kind);
        EXPECT_GT(rate.manHours, 0);
    }
    std::set<std::string> keys;
    for (std::size_t kind = 0; kind <= static_cast<std::size_t>(Work::HandDigLength); ++kind)
        keys.insert(workKey(static_cast<Work>(kind)));
    EXPECT_EQ(keys.size(), static_cast<std::size_t>(Work::HandDigLength) + 1) << "each its own";
    EXPECT_EQ(keys.count(""), 0U);
    EXPECT_THROW(workRate(Work::HandDigLength), Error);
}

// Deeper soil takes longer than the soil over it, and a hand longer than a machine.
TEST(Production, DepthAndHandTakeLonger) {
    const auto hours = [](Work work) { return workRate(work).manHours; };
    EXPECT_GT(hours(Work::DigByMachineDeep), hours(Work::DigByMachine));
    EXPECT_GT(hours(Work::DigByHandDeep), hours(Work::DigByHand));
    EXPECT_GT(hours(Work::DigByHand), hours(Work::DigByMachine));
    EXPECT_GT(hours(Work::LayLargePipe), hours(Work::LayPipe));
}

}  // namespace
}  // namespace trenchbook
