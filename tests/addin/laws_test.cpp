// Laws of every function, tried on its own example: it answers, what is left out is what the help says, and a refusal
// names an argument of the function that was called.
#include <optional>
#include <set>

#include "catalog/arguments.h"
#include "catalog_harness.h"
#include "example_call.h"

namespace trenchbook::addin {
namespace {

using harness::exampleOf, harness::Typed;

// What the help writes for an argument that is left out: a text in quotes, a number, or a number with its US unit and
// perhaps the metric one after it. Nothing where it tells it in words.
std::optional<Value> fallbackOf(const Argument& argument) {
    Typed typed(argument.fallback);
    const Cell cell = typed.cell();
    const std::string& unit = info(argument.measure).us.en;
    std::string rest = typed.rest();
    if (!unit.empty() && rest.starts_with(unit)) {
        rest.erase(0, unit.size());
        if (rest.starts_with(" (") || rest.starts_with(", ")) rest.clear();
    }
    if (std::holds_alternative<Nothing>(cell) || !rest.empty()) return std::nullopt;
    return Typed::value(cell);
}

// Bits, so that a cell's error is equal to itself.
std::string written(const Result& result) {
    std::string all;
    const auto add = [&](double number) {
        all += std::to_string(std::bit_cast<std::uint64_t>(number)) + " (" + std::to_string(number) + ") ";
    };
    if (const double* number = std::get_if<double>(&result)) add(*number);
    if (const std::string* text = std::get_if<std::string>(&result)) all += *text;
    if (const Numbers* block = std::get_if<Numbers>(&result))
        for (double item : block->items) add(item);
    if (const Texts* block = std::get_if<Texts>(&result))
        for (const std::string& item : block->items) all += item + "|";
    return all;
}

TEST(FunctionLaws, TheExampleHasAnAnswer) {
    for (const Function& function : catalog())
        EXPECT_EQ(why(function, exampleOf(function), Language::English), "OK") << function.example;
}

TEST(FunctionLaws, WhatIsLeftOutIsWhatTheHelpSays) {
    std::size_t compared = 0;
    for (const Function& function : catalog()) {
        const std::vector<Argument> arguments = allArguments(function);
        for (std::size_t i = 0; i < arguments.size(); ++i) {
            const std::optional<Value> fallback = fallbackOf(arguments[i]);
            if (!fallback) continue;
            std::vector<Value> values = exampleOf(function);
            values.resize(std::max(values.size(), i + 1));
            values[i] = Nothing{};
            const std::string without = written(call(function, values));
            values[i] = *fallback;
            EXPECT_EQ(written(call(function, values)), without)
                << function.example << " with " << arguments[i].name << " " << arguments[i].fallback;
            ++compared;
        }
    }
    EXPECT_GT(compared, 60u);
}

TEST(FunctionLaws, ARefusalNamesAnArgumentOfTheFunction) {
    const std::vector<Value> bad = {-1.0, 0.0, 1.5, 101.0, 1e7, "no such word"};
    std::size_t refused = 0;
    for (const Function& function : catalog()) {
        if (function.name.starts_with("TRENCHBOOK.")) continue;
        const std::vector<Argument> arguments = allArguments(function);
        std::set<std::string> names;
        for (const Argument& argument : arguments) names.insert(argument.name);
        const std::vector<Value> example = exampleOf(function);
        for (std::size_t i = 0; i < arguments.size(); ++i)
            for (const Value& wrong : bad) {
                std::vector<Value> values = example;
                values.resize(std::max(values.size(), i + 1));
                values[i] = wrong;
                try {
                    call(function, values);
                } catch (const Error& error) {
                    ++refused;
                    EXPECT_TRUE(names.contains(error.argument()))
                        << function.name << ", " << arguments[i].name << " " << asTyped(wrong).en << ": "
                        << error.sentence(Language::English);
                    EXPECT_NE(error.sentence(Language::English), error.sentence(Language::Spanish));
                }
            }
    }
    EXPECT_GT(refused, 500u);
}

// What an argument is asked for when something else stands there, in the words of a user.
TEST(FunctionLaws, WhatIsAskedForInBothLanguages) {
    const Range two = harness::column({1.0, 2.0});
    Range wide = two;
    wide.rows = 1, wide.columns = 2;
    const struct {
        const char* function;
        std::vector<Value> values;
        const char *english, *spanish;
    } cases[] = {
        {"PIPE.CAPACITY",
         {two, 0.01},
         "pipe is a range of 2 x 1; allowed: a single cell.",
         "se admite: una sola celda."},
        {"PIPE.CAPACITY",
         {"4 SDR35", two},
         "slope is a range of 2 x 1; allowed: a single cell.",
         "se admite: una sola celda."},
        {"SURFACE.COEFFICIENT",
         {two},
         "surface is a range of 2 x 1; allowed: a single cell.",
         "se admite: una sola celda."},
        {"SURFACE.COEFFICIENT", {}, "surface is left out; allowed: text.", "se admite: texto."},
        {"PIPE.CAPACITY",
         {},
         "pipe is left out; allowed: a stock name such as 4 SDR35, or a bore.",
         "se admite: un nombre como 4 SDR35, o un diámetro interior."},
        {"STICKS.COUNT",
         {wide, 20.0},
         "pieces is a range of 1 x 2; allowed: one column.",
         "se admite: una columna."},
        {"JOB.RUNS",
         {},
         "runs is blank; allowed: a range with headings.",
         "se admite: un rango con encabezados."},
        {"PIPE.SLOPE",
         {"4 SDR35", "much"},
         "flow is \"much\"; allowed: a number in gpm.",
         "se admite: un número en gpm."},
        {"PIPE.HOLDS",
         {"4 SDR35", "far", "metric"},
         "length is \"far\"; allowed: a length in m, such as 3.5.",
         "se admite: una longitud en m, como 3.5."},
    };
    for (const auto& one : cases) {
        const Function& function = *findFunction(one.function);
        EXPECT_EQ(why(function, one.values, Language::English), one.english) << one.function;
        EXPECT_TRUE(why(function, one.values, Language::Spanish).ends_with(one.spanish)) << one.spanish;
    }
}

}  // namespace
}  // namespace trenchbook::addin
