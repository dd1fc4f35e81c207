// Writes everything that is made from the catalog and the menu into one folder:  generate FOLDER
//
// A file that would not change is left alone, so that what depends on it is not built again.
#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>

#include "generate/outputs.h"

namespace {

namespace fs = std::filesystem;

std::string contents(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

void write(const fs::path& file, const std::string& text) {
    if (fs::exists(file) && contents(file) == text) return;
    std::ofstream out(file, std::ios::binary);
    out << text;
    if (!out.flush()) throw std::runtime_error("cannot write " + file.string());
}

}  // namespace

int main(int count, char** words) try {
    using namespace trenchbook::addin;
    if (count != 2) throw std::runtime_error("usage: generate FOLDER");
    const fs::path folder = words[1];
    fs::create_directories(folder);
    write(folder / "XFunctions.idl", interfaceText());
    write(folder / "forwarding.h", forwardingText());
    write(folder / "functions.py", pythonText());
    write(folder / "CalcAddIns.xcu", registrationText());
    write(folder / "Addons.xcu", menuText(MenuOf::Cpp));
    write(folder / "Addons-python.xcu", menuText(MenuOf::Python));
    write(folder / "menu.py", menuTitlesText());
    write(folder / "functions.md", referenceText());
    write(folder / "functions.json", descriptionText());
    write(folder / "names.txt", frozenNamesText());
} catch (const std::exception& error) {
    std::cerr << "generate: " << error.what() << "\n";
    return 1;
}
