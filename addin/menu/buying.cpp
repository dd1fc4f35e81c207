// What a job costs: prices from the price book, the order, another way to do the job, the estimate held against what it took.
#include <algorithm>
#include <com/sun/star/sheet/XCalculatable.hpp>

#include "commands/buy.h"
#include "commands/change.h"
#include "commands/close_out.h"
#include "commands/learn.h"
#include "commands/option.h"
#include "commands/order.h"
#include "commands/prices.h"
#include "jobbook/read_book.h"
#include "jobbook/resolved.h"
#include "jobbook/value_text.h"
#include "menu/boxes.h"
#include "menu/commands.h"
#include "menu/surroundings.h"
#include "trenchbook/money/purchase.h"

namespace trenchbook::addin {
namespace {

namespace fs = std::filesystem;

// The other workbook, read and closed again.
sheets::Book bookOf(const Call& call, const Document& job, const fs::path& file) {
    if (const auto own = fileOf(job); own && fs::exists(file) && fs::equivalent(*own, file))
        throw Refused(file.string() + call.in({" is this workbook itself", " es este mismo libro"}));
    HiddenDesk desk(call);
    const sheets::Opened other(desk.open(file));
    sheets::requireResolved(other, file);
    return sheets::readBook(other);
}

// As much of a list as a box can show.
std::string shortened(const std::string& list, const std::string& more) {
    constexpr std::ptrdiff_t most = 25;
    const std::ptrdiff_t lines = std::count(list.begin(), list.end(), '\n');
    if (lines <= most) return list;
    std::size_t end = 0;
    for (std::ptrdiff_t line = 0; line < most; ++line) end = list.find('\n', end) + 1;
    return list.substr(0, end) + "  … " + std::to_string(lines - most) + more + "\n";
}

std::optional<double> dateIn(const std::map<std::string, std::string>& given, const char* name) {
    const auto found = given.find(name);
    if (found == given.end()) return std::nullopt;
    try {
        const sheets::Value date = sheets::readValue(
            found->second, {sheets::show::date, sheets::Validity(), sheets::Measure::Plain}, false);
        const double* days = std::get_if<double>(&date);
        return days == nullptr ? std::nullopt : std::optional(*days);  // blanks alone are no date
    } catch (const std::invalid_argument& wrong) {
        throw Refused(std::string(name) + ": \"" + found->second + "\" " + wrong.what());
    }
}

std::string dateOf(const sheets::Book& book, const char* field) {
    const double* days = std::get_if<double>(&book.value(field));
    return days == nullptr ? "" : sheets::dateText(*days);
}

}  // namespace

Answer bringPrices(Call& call) {
    const Document job = call.job();
    const fs::path file =
        fileToRead(call, "Book", {"The price book", "El libro de precios"}, {"ods", "xlsx"});
    Progress progress(call, 3);
    const sheets::Book book = bookOf(call, job, file);
    progress.reach(2);
    const sheets::PriceNews news = sheets::priceNews(sheets::readBook(job), book);
    if (news.rows == 0) return {news.list};
    const Text more(" more lines", " líneas más");
    const bool take =
        call.byProgram() ? call.flag("Take") : agreed(call, shortened(news.list, call.in(more)) + news.asks);
    if (!take) return {news.list + sheets::notTaken(news, "Take"), call.byProgram()};
    change(call, job, news.steps);
    return {news.list + news.taken, false};
}

Answer buyCheapest(Call& call) {
    const Document job = call.job();
    const fs::path file =
        fileToRead(call, "Book", {"The price book", "El libro de precios"}, {"ods", "xlsx"});
    std::size_t most = mostSuppliersTried;
    if (const auto given = call.text("Most")) {
        if (given->size() != 1 || given->front() < '1' || given->front() > '9')
            throw Refused(call.in({"Most is a number of suppliers from 1 to 9, not ",
                                   "Most es un número de proveedores de 1 a 9, no "}) +
                          *given);
        most = static_cast<std::size_t>(given->front() - '0');
    }
    Progress progress(call, 3);
    const sheets::Book book = bookOf(call, job, file);
    progress.reach(2);
    const sheets::Buying buying = sheets::buyFrom(sheets::readBook(job), book, most);
    if (buying.rows == 0) return {buying.list};
    const Text more(" more lines", " líneas más");
    const bool take = call.byProgram() ? call.flag("Take")
                                       : agreed(call, shortened(buying.list, call.in(more)) + buying.asks);
    if (!take) return {buying.list + sheets::notTaken(buying, "Take"), call.byProgram()};
    change(call, job, buying.steps);
    return {buying.list + buying.taken, false};
}

Answer noteChange(Call& call) {
    const Document job = call.job();
    const fs::path file =
        fileToRead(call, "Changed", {"The changed job, a workbook", "La obra cambiada, un libro"}, {"ods"});
    Progress progress(call, 3);
    const sheets::Book changed = bookOf(call, job, file);
    progress.reach(2);
    const std::string what = call.text("What").value_or(file.stem().string());
    change(
        call, job,
        sheets::noteChange(sheets::readBook(job), changed, file.filename().string(), what, sheets::today()));
    return {sheets::changeNoted(sheets::readBook(job), what)};
}

Answer issueOrder(Call& call) {
    const Document job = call.job();
    const sheets::Book book = sheets::readBook(job);
    const auto given = filledIn(
        call,
        {{"Number", {"Order number", "Número de pedido"}, book.text("order_number")},
         {"Supplier", {"Supplier", "Proveedor"}, book.text("order_supplier")},
         {"Issued", {"Issued on (2026-05-31)", "Fecha (2026-05-31)"}, sheets::dateText(sheets::today())},
         {"Deliver", {"Deliver on", "Entregar el"}, dateOf(book, "order_deliver")},
         {"Place", {"Deliver to", "Entregar en"}, book.text("order_place")},
         {"Only",
          {"Only from this supplier (blank: all)", "Solo de este proveedor (en blanco: todos)"},
          ""}});
    const auto word = [&](const char* name) {
        const auto found = given.find(name);
        return found == given.end() ? std::nullopt : std::optional(found->second);
    };
    sheets::OrderHead head;
    head.number = word("Number");
    head.supplier = word("Supplier");
    head.place = word("Place");
    head.only = word("Only");
    if (head.only && head.only->empty()) head.only.reset();
    head.issued = dateIn(given, "Issued");
    head.deliver = dateIn(given, "Deliver");
    head.today = sheets::today();
    head.numberWord = "Number";
    head.replaceWord = "Replace";
    head.replace = call.flag("Replace");
    if (!head.replace && !call.byProgram() && sheets::orderStands(book))
        head.replace = agreed(call, call.in({"An order stands on Order already. Issue it anew?",
                                             "Ya hay un pedido en Order. ¿Emitirlo de nuevo?"}));
    change(call, job, sheets::issueOrder(book, head));
    return {sheets::orderIssued(sheets::readBook(job))};
}

Answer noteOption(Call& call) {
    const Document job = call.job();
    const fs::path file = fileToRead(
        call, "Other", {"The other way, a job workbook", "La otra manera, un libro de obra"}, {"ods"});
    Progress progress(call, 3);
    const sheets::Book other = bookOf(call, job, file);
    progress.reach(2);
    const std::string own = other.text("job_name");
    const std::string name = call.text("Name").value_or(own.empty() ? file.stem().string() : own);
    change(call, job,
           sheets::noteOption(sheets::readBook(job), other, file.filename().string(), name, sheets::today()));
    return {sheets::optionNoted(sheets::readBook(job), file.filename().string())};
}

Answer bringEstimate(Call& call) {
    const Document job = call.job();
    const sheets::Book book = sheets::readBook(job);
    bool replace = call.flag("Replace");
    if (!replace && !call.byProgram() && sheets::closeOutStands(book))
        replace = agreed(
            call,
            call.in({"Rows stand on Close-out already. Take the estimate anew? What is typed there goes.",
                     "Ya hay filas en Close-out. ¿Tomar lo estimado de nuevo? Lo escrito allí se borra."}));
    change(call, job, sheets::takeEstimate(book, replace, "Replace"));
    return {sheets::estimateTaken(sheets::readBook(job))};
}

Answer bringActual(Call& call) {
    const Document job = call.job();
    const sheets::Actual taken = sheets::takeActual(sheets::readBook(job));
    change(call, job, taken.steps);
    return {sheets::actualTaken(sheets::readBook(job), taken)};
}

Answer learnRates(Call& call) {
    const Document job = call.job();
    const fs::path file = fileToRead(call, "Ledger", {"The ledger", "El libro de obras"}, {"ods"});
    Progress progress(call, 3);
    const sheets::Book ledger = bookOf(call, job, file);
    progress.reach(2);
    const sheets::Learned learned = sheets::learnFrom(ledger, sheets::readBook(job), sheets::today());
    change(call, job, learned.steps);
    return {learned.list};
}

Answer closeJob(Call& call) {
    const Document ledger = call.document();
    const fs::path file = fileToRead(call, "Job", {"The finished job", "La obra terminada"}, {"ods"});
    Progress progress(call, 3);
    const sheets::Book job = bookOf(call, ledger, file);
    progress.reach(2);
    const auto given = call.text("Finished");
    const double finished = dateIn(given ? std::map<std::string, std::string>{{"Finished", *given}}
                                         : std::map<std::string, std::string>{},
                                   "Finished")
                                .value_or(sheets::today());
    const sheets::Learned closed = sheets::closeInto(sheets::readBook(ledger), job, finished);
    change(call, ledger, closed.steps);
    return {closed.list};
}

}  // namespace trenchbook::addin
