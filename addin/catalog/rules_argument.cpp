#include "catalog/rules_argument.h"

namespace trenchbook::addin {

Argument rulesArgument(bool optional) {
    return {.name = "rules",
            .measure = Measure::Table,
            .says = {"two columns, key and value, over the defaults",
                     "dos columnas, clave y valor, sobre los valores de fábrica"},
            .optional = optional};
}

Ruleset readRules(const Arguments& arguments, std::size_t index) {
    const UnitSystem units = arguments.units();
    Ruleset rules;
    if (!arguments.given(index)) return rules;
    const Range* cells = arguments.range(index);
    if (cells == nullptr || cells->columns != 2)
        arguments.refuse(index, {"two columns, key and value", "dos columnas, clave y valor"});
    for (std::size_t row = 0; row < cells->rows; ++row) {
        const std::string* key = std::get_if<std::string>(&cells->at(row, 0));
        if (key == nullptr || key->find_first_not_of(" \t") == std::string::npos) continue;
        withValue(cells->at(row, 1), [&](auto value) { rules.set(*key, value, units); });
    }
    return rules;
}

}  // namespace trenchbook::addin
