// The array functions: each calls the engine once for a whole table. Visible sheets pick their rows from here.
#include "job/job.h"

namespace trenchbook::sheets {
namespace {

// One error cell would blank a whole block: in a feeding column it becomes a word that spoils only its row.
std::string feed(const std::string& column, const std::string& spoiled = "error") {
    return "IFERROR([" + column + "];\"" + spoiled + "\")";
}
const std::string network = feed("Runs.From", "") + ";" + feed("Runs.To", "");

}  // namespace

Sheet workingsSheet(const JobSize&) {
    Sheet sheet;
    sheet.name = "Workings";
    sheet.title = "Workings";
    sheet.purpose =
        "Array functions: one call for a whole table, a row here for each row of the table (the thin row first). Nothing "
        "is typed here.";
    sheet.parts = {
        Block{.name = "faults_block",
              .formula = "LINES.FAULTS(" + network + ";" + feed("Runs.Length") + ";" + feed("Runs.Pipe") + ";units)",
              .table = "Runs",
              .says = "What keeps a run from being worked out",
              .headings = {"Fault"}},
        Block{.name = "flow_block",
              .formula = "LINES.FLOW(" + network + ";" + feed("Water.Node") + ";" + feed("Water.Flow") + ";units)",
              .table = "Runs",
              .says = "Flow carried by each run",
              .headings = {"Flow"}},
        Block{.name = "invert_block",
              .formula = "LINES.INVERTS(" + network + ";" + feed("Runs.Length") + ";" + feed("Runs.Pipe") + ";" +
                         feed("Runs.Slope") + ";" + feed("Runs.Outlet level") + ";" + feed("Runs.Fixed level") +
                         ";;units)",
              .table = "Runs",
              .columns = 2,
              .says = "Inverts from the outlet uphill",
              .headings = {"Invert up", "Invert down"}},
        Block{.name = "stations_block",
              .formula = "LINES.STATIONS(" + network + ";" + feed("Runs.Length") + ";" + feed("Runs.Line", "") +
                         ";units)",
              .table = "Runs",
              .columns = 3,
              .says = "Distance from the outlet, place on the line",
              .headings = {"Station up", "Station down", "Place"}},
        Block{.name = "stakes_block",
              .formula = "LINES.STAKES(" + network + ";" + feed("Runs.Length") + ";" + feed("Runs.Line", "") +
                         ";IF(units=\"metric\";3;10);units)",
              .table = "Crew",
              .columns = 3,
              .says = "Points for the crew: row of the run, station, distance from the run's lower end",
              .headings = {"Row", "Station", "From lower end"}},
    };
    sheet.widths = {60};
    sheet.printed = false;
    sheet.locked = true;
    return sheet;
}

}  // namespace trenchbook::sheets
