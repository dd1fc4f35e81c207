// What a reader of the workbooks can still read: the length and depth of every formula as Calc's edit line shows it,
// and the size of the whole job template.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <sstream>

#include "catalog/function.h"
#include "formula/depends.h"
#include "formula/parse.h"
#include "kit/formulas.h"
#include "kit/layout.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

constexpr std::size_t longest = 300;
constexpr int deepest = 8;
constexpr long mostFormulas = 25000, mostCharacters = 2500000;

int depthOf(const std::string& formula) {
    int depth = 0, reached = 0;
    bool quoted = false;
    for (const char c : formula) {
        if (c == '"') quoted = !quoted;
        if (quoted) continue;
        if (c == '(') reached = std::max(reached, ++depth);
        if (c == ')') --depth;
    }
    return reached;
}

// What a template's formulas come to.
struct Size {
    long formulas = 0, characters = 0;
    std::size_t longest = 0;
    int deepest = 0;
    void add(long cells, const std::string& formula) {
        formulas += cells;
        characters += cells * static_cast<long>(formula.size());
        longest = std::max(longest, formula.size());
        deepest = std::max(deepest, depthOf(formula));
    }
};

using Found = std::map<std::string, std::string>;  // what is over a limit, and how far

// Formulas that the kit itself puts in: units under headings, the sheet's title.
void addOwn(const Sheet& sheet, Size& size) {
    const auto unit = [&](Measure measure, const std::string& fixed) {
        const std::string formula = unitFormula(measure, fixed);
        if (formula.rfind('=', 0) == 0) size.add(1, formula);
    };
    size.add(1, titleFormula(sheet));
    for (const Part& part : sheet.parts) {
        if (const Table* table = std::get_if<Table>(&part))
            for (const Column& column : table->columns) {
                unit(column.measure, column.unit);
                if (const std::string heading = headingCell(column); heading.starts_with('='))
                    size.add(1, heading);
            }
        if (const Form* form = std::get_if<Form>(&part))
            for (const Field& field : form->fields) unit(field.measure, field.unit);
    }
}

// Every formula as the edit line shows it, and how many cells have it; names and choices stand in no cell.
template <class Visit>
Size measure(const Workbook& workbook, const Visit& visit) {
    Size size;
    const Layout layout(workbook);
    forEachFormula(workbook, [&](const FormulaPlace& at) {
        const bool inRows = at.in == FormulaPlace::In::Column;
        const Layout::TablePlace* own = at.table == nullptr ? nullptr : &layout.table(at.table->name);
        // The last ready row has the most digits.
        const std::string made = "=" + layout.expand(at.formula, own, own == nullptr ? 0 : own->lastRow - 1);
        visit(at, made);
        const bool inCells = at.in != FormulaPlace::In::Name && at.in != FormulaPlace::In::Choice;
        size.add(!inCells ? 0 : inRows ? at.table->rows : 1, made);
    });
    for (const Sheet& sheet : workbook.sheets) addOwn(sheet, size);
    return size;
}

Found overLimits(const std::string& book, const Workbook& workbook) {
    Found found;
    const Size size = measure(workbook, [&](const FormulaPlace& at, const std::string& made) {
        const int depth = depthOf(made);
        if (made.size() > longest || depth > deepest)
            found[book + ": " + at.where] =
                std::to_string(made.size()) + " characters, " + std::to_string(depth) + " deep: " + made;
    });
    if (size.formulas > mostFormulas) found[book + ": formulas in all"] = std::to_string(size.formulas);
    if (size.characters > mostCharacters)
        found[book + ": characters in all"] = std::to_string(size.characters);
    return found;
}

bool callsTheAddIn(const Node& node) {
    return (node.is == Node::Is::Call && addin::findFunction(node.text) != nullptr) ||
           std::any_of(node.parts.begin(), node.parts.end(), callsTheAddIn);
}

// The adjusted levels hang on the level book alone and stand before the job: taken for typed ones.
constexpr const char* levels = "levels_numbers";
Workbook withTypedLevels(Workbook workbook) {
    EXPECT_EQ(solvedInput(workbook, levels), std::vector<std::string>{});
    for (Sheet& sheet : workbook.sheets)
        for (Part& part : sheet.parts)
            if (Table* table = std::get_if<Table>(&part); table != nullptr && table->name == "Levels")
                for (Column& column : table->columns)
                    if (column.formula.find(levels) != std::string::npos) column.formula.clear();
    return workbook;
}

// A block that solves the job may not be handed what another block answers; one that only gathers sentences may.
void addSolvedInputs(const std::string& book, const Workbook& workbook, Found& found) {
    for (const Sheet& sheet : workbook.sheets)
        for (const Part& part : sheet.parts) {
            const Block* block = std::get_if<Block>(&part);
            if (block == nullptr || !callsTheAddIn(parseFormula(block->formula))) continue;
            std::string way;
            for (const std::string& step : solvedInput(workbook, block->name))
                way += (way.empty() ? "" : " <- ") + step;
            if (!way.empty()) found[book + ": block " + block->name + " reads an answer"] = way;
        }
}

TEST(FormulaLimits, Hold) {
    for (const Shipped& shipped : shippedWorkbooks()) {
        const Workbook workbook = shipped.make();
        Found found = overLimits(shipped.file, workbook);
        addSolvedInputs(shipped.file,
                        std::string(shipped.file).ends_with("job") ? withTypedLevels(workbook) : workbook,
                        found);
        for (const auto& [where, what] : found) ADD_FAILURE() << where << ": " << what;
    }
}

