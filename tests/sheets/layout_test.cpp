// The workbooks' description: every formula names columns that exist, every name it uses is defined, and its
// parentheses and quotes close. No office is needed.
#include "kit/layout.h"

#include <gtest/gtest.h>

#include <set>

#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

// Depth of open parentheses outside quotes at the end, or -1 where one closes too early.
int openParentheses(const std::string& formula) {
    int depth = 0;
    bool quoted = false;
    for (char c : formula) {
        if (c == '"') quoted = !quoted;
        if (quoted) continue;
        if (c == '(') ++depth;
        if (c == ')' && --depth < 0) return -1;
    }
    return quoted ? -1 : depth;
}

void expectWellFormed(const std::string& where, const std::string& formula) {
    EXPECT_EQ(openParentheses(formula), 0) << where << ": " << formula;
}

TEST(Layout, NamesColumns) {
    EXPECT_EQ(columnName(0), "A");
    EXPECT_EQ(columnName(25), "Z");
    EXPECT_EQ(columnName(26), "AA");
    EXPECT_EQ(columnName(701), "ZZ");
    EXPECT_EQ(columnName(702), "AAA");
}

TEST(Layout, PutsAddressesInPlaceOfHeadings) {
    Table rules{.name = "Rules",
                .columns = {{.heading = "Key"}, {.heading = "Value"}},
                .rows = 2,
                .content = {{"cover.lawn", "12"}, {"cover.bed", "8"}}};
    Table runs{.name = "Runs", .columns = {{.heading = "From"}, {.heading = "Length"}}, .rows = 3};
    Workbook workbook;
    workbook.sheets = {Sheet{.name = "Rules", .parts = {rules}}, Sheet{.name = "Close-out", .parts = {runs}}};
    const Layout layout(workbook);
    const Layout::TablePlace& place = layout.table("Runs");
    // Title, purpose, a blank row, headings, units: the thin row is the sixth, the closing row three below.
    EXPECT_EQ(place.firstRow, 5);
    EXPECT_EQ(place.lastRow, 9);
    EXPECT_EQ(layout.columnRange("Runs", "Length", "Length"), "$'Close-out'.$B$6:$B$10");
    EXPECT_EQ(layout.expand("[Length]+[^Length]", &place, 6), "$B7+$B6");
    EXPECT_EQ(layout.expand("SUM([Runs.Length])", nullptr, 0), "SUM($'Close-out'.$B$6:$B$10)");
    EXPECT_EQ(layout.expand("[#]", &place, 6), "runs_row");
    EXPECT_EQ(layout.expand("{cover.lawn}", nullptr, 0), "rule_cover_lawn");
    EXPECT_THROW(layout.expand("{cover.roof}", nullptr, 0), std::logic_error);
    EXPECT_EQ(layout.expand("\"[Length] {x}\"", &place, 6), "\"[Length] {x}\"");
    EXPECT_THROW(layout.expand("[Depth]", &place, 6), std::logic_error);
    EXPECT_THROW(layout.expand("[Runs.Depth]", nullptr, 0), std::logic_error);
    EXPECT_THROW(layout.expand("[Length]", nullptr, 0), std::logic_error);
}

// Two tables with blocks on a sheet of workings.
Workbook withBlocks(const std::string& flowFormula) {
    Table runs{.name = "Bill runs",
               .columns = {{.heading = "Length"}, {.heading = "Flow", .formula = flowFormula}},
               .rows = 3,
               .handedFrom = "Length",
               .handedTo = "Length"};
    Table nodes{.name = "Nodes", .columns = {{.heading = "Node"}}, .rows = 2};
    Table rules{.name = "Rules",
                .columns = {{.heading = "Key"}, {.heading = "Value"}},
                .rows = 1,
                .content = {{"cover.lawn", "12"}}};
    const auto block = [](const char* name, const char* table, std::vector<BlockColumn> columns) {
        return Block{.name = name, .formula = "1", .table = table, .columns = std::move(columns)};
    };
    Workbook workbook;
    workbook.sheets = {Sheet{.name = "Lines", .parts = {runs}},
                       Sheet{.name = "Points", .parts = {nodes, rules}},
                       Sheet{.name = "Workings",
                             .parts = {block("runs_numbers", "Bill runs", {{"Flow"}, {"Invert up"}}),
                                       block("runs_text", "Bill runs", {{"Flow"}, {"State"}}),
                                       block("nodes_numbers", "Nodes", {{"Turn"}})},
                             .workings = true}};
    return workbook;
}

