// The menu's commands through the C interface with any workbook: steps, or a sentence; never a crash, never a fault.
#include <fuzzer/FuzzedDataProvider.h>

#include <cstdio>
#include <cstdlib>
#include <cstring>

#include "c/asked.h"

namespace {

using namespace trenchbook::addin;

const char* const words[] = {"Levels",    "Runs",  "Prices", "Point",    "Known level", "Rod",
                             "Backsight", "Note",  "Check",  "Code",     "Price",       "Priced on",
                             "Item",      "Group", "NO: x",  "CHECK: y", "OK",          "Number",
                             "Err:502",   "A",     "",       "Total",    "Findings",    "Row"};
const char* const names[] = {"table_Levels",  "table_Runs", "table_Prices",    "table_Order",
                             "table_Takeoff", "form_Job",   "form_Price_book", "form_Order",
                             "order_number",  "job_name",   "table_Options",   "list_crew_stations",
                             "runs_numbers",  "Letterhead"};

Cell cell(FuzzedDataProvider& bytes) {
    switch (bytes.ConsumeIntegralInRange(0, 4)) {
        case 0:
            return Nothing{};
        case 1:
            return static_cast<double>(bytes.ConsumeIntegralInRange(-2, 200));
        case 2:
            return bytes.ConsumeRandomLengthString(8);
        default:
            return std::string(bytes.PickValueInArray(words));
    }
}

double small(FuzzedDataProvider& bytes) { return bytes.ConsumeIntegralInRange(-1, 9); }

std::string marks(FuzzedDataProvider& bytes, std::size_t count) {
    std::string made(count, '0');
    for (char& mark : made) mark = bytes.ConsumeBool() ? '1' : '0';
    return made;
}

void addWorkbook(FuzzedDataProvider& bytes, std::vector<Value>& values) {
    const int sheets = bytes.ConsumeIntegralInRange(1, 3);
    values.push_back(static_cast<double>(sheets));
    for (int sheet = 0; sheet < sheets; ++sheet) {
        Range cells{bytes.ConsumeIntegralInRange<std::size_t>(1, 9),
                    bytes.ConsumeIntegralInRange<std::size_t>(1, 6),
                    {}};
        for (std::size_t n = 0; n < cells.rows * cells.columns; ++n) cells.cells.push_back(cell(bytes));
        values.push_back(std::string(bytes.PickValueInArray(words)));
        values.push_back(static_cast<double>(bytes.ConsumeBool()));
        values.push_back(cells);
        values.push_back(marks(bytes, cells.cells.size()));
        values.push_back(marks(bytes, cells.columns));
        values.push_back(Range{0, 0, {}});
        values.push_back(small(bytes));
    }
    Range named{bytes.ConsumeIntegralInRange<std::size_t>(0, 5), 6, {}};
    for (std::size_t n = 0; n < named.rows; ++n) {
        named.cells.push_back(std::string(bytes.PickValueInArray(names)));
        for (int part = 0; part < 5; ++part) named.cells.push_back(small(bytes));
    }
    values.push_back(named);
    values.push_back(Range{1, 2, {cell(bytes), cell(bytes)}});
    values.push_back(bytes.ConsumeBool() ? Range{1, 3, {0.0, small(bytes), small(bytes)}} : Range{0, 0, {}});
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const char* const commands[] = {
        "nextMissing", "printRanges", "prices",      "option", "optionNoted",  "orderAsked",
        "order",       "orderIssued", "shotColumns", "shots",  "explainAsked", "explainQuestions",
        "explain",     "valuesCopy",  "buy",         "change", "changeNoted"};
    FuzzedDataProvider bytes(data, size);
    const std::string command = bytes.PickValueInArray(commands);
    std::vector<Value> values;
    if (command.starts_with("explainQ") || command == "explain" || command == "valuesCopy")
        values.push_back("es");
    if (command != "explainQuestions") addWorkbook(bytes, values);
    if (command == "prices" || command == "option" || command == "buy" || command == "change")
        addWorkbook(bytes, values);
    for (int more = bytes.ConsumeIntegralInRange(0, 6); more > 0; --more) {
        if (bytes.ConsumeBool()) {
            values.push_back(Range{1, 2, {cell(bytes), cell(bytes)}});
        } else {
            values.push_back(std::visit([](auto&& held) -> Value { return held; }, cell(bytes)));
        }
    }
    const harness::Flat flat(values);
    trenchbook_answer answer;
    trenchbook_command(command.c_str(), flat.letters.data(), flat.letters.size(), flat.numbers.data(),
                       flat.numbers.size(), flat.texts.data(), flat.texts.size(), &answer);
    const bool done = answer.code == TRENCHBOOK_OK && answer.kind == 't' && answer.texts[0] == '{';
    const bool refused = answer.code == TRENCHBOOK_BAD_ARGUMENT || answer.code == TRENCHBOOK_MALFORMED;
    if (!done && !(refused && std::strlen(answer.sentence) > 0)) {
        std::fprintf(stderr, "%s: %d: %s\n", command.c_str(), answer.code, answer.sentence);
        std::abort();
    }
    trenchbook_free(&answer);
    return 0;
}
