// The array functions: each calls the engine once for a whole table. Visible sheets pick their rows from here.
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

// One error cell would blank a whole block: in a feeding column it becomes a word that spoils only its row.
std::string feed(const std::string& column, const std::string& spoiled = "error") {
    return "IFERROR([" + column + "];\"" + spoiled + "\")";
}
// Texts name rows as the sheet counts them.
const std::string firstRow = ";;MIN(ROW([Runs.From]))";
const std::string network = feed("Runs.From", "") + ";" + feed("Runs.To", "");

}  // namespace

std::string peakArguments() {
    return ";" + network + ";" + feed("Runs.Length") + ";" + feed("Runs.Pipe") + ";" + feed("Runs.Slope %") +
           ";" + feed("Water.Node", "") + ";" + feed("Water.Area x C") + ";" + feed("Water.Inlet minutes") +
           ";[Rain.*];rain_years;" + peakRoughness() + ";peak_travel;units";
}

Sheet workingsSheet(const JobSize&) {
    Sheet sheet;
    sheet.name = "Workings";
    sheet.title = "Workings";
    sheet.purpose =
        "Array functions: one call for a whole table, a row here for each row of the table (the thin row first). Nothing "
        "is typed here.";
    const auto runs = [](const char* name, std::string formula, const char* says,
                         std::vector<BlockColumn> columns) {
        return Block{.name = name,
                     .formula = std::move(formula),
                     .table = "Runs",
                     .columns = std::move(columns),
                     .says = says};
    };
    const std::string inverts = "(" + network + ";" + feed("Runs.Length") + ";" + feed("Runs.Pipe") + ";" +
                                feed("Runs.Slope") + ";" + feed("Runs.Outlet level") + ";" +
                                feed("Runs.Fixed level") + ";;units";
    const std::string water = "(" + network + ";" + feed("Runs.Length") + ";" + feed("Runs.Pipe") + ";" +
                              feed("Runs.Flow") + ";" + feed("Runs.Invert up") + ";" +
                              feed("Runs.Invert down") + ";" + feed("Runs.Water below") + ";" +
                              feed("Runs.K") + ";;units";
    const std::string peak = "(" + peakArguments().substr(1);
    const auto ifPeaks = [](const std::string& call) { return "IF(peak_used=\"yes\";" + call + ";\"\")"; };
    const std::string plan =
        "(" + network + ";" + feed("Runs.Length") + ";" + feed("Runs.Ground up") + ";" +
        feed("Runs.Ground down") + ";" + feed("Runs.Plan pipe") + ";" + feed("Runs.Cover asked up") + ";" +
        feed("Runs.Cover asked down") + ";" + feed("Runs.Outlet level") + ";" + feed("Runs.Outlet highest") +
        ";IFERROR([Grade pipes.Pipe:Largest share];\"error\");" + feed("Runs.Flow") + ";;" +
        feed("Runs.Fixed level") +
        ";IFERROR([Crossings.Plan from:Kept level];\"\");plan_deepest;IFERROR([Dig cost.Cut:Price];\"\");{bedding.depth};;;units";
    sheet.parts = {
        runs("faults_block",
             "LINES.FAULTS(" + network + ";" + feed("Runs.Length") + ";" + feed("Runs.Pipe") + ";units" +
                 firstRow + ")",
             "What keeps a run from being worked out", {{"Fault"}}),
        runs("flow_block",
             "LINES.FLOW(" + network + ";" + feed("Water.Node") + ";" + feed("Water.Flow") + ";units)",
             "Flow carried by each run", {{"Flow"}}),
        runs("invert_block", "LINES.INVERTS" + inverts + ")", "Inverts from the outlet uphill",
             {{"Invert up"}, {"Invert down"}}),
        runs("why_block", "LINES.INVERTS.WHY" + inverts + firstRow + ")", "Why a run has no inverts",
             {{"Reason"}}),
        runs("levels_block", "LINES.LEVELS" + water + ")", "Where the water stands",
             {{"Water up"}, {"Water down"}, {"Runs full"}}),
        runs("state_block", "LINES.STATE" + water + firstRow + ")",
             "How the water runs, or why it has no level", {{"State"}}),
        runs("peak_block", ifPeaks("LINES.PEAK" + peak + ")"),
             "Peak flows with travel time, where Peak asks for them",
             {{"Area x C"}, {"Minutes"}, {"Rain"}, {"Flow"}, {"Velocity"}}),
        runs("peak_why_block", ifPeaks("LINES.PEAK.WHY" + peak + firstRow + ")"),
             "Why a run has no peak flow", {{"Reason"}}),
        runs("cleanouts_block",
             "LINES.CLEANOUTS(" + network + ";" + feed("Runs.Length") + ";" + feed("Nodes.Node", "") + ";" +
                 feed("Nodes.Turn") + ";" + feed("Nodes.Takes a cable") + ";units;{bend.sharp})",
             "Pipe and turns since the last opening for a cable",
             {{"Since"}, {"Turned"}, {"From head"}, {"Sharp turns"}}),
        runs("asked_block",
             "LINES.CLEANOUTS.ASKED(" + network + ";" + feed("Runs.Length") + ";" + feed("Runs.Pipe") + ";" +
                 feed("Nodes.Node", "") + ";" + feed("Nodes.Turn") + ";" + feed("Nodes.Takes a cable") +
                 ";[Rules.Key:Value];units)",
             "Cleanouts that the rules ask beyond the openings there are",
             {{"At its upper node"}, {"Along it"}, {"First"}}),
        runs("cover_block",
             "LINES.COVERS(" + feed("Runs.Surface up") + ";" + feed("Runs.Surface down") + ";" +
                 feed("Runs.Pipe") + ";[Rules.Key:Value];units)",
             "Least cover asked at both ends", {{"Cover up"}, {"Cover down"}}),
        runs("plan_block", "GRADE.PLAN" + plan + ";plan_drop)", "The cheapest grade that keeps every rule",
             {{"Invert up"}, {"Invert down"}, {"Slope"}, {"Cut up"}, {"Cut down"}, {"Pipe"}, {"Cost"}}),
        runs("reason_block", "GRADE.REASON" + plan + firstRow + ";plan_drop)",
             "Why it fits or not, for each outlet", {{"Reason"}}),
        Block{.name = "cuts_block",
              .formula = "STICKS.LIST(" + feed("Cuts.Pipe of it", "") + ";IF(ISNUMBER([Cuts.Stick]);" +
                         feed("Cuts.Cut length", "") + ";\"\");" + feed("Cuts.Stick", "") + ";;units)",
              .table = "Cuts",
              .columns = {{"Piece"}, {"Stick"}, {"How many"}, {"Length"}, {"Left over"}},
              .says = "Cut list: row of the piece on Pieces, its stick"},
        Block{.name = "stations_block",
              .formula = "LINES.STATIONS(" + network + ";" + feed("Runs.Length") + ";" +
                         feed("Runs.Line", "") + ";units)",
              .table = "Runs",
              .columns = {{"Station up"}, {"Station down"}, {"Place"}},
              .says = "Distance from the outlet, place on the line"},
        Block{.name = "stakes_block",
              .formula = "LINES.STAKES(" + network + ";" + feed("Runs.Length") + ";" + feed("Runs.Line", "") +
                         ";IF(units=\"metric\";3;10);units)",
              .table = "Crew",
              .columns = {{"Row"}, {"Station"}, {"From lower end"}},
              .says = "Points for the crew: row of the run, station, distance from the run's lower end"},
    };
    sheet.widths = {60};
    sheet.workings = true;
    sheet.printed = false;
    sheet.locked = true;
    return sheet;
}

}  // namespace trenchbook::sheets
