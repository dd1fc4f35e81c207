// What commands work out from a workbook's plain data, without an office.
#include <gtest/gtest.h>

#include "commands/explain.h"
#include "commands/next_missing.h"
#include "commands/print_ranges.h"
#include "commands/shots.h"
#include "commands/values_copy.h"
#include "jobbook/refused.h"

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

// Levels with three ready rows, one of them used.
Book levels() {
    Book book;
    addTable(book, "Levels",
             {{"Point", "Known level", "Backsight", "Rod", "Level", "Note"},
              {},
              {},
              {"BM", "100", "4.5", "", "=100", "nail"},
              {"", "", "", "", "=", ""},
              {"", "", "", "", "=", ""},
              {}});
    return book;
}

std::vector<PutCells> puts(const Planned& planned) {
    std::vector<PutCells> found;
    for (const Step& step : planned.steps.list)
        if (const PutCells* put = std::get_if<PutCells>(&step)) found.push_back(*put);
    return found;
}

TEST(Shots, ColumnsAreGuessedByUsualHeadingsThenRemembered) {
    Book book = levels();
    const std::string csv = "Name,Northing,Elev,Code\nA,1,99.25,corner\n";
    const ShotColumns guessed = {{"Point", "Name"}, {"Level", "Elev"}, {"Note", "Code"}};
    EXPECT_EQ(shotColumns(book, csv, {}), guessed);
    const ShotColumns given = {{"Point", "Name"}, {"Rod", "Northing"}};
    EXPECT_EQ(shotColumns(book, csv, given), given);
    for (const Step& step : bringShots(book, csv, given, "s.csv").steps.list)
        if (const Remember* kept = std::get_if<Remember>(&step)) book.remembered[kept->name] = kept->text;
    EXPECT_EQ(shotColumns(book, csv, {}), given) << "what was told once";
    EXPECT_EQ(shotColumns(book, "Pt,z\nA,1\n", {}), (ShotColumns{{"Point", "Pt"}, {"Level", "z"}}))
        << "a file without the remembered columns";
}

TEST(Shots, GoUnderWhatStandsThere) {
    const Planned planned = bringShots(levels(), "point,rod,note\nA,5.2,walk\n",
                                       {{"Point", "point"}, {"Rod", "rod"}, {"Note", "note"}}, "s.csv");
    const std::vector<PutCells> cells = puts(planned);
    ASSERT_EQ(cells.size(), 5u);
    EXPECT_EQ(cells[0].at, (Place{0, 0, 4}));
    EXPECT_EQ(cells[0].rows, (std::vector<std::vector<Value>>{{std::string("A")}}));
    EXPECT_EQ(cells[2].at, (Place{0, 3, 4}));
    EXPECT_EQ(cells[2].rows, (std::vector<std::vector<Value>>{{5.2}}));
    EXPECT_EQ(planned.says.en, "1 shot brought in from s.csv.");
    EXPECT_EQ(planned.says.es, "1 punto traídos de s.csv.");
}

TEST(Shots, RowsAreAddedWhereThereAreTooFewAndNothingIsLost) {
    Book book = levels();
    book.sheets[0].cells[5 * 6] = std::string("LAST");  // typed in the last ready row
    book.sheets[0].cells[4 * 6] = std::string("MID");
    const Planned planned = bringShots(book, "1,2\nA,5.2\nB,6.1\n", {{"Point", "1"}, {"Rod", "2"}}, "s.csv");
    const AddRows* added = nullptr;
    for (const Step& step : planned.steps.list)
        if (const AddRows* rows = std::get_if<AddRows>(&step)) added = rows;
    ASSERT_NE(added, nullptr);
    EXPECT_EQ(added->before, 5);
    EXPECT_EQ(added->count, 3) << "the line of numbers is a shot: no headings";
    const std::vector<PutCells> cells = puts(planned);
    EXPECT_EQ(cells[0].at, (Place{0, 0, 5}));
    const std::vector<std::vector<Value>> points = {
        {std::string("LAST")}, {std::string("1")}, {std::string("A")}, {std::string("B")}};
    EXPECT_EQ(cells[0].rows, points) << "the last row goes back to its place";
}

