#include "jobbook/written.h"

#include <com/sun/star/beans/PropertyAttribute.hpp>
#include <com/sun/star/beans/XPropertyContainer.hpp>
#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/document/XDocumentPropertiesSupplier.hpp>
#include <sstream>

namespace trenchbook::sheets {
namespace {

// A property of the document; a line a cell: part, heading, row, value, with tabs between.
constexpr const char* notesProperty = "Trenchbook notes";

Reference<css::beans::XPropertyContainer> propertiesOf(const Document& document) {
    return Reference<css::document::XDocumentPropertiesSupplier>(document, UNO_QUERY_THROW)
        ->getDocumentProperties()
        ->getUserDefinedProperties();
}

}  // namespace

bool ofTheLot(Kind kind) { return kind == Kind::Measured || kind == Kind::Permit; }

Written::Written(const Document& document) {
    const auto properties = propertiesOf(document);
    const Reference<css::beans::XPropertySet> set(properties, UNO_QUERY_THROW);
    rtl::OUString stored;
    if (!set->getPropertySetInfo()->hasPropertyByName(wide(notesProperty))) return;
    set->getPropertyValue(wide(notesProperty)) >>= stored;
    std::istringstream lines(narrow(stored));
    for (std::string line; std::getline(lines, line);) {
        std::istringstream fields(line);
        std::string part, heading, row, value;
        std::getline(fields, part, '\t');
        std::getline(fields, heading, '\t');
        std::getline(fields, row, '\t');
        std::getline(fields, value);
        if (!row.empty()) cells_[{part, heading, std::stoul(row)}] = value;
    }
}

bool Written::holds(const std::string& part, const std::string& heading, std::size_t row,
                    const Value& now) const {
    const auto found = cells_.find({part, heading, row});
    return found != cells_.end() && found->second == textOf(now);
}

void Written::remember(const SiteNotes& notes, const Document& document) {
    const auto add = [&](const std::string& part, const std::string& heading, std::size_t row,
                         const Value& value) {
        const std::string text = textOf(value);
        if (text.find_first_of("\t\n") == std::string::npos && !isBlank(value))
            cells_[{part, heading, row}] = text;
    };
    for (const TableNotes& table : notes.tables) {
        const std::string& part = table.table->name;
        std::erase_if(cells_, [&](const auto& cell) { return std::get<0>(cell.first) == part; });
        for (std::size_t c = 0; c < table.columns.size(); ++c) {
            if (!ofTheLot(table.table->columns[table.columns[c]].kind)) continue;
            for (std::size_t r = 0; r < table.rows.size(); ++r)
                add(part, table.table->columns[table.columns[c]].heading,
                    table.places.empty() ? r : table.places[r], table.rows[r][c]);
        }
    }
    for (const FormNotes& form : notes.forms)
        for (const auto& [place, value] : form.fields)
            if (ofTheLot(form.form->fields[place].kind))
                add(form.form->name, form.form->fields[place].label, 0, value);
    std::string stored;
    for (const auto& [cell, value] : cells_)
        stored += std::get<0>(cell) + "\t" + std::get<1>(cell) + "\t" + std::to_string(std::get<2>(cell)) +
                  "\t" + value + "\n";
    const auto properties = propertiesOf(document);
    const Reference<css::beans::XPropertySet> set(properties, UNO_QUERY_THROW);
    if (set->getPropertySetInfo()->hasPropertyByName(wide(notesProperty)))
        properties->removeProperty(wide(notesProperty));
    properties->addProperty(wide(notesProperty), css::beans::PropertyAttribute::REMOVABLE,
                            css::uno::Any(wide(stored)));
}

}  // namespace trenchbook::sheets
