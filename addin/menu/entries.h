// The entries of the menu "Trenchbook" in Calc, in their order: the command behind each and its words. No office types:
// the build makes Addons.xcu from here.
#pragma once

#include <string>
#include <vector>

#include "trenchbook/core/text.h"

namespace trenchbook::addin {

// The protocol of our commands: "trenchbook.menu:NextMissing".
inline constexpr const char* menuProtocol = "trenchbook.menu:";

struct MenuEntry {
    const char* command;      // what stands after the protocol; never changes once released
    Text title;               // with ~ before its key, … where it asks; the undo step's name, without both
    bool opensGroup = false;  // a line above it
    // Worked out as data alone (sheets/commands), so that the shell in Python carries it out, too.
    bool asData = true;
};

const std::vector<MenuEntry>& menuEntries();
// The title without its mark.
Text titleOf(const std::string& command);

}  // namespace trenchbook::addin
