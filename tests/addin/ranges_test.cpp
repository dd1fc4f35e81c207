// The range that the function reference prints for an argument is the range that is kept: just outside of it the
// function's own example is refused because of that argument, at an end that is included it is not.
#include <cmath>
#include <map>
#include <set>
#include <utility>

#include "catalog_harness.h"
#include "example_call.h"

namespace trenchbook::addin {
namespace {

using Named = std::pair<std::string, std::string>;  // function, argument

bool isNumber(const Argument& argument) {
    // Any number of values of another function are that function's to judge.
    return argument.measure != Measure::Words && argument.measure != Measure::Table && !argument.variadic;
}

enum class At { FirstRow, LastRow };

// The example with this number in the argument's place; in a column, in its first or last row.
std::vector<Value> exampleWith(const Function& function, std::size_t index, double number, At at) {
    std::vector<Value> values = harness::exampleOf(function);
    values.resize(std::max(values.size(), index + 1));
    const bool absent = std::holds_alternative<Nothing>(values[index]);
    if (allArguments(function)[index].column && absent && std::holds_alternative<Range>(values[0]))
        values[index] = harness::column(std::vector<Cell>(std::get<Range>(values[0]).rows));
    if (Range* column = std::get_if<Range>(&values[index]))
        column->cells[at == At::LastRow ? column->cells.size() - 1 : 0] = number;
    else
        values[index] = number;
    return values;
}

struct Answer {
    bool refused = false;  // because of this argument
    std::string told;
};

bool isRefusal(double cell) {
    return std::bit_cast<std::uint64_t>(cell) == std::bit_cast<std::uint64_t>(errorCell(badArgumentCode));
}

// A whole call is refused by an error, a row by Err:502 in cells that the plain example fills, or by its words.
Answer ask(const Function& function, const std::string& argument, const std::vector<Value>& values, At at) {
    const Result plain = call(function, harness::exampleOf(function));
    try {
        const Result result = call(function, values);
        Answer answer;
        const auto eachCell = [&](const auto& block, const auto& tell) {
            if (block.rows() == 0) return;
            const std::size_t row = at == At::LastRow ? block.rows() - 1 : 0;
            for (std::size_t i = row * block.columns; i < (row + 1) * block.columns; ++i)
                tell(i, block.items[i]);
        };
        if (const Numbers* block = std::get_if<Numbers>(&result))
            eachCell(*block, [&](std::size_t i, double cell) {
                const std::vector<double>& before = std::get<Numbers>(plain).items;
                answer.refused |= isRefusal(cell) && !(i < before.size() && isRefusal(before[i]));
                answer.told += std::to_string(cell) + " ";
            });
        if (const Texts* block = std::get_if<Texts>(&result))
            eachCell(*block, [&](std::size_t, const std::string& cell) {
                answer.refused |= cell.find(argument + " is ") != std::string::npos &&
                                  cell.find("allowed: ") != std::string::npos;
                answer.told += cell + " | ";
            });
        return answer;
    } catch (const Error& error) {
        return {error.argument() == argument && error.kind() != Error::Kind::NoConvergence,
                error.sentence(Language::English)};
    }
}

std::vector<double> outside(const Limits& limits, Measure measure) {
    if (measure == Measure::Pipe && limits.least == unlimited) return {4};
    std::vector<double> values;
    if (!limits.oneOf.empty())
        return {limits.oneOf[0] - 0.1, (limits.oneOf[0] + limits.oneOf[1]) / 2, limits.oneOf.back() * 2};
    if (limits.whole) values.push_back(limits.least + 0.5);
    const auto step = [](double end) { return end == 0 ? 1e-6 : std::fabs(end) * 2e-3; };
    if (std::isfinite(limits.least))
        values.push_back(limits.above ? limits.least : limits.least - step(limits.least));
    if (std::isfinite(limits.greatest))
        values.push_back(limits.below ? limits.greatest : limits.greatest + step(limits.greatest));
    return values;
}

std::vector<double> atTheEnds(const Limits& limits) {
    if (!limits.oneOf.empty()) return {limits.oneOf.begin(), limits.oneOf.end()};
    if (!limits.bounded()) return {-1000, 0};
    std::vector<double> values;
    if (std::isfinite(limits.least) && !limits.above) values.push_back(limits.least);
    if (std::isfinite(limits.greatest) && !limits.below) values.push_back(limits.greatest);
    return values;
}

template <class Each>
std::size_t forEveryLimitedArgument(const Each& each) {
    std::size_t limited = 0;
    for (const Function& function : catalog()) {
        const std::vector<Argument> arguments = allArguments(function);
        for (std::size_t i = 0; i < arguments.size(); ++i)
            if (isNumber(arguments[i]) && arguments[i].limits) {
                ++limited;
                each(function, arguments[i], i);
            }
    }
    return limited;
}

TEST(Ranges, EveryNumberHasOneInBothLanguages) {
    for (const Function& function : catalog())
        for (const Argument& argument : allArguments(function)) {
            if (!isNumber(argument)) continue;
            ASSERT_TRUE(argument.limits) << function.name << ": " << argument.name;
            const Text range = limitsText(*argument.limits, argument.measure);
            EXPECT_FALSE(range.en.empty()) << function.name << ": " << argument.name;
            EXPECT_FALSE(range.es.empty()) << function.name << ": " << argument.name;
        }
}

TEST(Ranges, OutsideIsRefusedBecauseOfTheArgument) {
    const std::map<Named, const char*> exceptions = {
        {{"LINES.STAKES", "length"}, "a run without a length has no stakes; LINES.FAULTS tells why"}};
    std::set<Named> used;
    const std::size_t tried =
        forEveryLimitedArgument([&](const Function& function, const Argument& argument, std::size_t index) {
            for (const double value : outside(*argument.limits, argument.measure)) {
                const std::vector<Value> values = exampleWith(function, index, value, At::LastRow);
                const Answer answer = ask(function, argument.name, values, At::LastRow);
                if (exceptions.contains({function.name, argument.name}) && !answer.refused) {
                    used.insert({function.name, argument.name});
                    continue;
                }
                EXPECT_TRUE(answer.refused)
                    << function.name << ", " << argument.name << " " << value << ", printed as "
                    << limitsText(*argument.limits, argument.measure).en << ": " << answer.told;
            }
        });
    EXPECT_EQ(used.size(), exceptions.size());
    EXPECT_GT(tried, 300u);
}

TEST(Ranges, AnIncludedEndIsNotRefusedBecauseOfTheArgument) {
    const std::map<Named, const char*> exceptions = {
        {{"GRADE.PLAN", "grid"}, "nothing fits on the coarsest"},
        {{"PUMP.DUTY", "curve head"}, "0 at the first point, and the head may not rise after it"},
        {{"STICKS.LIST", "stock"}, "one length for each kind: that of the next piece differs"},
        {{"PRICE.CHANCE", "likely"}, "not under low"},
        {{"PRICE.CHANCE", "high"}, "not under likely"},
        {{"PRICE.COST", "likely"}, "not under low"},
        {{"PRICE.COST", "high"}, "not under likely"}};
    std::set<Named> used;
    forEveryLimitedArgument([&](const Function& function, const Argument& argument, std::size_t index) {
        for (const double value : atTheEnds(*argument.limits)) {
            const std::vector<Value> values = exampleWith(function, index, value, At::FirstRow);
            const Answer answer = ask(function, argument.name, values, At::FirstRow);
            if (exceptions.contains({function.name, argument.name}) && answer.refused) {
                used.insert({function.name, argument.name});
                continue;
            }
            EXPECT_FALSE(answer.refused)
                << function.name << ", " << argument.name << " " << value << ", printed as "
                << limitsText(*argument.limits, argument.measure).en << ": " << answer.told;
        }
    });
    EXPECT_EQ(used.size(), exceptions.size());
}

}  // namespace
}  // namespace trenchbook::addin
