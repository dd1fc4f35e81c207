// The commands behind the menu's entries. Each throws Refused with a sentence where it cannot be done as things stand.
#pragma once

#include "menu/call.h"

namespace trenchbook::addin {

// Arguments in parentheses may be left out.
Answer newJob(Call& call);         // (To, Replace)
Answer newLot(Call& call);         // (To, Replace)
Answer bringPrices(Call& call);    // Book, (Take)
Answer buyCheapest(Call& call);    // Book, (Most, Take)
Answer noteChange(Call& call);     // Changed, (What)
Answer issueOrder(Call& call);     // Number, (Supplier, Issued, Deliver, Place, Only, Replace)
Answer noteOption(Call& call);     // Other, (Name)
Answer bringEstimate(Call& call);  // (Replace)
Answer bringActual(Call& call);
Answer learnRates(Call& call);    // Ledger
Answer closeJob(Call& call);      // Job, (Finished): in the ledger's window
Answer writePapers(Call& call);   // Folder, (Size)
Answer drawingFiles(Call& call);  // Folder
Answer copyValues(Call& call);    // To, (Replace): both To.ods and To.xlsx
Answer nextMissing(Call& call);
Answer printRanges(Call& call);
Answer showSheets(Call& call);  // (Every)
Answer explainCell(Call& call);
Answer bringShots(Call& call);  // File, (Point, Level, Rod, Backsight, Note: headings of the file)
Answer about(Call& call);

// The command of this name; throws Refused when there is none.
Answer run(Call& call);

}  // namespace trenchbook::addin
