#include "templates/steps_aside.h"

#include <algorithm>
#include <map>

#include "buying/money.h"
#include "commands/sheets_shown.h"
#include "kit/names.h"

namespace trenchbook::sheets {
namespace {

std::string noNodeOf(const char* kind) {
    return "SUMPRODUCT(1*ISNUMBER(SEARCH(\"" + std::string(kind) + "\";[Nodes.Kind])))=0";
}

struct Aside {
    std::string when, why;
};
const std::map<std::string, Aside>& asides() {
    static const std::map<std::string, Aside> all = {
        {"Pit", {"pit_node=\"\";" + noNodeOf("tee"), "not needed: no pit"}},
        {"Pit drawing", {"pit_node=\"\"", "not needed: no pit"}},
        {"Pump", {noNodeOf("pump"), "not needed: no pump basin"}},
        {"Rain", {"N(rain_typed)>0", "not needed: the rain is typed on Job"}},
        {"Storms", {"COUNTA([Rain.*])=0", "not needed: no table on Rain"}},
        {"Peak", {"peak_used<>\"yes\"", "not needed: travel time is not counted"}},
        {"Layout", {"NOT(lot_there)", "not needed: no drawing is wanted"}},
        {"Tapes", {"NOT(lot_there)", "not needed: no drawing is wanted"}},
        {"Drawing", {"NOT(lot_there)", "not needed: no drawing is wanted"}},
        {"Ground", {"COUNTA([Ground.From])=0", "not needed: no shot between the nodes"}},
    };
    return all;
}

std::string needName(std::string sheet) {
    std::replace(sheet.begin(), sheet.end(), ' ', '_');
    return "need_" + sheet;
}

// Cells that come blank, for this lot to fill; what is kept from job to job does not make a sheet needed.
std::vector<std::string> toFill(const Sheet& sheet) {
    std::vector<std::string> cells;
    for (const Part& part : sheet.parts) {
        if (const Form* form = std::get_if<Form>(&part))
            for (std::size_t f = 0; f < form->fields.size(); ++f) {
                const Field& field = form->fields[f];
                if (!isInput(field.kind) || field.kind == Kind::Kept || !field.value.empty()) continue;
                cells.push_back(field.name.empty() ? "INDEX(" + formRangeName(form->name) + ";" +
                                                         std::to_string(rowInForm(*form, f)) + ";2)"
                                                   : field.name);
            }
        const Table* table = std::get_if<Table>(&part);
        if (table == nullptr || !table->content.empty()) continue;
        for (const Column& column : table->columns)
            if (isInput(column.kind) && column.formula.empty())
                cells.push_back("[" + table->name + "." + column.heading + "]");
    }
    return cells;
}

// Counts of filled cells, as many to a field as a formula holds.
std::vector<Field> filled(const Sheet& sheet) {
    constexpr std::size_t most = 7;
    const std::vector<std::string> cells = toFill(sheet);
    std::vector<Field> fields;
    for (std::size_t first = 0; first < cells.size(); first += most) {
        std::string list;
        for (std::size_t c = first; c < std::min(first + most, cells.size()); ++c)
            list += (list.empty() ? "" : ";") + cells[c];
        const std::string number = std::to_string(fields.size() + 1);
        fields.push_back(hidden("Filled on " + sheet.name + " " + number,
                                "filled_" + sheet.name + "_" + number, "COUNTA(" + list + ")"));
    }
    return fields;
}

}  // namespace

Form sheetsNeeded(const std::vector<Sheet>& sheets) {
    Form form;
    form.name = sheetsForm;
    form.fields = {{.label = asideLabel,
                    .name = "sheets_aside",
                    .kind = Kind::Computed,
                    .value = "|",
                    .helper = true,
                    .foundByLabel = true}};
    form.fields.push_back(hidden("Hidden says", "aside_says", "\"; hidden\""));
    form.fields.push_back(
        hidden("Lost says", "lost_says",
               "\"NO: needed, and hidden; it comes back by Sheets needed in the menu Trenchbook\""));
    for (const Sheet& sheet : sheets) {
        const auto found = asides().find(sheet.name);
        if (found == asides().end()) continue;
        std::string nothing;
        for (const Field& count : filled(sheet)) {
            form.fields.push_back(count);
            nothing += ";" + count.name + "=0";
        }
        form.fields.push_back(hidden(sheet.name, needName(sheet.name),
                                     "IF(AND(COUNTA([Nodes.Node])>0;" + found->second.when + nothing +
                                         ");\"" + found->second.why + "\";\"\")"));
        form.fields.back().foundByLabel = true;
    }
    return form;
}

std::string neededWords(const Sheet& sheet) {
    if (asides().count(sheet.name) == 0) return "";
    const std::string need = needName(sheet.name);
    const std::string aside = "COUNT(FIND(\"|\"&\"" + sheet.name + "\"&\"|\";sheets_aside)))";
    return "IF(" + need + "<>\"\";UPPER(\"(\"&" + need + "&REPT(aside_says;" + aside +
           "&\")\");REPT(lost_says;" + aside + ")";
}

}  // namespace trenchbook::sheets
