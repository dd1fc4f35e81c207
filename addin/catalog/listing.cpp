#include "catalog/listing.h"

namespace trenchbook::addin {
namespace {

bool isArray(const Function& function) {
    return function.returns == Returns::NumberBlock || function.returns == Returns::WordBlock;
}

// [x] may be left out, [x=8] with what it then is; a default in words is told beside the argument instead.
std::string inCall(const Argument& argument) {
    if (argument.variadic) return argument.name + "; ...";
    if (!argument.optional) return argument.name;
    const bool words = argument.fallback.find(' ') != std::string::npos;
    const std::string value = argument.fallback.empty() || words ? "" : "=" + argument.fallback;
    return "[" + argument.name + value + "]";
}

std::string callText(const Function& function) {
    std::string text = function.name + "(";
    const char* separator = "";
    for (const Argument& argument : allArguments(function)) {
        text += separator + inCall(argument);
        separator = "; ";
    }
    return text + ")";
}

// The unit of a share is its range, which is told beside it.
Text argumentUnit(const Argument& argument) {
    return argument.measure == Measure::Share ? Text{} : unitText(argument.measure);
}

}  // namespace

Text unitText(Measure measure) {
    const UnitInfo& unit = info(measure);
    if (unit.us.en == unit.metric.en) return unit.us;
    return unit.us + Text{" (metric: ", " (métrico: "} + unit.metric + Text::same(")");
}

std::vector<ListedFunction> listing() {
    std::vector<ListedFunction> listed;
    for (const Family& family : families()) {
        for (const Function& function : family.functions) {
            ListedFunction row{
                .family = family.title,
                .name = function.name,
                .call = callText(function),
                .says = function.says,
                .unit = function.returns == Returns::Number ? unitText(function.measure) : Text{},
                .columns = function.columns,
                .block = isArray(function),
                .source = function.source,
                .example = function.example,
                .arguments = {}};
            for (const Argument& argument : allArguments(function))
                row.arguments.push_back(
                    {.name = argument.name,
                     .says = argument.says,
                     .unit = argumentUnit(argument),
                     .fallback = argument.fallback,
                     .optional = argument.optional,
                     .range = argument.limits ? limitsText(*argument.limits, argument.measure) : Text{}});
            listed.push_back(std::move(row));
        }
    }
    return listed;
}

}  // namespace trenchbook::addin
