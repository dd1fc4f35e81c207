// The menu's commands through the C interface: a workbook in as plain values, steps out as JSON.
#include <gtest/gtest.h>

#include "c/asked.h"
#include "catalog_harness.h"

namespace trenchbook::addin::harness {
namespace {

Range table(std::size_t columns, std::vector<Cell> cells) { return {cells.size() / columns, columns, cells}; }
const Range none{0, 0, {}};

// A job of one sheet, Levels, whose table has two ready rows; the first is taken.
std::vector<Value> levels() {
    const Range cells = table(6, {"Point", "Known level",
                                  "Rod",   "Backsight",
                                  "Note",  "Check",  //
                                  "",      "ft",
                                  "ft",    "ft",
                                  "",      "",  //
                                  "",      "",
                                  "",      "",
                                  "",      "",  //
                                  "A",     100.25,
                                  "",      "",
                                  "",      "OK",  //
                                  "",      "",
                                  "",      "",
                                  "",      "",  //
                                  "",      "",
                                  "",      "",
                                  "",      ""});
    return {1.0,
            "Levels",
            1.0,
            cells,
            std::string(18, '0') + "000001" + "000001" + "000000",
            "000000",
            none,
            -1.0,
            table(6, {"table_Levels", 0.0, 0.0, 0.0, 5.0, 5.0}),
            none,
            table(3, {0.0, 0.0, 3.0})};
}

class Ordered {
  public:
    Ordered(const char* command, const std::vector<Value>& values) {
        const Flat flat(values);
        trenchbook_command(command, flat.letters.data(), flat.letters.size(), flat.numbers.data(),
                           flat.numbers.size(), flat.texts.data(), flat.texts.size(), &answer_);
    }
    ~Ordered() { trenchbook_free(&answer_); }
    Ordered(const Ordered&) = delete;
    Ordered& operator=(const Ordered&) = delete;

    int code() const { return answer_.code; }
    std::string said() const { return answer_.code == TRENCHBOOK_OK ? answer_.texts : answer_.sentence; }

  private:
    trenchbook_answer answer_;
};

std::vector<Value> with(std::vector<Value> values, const std::vector<Value>& more) {
    values.insert(values.end(), more.begin(), more.end());
    return values;
}

const Range columns = table(2, {"Point", "P", "Level", "H"});

TEST(CCommands, StepsComeAsData) {
    const Ordered shots("shots", with(levels(), {"P,H\nB \"two\",99.5\n", columns, "shots.csv"}));
    ASSERT_EQ(shots.code(), TRENCHBOOK_OK) << shots.said();
    const std::string said = shots.said();
    EXPECT_NE(said.find(R"("says":{"en":"1 shot brought in from shots.csv.")"), std::string::npos) << said;
    EXPECT_NE(said.find(R"({"do":"put","at":[0,0,4],"rows":[["B \"two\""]]})"), std::string::npos) << said;
    EXPECT_NE(said.find(R"({"do":"put","at":[0,1,4],"rows":[[99.5]]})"), std::string::npos) << said;
}

TEST(CCommands, SheetsStepAsideAsData) {
    const auto sheet = [](const char* name, const Range& cells, const std::string& formulas) {
        return std::vector<Value>{name, 1.0, cells, formulas, std::string(cells.columns, '0'), none, -1.0};
    };
    std::vector<Value> job =
        with({2.0}, sheet("Job", table(2, {"Stepped aside", "|", "Pit", "not needed: no pit"}), "0001"));
    job = with(job, sheet("Pit", table(1, {"a"}), "0"));
    job = with(job, {table(6, {"form_Sheets_needed", 0.0, 0.0, 0.0, 1.0, 1.0}), none, none});
    const Ordered needed("sheets", with(job, {0.0})), every("sheets", with(job, {1.0}));
    ASSERT_EQ(needed.code(), TRENCHBOOK_OK) << needed.said();
    EXPECT_NE(needed.said().find(R"({"do":"show","sheet":1,"visible":0})"), std::string::npos)
        << needed.said();
    EXPECT_NE(needed.said().find(R"({"do":"put","at":[0,1,0],"rows":[["|Pit|"]]})"), std::string::npos)
        << needed.said();
    EXPECT_EQ(every.said().find(R"("do":"show")"), std::string::npos) << every.said();
}

TEST(CCommands, WhatCannotBeDoneIsASentence) {
    const Ordered shots("shots", with(levels(), {"P,H\nB,high\n", columns, "shots.csv"}));
    EXPECT_EQ(shots.code(), TRENCHBOOK_BAD_ARGUMENT);
    EXPECT_NE(shots.said().find("high"), std::string::npos) << shots.said();
    const Ordered prices("prices", with(levels(), levels()));
    EXPECT_EQ(prices.code(), TRENCHBOOK_BAD_ARGUMENT);
    EXPECT_EQ(Ordered("bore", levels()).code(), TRENCHBOOK_NO_FUNCTION);
}

// Each change makes a workbook that is none.
TEST(CCommands, AWorkbookThatIsNoneIsRefused) {
    ASSERT_EQ(Ordered("nextMissing", levels()).code(), TRENCHBOOK_OK)
        << Ordered("nextMissing", levels()).said();
    const std::pair<std::size_t, Value> changes[] = {{0, 2.0},
                                                     {0, -0.5},
                                                     {0, 1e300},
                                                     {1, 3.0},
                                                     {3, "cells"},
                                                     {4, "01"},
                                                     {5, "00000"},
                                                     {6, table(2, {0.0, 0.0})},
                                                     {7, "x"},
                                                     {8, table(6, {"table_Levels", 1.0, 0.0, 0.0, 5.0, 5.0})},
                                                     {8, table(6, {"table_Levels", 0.0, 0.0, 3.0, 5.0, 1.0})},
                                                     {8, table(5, {0.0, 0.0, 0.0, 5.0, 5.0})},
                                                     {8, table(6, {"table_Levels", "a", 0.0, 0.0, 5.0, 5.0})},
                                                     {9, 0.0},
                                                     {10, table(3, {7.0, 0.0, 3.0})}};
    for (const auto& [at, value] : changes) {
        std::vector<Value> values = levels();
        values[at] = value;
        EXPECT_EQ(Ordered("nextMissing", values).code(), TRENCHBOOK_MALFORMED) << "value " << at;
    }
    for (std::size_t kept = 0; kept < levels().size(); ++kept) {
        std::vector<Value> values = levels();
        values.resize(kept);
        EXPECT_EQ(Ordered("nextMissing", values).code(), TRENCHBOOK_MALFORMED) << kept << " values";
    }
    EXPECT_EQ(Ordered("nextMissing", with(levels(), {1.0})).code(), TRENCHBOOK_MALFORMED);
}

}  // namespace
}  // namespace trenchbook::addin::harness
