// What the sheets themselves say, in Spanish. Sheets are written in English; a quoted text of a formula that stands in
// these tables is put into the workbook under a name that gives it in the job's language:
//
//     "NO: the code is missing"   becomes   say_no_the_code_is_missing,
//     which is   IF(language="es";"NO: falta el código";"NO: the code is missing")
//
// Sentences that are put together of parts are translated part by part, so the parts of both languages follow each
// other in the same order. What the engine says has its Spanish beside it in the engine.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "kit/model.h"

namespace trenchbook::sheets {

// English and Spanish. {} stands for words that are the same in both, such as the heading of a column.
using Phrases = std::vector<std::pair<std::string, std::string>>;
const Phrases& sitePhrases();     // checks of the sheets from Job to Pit, and what Job says
const Phrases& purposePhrases();  // the line under each sheet's name
const Phrases& buyingPhrases();   // checks from Takeoff to Close-out, of price book and ledger
const Phrases& paperPhrases();    // proposal, invoice, care note

// The whole text in Spanish; nothing where it is no text of these tables: a unit, a code, a name.
std::optional<std::string> inSpanish(const std::string& english);

// Name and expression under which a workbook keeps such a text. The field "language" holds "en" or "es".
std::string sayName(const std::string& english);
std::string sayExpression(const std::string& english, const std::string& spanish);

// Fixed texts of the workbook that have their Spanish become formulas: titles, purposes, headings over parts and lines
// everywhere, headings and cells of tables on the sheets named. Without a field "language" nothing changes.
void inBothLanguages(Workbook& workbook, const std::vector<std::string>& papers);

}  // namespace trenchbook::sheets
