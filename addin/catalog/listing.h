// The catalog as rows of words, for docs/functions.md and for the Functions sheet of the workbooks.
#pragma once

#include <string>
#include <vector>

#include "catalog/function.h"

namespace trenchbook::addin {

struct ListedArgument {
    std::string name;      // "roughness"
    Text says;             // "Manning n"
    Text unit;             // "ft (metric: m)"; empty for plain numbers
    std::string fallback;  // "the pipe's own"; empty for an argument that must be given
    bool optional = false;
    Text range;  // "0.005 to 0.5"; empty where none is told
};

struct ListedFunction {
    Text family;
    std::string name;  // "PIPE.CAPACITY"
    std::string call;  // "PIPE.CAPACITY(pipe; slope; [roughness]; [fill=1]; [units="US"])"
    Text says;
    Text unit;            // of the answer; empty when it has none
    std::string columns;  // of a block
    bool block = false;   // must be entered as an array formula
    std::string source;
    std::string example;  // "PIPE.CAPACITY("4 SDR35"; "1%")", without the equals sign
    std::vector<ListedArgument> arguments;
};

// Every function, in the order of the catalog.
std::vector<ListedFunction> listing();

// "ft (metric: m)" in both languages; the unit alone where it does not change; empty for plain numbers.
Text unitText(Measure measure);

}  // namespace trenchbook::addin
