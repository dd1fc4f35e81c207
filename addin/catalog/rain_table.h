// A pasted rain frequency table as an argument.
#pragma once

#include "catalog/arguments.h"
#include "catalog/families.h"
#include "trenchbook/water/rain.h"

namespace trenchbook::addin {

inline Argument rainTableArgument(const char* name) {
    return {
        .name = name,
        .measure = Measure::Table,
        .says = {
            "rain frequency table: return periods (years) in the first row, durations (5-min, 2-hr, 1-day) "
            "in the first column, depths (in)",
            "tabla de frecuencia de lluvia: períodos de retorno (años) en la primera fila, duraciones "
            "(5-min, 2-hr, 1-day) en la primera columna, alturas (in)"}};
}
inline Argument returnArgument() {
    return {.name = "return",
            .measure = Measure::Years,
            .says = {"return period", "período de retorno"},
            .limits = Limits{
                .above = true,
                .also = {"within the return periods of the table", "dentro de los períodos de la tabla"},
                .toldByFunction = true}};
}

// Whether anything stands there; a lone blank cell arrives as 0.
bool holdsAnything(const Arguments& in, std::size_t index);
// The table that argument `index` holds; its depths are inches, or mm when the call is metric.
RainTable rainTable(const Arguments& in, std::size_t index);

}  // namespace trenchbook::addin
