// The menu's words: each entry has both languages and a key of its own, as it is used by keyboard.
#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <map>

#include "menu/entries.h"

namespace trenchbook::addin {
namespace {

char keyOf(const std::string& title) {
    const std::size_t mark = title.find('~');
    return mark + 1 < title.size()
               ? static_cast<char>(std::tolower(static_cast<unsigned char>(title[mark + 1])))
               : '\0';
}

TEST(MenuEntries, EachHasItsOwnKeyInEitherLanguage) {
    std::map<std::string, std::string> seen;
    for (const MenuEntry& entry : menuEntries())
        for (const auto& [language, title] :
             {std::pair("en", entry.title.en), std::pair("es", entry.title.es)}) {
            ASSERT_EQ(std::count(title.begin(), title.end(), '~'), 1) << title;
            const char key = keyOf(title);
            ASSERT_TRUE(key >= 'a' && key <= 'z') << title;
            const auto [other, isNew] = seen.emplace(std::string(language) + key, title);
            EXPECT_TRUE(isNew) << title << " and " << other->second;
        }
    EXPECT_GT(seen.size(), 20u);
}

}  // namespace
}  // namespace trenchbook::addin
