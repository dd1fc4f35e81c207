// Standing rules: what is asked of a job without a number, each with its source. Limits are in rules.h.
//
//     standingRule(Standing::RunBoreShrinks).key;       // "run.bore.shrinks"
//     standingRule(Standing::RunBoreShrinks).says.en;   // "no pipe is smaller than the one that runs into it"
//     findStandingRule("pit.well")->source;             // "Class V wells, 40 CFR 144, from memory"
//
// A county changes a limit on the sheet Rules; what stands here is changed by nobody. Finding::rule holds a key of one
// of the two tables, and no key is in both. Keys are lower-case words with dots, as in rules.h.
#pragma once

#include <span>
#include <string_view>

#include "trenchbook/core/text.h"

namespace trenchbook {

enum class Standing {
    // What is typed.
    InputMissing,
    InputWaits,
    InputUnusable,
    InputUnread,
    InputUnit,
    NameOnce,
    NameKnown,
    ApprovalSigned,
    // The lines.
    NodeJoined,
    NodeWater,
    NodeEnd,
    RunOneWay,
    RunBoreShrinks,
    RunJoinLower,
    RunBareBore,
    RunExisting,
    RunCorrugated,
    RunPerforated,
    GroundBreak,
    // The drawing.
    LayoutTape,
    LayoutTurn,
    // The water.
    WaterComes,
    WaterClean,
    WaterPermission,
    InletWayOn,
    InletTwice,
    InletEntry,
    InletHead,
    OutletRow,
    OutletUnderWater,
    OutletExistingPipe,
    OutletPump,
    OutletApron,
    SwaleShoots,
    PitSoak,
    PitWell,
    PitPipe,
    // The pump.
    PumpOrder,
    PumpPressure,
    PumpSiphon,
    PumpPowerOut,
    PumpWiring,
    // The digging.
    TicketValid,
    CrossingMarked,
    LinesPrivate,
    DigUnder,
    Silica,
    PoolBonding,
    BasinFloats,
    // The takeoff.
    PipeInGround,
    PieceStocked,
    CodeOnce,
    TakeoffLeavesOut,
};

struct StandingRule {
    Standing rule;
    const char* key;
    Text says;  // one sentence, as a rule book says it
    const char* source;
};

// The whole table, in the order of Standing.
std::span<const StandingRule> standingRules();
const StandingRule& standingRule(Standing rule);
// Null when there is no such key. Case and blanks around it do not matter.
const StandingRule* findStandingRule(std::string_view key);

}  // namespace trenchbook
