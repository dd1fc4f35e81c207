// A formula as the sheets write it, with marks for cells (kit/model.h), as a tree.
//
//     Node tree = parseFormula("IF([Drop]>0;RUN.SLOPE([Length];1;2);\"\")");
//     tree.text;                     // "IF"
//     tree.parts[1].parts.size();    // 3
//
// Throws std::logic_error where a parenthesis, a quote or an operand is missing.
#pragma once

#include <string>
#include <vector>

namespace trenchbook::sheets {

struct Node {
    enum class Is {
        Number,     // 12.5
        Text,       // "words", without the quotes
        Table,      // [Length], [Runs.Length], [#]: what stands between the brackets
        Rule,       // {cover.lawn}
        Block,      // <Invert up>
        Name,       // units, or an address
        Call,       // text is the function, parts its arguments
        Operation,  // text is the operator, parts its operands
        Array,      // {1;2}
        Missing,    // an argument left out
    } is = Is::Missing;
    std::string text{};
    std::vector<Node> parts{};
};

Node parseFormula(const std::string& formula);

}  // namespace trenchbook::sheets
