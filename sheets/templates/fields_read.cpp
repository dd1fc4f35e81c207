#include "templates/fields_read.h"

#include <string_view>

#include "buying/money.h"
#include "kit/formulas.h"
#include "kit/look.h"
#include "kit/names.h"

namespace trenchbook::sheets {
namespace {

constexpr std::size_t longest =
    longestFormula - std::string_view("COM.MICROSOFT.").size();  // as it is stored

std::string joined(const std::string& texts) { return "TEXTJOIN(\"; \";1" + texts + ")"; }

template <class Input>
bool isNumeric(const Input& field) {
    return field.format.as != Format::As::Text && field.format.as != Format::As::General &&
           field.validity.words.empty() && field.validity.listFormula.empty();
}

std::string quoted(const std::vector<std::string>& words) {
    std::string all;
    for (const std::string& word : words) all += (all.empty() ? "\"" : ";\"") + word + "\"";
    return all;
}

// True for a number outside of what is usual. Where nothing is said of a side: no job has a hundred million of anything.
template <class Input>
std::string unusual(const Input& input, const std::string& cell) {
    // Before any job, after any that is planned.
    std::string least = "DATE(2000;1;1)", greatest = "DATE(2099;12;31)";
    if (input.format.as != Format::As::Date) {
        const auto limit = [&](const std::optional<double>& said, const char* otherwise) {
            return said ? limitFormula(*said, input.measure) : otherwise;
        };
        least = limit(input.validity.least, "-100000000");
        greatest = limit(input.validity.greatest, "100000000");
    }
    return "(" + cell + "<" + least + ")+(" + cell + ">" + greatest + ")";
}

// The field's name where what stands in it cannot be used, as one more text to join. `proposed` is true while the field
// holds the formula that it came with, else empty.
std::string judged(const Field& field, const std::string& cell, const std::string& name,
                   const std::string& proposed) {
    if (isNumeric(field)) {
        std::string wrong = "IF(ISNUMBER(" + cell + ");" + unusual(field, cell) + ";1-ISBLANK(" + cell + "))";
        if (!proposed.empty()) wrong = "IF(" + proposed + ";0;" + wrong + ")";
        return ";IF(" + wrong + ";" + name + "&IF(ISNUMBER(" + cell + ");\"=\"&" + cell + ";\"\");\"\")";
    }
    if (!field.validity.words.empty() && field.validity.strict && !field.validity.several) {
        const std::string allowed = proposed.empty() ? "" : proposed + "+";
        const std::string text = ";IF(" + allowed + "ISBLANK(" + cell + ")+ISNUMBER(MATCH(" + cell + ";{" +
                                 quoted(field.validity.words) + "};0));\"\";" + name + ")";
        if (lengthAtMost(joined(text)) <= longest) return text;
    }
    return ";IF(ISERROR(" + cell + ");" + name + ";\"\")";
}
// A field that comes with a formula is judged where that gives an error, and once something is typed over it.
std::string judged(const Field& field, const std::string& cell, const std::string& name) {
    if (!field.value.starts_with('=')) return judged(field, cell, name, "");
    const std::string formula = "ISFORMULA(" + cell + ")";
    const std::string text = judged(field, cell, name, formula + "*(1-ISERROR(" + cell + "))");
    return lengthAtMost(joined(text)) <= longest ? text : judged(field, cell, name, formula);
}

// The same law for a column of a table: the sheet's last row that cannot be used, else the millionth part of the last that
// is unusual, else 0.
std::string judged(const Table& table, const Column& column) {
    const std::string cells = "[" + table.name + "." + column.heading + "]";
    const auto lastRow = [&](const std::string& wrong) {
        return "SUMPRODUCT(MAX(" + wrong + "*ROW(" + cells + ")))";
    };
    const std::string filled = "(IFERROR(" + cells + ";\"?\")<>\"\")",
                      errors = lastRow("ISERROR(" + cells + ")");
    if (isNumeric(column))
        return lastRow("IF(ISNUMBER(" + cells + ");(" + unusual(column, cells) + ")/1000000;" + filled + ")");
    const Validity& may = column.validity;
    if (may.words.empty() || !may.strict || may.several) return errors;
    const std::string strange =
        lastRow("ISERROR(MATCH(" + cells + ";{" + quoted(may.words) + "};0))*" + filled);
    return lengthAtMost(strange) <= longestFormula ? strange : errors;
}

}  // namespace

Form fieldsRead(const std::vector<Sheet>& sheets) {
    Form form;
    form.name = "Fields read";
    std::string together;
    const auto close = [&] {
        if (!together.empty())
            form.fields.push_back(
                hidden("Fields " + std::to_string(form.fields.size() + 1), "", joined(together)));
        together.clear();
    };
    const auto join = [&](const std::string& text) {
        if (lengthAtMost(joined(together + text)) > longest) close();
        together += text;
    };
    for (const Sheet& sheet : sheets)
        for (const Part& part : sheet.parts) {
            const Form* fields = std::get_if<Form>(&part);
            for (std::size_t n = 0; fields != nullptr && n < fields->fields.size(); ++n) {
                const Field& field = fields->fields[n];
                if (!isInput(field.kind)) continue;
                const auto inForm = [&](int column) {
                    return "INDEX(" + formRangeName(fields->name) + ";" +
                           std::to_string(rowInForm(*fields, n)) + ";" + std::to_string(column) + ")";
                };
                join(judged(field, field.name.empty() ? inForm(2) : field.name,
                            "\"" + sheet.name + "\"&\": \"&" + inForm(1)));
            }
        }
    close();
    return form;
}

Form columnsRead(const std::vector<Sheet>& sheets) {
    Form form;
    form.name = "Columns read";
    for (const Sheet& sheet : sheets)
        for (const Part& part : sheet.parts) {
            const Table* table = sheet.tab == colour::good ? std::get_if<Table>(&part) : nullptr;
            if (table == nullptr) continue;
            for (const Column& column : table->columns)
                if (isInput(column.kind))
                    form.fields.push_back(hidden(sheet.name +
                                                     (table->name == sheet.name ? "" : ", " + table->name) +
                                                     ": " + column.heading,
                                                 "", judged(*table, column)));
        }
    return form;
}

}  // namespace trenchbook::sheets
