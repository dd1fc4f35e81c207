// What every function gives for its example and for numbers around it, a line each, to be compared between systems:
//     values >FILE
// Numbers are written with all their digits, refusals as their sentences in both languages. The lines come from the C
// interface, as the shell in Python asks it.
#include <cstdio>
#include <string>
#include <vector>

#include "addin/c/asked.h"
#include "addin/example_call.h"

namespace {

using namespace trenchbook::addin;
using harness::Asked;

std::string number(double value) {
    char text[40];
    std::snprintf(text, sizeof text, "%.17g", value);
    return text;
}

std::string oneLine(std::string text) {
    for (char& c : text)
        if (c == '\n' || c == '\t') c = ' ';
    return text;
}

std::string told(const Asked& asked) {
    if (asked->code != TRENCHBOOK_OK)
        return std::to_string(asked->code) + "\t" + oneLine(asked->sentence) + "\t" +
               oneLine(asked->sentence_es);
    std::string line(1, static_cast<char>(asked->kind));
    line += "\t" + std::to_string(asked->rows) + "x" + std::to_string(asked->columns);
    if (asked->kind == 'n') line += "\t" + number(asked->number);
    for (std::size_t i = 0; asked->kind == 'N' && i < asked->rows * asked->columns; ++i)
        line += asked->letters != nullptr && asked->letters[i] != 'n' ? std::string("\t") + asked->letters[i]
                                                                      : "\t" + number(asked->cells[i]);
    for (const std::string& text : asked.texts()) line += "\t" + oneLine(text);
    return line;
}

void tell(const Function& function, const std::string& how, const std::vector<Value>& values) {
    std::printf("%s\t%s\t%s\n", function.name.c_str(), how.c_str(),
                told(Asked(function.name, values)).c_str());
}

// Each number of the example, alone or in a range, made smaller and larger in turn.
void around(const Function& function, const std::vector<Value>& example) {
    static const double factors[] = {0, 0.01, 0.31, 0.97, 1.0001, 1.9, 17.3, -1};
    for (std::size_t at = 0; at < example.size(); ++at)
        for (const double factor : factors) {
            std::vector<Value> values = example;
            if (double* alone = std::get_if<double>(&values[at])) {
                *alone *= factor;
            } else if (Range* range = std::get_if<Range>(&values[at])) {
                for (Cell& cell : range->cells)
                    if (double* held = std::get_if<double>(&cell)) *held *= factor;
            } else {
                values[at] = "no such thing \xC3\xB1";
            }
            tell(function, std::to_string(at) + " by " + number(factor), values);
        }
}

}  // namespace

int main() {
    for (const Function& function : catalog()) {
        // It names the system and the compiler.
        if (function.name == "TRENCHBOOK.SUPPORT") continue;
        const std::vector<Value> example = harness::exampleOf(function);
        tell(function, "example", example);
        std::vector<Value> metric = example;
        metric.resize(allArguments(function).size());
        for (std::size_t at = 0; at < metric.size(); ++at) {
            if (allArguments(function)[at].name == "units") metric[at] = "metric";
            if (allArguments(function)[at].name == "language") metric[at] = "es";
        }
        tell(function, "metric, Spanish", metric);
        around(function, example);
    }
}
