// Between what Calc hands over and what the catalog works with.
#pragma once

#include "catalog/value.h"
#include "shell/uno.h"

namespace trenchbook::addin {

// An argument as Calc gives it to a parameter of type `any`: nothing when left out, a number, text, or the
// cells of a range or inline array, where an empty cell comes as empty text. Throws IllegalArgumentException
// for anything else.
Value value(const Any& given);

// Numbers have twelve digits, so that they print alike in every office. Rows without a number keep their error code
// inside a NaN, which Calc shows in that cell; blank rows become empty text. An answer without rows is one blank cell,
// because Calc takes an empty array for an error.
NumberCells cells(const Numbers& block);
TextCells cells(const Texts& block);

}  // namespace trenchbook::addin
