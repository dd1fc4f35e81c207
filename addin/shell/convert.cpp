#include "shell/convert.h"

#include <com/sun/star/lang/IllegalArgumentException.hpp>

#include "catalog/tidied.h"

namespace trenchbook::addin {
namespace {

const rtl::OUString& textOf(const Any& given) { return *static_cast<const rtl::OUString*>(given.getValue()); }

[[noreturn]] void refuse(const Any& given) {
    throw css::lang::IllegalArgumentException("cannot take a " + given.getValueTypeName(), nullptr, 0);
}

// Calc itself only sends doubles; programs that call through the API also send whole numbers and booleans.
double numberOf(const Any& given) {
    double number = 0;
    bool truth = false;
    sal_Int64 whole = 0;
    if (given >>= number) return number;
    if (given >>= truth) return truth ? 1 : 0;
    if (given >>= whole) return static_cast<double>(whole);
    refuse(given);
}

Cell cell(const Any& given) {
    switch (given.getValueTypeClass()) {
        case css::uno::TypeClass_VOID:
            return Nothing{};
        case css::uno::TypeClass_DOUBLE:
            return *static_cast<const double*>(given.getValue());
        case css::uno::TypeClass_STRING:
            if (textOf(given).isEmpty()) return Nothing{};
            return narrow(textOf(given));
        default:
            return numberOf(given);
    }
}

Range range(const Any& given) {
    NumberCells rows;
    if (!(given >>= rows)) refuse(given);
    Range made;
    made.rows = static_cast<std::size_t>(rows.getLength());
    const Sequence<Any>* row = rows.getConstArray();
    made.columns = made.rows == 0 ? 0 : static_cast<std::size_t>(row->getLength());
    made.cells.reserve(made.rows * made.columns);
    for (std::size_t i = 0; i < made.rows; ++i, ++row) {
        if (static_cast<std::size_t>(row->getLength()) != made.columns) refuse(given);
        for (const Any& item : *row) made.cells.push_back(cell(item));
    }
    return made;
}

Any shown(double number) { return isBlankCell(number) ? Any(rtl::OUString()) : Any(tidied(number)); }
rtl::OUString shown(const std::string& text) { return wide(text); }

template <class Place, class Item>
Sequence<Sequence<Place>> filled(const Block<Item>& block, const Item& blank) {
    const bool empty = block.items.empty();
    const Item* item = empty ? &blank : block.items.data();
    Sequence<Sequence<Place>> rows(empty ? 1 : static_cast<sal_Int32>(block.rows()));
    for (Sequence<Place>& row : rows) {
        row.realloc(empty ? 1 : static_cast<sal_Int32>(block.columns));
        for (Place& place : row) place = shown(*item++);
    }
    return rows;
}

}  // namespace

Value value(const Any& given) {
    switch (given.getValueTypeClass()) {
        case css::uno::TypeClass_VOID:
            return Nothing{};
        case css::uno::TypeClass_DOUBLE:
            return *static_cast<const double*>(given.getValue());
        case css::uno::TypeClass_STRING:
            return narrow(textOf(given));
        case css::uno::TypeClass_SEQUENCE:
            return range(given);
        default:
            return numberOf(given);
    }
}

NumberCells cells(const Numbers& block) { return filled<Any>(block, blankCell()); }
TextCells cells(const Texts& block) { return filled<rtl::OUString>(block, std::string()); }

}  // namespace trenchbook::addin
