// What the shell in Python is told: the functions' methods, and whether the last argument is a list of values; the titles
// of the menu's commands.
#include "generate/outputs.h"
#include "generate/signature.h"
#include "menu/entries.h"

namespace trenchbook::addin {

std::string pythonText() {
    std::string text =
        "# Made from the catalog of functions: the method, and whether its last argument holds any number of values.\n"
        "FUNCTIONS = (\n";
    for (const Function& function : catalog()) {
        const Signature known = signature(function);
        const bool variadic = !known.parameters.empty() && known.parameters.back().variadic;
        text += "    (\"" + known.method + "\", " + (variadic ? "True" : "False") + "),\n";
    }
    return text + ")\n";
}

std::string menuTitlesText() {
    std::string text =
        "# Made from the entries of the menu: the command, its title in English and Spanish.\nENTRIES = (\n";
    for (const MenuEntry& entry : menuEntries()) {
        const Text title = titleOf(entry.command);
        text += std::string("    (\"") + entry.command + "\", \"" + title.en + "\", \"" + title.es + "\"),\n";
    }
    return text + ")\n";
}

}  // namespace trenchbook::addin