TEST(Shots, TheSameLineIsNotBroughtInTwiceAndAnotherReadingIsASecondShot) {
    Book book = levels();
    const ShotColumns columns = {{"Point", "p"}, {"Level", "l"}, {"Backsight", "b"}, {"Rod", "r"}};
    const Planned planned = bringShots(book, "p,l,b,r\nbm,100,4.5,\nBM,,,4.6\n", columns, "s.csv");
    EXPECT_EQ(
        planned.says.en,
        "1 shot brought in from s.csv. 1 line stood on Levels already. 1 point shot before, with another "
        "reading: see Closing error.");
    EXPECT_EQ(puts(planned)[0].at, (Place{0, 0, 4}));
}

TEST(Shots, EveryLineThatCannotBeReadIsNamedAndNothingIsDone) {
    const auto refusal = [](const std::string& csv, const ShotColumns& columns) -> std::string {
        try {
            bringShots(levels(), csv, columns, "s.csv");
        } catch (const Refused& refused) {
            return refused.what();
        }
        return "none";
    };
    const ShotColumns columns = {{"Point", "p"}, {"Rod", "r"}};
    EXPECT_EQ(refusal("p,r\nA,far\n,5\nB,26\n", columns),
              "s.csv line 2, column 2 (Rod): \"far\" is not a number\n"
              "s.csv line 3: no point is named\n"
              "s.csv line 4, column 2 (Rod): \"26\" is outside 0 to 25 ft");
    EXPECT_EQ(refusal("p,r\nA,5\n", {{"Point", "p"}}),
              "s.csv: which columns hold the point and its level or rod? It has p, r");
    EXPECT_EQ(refusal("p,r\nA,5\n", {{"Point", "q"}, {"Rod", "r"}}), "s.csv has no column q; it has p, r");
    EXPECT_EQ(refusal("", columns), "s.csv holds no line");
    EXPECT_EQ(refusal("p,r\n\"A,5\n", columns).rfind("s.csv line 2", 0), 0u);
}

TEST(Explain, FindsOurCallsWithTheirArguments) {
    const std::vector<FunctionCall> found = callsIn(
        "=IFERROR(TRENCHBOOK.FUNCTIONS.PIPECAPACITY(\"4; SDR35\";RUN.SLOPE($F7;2;{1;2});;units);\"PIPE.BORE(1)\")");
    const std::vector<FunctionCall> wanted = {
        {"PIPE.CAPACITY", {"\"4; SDR35\"", "RUN.SLOPE($F7;2;{1;2})", "", "units"}},
        {"RUN.SLOPE", {"$F7", "2", "{1;2}"}}};
    EXPECT_EQ(found, wanted);
    EXPECT_TRUE(callsIn("=SUM(A1:A3)").empty());
}

TEST(Explain, TellsMethodSourceArgumentsAndReason) {
    Book book = levels();
    const CellToExplain cell{{0, 4, 3}, "=PIPE.CAPACITY(\"4 SDR35\";B4)", {}};
    EXPECT_EQ(questions(cell, Language::Spanish),
              (std::vector<std::string>{"=\"4 SDR35\"", "=B4",
                                        "=TRENCHBOOK.WHY(\"PIPE.CAPACITY\";\"4 SDR35\";B4;\"es\")"}));
    const std::string said = explainCell(
        book, cell, {std::string("4 SDR35"), -0.01, std::string("slope must be above 0")}, Language::English);
    for (const char* part : {"Levels.E4, Level: 100", "Formula: =PIPE.CAPACITY(\"4 SDR35\";B4)",
                             "Method and source: ", "pipe = \"4 SDR35\"\n", "slope = -0.01   (B4)",
                             "Reason: slope must be above 0"})
        EXPECT_NE(said.find(part), std::string::npos) << part << "\n" << said;
    EXPECT_NE(explainCell(book, {{0, 0, 3}, "BM", {}}, {}, Language::Spanish).find("Está escrito"),
              std::string::npos);
}

TEST(ValuesCopy, EveryFormulaGivesWayToWhatItShows) {
    Book book = levels();
    addSheet(book, "Typed", {{"words"}});
    const Steps steps = valuesCopy(book, 46353, Language::English);
    ASSERT_EQ(steps.list.size(), 3u) << "a sheet without formulas is left alone";
    EXPECT_EQ(std::get<ClearFormulas>(steps.list[1]).area, (Rect{0, 0, 0, 5, 6}));
    const PutCells& all = std::get<PutCells>(steps.list[2]);
    ASSERT_EQ(all.rows.size(), 7u);
    EXPECT_EQ(all.rows[3][4], Value(100.0));
    EXPECT_EQ(all.rows[3][0], Value(std::string("BM")));
}

}  // namespace
}  // namespace trenchbook::sheets
