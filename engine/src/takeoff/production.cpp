#include "trenchbook/takeoff/production.h"

#include <algorithm>
#include <array>

#include "trenchbook/core/error.h"
#include "trenchbook/takeoff/hand_output.h"

namespace trenchbook {
namespace {

double byHand(HandWork work, Length size, const char* soil) {
    return handHours(handOutput(work, size, soil)).perCubicYard;
}

const auto& rates() {
    static const std::array all = {
        WorkRate{Work::SetUp, 3, WorkUnit::Job, false},
        WorkRate{Work::CutSod, 0.004, WorkUnit::SquareFoot, false},
        WorkRate{Work::DigByMachine, 0.54, WorkUnit::CubicYard, false},
        // A machine that reaches farther, a ladder, spoil set back.
        WorkRate{Work::DigByMachineDeep, 0.8, WorkUnit::CubicYard, false},
        WorkRate{Work::DigByHand, byHand(HandWork::Trench, Length::metres(1.5), "firm"), WorkUnit::CubicYard,
                 true},
        WorkRate{Work::DigByHandDeep, byHand(HandWork::Trench, Length::metres(3), "firm"),
                 WorkUnit::CubicYard, true},
        WorkRate{Work::ProtectTrench, 0.15, WorkUnit::Foot, false},
        WorkRate{Work::LayPipe, 0.08, WorkUnit::Foot, false},
        WorkRate{Work::LayLargePipe, 0.1, WorkUnit::Foot, false},
        WorkRate{Work::CleanoutsAndWyes, 0.55, WorkUnit::Each, false},
        WorkRate{Work::SetFittings, 0.15, WorkUnit::Each, false},
        WorkRate{Work::Downspouts, 1, WorkUnit::Each, false},
        WorkRate{Work::BasinsChannelsOutlets, 1.5, WorkUnit::Each, false},
        WorkRate{Work::SetChannel, 0.4, WorkUnit::Foot, false},
        WorkRate{Work::DigPit, 0.6, WorkUnit::CubicYard, false},
        WorkRate{Work::RockAndFabric, 1.25, WorkUnit::CubicYard, false},
        WorkRate{Work::LayApron, 1.5, WorkUnit::CubicYard, false},
        WorkRate{Work::Backfill, byHand(HandWork::Fill, Length::metres(0.2), "loose"), WorkUnit::CubicYard,
                 true},
        WorkRate{Work::LaySod, 0.012, WorkUnit::SquareFoot, false},
        WorkRate{Work::RestorePaving, 0.06, WorkUnit::SquareFoot, false},
        WorkRate{Work::HaulSpoil, 0.55, WorkUnit::CubicYard, false},
        WorkRate{Work::FlushTest, 3, WorkUnit::Job, false},
    };
    return all;
}

}  // namespace

std::span<const WorkRate> workRates() { return rates(); }

const char* workKey(Work work) {
    switch (work) {
        case Work::SetUp:
            return "setup";
        case Work::CutSod:
            return "sod.cut";
        case Work::DigByMachine:
            return "dig.machine";
        case Work::DigByMachineDeep:
            return "dig.machine.deep";
        case Work::DigByHand:
            return "dig.hand";
        case Work::DigByHandDeep:
            return "dig.hand.deep";
        case Work::ProtectTrench:
            return "trench.protect";
        case Work::LayPipe:
            return "pipe.small";
        case Work::LayLargePipe:
            return "pipe.large";
        case Work::CleanoutsAndWyes:
            return "wyes";
        case Work::SetFittings:
            return "fittings";
        case Work::Downspouts:
            return "downspouts";
        case Work::BasinsChannelsOutlets:
            return "boxes";
        case Work::SetChannel:
            return "channel";
        case Work::DigPit:
            return "pit.dig";
        case Work::RockAndFabric:
            return "pit.rock";
        case Work::LayApron:
            return "apron";
        case Work::Backfill:
            return "backfill";
        case Work::LaySod:
            return "sod.lay";
        case Work::RestorePaving:
            return "paving";
        case Work::HaulSpoil:
            return "haul";
        case Work::FlushTest:
            return "flush";
        case Work::HandDigLength:
            return "dig.hand.length";
    }
    return "";
}

const WorkRate& workRate(Work work) {
    const auto found =
        std::find_if(rates().begin(), rates().end(), [&](const WorkRate& rate) { return rate.work == work; });
    if (found == rates().end())
        throw Error(Error::Kind::BadArgument, "work", std::to_string(static_cast<int>(work)),
                    {"a kind of work that takes hours", "una clase de trabajo que toma horas"});
    return *found;
}

}  // namespace trenchbook
