// What commands work out from a workbook's plain data, without an office.
#include <gtest/gtest.h>

#include <fstream>
#include <regex>
#include <sstream>

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

// Job with its hidden form, then Pit and Pump; of each, why it is not needed.
Book withSheets(const std::string& pit, const std::string& pump) {
    Book book;
    addSheet(book, "Job",
             {{"Stepped aside", "|"}, {"Pit", "=" + pit}, {"Filled on Pit 1", "=0"}, {"Pump", "=" + pump}});
    book.parts.push_back({BookPart::Is::Form, sheetsForm, {0, 0, 0, 1, 3}});
    addSheet(book, "Pit", {{"a"}});
    addSheet(book, "Pump", {{"b"}});
    return book;
}

std::string shownBy(const Planned& planned) {
    std::string said;
    for (const Step& step : planned.steps.list) {
        if (const ShowSheet* show = std::get_if<ShowSheet>(&step))
            said += (show->visible ? "+" : "-") + std::to_string(show->sheet) + " ";
        if (const PutCells* put = std::get_if<PutCells>(&step)) said += textOf(put->rows[0][0]);
    }
    return said;
}

TEST(Sheets, ThoseThatAreNotNeededStepAsideAndComeBack) {
    Book book = withSheets("not needed: no pit", "");
    EXPECT_EQ(shownBy(showSheets(book, SheetsShown::Needed)), "-1 |Pit|");
    EXPECT_EQ(showSheets(book, SheetsShown::Needed).says.en, "Stepped aside, not needed: Pit.");
    EXPECT_TRUE(showSheets(book, SheetsShown::BackAgain).steps.empty()) << "none goes by itself";
    EXPECT_TRUE(showSheets(book, SheetsShown::Every).steps.empty());

    book.sheets[1].visible = false;
    book.sheets[0].cells[1] = std::string("|Pit|");
    EXPECT_TRUE(showSheets(book, SheetsShown::Needed).steps.empty());
    EXPECT_EQ(shownBy(showSheets(book, SheetsShown::Turned)), "+1 |")
        << "given once more, it shows every sheet";

    book.sheets[0].cells[3] = std::string();  // a pit is there now
    EXPECT_EQ(shownBy(showSheets(book, SheetsShown::BackAgain)), "+1 |");
    EXPECT_EQ(showSheets(book, SheetsShown::BackAgain).says.es, "Se muestra: Pit.");
}

TEST(Sheets, OnlyWordsThatSayNotNeededHide) {
    const Book book = withSheets("Err:502", "no hace falta: sin cárcamo");
    EXPECT_EQ(shownBy(showSheets(book, SheetsShown::Needed)), "-2 |Pump|");
    EXPECT_TRUE(showSheets(shots(), SheetsShown::Needed).steps.empty()) << "an older workbook";
}

TEST(NextMissing, BringsBackTheSheetThatItLeadsTo) {
    Book book = shots();
    addSheet(book, "Job", {{"Stepped aside", "|Levels|"}, {"Levels", "="}});
    book.parts.push_back({BookPart::Is::Form, sheetsForm, {1, 0, 0, 1, 1}});
    book.sheets[0].visible = false;
    const Planned planned = nextMissing(book);
    ASSERT_GE(planned.steps.list.size(), 3u);
    EXPECT_EQ(std::get<ShowSheet>(planned.steps.list[0]).sheet, 0);
    EXPECT_EQ(std::get<Select>(planned.steps.list.back()).at, (Place{0, 1, 4}));
}

// What commands say of a job in one language.
class Spoken {
  public:
    explicit Spoken(const char* language) : language_(language) {}

    Book job(const std::vector<std::vector<std::string>>& prices = {}) const {
        Book book;
        book.names["language"] = {addSheet(book, "Job", {{language_}}), 0, 0, 0, 0};
        if (!prices.empty()) addTable(book, "Prices", prices);
        return book;
    }

    void field(Book& book, const std::string& name, const std::string& value) const {
        book.names[name] = {addSheet(book, name, {{value}}), 0, 0, 0, 0};
    }

    template <class Work>
    void hear(Work work) {
        try {
            said_.push_back(work());
        } catch (const Refused& refused) {
            said_.emplace_back(refused.what());
        }
    }

