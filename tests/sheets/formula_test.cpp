// Formulas as trees: what is read, what is refused, and what a block depends on.
#include <gtest/gtest.h>

#include <stdexcept>

#include "formula/check.h"
#include "formula/depends.h"
#include "kit/layout.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

std::string faultOf(const std::string& formula) {
    try {
        checkFormula(parseFormula(formula), {"units", "runs_in"});
    } catch (const std::logic_error& error) {
        return error.what();
    }
    return "";
}

TEST(Formula, IsReadIntoATree) {
    const Node tree = parseFormula("IF([Drop]<{cover.lawn};-<Invert up>%&\"a\"\"b\";SUM(units;;{1;-2}))");
    ASSERT_EQ(tree.is, Node::Is::Call);
    ASSERT_EQ(tree.parts.size(), 3u);
    EXPECT_EQ(tree.parts[0].text, "<");
    EXPECT_EQ(tree.parts[0].parts[0].is, Node::Is::Table);
    EXPECT_EQ(tree.parts[0].parts[1].is, Node::Is::Rule);
    EXPECT_EQ(tree.parts[1].parts[1].text, "a\"b");
    const Node& sign = tree.parts[1].parts[0];
    EXPECT_EQ(sign.parts[0].parts[0].is, Node::Is::Block);
    EXPECT_EQ(sign.parts[0].parts[0].text, "Invert up");
    const Node& sum = tree.parts[2];
    EXPECT_EQ(sum.parts[0].is, Node::Is::Name);
    EXPECT_EQ(sum.parts[1].is, Node::Is::Missing);
    EXPECT_EQ(sum.parts[2].is, Node::Is::Array);
    EXPECT_EQ(parseFormula("TRUE()").parts.size(), 0u);
}

TEST(Formula, OfWrongFormIsRefused) {
    for (const char* wrong :
         {"", "1+", "(1", "1)", "SUM(1;2", "\"open", "[Length", "1 2", "IF(1;;", "+", "{1;2"})
        EXPECT_THROW(parseFormula(wrong), std::logic_error) << wrong;
}

TEST(Formula, CallsAreCheckedAgainstTheFunctionsThatThereAre) {
    for (const char* right :
         {"PIPE.BORE([Pipe];units)", "PIPE.CAPACITY(\"4 SDR35\";\"1%\";;;units)", "IF(units=\"metric\";1;2)",
          "RUN.SLOPE([Length];[Invert up];[Invert down];units)", "TAPE.FEET(\"5' 6\"\"\")",
          "LINES.FLOW(INDEX(runs_in;0;2);[Runs.To];[Water.Node];[Water.Flow];units)", "SUM($B$5:$B$9)"})
        EXPECT_EQ(faultOf(right), "") << right;
    EXPECT_EQ(faultOf("PIPE.BOER([Pipe])"), "there is no function PIPE.BOER");
    EXPECT_EQ(faultOf("LET(a;1)"), "there is no function LET");
    EXPECT_EQ(faultOf("XLOOKUP(1;[A.B];[A.C])"), "there is no function XLOOKUP") << "Calc 7.4 has none";
    EXPECT_EQ(faultOf("pipe.bore([Pipe])"), "there is no function pipe.bore");
    EXPECT_EQ(faultOf("IFERROR([A])"), "IFERROR takes 2 arguments, not 1");
    EXPECT_EQ(faultOf("TODAY(1)"), "TODAY takes 0 arguments, not 1");
    EXPECT_NE(faultOf("RUN.SLOPE([Length])").find("RUN.SLOPE takes"), std::string::npos);
    EXPECT_NE(faultOf("PIPE.BORE()"), "");
    EXPECT_NE(faultOf("PIPE.BORE([Pipe];units;1;2;3)"), "");
    EXPECT_EQ(faultOf("1+unit"), "nothing is named unit");
}

TEST(Formula, ArgumentsPlainlyOfTheWrongKindAreRefused) {
    EXPECT_NE(faultOf("LINES.FLOW([From];[Runs.To];[Water.Node];[Water.Flow])").find("asks for a column"),
              std::string::npos);
    EXPECT_NE(faultOf("LINES.FLOW(\"A\";[Runs.To];[Water.Node];[Water.Flow])").find("asks for a column"),
              std::string::npos);
    EXPECT_NE(faultOf("PIPE.FILL([Pipe];[Slope];\"much\")").find("asks for a number"), std::string::npos);
    EXPECT_EQ(faultOf("PIPE.FILL([Pipe];[Slope];\"12\")"), "") << "a number typed as text is one";
    EXPECT_NE(faultOf("PIPE.BORE([Pipe];3)").find("asks for words"), std::string::npos);
}

// runs_numbers -> runs_in -> Length is typed; levels reads a column that a name takes from runs_numbers.
Workbook chained(const std::string& lengthFormula) {
    const Table runs{.name = "Runs",
                     .columns = {{.heading = "Length", .kind = Kind::Measured, .formula = lengthFormula},
                                 {.heading = "Flow", .formula = "<Carried>"},
                                 {.heading = "Water", .formula = "half*2"}},
                     .handedFrom = "Length",
                     .handedTo = "Length"};
    const Form job{.name = "Job",
                   .fields = {{.label = "Rain", .name = "rain", .value = "=MAX([Runs.Flow])"}}};
    Workbook workbook;
    workbook.sheets = {Sheet{.name = "Runs", .parts = {runs}}, Sheet{.name = "Job", .parts = {job}},
                       Sheet{.name = "Workings",
                             .parts = {Block{.name = "runs_numbers",
                                             .formula = "runs_in*2",
                                             .table = "Runs",
                                             .columns = {{"Carried"}}},
                                       Block{.name = "levels",
                                             .formula = "[Runs.Water]",
                                             .table = "Runs",
                                             .columns = {{"Level"}}}},
                             .workings = true}};
    workbook.names["half"] = "rain/2";
    return workbook;
}

TEST(Dependencies, AreFollowedThroughSheetsFieldsAndNames) {
    const Workbook clean = chained("");
    EXPECT_EQ(solvedInput(clean, "runs_numbers"), std::vector<std::string>{});
    const std::vector<std::string> way = {"levels",    "Runs, column Water", "half",
                                          "Job, Rain", "Runs, column Flow",  "runs_numbers"};
    EXPECT_EQ(solvedInput(clean, "levels"), way);
    const std::vector<std::string> circle = {"runs_numbers", "Runs, column Length", "Runs, column Flow",
                                             "runs_numbers"};
    EXPECT_EQ(solvedInput(chained("[Flow]"), "runs_numbers"), circle);
    EXPECT_THROW(solvedInput(clean, "runs"), std::logic_error);
}

// Another table on the sheet of Runs has a column Length too, which an answer fills.
TEST(Dependencies, ColumnsOfOneHeadingAreTwoInTwoTables) {
    Workbook workbook = chained("");
    const Table shown{.name = "Shown",
                      .columns = {{.heading = "Length", .formula = "<runs_numbers.Carried>"}}};
    workbook.sheets[0].parts.push_back(shown);
    EXPECT_EQ(solvedInput(workbook, "runs_numbers"), std::vector<std::string>{});
    workbook.names["half"] = "MAX([Shown.Length])";
    const std::vector<std::string> way = {"levels", "Runs, column Water", "half",
                                          "Runs, Shown, column Length", "runs_numbers"};
    EXPECT_EQ(solvedInput(workbook, "levels"), way);
}

}  // namespace
}  // namespace trenchbook::sheets
