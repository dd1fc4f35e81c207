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
    Table rules{.name = "Rules", .columns = {{.heading = "Key"}, {.heading = "Value"}}, .rows = 2};
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
    EXPECT_EQ(layout.expand("[#]", &place, 6), "(ROW()-ROW($A$6)+1)");
    EXPECT_EQ(layout.expand("{cover.lawn}", nullptr, 0), "VLOOKUP(\"cover.lawn\";$Rules.$A$6:$B$9;2;0)");
    EXPECT_EQ(layout.expand("\"[Length] {x}\"", &place, 6), "\"[Length] {x}\"");
    EXPECT_THROW(layout.expand("[Depth]", &place, 6), std::logic_error);
    EXPECT_THROW(layout.expand("[Runs.Depth]", nullptr, 0), std::logic_error);
    EXPECT_THROW(layout.expand("[Length]", nullptr, 0), std::logic_error);
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
