#include "c/commands.h"

#include <map>
#include <stdexcept>

#include "c/given_book.h"
#include "c/json.h"
#include "commands/buy.h"
#include "commands/change.h"
#include "commands/close_out.h"
#include "commands/drawing_files.h"
#include "commands/explain.h"
#include "commands/learn.h"
#include "commands/next_missing.h"
#include "commands/option.h"
#include "commands/order.h"
#include "commands/prices.h"
#include "commands/print_ranges.h"
#include "commands/sheets_shown.h"
#include "commands/shots.h"
#include "commands/values_copy.h"
#include "jobbook/refused.h"
#include "jobbook/value_text.h"
#include "trenchbook/money/purchase.h"

namespace trenchbook::addin {
namespace {

using sheets::Book;

std::string planned(const sheets::Planned& plan) {
    return Json().field("says", plan.says).field("steps", plan.steps).text();
}

Language language(GivenValues& given) { return given.text() == "es" ? Language::Spanish : Language::English; }

std::string nextMissing(GivenValues& given) { return planned(sheets::nextMissing(given.book())); }
std::string printRanges(GivenValues& given) { return planned(sheets::printRanges(given.book())); }

std::string sheetsShown(GivenValues& given) {
    const Book book = given.book();
    return planned(
        sheets::showSheets(book, given.flag() ? sheets::SheetsShown::Every : sheets::SheetsShown::Turned));
}

std::string prices(GivenValues& given) {
    const Book job = given.book();
    const sheets::PriceNews news = sheets::priceNews(job, given.book());
    return Json()
        .field("list", news.list)
        .field("rows", static_cast<int>(news.rows))
        .field("asks", news.asks)
        .field("taken", news.taken)
        .field("left", sheets::notTaken(news, "Take"))
        .field("steps", news.steps)
        .text();
}

std::string buy(GivenValues& given) {
    const Book job = given.book();
    const Book book = given.book();
    const double most = given.number();
    if (!(most >= 1 && most <= mostSuppliersTried)) throw sheets::Refused("the most suppliers are 1 to 12");
    const sheets::Buying buying = sheets::buyFrom(job, book, static_cast<std::size_t>(most));
    return Json()
        .field("list", buying.list)
        .field("rows", static_cast<int>(buying.rows))
        .field("asks", buying.asks)
        .field("taken", buying.taken)
        .field("left", sheets::notTaken(buying, "Take"))
        .field("steps", buying.steps)
        .text();
}

std::string changeOf(GivenValues& given) {
    const Book job = given.book();
    const Book changed = given.book();
    const std::string file = given.text();
    std::string what = given.text();
    if (what.empty()) what = file.substr(0, file.rfind('.'));
    return Json()
        .field("what", what)
        .field("steps", sheets::noteChange(job, changed, file, what, sheets::today()))
        .text();
}
std::string changeNoted(GivenValues& given) {
    const Book job = given.book();
    return Json().field("list", sheets::changeNoted(job, given.text())).text();
}

std::string learned(const sheets::Learned& news) {
    return Json().field("list", news.list).field("steps", news.steps).text();
}
std::string learn(GivenValues& given) {
    const Book job = given.book();
    return learned(sheets::learnFrom(given.book(), job, sheets::today()));
}

std::string option(GivenValues& given) {
    const Book job = given.book();
    const Book other = given.book();
    const std::string file = given.text();
    std::string name = given.text();
    if (name.empty()) name = other.text("job_name");
    if (name.empty()) name = file.substr(0, file.rfind('.'));
    return Json().field("steps", sheets::noteOption(job, other, file, name, sheets::today())).text();
}
std::string optionNoted(GivenValues& given) {
    const Book job = given.book();
    return Json().field("list", sheets::optionNoted(job, given.text())).text();
}

std::optional<double> date(const std::optional<std::string>& given, const char* name) {
    if (!given) return std::nullopt;
    try {
        const sheets::Value read = sheets::readValue(
            *given, {sheets::show::date, sheets::Validity(), sheets::Measure::Plain}, false);
        const double* days = std::get_if<double>(&read);
        if (days == nullptr) throw std::invalid_argument("is not a date");
        return *days;
    } catch (const std::invalid_argument& wrong) {
        throw sheets::Refused(std::string(name) + ": \"" + *given + "\" " + wrong.what());
    }
}

std::string closeJob(GivenValues& given) {
    const Book ledger = given.book();
    const Book job = given.book();
    return learned(
        sheets::closeInto(ledger, job, date(given.textIfAny(), "Finished").value_or(sheets::today())));
}

// What the questions before an order are answered with.
std::string orderAsked(GivenValues& given) {
    const Book job = given.book();
    const double* deliver = std::get_if<double>(&job.value("order_deliver"));
    return Json()
        .field("stands", sheets::orderStands(job) ? 1 : 0)
        .field("number", job.text("order_number"))
        .field("supplier", job.text("order_supplier"))
        .field("issued", sheets::dateText(sheets::today()))
        .field("deliver", deliver == nullptr ? std::string() : sheets::dateText(*deliver))
        .field("place", job.text("order_place"))
        .text();
}
std::string order(GivenValues& given) {
    const Book job = given.book();
    sheets::OrderHead head;
    head.number = given.textIfAny();
    head.supplier = given.textIfAny();
    head.issued = date(given.textIfAny(), "Issued");
    head.deliver = date(given.textIfAny(), "Deliver");
    head.place = given.textIfAny();
    head.only = given.textIfAny();
    if (head.only && head.only->empty()) head.only.reset();
    head.replace = given.flag();
    head.today = sheets::today();
    head.numberWord = "Number";
    head.replaceWord = "Replace";
    return Json().field("steps", sheets::issueOrder(job, head)).text();
}
std::string orderIssued(GivenValues& given) {
    return Json().field("list", sheets::orderIssued(given.book())).text();
}

std::string closeOutStands(GivenValues& given) {
    return Json().field("stands", sheets::closeOutStands(given.book()) ? 1 : 0).text();
}
std::string estimate(GivenValues& given) {
    const Book job = given.book();
    return Json().field("steps", sheets::takeEstimate(job, given.flag(), "Replace")).text();
}
std::string estimateTaken(GivenValues& given) {
    return Json().field("list", sheets::estimateTaken(given.book())).text();
}
// The list of what was taken goes back in once the workbook is computed anew.
std::string actual(GivenValues& given) {
    const sheets::Actual taken = sheets::takeActual(given.book());
    return Json()
        .field("list", taken.list)
        .field("rows", static_cast<int>(taken.rows))
        .field("steps", taken.steps)
        .text();
}
std::string actualTaken(GivenValues& given) {
    const Book job = given.book();
    sheets::Actual taken;
    taken.list = given.text();
    taken.rows = static_cast<std::size_t>(given.number());
    return Json().field("list", sheets::actualTaken(job, taken)).text();
}

// The text of a cell that holds one.
const std::string& wordAt(const Range& given, std::size_t row, std::size_t column) {
    const std::string* text = std::get_if<std::string>(&given.at(row, column));
    if (text == nullptr) throw Malformed("a text is asked for in each row");
    return *text;
}

sheets::ShotColumns columnsOf(const Range& given) {
    sheets::ShotColumns columns;
    for (std::size_t n = 0; n < given.rows && given.columns == 2; ++n)
        if (const std::string* column = std::get_if<std::string>(&given.at(n, 1)))
            columns[wordAt(given, n, 0)] = *column;
    return columns;
}
std::string shotColumns(GivenValues& given) {
    const Book job = given.book();
    const std::string csv = given.text();
    const sheets::ShotColumns columns = sheets::shotColumns(job, csv, columnsOf(given.range()));
    std::vector<std::string> fields;
    for (const sheets::ShotField& field : sheets::shotFields()) {
        const auto column = columns.find(field.argument);
        fields.push_back(Json()
                             .field("argument", std::string(field.argument))
                             .field("label", field.label)
                             .field("column", column == columns.end() ? std::string() : column->second)
                             .text());
    }
    return Json().add("fields", jsonList(fields)).text();
}
std::string shots(GivenValues& given) {
    const Book job = given.book();
    const std::string csv = given.text();
    const sheets::ShotColumns columns = columnsOf(given.range());
    return planned(sheets::bringShots(job, csv, columns, given.text()));
}

// A cell and the formulas of the blocks that it looks up: name and formula a row.
sheets::CellToExplain cellOf(GivenValues& given) {
    sheets::CellToExplain cell{given.place(), given.text(), {}};
    const Range blocks = given.range();
    for (std::size_t n = 0; n < blocks.rows && blocks.columns == 2; ++n)
        cell.blocks[wordAt(blocks, n, 0)] = wordAt(blocks, n, 1);
    return cell;
}
std::string explainAsked(GivenValues& given) {
    const Book book = given.book();
    const std::string formula = given.text();
    return Json()
        .field("language", std::string(sheets::languageOf(book) == Language::Spanish ? "es" : "en"))
        .field("blocks", sheets::blocksIn(book, formula))
        .text();
}
std::string explainQuestions(GivenValues& given) {
    const Language wanted = language(given);
    return Json().field("formulas", sheets::questions(cellOf(given), wanted)).text();
}
std::string explain(GivenValues& given) {
    const Language wanted = language(given);
    const Book book = given.book();
    const sheets::CellToExplain cell = cellOf(given);
    std::vector<sheets::Value> answers;
    for (const Cell& answer : given.range().cells)
        answers.push_back(std::visit(
            [](const auto& held) -> sheets::Value {
                if constexpr (std::is_same_v<std::decay_t<decltype(held)>, Nothing>)
                    return {};
                else
                    return held;
            },
            answer));
    if (answers.size() != sheets::questions(cell, wanted).size())
        throw Malformed("each question has an answer");
    return Json().field("list", sheets::explainCell(book, cell, answers, wanted)).text();
}

std::string valuesCopy(GivenValues& given) {
    const Language wanted = language(given);
    return Json().field("steps", sheets::valuesCopy(given.book(), sheets::today(), wanted)).text();
}

// Name and text of each file, one behind the other.
std::string drawingFiles(GivenValues& given) {
    const sheets::DrawingFiles made = sheets::drawingFiles(given.book());
    std::vector<std::string> files;
    for (const sheets::DrawingFile& file : made.files)
        files.push_back(Json().field("name", file.name).field("text", file.text).text());
    return Json().field("says", made.says).add("files", jsonList(files)).text();
}

using Command = std::string (*)(GivenValues&);

const std::map<std::string_view, Command>& commands() {
    static const std::map<std::string_view, Command> all = {
        {"nextMissing", nextMissing},
        {"printRanges", printRanges},
        {"sheets", sheetsShown},
        {"prices", prices},
        {"option", option},
        {"optionNoted", optionNoted},
        {"buy", buy},
        {"change", changeOf},
        {"changeNoted", changeNoted},
        {"learn", learn},
        {"close", closeJob},
        {"orderAsked", orderAsked},
        {"order", order},
        {"orderIssued", orderIssued},
        {"closeOutStands", closeOutStands},
        {"estimate", estimate},
        {"estimateTaken", estimateTaken},
        {"actual", actual},
        {"actualTaken", actualTaken},
        {"shotColumns", shotColumns},
        {"shots", shots},
        {"explainAsked", explainAsked},
        {"explainQuestions", explainQuestions},
        {"explain", explain},
        {"drawingFiles", drawingFiles},
        {"valuesCopy", valuesCopy},
    };
    return all;
}

}  // namespace

bool isCommand(std::string_view name) { return commands().contains(name); }

std::string command(std::string_view name, std::span<const Value> values) {
    GivenValues given(values);
    const std::string answer = commands().at(name)(given);
    given.end();
    return answer;
}

}  // namespace trenchbook::addin
