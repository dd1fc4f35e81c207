#include "buying/labor_lines.h"

#include "trenchbook/core/text.h"

namespace trenchbook::sheets {

std::string amountOf(const std::string& key) {
    return "INDEX(<work_numbers.Amount:*>;MATCH(" + key + ";<work_words.Key:*>;0))";
}

std::vector<LaborLine> laborLines() {
    const auto counted = [](const char* name, Work work, bool soil, bool access, const char* where) {
        const WorkRate& rate = workRate(work);
        return LaborLine{name, workKey(work), rate.per, rate.manHours, soil, access, where};
    };
    const char* cut = "Runs and Pump: trench width x cut, in place; less what is dug by hand";
    const char* hand = "Crossings: hand digging; and what is typed above; at the mean cut";
    const char* refilled = "trench less bedding, pipe and rock, in place; soil over the pit";
    return {
        counted("Layout and set-up", Work::SetUp, false, false, "one for the job"),
        counted("Cut and lay aside sod", Work::CutSod, false, true, "trench and pit under lawn"),
        counted("Dig trench by machine", Work::DigByMachine, true, true, cut),
        counted("The same, under 5 ft (1.5 m)", Work::DigByMachineDeep, true, true, cut),
        counted("Dig trench by hand", Work::DigByHand, true, false, hand),
        counted("By hand, under 5 ft (1.5 m)", Work::DigByHandDeep, true, false, hand),
        counted("Shore or slope the trench", Work::ProtectTrench, false, false,
                "Runs: as deep as cut.protect on Rules"),
        counted("Bed, lay, join, grade: small pipe", Work::LayPipe, false, false,
                "Runs and Pump: lengths of pipe that takes the narrowest trench on Rules"),
        counted("Bed, lay, join, grade: large pipe", Work::LayLargePipe, false, false,
                "Runs and Pump: lengths of pipe that takes a wider trench"),
        counted("Cleanouts and wyes", Work::CleanoutsAndWyes, false, false, "Nodes"),
        counted("Bends, couplings, hubs, valves", Work::SetFittings, false, false,
                "Nodes and Runs: one each, caps, rings and adapters too"),
        counted("Downspout connections", Work::Downspouts, false, false, "Nodes, as many as on Water"),
        counted("Basins, channels, outlets", Work::BasinsChannelsOutlets, false, false, "Nodes"),
        counted("Set channel drain in concrete", Work::SetChannel, false, false,
                "Water: lengths of trench drains"),
        {"Saw-cut concrete", "", WorkUnit::Foot, 0.08, false, false, "typed above"},
        counted("Dig pit", Work::DigPit, true, true, "Pit: rock and the soil over it; pump basins; aprons"),
        counted("Rock and fabric", Work::RockAndFabric, false, true, "Pit: rock"),
        counted("Lay apron stone", Work::LayApron, false, true, "Outlets: stone aprons"),
        counted("Backfill and tamp", Work::Backfill, false, true, refilled),
        counted("Lay sod", Work::LaySod, false, false, "trench and pit under lawn"),
        counted("Cut and make good paving", Work::RestorePaving, false, false,
                "Runs: length x trench width under walk, drive, street"),
        counted("Load and haul spoil", Work::HaulSpoil, false, true,
                "room of bedding, pipe, rock and boxes, loose"),
        counted("Flush test and as-built", Work::FlushTest, false, false, "one for the job"),
    };
}

std::string perUnit(WorkUnit per, double hours) {
    const char* metric = per == WorkUnit::Foot         ? "/0.3048"
                         : per == WorkUnit::SquareFoot ? "/0.09290304"
                         : per == WorkUnit::CubicYard  ? "/0.764554857984"
                                                       : nullptr;
    const std::string us = plain(hours, 3);
    return metric == nullptr ? us
                             : "=IF(units=\"metric\";ROUND(" + plain(hours, 6) + metric + ";3);" + us + ")";
}
std::string unitWord(WorkUnit per) {
    switch (per) {
        case WorkUnit::Job:
            return "job";
        case WorkUnit::Each:
            return "each";
        case WorkUnit::Foot:
            return "=IF(units=\"metric\";\"m\";\"ft\")";
        case WorkUnit::SquareFoot:
            return "=IF(units=\"metric\";\"m2\";\"sq ft\")";
        case WorkUnit::CubicYard:
            return "=IF(units=\"metric\";\"m3\";\"cu yd\")";
    }
    return "";
}

}  // namespace trenchbook::sheets
