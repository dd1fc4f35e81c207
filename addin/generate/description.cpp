// functions.json: what a program that calls the functions through the office needs to know. The office tests
// read it.
#include <cmath>

#include "generate/outputs.h"
#include "generate/signature.h"

namespace trenchbook::addin {
namespace {

std::string quoted(const std::string& text) {
    std::string out = "\"";
    for (char c : text) {
        if (c == '"' || c == '\\') out += '\\';
        if (c == '\n') {
            out += "\\n";
        } else {
            out += c;
        }
    }
    return out + "\"";
}

const char* kind(const Argument& argument) {
    switch (argument.measure) {
        case Measure::Words:
            return "words";
        case Measure::Table:
            return "table";
        case Measure::Pipe:
            return "pipe";
        case Measure::Slope:
            return "slope";
        default:
            return "number";
    }
}

const char* kind(Returns returns) {
    switch (returns) {
        case Returns::Number:
            return "number";
        case Returns::Words:
            return "words";
        case Returns::NumberBlock:
            return "numbers";
        case Returns::WordBlock:
            return "texts";
    }
    return "";
}

std::string flag(const char* name, bool value) {
    return value ? std::string(", \"") + name + "\": true" : "";
}

// Values just outside the argument's limits, for tests.
std::string refused(const std::optional<Limits>& limits) {
    if (!limits || !limits->bounded()) return "";
    std::string text;
    const auto add = [&](double value) { text += (text.empty() ? "" : ", ") + plain(value, 9); };
    const auto step = [](double end) { return end == 0 ? 0.001 : std::fabs(end) * 0.01; };
    const double least = limits->oneOf.empty() ? limits->least : limits->oneOf.front();
    const double greatest = limits->oneOf.empty() ? limits->greatest : limits->oneOf.back();
    if (std::isfinite(least)) add(limits->above ? least : least - step(least));
    if (std::isfinite(greatest)) add(limits->below ? greatest : greatest + step(greatest));
    return text.empty() ? "" : ", \"refused\": [" + text + "]";
}

std::string described(const Function& function) {
    std::string text =
        "  {\"name\": " + quoted(function.name) + ", \"method\": " + quoted(methodName(function.name)) +
        ", \"gives\": " + quoted(kind(function.returns)) + ", \"example\": " + quoted(function.example) +
        ",\n   \"says\": {\"en\": " + quoted(function.says.en) + ", \"es\": " + quoted(function.says.es) +
        "},\n   \"arguments\": [";
    const char* separator = "";
    for (const Argument& argument : allArguments(function)) {
        text += separator + std::string("{\"name\": ") + quoted(argument.name) +
                ", \"kind\": " + quoted(kind(argument)) + flag("optional", argument.optional) +
                flag("column", argument.column) + flag("variadic", argument.variadic) +
                refused(argument.limits) + "}";
        separator = ",\n                 ";
    }
    return text + "]}";
}

}  // namespace

std::string descriptionText() {
    std::string text = "[\n";
    const char* separator = "";
    for (const Function& function : catalog()) {
        text += separator + described(function);
        separator = ",\n";
    }
    return text + "\n]\n";
}

}  // namespace trenchbook::addin