TEST(Layout, PutsCellsOfBlocksInPlaceOfTheirHeadings) {
    const Workbook workbook = withBlocks("<Invert up>*{cover.lawn}");
    const Layout layout(workbook);
    const Layout::TablePlace& place = layout.table("Bill runs");
    EXPECT_EQ(layout.expand("<Invert up>", &place, 6), "INDEX(runs_numbers;bill_runs_row;2)");
    EXPECT_EQ(layout.expand("<runs_text.Flow>", &place, 6), "INDEX(runs_text;bill_runs_row;1)");
    EXPECT_EQ(layout.expand("<nodes_numbers.Turn>", &place, 6), "INDEX(nodes_numbers;bill_runs_row;1)");
    EXPECT_EQ(layout.expand("SUM(<runs_numbers.Flow:*>)", nullptr, 0), "SUM(INDEX(runs_numbers;0;1))");
    EXPECT_EQ(layout.expand("<runs_numbers.Invert up:3>", nullptr, 0), "INDEX(runs_numbers;3;2)");
    EXPECT_EQ(layout.expand("IF([Length]<5;[Length]>3;[Length]<>4)", &place, 6), "IF($A7<5;$A7>3;$A7<>4)");
    EXPECT_EQ(layout.expand("A1<B1;B2>\"<Flow>\"", &place, 6), "A1<B1;B2>\"<Flow>\"");
    EXPECT_THROW(layout.expand("<Depth>", &place, 6), std::logic_error);
    EXPECT_THROW(layout.expand("<Flow>", &place, 6), std::logic_error) << "in two blocks of this table";
    EXPECT_THROW(layout.expand("<Turn>", &place, 6), std::logic_error) << "of another table's block";
    EXPECT_THROW(layout.expand("<Invert up>", nullptr, 0), std::logic_error);
    EXPECT_THROW(layout.expand("<runs_numbers.Flow>", nullptr, 0), std::logic_error);
    // The names that these formulas read, and no others.
    const std::map<std::string, std::string> expected = {
        {"bill_runs_in",
         "IF(ISERROR(SUM($Lines.$A$4:$A$10));IFERROR($Lines.$A$4:$A$10;\"\u27E8error\u27E9\");$Lines.$A$4:$A$10)"},
        {"bill_runs_row", "ROW()-ROW($Lines.$A$6)+1"},
        {"rule_cover_lawn", "VLOOKUP(\"cover.lawn\";$Points.$A$13:$B$15;2;0)"}};
    EXPECT_EQ(layout.names(), expected);
}

TEST(Layout, NamesTheCellWhoseFormulaIsWrong) {
    for (const char* formula : {"<Depth>", "<Flow>", "[Depth]", "{cover.roof}", "<runs_numbers.Depth>"}) {
        const Workbook workbook = withBlocks(formula);
        try {
            const Layout layout(workbook);
            FAIL() << formula << " was taken";
        } catch (const std::logic_error& error) {
            const std::string told = error.what();
            EXPECT_NE(told.find("Lines, column Flow"), std::string::npos) << told;
            EXPECT_NE(told.find(formula), std::string::npos) << told;
        }
    }
}

TEST(Layout, NamesTheChartWhoseColumnIsUnknown) {
    Workbook workbook = withBlocks("1");
    Chart chart{.title = "Fall"};
    chart.series = {{.table = "Bill runs", .x = "Length", .y = "Flow", .colour = 0}};
    workbook.sheets[1].parts.push_back(chart);
    EXPECT_NO_THROW(Layout{workbook});
    std::get<Chart>(workbook.sheets[1].parts.back()).series[0].y = "Depth";
    try {
        const Layout layout(workbook);
        FAIL() << "an unknown column was taken";
    } catch (const std::logic_error& error) {
        EXPECT_NE(std::string(error.what()).find("Points, chart Fall"), std::string::npos) << error.what();
    }
}

