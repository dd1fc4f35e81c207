#include "kit/names.h"

#include <algorithm>
#include <cctype>

#include "trenchbook/core/cell.h"

namespace trenchbook::sheets {
namespace {

std::string joined(std::string words) {
    std::replace_if(
        words.begin(), words.end(), [](char c) { return c == ' ' || c == '-' || c == '.'; }, '_');
    return words;
}

std::string lower(std::string words) {
    std::transform(words.begin(), words.end(), words.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return words;
}

}  // namespace

std::string tableRangeName(const std::string& table) { return joined("table_" + table); }
std::string formRangeName(const std::string& form) { return joined("form_" + form); }
std::string listRangeName(const std::string& block) { return joined("list_" + block); }
std::string partName(const std::string& range, const std::string& prefix, const std::string& sheet) {
    std::string name = range.substr(prefix.size());
    const std::string own = joined(sheet);
    if (name == own) return sheet;
    std::replace(name.begin(), name.end(), '_', ' ');
    return range.starts_with(prefix + own + "_") ? sheet + name.substr(own.size()) : name;
}
std::string rowName(const std::string& table) { return lower(joined(table + "_row")); }
std::string handedName(const std::string& table) { return lower(joined(table + "_in")); }
std::string handedCells(const std::string& range) {
    return "IF(ISERROR(SUM(" + range + "));IFERROR(" + range + ";\"" + std::string(errorMark) + "\");" +
           range + ")";
}
std::string ruleName(const std::string& key) { return joined("rule_" + key); }

}  // namespace trenchbook::sheets