    void option() {
        Book mine = job(), other;
        addTable(
            mine, "Options",
            {{"Option", "Its price", "Against this one", "On", "File"}, {}, {}, {"", "", "", "", ""}, {}});
        hear([&] { return noteOption(mine, other, "o.ods", "O", 1), std::string(); });
        field(other, "price_total", "");
        hear([&] { return noteOption(mine, other, "o.ods", "O", 1), std::string(); });
        field(other, "price_total", "5");
        field(other, "units", "metric");
        hear([&] { return noteOption(mine, other, "o.ods", "O", 1), std::string(); });
        field(mine, "units", "metric");
        std::vector<Value>& cells = mine.sheets[1].cells;
        for (const double against : {-3.0, 4.0}) {
            cells[15] = std::string("O");
            cells[16] = 5.0;
            cells[17] = against;
            cells[19] = std::string("o.ods");
            hear([&] { return optionNoted(mine, "o.ods"); });
        }
        cells[17] = Value();
        hear([&] { return optionNoted(mine, "o.ods"); });
        cells[19] = std::string("p.ods");
        hear([&] { return noteOption(mine, other, "o.ods", "O", 1), std::string(); });
    }

    void prices() {
        const std::vector<std::string> headings = {"Code",    "Item",  "Pack",    "Price",       "Priced on",
                                                   "Check",   "Group", "Unit",    "Waste",       "Supplier",
                                                   "Taxable", "Last",  "Last on", "Their number"};
        const Book mine = job({headings,
                               {},
                               {},
                               {"A", "a", "1", "2", "100", ""},
                               {"B", "b", "1", "2", "100", ""},
                               {"C", "c", "1", "2", "300", ""},
                               {"D", "d", "1", "2", "100", ""},
                               {"E", "e", "1", "2", "100", ""},
                               {"", "f", "1", "2", "", ""},
                               {}});
        Book book = job({headings,
                         {},
                         {},
                         {"A", "a", "2", "3", "200", ""},
                         {"B", "b", "1", "2", "200", ""},
                         {"C", "c", "1", "3", "200", ""},
                         {"D", "d", "1", "", "", "NO: x"},
                         {"F", "f", "1", "3", "200", ""},
                         {}});
        hear([&] { return priceNews(mine, book).list; });
        addSheet(book, "Book", {{"x", "y"}});
        book.parts.push_back({BookPart::Is::Form, "Price book", {2, 0, 0, 1, 0}});
        const PriceNews news = priceNews(mine, book);
        for (const std::string& words : {news.list, news.asks, news.taken, notTaken(news, "Take")})
            hear([&] { return words; });
        hear([&] { return priceNews(job({headings, {}, {}, {}}), book).list; });
    }

    void order() {
        const auto with = [&](const std::vector<std::string>& line) {
            Book book = job({{"Code", "Supplier"}, {}, {}, {}});
            for (const char* table : {"Takeoff", "Additions"})
                addTable(book, table,
                         {{"Code", "Item", "Order", "Price", "Pack", "Unit", "Check"}, {}, {}, line, {}});
            addTable(book, "Order", {{"Code", "Quantity"}, {}, {}, {"", ""}, {}});
            addSheet(book, "Head", {{"Order", ""}});
            book.parts.push_back(
                {BookPart::Is::Form, "Order head", {book.names.empty() ? 0 : 5, 0, 0, 1, 0}});
            return book;
        };
        OrderHead head;
        Book book = with({"", "", "", "", "", "", ""});
        hear([&] { return issueOrder(book, head), std::string(); });  // no number
        head.number = "7";
        hear([&] { return issueOrder(book, head), std::string(); });  // nothing to order
        field(book, "takeoff_check", "NO: x");
        hear([&] { return issueOrder(book, head), std::string(); });
        hear([&] { return orderIssued(book); });
        book.sheets[4].cells[6] = std::string("A");
        hear([&] { return issueOrder(book, head), std::string(); });  // one stands there
        field(book, "order_number", "7");
        field(book, "order_date", "46000");
        field(book, "order_total", "12");
        hear([&] { return issueOrder(book, head), std::string(); });
        hear([&] { return orderIssued(book); });
    }

