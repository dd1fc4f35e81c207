#include "commands/change.h"

#include <cmath>

#include "jobbook/refused.h"
#include "jobbook/value_text.h"

namespace trenchbook::sheets {
namespace {

double numberOf(const Book& book, const char* name) {
    const double* number = std::get_if<double>(&book.value(name));
    return number == nullptr ? 0 : *number;
}

// To the last digit that a sheet shows: what is left of subtracting binary numbers is no change.
double rounded(double number, double unit) { return std::round(number / unit) * unit + 0.0; }

void requirePrice(const Book& job, const Book& book, const std::string& whose) {
    const std::string check = book.text("quote_check");
    if (book.names.count("direct_cost") == 0 || book.names.count("due_contract") == 0)
        throw Refused(whose + said(job, {" is not a job workbook: it has no Quote and Account",
                                         " no es un libro de obra: no tiene Quote y Account"}));
    if (!std::holds_alternative<double>(book.value("price_total")) || check.rfind("NO", 0) == 0)
        throw Refused(whose +
                      said(job, {" has no price to compare with: ", " no tiene precio con que comparar: "}) +
                      check);
}

struct CostKind {
    const char* heading;
    std::vector<const char*> lines;  // of the direct cost
};
const CostKind kinds[] = {{"Labor", {"labor_line"}},
                          {"Equipment", {"equipment_cost", "disposal_cost"}},
                          {"Materials", {"materials_cost", "materials_tax", "delivery_cost"}},
                          {"Subcontract", {"permits_cost", "subcontract_cost"}}};

}  // namespace

Steps noteChange(const Book& job, const Book& changed, const std::string& file, const std::string& what,
                 double day) {
    requirePrice(job, job, said(job, {"This job", "Esta obra"}));
    requirePrice(job, changed, file);
    if (changed.text("units") != job.text("units"))
        throw Refused(
            file + said(job, {" is in other units than this job", " está en otras unidades que esta obra"}));
    const BookPart& changes = job.tableFor("Changes");
    int place = 0;
    for (const Row& row : job.rows(changes)) {
        place = row.ready;
        if (row.text("What") == what) {
            if (row.text("Signed") == "yes")
                throw Refused(said(job, {"The change is signed already: ", "El cambio ya está firmado: "}) +
                              what +
                              said(job, {"; give the new one another name", "; dé otro nombre al nuevo"}));
            break;
        }
        ++place;
    }
    const int row = changes.firstReady() + place;
    if (row > changes.lastReady())
        throw Refused(
            said(job, {"Changes on Account has no row left", "Changes en Account ya no tiene filas libres"}));
    Steps steps;
    const auto put = [&](const char* heading, const Value& value) {
        steps.put({changes.at.sheet, job.column(changes, heading), row}, value);
    };
    const double pipe = rounded(numberOf(changed, "qty_pipe_length") - numberOf(job, "qty_pipe_length"), 0.1);
    bool differs = pipe != 0;
    for (const CostKind& kind : kinds) {
        double more = 0;
        for (const char* line : kind.lines) more += numberOf(changed, line) - numberOf(job, line);
        more = rounded(more, 0.01);
        differs = differs || more != 0;
        put(kind.heading, more);
    }
    if (!differs)
        throw Refused(file + said(job, {" costs and has what this job does: nothing is changed",
                                        " cuesta y tiene lo mismo que esta obra: no hay cambio"}));
    put("What", what);
    put("Date", day);
    put("Signed", std::string("no"));
    put("Pipe", pipe);
    put("Deepest cut", rounded(numberOf(changed, "deepest_cut"), 0.01));
    return steps;
}

std::string changeNoted(const Book& job, const std::string& what) {
    const bool metric = job.text("units") == "metric";
    for (const Row& row : job.rows(job.tableFor("Changes"))) {
        if (row.text("What") != what) continue;
        double cost = 0;
        for (const CostKind& kind : kinds) cost += row.number(kind.heading).value_or(0);
        const std::string unit = metric ? " m" : " ft";
        const auto signedText = [](double number, int digits) {
            char text[48];
            std::snprintf(text, sizeof text, "%+.*f", digits, number);
            return std::string(text);
        };
        return what + said(job, {": pipe ", ": tubo "}) + signedText(row.number("Pipe").value_or(0), 1) +
               unit + said(job, {", deepest cut ", ", corte más hondo "}) +
               plain(row.number("Deepest cut").value_or(0), 2) + unit + said(job, {", cost ", ", costo "}) +
               (cost < 0 ? "-$" : "$") + moneyText(std::abs(cost)) +
               said(job, {"; with the markups of Account $", "; con los recargos de Account $"}) +
               moneyText(row.number("Amount").value_or(0)) +
               said(job, {", to be signed\n", ", por firmar\n"});
    }
    return "";
}

}  // namespace trenchbook::sheets
