// Buying from several suppliers.
#include <cmath>

#include "catalog/arguments.h"
#include "catalog/families.h"
#include "trenchbook/money/purchase.h"

namespace trenchbook::addin {
namespace {

// Cells of a table of prices: a blank is not sold.
std::optional<double> priceIn(const Arguments& in, const Cell& cell) {
    if (const double* price = std::get_if<double>(&cell)) return *price;
    const std::string* text = std::get_if<std::string>(&cell);
    if (text != nullptr && !trimmed(*text).empty())
        in.refuse(1, {"prices above 0 and blank cells, a column for each supplier",
                      "precios mayores que 0 y celdas en blanco, una columna por proveedor"});
    return std::nullopt;
}

Split splitOf(const Arguments& in) {
    const std::size_t lines = in.rows(0);
    const std::vector<double> deliveries = in.numbers(2);
    const Range* prices = in.range(1);
    if (prices == nullptr || prices->rows != lines || prices->columns != deliveries.size())
        in.refuse(1, {"a row for each quantity and a column for each delivery",
                      "una fila por cantidad y una columna por entrega"});
    const auto quantities = in.entries(0, lines);
    std::vector<Purchase> list;
    for (std::size_t line = 0; line < lines; ++line) {
        Purchase purchase{.quantity = in.required(0, line, quantities[line]), .prices = {}};
        for (std::size_t s = 0; s < deliveries.size(); ++s)
            purchase.prices.push_back(priceIn(in, prices->at(line, s)));
        list.push_back(std::move(purchase));
    }
    std::vector<std::optional<double>> freeFrom;
    const auto amounts = in.entries(4, deliveries.size());
    for (std::size_t s = 0; s < deliveries.size(); ++s)
        freeFrom.push_back(amounts[s].state == Arguments::Entry::State::Empty
                               ? std::nullopt
                               : std::optional(in.required(4, s, amounts[s])));
    return cheapestSplit(list, deliveries, static_cast<std::size_t>(in.number(3, mostSuppliersTried)),
                         freeFrom);
}

std::vector<Argument> buyArguments() {
    return {
        {.name = "quantities",
         .says = {"how many of each line", "cuánto de cada línea"},
         .column = true,
         .limits = zeroOrMore},
        {.name = "prices",
         .measure = Measure::Table,
         .says = {"price of one of each line, a column for each supplier; blank: he does not sell it",
                  "precio de uno de cada línea, una columna por proveedor; en blanco: no lo vende"}},
        {.name = "deliveries",
         .measure = Measure::Dollars,
         .says = {"what a delivery of each supplier costs", "lo que cuesta una entrega de cada proveedor"},
         .column = true,
         .limits = zeroOrMore},
        {.name = "most suppliers",
         .says = {"buy from so many at most", "comprar de tantos como máximo"},
         .fallback = "12",
         .optional = true,
         .limits = Limits{.least = 1, .greatest = 12, .whole = true}},
        {.name = "free from",
         .measure = Measure::Dollars,
         .says = {"from so much of his goods on each supplier delivers free; blank: never",
                  "desde tanto de su mercancía cada proveedor entrega gratis; en blanco: nunca"},
         .fallback = "never",
         .optional = true,
         .column = true,
         .limits = zeroOrMore}};
}

constexpr const char* source =
    "Uncapacitated facility location, every set of suppliers tried; lines rounded to the cent, a delivery once for each supplier; "
    "amounts of free delivery by dynamic programming with Lagrangian bounds";

}  // namespace

std::vector<Function> purchaseFunctions() {
    return {
        {.name = "BUY.COST",
         .says = {"Least that a list costs from several suppliers, deliveries counted",
                  "Lo menos que cuesta una lista con varios proveedores, entregas incluidas"},
         .arguments = buyArguments(),
         .measure = Measure::Dollars,
         .source = source,
         .example = "BUY.COST({12|7}; {46.2;44.9|43;41}; {95|120})",
         .call = [](const Arguments& in) -> Result { return splitOf(in).cost; }},
        {.name = "BUY.FROM",
         .says = {"From which supplier each line is bought then: his place from 1",
                  "De qué proveedor se compra entonces cada línea: su lugar desde 1"},
         .arguments = buyArguments(),
         .returns = Returns::NumberBlock,
         .columns = "Supplier",
         .source = source,
         .example = "BUY.FROM({12|7}; {46.2;44.9|43;41}; {95|120})",
         .call = [](const Arguments& in) -> Result {
             Numbers from;
             for (const std::size_t supplier : splitOf(in).supplier)
                 from.items.push_back(static_cast<double>(supplier) + 1);
             return from;
         }},
    };
}

}  // namespace trenchbook::addin