// A row of docs/limits.md for each template.
std::string inTheDocs() {
    std::string rows;
    for (const Shipped& shipped : shippedWorkbooks()) {
        const Size size = measure(shipped.make(), [](const FormulaPlace&, const std::string&) {});
        rows += std::string("| ") + shipped.file;
        for (const long figure : {size.formulas, size.characters, static_cast<long>(size.longest),
                                  static_cast<long>(size.deepest)})
            rows += " | " + std::to_string(figure);
        rows += " |\n";
    }
    return rows;
}

// The figures of the docs are today's. TRENCHBOOK_WRITE_LIMITS=1 puts them there.
TEST(FormulaLimits, StandInTheDocs) {
    const std::string mark = "|---|---|---|---|---|\n";
    std::stringstream text;
    text << std::ifstream(TRENCHBOOK_LIMITS).rdbuf();
    std::string docs = text.str();
    const std::size_t start = docs.find(mark);
    ASSERT_NE(start, std::string::npos) << "no table in " << TRENCHBOOK_LIMITS;
    const std::size_t first = start + mark.size(), end = docs.find("\n\n", start) + 1;
    const std::string now = inTheDocs();
    if (std::getenv("TRENCHBOOK_WRITE_LIMITS") != nullptr) {
        docs.replace(first, end - first, now);
        std::ofstream out(TRENCHBOOK_LIMITS);
        out << docs;
        ASSERT_TRUE(out.flush()) << "cannot write " << TRENCHBOOK_LIMITS;
    }
    EXPECT_EQ(docs.substr(first, now.size()), now) << "TRENCHBOOK_WRITE_LIMITS=1 writes these figures";
}

TEST(FormulaLimits, BlocksThatSolveAreToldFromThoseThatGather) {
    Workbook workbook;
    Table table{.name = "T", .columns = {{.heading = "A"}}, .rows = 3};
    table.columns[0].formula = "<first.X:1>";
    const Block first{.name = "first", .formula = "RAIN.DEPTH(1;2;3)", .rows = 1, .columns = {{"X"}}};
    const Block solves{.name = "solves", .formula = "RAIN.DEPTH([T.A];2;3)", .rows = 1, .columns = {{"Y"}}};
    const Block gathers{.name = "gathers", .formula = "TEXTJOIN(1;1;[T.A])", .rows = 1, .columns = {{"Z"}}};
    workbook.sheets = {Sheet{.name = "T", .title = "T", .parts = {table}},
                       Sheet{.name = "W", .title = "W", .parts = {first, solves, gathers}, .workings = true}};
    Found found;
    addSolvedInputs("t", workbook, found);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found.begin()->first, "t: block solves reads an answer");
}

// Rows are inserted and sorted where something is typed; there an array formula would refuse it.
TEST(FormulaLimits, BlocksStandOnWorkingsAndOnPapers) {
    for (const Shipped& shipped : shippedWorkbooks())
        for (const Sheet& sheet : shipped.make().sheets) {
            if (sheet.workings) continue;
            bool block = false, typed = false;
            for (const Part& part : sheet.parts) {
                block = block || std::holds_alternative<Block>(part);
                if (const Table* table = std::get_if<Table>(&part))
                    typed = typed || std::any_of(table->columns.begin(), table->columns.end(),
                                                 [](const Column& column) { return isInput(column.kind); });
            }
            EXPECT_FALSE(block && typed) << sheet.name << " has a block beside a table for typing";
        }
}

TEST(FormulaLimits, AreMeasuredAsTheEditLineShowsThem) {
    EXPECT_EQ(depthOf("=A(B(\"(((\");C(D()))"), 3);
    Workbook workbook;
    Table table{.name = "T", .columns = {{.heading = "A"}, {.heading = "B"}}, .rows = 3};
    workbook.sheets = {Sheet{.name = "T", .title = "T", .parts = {table}}};
    std::get<Table>(workbook.sheets[0].parts[0]).columns[1].formula = "\"" + std::string(297, 'x') + "\"";
    EXPECT_TRUE(overLimits("t", workbook).empty()) << "300 with the sign in front";
    std::get<Table>(workbook.sheets[0].parts[0]).columns[1].formula = "\"" + std::string(298, 'x') + "\"";
    EXPECT_EQ(overLimits("t", workbook).count("t: T, column B"), 1u);
    const auto nested = [](int depth) {
        std::string formula = "1";
        for (int i = 0; i < depth; ++i) formula = "ABS(" + formula + ")";
        return formula;
    };
    std::get<Table>(workbook.sheets[0].parts[0]).columns[1].formula = nested(8);
    EXPECT_TRUE(overLimits("t", workbook).empty());
    std::get<Table>(workbook.sheets[0].parts[0]).columns[1].formula = nested(9);
    EXPECT_EQ(overLimits("t", workbook).count("t: T, column B"), 1u);
    std::get<Table>(workbook.sheets[0].parts[0]).columns[1].formula = "1";
    std::get<Table>(workbook.sheets[0].parts[0]).rows = 24999;  // the title is the last one allowed
    EXPECT_TRUE(overLimits("t", workbook).empty());
    std::get<Table>(workbook.sheets[0].parts[0]).rows = 25000;
    EXPECT_EQ(overLimits("t", workbook).count("t: formulas in all"), 1u);
}

}  // namespace
}  // namespace trenchbook::sheets
