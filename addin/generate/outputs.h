// What the build makes from the catalog and from the entries of the menu. Each gives the whole text of one file.
#pragma once

#include <string>

namespace trenchbook::addin {

std::string interfaceText();     // XFunctions.idl: the UNO interface, one method a function
std::string forwardingText();    // forwarding.h: each method hands its arguments to the catalog
std::string pythonText();        // functions.py: the same for the shell in Python
std::string registrationText();  // CalcAddIns.xcu: names and help, as Calc shows them
enum class MenuOf { Cpp, Python };
std::string menuText(MenuOf shell);  // Addons.xcu: the menu in Calc, with what the shell can do
std::string menuTitlesText();        // menu.py: its titles for the shell in Python
std::string referenceText();         // functions.md: the function reference
std::string descriptionText();       // functions.json: the catalog for programs that call through the office
std::string frozenNamesText();       // names.txt: the names that users' files carry

}  // namespace trenchbook::addin
