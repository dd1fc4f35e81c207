#include "commands/close_out.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "buying/money.h"
#include "jobbook/refused.h"
#include "jobbook/value_text.h"

namespace trenchbook::sheets {
namespace {

double cents(double dollars) { return std::round(dollars * 100) / 100; }

std::optional<double> numberOf(const Value& value) {
    const double* number = std::get_if<double>(&value);
    return number == nullptr ? std::nullopt : std::optional(*number);
}
double orNothing(const Value& value) { return numberOf(value).value_or(0); }

struct Line {
    std::string what, group, code;
    std::optional<double> quantity;
    double amount = 0;
    bool taxedHire = false;  // taxed, and on no order: its tax stands on no bill here
};

// The one row of tax that bills fill.
constexpr const char* billedTax = "Sales tax on goods";

// The word of Close-out for a group of prices.
std::string groupOf(const std::string& priced) {
    if (priced == "permit") return "permits";
    const bool apart =
        priced == "delivery" || std::find(notOrdered.begin(), notOrdered.end(), priced) != notOrdered.end();
    return apart ? priced : "materials";
}

// Takeoff and Additions, one line a code.
std::vector<Line> goodsOf(const Book& job) {
    std::vector<Line> lines;
    for (const char* table : {"Takeoff", "Additions"}) {
        for (const Row& row : job.rows(job.tableFor(table))) {
            const std::string code = row.text("Code");
            const std::optional<double> amount = row.number("Amount");
            if (code.empty() || !amount) continue;
            const auto same =
                std::find_if(lines.begin(), lines.end(), [&](const Line& line) { return line.code == code; });
            if (same == lines.end()) {
                const bool hired =
                    std::find(notOrdered.begin(), notOrdered.end(), row.text("Group")) != notOrdered.end();
                lines.push_back({row.text("Item"), groupOf(row.text("Group")), code, row.number("Order"),
                                 *amount, hired && row.text("Taxable") == "yes"});
                continue;
            }
            same->amount = cents(same->amount + *amount);
            if (same->quantity) *same->quantity += row.number("Order").value_or(0);
        }
    }
    return lines;
}

// Works with hours; the cents that rounding of each leaves stand with the largest.
std::vector<Line> laborOf(const Book& job) {
    const double rate = orNothing(job.value("labor_rate")), all = orNothing(job.value("labor_line"));
    std::vector<Line> lines;
    double sum = 0;
    for (const Row& row : job.rows(job.tableFor("Labor"))) {
        const double hours = row.number("Hours").value_or(0);
        if (hours <= 0) continue;
        lines.push_back({row.text("Work"), "labor", "", hours, cents(hours * rate)});
        sum += lines.back().amount;
    }
    const auto largest = std::max_element(lines.begin(), lines.end(), [](const Line& one, const Line& other) {
        return one.amount < other.amount;
    });
    if (largest != lines.end()) largest->amount = cents(largest->amount + all - sum);
    return lines;
}

std::vector<Line> estimateOf(const Book& job) {
    std::vector<Line> lines = goodsOf(job);
    double hire = 0;
    for (const Line& line : lines) hire += line.taxedHire ? line.amount : 0;
    hire = cents(hire * orNothing(job.value("tax_material_read")));
    if (const double tax = cents(orNothing(job.value("materials_tax")) - hire); tax != 0)
        lines.push_back({billedTax, "tax", "", std::nullopt, tax});
    if (hire != 0) lines.push_back({"Sales tax on hire", "tax", "", std::nullopt, hire});
    for (const Line& line : laborOf(job)) lines.push_back(line);
    const std::tuple<const char*, const char*, const char*> lumps[] = {
        {"Delivery, lump sum", "delivery", "delivery_typed"},
        {"Equipment, lump sum", "equipment", "equipment_typed"},
        {"Disposal, lump sum", "disposal", "disposal_typed"},
        {"Permits, lump sum", "permits", "permits_typed"},
        {"Subcontract, lump sum", "subcontract", "subcontract_typed"},
    };
    for (const auto& [what, group, name] : lumps)
        if (const double amount = cents(orNothing(job.value(name))); amount != 0)
            lines.push_back({what, group, "", std::nullopt, amount});
    return lines;
}

const BookPart& closeOut(const Book& job) {
    const BookPart* table = job.table("Close-out");
    if (table == nullptr)
        throw Refused(said(job, {"This is no job workbook: it has no table Close-out",
                                 "Este no es un libro de obra: no tiene la tabla Close-out"}));
    return *table;
}

int readyRows(const BookPart& table) { return table.lastReady() - table.firstReady() + 1; }

void makeRows(Steps& steps, const BookPart& table, int needed) {
    // Before the last ready row, so that every range over the table takes the new ones in.
    if (const int more = needed - readyRows(table); more > 0)
        steps.list.emplace_back(AddRows{table.at, table.lastReady(), more});
}

// What a bill's line is matched to.
std::string orderCode(const Row& bill) {
    const std::string standsFor = bill.text("Stands for");
    return standsFor.empty() ? bill.text("Code") : standsFor;
}

struct Paid {
    double kept = 0, amount = 0;
    int lines = 0;
};

// What is paid for each code of the order: billed less what is held. Hidden columns of the sheets have both.
std::map<std::string, Paid> paidByCode(const Book& job) {
    std::map<std::string, Paid> paid;
    const BookPart &order = job.tableFor("Order"), &bills = job.tableFor("Bills");
    const auto hiddenNumber = [&](const BookPart& table, const char* heading, const Row& row) {
        return orNothing(
            job.cell({table.at.sheet, job.column(table, heading), table.firstReady() + row.ready}));
    };
    for (const Row& row : job.rows(order))
        if (const std::string code = row.text("Code"); !code.empty())
            paid[code].kept = hiddenNumber(order, "Kept", row);
    for (const Row& row : job.rows(bills)) {
        const auto found = paid.find(orderCode(row));
        if (found == paid.end()) continue;
        found->second.amount += hiddenNumber(bills, "Amount read", row) - hiddenNumber(bills, "Held", row);
        ++found->second.lines;
    }
    return paid;
}

// Of all invoices, without what is kept back.
double taxPaid(const Book& job) {
    const BookPart& invoices = job.tableFor("Invoices");
    double tax = -orNothing(job.value("bill_tax_held"));
    for (const Row& row : job.rows(invoices))
        tax += row.number("Tax").value_or(0) -
               orNothing(job.cell({invoices.at.sheet, job.column(invoices, "Tax kept back"),
                                   invoices.firstReady() + row.ready}));
    return cents(tax);
}

Text rowsSaid(std::size_t rows) { return counted(rows, {"row", "fila"}, {"rows", "filas"}); }

}  // namespace

bool closeOutStands(const Book& job) { return !job.rows(closeOut(job)).empty(); }

Steps takeEstimate(const Book& job, bool replace, const char* replaceWord) {
    const BookPart& table = closeOut(job);
    const std::vector<Row> standing = job.rows(table);
    if (!replace && !standing.empty())
        throw Refused(said(job, Text("Close-out has ", "Close-out ya tiene ") + rowsSaid(standing.size()) +
                                    Text(" already; ", "; ") + Text::same(replaceWord) +
                                    Text(" takes the estimate anew, and what is typed there goes",
                                         " toma lo estimado de nuevo, y lo escrito allí se borra")));
    if (!numberOf(job.value("agreed_price")))
        throw Refused(said(job, {"The job is not sold: the agreed price on Account is missing",
                                 "La obra no está vendida: falta el precio acordado en Account"}));
    const std::string check = job.text("quote_check");
    const std::optional<double> direct = numberOf(job.value("direct_cost"));
    if (!direct || check.rfind("NO", 0) == 0)
        throw Refused(said(job, {"Quote has no price to be held against: ",
                                 "Quote no tiene precio con que comparar: "}) +
                      (check.empty() ? said(job, {"no direct cost", "sin costo directo"}) : check));
    const std::vector<Line> lines = estimateOf(job);
    double sum = 0;
    for (const Line& line : lines) sum += line.amount;
    if (std::abs(sum - *direct) > 0.004)
        throw Refused(said(job, Text("The lines of Takeoff, Labor and Quote come to ",
                                     "Los renglones de Takeoff, Labor y Quote suman ") +
                                    Text::same(moneyText(sum)) +
                                    Text(", the direct cost on Quote to ", ", el costo directo en Quote ") +
                                    Text::same(moneyText(*direct))));

    Steps steps;
    constexpr std::size_t spare = 6;  // for what nobody estimated: call-backs, hire forgotten
    const std::size_t rows = std::max(static_cast<std::size_t>(readyRows(table)), lines.size() + spare);
    makeRows(steps, table, static_cast<int>(rows));
    const auto fill = [&](const char* heading, const auto& valueOf) {
        std::vector<Value> values;
        for (const Line& line : lines) values.push_back(valueOf(line));
        values.resize(rows);  // what stood below goes
        steps.putColumn({table.at.sheet, job.column(table, heading), table.firstReady()}, values);
    };
    fill("What", [](const Line& line) { return Value(line.what); });
    fill("Group", [](const Line& line) { return Value(line.group); });
    fill("Estimated quantity",
         [](const Line& line) { return line.quantity ? Value(*line.quantity) : Value(); });
    fill("Estimated amount", [](const Line& line) { return Value(line.amount); });
    fill("Code", [](const Line& line) { return line.code.empty() ? Value() : Value(line.code); });
    for (const char* heading : {"Actual quantity", "Actual amount", "Cause"})
        fill(heading, [](const Line&) { return Value(); });
    return steps;
}

std::string estimateTaken(const Book& job) {
    return said(job, Text("Close-out has the estimate: ", "Close-out tiene lo estimado: ") +
                         rowsSaid(job.rows(closeOut(job)).size()) +
                         Text::same(", $" + moneyText(orNothing(job.value("close_estimate"))) + "\n"));
}

Actual takeActual(const Book& job) {
    const BookPart& table = closeOut(job);
    const std::vector<Row> rows = job.rows(table);
    if (rows.empty())
        throw Refused(said(job, {"Close-out is empty: take the estimate first",
                                 "Close-out está vacío: tome antes lo estimado"}));
    const bool billed = !job.rows(job.tableFor("Bills")).empty();
    if (billed && orNothing(job.value("bill_unread")) + orNothing(job.value("bill_bare")) > 0)
        throw Refused(said(job, {"Bills cannot be read: ", "Bills no se puede leer: "}) +
                      job.text("bill_check"));
    std::map<std::string, Paid> paid = paidByCode(job);
    const bool allBilled = billed && std::all_of(paid.begin(), paid.end(), [](const auto& code) {
                               return code.second.lines > 0 || code.second.kept == 0;
                           });
    const double rate = orNothing(job.value("labor_rate"));

    Actual actual;
    const auto put = [&](const char* heading, int ready, const Value& value) {
        actual.steps.put({table.at.sheet, job.column(table, heading), table.firstReady() + ready}, value);
    };
    std::vector<std::string> open;
    for (const Row& row : rows) {
        const std::string code = row.text("Code"), group = row.text("Group");
        const auto found = paid.find(code);
        const bool known = !isBlank(row.value("Actual amount"));
        if (!known && found != paid.end() && found->second.lines > 0) {
            if (isBlank(row.value("Actual quantity"))) put("Actual quantity", row.ready, found->second.kept);
            put("Actual amount", row.ready, cents(found->second.amount));
            ++actual.rows;
        } else if (!known && row.text("What") == billedTax && allBilled) {
            put("Actual amount", row.ready, taxPaid(job));
            ++actual.rows;
        } else if (const auto hours = row.number("Actual quantity");
                   !known && group == "labor" && hours && rate > 0) {
            put("Actual amount", row.ready, cents(*hours * rate));
            ++actual.rows;
        } else if (!known) {
            open.push_back(row.text("What"));
        }
        if (found != paid.end()) paid.erase(found);
    }
    // Ordered beyond the estimate.
    const auto isLeft = [](const Paid& code) { return code.lines > 0 && code.amount != 0; };
    int next = rows.back().ready + 1;
    const auto left =
        std::count_if(paid.begin(), paid.end(), [&](const auto& code) { return isLeft(code.second); });
    makeRows(actual.steps, table, next + static_cast<int>(left));
    for (const auto& [code, bought] : paid) {
        if (!isLeft(bought)) continue;
        put("What", next, code + said(job, {", not in the estimate", ", no estimado"}));
        put("Group", next, std::string("materials"));
        put("Estimated amount", next, 0.0);
        put("Actual quantity", next, bought.kept);
        put("Actual amount", next, cents(bought.amount));
        put("Code", next++, code);
        actual.list += said(job, {"  not in the estimate: ", "  no estimado: "}) + code + "\n";
        ++actual.rows;
    }
    for (const std::string& what : open)
        actual.list += said(job, {"  still open: ", "  aún falta: "}) + what + "\n";
    return actual;
}

std::string actualTaken(const Book& job, const Actual& taken) {
    const std::optional<double> left = numberOf(job.value("close_left"));
    return said(job, Text("Cost known now in ", "Costo conocido ahora en ") + rowsSaid(taken.rows) +
                         Text(" more, $", " más, $") +
                         Text::same(moneyText(orNothing(job.value("close_cost")))) +
                         Text(" in all\n", " en total\n")) +
           taken.list +
           (left ? said(job, {"  left for overhead and profit: $", "  queda para gastos y utilidad: $"}) +
                       moneyText(*left) + "\n"
                 : "");
}

}  // namespace trenchbook::sheets
