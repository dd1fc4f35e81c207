// The law for all that is typed: it can be used, or Job and Quote name it. One home for what a field may hold, whatever its
// form does with it. Cannot be used: words where a number or a date belongs, a word that is not in the list, an error
// anywhere. Unusual: a number or date outside of what the cell asks for; told with = behind it.
#pragma once

#include <vector>

#include "kit/model.h"

namespace trenchbook::sheets {

// A hidden form of texts, each of which names what is wrong in some fields of all forms: "Account: Invoice; Labor: Wage=2600".
Form fieldsRead(const std::vector<Sheet>& sheets);

// For the tables of what a job costs; those of the lot are read by the engine, row by row. A field a column, by sheet and
// heading: the sheet's last row that cannot be used, else the millionth part of the last unusual one, else 0.
Form columnsRead(const std::vector<Sheet>& sheets);

}  // namespace trenchbook::sheets
