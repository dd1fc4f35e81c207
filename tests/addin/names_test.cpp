// Names that users' files carry: a released function keeps its method, its arguments and their order for
// ever.
#include <gtest/gtest.h>

#include <fstream>
#include <map>
#include <string>

#include "catalog/function.h"

namespace trenchbook::addin {
namespace {

// "pipeCapacity(pipe, slope)" by "PIPE.CAPACITY", as names.txt writes it.
std::map<std::string, std::string> frozen() {
    std::map<std::string, std::string> known;
    std::ifstream in(TRENCHBOOK_NAMES);
    std::string line;
    std::getline(in, line);
    EXPECT_EQ(line, "service trenchbook.Functions");
    while (std::getline(in, line)) known[line.substr(0, line.find(' '))] = line.substr(line.find(' ') + 1);
    EXPECT_FALSE(known.empty()) << "cannot read " << TRENCHBOOK_NAMES;
    return known;
}

std::string signatureOf(const Function& function) {
    std::string text = methodName(function.name) + "(";
    const char* separator = "";
    for (const Argument& argument : allArguments(function)) {
        text += separator + parameterName(argument.name) + (argument.variadic ? "..." : "");
        separator = ", ";
    }
    return text + ")";
}

TEST(Names, AreThoseThatFilesCarry) {
    std::map<std::string, std::string> known = frozen();
    for (const Function& function : catalog()) {
        const auto found = known.find(function.name);
        if (found == known.end()) {
            ADD_FAILURE() << "new function: add this line to " << TRENCHBOOK_NAMES << "\n"
                          << function.name << " " << signatureOf(function);
            continue;
        }
        EXPECT_EQ(signatureOf(function), found->second) << function.name << " is in users' files as it was";
        known.erase(found);
    }
    for (const auto& [name, signature] : known)
        ADD_FAILURE() << name << " " << signature << " is gone from the catalog";
}

TEST(Names, AreFoundInEverySpelling) {
    for (const Function& function : catalog()) {
        EXPECT_EQ(findFunction(function.name), &function);
        EXPECT_EQ(findFunction(methodName(function.name)), &function) << function.name;
    }
    EXPECT_EQ(findFunction("trenchbook.version"), findFunction("TRENCHBOOK.VERSION"));
    EXPECT_EQ(findFunction("NO.SUCH"), nullptr);
}

}  // namespace
}  // namespace trenchbook::addin
