// One spreadsheet function, described once.
//
// From these descriptions the build makes the UNO interface, its forwarding code, the names and help that
// Calc shows, docs/functions.md and the Functions sheet of the workbooks. To add a function: one entry in a
// family file beside this one, one engine function, one test.
//
// Released names, argument names and argument order are part of users' files and never change.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "catalog/limits.h"
#include "catalog/measure.h"
#include "catalog/value.h"
#include "trenchbook/core/text.h"

namespace trenchbook::addin {

class Arguments;

struct Argument {
    std::string name = {};  // as shown and as named in errors: "side share"
    Measure measure = Measure::Plain;
    Text says = {};             // one line of help
    std::string fallback = {};  // how the default is written; empty for an argument that must be given
    bool optional = false;      // may be left out (with or without a written default)
    bool column = false;        // a one-column range, one value a row
    bool variadic = false;      // the last one only: any number of values
    std::optional<Limits> limits = {};  // of a number; told in the reference and kept by its reader
};

enum class Returns { Number, Words, NumberBlock, WordBlock };

struct Function {
    std::string name = {};                 // "PIPE.CAPACITY"
    Text says = {};                        // what it gives, one line
    std::vector<Argument> arguments = {};  // without the tail: units and language are added by the catalog
    std::vector<Argument> later = {};      // optionals invented after the release: they stand behind the tail
    Returns returns = Returns::Number;
    Measure measure = Measure::Plain;  // unit of a number answer
    std::string columns = {};  // for blocks: what the columns hold, "invert up (ft), invert down (ft)"
    std::string source = {};   // method and published source
    std::string example = {};  // a live call with ; between arguments: PIPE.CAPACITY("4 SDR35"; "1%")
    bool speaks = true;        // a Words answer is a sentence in a language, not a name or a number
    bool letters = false;      // a NumberBlock that draws words: in a language too
    Result (*call)(const Arguments&) = nullptr;
};

// "PIPE.CAPACITY" -> "pipeCapacity", "side share" -> "sideShare": the names that files carry. A reserved
// word gets a tail: "return" -> "returnValue".
std::string methodName(const std::string& functionName);
std::string parameterName(const std::string& argumentName);

// Has a units argument (any argument or the answer carries a unit), a language argument (answers in words).
bool takesUnits(const Function& function);
bool takesLanguage(const Function& function);
// The arguments with their tail.
std::vector<Argument> allArguments(const Function& function);

// Every function, in the order of docs/functions.md, and the families they come in.
struct Family {
    Text title;
    std::span<const Function> functions;
};
const std::vector<Function>& catalog();
const std::vector<Family>& families();
const Function* findFunction(std::string_view name);  // display or method name, any case; null when unknown

// Decodes, calls, and lets trenchbook::Error through. `values` may be shorter than the argument list.
Result call(const Function& function, std::span<const Value> values);
// The sentence behind an error, as the user would say it: the argument's name and what was typed. "OK" if
// none.
std::string why(const Function& function, std::span<const Value> values, Language language);

}  // namespace trenchbook::addin
