// The C interface: the same answers, refusals and sentences as the catalog itself, for every function; what a caller
// can get wrong is refused and nothing else happens.
#include <gtest/gtest.h>

#include <bit>
#include <cmath>
#include <limits>
#include <thread>

#include "c/asked.h"
#include "catalog/host.h"
#include "catalog/tidied.h"
#include "catalog_harness.h"
#include "example_call.h"

namespace trenchbook::addin::harness {
namespace {

std::uint64_t bits(double number) { return std::bit_cast<std::uint64_t>(number); }

// Bit by bit; a cell of a block as every shell hands it out.
void expectSame(const Result& ours, const Asked& asked, const std::string& name) {
    ASSERT_EQ(asked->code, TRENCHBOOK_OK) << name << ": " << asked->sentence;
    if (const double* number = std::get_if<double>(&ours)) {
        ASSERT_EQ(asked->kind, 'n') << name;
        EXPECT_EQ(bits(asked->number), bits(*number)) << name;
    } else if (const std::string* text = std::get_if<std::string>(&ours)) {
        ASSERT_EQ(asked->kind, 't') << name;
        EXPECT_EQ(asked.texts(), std::vector<std::string>{*text}) << name;
    } else if (const Texts* texts = std::get_if<Texts>(&ours)) {
        ASSERT_EQ(asked->kind, 'T') << name;
        EXPECT_EQ(asked->rows, texts->rows()) << name;
        EXPECT_EQ(asked->columns, texts->columns) << name;
        EXPECT_EQ(asked.texts(), texts->items) << name;
    } else {
        const Numbers& block = std::get<Numbers>(ours);
        ASSERT_EQ(asked->kind, 'N') << name;
        ASSERT_EQ(asked->rows, block.rows()) << name;
        ASSERT_EQ(asked->columns, block.columns) << name;
        for (std::size_t i = 0; i < block.items.size(); ++i)
            EXPECT_EQ(bits(asked->cells[i]), bits(tidied(block.items[i]))) << name << ", cell " << i;
    }
}

TEST(CInterface, AnswersEveryExampleAsTheCatalogDoes) {
    trenchbook_set_host(host().c_str());  // the library has a catalog of its own
    for (const Function& function : catalog()) {
        const std::vector<Value> values = exampleOf(function);
        expectSame(call(function, values), Asked(function.name, values), function.name);
    }
}

TEST(CInterface, RefusesInTheCatalogsWords) {
    std::size_t refused = 0;
    for (const Function& function : catalog()) {
        const std::vector<Value> values(allArguments(function).size(), std::string("\xC2\xBF?"));
        const Asked asked(function.name, values);
        try {
            expectSame(call(function, values), asked, function.name);
        } catch (const Error& error) {
            ++refused;
            EXPECT_EQ(asked->code, TRENCHBOOK_BAD_ARGUMENT) << function.name;
            EXPECT_EQ(asked->kind, 0) << function.name;
            EXPECT_EQ(asked->sentence, error.sentence(Language::English)) << function.name;
            EXPECT_EQ(asked->sentence_es, error.sentence(Language::Spanish)) << function.name;
        }
    }
    EXPECT_GT(refused, catalog().size() / 2);
}

TEST(CInterface, TakesNamesAsTheCatalogDoes) {
    EXPECT_NEAR(Asked("PIPE.BORE", {"4 SCH40"})->number, 4.026, 0.0005);  // ASTM D1785
    EXPECT_NEAR(Asked("pipeBore", {"4 SCH40"})->number, 4.026, 0.0005);
    const Asked unknown("PIPE.BOAR", {"4 SCH40"});
    EXPECT_EQ(unknown->code, TRENCHBOOK_NO_FUNCTION);
    EXPECT_STREQ(unknown->sentence, "There is no function PIPE.BOAR.");
    EXPECT_EQ(Asked("", {})->code, TRENCHBOOK_NO_FUNCTION);
}

TEST(CInterface, TellsRowsWithoutANumberByTheirLetters) {
    std::vector<Value> values = exampleOf(*findFunction("LINES.INVERTS"));
    Range& lengths = std::get<Range>(values.at(2));
    lengths.cells.at(0) = std::string("long");
    const Asked asked("LINES.INVERTS", values);
    ASSERT_EQ(asked->code, TRENCHBOOK_OK) << asked->sentence;
    ASSERT_NE(asked->letters, nullptr);
    ASSERT_EQ(std::string(asked->letters).size(), asked->rows * asked->columns);
    EXPECT_EQ(asked->letters[0], 'e');
    EXPECT_EQ(bits(asked->cells[0]) & 0xFFFFFFFF, badArgumentCode);
    EXPECT_EQ(Asked("LINES.INVERTS", exampleOf(*findFunction("LINES.INVERTS")))->letters, nullptr);
}

TEST(CInterface, AnEmptyTextIsAnEmptyCellOnlyInARange) {
    // The levels of the example are a blank cell and 96.50.
    const std::vector<Value> values = exampleOf(*findFunction("LINES.INVERTS"));
    const Flat empty(values);
    const std::size_t level = empty.letters.size() - 2;
    ASSERT_EQ(empty.letters.at(level), 't');
    Flat blank = empty;
    blank.letters.at(level) = '-';
    blank.texts.pop_back();
    const Asked one("LINES.INVERTS", blank), other("LINES.INVERTS", empty);
    ASSERT_EQ(one->code, TRENCHBOOK_OK) << one->sentence;
    ASSERT_EQ(other->code, TRENCHBOOK_OK) << other->sentence;
    for (std::size_t i = 0; i < one->rows * one->columns; ++i)
        EXPECT_EQ(bits(one->cells[i]), bits(other->cells[i])) << i;
    // Alone it is a text: no slope, where a slope may not be left out.
    EXPECT_EQ(Asked("PIPE.CAPACITY", {"4 SDR35", ""})->code, TRENCHBOOK_BAD_ARGUMENT);
}

struct Wrong {
    const char* letters;
    std::vector<double> numbers;
    std::string texts;
};

TEST(CInterface, RefusesWhatDoesNotFitTogether) {
    const std::string one = std::string("4 SDR35") + '\0';
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double infinite = std::numeric_limits<double>::infinity();
    const Wrong all[] = {{"n", {}, ""},
                         {"", {1}, ""},
                         {"t", {}, ""},
                         {"t", {}, "4 SDR35"},
                         {"", {}, one},
                         {"x", {}, ""},
                         {"r", {}, ""},
                         {"r", {1}, ""},
                         {"r", {1, 1}, ""},
                         {"rn", {1, 1}, ""},
                         {"rr", {1, 1, 0, 0}, ""},
                         {"rn", {-1, 1, 5}, ""},
                         {"rn", {0.5, 1}, ""},
                         {"rn", {nan, 1}, ""},
                         {"rn", {1, infinite}, ""},
                         {"rn", {1e300, 1e300}, ""},
                         {"rnn", {2, 2, 1, 1}, ""}};
    for (const Wrong& wrong : all) {
        trenchbook_answer answer;
        EXPECT_EQ(trenchbook_call("PIPE.BORE", wrong.letters, std::string(wrong.letters).size(),
                                  wrong.numbers.data(), wrong.numbers.size(), wrong.texts.data(),
                                  wrong.texts.size(), &answer),
                  TRENCHBOOK_MALFORMED)
            << wrong.letters;
        EXPECT_EQ(std::string(answer.sentence).substr(0, 15), "Malformed call:") << wrong.letters;
        trenchbook_free(&answer);
    }
}

TEST(CInterface, TakesNullWhereNothingIs) {
    trenchbook_answer answer;
    EXPECT_EQ(trenchbook_call("TRENCHBOOK.VERSION", nullptr, 0, nullptr, 0, nullptr, 0, &answer),
              TRENCHBOOK_OK);
    EXPECT_STREQ(answer.texts, TRENCHBOOK_VERSION);
    trenchbook_free(&answer);
    EXPECT_EQ(answer.texts, nullptr);
    trenchbook_free(&answer);
    trenchbook_free(nullptr);
    EXPECT_EQ(trenchbook_call(nullptr, nullptr, 0, nullptr, 0, nullptr, 0, &answer), TRENCHBOOK_NO_FUNCTION);
    trenchbook_free(&answer);
    EXPECT_EQ(trenchbook_call("PIPE.BORE", "n", 1, nullptr, 1, nullptr, 0, &answer), TRENCHBOOK_MALFORMED);
    trenchbook_free(&answer);
    EXPECT_EQ(trenchbook_call("PIPE.BORE", "", 0, nullptr, 0, nullptr, 0, nullptr), TRENCHBOOK_MALFORMED);
}

TEST(CInterface, TellsWhatItIs) {
    EXPECT_EQ(trenchbook_interface(), TRENCHBOOK_INTERFACE);
    EXPECT_STREQ(trenchbook_version(), TRENCHBOOK_VERSION);
    EXPECT_EQ(trenchbook_functions(), catalog().size());
    trenchbook_set_host("a test; shell in C++");
    EXPECT_NE(Asked("TRENCHBOOK.SUPPORT", {}).texts().at(0).find("; a test; shell in C++; "),
              std::string::npos);
    trenchbook_set_host("no office");
}

TEST(CInterface, ServesSeveralThreads) {
    std::vector<std::thread> threads;
    std::vector<std::size_t> right(4, 0);
    for (std::size_t thread = 0; thread < right.size(); ++thread)
        threads.emplace_back([&right, thread] {
            for (const Function& function : catalog()) {
                const std::vector<Value> values = exampleOf(function);
                const Asked asked(function.name, values);
                const Asked again(function.name, values);
                right[thread] += asked->code == TRENCHBOOK_OK && bits(asked->number) == bits(again->number) &&
                                 asked.texts() == again.texts();
            }
        });
    for (std::thread& thread : threads) thread.join();
    for (const std::size_t count : right) EXPECT_EQ(count, catalog().size());
}

}  // namespace
}  // namespace trenchbook::addin::harness
