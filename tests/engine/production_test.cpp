#include "trenchbook/takeoff/production.h"

#include <gtest/gtest.h>

#include "reference.h"
#include "trenchbook/core/error.h"

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

TEST(Production, EveryKindOfWorkHasItsHours) {
    for (std::size_t kind = 0; kind <= static_cast<std::size_t>(Work::FlushTest); ++kind) {
        const WorkRate& rate = workRates()[kind];
        EXPECT_EQ(static_cast<std::size_t>(rate.work), kind);
        EXPECT_GT(rate.manHours, 0);
    }
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
