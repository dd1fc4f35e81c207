// What commands keep with a workbook for their next time, as properties of the document: File > Properties shows them.
#pragma once

#include <map>

#include "jobbook/parts.h"

namespace trenchbook::sheets {

std::map<std::string, std::string> remembered(const Document& document);
void remember(const Document& document, const std::string& name, const std::string& text);

}  // namespace trenchbook::sheets
