// Which sheets a job can do without: the one home of the rule. Job's list of sheets says it, and the menu's command that
// shows the sheets that are needed (commands/sheets_shown.h) reads it from the workbook.
#pragma once

#include <vector>

#include "kit/model.h"

namespace trenchbook::sheets {

// A hidden form: for each sheet that may step aside a field with the sheet's name as its label, blank where the job needs
// the sheet, else why it does not. Before the first node stands on Nodes nobody knows, and nothing is said of a sheet with
// anything of this lot typed on it. Its first field keeps the names of the sheets that stepped aside, |Pit|Pump|, which no
// formula can see.
Form sheetsNeeded(const std::vector<Sheet>& sheets);

// For Job's list: "NO: hidden" and how it comes back where the sheet is needed and stepped aside, else why it is not needed,
// else nothing. Empty for a sheet that never steps aside.
std::string neededWords(const Sheet& sheet);

}  // namespace trenchbook::sheets
