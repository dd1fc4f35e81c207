// Comma-separated values as people and spreadsheets write them (RFC 4180 and its everyday exceptions).
#include "jobbook/csv.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

namespace {

using namespace trenchbook::sheets;
using Lines = std::vector<std::vector<std::string>>;

Lines texts(std::string_view bytes) {
    Lines all;
    for (const csv::Row& row : csv::read(bytes)) {
        auto& line = all.emplace_back();
        for (const csv::Field& field : row) line.push_back(field.text);
    }
    return all;
}

void refuses(std::string_view bytes, int line, int column, const std::string& word) {
    try {
        csv::read(bytes);
        ADD_FAILURE() << "taken: " << bytes;
    } catch (const csv::Fault& fault) {
        EXPECT_EQ(fault.line, line) << bytes;
        EXPECT_EQ(fault.column, column) << bytes;
        EXPECT_NE(std::string(fault.what()).find(word), std::string::npos) << fault.what();
    }
}

TEST(Csv, FieldsRowsAndLineEnds) {
    const Lines expected = {{"From", "To"}, {"A1", "A2"}};
    EXPECT_EQ(texts("From,To\nA1,A2\n"), expected);
    EXPECT_EQ(texts("From,To\nA1,A2"), expected);
    EXPECT_EQ(texts("From,To\r\nA1,A2\r\n"), expected);
    EXPECT_EQ(texts("From,To\rA1,A2\r"), expected);
    EXPECT_EQ(texts("\uFEFFFrom,To\nA1,A2\n"), expected);
    EXPECT_EQ(texts(" From ,\tTo\n A1 , A2 \n"), expected);
}

TEST(Csv, RowsWithoutTextAreLeftOut) {
    EXPECT_EQ(texts("a,b\n\n,\n  , \n1,2\n\n"), (Lines{{"a", "b"}, {"1", "2"}}));
    EXPECT_TRUE(texts("").empty());
    EXPECT_TRUE(texts("\xEF\xBB\xBF").empty());
}

// Examples of RFC 4180, section 2, rules 5 to 7.
TEST(Csv, QuotedFieldsOfTheStandard) {
    EXPECT_EQ(texts("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx"),
              (Lines{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
    EXPECT_EQ(texts("\"aaa\",\"b\r\nbb\",\"ccc\""), (Lines{{"aaa", "b\nbb", "ccc"}}));
    EXPECT_EQ(texts("\"aaa\",\"b\"\"bb\",\"ccc\""), (Lines{{"aaa", "b\"bb", "ccc"}}));
}

TEST(Csv, TapeReadingsNeedNoQuotes) {
    EXPECT_EQ(texts("5' 6-1/2\",4 SDR35\n"), (Lines{{"5' 6-1/2\"", "4 SDR35"}}));
    EXPECT_EQ(texts("\" kept blanks \",x\n"), (Lines{{" kept blanks ", "x"}}));
}

TEST(Csv, EveryFieldKnowsItsPlace) {
    const auto rows = csv::read("a,b\n\n\"one\ntwo\",x\nlast,y\n");
    ASSERT_EQ(rows.size(), 3u);
    EXPECT_EQ(rows[1][0].line, 3);
    EXPECT_EQ(rows[1][1].line, 4);
    EXPECT_EQ(rows[1][1].column, 2);
    EXPECT_EQ(rows[2][0].line, 5);
}

TEST(Csv, WhatCannotBeReadIsNamedWithItsPlace) {
    refuses("a,b\n1,\"open\n", 2, 2, "never closed");
    refuses("a,b\n\"1\"2,3\n", 2, 1, "closing quote");
    refuses("a,b\n1,caf\xE9\n", 2, 2, "UTF-8");      // Latin-1
    refuses("a,\xC0\x80\n", 1, 2, "UTF-8");          // overlong
    refuses("a,\xED\xA0\x80\n", 1, 2, "UTF-8");      // a surrogate
    refuses("a,\xF4\x90\x80\x80\n", 1, 2, "UTF-8");  // beyond Unicode
    refuses(std::string_view("a,b\0c\n", 6), 1, 2, "zero byte");
}

TEST(Csv, WrittenTextIsReadAsItWas) {
    const bool held = rc::check("read(write(x)) is x", [] {
        const auto letters =
            rc::gen::container<std::string>(rc::gen::elementOf(std::string("aZ09 \t,\"'\n/:.%-")));
        const auto rows = *rc::gen::container<Lines>(
            rc::gen::nonEmpty(rc::gen::container<std::vector<std::string>>(letters)));
        Lines shown;  // rows without text are left out, blanks alone are kept by their quotes
        for (const auto& row : rows)
            if (std::any_of(row.begin(), row.end(), [](const std::string& text) { return !text.empty(); }))
                shown.push_back(row);
        RC_ASSERT(texts(csv::write(rows)) == shown);
    });
    EXPECT_TRUE(held);
}

}  // namespace
