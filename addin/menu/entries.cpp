#include "menu/entries.h"

#include <algorithm>

namespace trenchbook::addin {
namespace {

std::string plainTitle(std::string title) {
    title.erase(std::remove(title.begin(), title.end(), '~'), title.end());
    title.erase(title.find_last_not_of('.') + 1);
    return title;
}

}  // namespace

const std::vector<MenuEntry>& menuEntries() {
    static const std::vector<MenuEntry> all = {
        {"NextMissing", {"Next thing ~missing", "Lo siguiente que ~falta"}},
        {"PrintRanges", {"Print ranges follow the ~filled rows", "Imprimir solo las filas ~llenas"}, true},
        {"About", {"~About and self-test", "~Acerca de y autoprueba"}, true},
    };
    return all;
}

Text titleOf(const std::string& command) {
    for (const MenuEntry& entry : menuEntries())
        if (entry.command == command) return {plainTitle(entry.title.en), plainTitle(entry.title.es)};
    return {};
}

}  // namespace trenchbook::addin
