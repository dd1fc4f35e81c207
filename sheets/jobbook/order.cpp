#include "jobbook/order.h"

#include <algorithm>

#include "buying/money.h"
#include "jobbook/fill.h"
#include "jobbook/refused.h"
#include "jobbook/rows.h"
#include "jobbook/value_text.h"
#include "trenchbook/core/error.h"

namespace trenchbook::sheets {
namespace {

struct Line {
    std::string code, item, unit, taxable, sort;
    double packs = 0, price = 0;
};

// "14 ft stick", "625 sq ft", "piece": what one pack is.
std::string packName(double pack, const std::string& unit, const std::string& group) {
    if (pack == 1) return unit;
    return plain(pack, 6) + " " + unit + (group == "pipe" ? " stick" : "");
}

class Collector {
  public:
    explicit Collector(const std::vector<FoundPart>& parts) {
        for (const char* table : {"Takeoff", "Additions"})
            for (const Row& row : rowsOf(partFor(parts, table, false))) take(table, row);
    }

    std::vector<Line> lines;  // one a code
    std::vector<std::string> faults;

  private:
    void take(const std::string& table, const Row& row) {
        const std::string code = row.text("Code"), group = row.text("Group"), check = row.text("Check");
        if (std::find(notOrdered.begin(), notOrdered.end(), group) != notOrdered.end()) return;
        const auto packs = row.number("Order"), price = row.number("Price"), pack = row.number("Pack");
        if (check.rfind("NO", 0) == 0 || !packs || !price || !pack) {
            if (!code.empty() || !check.empty()) faults.push_back(table + " " + code + ": " + check);
            return;
        }
        const auto same =
            std::find_if(lines.begin(), lines.end(), [&](const Line& line) { return line.code == code; });
        if (same != lines.end()) {
            same->packs += *packs;
            return;
        }
        lines.push_back({code, row.text("Item"), packName(*pack, row.text("Unit"), group),
                         row.text("Taxable"), group == "delivery" ? "charge" : "goods", *packs, *price});
    }
};

// Who sells the lines, each once.
std::string suppliersOf(const std::vector<Line>& lines, const std::vector<FoundPart>& parts) {
    std::vector<std::string> names;
    for (const Row& row : rowsOf(partFor(parts, "Prices", false))) {
        const std::string name = row.text("Supplier");
        const bool buys = std::any_of(lines.begin(), lines.end(),
                                      [&](const Line& line) { return line.code == row.text("Code"); });
        if (buys && !name.empty() && std::find(names.begin(), names.end(), name) == names.end())
            names.push_back(name);
    }
    std::string all;
    for (const std::string& name : names) all += (all.empty() ? "" : "; ") + name;
    return all;
}

void refuseIssued(const Document& document, const FoundPart& order) {
    const std::vector<Row> rows = rowsOf(order);
    const auto lines = std::count_if(rows.begin(), rows.end(), [](const Row& row) {
        return !row.text("Code").empty() || row.number("Quantity");
    });
    if (lines == 0) return;
    const std::string number = namedText(document, "order_number");
    throw Refused((number.empty() ? std::string("An order") : "Order " + number) +
                  " stands on Order already, with " + std::to_string(lines) +
                  (lines == 1 ? " line" : " lines") + "; --replace issues it anew");
}

template <class Member>
std::vector<Value> column(const std::vector<Line>& lines, Member Line::*member, std::size_t rows) {
    std::vector<Value> values;
    for (const Line& line : lines) values.emplace_back(line.*member);
    values.resize(rows);  // what stood below goes
    return values;
}

}  // namespace

std::string issueOrder(const Document& document, const OrderHead& head) {
    std::vector<FoundPart> parts = partsOf(document);
    if (!head.replace) refuseIssued(document, partFor(parts, "Order", false));

    Collector collected(parts);
    if (const std::string check = namedText(document, "takeoff_check"); check.rfind("NO", 0) == 0)
        collected.faults.insert(collected.faults.begin(), "Takeoff is not complete: " + check);
    const std::string number = head.number.value_or(namedText(document, "order_number"));
    if (number.empty())
        collected.faults.push_back(
            "The order has no number that tickets and invoices can refer to; give --number");
    std::string faults;
    for (const std::string& fault : collected.faults) faults += (faults.empty() ? "" : "\n") + fault;
    if (!faults.empty()) throw Refused(faults);
    const std::vector<Line>& lines = collected.lines;
    if (lines.empty()) throw Refused("There is nothing to order: Takeoff and Additions are empty");

    makeRoom(document, "Order", static_cast<int>(lines.size()));
    parts = partsOf(document);
    const FoundPart& order = partFor(parts, "Order", false);
    const FoundPart& form = partFor(parts, "Order head", true);
    const auto rows = static_cast<std::size_t>(order.lastReady() - order.firstReady() + 1);
    put(order, "Code", 0, column(lines, &Line::code, rows));
    put(order, "Item", 0, column(lines, &Line::item, rows));
    put(order, "Quantity", 0, column(lines, &Line::packs, rows));
    put(order, "Unit", 0, column(lines, &Line::unit, rows));
    put(order, "Price", 0, column(lines, &Line::price, rows));
    put(order, "Taxable", 0, column(lines, &Line::taxable, rows));
    put(order, "Sort", 0, column(lines, &Line::sort, rows));

    std::string supplier = head.supplier.value_or(namedText(document, "order_supplier"));
    if (supplier.empty()) supplier = suppliersOf(lines, parts);
    const double issued = head.issued.value_or(today());
    put(form, "Order", number);
    put(form, "Supplier", supplier);
    put(form, "Issued on", issued);
    if (head.deliver) put(form, "Deliver on", *head.deliver);
    if (head.place) put(form, "Deliver to", *head.place);

    calculate(document);
    const std::string total = namedText(document, "order_total");
    return "Order " + number + " of " + dateText(issued) + ", " + supplier + "\n  " +
           std::to_string(lines.size()) + (lines.size() == 1 ? " line, " : " lines, ") +
           (total.empty() ? "total not known" : "$" + moneyText(std::stod(total)) + " with tax") + "\n  " +
           namedText(document, "order_check") + "\n";
}

}  // namespace trenchbook::sheets
