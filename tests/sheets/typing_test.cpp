// While a word is typed the office offers one from the same column that begins with it, and Return takes the offer. The
// add-in turns that off where our workbooks are in front (addin/menu/completion.cpp). Without it, no word that a cell offers
// may be the beginning of another that the same column can hold, joined kinds of nodes aside.
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>

#include "kit/formulas.h"
#include "templates/job.h"
#include "trenchbook/core/text.h"

namespace trenchbook::sheets {
namespace {

using Words = std::set<std::string>;

void add(Words& words, const Validity& validity) {
    for (const std::string& word : validity.words) words.insert(nameKey(word));
}

// Where a word of the first is the beginning of one of the second.
std::string begins(const Words& words, const Words& others) {
    std::string said;
    for (const std::string& word : words)
        for (const std::string& longer : others)
            if (longer.size() > word.size() && longer.starts_with(word))
                said += "\"" + word + "\" would become \"" + longer + "\"; ";
    return said;
}

TEST(Typing, NoWordOfAListIsTheBeginningOfAnother) {
    int lists = 0;
    for (const Shipped& shipped : shippedWorkbooks())
        for (const Sheet& sheet : shipped.make().sheets) {
            std::vector<Words> fields;  // of all forms: they share a column, each with one cell
            for (const Part& part : sheet.parts) {
                if (const Form* form = std::get_if<Form>(&part))
                    for (const Field& field : form->fields) {
                        add(fields.emplace_back(), field.validity);
                        if (isInput(field.kind) && !field.value.starts_with('=') &&
                            field.format.as == Format::As::Text && !field.value.empty())
                            fields.back().insert(nameKey(field.value));
                    }
                const Table* table = std::get_if<Table>(&part);
                if (table == nullptr) continue;
                for (const Column& column : table->columns) {
                    Words words;
                    add(words, column.validity);
                    if (column.validity.several)
                        std::erase_if(words, [](const auto& word) { return word.find('+') != word.npos; });
                    lists += !words.empty();
                    EXPECT_EQ(begins(words, words), "") << sheet.name << ", " << column.heading;
                }
            }
            for (const Words& one : fields)
                for (const Words& other : fields)
                    EXPECT_TRUE(&one == &other || begins(one, other).empty())
                        << sheet.name << ": " << begins(one, other);
        }
    EXPECT_GT(lists, 8);
    EXPECT_EQ(begins({"no", "yes"}, {"not needed"}), "\"no\" would become \"not needed\"; ");
}

// The office offers fixed texts alone, and no texts of formulas.
TEST(Typing, HeadingsOverTypedWordsAreFormulas) {
    int headings = 0;
    for (const Shipped& shipped : shippedWorkbooks())
        for (const Sheet& sheet : shipped.make().sheets)
            for (const Part& part : sheet.parts)
                if (const Table* table = std::get_if<Table>(&part))
                    for (const Column& column : table->columns)
                        if (isInput(column.kind) && column.format.as == Format::As::Text) {
                            ++headings;
                            EXPECT_TRUE(headingCell(column).starts_with("=\""))
                                << sheet.name << ", " << column.heading;
                        }
    EXPECT_GT(headings, 30);
    EXPECT_EQ(headingCell({.heading = "Flow", .format = show::number(1)}), "Flow");
}

}  // namespace
}  // namespace trenchbook::sheets
