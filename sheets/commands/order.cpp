#include "commands/order.h"

#include <algorithm>

#include "buying/money.h"
#include "jobbook/refused.h"
#include "jobbook/value_text.h"
#include "trenchbook/core/error.h"

namespace trenchbook::sheets {
namespace {

struct Line {
    std::string code, item, unit, taxable, sort;
    double packs = 0, price = 0;
    std::string supplier{}, theirs{};
    std::optional<double> tonsPerYard{};
};

// "14 ft stick", "625 sq ft", "piece": what one pack is.
std::string packName(double pack, const std::string& unit, const std::string& group) {
    if (pack == 1) return unit;
    return plain(pack, 6) + " " + unit + (group == "pipe" ? " stick" : "");
}

class Collector {
  public:
    explicit Collector(const Book& book) {
        for (const char* table : {"Takeoff", "Additions"})
            for (const Row& row : book.rows(book.tableFor(table))) take(table, row);
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

double densityOn(const Book& book, const std::string& key) {
    for (const Row& row : book.rows(book.tableFor("Rules")))
        if (row.text("Key") == key) return row.number("Value").value_or(0);
    return 0;
}

// Who sells each line, under which number, and how heavy bulk goods are.
void addSuppliers(std::vector<Line>& lines, const Book& book) {
    for (const Row& row : book.rows(book.tableFor("Prices"))) {
        const auto line = std::find_if(lines.begin(), lines.end(),
                                       [&](const Line& known) { return known.code == row.text("Code"); });
        if (line == lines.end()) continue;
        line->supplier = row.text("Supplier");
        line->theirs = row.text("Their number");
        const std::string group = row.text("Group");
        if (group == "rock" || group == "sand")
            if (const double density = densityOn(book, group + ".density"); density > 0)
                line->tonsPerYard = density;
    }
}

// Each once.
std::string suppliersOf(const std::vector<Line>& lines) {
    std::vector<std::string> names;
    for (const Line& line : lines)
        if (!line.supplier.empty() && std::find(names.begin(), names.end(), line.supplier) == names.end())
            names.push_back(line.supplier);
    std::string all;
    for (const std::string& name : names) all += (all.empty() ? "" : "; ") + name;
    return all;
}

std::size_t linesOf(const Book& book) {
    const std::vector<Row> rows = book.rows(book.tableFor("Order"));
    return static_cast<std::size_t>(std::count_if(rows.begin(), rows.end(), [](const Row& row) {
        return !row.text("Code").empty() || row.number("Quantity");
    }));
}

Text countedLines(std::size_t lines) { return counted(lines, {"line", "renglón"}, {"lines", "renglones"}); }

void refuseIssued(const Book& book, const std::string& replaceWord) {
    const std::size_t lines = linesOf(book);
    if (lines == 0) return;
    const std::string number = book.text("order_number");
    throw Refused(said(
        book,
        (number.empty() ? Text("An order", "Un pedido") : Text("Order ", "El pedido ") + Text::same(number)) +
            Text(" stands on Order already, with ", " ya está en Order, con ") + countedLines(lines) +
            Text::same("; " + replaceWord) + Text(" issues it anew", " lo emite de nuevo")));
}

template <class Member>
std::vector<Value> column(const std::vector<Line>& lines, Member Line::*member, std::size_t rows) {
    std::vector<Value> values;
    for (const Line& line : lines) values.emplace_back(line.*member);
    values.resize(rows);  // what stood below goes
    return values;
}

}  // namespace

bool orderStands(const Book& book) { return linesOf(book) > 0; }

Steps issueOrder(const Book& book, const OrderHead& head) {
    if (!head.replace) refuseIssued(book, head.replaceWord);

    Collector collected(book);
    if (const std::string check = book.text("takeoff_check"); check.rfind("NO", 0) == 0)
        collected.faults.insert(
            collected.faults.begin(),
            said(book, {"Takeoff is not complete: ", "Takeoff no está completo: "}) + check);
    const std::string number = head.number.value_or(book.text("order_number"));
    if (number.empty())
        collected.faults.push_back(
            said(book, {"The order has no number that tickets and invoices can refer to; give ",
                        "El pedido no tiene número que remisiones y facturas puedan citar; dé "}) +
            head.numberWord);
    std::string faults;
    for (const std::string& fault : collected.faults) faults += (faults.empty() ? "" : "\n") + fault;
    if (!faults.empty()) throw Refused(faults);
    std::vector<Line>& lines = collected.lines;
    addSuppliers(lines, book);
    if (head.only) std::erase_if(lines, [&](const Line& line) { return line.supplier != *head.only; });
    if (head.only && lines.empty())
        throw Refused(said(
            book, Text{"Prices has nothing of this order from ", "En Prices no hay nada de este pedido de "} +
                      Text::same(*head.only)));
    if (lines.empty())
        throw Refused(said(book, {"There is nothing to order: Takeoff and Additions are empty",
                                  "No hay nada que pedir: Takeoff y Additions están vacíos"}));

    Steps steps;
    const BookPart& order = book.tableFor("Order");
    const BookPart& form = book.formFor("Order head");
    const auto say = [&](const char* label, const Value& value) {
        steps.put({form.at.sheet, form.at.column + 1, book.row(form, label)}, value);
    };
    std::string supplier = head.supplier.value_or(book.text("order_supplier"));
    if (head.only || supplier.empty()) supplier = suppliersOf(lines);
    say("Order", number);
    say("Supplier", supplier);
    say("Issued on", head.issued.value_or(head.today));
    if (head.deliver) say("Deliver on", *head.deliver);
    if (head.place) say("Deliver to", *head.place);

    // Before the last ready row, so that every range over the table takes the new ones in; the form stands above.
    auto rows = static_cast<std::size_t>(order.lastReady() - order.firstReady() + 1);
    if (lines.size() > rows) {
        steps.list.emplace_back(AddRows{order.at, order.lastReady(), static_cast<int>(lines.size() - rows)});
        rows = lines.size();
    }
    const auto fill = [&](const char* heading, const std::vector<Value>& values) {
        steps.putColumn({order.at.sheet, book.column(order, heading), order.firstReady()}, values);
    };
    fill("Code", column(lines, &Line::code, rows));
    fill("Item", column(lines, &Line::item, rows));
    fill("Quantity", column(lines, &Line::packs, rows));
    fill("Unit", column(lines, &Line::unit, rows));
    fill("Price", column(lines, &Line::price, rows));
    fill("Taxable", column(lines, &Line::taxable, rows));
    fill("Sort", column(lines, &Line::sort, rows));
    fill("Supplier", column(lines, &Line::supplier, rows));
    fill("Their number", column(lines, &Line::theirs, rows));
    std::vector<Value> weights;
    for (const Line& line : lines) weights.push_back(line.tonsPerYard ? Value(*line.tonsPerYard) : Value());
    weights.resize(rows);
    fill("Tons a yard", weights);
    return steps;
}

std::string orderIssued(const Book& book) {
    const double* date = std::get_if<double>(&book.value("order_date"));
    const double* total = std::get_if<double>(&book.value("order_total"));
    const Text when = date == nullptr ? Text(" of no date", " sin fecha")
                                      : Text(" of ", " del ") + Text::same(dateText(*date));
    const Text money = total == nullptr
                           ? Text("total not known", "sin total conocido")
                           : Text::same("$" + moneyText(*total)) + Text(" with tax", " con impuesto");
    return said(book, Text("Order ", "Pedido ") + Text::same(book.text("order_number")) + when +
                          Text::same(", " + book.text("order_supplier") + "\n  ") +
                          countedLines(linesOf(book)) + Text::same(", ") + money +
                          Text::same("\n  " + book.text("order_check") + "\n"));
}

}  // namespace trenchbook::sheets
