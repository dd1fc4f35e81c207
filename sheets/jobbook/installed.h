// Where the things that jobbook needs lie, seen from the program itself: in a build folder or installed.
#pragma once

#include <filesystem>
#include <string>

namespace trenchbook::sheets {

// The folder that holds the unpacked add-in in a folder of its own: build/extension, or
// share/trenchbook/extension. Throws std::runtime_error saying what to build when it is not there.
std::filesystem::path extensionFolder();

// The template workbook of this name ("job"). Throws std::runtime_error as above.
std::filesystem::path templateFile(const std::string& name);

}  // namespace trenchbook::sheets
