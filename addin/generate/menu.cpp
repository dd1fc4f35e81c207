// Addons.xcu: a menu of our own in the menu bar of Calc.
#include <cstdio>

#include "generate/outputs.h"
#include "generate/xcu.h"
#include "menu/entries.h"

namespace trenchbook::addin {
namespace {

// The office orders the entries by their names.
std::string opened(std::size_t place) {
    char name[16];
    std::snprintf(name, sizeof name, "e%03zu", place);
    return std::string("<node oor:name=\"") + name + "\" oor:op=\"replace\">\n";
}

}  // namespace

std::string menuText(MenuOf shell) {
    std::string text = xcuHead("Addons") +
                       "<node oor:name=\"AddonUI\">\n<node oor:name=\"OfficeMenuBar\">\n"
                       "<node oor:name=\"trenchbook.menu\" oor:op=\"replace\">\n";
    text += setting("Context", "com.sun.star.sheet.SpreadsheetDocument");
    text += property("Title", "Trench~book");
    text += "<node oor:name=\"Submenu\">\n";
    std::size_t place = 0;
    for (const MenuEntry& entry : menuEntries()) {
        if (shell == MenuOf::Python && !entry.asData) continue;
        if (entry.opensGroup) text += opened(place++) + setting("URL", "private:separator") + "</node>\n";
        text += opened(place++) + setting("URL", std::string(menuProtocol) + entry.command) +
                property("Title", entry.title) + setting("Target", "_self") + "</node>\n";
    }
    return text + "</node>\n</node>\n</node>\n</node>\n</oor:component-data>\n";
}

}  // namespace trenchbook::addin
