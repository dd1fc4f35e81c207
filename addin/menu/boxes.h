// Boxes that talk to a person at the window.
#pragma once

#include <filesystem>
#include <vector>

#include "menu/call.h"

namespace trenchbook::addin {

// A person thought better of it.
struct Cancelled {};

enum class Box { Done, Refused };
void show(const Call& call, Box kind, const std::string& says,
          const Reference<css::frame::XFrame>& over = {});
bool agreed(const Call& call, const std::string& question);

// A file or folder: the argument of this name, else what the person picks. Throw Cancelled where he does not, and
// Refused where a program left the argument out.
std::filesystem::path fileToRead(const Call& call, const std::string& argument, const Text& asks,
                                 const std::vector<const char*>& endings);
std::filesystem::path fileToWrite(const Call& call, const std::string& argument, const Text& asks,
                                  const std::string& suggested);
std::filesystem::path folderToWrite(const Call& call, const std::string& argument, const Text& asks);

// Words to fill in, one line each.
struct Asked {
    std::string argument;  // as a program names it
    Text label;
    std::string value{};  // what stands there at first
};
// By argument: what a program gave, else what the person typed. Throws Cancelled.
std::map<std::string, std::string> filledIn(const Call& call, const std::vector<Asked>& asked);

}  // namespace trenchbook::addin
