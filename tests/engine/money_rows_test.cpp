// Every published row about production, law and learning is read by a test, or it stands here
// with the reason why it is no oracle for anything that is computed.
#include <gtest/gtest.h>

#include <map>
#include <set>
#include <sstream>

#include "reference.h"
#include "trenchbook/money/state_law.h"

namespace trenchbook {
namespace {

// Rows by the last digits of their id.
std::set<int> rowsOf(const std::string& list) {
    std::set<int> all;
    std::istringstream parts(list);
    for (std::string part; parts >> part;) {
        const std::size_t to = part.find('-');
        const int first = std::stoi(part),
                  last = to == std::string::npos ? first : std::stoi(part.substr(to + 1));
        for (int row = first; row <= last; ++row) all.insert(row);
    }
    return all;
}

struct Table {
    std::string file;
    std::string read;                           // by tests beside this one
    std::map<std::string, std::string> others;  // why, and which
};

const Table tables[] = {
    {"30f_production.csv",
     "1-19 21-24 45-48 50-58 60 61 77-80",
     {{"trimming: printed in m3/h, but its numbers are those of m2/h", "26-38 40"},
      {"a bulldozer: no machine of these jobs", "42 44"},
      {"an output without depth and soil, of an examination, one contractor's bid or a public works program",
       "62 63 66-70"},
      {"operators' rules of thumb, their trench and machine not said: machine hours here are common practice, no source",
       "64 65"},
      {"trench width by two forms from memory: widths here are rules that the estimator keeps", "71-76"}}},
    {"30j_contract_money_law.csv",
     "4 18-20 22 24-27 29 30 32-37 40-42 44 46",
     {{"surveys that set nothing: the share of overhead comes from row 4, whose parts rows 1 and 3 are",
       "1 3 5-13 16 17"},
      {"a share times an amount", "15"},
      {"a limit from which a right holds, and one for older buyers from memory: the notice is given to everybody, its days are a rule",
       "28 31"},
      {"hours or a range of days: no number of days that the table of states could hold", "39 45 47 48"},
      {"superseded by row 42", "43"},
      {"from memory alone: the table of states leaves them blank, and a test holds that", "49-56"}}},
    {"30k_regression_shrinkage.csv",
     "1-4 6-15 17-32 34-42 44-62 64-80 82 85-86 88-92 94-98 100-113 120-122",
     {{"what players hit in the rest of the season, and sums over them: the paper judges its method by them, no function does",
       "115 116"},
      {"players whose mean of the first 45 at-bats the collection leaves out", "99 114"},
      {"the paper's way to its factor: here the estimator says how many jobs the start is worth",
       "117-119"}}},
};

int numberOf(const reference::Row& row) { return std::stoi(row.id.substr(row.id.rfind('-') + 1)); }

TEST(MoneyRows, EachIsReadOrNamed) {
    for (const Table& table : tables) {
        std::set<int> named = rowsOf(table.read);
        for (const auto& [why, list] : table.others)
            for (const int row : rowsOf(list))
                if (!named.insert(row).second) ADD_FAILURE() << table.file << " " << row << " twice";
        std::set<int> there;
        for (const reference::Row& row : reference::rows(table.file)) {
            there.insert(numberOf(row));
            EXPECT_TRUE(named.count(numberOf(row)))
                << row.id << " " << row.item << " is neither read nor named";
        }
        for (const int row : named) EXPECT_TRUE(there.count(row)) << table.file << " has no row " << row;
    }
}

// Words of the table of states that hold numbers which no column has; and how many states have a limit at all.
TEST(MoneyRows, WhatTheTableOfStatesSaysInWords) {
    for (const reference::Row& row : reference::rows("30j_contract_money_law.csv")) {
        const StateLaw* alabama = stateLaw("AL");
        if (row.item == "One-call, Alabama: notice before digging, most")
            reference::checkWords(
                "DEPOSIT.LAW", row.item.c_str(),
                std::string(alabama->ticketSource).find("at most 10 working days ahead") == std::string::npos
                    ? ""
                    : "10",
                row.value, row.source.c_str(), row.provenance.c_str());
        if (row.item == "One-call, Alabama: renewal before expiry, least")
            reference::checkWords(
                "DEPOSIT.LAW", row.item.c_str(),
                std::string(alabama->ticketSource).find("renew 2 before it ends") == std::string::npos ? ""
                                                                                                       : "2",
                row.value, row.source.c_str(), row.provenance.c_str());
        if (row.item == "States with a deposit limit, count in 2010") {
            int count = 0;
            for (const StateLaw& law : stateLaws()) count += *law.depositSource != '\0' ? 1 : 0;
            reference::check("DEPOSIT.LAW", row, count);
        }
    }
}

}  // namespace
}  // namespace trenchbook