TEST(Layout, RefusesBlocksThatCannotBeRead) {
    Workbook twice = withBlocks("1");
    std::get<Block>(twice.sheets[2].parts[0]).columns = {{"Flow"}, {"Flow"}};
    EXPECT_THROW(Layout{twice}, std::logic_error);
    Workbook sameName = withBlocks("1");
    std::get<Block>(sameName.sheets[2].parts[1]).name = "runs_numbers";
    EXPECT_THROW(Layout{sameName}, std::logic_error);
    Workbook flat = withBlocks("1");
    std::get<Block>(flat.sheets[2].parts[0]).table = "";
    EXPECT_THROW(Layout{flat}, std::logic_error) << "neither a table nor rows of its own";
    Workbook mixed = withBlocks("1");
    mixed.sheets[2].parts.push_back(Paragraphs{.lines = {"words"}});
    EXPECT_THROW(Layout{mixed}, std::logic_error) << "words among workings";
}

TEST(Layout, PutsABlockIntoTheFlowOfAPaper) {
    Workbook workbook = withBlocks("1");
    workbook.sheets[0].parts.insert(
        workbook.sheets[0].parts.begin(),
        Block{.name = "cut_list", .formula = "1", .rows = 4, .columns = {{"Stick"}}});
    const Layout layout(workbook);
    const Placed& block = layout.parts(0)[0];
    EXPECT_EQ(block.at.row, 3);
    EXPECT_EQ(block.firstRow, 5) << "under headings and units";
    EXPECT_EQ(block.lastRow, 8);
    EXPECT_EQ(layout.table("Bill runs").headingRow, 10) << "a blank row between";
    EXPECT_EQ(layout.parts(2)[0].lastRow - layout.parts(2)[0].firstRow + 1, 3 + 2 + workbook.blockSpare);
}

TEST(ShippedWorkbooks, EveryFormulaIsWellFormed) {
    for (const Shipped& shipped : shippedWorkbooks()) {
        const Workbook workbook = shipped.make();
        const Layout layout(workbook);
        for (const Sheet& sheet : workbook.sheets) {
            for (const Part& part : sheet.parts) {
                if (const Table* table = std::get_if<Table>(&part)) {
                    const Layout::TablePlace& place = layout.table(table->name);
                    for (const Column& column : table->columns)
                        expectWellFormed(sheet.name + "/" + column.heading,
                                         layout.expand(column.formula, &place, place.firstRow + 1));
                } else if (const Form* form = std::get_if<Form>(&part)) {
                    for (const Field& field : form->fields)
                        if (field.value.rfind("=", 0) == 0)
                            expectWellFormed(sheet.name + "/" + field.label,
                                             layout.expand(field.value, nullptr, 0));
                } else if (const Block* block = std::get_if<Block>(&part)) {
                    expectWellFormed(block->name, layout.expand(block->formula, nullptr, 0));
                } else if (const Paragraphs* text = std::get_if<Paragraphs>(&part)) {
                    for (const std::string& line : text->lines)
                        if (line.rfind("=", 0) == 0)
                            expectWellFormed(sheet.name, layout.expand(line, nullptr, 0));
                }
            }
        }
    }
}

TEST(ShippedWorkbooks, NoHeadingOrNameStandsTwice) {
    for (const Shipped& shipped : shippedWorkbooks()) {
        std::set<std::string> sheets, names;
        for (const Sheet& sheet : shipped.make().sheets) {
            EXPECT_TRUE(sheets.insert(sheet.name).second) << sheet.name;
            for (const Part& part : sheet.parts) {
                if (const Table* table = std::get_if<Table>(&part)) {
                    std::set<std::string> headings;
                    for (const Column& column : table->columns)
                        EXPECT_TRUE(headings.insert(column.heading).second)
                            << sheet.name << "/" << column.heading;
                } else if (const Form* form = std::get_if<Form>(&part)) {
                    for (const Field& field : form->fields)
                        if (!field.name.empty()) {
                            EXPECT_TRUE(names.insert(field.name).second) << field.name;
                        }
                }
            }
        }
    }
}

}  // namespace
}  // namespace trenchbook::sheets
