// Sheets that a job does not need step aside, and come back when it does. Which they are the workbook itself says, in a
// hidden form on Job (templates/steps_aside.h).
//
//     #include "commands/sheets_shown.h"
//     using namespace trenchbook::sheets;
//     Text hide(const Book& book) { return showSheets(book, SheetsShown::Needed).says; }
#pragma once

#include "commands/steps.h"

namespace trenchbook::sheets {

// The form, and the label of its field with the names of the sheets that stepped aside.
inline constexpr const char* sheetsForm = "Sheets needed";
inline constexpr const char* asideLabel = "Stepped aside";

enum class SheetsShown {
    Needed,     // these and no other
    Every,      // all that a command put aside
    BackAgain,  // those come back that are needed now; none goes
    Turned,     // Needed; Every, where only the needed ones are shown already
};

// No steps where the sheets stand so already. A workbook without the form, of an earlier version, is left as it is. The workbook
// must be computed.
Planned showSheets(const Book& book, SheetsShown shown);

}  // namespace trenchbook::sheets