    void learn() {
        Book mine = job(), none, ledger = job();
        hear([&] { return learnFrom(none, mine, 1).list; });
        addSheet(ledger, "L", {{"x", "y"}});
        ledger.parts.push_back({BookPart::Is::Form, "Ledger", {1, 0, 0, 1, 0}});
        addTable(ledger, "Hours",
                 {{"Job", "Work", "Amount", "Hours", "Soil factor", "Access factor"},
                  {},
                  {},
                  {"", "", "", "", "", ""},
                  {}});
        const std::vector<std::string> jobs = {"Job",          "Finished",  "Contract", "Estimated cost",
                                               "Actual cost",  "Billed",    "Paid",     "Estimated hours",
                                               "Actual hours", "Pipe",      "Soil",     "Crew",
                                               "Weather days", "Call-backs"};
        addTable(ledger, "Jobs", {jobs, {}, {}, std::vector<std::string>(jobs.size()), {}});
        addTable(ledger, "Items",
                 {{"Job", "Bought on", "Code", "Estimated", "Bought", "Cost"}, {}, {}, {}, {}});
        addTable(ledger, "Rates",
                 {{"Work", "Unit", "Jobs", "Learned", "Misses by", "Check"},
                  {},
                  {},
                  {"dig", "ft", "2", "0.5", "0.1", ""},
                  {}});
        hear([&] { return learnFrom(ledger, mine, 1).list; });
        addTable(mine, "Labor",
                 {{"Work", "Unit", "Quantity", "Hours each", "Learned", "From jobs", "Learned on",
                   "Soil factor", "Access factor"},
                  {},
                  {},
                  {"dig", "ft", "10", "0.4", "", "", "", "1", "1"},
                  {}});
        addTable(mine, "Close-out",
                 {{"What", "Group", "Actual quantity"},
                  {},
                  {},
                  {"dig", "labor", "4"},
                  {"wait", "labor", "1"},
                  {}});
        hear([&] { return learnFrom(ledger, mine, 1).list; });
        const std::size_t rates = ledger.sheets.size() - 1;
        ledger.sheets[rates].cells[3 * 6 + 1] = std::string("m");
        hear([&] { return learnFrom(ledger, mine, 1).list; });
        ledger.sheets[rates].cells[3 * 6 + 3] = Value();
        hear([&] { return learnFrom(ledger, mine, 1).list; });
        hear([&] { return closeInto(ledger, mine, 1).list; });
        field(mine, "job_name", "J");
        hear([&] { return closeInto(ledger, mine, 1).list; });
        field(mine, "close_cost", "5");
        hear([&] { return closeInto(ledger, mine, 1).list; });
        ledger.sheets[2].cells[18] = std::string("full");
        hear([&] { return closeInto(ledger, mine, 1).list; });
        ledger.sheets[3].cells[3 * jobs.size()] = std::string("J");
        hear([&] { return closeInto(ledger, mine, 1).list; });
    }

    std::vector<std::string> all() {
        option();
        prices();
        order();
        learn();
        return said_;
    }

  private:
    std::string language_;
    std::vector<std::string> said_;
};

TEST(Sentences, OfOptionPricesOrderLearnAndCloseFollowTheJobsLanguage) {
    const std::vector<std::string> english = Spoken("en").all(), spanish = Spoken("es").all();
    ASSERT_EQ(english.size(), spanish.size());
    EXPECT_GE(english.size(), 30u);
    const std::regex word(
        R"re(\b(the|of|has|with|no price|this|row|rows|lines?|from|is|in|it|job|jobs|already|empty)\b)re");
    for (std::size_t n = 0; n < english.size(); ++n) {
        EXPECT_NE(english[n], spanish[n]);
        EXPECT_FALSE(std::regex_search(spanish[n], word)) << spanish[n];
    }
}

// A sentence that goes straight out has one language only.
TEST(Sentences, NoneIsThrownBySheetsCommandsInOneLanguage) {
    const std::regex raw(R"re(Refused\(\s*(std::string\()?"[^"]*[a-z]{3} [a-z]{2})re");
    for (const char* file : {"buy", "close_out", "learn", "option", "order", "prices"}) {
        std::ifstream stream(std::string(TRENCHBOOK_COMMANDS) + "/" + file + ".cpp");
        std::stringstream text;
        text << stream.rdbuf();
        ASSERT_GT(text.str().size(), 1000u) << file;
        EXPECT_FALSE(std::regex_search(text.str(), raw)) << file;
    }
    EXPECT_TRUE(std::regex_search(std::string("throw Refused(\"The job has no name\");"), raw));
}

}  // namespace
}  // namespace trenchbook::sheets
