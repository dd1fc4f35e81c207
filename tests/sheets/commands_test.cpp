// What commands work out from a workbook's plain data, without an office.
#include <gtest/gtest.h>

#include "commands/next_missing.h"
#include "commands/print_ranges.h"

namespace trenchbook::sheets {
namespace {

// A sheet from its rows of text; "=" in front marks what is worked out, a number is one.
int addSheet(Book& book, const std::string& name, const std::vector<std::vector<std::string>>& rows) {
    BookSheet sheet;
    sheet.name = name;
    sheet.rows = static_cast<int>(rows.size());
    for (const auto& row : rows) sheet.columns = std::max(sheet.columns, static_cast<int>(row.size()));
    for (auto row : rows) {
        row.resize(static_cast<std::size_t>(sheet.columns));
        for (std::string cell : row) {
            const bool formula = cell.rfind('=', 0) == 0;
            if (formula) cell.erase(0, 1);
            char* end = nullptr;
            const double number = std::strtod(cell.c_str(), &end);
            sheet.cells.push_back(cell.empty() ? Value() : *end == 0 ? Value(number) : Value(cell));
            sheet.formulas.push_back(formula);
        }
    }
    sheet.hidden.assign(static_cast<std::size_t>(sheet.columns), false);
    book.sheets.push_back(sheet);
    return static_cast<int>(book.sheets.size()) - 1;
}

void addTable(Book& book, const std::string& name, const std::vector<std::vector<std::string>>& rows) {
    const int sheet = addSheet(book, name, rows);
    const BookSheet& added = book.sheets.back();
    book.parts.push_back({BookPart::Is::Table, name, {sheet, 0, 0, added.columns - 1, added.rows - 1}});
}

Place selectedBy(const Planned& planned) { return std::get<Select>(planned.steps.list.at(0)).at; }

Book shots() {
    Book book;
    addTable(book, "Levels",
             {{"Point", "Rod", "Check", "Help"},
              {},
              {},
              {"A", "4.10", "=OK"},
              {"B", "", "=NO: no Rod reading"},
              {"C", "9.99", "=CHECK: closes by 0.05"},
              {"", "", "=", "="},
              {}});
    book.sheets[0].hidden[3] = true;
    return book;
}

TEST(Book, FindsRowsByHeadingAndKeepsHiddenColumnsOut) {
    const Book book = shots();
    const std::vector<Row> rows = book.rows(book.tableFor("Levels"));
    ASSERT_EQ(rows.size(), 3u);
    EXPECT_EQ(rows[1].ready, 1);
    EXPECT_EQ(rows[0].number("Rod"), 4.1);
    EXPECT_EQ(rows[2].text("Check"), "CHECK: closes by 0.05");
    EXPECT_EQ(rows[0].cells.count("Help"), 0u);
    EXPECT_EQ(book.typed(book.tableFor("Levels"), "Check"), std::vector<Value>(4));
    EXPECT_THROW(book.tableFor("Runs"), std::runtime_error);
    EXPECT_EQ(addressOf("Runs", {0, 27, 6}), "Runs.AB7");
}

TEST(NextMissing, StopsComeBeforeLooksAndLeadToTheCellThatIsNamed) {
    Book book = shots();
    EXPECT_EQ(selectedBy(nextMissing(book)), (Place{0, 1, 4})) << "the blank Rod, not the Check";
    book.selected = Place{0, 1, 4};
    EXPECT_EQ(selectedBy(nextMissing(book)), (Place{0, 2, 5})) << "no cell is named: its Check";
    book.selected = Place{0, 2, 5};
    EXPECT_EQ(selectedBy(nextMissing(book)), (Place{0, 1, 4})) << "from the last back to the first";
    EXPECT_EQ(nextMissing(book).says.en, "1 of 2, Levels.B5: Levels: NO: no Rod reading");
}

TEST(NextMissing, SaysWhenThereIsNothing) {
    Book book;
    addTable(book, "Levels", {{"Point", "Check"}, {}, {}, {"A", "=OK"}, {}});
    EXPECT_TRUE(nextMissing(book).steps.empty());
    EXPECT_EQ(nextMissing(book).says.en, "Nothing is missing: no row says NO, NOT JUDGED or CHECK.");
}

TEST(NextMissing, AHiddenSheetAsksNothing) {
    Book book = shots();
    book.sheets[0].visible = false;
    EXPECT_TRUE(allMissing(book).empty());
}

TEST(PrintRanges, EndWithTheLastRowOrDrawingThatShows) {
    Book book = shots();
    book.sheets[0].printed = Rect{0, 0, 0, 3, 7};
    const auto area = [&] { return std::get<PrintArea>(printRanges(book).steps.list.at(0)).area; };
    EXPECT_EQ(area(), (Rect{0, 0, 0, 3, 5})) << "what only a hidden column holds is not printed";
    book.sheets[0].drawnTo = 6;
    EXPECT_EQ(area(), (Rect{0, 0, 0, 3, 6}));
    book.sheets[0].printed = area();
    EXPECT_TRUE(printRanges(book).steps.empty());
    book.sheets[0].printed.reset();
    EXPECT_TRUE(printRanges(book).steps.empty());
}

}  // namespace
}  // namespace trenchbook::sheets
