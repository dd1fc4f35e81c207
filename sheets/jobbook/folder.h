// whole.pdf is the job's folder: a cover with contents and verdict, then what a reader of the job needs, in order. Sheets
// that are looked up and not read, and those that go to others as papers of their own, are no part of it.
#pragma once

#include <set>

#include "jobbook/parts.h"

namespace trenchbook::sheets {

// The sheets of this job's folder, in its order: those whose tables this job fills.
std::vector<std::string> folderSheets(const Document& document);

// Makes the document print its folder and nothing else: the cover in front, sheets in order, each to its last part and
// without the columns that nobody reads on paper, so that no page is nearly empty. It stays like that: close the document
// afterwards.
void makeFolder(const Document& document);

}  // namespace trenchbook::sheets
